//! What heat does to soda that finds no acid.

use super::Facts;
use crate::baking::chemistry::course::HOTTEST;
use crate::baking::chemistry::release::dry_soda;
use crate::baking::quantity::{Share, show};

/// Temperatures between which a crust is by the end, C (from memory: oven air is hotter, browning begins near 120).
const CRUST: (f64, f64) = (120.0, 150.0);
/// How long it is dry and that hot, minutes (common practice, no source).
const DRY: f64 = 10.0;

/// A sentence on how much of the soda left over is split in the crumb and in the crust, with a space before it; empty
/// where nothing is left or there is no water.
pub fn sentence(facts: &Facts) -> String {
    let Some(crumb) = facts.bowl.and_then(|bowl| bowl.split_in_crumb()) else {
        return String::new();
    };
    let crust = [CRUST.0, CRUST.1].map(|celsius| {
        let split = Share::fraction(dry_soda(DRY, celsius));
        show::percent(split)
    });
    format!(
        " Heat leaves it there: in the wet crumb, {} °C at most, about {} of it loses its gas. Only the crust, dry and at {} to {} °C for \
         some {} minutes, loses that of {} to {}; what is left of it there is washing soda, more alkaline still.",
        show::plain(HOTTEST),
        show::percent(crumb),
        show::plain(CRUST.0),
        show::plain(CRUST.1),
        show::plain(DRY),
        crust[0],
        crust[1],
    )
}

/// How that was got, with a space before it.
pub const SOURCE: &str = " Soda in heat: in the crumb the balance of its water with the gas in the bubbles, worked out; in the crust the rate of dry \
                          soda by Wu and Shih 1993, the crust's heat and time from memory.";
