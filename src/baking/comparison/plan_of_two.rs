//! Two things moved at once, so that both their effects can be told, and whether one hangs on the other.
//!
//! Both low and high in every combination, and the unchanged recipe twice between them (NIST e-Handbook 5.3.3.3 and
//! 5.3.3.7): its two bakes tell the scatter, and their mean against the corners' whether the best lies inside.

use crate::baking::statistics::design::{amount, factorial};
use serde::Serialize;

/// What one of the two may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Levels {
    /// How much the unchanged recipe has.
    pub now: f64,
    /// How far it is moved to either side.
    pub by: f64,
    /// The least difference that a scale shows.
    pub step: f64,
}

/// A bake of the plan.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct PlannedBake {
    /// How much of each.
    pub amounts: [f64; 2],
    /// Whether it is the recipe unchanged.
    pub control: bool,
}

/// How often the unchanged recipe is baked: once to compare with, once more for the scatter.
const CONTROLS: usize = 2;

/// The bakes of the plan.
///
/// # Errors
///
/// A sentence where an amount is no number, or is moved by less than a scale shows or below nothing.
pub fn plan_of_two(levels: [Levels; 2]) -> Result<Vec<PlannedBake>, String> {
    let by = levels.map(|it| (it.by / it.step).round() * it.step);
    for (it, by) in levels.iter().zip(by) {
        if !(it.now.is_finite() && by.is_finite() && it.step > 0.0) {
            return Err(
                "How much there is now, and how far it is to move, has to be known of both."
                    .to_owned(),
            );
        }
        if by < it.step || by > it.now {
            return Err(
                "Each has to move by what the scale shows at least, and by no more than there is of it.".to_owned(),
            );
        }
    }
    let bakes = factorial(CONTROLS).into_iter().map(|coded| PlannedBake {
        amounts: std::array::from_fn(|which| {
            let (now, by) = (levels[which].now, by[which]);
            (amount(coded[which], now - by, now + by) * 1000.0).round() / 1000.0
        }),
        control: coded == [0.0, 0.0],
    });
    Ok(bakes.collect())
}
