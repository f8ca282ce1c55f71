//! Much powder with aluminium in it.

use super::{Facts, Finding, Severity};
use crate::baking::quantity::{Share, show};

/// A teaspoon and a half to a cup of flour, per cent.
const MOST: f64 = 5.5;

/// Checks powder with aluminium against a usual dose.
pub fn check(facts: &Facts) -> Vec<Finding> {
    const KEY: &str = "baking_powder_aluminium";
    let percent = facts.percent_of(|line| line.ingredient.key == KEY);
    if percent <= MOST {
        return Vec::new();
    }
    vec![Finding {
        name: "aluminium_taste",
        severity: Severity::Note,
        title: "Aluminium may be tasted".into(),
        sentence: format!(
            "Powder with aluminium is {} of the flour. Some taste it as metal or bitterness at such a dose; a phosphate powder does without.",
            show::percent(Share::percent(percent))
        ),
        why: "Aluminium salts taste sharp in a mild crumb.",
        limit: "At most 5.5 % of the flour: common practice, no source.".into(),
        lines: facts.lines_of(|line| line.ingredient.key == KEY),
        remedies: Vec::new(),
    }]
}
