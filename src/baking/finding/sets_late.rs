//! A batter that sets later than its bubbles last, or not at all.

use super::leavening::VERY_LIKELY;
use super::setting::{Side, at_words, chance_later, judged, lines, too_close};
use super::{Facts, Finding, Severity, mend};
use crate::baking::balance::{Kind, Setting};

/// The hottest that a crumb gets, C: cakes are done from 93 to 99 (common practice).
const HOTTEST: f64 = 98.0;

/// Above this the last of the oven's rise is over and the bubbles fall before the crumb holds, C: where starch peaks
/// with 1.3 g of sugar to a gram of water (worked out: starch then begins above 88 C, and such cakes fall).
const LATE: f64 = 94.0;

/// The limit of a kind: a brownie is meant to fall and stay soft, as long as it sets at all.
fn limit(kind: Kind) -> f64 {
    if kind == Kind::Brownie { HOTTEST } else { LATE }
}

/// Whether it sets later than that, or may: a mend leaves no doubt.
pub(super) fn is_late(kind: Kind, setting: &Setting) -> bool {
    Side::of(chance_later(setting, limit(kind))) != Side::Within
}

/// Checks the setting temperature against what a crumb reaches.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let Some(setting) = judged(facts) else {
        return Vec::new();
    };
    let never = chance_later(setting, HOTTEST) >= VERY_LIKELY;
    let side = Side::of(chance_later(setting, limit(facts.kind)));
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
        limit: "A crumb gets to 98 °C at most (common practice). Worth a look from 94 °C, but for brownies: there starch peaks with 1.3 g of sugar to a gram of water (our own limit, worked out).".into(),
        lines: lines(facts),
        remedies: if side == Side::Beyond {
            mend::less_sugar(facts)
        } else {
            Vec::new()
        },
        ..found
    }]
}
