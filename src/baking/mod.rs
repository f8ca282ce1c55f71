//! The whole trade: pure functions from text and choices to a [`worksheet`].
//!
//! Nothing in here knows of a browser, a clock, a store or a signal.

pub mod balance;
pub mod carry;
pub mod chemistry;
pub mod comparison;
pub mod demo;
pub mod diagnosis;
pub mod estimate;
pub mod finding;
pub mod formula;
pub mod ingredient;
pub mod leaven;
mod lexicon;
pub mod oven;
mod packed;
pub mod pan;
pub mod quantity;
pub mod recipe;
pub mod saved;
pub mod source;
pub mod statistics;
pub mod substitute;
pub mod text;
pub mod timer;
pub mod trial;
pub mod worksheet;
