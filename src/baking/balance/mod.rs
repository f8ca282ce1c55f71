//! Facts of the formula: baker's percentages against flour, and what the batter is made of.
//!
//! Goes in: a formula. Comes out: figures, with no opinion of them.

mod class;
mod constituent;
mod kind;
mod percentage;
mod pull;
mod range;
mod rule;
mod setting;
mod standing;
mod sugars;
mod sweetness;
#[cfg(test)]
pub(in crate::baking) mod testing;
mod water_binding;

pub use class::{Class, Count, count};
pub use constituent::{Constituent, Total, total};
pub use kind::{By, Kind, Recognised, has_gluten, is_alkalised, is_berry, is_yeast, recognise};
pub use percentage::{Percentages, counts_as_flour, percentages};
pub use pull::{Pull, Side, pull};
pub use range::{Range, Stands, range};
pub use rule::{Rule, Ruled, rules};
pub use setting::{
    SETTING_SOURCES, SetBy, Setting, Starch, setting, setting_protein_per_gram, starch,
};
pub use standing::{Standing, standing};
pub use sugars::{SugarsByKind, sugars_by_kind};
pub use sweetness::{SUGAR_SOURCES, Sweetness, sweetness, sweetness_per_gram};
pub use water_binding::{WaterBinding, solute_moles_per_gram, water_binding};
