//! Gas, the crumb's pH and the time that a batter stood.

use super::{By, Reading};
use crate::baking::balance::Kind;
use crate::baking::chemistry::METER;
use crate::baking::chemistry::course::Handling;
use crate::baking::diagnosis::Known;
use crate::baking::estimate::NORMAL_95;
use crate::baking::finding::{Facts, chance_above, gas_band, is_weak, ph_band, soda_left};
use crate::baking::quantity::{Share, show};

/// How well an end of the gas band is known, as a part of it (our own, as for the ends of ranges).
const DOUBT: f64 = 0.1;

/// Gas above or below its band. What beaten air lifts may have as little as it likes, and what yeast makes is not reckoned.
pub fn gas(facts: &Facts, above: bool) -> Option<Reading> {
    let (bowl, flour) = (facts.bowl?, facts.flour()?);
    if facts.kind == Kind::Yeast || !facts.ammonia().is_empty() || !facts.holes().is_empty() {
        return None;
    }
    let band = gas_band(facts);
    let percent = bowl.gas.made.map(|made| Share::fraction(made / flour));
    let limit = if above { band.high } else { band.low };
    let deviation = (percent.deviation() * 100.0).hypot(limit * DOUBT / NORMAL_95);
    let over = chance_above(percent.mean.to_percent(), deviation, limit);
    let by_air = facts.kind.leans_on_air();
    let made = format!(
        "Soda and powder make gas of {} of the flour",
        show::percent_with_range(&percent)
    );
    let kind = facts.kind.words();
    Reading::new(
        match above {
            true => over,
            false if by_air || limit <= 0.0 => 0.0,
            false => 1.0 - over,
        },
        By::Reckoned,
        match by_air && !above {
            true => format!("{made}; beaten air lifts {kind}."),
            false => format!(
                "{made}; {kind} hold {} to {} %.",
                show::plain(band.low),
                show::plain(band.high)
            ),
        },
    )
}

/// The crumb's pH above or below its band: as it was measured, else as it is reckoned.
pub fn ph(known: &Known, above: bool) -> Option<Reading> {
    let facts = known.facts;
    let band = ph_band(facts.kind);
    let wants = format!(
        "{} want {} to {}",
        facts.kind.words(),
        show::ph(band.low),
        show::ph(band.high)
    );
    if let Some(ph) = known.measured.crumb_ph {
        let ph = ph.value();
        let chance = match above {
            true => chance_above(ph, METER, band.high),
            false => chance_above(band.low, METER, ph),
        };
        let words = format!("The crumb was measured at pH {}; {wants}.", show::ph(ph));
        return Reading::new(chance, By::Measured, words);
    }
    let bowl = facts.bowl?;
    let is_blind = !facts.holes().is_empty() || !facts.ammonia().is_empty();
    if is_blind || !above && is_weak(facts) {
        return None;
    }
    let chance = match above {
        false => bowl.chance_below(band.low),
        // Where no soda is loose there is none to spare.
        true if !facts.has_loose_soda() => 0.0,
        true => {
            let spare = facts.soda_left().map_or(0.0, |(mean, deviation)| {
                chance_above(mean, deviation, soda_left(facts.kind).spare)
            });
            spare.max(1.0 - bowl.chance_below(band.high))
        }
    };
    let [mean, low, high] =
        [bowl.ph.mean, bowl.ph.low, bowl.ph.high].map(|ph| show::ph(ph.value()));
    let words = format!("Crumb pH is reckoned at about {mean} ({low} to {high}); {wants}.");
    Reading::new(chance, By::Reckoned, words)
}

/// Gas lost beyond that of a usual wait, as a part of all, from which on it is missed; and how well that is known (our own).
const MISSED: [f64; 2] = [0.1, 0.03];
/// Minutes from which on a batter dries on top, and how well that is known (common practice, no source).
const LONG: [f64; 2] = [30.0, 8.0];

/// The time that the batter stood, by itself and by the gas that it cost.
pub fn stood(known: &Known) -> Option<Reading> {
    let waited = known
        .measured
        .waited_minutes
        .filter(|minutes| minutes.is_finite() && *minutes >= 0.0)?;
    let facts = known.facts;
    let usual = Handling {
        waits: Handling::default().waits,
        ..facts.handling
    };
    let lost = facts.bowl.and_then(|bowl| {
        let at_once = bowl.changed(facts.formula, &usual)?;
        Some(bowl.gas.lost.to_fraction() - at_once.gas.lost.to_fraction())
    });
    let by_gas = lost.map_or(0.0, |lost| chance_above(lost, MISSED[1], MISSED[0]));
    let by_time = chance_above(waited, LONG[1], LONG[0]);
    let lost = lost
        .filter(|lost| *lost > 0.0)
        .map_or(String::new(), |lost| {
            format!(
                ", which costs {} of its gas more than a usual wait",
                show::percent(Share::fraction(lost))
            )
        });
    Reading::new(
        by_gas.max(by_time),
        By::Measured,
        format!(
            "It stood {} minutes before the oven{lost}.",
            show::fixed(waited, 0)
        ),
    )
}
