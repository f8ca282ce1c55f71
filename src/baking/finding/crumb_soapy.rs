//! A crumb that tastes of soap.

use super::leavening::LIKELY;
use super::{Facts, Finding, Severity, VerdictKind, acid_verdict, left_over, ph_band};
use crate::baking::balance::Kind;
use crate::baking::quantity::show;

/// From here on soda is tasted in most crumbs.
const ABOVE: f64 = 8.3;

/// Checks the crumb against it; devil's food bears more, cocoa being bitter itself.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let Some(bowl) = facts.bowl.filter(|_| facts.has_loose_soda()) else {
        return Vec::new();
    };
    let limit = match facts.kind {
        Kind::DevilsFood | Kind::DarkChocolate => ph_band(facts.kind).high,
        _ => ABOVE,
    };
    if 1.0 - bowl.chance_below(limit) < LIKELY || !facts.holes().is_empty() {
        return Vec::new();
    }
    // Soda to spare says it already.
    let (left_over, how) = if acid_verdict(facts).kind == VerdictKind::Spare {
        (String::new(), "")
    } else {
        (left_over::sentence(facts), left_over::SOURCE)
    };
    vec![Finding {
        name: "crumb_soapy",
        severity: Severity::Look,
        title: "Soapy and dark".into(),
        sentence: format!(
            "The crumb is reckoned at pH {}. Above {} it tastes of soap and metal, and browns two or three times as fast.{left_over}",
            show::ph(bowl.ph.mean.value()),
            show::ph(limit)
        ),
        why: "Alkali is tasted, yellows flour and hastens browning: the crust is dark before the middle is baked.",
        limit: format!(
            "Crumb pH up to {}: taste from 8.3 to 8.5, cereal textbooks, from memory.{how}",
            show::ph(limit)
        ),
        lines: facts.sodas().map(|line| line.line).collect(),
        remedies: Vec::new(),
    }]
}
