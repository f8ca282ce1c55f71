//! Much sodium.

use super::{Facts, Finding, Severity};
use crate::baking::balance::{Constituent, total};
use crate::baking::quantity::{Share, show};

/// Salt of 1.5 g in 100 g of food, as sodium, g.
const HIGH: f64 = 0.6;
/// Salt of 1.8 g in a serving of more than 100 g, as sodium, g.
const HIGH_SERVING: f64 = 0.72;
/// Salt of 6 g, as sodium, g: the reference intake of a day.
const DAY: f64 = 2.4;

/// Checks the batter's sodium, and that of a serving, against what UK labels call high.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let sodium = total(facts.formula, Constituent::Sodium)
        .grams
        .mean
        .to_grams();
    let batter = facts.percentages.batter.mean.to_grams();
    let in_100 = sodium / batter.max(1e-9) * 100.0;
    let large = |servings: &f64| batter / servings > 100.0 && sodium / servings > HIGH_SERVING;
    let high = in_100 > HIGH || facts.servings.as_ref().is_some_and(large);
    if batter <= 0.0 || !high {
        return Vec::new();
    }
    let serving = facts.servings.map_or_else(String::new, |servings| {
        format!(
            ", {} in each of {}, {} of a day's reference intake",
            show::milligrams(sodium / servings),
            show::plain(servings),
            show::percent(Share::fraction(sodium / servings / DAY)),
        )
    });
    vec![Finding {
        name: "sodium_much",
        severity: Severity::Note,
        title: "Much sodium".into(),
        sentence: format!(
            "{} of sodium in 100 g of batter{serving}; a baked cake is a tenth lighter. A figure, not advice.",
            show::milligrams(in_100)
        ),
        why: "Soda and powder bring sodium beside the salt. Potassium bicarbonate and low-sodium powder bring none.",
        limit: "At most 600 mg in 100 g, 1.5 g of salt, and 720 mg in a serving of more than 100 g, 1.8 g of salt: called high by the UK's \
                front-of-pack guidance of 2013. A day's reference intake is 6 g of salt, 2,400 mg of sodium: Regulation (EU) No 1169/2011, annex XIII. \
                Both from memory.".into(),
        lines: facts.lines_of(|line| {
            line.ingredient.composition.sodium.is_some_and(|share| {
                line.grams.mean.to_grams() * share.to_fraction() > sodium / 10.0
            })
        }),
        remedies: Vec::new(),
    }]
}
