//! How much of a batter's water its sugars hold.
//!
//! The measure is the number of dissolved molecules: by Raoult's law each of them lowers the activity of water alike,
//! so small sugars hold more of it, gram for gram, than large ones. It is linear in grams. The activity itself follows
//! from it: each kind alone in all the water by Norrish (1966), with the constants that the literature on foods of
//! intermediate moisture gives, all of them together by the rule of Ross (1975), the product of the single ones; both
//! from memory.

use super::sugars::free_water;
use super::{Constituent, SugarsByKind, sugars_by_kind, total};
use crate::baking::estimate::{Estimate, NORMAL_95};
use crate::baking::formula::Formula;
use crate::baking::ingredient::{Ingredient, SugarKind};
use crate::baking::quantity::{Mass, Molality, Quantity, Share};

/// Moles of water in a kilogram.
const WATER: f64 = 55.508;

/// Grams for a mole of sugars of unknown kind: half single, half double sugars by weight.
const UNKNOWN_KIND: f64 = 236.0;

/// Half the 5 to 95 % range of that figure as a part of it: all single or all double sugars.
const UNKNOWN_KIND_SPREAD: f64 = 0.31;

/// Sodium in salt, g for a mole.
const SODIUM: f64 = 22.99;

/// How much a mole of salt in a kilogram of water lowers its activity (0.967 at 1 mol/kg; tables, from memory).
const SALT: f64 = 0.033;

/// Half the 5 to 95 % range that the method adds to an activity (our own estimate: proteins and starch hold a little,
/// and some sugar may not be dissolved).
const METHOD: f64 = 0.015;

/// What holds a batter's water.
#[derive(Clone, Debug, PartialEq)]
pub struct WaterBinding {
    /// Molecules of sugars and polyols in its water.
    pub solutes: Estimate<Molality>,
    /// The activity of its water before baking, by sugars and salt: 1 is pure water. A crumb has lost a tenth of its
    /// weight as steam and lies lower.
    pub activity: Estimate<Share>,
    /// The lines whose sugars are of unknown kind.
    pub unknown_kind: Vec<usize>,
    /// The lines whose sugars or water are not known: left out, not zero.
    pub unknown: Vec<usize>,
}

/// Norrish's constant of a kind: ln a = ln x - K (1 - x)², x the mole fraction of water. From memory; allulose is taken
/// as fructose, maltitol as maltose.
fn norrish(kind: SugarKind) -> f64 {
    match kind {
        SugarKind::Sucrose => 6.47,
        SugarKind::Glucose | SugarKind::Fructose | SugarKind::Allulose => 2.25,
        SugarKind::Lactose => 10.2,
        SugarKind::Maltose | SugarKind::Maltitol => 4.54,
        SugarKind::Galactose => 2.24,
        SugarKind::Erythritol => 1.34,
        SugarKind::Xylitol => 1.66,
        SugarKind::Sorbitol => 1.65,
    }
}

/// Moles of sugars and polyols in a gram of an ingredient; `None` where its sugars are not known.
pub fn solute_moles_per_gram(ingredient: &Ingredient) -> Option<f64> {
    let unknown = ingredient.sugars_of_unknown_kind()?.to_fraction() / UNKNOWN_KIND;
    let kinds = SugarKind::ALL
        .into_iter()
        .map(|kind| ingredient.sugar(kind).to_fraction() / kind.molar_mass());
    Some(kinds.sum::<f64>() + unknown)
}

