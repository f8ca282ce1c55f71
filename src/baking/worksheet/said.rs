//! What the baker says of the batter and its crumb: as typed, as figures, and what is wrong with it.

use crate::baking::estimate::Estimate;
use crate::baking::quantity::{Density, Volume, show};
use crate::baking::text::decimal;
use serde::{Deserialize, Serialize};

/// What the baker says of the batter, as it was typed; empty where nothing is said.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct BatterSaid {
    /// Minutes that it waits between mixing and the oven.
    pub waits: String,
    /// The pH of the crumb, measured.
    pub crumb_ph: String,
    /// Grams of batter in a level cup.
    pub cup_grams: String,
    /// Which cup.
    pub cup: BatterCup,
}

/// What the crumb of a bake that was written down tells of the recipe's buffers.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct CrumbTold {
    /// The name of the trial's record.
    pub trial: String,
    /// The pH that was read.
    pub ph: f64,
    /// Base in a kilogram of batter beyond what was reckoned, meq; negative where it is acid.
    pub beyond: f64,
}

/// No batter is further off, meq a kilogram: all the soda of a gingerbread is some 50.
pub(super) const MOST_BEYOND: f64 = 500.0;

impl CrumbTold {
    /// In words.
    pub fn words(&self) -> String {
        let side = if self.beyond < 0.0 { "acid" } else { "base" };
        format!(
            "A crumb read at pH {} moves this: a kilogram of batter held {} meq of {side} beyond what was reckoned.",
            show::ph(self.ph),
            show::milliequivalents(self.beyond.abs())
        )
    }
}

/// A cup that batter is weighed in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BatterCup {
    /// The US cup of 237 mL.
    #[default]
    Us,
    /// The metric cup of 250 mL.
    Metric,
    /// A decilitre.
    Decilitre,
}

impl BatterCup {
    /// Every cup, in the order offered.
    pub const ALL: [Self; 3] = [Self::Us, Self::Metric, Self::Decilitre];

    /// What it is called.
    pub fn words(self) -> &'static str {
        match self {
            Self::Us => "US cup, 237 mL",
            Self::Metric => "metric cup, 250 mL",
            Self::Decilitre => "decilitre, 100 mL",
        }
    }

    /// What it holds.
    pub fn volume(self) -> Volume {
        match self {
            Self::Us => Volume::US_CUP,
            Self::Metric => Volume::millilitres(250.0),
            Self::Decilitre => Volume::millilitres(100.0),
        }
    }
}

/// From the lightest beaten white to the heaviest dough, in grams per millilitre.
const DENSITIES: std::ops::RangeInclusive<f64> = 0.15..=1.5;
/// Levelled twice, a cup of batter weighs the same within 3 % (common practice, no source).
const LEVELLED: f64 = 0.03;

impl BatterSaid {
    /// Minutes that it waits, 0 to 1440; `None` where nothing is said.
    ///
    /// # Errors
    ///
    /// A sentence that says what is wrong.
    pub fn waits(&self) -> Result<Option<f64>, &'static str> {
        read(&self.waits, 0.0..=1440.0).ok_or("Write minutes from 0 to 1440, such as 20.")
    }

    /// What the batter weighs by the cup, in grams per millilitre; `None` where nothing is said.
    ///
    /// # Errors
    ///
    /// A sentence that says what is wrong.
    pub fn density(&self) -> Result<Option<Estimate<Density>>, String> {
        let millilitres = self.cup.volume().to_millilitres();
        let [least, most] =
            [*DENSITIES.start(), *DENSITIES.end()].map(|end| (end * millilitres).round());
        let grams = read(&self.cup_grams, least..=most).ok_or_else(|| {
            format!("Write the grams of batter in one level cup, from {least} to {most}.")
        })?;
        Ok(grams.map(|grams| {
            let density = Density::grams_per_millilitre(grams / millilitres);
            Estimate::apart(density, &[(LEVELLED, LEVELLED)])
        }))
    }

    /// The measured pH of the crumb, 2 to 11; `None` where nothing is said.
    ///
    /// # Errors
    ///
    /// A sentence that says what is wrong.
    pub fn crumb_ph(&self) -> Result<Option<f64>, &'static str> {
        read(&self.crumb_ph, 2.0..=11.0).ok_or("Write a pH from 2 to 11, such as 6.8.")
    }
}

/// A figure within a range, or nothing; `None` for anything else.
fn read(text: &str, range: std::ops::RangeInclusive<f64>) -> Option<Option<f64>> {
    let text = text.trim();
    if text.is_empty() {
        return Some(None);
    }
    let figure = decimal(&text.replace(',', "."))?;
    range.contains(&figure).then_some(Some(figure))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_read_and_the_rest_gets_a_sentence() {
        let said = |waits: &str, crumb_ph: &str| BatterSaid {
            waits: waits.into(),
            crumb_ph: crumb_ph.into(),
            ..BatterSaid::default()
        };
        assert_eq!(said("", " ").waits(), Ok(None));
        assert_eq!(said("", " ").crumb_ph(), Ok(None));
        assert_eq!(said(" 20 ", "6,8").waits(), Ok(Some(20.0)));
        assert_eq!(said(" 20 ", "6,8").crumb_ph(), Ok(Some(6.8)));
        for wrong in ["-1", "soon", "1441", "1e3", "NaN"] {
            assert!(said(wrong, "").waits().is_err(), "{wrong}");
        }
        for wrong in ["1.9", "11.5", "pH 7", "∞"] {
            assert!(said("", wrong).crumb_ph().is_err(), "{wrong}");
        }
    }

    /// By hand: 200 g in 250 mL is 0.8 g/mL.
    #[test]
    fn a_cup_of_batter_tells_its_density() {
        let said = |cup_grams: &str| BatterSaid {
            cup_grams: cup_grams.into(),
            cup: BatterCup::Metric,
            ..BatterSaid::default()
        };
        assert_eq!(said("").density(), Ok(None));
        let found = said("200").density().map(|found| found.map(|it| it.mean));
        assert_eq!(found, Ok(Some(Density::grams_per_millilitre(0.8))));
        for wrong in ["0", "37", "376", "a cup", "-200"] {
            assert!(said(wrong).density().is_err(), "{wrong}");
        }
    }
}
