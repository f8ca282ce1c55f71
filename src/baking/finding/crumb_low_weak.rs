//! A low crumb that is weak evidence: layer cakes on powder alone.

use super::leavening::{LIKELY, NONE_NEEDED};
use super::{Facts, Finding, Severity, acid_verdict, ph_band};
use crate::baking::quantity::show;

/// Names a crumb below its band where nothing sour is to blame.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let Some(bowl) = facts.bowl else {
        return Vec::new();
    };
    let band = ph_band(facts.kind);
    if acid_verdict(facts).title != NONE_NEEDED
        || !facts.is_leavened()
        || bowl.chance_below(band.low) < LIKELY
    {
        return Vec::new();
    }
    vec![Finding {
        name: "crumb_low_weak",
        severity: Severity::Note,
        title: "Crumb below the textbook band".into(),
        sentence: format!(
            "The crumb is reckoned at pH {}, below the {} that textbooks give {}. This is weak evidence: add no soda for it.",
            show::ph(bowl.ph.mean.value()),
            show::ph(band.low),
            facts.kind.words()
        ),
        why: "Cakes on powder alone are reckoned 0.4 to 0.7 below the bands that textbooks quote. Either may be off: aluminium and calcium phosphates may take up less soda than the trade's values say.",
        limit: format!("Crumb pH from {}. {}", show::ph(band.low), band.source),
        lines: facts.powders().map(|line| line.line).collect(),
        remedies: Vec::new(),
    }]
}
