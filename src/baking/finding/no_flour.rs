//! A batter without anything that counts as flour.

use super::{Facts, Finding, Severity};

/// Says why there are no percentages.
pub fn check(facts: &Facts) -> Vec<Finding> {
    if facts.flour().is_some() || facts.formula.batter().next().is_none() {
        return Vec::new();
    }
    vec![Finding {
        name: "no_flour",
        severity: Severity::Note,
        title: "No flour".into(),
        sentence: "Nothing in the batter counts as flour, so there are no baker's percentages and gas is not judged.".into(),
        why: "Baker's percentages take all flour as 100.",
        limit: "Flours count always; nut meal, starch and oats where there is no other flour.".into(),
        lines: Vec::new(),
        remedies: Vec::new(),
    }]
}
