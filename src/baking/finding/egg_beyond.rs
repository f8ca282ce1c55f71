//! Egg far from what its kind of cake holds.

use super::outside::Outside;
use super::{Facts, Finding};
use crate::baking::balance::Class;

/// Checks egg against the range of its kind.
pub fn check(facts: &Facts) -> Vec<Finding> {
    Outside {
        name: "egg_beyond",
        class: Class::Egg,
        much: (
            "Much egg for its kind",
            "Egg sets firm: with much of it, and no more sugar or fat beside it, a crumb is rubbery and dry.",
        ),
        little: Some((
            "Little egg for its kind",
            "Egg binds what fat and sugar loosen: with little of it a cake may sink, or crumble where it is cut.",
        )),
    }
    .check(facts)
}
