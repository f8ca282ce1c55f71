//! The habits that decide what a cup, a spoon and an egg weigh.

use crate::baking::ingredient::{Filling, PieceSize, Region};

/// Whose measures, whose way of filling a cup, whose eggs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Habits {
    /// Whose cups, spoons and egg classes.
    pub region: Region,
    /// How cups of flour are filled; `None` carries the spread of all ways.
    pub filling: Option<Filling>,
    /// The egg size taken where the recipe names none.
    pub eggs: PieceSize,
}
