//! Liquid, and with it all water, far from what its kind of cake holds.

use super::outside::Outside;
use super::{Facts, Finding};
use crate::baking::balance::Class;

/// Checks liquid against the range of its kind; all water has to bear it out, since fruit and egg bring water too.
pub fn check(facts: &Facts) -> Vec<Finding> {
    Outside {
        name: "liquid_beyond",
        class: Class::Liquid,
        much: (
            "Much liquid for its kind",
            "A thin batter lets its bubbles rise and run together, and sets late: a wet streak at the foot, a coarse top, a sunken middle.",
        ),
        little: Some((
            "Little liquid for its kind",
            "Starch that lacks water sets dry and tight: a peaked, cracked top and a crumb that stales soon.",
        )),
    }
    .check(facts)
}
