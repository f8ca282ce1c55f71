//! What could come in the place of an ingredient: swaps that the trade knows, those that suit first, and any other
//! ingredient by what the two are made of.

use super::egg;
use super::plan::Change;
use super::swap::{Brought, Suits, Swap, swaps_from};
use crate::baking::balance::{Constituent, Kind};
use crate::baking::chemistry::bicarbonate;
use crate::baking::estimate::Estimate;
use crate::baking::ingredient::{Allergen, Group, Ingredient};
use crate::baking::quantity::Mass;
use serde::{Deserialize, Serialize};

/// What a whole cake is to be without.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Without {
    /// Anything from animals.
    pub animals: bool,
    /// Wheat and other cereals with gluten.
    pub gluten: bool,
    /// Nuts and peanuts.
    pub nuts: bool,
    /// Milk.
    pub milk: bool,
    /// Egg.
    pub egg: bool,
}

impl Without {
    /// Whether anything is left out.
    pub fn is_any(self) -> bool {
        self != Self::default()
    }

    /// Whether an ingredient may stay.
    pub fn allows(self, ingredient: &Ingredient) -> bool {
        self.bars(ingredient).is_none()
    }

    /// What the cake is to be that an ingredient may not be in; `None` where it may stay.
    pub fn bars(self, ingredient: &Ingredient) -> Option<&'static str> {
        use Allergen::{Egg, Gluten, Milk, Peanut, PineNuts, TreeNuts, Wheat};
        let has = |allergens: &[Allergen]| {
            let mut own = ingredient.allergens.iter();
            own.any(|allergen| allergens.contains(allergen))
        };
        let breaks = [
            ingredient.plant_based == Some(false),
            has(&[Wheat, Gluten]),
            has(&[TreeNuts, PineNuts, Peanut]),
            has(&[Milk]),
            has(&[Egg]),
        ];
        let mut wished = self.wished().into_iter().zip(breaks);
        wished.find_map(|((is_wished, words), breaks)| (is_wished && breaks).then_some(words))
    }

    /// What the cake is to be, in words; what goes without saying in a plant-based one is left out.
    pub fn words(self) -> Vec<&'static str> {
        let said = Self {
            milk: self.milk && !self.animals,
            egg: self.egg && !self.animals,
            ..self
        };
        let wished = said.wished().into_iter();
        wished
            .filter_map(|(is_wished, words)| is_wished.then_some(words))
            .collect()
    }

    /// Each of these in its order: whether it is wished, and what the cake is to be then.
    fn wished(self) -> [(bool, &'static str); 5] {
        [
            (self.animals, "plant-based"),
            (self.gluten, "without gluten"),
            (self.nuts, "without nuts"),
            (self.milk, "without milk"),
            (self.egg, "without egg"),
        ]
    }
}

/// The swaps for an ingredient in that kind of cake, those that suit it best first.
pub fn choices(from: &Ingredient, kind: Kind) -> Vec<&'static Swap> {
    let mut choices: Vec<&'static Swap> = swaps_from(from).collect();
    choices.sort_by_key(|swap| rank(swap, kind));
    choices
}

/// How ill a swap suits a kind: by what it is meant for, by what the egg it replaces does there, by how much of the
/// original practice replaces, and by how many ingredients it brings.
fn rank(swap: &Swap, kind: Kind) -> (u8, u8, i32, usize) {
    let suits = match swap.suits(kind) {
        Suits::Meant | Suits::Open => 0,
        Suits::MeantForOthers => 1,
        Suits::NotMeant => 2,
    };
    let missing = match swap.from.group {
        Group::Egg => lacking(swap, kind),
        _ => 0,
    };
    let replaced = -(swap.usual.to_percent() as i32);
    (suits, missing, replaced, swap.brings.len())
}

/// What the replacer of an egg lacks of what the kind wants, in strengths; 0 for what replaces no egg.
pub fn lacking(swap: &Swap, kind: Kind) -> u8 {
    let given = swap
        .brings
        .first()
        .and_then(|main| egg::given(main.ingredient));
    let (Some(wanted), Some(given)) = (egg::wanted(kind), given) else {
        return 0;
    };
    let (wanted, given) = (wanted.work, given.work);
    [
        (wanted.binding, given.binding),
        (wanted.leavening, given.leavening),
        (wanted.emulsifying, given.emulsifying),
        (wanted.moistening, given.moistening),
    ]
    .into_iter()
    .map(|(wanted, given)| wanted.saturating_sub(given))
    .sum()
}

/// The change of a line by a swap of the table.
pub fn by_swap(place: (usize, usize), share: f64, swap: &Swap) -> Change {
    Change {
        place,
        share,
        to: swap.brings.clone(),
    }
}

/// The change of a line by what the two ingredients are made of: as much of the new one as brings what the original
/// mainly is: its gas where it is a leavener, else its fat, sugars, protein, starch or water, whichever is the largest;
/// weight for weight where neither is known of both. Up to a fifth less or more of it may be taken.
pub fn by_composition(
    place: (usize, usize),
    share: f64,
    from: &Ingredient,
    to: &'static Ingredient,
) -> Change {
    let main = mainly(from);
    let ratio = gas_for_gas(from, to)
        .or_else(|| Some(part(from, main) / part(to, main)))
        .filter(|ratio| (LEAST..=MOST).contains(ratio))
        .unwrap_or(1.0);
    Change {
        place,
        share,
        to: vec![Brought {
            ingredient: to,
            for_a_gram: Estimate::between(
                Mass::grams(ratio * 0.8),
                Mass::grams(ratio),
                Mass::grams(ratio * 1.2),
            ),
        }],
    }
}

/// Whether two ingredients are mainly the same thing and hold about as much of it, so that one can stand for the other by
/// composition alone: leaveners with gas, else fat, sugars, starch, protein or water.
pub fn is_like(one: &Ingredient, other: &Ingredient) -> bool {
    let main = mainly(one);
    let gives_gas = |it: &Ingredient| it.leavening.is_some() && it.group == Group::Leavener;
    let ratio = part(one, main) / part(other, main);
    gives_gas(one) == gives_gas(other)
        && mainly(other) == main
        && (LIKE..=1.0 / LIKE).contains(&ratio)
}

/// What an ingredient mainly is, of fat, sugars, starch, protein and water.
fn mainly(ingredient: &Ingredient) -> Constituent {
    MAINLY
        .into_iter()
        .max_by(|one, other| part(ingredient, *one).total_cmp(&part(ingredient, *other)))
        .unwrap_or(Constituent::Water)
}

fn part(ingredient: &Ingredient, what: Constituent) -> f64 {
    what.share(&ingredient.composition)
        .map_or(0.0, |share| share.to_fraction())
}

/// What an ingredient may mainly be.
const MAINLY: [Constituent; 5] = [
    Constituent::Fat,
    Constituent::Sugars,
    Constituent::Starch,
    Constituent::Protein,
    Constituent::Water,
];
/// At least so much of it against the other.
const LIKE: f64 = 0.6;

/// Grams of one leavener for a gram of another that give the same gas; `None` where either gives none, or is a flour.
fn gas_for_gas(from: &Ingredient, to: &Ingredient) -> Option<f64> {
    let gas = |ingredient: &Ingredient| {
        let leavening = ingredient
            .leavening
            .filter(|_| ingredient.group == Group::Leavener)?;
        Some(bicarbonate(leavening, Mass::grams(1.0))).filter(|gas| *gas > 0.0)
    };
    Some(gas(from)? / gas(to)?)
}

/// Between these grams for a gram the one can be called to stand for the other.
const LEAST: f64 = 0.2;
const MOST: f64 = 5.0;
