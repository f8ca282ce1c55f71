//! A batter that sets later than its bubbles last, or not at all.

use super::leavening::VERY_LIKELY;
use super::setting::{Side, at_words, chance_later, judged, lines, too_close};
use super::{Facts, Finding, Severity, mend};
use crate::baking::balance::{Kind, Setting};
use crate::baking::chemistry::course::HOTTEST;
use crate::baking::quantity::show;

/// Above this the last of the oven's rise is over and the bubbles fall before the crumb holds, C: where starch peaks
/// with 1.3 g of sugar to a gram of water (worked out: starch then begins above 88 C, and such cakes fall).
const LATE: f64 = 94.0;

/// The limit of a kind: a brownie is meant to fall and stay soft, as long as it sets at all. Nothing gets hotter than the
/// hottest that a crumb gets at this height.
fn limit(facts: &Facts) -> f64 {
    let hottest = facts.handling.hottest();
    match facts.kind {
        Kind::Brownie => hottest,
        _ => LATE.min(hottest),
    }
}

/// Whether it sets later than that, or may: a mend leaves no doubt.
pub(super) fn is_late(facts: &Facts, setting: &Setting) -> bool {
    Side::of(chance_later(setting, limit(facts))) != Side::Within
}

/// How likely it sets later than that; `None` where it may not be judged.
pub(in crate::baking) fn chance_late(facts: &Facts) -> Option<f64> {
    Some(chance_later(judged(facts)?, limit(facts)))
}

/// Checks the setting temperature against what a crumb reaches.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let Some(setting) = judged(facts) else {
        return Vec::new();
    };
    let hottest = facts.handling.hottest();
    let never = chance_later(setting, hottest) >= VERY_LIKELY;
    let side = Side::of(chance_later(setting, limit(facts)));
    let found = match side {
        Side::Within => return Vec::new(),
        Side::TooClose => too_close("sets_late", "late", setting),
        Side::Beyond => Finding {
            name: "sets_late",
            severity: if never {
                Severity::Fault
            } else {
                Severity::Look
            },
            title: if never { "Does not set" } else { "Sets late" }.into(),
            sentence: format!(
                "It is reckoned to set at {}, {}.",
                at_words(setting),
                if never {
                    "hotter than a crumb gets"
                } else {
                    "when its bubbles begin to fall"
                }
            ),
            ..too_close("sets_late", "late", setting)
        },
    };
    vec![Finding {
        why: "Sugar in the water makes starch and egg set hotter. What does not set while gas and steam still hold it up falls again: sunken, wet, with a gummy layer.",
        limit: format!(
            "A crumb gets to {} °C at most ({}). Worth a look from {} °C, but for brownies: starch peaks at {} °C with 1.3 g of sugar to a gram of water (our own limit, worked out).",
            show::fixed(hottest, 0),
            if hottest < HOTTEST {
                "98 °C at the sea by common practice; here it falls with where water boils"
            } else {
                "common practice"
            },
            show::fixed(LATE.min(hottest), 0),
            show::fixed(LATE, 0),
        ),
        lines: lines(facts),
        remedies: if side == Side::Beyond {
            mend::less_sugar(facts)
        } else {
            Vec::new()
        },
        ..found
    }]
}
