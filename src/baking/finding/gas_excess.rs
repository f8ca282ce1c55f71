//! More gas than the flour can hold.

use super::VerdictKind;
use super::{Facts, Finding, Severity, gas_band, gas_verdict, mend};
use crate::baking::quantity::show;

/// Checks gas against the upper end of its band.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let verdict = gas_verdict(facts);
    let (VerdictKind::Spare, Some(bowl)) = (verdict.kind, facts.bowl) else {
        return Vec::new();
    };
    vec![Finding {
        name: "gas_excess",
        severity: Severity::Fault,
        title: verdict.title,
        sentence: verdict.sentence,
        why: "Bubbles outgrow their walls, run together and burst: the cake rises, then falls, with a coarse crumb.",
        limit: format!(
            "At most {} % of the flour. {}",
            show::plain(gas_band().high),
            gas_band().source
        ),
        lines: facts.leaveners().map(|line| line.line).collect(),
        remedies: mend::less_gas(facts, bowl),
    }]
}
