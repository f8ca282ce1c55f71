//! Amounts as they are written: a count or a range of counts of a unit.

use crate::baking::ingredient::{Piece, Region};
use crate::baking::quantity::{Mass, Volume};

/// So many of a unit; `low` and `high` differ for a range ("2 to 3 tablespoons").
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Amount {
    /// The lower count; finite and not negative.
    pub low: f64,
    /// The upper count; finite and not below `low`.
    pub high: f64,
    /// What is counted.
    pub unit: Unit,
}

/// What an amount counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unit {
    /// A mass: this much for each count.
    Mass(Mass),
    /// A volume measure, whose size may depend on the country.
    Volume(VolumeUnit),
    /// Pieces.
    Piece(Piece),
    /// No more than "to taste", "as needed": an amount that nobody can weigh.
    ToTaste,
}

/// How full a measure is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Level {
    /// Level, or not said.
    #[default]
    Level,
    /// Scant.
    Scant,
    /// Generous.
    Generous,
    /// Rounded.
    Rounded,
    /// Heaped.
    Heaped,
}

/// Volume measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum VolumeUnit {
    /// Cup.
    Cup,
    /// Tablespoon.
    Tablespoon,
    /// Dessertspoon: two teaspoons.
    Dessertspoon,
    /// Teaspoon.
    Teaspoon,
    /// Fluid ounce.
    FluidOunce,
    /// Gill.
    Gill,
    /// Pint.
    Pint,
    /// Quart.
    Quart,
    /// Gallon.
    Gallon,
    /// Millilitre.
    Millilitre,
    /// Centilitre.
    Centilitre,
    /// Decilitre.
    Decilitre,
    /// Litre.
    Litre,
    /// Pinch: 1/16 US teaspoon (common practice, no source).
    Pinch,
    /// Dash: 1/8 US teaspoon (common practice, no source).
    Dash,
    /// Drop: 0.05 mL (pharmacopoeia, 20 drops per mL; from memory).
    Drop,
}

impl VolumeUnit {
    /// The size of the measure in a country.
    ///
    /// US customary units are exact (NIST Handbook 44, appendix C), imperial units too (UK Units of
    /// Measurement Regulations 1995). Metric spoons 5 and 15 mL and the 250 mL cup of Australia, New
    /// Zealand and Canada, and the 20 mL Australian tablespoon: standards bodies, from memory. A cup
    /// in a UK recipe is taken as the 250 mL metric cup (common practice, no source).
    pub fn volume(self, region: Region) -> Volume {
        let us = region == Region::Us;
        let us_or_canada = us || region == Region::Ca;
        let millilitres = match self {
            Self::Cup if us => 236.588_236_5,
            Self::Cup => 250.0,
            Self::Tablespoon if us => 14.786_764_781_25,
            Self::Tablespoon if region == Region::Au => 20.0,
            Self::Tablespoon => 15.0,
            Self::Dessertspoon => 10.0,
            Self::Teaspoon if us => 4.928_921_593_75,
            Self::Teaspoon => 5.0,
            Self::FluidOunce if us_or_canada => 29.573_529_562_5,
            Self::FluidOunce => 28.413_062_5,
            Self::Gill if us_or_canada => 118.294_118_25,
            Self::Gill => 142.065_312_5,
            Self::Pint if us_or_canada => 473.176_473,
            Self::Pint => 568.261_25,
            Self::Quart if us_or_canada => 946.352_946,
            Self::Quart => 1_136.522_5,
            Self::Gallon if us_or_canada => 3_785.411_784,
            Self::Gallon => 4_546.09,
            Self::Millilitre => 1.0,
            Self::Centilitre => 10.0,
            Self::Decilitre => 100.0,
            Self::Litre => 1000.0,
            Self::Pinch => 4.928_921_593_75 / 16.0,
            Self::Dash => 4.928_921_593_75 / 8.0,
            Self::Drop => 0.05,
        };
        Volume::millilitres(millilitres)
    }
}
