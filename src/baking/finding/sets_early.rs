//! A batter that sets before its gas is made, or before heat has swollen its bubbles.

use super::setting::{Side, at_words, chance_later, judged, lines, too_close};
use super::{Facts, Finding, Severity};
use crate::baking::balance::Setting;
use crate::baking::chemistry::course;

/// The part of its gas that a batter has made when it sets: with less the rest tears a crumb that is set (our own
/// limit).
const MADE: f64 = 0.5;

/// The least that a cake of beaten egg or a creamed layer sets at, C: half of its usual sugar, 0.38 g to a gram of
/// water, puts starch's peak there (worked out). A sponge with 10 % of sugar in place of 52 had 0.7 mL/g in place of 1.94
/// (Cavalcante and Silva, read in excerpts).
const EARLY: f64 = 73.0;

/// Checks both.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let Some(setting) = judged(facts) else {
        return Vec::new();
    };
    let by_gas = gas_is_late(facts, setting);
    let is_cake = facts.kind.is_foam() || facts.kind.is_layer() || facts.kind.leans_on_air();
    let by_heat = if is_cake {
        Side::of(1.0 - chance_later(setting, EARLY))
    } else {
        Side::Within
    };
    let (side, reason) = match (by_gas, by_heat) {
        (Side::Beyond, _) => (Side::Beyond, "before half of its gas is made"),
        (_, Side::Beyond) => (Side::Beyond, "before heat has swollen its bubbles"),
        (Side::Within, Side::Within) => return Vec::new(),
        _ => (Side::TooClose, ""),
    };
    let close = too_close("sets_early", "early", setting);
    let found = match side {
        Side::Beyond => Finding {
            severity: Severity::Look,
            title: "Sets early".into(),
            sentence: format!("It is reckoned to set at {}, {reason}.", at_words(setting)),
            ..close
        },
        _ => close,
    };
    vec![Finding {
        why: "What sets early stays low and tight, and late gas breaks through at the top: a peak, cracks, tunnels.",
        limit: "Half of the gas made where it sets, and 73 °C for sponges, pound and layer cakes, where half of their usual sugar would put it (our own limits, worked out). Sponges with a fifth of the sugar had a third of the volume (Cavalcante and Silva, read in excerpts).".into(),
        lines: lines(facts),
        ..found
    }]
}

/// Whether less than that part of the gas is made where it sets, and at the hot end of its range.
fn gas_is_late(facts: &Facts, setting: &Setting) -> Side {
    let Some(bowl) = facts.bowl else {
        return Side::Within;
    };
    let made = |celsius: f64| course::at(&bowl.course, celsius).map_or(0.0, |state| state.made);
    let all = made(f64::INFINITY);
    if all <= 0.0 {
        return Side::Within;
    }
    let short = |celsius: f64| made(celsius) < MADE * all;
    match setting.at {
        at if short(at.high.to_celsius()) => Side::Beyond,
        at if short(at.mean.to_celsius()) => Side::TooClose,
        _ => Side::Within,
    }
}
