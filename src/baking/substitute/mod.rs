//! Substitution: an ingredient changes and the cake is kept.

pub mod programme;
mod scaled;
mod shares;
