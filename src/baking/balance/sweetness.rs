//! Sweetness, as the sucrose that would taste as sweet.
//!
//! Each kind of sugar has its sweetness relative to as much sucrose in a solution of about one in ten, cold. Heat,
//! strength and acid shift it, fructose most; the ranges hold that.

use super::sugars::{SugarsByKind, sugars_by_kind, weighed_by};
use crate::baking::estimate::Estimate;
use crate::baking::formula::Formula;
use crate::baking::ingredient::{Ingredient, SugarKind};
use crate::baking::quantity::Mass;

/// Sweetness of sugars of unknown kind: from milk sugar to fructose.
const UNKNOWN_KIND: [f64; 3] = [0.2, 0.8, 1.3];

/// Ingredients so much sweeter than sugar that the packet alone can tell.
const INTENSE: &[&str] = &["stevia"];

/// What tastes sweet in a batter.
#[derive(Clone, Debug, PartialEq)]
pub struct Sweetness {
    /// Sucrose that would taste as sweet.
    pub as_sucrose: Estimate<Mass>,
    /// The lines whose sugars are of unknown kind, in part or whole: they widen the range.
    pub unknown_kind: Vec<usize>,
    /// The lines whose sweetness is not known at all: left out, not zero.
    pub unknown: Vec<usize>,
}

/// Sweetness relative to sucrose: low, typical, high. Food chemistry textbooks and trade handbooks, from memory.
fn relative(kind: SugarKind) -> [f64; 3] {
    match kind {
        SugarKind::Sucrose => [1.0, 1.0, 1.0],
        SugarKind::Glucose => [0.6, 0.7, 0.75],
        SugarKind::Fructose => [1.1, 1.3, 1.5],
        SugarKind::Lactose => [0.2, 0.25, 0.4],
        SugarKind::Maltose => [0.4, 0.45, 0.5],
        SugarKind::Galactose => [0.5, 0.6, 0.65],
        SugarKind::Allulose => [0.6, 0.7, 0.75],
        SugarKind::Erythritol => [0.6, 0.65, 0.75],
        SugarKind::Xylitol => [0.9, 1.0, 1.05],
        SugarKind::Sorbitol => [0.5, 0.55, 0.6],
        SugarKind::Maltitol => [0.75, 0.85, 0.95],
    }
}

/// Sucrose that would be as sweet, grams for a gram of an ingredient; `None` where its sugars are not known, or where
/// it is an intense sweetener. Sugars of unknown kind count as 0.8.
pub fn sweetness_per_gram(ingredient: &Ingredient) -> Option<f64> {
    if INTENSE.contains(&ingredient.key) {
        return None;
    }
    let kinds = SugarKind::ALL
        .into_iter()
        .map(|kind| ingredient.sugar(kind).to_fraction() * relative(kind)[1]);
    let unknown = ingredient.sugars_of_unknown_kind()?.to_fraction() * UNKNOWN_KIND[1];
    Some(kinds.sum::<f64>() + unknown)
}

/// The sweetness of a batter: the sum of its sugars, each times its sweetness, both spreads in it.
pub fn sweetness(formula: &Formula) -> Sweetness {
    let SugarsByKind {
        kinds,
        unknown_kind,
        unknown_kind_lines,
        unknown,
    } = sugars_by_kind(formula, |line| !INTENSE.contains(&line.ingredient.key));
    let parts = kinds
        .iter()
        .map(|(kind, grams)| weighed_by(grams, relative(*kind)))
        .chain([weighed_by(&unknown_kind, UNKNOWN_KIND)]);
    let parts: Vec<_> = parts.collect();
    let intense = formula
        .batter()
        .filter(|line| INTENSE.contains(&line.ingredient.key));
    Sweetness {
        as_sucrose: Estimate::sum(&parts),
        unknown_kind: unknown_kind_lines,
        unknown: unknown
            .into_iter()
            .chain(intense.map(|line| line.line))
            .collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::baking::balance::testing::formula;

    fn mean(text: &str) -> f64 {
        sweetness(&formula(text)).as_sucrose.mean.to_grams()
    }

    /// The definition: sucrose is 1. Table sugar is 99.8 % sucrose, allulose 99 %, xylitol 99.8 %.
    #[test]
    fn a_hundred_grams_of_sucrose_are_a_hundred() {
        let sugar = sweetness(&formula("100 g sugar")).as_sucrose;
        assert!((sugar.mean.to_grams() - 99.8).abs() < 1e-6);
        assert!((sugar.high.to_grams() - sugar.low.to_grams()).abs() < 2.0);
        assert!((mean("100 g xylitol") - 99.8).abs() < 1e-6);
        assert!((mean("100 g erythritol") - 64.87).abs() < 1e-6);
    }

    /// SR28 19296: sucrose 0.89, glucose 35.75, fructose 40.94, maltose 1.44, galactose 3.1, of 82.12 g. By hand
    /// 0.89 + 0.7 x 35.75 + 1.3 x 40.94 + 0.45 x 1.44 = 79.79, and 3.1 g that the table's columns do not name at 0.8.
    #[test]
    fn honey_by_hand() {
        assert!((mean("100 g honey") - 82.27).abs() < 0.02);
    }

    #[test]
    fn linear_in_grams_and_unknown_is_not_zero() {
        let cake = "200 g flour\n150 g sugar\n40 g honey\n100 g jam";
        let doubled = "400 g flour\n300 g sugar\n80 g honey\n200 g jam";
        assert!((mean(doubled) - 2.0 * mean(cake)).abs() < 1e-9);
        let by_lines: f64 = formula(cake)
            .batter()
            .filter_map(|line| {
                Some(sweetness_per_gram(line.ingredient)? * line.grams.mean.to_grams())
            })
            .sum();
        assert!((by_lines - mean(cake)).abs() < 1e-9);
        let found = sweetness(&formula(cake));
        assert_eq!(found.unknown_kind, [3, 4]);
        let stevia = sweetness(&formula("100 g sugar\n2 g stevia\n50 g almond flour"));
        assert_eq!(stevia.unknown, [3, 2]);
    }
}
