//! More salt than its kind of cake holds.

use super::outside::Outside;
use super::{Facts, Finding};
use crate::baking::balance::Class;

/// Checks salt against the most of its kind; little salt is a matter of taste.
pub fn check(facts: &Facts) -> Vec<Finding> {
    Outside {
        name: "salt_beyond",
        class: Class::Salt,
        much: (
            "Much salt for its kind",
            "From here on most people taste the salt before the cake, and powder and salted butter bring more. A tablespoon may stand in a teaspoon's place, or fine salt in that of flakes.",
        ),
        little: None,
    }
    .check(facts)
}
