//! Classes of ingredients as the trade counts them in a formula, each as one figure against the flour.
//!
//! The trade counts most classes by the weight of the ingredient and not by what is in it: butter is fat, water and
//! all. What is counted otherwise says so at [`Class::counted`].

use super::Percentages;
use crate::baking::estimate::Estimate;
use crate::baking::formula::Formula;
use crate::baking::ingredient::{Bicarbonate, Group, Ingredient};
use crate::baking::quantity::{Mass, Share};

/// A class of ingredients.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Class {
    /// Sugars, and the solids of syrups.
    Sugar,
    /// Fats and oils.
    Fat,
    /// Eggs out of the shell.
    Egg,
    /// Milk, water, juice and the like.
    Liquid,
    /// All water in the batter.
    Water,
    /// Powder, and soda as powder.
    Leavening,
    /// Salt.
    Salt,
    /// Cocoa powder.
    Cocoa,
}

/// Bicarbonate of soda in common baking powder, as a fraction.
const IN_POWDER: f64 = 0.3;
/// Molar mass of sodium bicarbonate, g/mol.
const SODA: f64 = 84.007;
/// Molar mass of potassium bicarbonate, g/mol.
const POTASSIUM_BICARBONATE: f64 = 100.115;
/// Molar mass of ammonium bicarbonate, g/mol.
const AMMONIUM_BICARBONATE: f64 = 79.056;
/// From so much water on, milk, cream and their kin pour and are counted as liquid (common practice, no source).
const POURS: f64 = 0.6;
/// Below so much water egg and milk are dried.
const DRIED: f64 = 0.2;
/// Solids of fresh white, whole egg and yolk (USDA SR28), as fractions.
const SOLIDS: (f64, f64, f64) = (0.1243, 0.2385, 0.4769);

/// A class in one formula.
#[derive(Clone, Debug, PartialEq)]
pub struct Count {
    /// Which.
    pub class: Class,
    /// How much of it.
    pub grams: Estimate<Mass>,
    /// The same against the flour, with the spread of both; `None` without flour.
    pub of_flour: Option<Estimate<Share>>,
    /// The lines that bring it.
    pub lines: Vec<usize>,
    /// The lines of which no source says how much of it they hold.
    pub unknown: Vec<usize>,
}

impl Class {
    /// Every class, in the order shown and in that of the fields of a formula.
    pub const ALL: [Self; 8] = [
        Self::Sugar,
        Self::Fat,
        Self::Egg,
        Self::Liquid,
        Self::Water,
        Self::Leavening,
        Self::Salt,
        Self::Cocoa,
    ];

