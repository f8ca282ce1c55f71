//! Formulas for this stage's own tests.

use crate::baking::formula::{Formula, Habits, weigh};
use crate::baking::ingredient::{Larder, PieceSize, Region};
use crate::baking::recipe::read;

/// A formula as a US baker's recipe weighs it.
pub fn formula(text: &str) -> Formula {
    let habits = Habits {
        region: Region::Us,
        filling: None,
        eggs: PieceSize::Large,
    };
    weigh(&read(text, Larder::of(habits.region), &[]), &habits)
}
