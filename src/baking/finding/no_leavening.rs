//! Nothing that makes gas, in a batter that wants it.

use super::{Facts, Finding, Severity, VerdictKind, gas_band, gas_verdict, mend};
use crate::baking::quantity::show;

/// Checks for soda, powder or self-raising flour.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let (false, VerdictKind::Short, Some(bowl)) =
        (facts.is_leavened(), gas_verdict(facts).kind, facts.bowl)
    else {
        return Vec::new();
    };
    vec![Finding {
        name: "no_leavening",
        severity: Severity::Look,
        title: "No leavening".into(),
        sentence: format!(
            "Nothing in the batter makes gas, and {} want {} % of the flour of it. Was a line left out?",
            facts.kind.words(),
            show::plain(gas_band(facts).low)
        ),
        why: "Air creamed into butter lifts a pound cake; a thinner batter cannot hold it.",
        limit: format!(
            "At least {} % of the flour. {}",
            show::plain(gas_band(facts).low),
            gas_band(facts).source
        ),
        lines: Vec::new(),
        remedies: mend::more_gas(facts, bowl),
    }]
}
