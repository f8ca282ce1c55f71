//! What could come in the place of an ingredient.

use super::gather::with_facts;
use super::swap::{key_of, line_at, suits};
use super::{Inputs, LinePart, Settings};
use crate::baking::ingredient::{Ingredient, Own};
use crate::baking::quantity::show;
use crate::baking::recipe::Looks;
use crate::baking::substitute::swap::Swap;
use crate::baking::substitute::{choices, is_like};
use serde::Serialize;

/// Something that could come in a line's place.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SwapOffer {
    /// What to choose it by.
    pub to: String,
    /// "soy milk with vinegar".
    pub name: String,
    /// How it suits: "for other kinds of cake", "half of it at most"; empty where nothing is to be said.
    pub beside: String,
}

/// What could come in the place of an ingredient of the recipe: the baker's own ingredients that are mainly the same
/// thing, then what the trade knows and is in the house, what suits the kind of cake first, then the baker's other
/// own ingredients, and last what is not in the house.
pub fn swap_offers(
    inputs: &Inputs,
    settings: &Settings,
    own: &Own,
    place: LinePart,
) -> Vec<SwapOffer> {
    with_facts(&mut Looks::default(), inputs, settings, own, |known| {
        let kind = known.facts.kind;
        let Some(line) = line_at(&known.facts, place) else {
            return Vec::new();
        };
        let entry = &inputs.choices.swaps;
        let (gone, there): (Vec<&Swap>, Vec<&Swap>) = choices(line.ingredient, kind)
            .into_iter()
            .partition(|swap| swap.brings.iter().any(|it| entry.lacks(it.ingredient)));
        let own = own.ingredients().iter().copied();
        let own = own.filter(|it| it.key != line.ingredient.key && !entry.lacks(it));
        let (like, other): (Vec<&Ingredient>, Vec<&Ingredient>) =
            own.partition(|ingredient| is_like(line.ingredient, ingredient));
        let known = |swap: &Swap| SwapOffer {
            to: key_of(swap),
            name: with(swap),
            beside: suits(swap, kind),
        };
        let mut offers: Vec<SwapOffer> = like.into_iter().map(of_own).collect();
        offers.extend(there.into_iter().map(known));
        offers.extend(other.into_iter().map(of_own));
        offers.extend(gone.into_iter().map(|swap| SwapOffer {
            beside: "not in the house".into(),
            ..known(swap)
        }));
        offers
    })
}

fn of_own(ingredient: &Ingredient) -> SwapOffer {
    SwapOffer {
        to: ingredient.key.to_owned(),
        name: ingredient.name.to_owned(),
        beside: "yours, by what it is made of".into(),
    }
}

/// "soy milk with vinegar".
fn with(swap: &Swap) -> String {
    let names = swap.brings.iter();
    let names: Vec<String> = names.map(|it| it.ingredient.name.to_owned()).collect();
    match names.split_first() {
        Some((first, [])) => first.clone(),
        Some((first, rest)) => format!("{first} with {}", show::listed(rest)),
        None => String::new(),
    }
}
