//! Too little gas for the flour.

use super::VerdictKind;
use super::{Facts, Finding, Severity, gas_band, gas_verdict, mend};
use crate::baking::quantity::show;

/// Checks gas against the lower end of its band.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let verdict = gas_verdict(facts);
    let (VerdictKind::Short, Some(bowl), true) = (verdict.kind, facts.bowl, facts.is_leavened())
    else {
        return Vec::new();
    };
    vec![Finding {
        name: "gas_short",
        severity: Severity::Fault,
        title: verdict.title,
        sentence: verdict.sentence,
        why: "With too little gas a batter stays low and close, unless beaten air or steam lifts it.",
        limit: format!(
            "At least {} % of the flour. {}",
            show::plain(gas_band(facts).low),
            gas_band(facts).source
        ),
        lines: facts.leaveners().map(|line| line.line).collect(),
        remedies: mend::more_gas(facts, bowl),
    }]
}
