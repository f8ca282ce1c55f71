//! Substitution: an ingredient changes and the cake is kept.

mod bench;
mod choice;
pub mod egg;
mod entry;
mod keep;
mod limits;
mod movement;
pub mod plan;
pub mod programme;
mod scaled;
mod shares;
pub mod swap;
mod unpack;

pub use choice::{Without, by_composition, by_swap, choices, is_like, lacking};
pub use keep::Keep;
