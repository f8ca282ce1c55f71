//! The oven and the air around it.
//!
//! [`air`] comes before all chemistry and knows of nothing but quantities; [`heat`] knows of nothing but physics; the rest
//! of this stage stands on the facts of a recipe.

pub mod air;
pub mod altitude;
pub mod altitude_table;
pub mod charge;
pub mod core_temperature;
pub mod forecast;
pub mod heat;
pub mod kitchen;
pub mod mixing;
pub mod rise;
pub mod scale;
pub mod slices;
