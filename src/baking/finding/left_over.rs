//! What becomes of soda that finds no acid.

use super::Facts;
use crate::baking::chemistry::release::dry_soda;
use crate::baking::quantity::{Mass, Share, show};

/// Temperatures between which a crust is by the end, C (from memory: oven air is hotter, browning begins near 120).
const CRUST: (f64, f64) = (120.0, 150.0);
/// How long it is dry and that hot, minutes (common practice, no source).
const DRY: f64 = 10.0;

/// Solid soda is named from here on.
const COUNTS: Mass = Mass::grams(0.1);

/// How much of it does not dissolve, and how much is split by heat in the crumb and in the crust, with a space before it;
/// empty where nothing is left or there is no water.
pub fn sentence(facts: &Facts) -> String {
    let Some((bowl, crumb)) = facts
        .bowl
        .and_then(|bowl| Some((bowl, bowl.split_in_crumb()?)))
    else {
        return String::new();
    };
    let undissolved = if bowl.undissolved >= COUNTS {
        format!(
            " There is too little water for it: {} of soda stay undissolved, which the pH leaves out.",
            show::mass(bowl.undissolved)
        )
    } else {
        String::new()
    };
    let crust = [CRUST.0, CRUST.1].map(|celsius| {
        let split = Share::fraction(dry_soda(DRY, celsius));
        show::percent(split)
    });
    format!(
        "{undissolved} Heat leaves it there: in the wet crumb, {} °C at most, about {} of it loses its gas. Only in the crust, dry and at \
         {} to {} °C for some {} minutes, {} to {} of it does, and washing soda stays, more alkaline still.",
        show::fixed(facts.handling.hottest(), 0),
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
                          soda by Wu and Shih 1993, the crust's heat and time from memory. At 25 °C 100 g of water dissolve 10.3 g of it (CRC handbook, from memory).";
