//! Facts of the formula: baker's percentages against flour, and what the batter is made of.
//!
//! Goes in: a formula. Comes out: figures, with no opinion of them.

mod constituent;
mod kind;
mod percentage;

pub use constituent::{Constituent, Total, total};
pub use kind::{By, Kind, is_alkalised, is_berry, is_yeast, kind};
pub use percentage::{Percentages, percentages};
