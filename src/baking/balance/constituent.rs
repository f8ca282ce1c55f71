//! Totals of one constituent over the batter.

use crate::baking::estimate::Estimate;
use crate::baking::formula::Formula;
use crate::baking::ingredient::Composition;
use crate::baking::quantity::{Mass, Share};

/// What batters are made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Constituent {
    /// Water.
    Water,
    /// Fat.
    Fat,
    /// Total sugars.
    Sugars,
    /// Protein.
    Protein,
    /// Starch.
    Starch,
    /// Sodium.
    Sodium,
}

/// The total of a constituent, of the lines whose share of it is known.
#[derive(Clone, Debug, PartialEq)]
pub struct Total {
    /// The sum over those lines.
    pub grams: Estimate<Mass>,
    /// The lines whose share no source gives.
    pub unknown: Vec<usize>,
    /// The lines whose share was worked out by difference.
    pub derived: Vec<usize>,
}

impl Constituent {
    /// Every constituent, in the order shown.
    pub const ALL: [Self; 6] = [
        Self::Water,
        Self::Fat,
        Self::Sugars,
        Self::Protein,
        Self::Starch,
        Self::Sodium,
    ];

    /// Its name on the page.
    pub fn name(self) -> &'static str {
        match self {
            Self::Water => "Water",
            Self::Fat => "Fat",
            Self::Sugars => "Sugars",
            Self::Protein => "Protein",
            Self::Starch => "Starch",
            Self::Sodium => "Sodium",
        }
    }

    /// Its share of an ingredient; `None` where no source gives it.
    pub fn share(self, composition: &Composition) -> Option<Share> {
        match self {
            Self::Water => composition.water,
            Self::Fat => composition.fat,
            Self::Sugars => composition.sugars,
            Self::Protein => composition.protein,
            Self::Starch => composition.starch,
            Self::Sodium => composition.sodium,
        }
    }
}

/// The total of a constituent in the batter.
pub fn total(formula: &Formula, constituent: Constituent) -> Total {
    let (mut parts, mut unknown, mut derived) = (Vec::new(), Vec::new(), Vec::new());
    for line in formula.batter() {
        let composition = &line.ingredient.composition;
        match constituent.share(composition) {
            Some(share) => {
                parts.push(line.grams.times(share.to_fraction()));
                if composition
                    .derived
                    .iter()
                    .any(|name| name.eq_ignore_ascii_case(constituent.name()))
                {
                    derived.push(line.line);
                }
            }
            None => unknown.push(line.line),
        }
    }
    Total {
        grams: Estimate::sum(&parts),
        unknown,
        derived,
    }
}
