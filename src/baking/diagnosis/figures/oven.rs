//! The oven's heat, and how far the cake was baked.

use super::{By, Reading};
use crate::baking::diagnosis::{Known, OvenKnown};
use crate::baking::finding::chance_above;
use crate::baking::quantity::{Share, Temperature, show};

/// A recipe's setting is believed so far from the usual one, K (our own limit).
const BELIEVED: f64 = 25.0;
/// An oven that is off by more than this bakes another cake, K (common practice, no source).
const OFF: f64 = 15.0;
/// How well a thermometer in the oven tells its heat, and how well a dial does, K (common practice, no source).
const DOUBTS: [f64; 2] = [5.0, 10.0];

/// The oven hotter or cooler than is wanted: by a thermometer in it, else by what it is set to.
pub fn heat(oven: &OvenKnown, hot: bool) -> Option<Reading> {
    let usual = oven.usual.to_celsius();
    let wanted = oven.named.map_or(usual, Temperature::to_celsius);
    let wanted = wanted.clamp(usual - BELIEVED, usual + BELIEVED);
    let (found, by, doubt, what) = match (oven.measured, oven.dial) {
        (Some(measured), _) => (measured, By::Measured, DOUBTS[0], "was measured at"),
        (None, Some(dial)) => (dial, By::Usual, DOUBTS[1], "is set to"),
        (None, None) => return None,
    };
    let found = found.to_celsius();
    let chance = match hot {
        true => chance_above(found, doubt, wanted + OFF),
        false => chance_above(wanted - OFF, doubt, found),
    };
    let beyond = (found - usual).abs() > BELIEVED;
    let words = match beyond {
        true => format!("{} °C is usual for the kind", show::fixed(usual, 0)),
        false => format!("{} °C is wanted", show::fixed(wanted, 0)),
    };
    Reading::new(
        chance,
        by,
        format!(
            "The oven {what} {} °C as a still one; {words}.",
            show::fixed(found, 0)
        ),
    )
}

/// How well a probe tells the core, K (common practice, no source).
const PROBE: f64 = 1.5;
/// So much of a time is short and so much long, as parts of it, and how well such times are known (our own).
const SHORT: f64 = 0.85;
const LONG: f64 = 1.2;
const TIMING: f64 = 0.1;

/// Taken out before it was done: by its core, else by its minutes.
pub fn too_short(known: &Known) -> Option<Reading> {
    let by_core = || {
        let (core, wanted) = (known.measured.core?, known.oven.core?);
        Reading::new(
            chance_above(wanted.low.to_celsius(), PROBE, core.to_celsius()),
            By::Measured,
            core_words(core, wanted.low),
        )
    };
    by_core().or_else(|| {
        let time = Time::of(known)?;
        let chance = chance_above(time.early, time.doubt, time.minutes);
        Reading::new(chance, By::Reckoned, time.words)
    })
}

/// A cake that lost more of its weight than this in the oven is dry, and how well that is known: 8 to 12 % is usual (common
/// practice, no source).
const LOSS: [f64; 2] = [0.14, 0.02];

/// Baked on after it was done: by what it lost, else by its minutes, else by its core, which stands still near its end.
pub fn too_long(known: &Known) -> Option<Reading> {
    let measured = known.measured;
    let by_loss = || {
        let lost = 1.0 - measured.mass_out? / measured.mass_in?;
        let words = format!(
            "It lost {} of its weight in the oven; 8 to 12 % is usual.",
            show::percent(Share::fraction(lost))
        );
        let chance = chance_above(lost, LOSS[1], LOSS[0]);
        (0.0..1.0)
            .contains(&lost)
            .then(|| Reading::new(chance, By::Measured, words))?
    };
    let by_core = || {
        let (core, wanted) = (measured.core?, known.oven.core?);
        Reading::new(
            chance_above(core.to_celsius(), PROBE, wanted.high.to_celsius()),
            By::Measured,
            core_words(core, wanted.high),
        )
    };
    by_loss()
        .or_else(|| {
            let time = Time::of(known)?;
            let chance = chance_above(time.minutes, time.doubt, time.late);
            Reading::new(chance, By::Reckoned, time.words)
        })
        .or_else(by_core)
}

fn core_words(core: Temperature, limit: Temperature) -> String {
    format!(
        "Its core was {} °C; the limit for its kind is {} °C.",
        show::fixed(core.to_celsius(), 0),
        show::fixed(limit.to_celsius(), 0)
    )
}

/// The minutes that it baked beside those that it wants.
struct Time {
    minutes: f64,
    early: f64,
    late: f64,
    doubt: f64,
    words: String,
}

impl Time {
    /// By the forecast of heat flow, else by the recipe's own time.
    fn of(known: &Known) -> Option<Self> {
        let minutes = known
            .measured
            .bake_minutes
            .filter(|minutes| minutes.is_finite() && *minutes > 0.0)?;
        let said = |low: f64, high: f64, by: &str| {
            format!(
                "It baked {} minutes; {by} {} to {}.",
                show::fixed(minutes, 0),
                show::fixed(low, 0),
                show::fixed(high, 0)
            )
        };
        if let Some([low, usual, high]) = known.oven.forecast {
            return Some(Self {
                minutes,
                early: low,
                late: high,
                doubt: usual * TIMING,
                words: said(low, high, "heat flow reckons with"),
            });
        }
        let [low, high] = known.oven.baked?;
        Some(Self {
            minutes,
            early: low * SHORT,
            late: high * LONG,
            doubt: low * TIMING,
            words: said(low, high, "the recipe says"),
        })
    }
}