    /// Its name on the page.
    pub fn name(self) -> &'static str {
        match self {
            Self::Sugar => "Sugar",
            Self::Fat => "Fat",
            Self::Egg => "Egg",
            Self::Liquid => "Liquid",
            Self::Water => "All water",
            Self::Leavening => "Leavening",
            Self::Salt => "Salt",
            Self::Cocoa => "Cocoa",
        }
    }

    /// How it is counted, in a sentence.
    pub fn counted(self) -> &'static str {
        match self {
            Self::Sugar => {
                "Sugars by weight, syrups and honey by their solids; what fruit, milk and chocolate bring is not counted."
            }
            Self::Fat => {
                "Butter, margarine, shortening and oil by weight, water and all; what milk, egg and chocolate bring is not counted."
            }
            Self::Egg => {
                "Egg, white and yolk by weight out of the shell, dried egg as it is rebuilt with water."
            }
            Self::Liquid => {
                "Milk, plant milk, yogurt, water, juice, coffee and vinegar by weight, and the water of syrups; milk powder by weight, since it makes milk of the water, less what dried egg takes up. Fruit and vegetables are not counted."
            }
            Self::Water => {
                "The water in every ingredient by the food table, flour, egg and fruit with the rest."
            }
            Self::Leavening => {
                "All bicarbonate as a powder that holds 30 % of it: 1 g of soda counts as 3.3 g."
            }
            Self::Salt => {
                "Salt by weight; that of salted butter and of the leavening is not counted."
            }
            Self::Cocoa => "Cocoa powder by weight; chocolate is not counted.",
        }
    }

    /// How much of an ingredient's weight is counted, as a fraction; `None` where no source tells. It may be less than
    /// nothing: dried egg takes liquid up.
    pub(in crate::baking) fn share(self, ingredient: &Ingredient) -> Option<f64> {
        let composition = &ingredient.composition;
        let water = composition.water.map(Share::to_fraction);
        let whole = |counts: bool| if counts { 1.0 } else { 0.0 };
        Some(match (self, ingredient.group) {
            (Self::Sugar, Group::Sugar) => 1.0,
            (Self::Sugar, Group::Syrup) => 1.0 - water?,
            (Self::Fat, Group::Fat | Group::Oil) => 1.0,
            (Self::Egg, Group::Egg) if ingredient.plant_based == Some(false) => {
                rebuilt(ingredient).unwrap_or(1.0)
            }
            (Self::Liquid, Group::Egg) if ingredient.plant_based == Some(false) => {
                rebuilt(ingredient).map_or(0.0, |egg| 1.0 - egg)
            }
            (Self::Liquid, Group::Juice | Group::Drink) => 1.0,
            (Self::Liquid, Group::Syrup) => water?,
            (Self::Liquid, Group::Dairy | Group::PlantDairy) => {
                whole(water? >= POURS || ingredient.key.ends_with("milk_powder"))
            }
            (Self::Liquid, Group::Egg | Group::Acid | Group::Flavour) => {
                whole(water.is_some_and(|water| {
                    water >= 0.9 || ingredient.group == Group::Egg && water >= POURS
                }))
            }
            (Self::Water, _) => water?,
            (Self::Leavening, _) => bicarbonate(ingredient) / IN_POWDER,
            (Self::Salt, _) => whole(matches!(ingredient.key, "salt" | "salt_flake")),
            (Self::Cocoa, Group::Cocoa) => 1.0,
            _ => 0.0,
        })
    }
}

/// How many times its weight a dried egg comes to with its water; `None` for one that is not dried. By its solids
/// against those of the fresh part that it is like by its fat; sugar that was added is no egg.
fn rebuilt(ingredient: &Ingredient) -> Option<f64> {
    let composition = &ingredient.composition;
    let [water, sugars, fat] = [composition.water, composition.sugars, composition.fat]
        .map(|share| share.map_or(0.0, Share::to_fraction));
    if composition.water.is_none() || water >= DRIED {
        return None;
    }
    let (white, egg, yolk) = SOLIDS;
    let fresh = match fat {
        fat if fat > 0.5 => yolk,
        fat if fat > 0.2 => egg,
        _ => white,
    };
    Some((1.0 - water - sugars).max(0.0) / fresh)
}

/// Bicarbonate of an ingredient as that of soda, a fraction of its weight.
fn bicarbonate(ingredient: &Ingredient) -> f64 {
    let Some((kind, grams)) = ingredient
        .leavening
        .and_then(|leavening| leavening.bicarbonate)
    else {
        return 0.0;
    };
    let molar_mass = match kind {
        Bicarbonate::Sodium => SODA,
        Bicarbonate::Potassium => POTASSIUM_BICARBONATE,
        Bicarbonate::Ammonium => AMMONIUM_BICARBONATE,
    };
    grams / 100.0 * SODA / molar_mass
}

/// A class counted over the batter.
pub fn count(formula: &Formula, percentages: &Percentages, class: Class) -> Count {
    let (mut parts, mut lines, mut unknown) = (Vec::new(), Vec::new(), Vec::new());
    for line in formula.batter() {
        match class.share(line.ingredient) {
            Some(0.0) => {}
            Some(share) => {
                parts.push(line.grams.times(share));
                lines.push(line.line);
            }
            None => unknown.push(line.line),
        }
    }
    let grams = Estimate::sum(&parts).map(|grams| {
        if grams < Mass::ZERO {
            Mass::ZERO
        } else {
            grams
        }
    });
    lines.dedup();
    Count {
        class,
        of_flour: percentages.flour.and_then(|flour| ratio(&grams, &flour)),
        grams,
        lines,
        unknown,
    }
}

