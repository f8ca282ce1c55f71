//! Soda in a batter that has no acid for it.

use super::{Facts, Finding, Severity, VerdictKind, acid_verdict};
use crate::baking::quantity::{Share, show};

/// The part of the loose soda that acid answers to pH 7: devil's food answers some three tenths of it and is sound,
/// so less than this is called nothing (our own limit).
const NOTHING: f64 = 0.25;
/// The part that lines other than flour answer, likewise.
const HARDLY: f64 = 0.15;

/// Checks how much of the loose soda finds an acid.
pub fn check(facts: &Facts) -> Vec<Finding> {
    if !facts.has_loose_soda() {
        return Vec::new();
    }
    let of_soda = |acid: f64| acid / facts.loose_soda().max(1e-9);
    // Base of the eggs is no soda that finds no acid, so acid alone is counted.
    let met = of_soda(facts.acid_sum());
    let by_sour = of_soda(facts.sour_sum());
    if met >= NOTHING || by_sour >= HARDLY || acid_verdict(facts).kind != VerdictKind::Spare {
        return Vec::new();
    }
    vec![Finding {
        name: "soda_unmet",
        severity: Severity::Look,
        title: "Soda with nothing to meet".into(),
        sentence: format!(
            "Only {} of the soda finds an acid. Was buttermilk, yogurt or natural cocoa meant? Otherwise take powder.",
            show::percent(Share::fraction(met.max(0.0)))
        ),
        why: "Soda without acid gives little gas and stays in the crumb.",
        limit: "A quarter of the loose soda should find acid, and 15 % of it in lines other than flour (our own limits).".into(),
        lines: facts.sodas().map(|line| line.line).collect(),
        remedies: Vec::new(),
    }]
}
