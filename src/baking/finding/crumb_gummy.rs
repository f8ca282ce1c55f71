//! A crumb so acid that it sets badly.

use super::leavening::LIKELY;
use super::{Facts, Finding, Severity, VerdictKind, acid_verdict, mend};
use crate::baking::balance::Kind;
use crate::baking::quantity::show;

/// Below this gluten softens and protein sets early.
const BELOW: f64 = 5.0;

/// Checks the crumb against it, in kinds that are not meant to be sour.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let Some(bowl) = facts.bowl else {
        return Vec::new();
    };
    let meant = matches!(facts.kind, Kind::AngelFood | Kind::FruitCake | Kind::Yeast);
    if meant || bowl.chance_below(BELOW) < LIKELY || !facts.holes().is_empty() {
        return Vec::new();
    }
    vec![Finding {
        name: "crumb_gummy",
        severity: Severity::Look,
        title: "Crumb gummy from acid".into(),
        sentence: format!(
            "The crumb is reckoned at pH {}. Below {} it sets early and bakes tight, gummy and tough.",
            show::ph(bowl.ph.mean.value()),
            show::ph(BELOW)
        ),
        why: "Acid softens gluten, sets egg some degrees sooner, and thins starch where it is strong.",
        limit: "Crumb pH from 5.0: cereal textbooks, from memory.".into(),
        lines: facts
            .sour()
            .into_iter()
            .map(|(line, _)| line)
            .take(3)
            .collect(),
        // The mends of a bowl that is short stand with that finding.
        remedies: if acid_verdict(facts).kind == VerdictKind::Short {
            Vec::new()
        } else {
            mend::more_soda(facts, bowl)
        },
    }]
}
