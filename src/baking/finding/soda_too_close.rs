//! Acid and soda whose spread lies across a limit.

use super::VerdictKind;
use super::{Facts, Finding, Severity, acid_verdict, ph_band};
use crate::baking::quantity::show;

/// Says which lines make the verdict unsure.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let verdict = acid_verdict(facts);
    let (VerdictKind::TooClose, Some(bowl)) = (verdict.kind, facts.bowl) else {
        return Vec::new();
    };
    let band = ph_band(facts.kind);
    let lines: Vec<usize> = bowl
        .parts_by(&|part| part.acid.deviation())
        .iter()
        .take(2)
        .map(|part| part.line)
        .collect();
    vec![Finding {
        name: "soda_too_close",
        severity: Severity::Note,
        title: verdict.title,
        sentence: format!(
            "{} Most of the doubt is in {}: weigh it, or bake a small batch first.",
            verdict.sentence,
            show::lines(&lines)
        ),
        why: "Where acid and soda nearly cancel, a little more of either moves the crumb a long way.",
        limit: format!(
            "Crumb pH {} to {} for {}. {}",
            show::ph(band.low),
            show::ph(band.high),
            facts.kind.words(),
            band.source
        ),
        lines,
        remedies: Vec::new(),
    }]
}
