//! Soda and powder in grams and spoons, and the lines they stand in.

use crate::baking::chemistry::{CARBON_DIOXIDE_GRAMS_PER_MMOL, SODA_MMOL_PER_GRAM, bicarbonate};
use crate::baking::finding::{Edit, Facts};
use crate::baking::formula::Weighed;
use crate::baking::ingredient::Region;
use crate::baking::quantity::{Mass, show};

/// Carbon dioxide from a gram of sodium bicarbonate, g: one molecule from one.
pub(super) const GAS_OF_SODA: f64 = SODA_MMOL_PER_GRAM * CARBON_DIOXIDE_GRAMS_PER_MMOL;
/// Soda in a gram of baking powder where the recipe has none to go by: about 30 % (supplier's note).
pub(super) const SODA_IN_POWDER: f64 = 0.308;
/// Part of the powder that stays for the oven when soda takes its place: soda gives its gas on the
/// bench, powder keeps some for the heat (common practice, no source).
pub(in crate::baking) const POWDER_KEPT: f64 = 1.0 / 3.0;
/// Base that a gram of cream of tartar takes, meq: one proton of 188.177 g/mol.
pub(super) const CREAM_OF_TARTAR: f64 = 1000.0 / 188.177;
/// A US teaspoon of soda or powder and of cream of tartar, g (USDA SR28).
pub(super) const TEASPOON: f64 = 4.6;
pub(super) const TEASPOON_OF_TARTAR: f64 = 3.0;
/// What a remedy calls baking powder of any kind.
pub(in crate::baking) const POWDER: &str = "baking powder";
/// The smallest change worth making on a scale that shows tenths.
pub(super) const SMALLEST: f64 = 0.1;

/// The edit that brings so many more grams of gas by powder, and its words.
pub(super) fn powder_for(facts: &Facts, gas: f64) -> (Edit, String) {
    match facts.powders().next() {
        Some(line) => {
            let grams = tenths(line.grams.mean.to_grams() + gas / gas_per_gram(line).max(1e-9));
            (
                Edit::Weigh {
                    line: line.line,
                    part: line.part,
                    grams,
                },
                in_spoons(grams, TEASPOON, POWDER),
            )
        }
        None => {
            let grams = tenths(gas / (SODA_IN_POWDER * GAS_OF_SODA));
            let text = format!("{} g {POWDER}", show::plain(grams));
            (
                Edit::AddAfter {
                    line: last_leavener(facts),
                    text,
                },
                in_spoons(grams, TEASPOON, POWDER),
            )
        }
    }
}

/// Carbon dioxide that a gram of this leavener gives, g.
pub(super) fn gas_per_gram(line: &Weighed) -> f64 {
    let grams = line.grams.mean.to_grams();
    if grams > 0.0 {
        line.ingredient
            .leavening
            .map_or(0.0, |leavening| bicarbonate(leavening, line.grams.mean))
            * CARBON_DIOXIDE_GRAMS_PER_MMOL
            / grams
    } else {
        0.0
    }
}

/// The line below which a new leavener is written: the last leavener, or the last line of the batter.
pub(in crate::baking) fn last_leavener(facts: &Facts) -> usize {
    facts
        .leaveners()
        .map(|line| line.line)
        .max()
        .or_else(|| facts.formula.batter().map(|line| line.line).max())
        .unwrap_or(0)
}

pub(in crate::baking) fn soda_name(region: Region) -> &'static str {
    match region {
        Region::Us | Region::Ca => "baking soda",
        Region::Uk | Region::Au | Region::Nz => "bicarbonate of soda",
    }
}

/// "5.2 g (1 1/8 tsp) baking soda".
pub(super) fn in_spoons(grams: f64, teaspoon: f64, name: &str) -> String {
    if grams <= 0.0 {
        return format!("no {name}");
    }
    format!(
        "{} ({}) {name}",
        show::mass(Mass::grams(grams)),
        show::teaspoons(grams / teaspoon)
    )
}

pub(super) fn tenths(grams: f64) -> f64 {
    (grams * 10.0).round() / 10.0
}
