//! Fat far from what its kind of cake holds.

use super::outside::Outside;
use super::{Facts, Finding};
use crate::baking::balance::Class;

/// Checks fat against the range of its kind.
pub fn check(facts: &Facts) -> Vec<Finding> {
    Outside {
        name: "fat_beyond",
        class: Class::Fat,
        much: (
            "Much fat for its kind",
            "Fat coats flour and keeps it from binding: too much, and the crumb is heavy, greasy and weak, and breaks where it is cut.",
        ),
        little: Some((
            "Little fat for its kind",
            "Fat makes tender and carries air: with little of it a crumb is tougher, drier and sooner stale.",
        )),
    }
    .check(facts)
}
