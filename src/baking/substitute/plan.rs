//! The plan of a swap: how much of everything else is to move so that the cake stays what it is.
//!
//! Goes in: the facts of a formula, and a [`Wish`]. Comes out: a [`Plan`], amounts that can be weighed. The programme's rows
//! are what [`Keep`] names; its unknowns are what goes in, the lines that may move, and a few things that may be added.

use super::bench::Bench;
use super::keep::Keep;
use super::swap::Brought;
use crate::baking::chemistry::Bowl;
use crate::baking::finding::Facts;
use crate::baking::formula::Formula;
use crate::baking::ingredient::Ingredient;
use crate::baking::quantity::Mass;

/// A line, or a part of it, that is to become something else.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// The line of the text and which of its ingredients.
    pub place: (usize, usize),
    /// The share of it that goes, up to 1.
    pub share: f64,
    /// What comes in its place.
    pub to: Vec<Brought>,
}

/// What is wished.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wish {
    /// The lines that change.
    pub changes: Vec<Change>,
    /// Lines that may not move.
    pub held: Vec<(usize, usize)>,
    /// True where nothing may be added that the recipe does not have.
    pub no_more: bool,
    /// Keys of what may not be added.
    pub lacking: Vec<String>,
}

/// What becomes of an ingredient.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    /// It goes, or a share of it.
    Goes,
    /// It comes in the place of a line.
    Comes((usize, usize)),
    /// It is there already and takes another amount.
    Moves,
    /// It is added.
    Added,
}

/// An ingredient of the plan whose amount changes.
#[derive(Clone, Debug, PartialEq)]
pub struct Amount {
    /// Its place in the text; `None` for what is new.
    pub place: Option<(usize, usize)>,
    /// What it is.
    pub ingredient: &'static Ingredient,
    /// What becomes of it.
    pub fate: Fate,
    /// What the recipe has of it, g.
    pub before: f64,
    /// What it is to have, g.
    pub after: f64,
}

/// Something kept, before and after.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kept {
    /// What.
    pub keep: Keep,
    /// In the recipe as it is, in its unit.
    pub before: f64,
    /// By the plan.
    pub after: f64,
    /// How far apart the two may be at no cost.
    pub free: f64,
    /// How far apart rounded amounts can bring them besides.
    pub rounding: f64,
    /// Whether it is so far off that a baker calls it another cake.
    pub is_far: bool,
}

impl Kept {
    /// Whether the plan moves it by more than weighing would.
    pub fn is_moved(&self) -> bool {
        // Programmes are met to a few parts in a million.
        self.change().abs() > self.free * 1.000_01 + self.rounding
    }

    /// By how much it is more.
    pub fn change(&self) -> f64 {
        self.after - self.before
    }
}

/// A limit that cannot be held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Missed {
    /// The crumb ends more acid than the kind's band.
    TooAcid,
    /// It ends more alkaline.
    TooAlkaline,
    /// Less gas than the kind wants.
    GasShort,
    /// More than it holds.
    GasMuch,
}

/// How the cake is kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// What changes.
    pub amounts: Vec<Amount>,
    /// Everything that was to be kept.
    pub kept: Vec<Kept>,
    /// What cannot be.
    pub missed: Vec<Missed>,
    /// What it costs; to choose between plans of one formula.
    pub cost: f64,
    /// Names of ingredients of which a constituent is not known, each with what.
    pub unknown: Vec<(&'static str, Keep)>,
    /// The formula as it becomes.
    pub formula: Formula,
    /// Its bowl; `None` where nothing in it brings acid or base.
    pub bowl: Option<Bowl>,
}

/// The plan that changes least.
///
/// # Errors
/// A sentence where nothing can be reckoned: no flour, no liquid, every line held, nothing known of what comes in.
pub fn plan(facts: &Facts, title: Option<&str>, wish: &Wish) -> Result<Plan, String> {
    let flour = facts
        .flour()
        .map(Mass::to_grams)
        .filter(|flour| *flour > 0.0)
        .ok_or("A swap is set against the flour, and no flour has a weight yet.")?;
    Bench::new(facts, title, wish, flour)?.least()
}
