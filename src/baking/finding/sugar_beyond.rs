//! Sugar far from what its kind of cake holds.

use super::outside::Outside;
use super::{Facts, Finding};
use crate::baking::balance::Class;

/// Checks sugar against the range of its kind.
pub fn check(facts: &Facts) -> Vec<Finding> {
    Outside {
        name: "sugar_beyond",
        class: Class::Sugar,
        much: (
            "Much sugar for its kind",
            "Sugar holds water that the starch needs to set, and the crumb sets later and hotter: the cake may rise, sink in the middle and bake to a sticky crust.",
        ),
        little: Some((
            "Little sugar for its kind",
            "Sugar makes tender, holds water and browns: with little of it a crumb is tougher, paler and sooner stale. Where less sweetness is meant, it may stand.",
        )),
    }
    .check(facts)
}
