//! What a plan is held to: the crumb's pH and the gas within what the kind bears.
//!
//! The kind's ranges of sugar, fat, egg and the rest are no limits here. The trade counts them by weight, butter with its
//! water and chocolate not at all, so that a swap which keeps every gram of fat moves them: held to them, a plan takes
//! butter out for the shortening that stands for chocolate's fat. What a plan keeps are the true sums; where it leaves a
//! range, that is said.

use crate::baking::chemistry::Bowl;
use crate::baking::finding::{Facts, VerdictKind, acid_verdict, gas_band_with, ph_band};

/// How far the crumb's pH may move at no cost: less than a strip of paper tells (our own judgement).
const PH_FREE: f64 = 0.1;
/// The part of the upper limit of gas up to which a batter may be led, as the mends do; and so far clear of the lower one.
const GAS_ROOM: f64 = 0.9;

/// The pH of a crumb and how far it may move.
#[derive(Clone, Copy)]
pub struct Crumb {
    /// Where it is reckoned.
    pub aim: f64,
    /// Where it has to stay.
    pub band: (f64, f64),
    /// Between which meq the base that is missing at the aim may lie at no cost.
    pub free: (f64, f64),
}

impl Crumb {
    /// A crumb is to keep its pH, about. Where that lies outside what its kind wants, everything from there to the nearer
    /// end of the target is as good: a swap may mend it, and need not.
    pub fn of(facts: &Facts, bowl: &Bowl) -> Self {
        let band = ph_band(facts.kind);
        let now = bowl.ph.mean.value();
        let aim = match acid_verdict(facts).kind {
            VerdictKind::Short | VerdictKind::Spare => {
                now.clamp(band.aim_from_below, band.aim_from_above)
            }
            _ => now,
        };
        let (low, high) = (now.min(aim) - PH_FREE, now.max(aim) + PH_FREE);
        let missing = |ph: f64| bowl.missing(ph).to_milliequivalents();
        Self {
            aim,
            band: (
                if now < band.low {
                    now - PH_FREE
                } else {
                    band.low
                },
                if now > band.high {
                    now + PH_FREE
                } else {
                    band.high
                },
            ),
            free: (missing(aim) - missing(high), missing(aim) - missing(low)),
        }
    }
}

/// Between which mmol of bicarbonate the gas has to stay, of `bicarbonate` that the recipe has: the kind's band, and about
/// what there is where that lies outside.
pub fn gas_limits(facts: &Facts, flour: f64, bicarbonate: f64) -> (f64, f64) {
    const GRAMS_PER_MMOL: f64 = 0.044_009;
    // Where acid wants soda, soda is there, and gives much of its gas on the bench.
    let band = gas_band_with(facts, true);
    let made = facts
        .bowl
        .map_or(0.0, |bowl| bowl.gas.made.mean.to_grams() / GRAMS_PER_MMOL);
    // Of what stays in the crumb as bicarbonate there is no gas; a crumb that keeps its pH keeps as much of it.
    let part = if bicarbonate > 0.0 && made > 0.0 {
        made / bicarbonate
    } else {
        1.0
    };
    let of_flour = |percent: f64| percent / 100.0 * flour / GRAMS_PER_MMOL / part;
    let low = if facts.kind.leans_on_air() {
        0.0
    } else {
        of_flour(band.low / GAS_ROOM)
    };
    (
        low.min(bicarbonate),
        of_flour(band.high * GAS_ROOM).max(bicarbonate),
    )
}
