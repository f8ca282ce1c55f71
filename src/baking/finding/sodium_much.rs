//! Much sodium.

use super::{Facts, Finding, Severity};
use crate::baking::balance::{Constituent, total};
use crate::baking::quantity::show;

/// Salt of 1.5 g in 100 g of food, as sodium, g.
const HIGH: f64 = 0.6;

/// Checks the batter's sodium against what UK labels call high.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let sodium = total(facts.formula, Constituent::Sodium)
        .grams
        .mean
        .to_grams();
    let batter = facts.percentages.batter.mean.to_grams();
    let in_100 = sodium / batter.max(1e-9) * 100.0;
    if batter <= 0.0 || in_100 <= HIGH {
        return Vec::new();
    }
    let serving = facts.servings.map_or_else(String::new, |servings| {
        format!(
            ", {} in each of {}",
            show::milligrams(sodium / servings),
            show::plain(servings)
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
        limit: "At most 600 mg in 100 g: 1.5 g of salt, called high by the UK's front-of-pack guidance of 2013, from memory.".into(),
        lines: facts.lines_of(|line| {
            line.ingredient.composition.sodium.is_some_and(|share| {
                line.grams.mean.to_grams() * share.to_fraction() > sodium / 10.0
            })
        }),
        remedies: Vec::new(),
    }]
}
