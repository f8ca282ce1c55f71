//! What looking a name up comes to.

use crate::baking::ingredient::Ingredient;

/// Which ingredient a name means.
#[derive(Clone, Debug, PartialEq)]
pub enum Match {
    /// This one.
    Known(&'static Ingredient),
    /// One of several; the first is taken, the others are offered.
    OneOf(Vec<&'static Ingredient>),
    /// None that the tables hold.
    Unknown,
}

impl Match {
    /// The ingredient that is taken, if any.
    pub fn taken(&self) -> Option<&'static Ingredient> {
        match self {
            Self::Known(ingredient) => Some(ingredient),
            Self::OneOf(ingredients) => ingredients.first().copied(),
            Self::Unknown => None,
        }
    }
}
