//! The swaps that the trade knows: what composition cannot tell of one ingredient in another's place.
//!
//! The rows stand in `swaps.csv`, in grams for each gram of the original; `build.rs` checks and packs them. Ratios are
//! where to start: water, sugars, fat and acid of a whole formula are reckoned elsewhere. Where a source speaks in
//! cups and spoons, grams are worked with the weights of `fillings.csv`. Figures in the texts are grams for each gram of
//! the original too.

use super::unpack;
use crate::baking::balance::Kind;
use crate::baking::estimate::Estimate;
use crate::baking::ingredient::Ingredient;
use crate::baking::quantity::{Mass, Share};
use crate::baking::source::Cited;

/// One row of `swaps.csv`, or such a row the other way round.
#[derive(Debug, PartialEq)]
pub struct Swap {
    /// The original.
    pub from: &'static Ingredient,
    /// What comes in its place, the main one first; one to three.
    pub brings: Vec<Brought>,
    /// The part of the original that is usually replaced.
    pub usual: Share,
    /// The part of it that practice replaces at most.
    pub most: Share,
    /// What the original mainly does.
    pub jobs: Vec<Job>,
    /// The kinds of cake it is meant for; empty where it is meant for any.
    pub kinds: Vec<Kind>,
    /// The kinds it is not meant for.
    pub not_kinds: Vec<Kind>,
    /// What becomes of the taste; this and the texts that follow are empty where nothing is worth a word.
    pub taste: &'static str,
    /// What becomes of the colour.
    pub colour: &'static str,
    /// What becomes of the keeping.
    pub keeping: &'static str,
    /// What to mind, of method and of health.
    pub caution: &'static str,
    /// Where the ratios are from.
    pub cited: Cited,
    /// The page, chapter or table there.
    pub place: &'static str,
    /// A word on how the ratios were got.
    pub note: &'static str,
    /// Whether it is a row read the other way round: its texts, which speak of the written way, are empty.
    pub is_turned: bool,
}

/// An ingredient that a swap brings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Brought {
    /// The ingredient.
    pub ingredient: &'static Ingredient,
    /// How much of it stands for one gram of the original.
    pub for_a_gram: Estimate<Mass>,
}

/// What an ingredient does in a cake.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Job {
    /// Holds the crumb together, sets a filling.
    Binds,
    /// Brings gas or air.
    Leavens,
    /// Holds fat and water together.
    Emulsifies,
    /// Brings water, or keeps it.
    Moistens,
    /// Sweetens.
    Sweetens,
    /// Makes tender by fat.
    Shortens,
    /// Gives taste.
    Flavours,
    /// Brings acid.
    Sours,
    /// Gives colour, or browns.
    Colours,
    /// Makes the frame of the crumb.
    Structure,
}

/// How a swap suits a kind of cake.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Suits {
    /// It is meant for that kind.
    Meant,
    /// Nothing speaks against it.
    Open,
    /// It is meant for others.
    MeantForOthers,
    /// It is not meant for that kind.
    NotMeant,
}

impl Job {
    /// What it does, after the ingredient's name in a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Binds => "binds",
            Self::Leavens => "lifts",
            Self::Emulsifies => "holds fat and water together",
            Self::Moistens => "moistens",
            Self::Sweetens => "sweetens",
            Self::Shortens => "makes tender",
            Self::Flavours => "gives taste",
            Self::Sours => "sours",
            Self::Colours => "gives colour",
            Self::Structure => "builds the crumb",
        }
    }
}

impl Swap {
    /// How it suits that kind of cake.
    pub fn suits(&self, kind: Kind) -> Suits {
        if self.not_kinds.contains(&kind) {
            Suits::NotMeant
        } else if self.kinds.is_empty() {
            Suits::Open
        } else if self.kinds.contains(&kind) {
            Suits::Meant
        } else {
            Suits::MeantForOthers
        }
    }
}

/// Every swap: the rows of the table in their order, each followed by its other way round where that holds.
pub fn all() -> &'static [Swap] {
    unpack::swaps()
}

/// The swaps for an ingredient.
pub fn swaps_from(from: &Ingredient) -> impl Iterator<Item = &'static Swap> {
    let key = from.key;
    all().iter().filter(move |swap| swap.from.key == key)
}

/// The swap of one ingredient for another as the main one; where several are known, the one that brings fewest.
pub fn swap_between(from: &Ingredient, to: &Ingredient) -> Option<&'static Swap> {
    swaps_from(from)
        .filter(|swap| {
            let main = swap.brings.first();
            main.is_some_and(|main| main.ingredient.key == to.key)
        })
        .min_by_key(|swap| swap.brings.len())
}
