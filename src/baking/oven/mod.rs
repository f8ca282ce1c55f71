//! The oven and the air around it.
//!
//! [`air`] comes before all chemistry and knows of nothing but quantities; the rest of this stage stands on the facts of a
//! recipe.

pub mod air;
pub mod scale;
