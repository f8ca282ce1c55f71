//! Potassium bicarbonate in soda's place.

use super::{Facts, Finding, Severity};

/// Says how much of it does the work of soda.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let lines = facts.lines_of(|line| line.ingredient.key == "potassium_bicarbonate");
    if lines.is_empty() {
        return Vec::new();
    }
    vec![Finding {
        name: "potassium_weaker",
        severity: Severity::Note,
        title: "Weaker than soda by weight".into(),
        sentence: "Potassium bicarbonate does 84 % of the work of as much soda: 1.19 g stands for 1 g. The figures here count that.".into(),
        why: "It is the heavier salt of the same base. Bakers take it to save sodium; too much tastes bitter.",
        limit: "100.115 over 84.007 g/mol, worked out.".into(),
        lines,
        remedies: Vec::new(),
    }]
}
