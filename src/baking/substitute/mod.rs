//! Substitution: an ingredient changes and the cake is kept.

pub mod egg;
mod keep;
pub mod plan;
pub mod programme;
mod scaled;
mod shares;
pub mod swap;
mod unpack;

pub use keep::Keep;
