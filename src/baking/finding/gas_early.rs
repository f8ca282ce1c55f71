//! Gas that does not wait for the oven.

use super::{Facts, Finding, Severity};
use crate::baking::chemistry::bicarbonate;

/// Most of the gas: our own limit.
const MOST: f64 = 0.9;

/// Names batters of which all gas is from loose soda, or from cream of tartar.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let of = |early: bool| -> f64 {
        facts
            .formula
            .batter()
            .filter_map(|line| {
                let leavening = line.ingredient.leavening?;
                let is_early = leavening.neutralised.1 == 0.0
                    || line.ingredient.key == "baking_powder_tartrate";
                (is_early || !early).then(|| bicarbonate(leavening, line.grams.mean))
            })
            .sum()
    };
    let all = of(false);
    if all <= 0.0 || of(true) < MOST * all || !facts.ammonia().is_empty() {
        return Vec::new();
    }
    vec![Finding {
        name: "gas_early",
        severity: Severity::Note,
        title: "Bake at once".into(),
        sentence: "All the gas comes as soon as the batter is wet. Bake at once; for a batter that has to stand, take double-acting powder.".into(),
        why: "Soda with acid, and cream of tartar, give most of their gas on the bench. Half an hour loses much of it.",
        limit: "Named where nine tenths of the gas or more is of that kind (our own limit; common practice).".into(),
        lines: facts.lines_of(|line| {
            line.ingredient.leavening.is_some_and(|leavening| {
                leavening.bicarbonate.is_some() || line.ingredient.key == "cream_of_tartar"
                    || leavening.neutralised.1 == 0.0
            })
        }),
        remedies: Vec::new(),
    }]
}
