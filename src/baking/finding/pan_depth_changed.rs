//! Another pan in which the batter stands deeper or shallower, and so bakes longer or shorter.

use super::{Facts, Finding, Severity};
use crate::baking::quantity::{LengthUnit, Share, show};

/// Depth may change by a fifth before the recipe's time is worth nothing (common practice, no source).
const FREE: f64 = 0.2;

/// Compares the batter's depth before and after.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let (Some(own), Some(split)) = (facts.fit.own_fill, &facts.fit.split) else {
        return Vec::new();
    };
    // Of several pans the one that differs most.
    let changes = split.parts.iter().map(|part| {
        let change = part.fill.depth.mean / own.depth.mean - 1.0;
        (change, part.fill.pan)
    });
    let Some((change, pan)) = changes
        .filter(|(change, _)| change.abs() > FREE)
        .max_by(|one, other| one.0.abs().total_cmp(&other.0.abs()))
    else {
        return Vec::new();
    };
    let of = match split.parts.len() {
        1 => String::new(),
        _ => format!(
            " in the {}",
            pan.one().label(pan.unit(LengthUnit::Centimetres))
        ),
    };
    let (deeper, longer) = if change > 0.0 {
        ("deeper", "longer, in a cooler oven if the crust runs ahead")
    } else {
        ("shallower", "shorter")
    };
    vec![Finding {
        name: "pan_depth_changed",
        severity: Severity::Look,
        title: "Another depth, another time".into(),
        sentence: format!(
            "The batter{of} stands {} {deeper} than in the recipe's pan, so it bakes {longer}. Go by the signs of doneness, not by the recipe's minutes.",
            show::percent(Share::fraction(change.abs()))
        ),
        why: "Heat reaches the middle later the deeper the batter stands, faster than in proportion.",
        limit: "Pointed out from a change of 20 % in depth: common practice, no source.".into(),
        lines: Vec::new(),
        remedies: Vec::new(),
    }]
}
