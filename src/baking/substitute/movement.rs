//! What of a recipe may move for a swap, how far, and what may be added.

use crate::baking::finding::POWDER_KEPT;
use crate::baking::ingredient::{FlourBasis, Group, Ingredient};
use crate::baking::text::holds;

/// What a gram moved costs: the dearer, the longer it stays as it is (our own weighing up).
const WATER: f64 = 0.2;
const LIQUID: f64 = 0.5;
pub const SWAPPED: f64 = 0.4;
const OTHER: f64 = 1.0;
const SALT: f64 = 2.0;
/// Of soda and tartar, of which a gram does so much that by weight alone they would come before what is there.
const PINCH: f64 = 3.0;
/// How much dearer something new is than a line that is there.
const NEW: f64 = 1.5;

/// Whether an ingredient is mostly water.
pub fn pours(ingredient: &Ingredient) -> bool {
    let water = ingredient.composition.water;
    water.is_some_and(|water| water.to_fraction() > 0.8)
}

/// The least and the most of itself that an ingredient may become, and what a gram of that costs; `None` for what stays:
/// flour, egg, fruit, whatever gives a cake its taste. By default liquids, sugar, fat, leavening and salt move. Where
/// something that pours comes for what does not, it may take the place of all milk.
pub fn movement(ingredient: &Ingredient, more_pours: bool) -> Option<(f64, f64, f64)> {
    let milk = if more_pours { 0.0 } else { 0.3 };
    Some(match ingredient.group {
        Group::Drink if ingredient.key == "water" => (0.0, 3.0, WATER),
        Group::Dairy | Group::PlantDairy if pours(ingredient) => (milk, 2.0, LIQUID),
        Group::Sugar | Group::Syrup => (0.5, 1.5, OTHER),
        Group::Fat | Group::Oil => (0.5, 1.5, OTHER),
        Group::Leavener if ingredient.key.contains("yeast") => return None,
        Group::Leavener if ingredient.flour_basis == FlourBasis::Never => {
            // Some powder is kept for the oven, as by the mends.
            let is_powder = ingredient
                .leavening
                .is_some_and(|it| it.bicarbonate.is_some() && it.neutralised.1 > 0.0);
            (if is_powder { POWDER_KEPT } else { 0.0 }, 4.0, OTHER)
        }
        Group::Flavour if ingredient.key.contains("salt") => (0.0, 2.0, SALT),
        _ => return None,
    })
}

/// Whether the cake has its name from it.
pub fn names_the_cake(ingredient: &Ingredient, title: &str) -> bool {
    ingredient
        .name
        .split([' ', ','])
        .filter(|word| word.len() > 3 && !PLAIN.contains(word))
        .any(|word| holds(title, word))
}

/// Words of ingredients' names that tell no cake from another.
const PLAIN: [&str; 9] = [
    "baking",
    "milk",
    "plain",
    "powder",
    "soda",
    "sugar",
    "white",
    "granulated",
    "cake",
];

/// What may be added where the recipe has nothing that does its work: the most, per cent of the flour, what a gram costs,
/// and the least that is worth the weighing (our own judgement; of soda, a twenty-fourth of a
/// teaspoon to a cup of flour, and as much tartar as meets it).
pub struct Addition {
    pub key: &'static str,
    pub most: f64,
    pub price: f64,
    pub least: f64,
}

/// Everything that may be added.
pub const ADDED: [Addition; 7] = [
    addition("water", 40.0, SWAPPED, 1.0),
    addition("baking_soda", 4.0, PINCH, 0.2),
    addition("cream_of_tartar", 3.0, PINCH, 0.45),
    addition("corn_starch", 20.0, OTHER, 1.0),
    addition("sugar", 30.0, OTHER, 3.0),
    addition("sunflower_oil", 30.0, OTHER, 1.0),
    addition("salt", 3.0, SALT, 0.2),
];

const fn addition(key: &'static str, most: f64, price: f64, least: f64) -> Addition {
    Addition {
        key,
        most,
        price: price * NEW,
        least,
    }
}

/// Whether an ingredient does the work of what may be added, so that none is.
pub fn does_its_work(ingredient: &Ingredient, added: &Ingredient) -> bool {
    match added.group {
        Group::Oil => matches!(ingredient.group, Group::Oil | Group::Fat),
        Group::Sugar => matches!(ingredient.group, Group::Sugar | Group::Syrup),
        Group::Drink => pours(ingredient) && movement(ingredient, false).is_some(),
        _ => ingredient.key == added.key,
    }
}
