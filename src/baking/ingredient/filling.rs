//! What a level cup or spoon weighs.

use super::Region;
use crate::baking::estimate::Estimate;
use crate::baking::quantity::{Mass, Volume};
use crate::baking::source::Cited;

/// One row of `fillings.csv`, the weight of a level US measure of an ingredient; or of `others.csv`, what a source that is
/// not in use says of the same, shown to tell how far the sources are apart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FillingWeight {
    /// The measure that was weighed.
    pub measure: SpoonOrCup,
    /// The state it was in, if the row names one.
    pub form: Option<Form>,
    /// How the measure was filled, if the row names it.
    pub filling: Option<Filling>,
    /// The weight. A source that gives one figure and no range has it at both ends too.
    pub weight: Estimate<Mass>,
    /// Where it is from.
    pub cited: Cited,
    /// A word of explanation.
    pub note: &'static str,
}

/// The US measure that a weight is given for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SpoonOrCup {
    /// 236.588 mL.
    #[default]
    Cup,
    /// 14.787 mL.
    Tablespoon,
    /// 4.929 mL.
    Teaspoon,
}

/// How a cup is filled with something that packs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Filling {
    /// The cup goes into the bag and is levelled.
    Dipped,
    /// A spoon fills the cup, which is levelled.
    Spooned,
    /// Sifted first, then spooned.
    Sifted,
}

/// The state an ingredient is measured or counted in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Form {
    /// Liquid by warmth.
    Melted,
    /// Pressed down so that it holds its shape.
    Packed,
    /// Shaken in, not pressed.
    Loose,
    /// Cut up.
    Chopped,
    /// In slices.
    Sliced,
    /// In cubes or chunks.
    Cubed,
    /// In thin sticks.
    Slivered,
    /// As it grew.
    Whole,
    /// In halves.
    Halved,
    /// Crushed to a paste with a fork.
    Mashed,
    /// Smooth from a blender or sieve.
    Pureed,
    /// Grated or shredded.
    Grated,
    /// Ground to meal.
    Ground,
    /// Whipped full of air.
    Whipped,
    /// Crushed, as tinned pineapple.
    Crushed,
    /// In chips or drops.
    Chips,
}

impl SpoonOrCup {
    /// Every measure, in the order shown.
    pub const ALL: [Self; 3] = [Self::Cup, Self::Tablespoon, Self::Teaspoon];

    /// The size of the measure: US customary, exact (NIST Handbook 44, appendix C).
    pub fn volume(self) -> Volume {
        match self {
            Self::Cup => Volume::US_CUP,
            Self::Tablespoon => Volume::US_CUP / 16.0,
            Self::Teaspoon => Volume::US_CUP / 48.0,
        }
    }

    /// Its size in a country, as recipes are read (`recipe::VolumeUnit` has the sources, a test that both agree).
    pub fn volume_in(self, region: Region) -> Volume {
        match (self, region) {
            (_, Region::Us) => self.volume(),
            (Self::Cup, _) => Volume::millilitres(250.0),
            (Self::Tablespoon, Region::Au) => Volume::millilitres(20.0),
            (Self::Tablespoon, _) => Volume::millilitres(15.0),
            (Self::Teaspoon, _) => Volume::millilitres(5.0),
        }
    }

    /// The measure in a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Cup => "cup",
            Self::Tablespoon => "tablespoon",
            Self::Teaspoon => "teaspoon",
        }
    }
}

impl Filling {
    /// Every way of filling, in the order shown.
    pub const ALL: [Self; 3] = [Self::Dipped, Self::Spooned, Self::Sifted];

    /// The way of filling in a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Dipped => "dipped and levelled",
            Self::Spooned => "spooned and levelled",
            Self::Sifted => "sifted first",
        }
    }
}

impl Form {
    /// Every form, in the order shown.
    pub const ALL: [Self; 16] = [
        Self::Melted,
        Self::Packed,
        Self::Loose,
        Self::Chopped,
        Self::Sliced,
        Self::Cubed,
        Self::Slivered,
        Self::Whole,
        Self::Halved,
        Self::Mashed,
        Self::Pureed,
        Self::Grated,
        Self::Ground,
        Self::Whipped,
        Self::Crushed,
        Self::Chips,
    ];

    /// The form in a sentence.
    pub fn words(self) -> &'static str {
        match self {
            Self::Melted => "melted",
            Self::Packed => "packed",
            Self::Loose => "loose",
            Self::Chopped => "chopped",
            Self::Sliced => "sliced",
            Self::Cubed => "cubed",
            Self::Slivered => "slivered",
            Self::Whole => "whole",
            Self::Halved => "halved",
            Self::Mashed => "mashed",
            Self::Pureed => "puréed",
            Self::Grated => "grated",
            Self::Ground => "ground",
            Self::Whipped => "whipped",
            Self::Crushed => "crushed",
            Self::Chips => "as chips",
        }
    }
}
