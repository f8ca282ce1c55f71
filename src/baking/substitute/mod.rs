//! Substitution: an ingredient changed and the cake kept.

pub mod egg;
pub mod swap;
mod unpack;
