//! Facts of the formula: baker's percentages against flour, and what the batter is made of.
//!
//! Goes in: a formula. Comes out: figures, with no opinion of them.

mod constituent;
mod kind;
mod percentage;
mod setting;
mod sugars;
mod sweetness;
#[cfg(test)]
mod testing;
mod water_binding;

pub use constituent::{Constituent, Total, total};
pub use kind::{By, Kind, is_alkalised, is_berry, is_yeast, kind};
pub use percentage::{Percentages, percentages};
pub use setting::{
    SETTING_SOURCES, SetBy, Setting, Starch, setting, setting_protein_per_gram, starch,
};
pub use sugars::{SugarsByKind, sugars_by_kind};
pub use sweetness::{Sweetness, sweetness, sweetness_per_gram};
pub use water_binding::{WaterBinding, solute_moles_per_gram, water_binding};
