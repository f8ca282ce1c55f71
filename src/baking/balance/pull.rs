//! What pulls a batter one way and the other: tougheners against tenderisers, driers against moisteners.
//!
//! Which ingredient counts as what is common practice of the trade (Gisslen). Compositions part what is both: the yolk
//! of a whole egg by its fat, the solids of milk from its water, the fat of cocoa from the rest.

use crate::baking::formula::{Formula, Weighed};
use crate::baking::ingredient::{FlourBasis, Group};
use crate::baking::quantity::{Mass, Share};

/// A way that a batter is pulled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Makes it firm: flour, egg white, milk solids.
    Tough,
    /// Makes it tender: sugar, fat, yolk, leavening.
    Tender,
    /// Takes up water: flour, starch, cocoa, milk solids.
    Dry,
    /// Brings water: egg, milk, juice, syrup, fruit.
    Moist,
}

/// All that pulls a batter.
#[derive(Clone, Debug, PartialEq)]
pub struct Pull {
    /// What pulls, which way, and its weight, in the order of the recipe; each thing once a side.
    pub parts: Vec<(Side, &'static str, Mass)>,
}

/// Fat of fresh yolk (USDA SR28), by which the yolk in an egg is told, as a fraction.
const YOLK_FAT: f64 = 0.2654;

impl Pull {
    /// The weight of all that pulls one way.
    pub fn of(&self, side: Side) -> Mass {
        let parts = self.parts.iter().filter(|part| part.0 == side);
        parts.map(|part| part.2).sum()
    }
}

/// What pulls a batter; pieces that stay pieces, nuts and seeds don't.
pub fn pull(formula: &Formula) -> Pull {
    let mut parts: Vec<(Side, &'static str, Mass)> = Vec::new();
    for line in formula.batter() {
        for (side, what, share) in pulls(line) {
            let grams = line.grams.mean * share;
            if share <= 0.0 {
                continue;
            }
            match parts
                .iter_mut()
                .find(|part| (part.0, part.1) == (side, what))
            {
                Some(part) => part.2 = part.2 + grams,
                None => parts.push((side, what, grams)),
            }
        }
    }
    Pull { parts }
}

/// What of a line pulls which way, each a fraction of its weight.
fn pulls(line: &Weighed) -> Vec<(Side, &'static str, f64)> {
    use Side::{Dry, Moist, Tender, Tough};
    let ingredient = line.ingredient;
    let composition = &ingredient.composition;
    let share = |share: Option<Share>| share.map_or(0.0, Share::to_fraction);
    let (water, fat, sugars) = (
        share(composition.water),
        share(composition.fat),
        share(composition.sugars),
    );
    let solids = 1.0 - water - fat;
    match ingredient.group {
        _ if ingredient.flour_basis == FlourBasis::Always => {
            vec![(Tough, "flour", 1.0), (Dry, "flour", 1.0)]
        }
        // Ground nuts.
        Group::Flour => vec![(Tender, "fat", fat), (Dry, "nut meal", 1.0 - fat)],
        Group::Starch => vec![(Dry, "starch", 1.0)],
        Group::Grain => vec![(Dry, "grain", 1.0)],
        Group::Cocoa => vec![(Tender, "fat", fat), (Dry, "cocoa", 1.0 - fat)],
        Group::Chocolate => vec![
            (Tender, "fat", fat),
            (Tender, "sugar", sugars),
            (Dry, "cocoa", solids - sugars),
        ],
        Group::Egg if ingredient.plant_based == Some(false) => {
            let yolk = (fat / YOLK_FAT).min(1.0);
            vec![
                (Tough, "egg white", 1.0 - yolk),
                (Tender, "yolk", yolk),
                (Moist, "egg", water),
            ]
        }
        Group::Dairy => vec![
            (Tough, "milk solids", solids),
            (Dry, "milk solids", solids),
            (Tender, "fat", fat),
            (Moist, "milk", water),
        ],
        Group::PlantDairy => vec![
            (Dry, "solids of plant milk", solids),
            (Tender, "fat", fat),
            (Moist, "plant milk", water),
        ],
        Group::Sugar => vec![(Tender, "sugar", 1.0)],
        Group::Syrup => vec![(Tender, "sugar", 1.0 - water), (Moist, "syrup", water)],
        Group::Fat | Group::Oil => vec![(Tender, "fat", fat), (Moist, "fat's water", water)],
        Group::Leavener => vec![(Tender, "leavening", 1.0)],
        Group::Fruit | Group::Vegetable | Group::Jam if !line.in_pieces => {
            vec![(Tender, "sugar", sugars), (Moist, "fruit", water)]
        }
        Group::Egg | Group::Juice | Group::Drink | Group::Acid | Group::Flavour => {
            vec![(Tender, "sugar", sugars), (Moist, "water and juice", water)]
        }
        _ => Vec::new(),
    }
}
