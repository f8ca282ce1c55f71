//! What an egg does by kind of cake, and what of that its replacers do.
//!
//! The figures stand in `egg_wanted.csv` and `egg_given.csv`: 0 nothing, 1 a little, 2 much, 3 the most. They are a
//! judgement of our own from common practice, not measurements.

use super::unpack;
use crate::baking::balance::Kind;
use crate::baking::ingredient::Ingredient;
use crate::baking::source::Cited;

/// Strengths from 0 to 3 of what an egg does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct EggWork {
    /// Sets, and holds the crumb together.
    pub binding: u8,
    /// Holds beaten air, or brings gas.
    pub leavening: u8,
    /// Holds fat and water together.
    pub emulsifying: u8,
    /// Moistens.
    pub moistening: u8,
}

/// What a kind of cake wants of its eggs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EggWanted {
    /// The kind of cake.
    pub kind: Kind,
    /// How much it wants of each.
    pub work: EggWork,
    /// Where that is from.
    pub cited: Cited,
    /// Why, where it is worth a word.
    pub note: &'static str,
}

/// What an ingredient does in the place of an egg; the egg and its parts among them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EggGiven {
    /// The ingredient, as a swap names it first.
    pub ingredient: &'static Ingredient,
    /// How much it gives of each.
    pub work: EggWork,
    /// What comes of it, after the ingredient's name in a sentence.
    pub result: &'static str,
    /// Where that is from.
    pub cited: Cited,
}

/// What a kind of cake wants of its eggs. Every kind has a row.
pub fn wanted(kind: Kind) -> Option<&'static EggWanted> {
    unpack::eggs_wanted().iter().find(|row| row.kind == kind)
}

/// What an ingredient does in the place of an egg; `None` where it is no replacer.
pub fn given(ingredient: &Ingredient) -> Option<&'static EggGiven> {
    let key = ingredient.key;
    unpack::eggs_given()
        .iter()
        .find(|row| row.ingredient.key == key)
}
