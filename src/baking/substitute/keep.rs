//! What a cake is to keep when something in it changes.
//!
//! Each of these is a sum over the batter's lines and linear in their grams, the base that is missing at a pH as well,
//! since a line's charge at a given pH is. So one row of a [`Programme`](super::programme) holds each.

use crate::baking::balance::{
    Constituent, setting_protein_per_gram, solute_moles_per_gram, sweetness_per_gram,
};
use crate::baking::chemistry::{Protons, base_missing, bicarbonate, kept};
use crate::baking::ingredient::{Group, Ingredient};
use crate::baking::quantity::Mass;

/// Something that a cake is to keep.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keep {
    /// Water, g.
    Water,
    /// Fat, g.
    Fat,
    /// Sugars, g.
    Sugars,
    /// How sweet they are, g of sucrose.
    Sweetness,
    /// How they bind water, mmol of sugar molecules.
    Binding,
    /// Protein, g.
    Protein,
    /// Starch, g.
    Starch,
    /// Salt outside the leaveners, g.
    Salt,
    /// Protein that sets as it is heated, egg's above all, g.
    Setting,
    /// Carbon dioxide that can be set free, mmol.
    Gas,
    /// Base that is missing at the crumb's pH, meq.
    Acidity,
}

impl Keep {
    /// Every one, in the order of the rows.
    pub const ALL: [Self; 11] = [
        Self::Water,
        Self::Fat,
        Self::Sugars,
        Self::Sweetness,
        Self::Binding,
        Self::Protein,
        Self::Starch,
        Self::Salt,
        Self::Setting,
        Self::Gas,
        Self::Acidity,
    ];

    /// In a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Water => "water",
            Self::Fat => "fat",
            Self::Sugars => "sugars",
            Self::Sweetness => "sweetness",
            Self::Binding => "water held by sugars",
            Self::Protein => "protein",
            Self::Starch => "starch",
            Self::Salt => "salt",
            Self::Setting => "protein that sets",
            Self::Gas => "gas",
            Self::Acidity => "the crumb's pH",
        }
    }

    /// How much may be off at no cost, in its unit: what weighing, flours and eggs differ by, as a part of the whole and
    /// at least so much against the flour (common practice, no source). The crumb's pH has a width of its own.
    pub fn free(self, whole: f64, flour: f64) -> f64 {
        let (part, percent_of_flour) = match self {
            Self::Water => (0.02, 1.0),
            Self::Fat | Self::Sugars => (0.03, 1.0),
            Self::Sweetness => (0.06, 2.0),
            Self::Starch => (0.06, 2.0),
            // Millimoles: two grams of sugar.
            Self::Binding => (0.10, 6.0),
            Self::Protein => (0.10, 1.0),
            // Under what is tasted.
            Self::Salt => (0.10, 0.35),
            Self::Setting => (0.15, 0.5),
            // Millimoles: a thirtieth of the least that flour is to get.
            Self::Gas => (0.03, 0.3),
            Self::Acidity => (0.0, 0.0),
        };
        (part * whole.abs()).max(percent_of_flour / 100.0 * flour)
    }

    /// From which part of the whole on, less or more, a baker calls it another cake; `None` where it never makes one
    /// (our own judgement). What sets makes one only where it goes, and only in kinds that want egg for it.
    pub fn far(self) -> Option<f64> {
        match self {
            Self::Water | Self::Fat | Self::Sugars => Some(0.2),
            Self::Sweetness => Some(0.3),
            Self::Starch | Self::Setting => Some(0.5),
            Self::Binding | Self::Protein | Self::Salt | Self::Gas | Self::Acidity => None,
        }
    }

    /// What a unit beyond that costs, against the grams moved in [`plan`](super::plan). Each is worth more than
    /// moving the grams that mend it.
    pub fn price(self) -> f64 {
        match self {
            Self::Water => 3.0,
            Self::Fat => 4.0,
            Self::Sugars => 2.5,
            Self::Sweetness => 2.0,
            Self::Binding => 0.2,
            Self::Protein => 0.3,
            Self::Starch => 1.0,
            Self::Salt => 6.0,
            Self::Setting => 0.3,
            Self::Gas => 1.0,
            Self::Acidity => 3.0,
        }
    }

    /// How much of it a gram of a line brings, in its unit; `None` where no source tells.
    pub fn of_a_gram(self, ingredient: &Ingredient, in_pieces: bool, at: &Protons) -> Option<f64> {
        let share = |constituent: Constituent| {
            constituent
                .share(&ingredient.composition)
                .map(|share| share.to_fraction())
        };
        match self {
            Self::Water => share(Constituent::Water),
            Self::Fat => share(Constituent::Fat),
            Self::Sugars => share(Constituent::Sugars),
            Self::Sweetness => sweetness_per_gram(ingredient),
            Self::Binding => solute_moles_per_gram(ingredient).map(|moles| moles * 1000.0),
            Self::Protein => share(Constituent::Protein),
            Self::Starch => share(Constituent::Starch),
            Self::Salt => salt(ingredient),
            Self::Setting => setting_protein_per_gram(ingredient),
            Self::Gas => Some(
                ingredient
                    .leavening
                    .map_or(0.0, |leavening| bicarbonate(leavening, Mass::grams(1.0))),
            ),
            Self::Acidity => {
                let gram = Mass::grams(1.0);
                let water = share(Constituent::Water).unwrap_or(0.0);
                let missing = base_missing(ingredient, in_pieces, gram, at).to_milliequivalents();
                Some(missing + kept(Mass::grams(water), at))
            }
        }
    }
}

/// Salt in a gram, by its sodium: 58.44 / 22.99. What soda and powder bring is no salt, in self-raising flour neither; the
/// sodium of its acids is not known and counted as salt.
fn salt(ingredient: &Ingredient) -> Option<f64> {
    const OF_SODIUM: f64 = 58.44 / 22.99;
    const SODIUM_PER_MMOL: f64 = 0.022_99;
    if ingredient.group == Group::Leavener {
        return Some(0.0);
    }
    let sodium = ingredient.composition.sodium?.to_fraction();
    let leavens = ingredient
        .leavening
        .map_or(0.0, |leavening| bicarbonate(leavening, Mass::grams(1.0)));
    Some((sodium - leavens * SODIUM_PER_MMOL).max(0.0) * OF_SODIUM)
}
