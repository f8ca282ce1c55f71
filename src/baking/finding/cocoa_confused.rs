//! Alkalised cocoa where the soda was meant for natural cocoa.

use super::{Facts, Finding, Severity, VerdictKind, acid_verdict};
use crate::baking::balance::is_alkalised;

/// Below this share of the flour cocoa answers too little soda to be meant for it: our own limit.
const COUNTS: f64 = 4.0;

/// Checks alkalised cocoa beside soda that is left over.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let much = facts.percent_of(|line| is_alkalised(line.ingredient)) >= COUNTS;
    if !much || !facts.has_loose_soda() || acid_verdict(facts).kind != VerdictKind::Spare {
        return Vec::new();
    }
    let mut lines = facts.lines_of(|line| is_alkalised(line.ingredient));
    lines.extend(facts.sodas().map(|line| line.line));
    vec![Finding {
        name: "cocoa_confused",
        severity: Severity::Look,
        title: "Alkalised cocoa with soda".into(),
        sentence: "Alkalised cocoa answers no soda. Take natural cocoa, or powder in the soda's place.".into(),
        why: "Recipes with soda were mostly written for natural cocoa, whose acid sets the gas free.",
        limit: "Named where soda is to spare and alkalised cocoa is 4 % of the flour or more (our own limit).".into(),
        lines,
        remedies: Vec::new(),
    }]
}
