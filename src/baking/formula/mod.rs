//! Weighing: a read recipe to a [`Formula`], grams of known ingredients with their spread.
//!
//! Goes in: a recipe and the baker's habits. Comes out: what each ingredient line weighs and how
//! that was got, and why the others have no weight. What the weights mean is left to the facts.

mod eggs;
mod habit;
mod how;
mod weigh;

pub use eggs::{Eggs, counted_eggs, eggs};
pub use habit::Habits;
pub use how::How;
pub use weigh::weigh;

use super::estimate::Estimate;
use super::ingredient::Ingredient;
use super::quantity::Mass;

/// A recipe in grams.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Formula {
    /// The lines that have a weight, in the recipe's order.
    pub lines: Vec<Weighed>,
    /// The ingredient lines that have none.
    pub unweighed: Vec<Unweighed>,
}

/// A line with a weight.
#[derive(Clone, Debug, PartialEq)]
pub struct Weighed {
    /// The line of the text, from 1.
    pub line: usize,
    /// Which of the line's ingredients, from 0.
    pub part: usize,
    /// What it is.
    pub ingredient: &'static Ingredient,
    /// What it weighs.
    pub grams: Estimate<Mass>,
    /// How that was got.
    pub how: How,
    /// Where it goes.
    pub place: Place,
    /// True for fruit that stays in pieces: most of its acid never meets the batter.
    pub in_pieces: bool,
    /// What is unsure about the weight, as sentences.
    pub doubts: Vec<String>,
}

/// An ingredient line without a weight.
#[derive(Clone, Debug, PartialEq)]
pub struct Unweighed {
    /// The line of the text, from 1.
    pub line: usize,
    /// Which of the line's ingredients, from 0.
    pub part: usize,
    /// What it is, if that much is known.
    pub ingredient: Option<&'static Ingredient>,
    /// Where it would go.
    pub place: Place,
    /// Why it has no weight and what to write instead.
    pub why: String,
    /// True where the want of a weight leaves a hole; false for "to taste" and the like.
    pub missed: bool,
}

/// Where a line goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// Into the batter.
    Batter,
    /// Into something that meets the cake after it is baked.
    Beside,
    /// The recipe calls it optional.
    Optional,
    /// On top, at the table.
    ToServe,
    /// Onto the pan.
    ForThePan,
}

impl Place {
    /// Why the line is not counted, for lines outside the batter.
    pub fn words(self) -> Option<&'static str> {
        match self {
            Self::Batter => None,
            Self::Beside => Some("Not in the batter: it belongs to another part"),
            Self::Optional => Some("Optional: not counted in the batter"),
            Self::ToServe => Some("For serving: not counted in the batter"),
            Self::ForThePan => Some("For the pan: not counted in the batter"),
        }
    }
}

impl Formula {
    /// The lines that make the batter.
    pub fn batter(&self) -> impl Iterator<Item = &Weighed> + Clone {
        self.lines.iter().filter(|line| line.place == Place::Batter)
    }

    /// The batter lines whose weight is missed.
    pub fn holes(&self) -> impl Iterator<Item = &Unweighed> {
        self.unweighed
            .iter()
            .filter(|line| line.place == Place::Batter && line.missed)
    }
}
