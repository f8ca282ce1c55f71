//! More gas than the flour can hold.

use super::VerdictKind;
use super::{Facts, Finding, Severity, gas_band, gas_verdict, mend};
use crate::baking::quantity::{Mass, show};

/// What the flour of any cake was seen to hold, per cent of gas (Book and Brill 2015).
const HELD: f64 = 2.0;

/// Checks gas against the upper end of its band.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let verdict = gas_verdict(facts);
    let (VerdictKind::Spare, Some(bowl)) = (verdict.kind, facts.bowl) else {
        return Vec::new();
    };
    vec![Finding {
        name: "gas_excess",
        // A batter on powder may still hold what one on soda does, and is worth a look only.
        severity: if bowl.gas.made.mean.to_grams()
            > HELD / 100.0 * facts.flour().map_or(0.0, Mass::to_grams)
        {
            Severity::Fault
        } else {
            Severity::Look
        },
        title: verdict.title,
        sentence: verdict.sentence,
        why: "Bubbles outgrow their walls, run together and burst: the cake rises, then falls, with a coarse crumb.",
        limit: format!(
            "At most {} % of the flour. {}",
            show::plain(gas_band(facts).high),
            gas_band(facts).source
        ),
        lines: facts.leaveners().map(|line| line.line).collect(),
        remedies: mend::less_gas(facts, bowl),
    }]
}
