//! The broad kind of a cake, as far as limits depend on it.

use super::Percentages;
use crate::baking::formula::{Formula, Weighed};
use crate::baking::ingredient::Group;
use crate::baking::quantity::{Mass, Share};
use serde::Serialize;

/// Broad kinds, told apart by what the formula leans on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// One-bowl, creamed and layer cakes, muffins, quick breads.
    Plain,
    /// The same with cocoa or much chocolate.
    Cocoa,
    /// Pound cakes and the like: much egg and fat, hardly any powder.
    Rich,
    /// Sponge, genoise, chiffon: beaten egg.
    EggFoam,
    /// Angel food: beaten white, no fat.
    WhiteFoam,
}

impl Kind {
    /// The kind in a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Plain => "cakes and quick breads",
            Self::Cocoa => "chocolate cakes",
            Self::Rich => "pound cakes",
            Self::EggFoam => "sponges",
            Self::WhiteFoam => "angel food cakes",
        }
    }

    /// Whether beaten air does most of the lifting, so that little gas is no fault.
    pub fn leans_on_air(self) -> bool {
        matches!(self, Self::Rich | Self::EggFoam | Self::WhiteFoam)
    }
}

/// The kind of a batter, by its percentages on flour (limits from textbook ranges, from memory).
pub fn kind(formula: &Formula, percentages: &Percentages) -> Kind {
    let share = |choose: &dyn Fn(&Weighed) -> bool| -> f64 {
        let grams: Mass = formula
            .batter()
            .filter(|line| choose(line))
            .map(|line| line.grams.mean)
            .sum();
        percentages.of(grams).map_or(0.0, Share::to_percent)
    };
    let of_group = |group: Group| share(&|line| line.ingredient.group == group);
    let eggs = share(&|line| {
        line.ingredient.group == Group::Egg && line.ingredient.plant_based == Some(false)
    });
    let whites = share(&|line| line.ingredient.key.starts_with("egg_white"));
    let fat: Mass = formula
        .batter()
        .filter_map(|line| Some(line.grams.mean * line.ingredient.composition.fat?.to_fraction()))
        .sum();
    let fat = percentages.of(fat).map_or(0.0, Share::to_percent);
    let leavener = share(&|line| {
        line.ingredient
            .leavening
            .is_some_and(|leavening| leavening.bicarbonate.is_some())
    });
    if whites >= 150.0 && fat < 5.0 {
        Kind::WhiteFoam
    } else if of_group(Group::Cocoa) >= 8.0 || of_group(Group::Chocolate) >= 30.0 {
        Kind::Cocoa
    } else if eggs >= 120.0 && fat < 70.0 && !percentages.stands_in {
        Kind::EggFoam
    } else if eggs >= 60.0 && fat >= 55.0 && leavener < 1.2 {
        Kind::Rich
    } else {
        Kind::Plain
    }
}