/// The binding of a batter's water; `None` without water.
pub fn water_binding(formula: &Formula) -> Option<WaterBinding> {
    // What stays in pieces keeps its sugars and its water to itself.
    let SugarsByKind {
        kinds,
        unknown_kind,
        unknown_kind_lines,
        mut unknown,
    } = sugars_by_kind(formula, |line| !line.in_pieces);
    let water = free_water(formula);
    if water.mean <= Mass::ZERO {
        return None;
    }
    let kilograms = water.mean.to_grams() / 1000.0;
    let molality = |grams: Mass, molar_mass: f64| grams.to_grams() / molar_mass / kilograms;
    let mut parts: Vec<(f64, f64, f64)> = kinds
        .iter()
        .map(|(kind, grams)| {
            (
                molality(grams.mean, kind.molar_mass()),
                norrish(*kind),
                grams.relative_deviation(),
            )
        })
        .collect();
    parts.push((
        molality(unknown_kind.mean, UNKNOWN_KIND),
        norrish(SugarKind::Maltose),
        UNKNOWN_KIND_SPREAD / NORMAL_95,
    ));
    let solutes: f64 = parts.iter().map(|part| part.0).sum();
    let variance: f64 = parts.iter().map(|part| (part.0 * part.2).powi(2)).sum();
    let relative = if solutes > 0.0 {
        (variance.sqrt() / solutes).hypot(water.relative_deviation())
    } else {
        0.0
    };
    let sodium = total(formula, Constituent::Sodium).grams.mean;
    let salt = (1.0 - SALT * molality(sodium, SODIUM)).max(0.5);
    let alone = |(molality, constant, _): &(f64, f64, f64)| {
        let others = molality / (molality + WATER);
        (1.0 - others) * f64::exp(-constant * others * others)
    };
    let activity = salt * parts.iter().map(alone).product::<f64>();
    let half = METHOD.hypot(NORMAL_95 * relative * (1.0 - activity));
    unknown.extend(total(formula, Constituent::Water).unknown);
    unknown.sort_unstable();
    unknown.dedup();
    Some(WaterBinding {
        solutes: Estimate::normal(solutes, solutes * relative)
            .map(|found: Molality| Molality::from_base(found.base().max(0.0))),
        activity: Estimate::between(
            Share::fraction((activity - half).max(0.0)),
            Share::fraction(activity),
            Share::fraction((activity + half).min(1.0)),
        ),
        unknown_kind: unknown_kind_lines,
        unknown,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::baking::balance::testing::formula;

    fn activity(text: &str) -> f64 {
        let found = water_binding(&formula(text)).expect("water");
        found.activity.mean.to_fraction()
    }

    /// 100 g of sugar, 99.8 g of it sucrose, in 100 g of water: 99.8 / 342.3 / 0.1 = 2.916 mol/kg.
    #[test]
    fn molecules_by_hand() {
        let solutes = |text| {
            let found = water_binding(&formula(text)).expect("water");
            found.solutes.mean.to_moles_per_kilogram()
        };
        assert!((solutes("100 g sugar\n100 g water") - 2.916).abs() < 0.002);
        // As much erythritol is 2.8 times as many molecules: 342.3 / 122.12.
        let times = solutes("100 g erythritol\n100 g water") / solutes("100 g sugar\n100 g water");
        assert!((times - 2.803).abs() < 0.01, "{times}");
        assert_eq!(water_binding(&formula("100 g oil")), None);
    }

    /// Handbook values of sucrose solutions, from memory: 0.986 at 20 %, 0.93 to 0.94 at 50 %, 0.86 at 66 to 67 %.
    #[test]
    fn sucrose_solutions() {
        for (sugar, water, low, high) in [
            (20, 80, 0.984, 0.988),
            (50, 50, 0.925, 0.942),
            (66, 34, 0.845, 0.875),
        ] {
            let found = activity(&format!("{sugar} g sugar\n{water} g water"));
            assert!((low..=high).contains(&found), "{sugar} %: {found}");
        }
    }

    /// Small sugars bind more, gram for gram (Raoult); more sugar never less; twice is the same.
    #[test]
    fn laws() {
        let of =
            |what: &str| activity(&format!("200 g flour\n150 g {what}\n200 g water\n3 g salt"));
        assert!(of("glucose powder") < of("sugar"));
        assert!(of("xylitol") < of("sugar"));
        let mut last = 1.0;
        for sugar in [50, 100, 200, 400] {
            let found = activity(&format!("200 g flour\n{sugar} g sugar\n150 g water"));
            assert!(found < last && found > 0.0);
            last = found;
        }
        let once = activity("200 g flour\n150 g sugar\n100 g milk");
        assert!((once - activity("400 g flour\n300 g sugar\n200 g milk")).abs() < 1e-12);
    }
}
