//! How full the pan stands.

use super::{By, Reading};
use crate::baking::finding::{
    BAKED_OVER, BAKED_SHALLOW, Facts, SHALLOW, chance_above, full, is_guessed, used,
};
use crate::baking::quantity::show;

/// How well the limits of a fill are known, as a part of them (our own).
const DOUBT: f64 = 0.05;

/// The fullest pan above its limits, or the emptiest below them: by its batter, or by the crumb that is expected if that says
/// more.
pub fn fill(facts: &Facts, above: bool) -> Option<Reading> {
    let limits = match above {
        true => [full(facts), BAKED_OVER],
        false => [SHALLOW, BAKED_SHALLOW],
    };
    let pans = used(facts);
    let chances = pans.iter().map(|fill| {
        let past = |mean: f64, deviation: f64, limit: f64| {
            let over = chance_above(mean, deviation.hypot(limit * DOUBT), limit);
            if above { over } else { 1.0 - over }
        };
        let share = &fill.share;
        let raw = past(share.mean.to_fraction(), share.deviation(), limits[0]);
        let baked = fill.baked.map(|baked| {
            past(
                baked.of_brim.mean.to_fraction(),
                baked.of_brim.deviation(),
                limits[1],
            )
        });
        (baked.map_or(raw, |baked| baked.max(raw)), fill)
    });
    let (chance, fill) = chances.max_by(|a, b| a.0.total_cmp(&b.0))?;
    let by = match is_guessed(facts) {
        true => By::Usual,
        false => By::Reckoned,
    };
    let baked = fill.baked.map_or(String::new(), |baked| {
        format!(
            ", and the crumb is expected at {} of the brim",
            show::percent(baked.of_brim.mean)
        )
    });
    Reading::new(
        chance,
        by,
        format!(
            "The batter stands at {} of the pan's depth{baked}.",
            show::percent(fill.share.mean)
        ),
    )
}