/// One weight against another, as if each were unsure by itself; `None` against nothing.
pub fn ratio(over: &Estimate<Mass>, under: &Estimate<Mass>) -> Option<Estimate<Share>> {
    let (mean, base) = (over.mean.to_grams(), under.mean.to_grams());
    if base <= 0.0 {
        return None;
    }
    // Parts of each weight below its mean and above; a divisor that may be less makes a quotient that may be more.
    let parts = |weight: &Estimate<Mass>, whole: f64| match whole > 0.0 {
        true => (
            1.0 - weight.low.to_grams() / whole,
            weight.high.to_grams() / whole - 1.0,
        ),
        false => (0.0, 0.0),
    };
    let (less, more) = parts(under, base);
    let under = (more / (1.0 + more), less / (1.0 - less).max(0.1));
    Some(Estimate::apart(
        Share::fraction(mean / base),
        &[parts(over, mean), under],
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::baking::ingredient::by_key;

    #[track_caller]
    fn share(class: Class, key: &str) -> f64 {
        class
            .share(by_key(key).unwrap_or_else(|| panic!("no {key}")))
            .unwrap_or_else(|| panic!("{key} is not known"))
    }

    /// By hand from the compositions of SR28.
    #[test]
    fn ingredients_are_counted_as_the_trade_counts_them() {
        for (class, key, by_hand) in [
            (Class::Sugar, "sugar", 1.0),
            (Class::Sugar, "honey", 0.829),
            (Class::Sugar, "milk", 0.0),
            (Class::Fat, "butter", 1.0),
            (Class::Fat, "egg", 0.0),
            (Class::Egg, "egg_white", 1.0),
            (Class::Egg, "aquafaba", 0.0),
            // 100 - 2.78 - 0.56 g of solids in the powder, 23.85 in egg.
            (Class::Egg, "dried_egg", 4.053),
            // 100 - 8.54 against 12.43.
            (Class::Egg, "dried_egg_white", 7.358),
            (Class::Liquid, "dried_egg_white", -6.358),
            (Class::Liquid, "milk", 1.0),
            (Class::Liquid, "cream_cheese", 0.0),
            (Class::Liquid, "milk_powder", 1.0),
            (Class::Liquid, "honey", 0.171),
            (Class::Liquid, "coffee", 1.0),
            (Class::Liquid, "lemon_zest", 0.0),
            (Class::Liquid, "cider_vinegar", 1.0),
            (Class::Liquid, "aquafaba", 1.0),
            (Class::Water, "butter", 0.1794),
            // 30 g in 100 g is a powder as it is; soda is 3.33 of it, its potassium kin 84.007 / 100.115 of that.
            (Class::Leavening, "baking_powder", 1.0),
            (Class::Leavening, "baking_soda", 3.333),
            (Class::Leavening, "potassium_bicarbonate", 2.797),
            (Class::Salt, "salt_flake", 1.0),
            (Class::Salt, "salted_butter", 0.0),
            (Class::Cocoa, "cocoa_natural", 1.0),
        ] {
            let found = share(class, key);
            assert!(
                (found - by_hand).abs() < 0.001,
                "{key} as {class:?}: {found}, by hand {by_hand}"
            );
        }
    }

    /// 100 (90 to 120) over 50 (40 to 55): below 10 % and, for 10 % more under it, 9.1 %, together 13.5 %; above 20 %
    /// and, for 20 % less, 25 %, together 32 %.
    #[test]
    fn a_ratio_is_as_unsure_as_both_its_weights() {
        let grams = |low, mean, high| {
            let [low, mean, high] = [low, mean, high].map(Mass::grams);
            Estimate::between(low, mean, high)
        };
        let found = ratio(&grams(90.0, 100.0, 120.0), &grams(40.0, 50.0, 55.0)).expect("a ratio");
        let [low, mean, high] = [found.low, found.mean, found.high].map(Share::to_fraction);
        assert!((mean - 2.0).abs() < 1e-9, "{mean}");
        assert!((low - 1.730).abs() < 0.001, "{low}");
        assert!((high - 2.640).abs() < 0.001, "{high}");
        assert_eq!(ratio(&grams(1.0, 1.0, 1.0), &grams(0.0, 0.0, 0.0)), None);
    }
}
