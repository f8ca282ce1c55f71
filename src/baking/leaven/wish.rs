//! What is wished of the leavening: by the baker, in plain choices, and as figures to aim at.

use crate::baking::balance::Kind;
use crate::baking::finding::{Facts, GasBand, PhBand, gas_band, ph_band};
use crate::baking::text::decimal;
use serde::{Deserialize, Serialize};

/// Part of the band, counted from its lower end, in which a crumb is a little tangy (common practice, no source).
const LITTLE: f64 = 0.25;
/// How far below the band a tangy crumb may lie, pH: from here on `finding` calls it a fault.
const BEYOND: f64 = 0.4;
/// The largest limit that is taken for one, mg of sodium: 100 g of pure salt hold 39,300.
const MOST_SODIUM: f64 = 40_000.0;

/// The baking powders of the tables whose kind is said, by key. A recipe in any country has them by their own names.
pub const POWDERS: [&str; 8] = [
    "baking_powder_aluminium",
    "baking_powder_aluminium_phosphate",
    "baking_powder_low_sodium",
    "baking_powder_phosphate",
    "baking_powder_phosphate_single",
    "baking_powder_blend",
    "baking_powder_pyrophosphate",
    "baking_powder_tartrate",
];

/// How sour the crumb is to be.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Tang {
    /// As is usual for this kind of cake.
    #[default]
    Usual,
    /// At the lower end of the band.
    Little,
    /// Below it.
    Tangy,
}

impl Tang {
    /// Every one, in the order shown.
    pub const ALL: [Self; 3] = [Self::Usual, Self::Little, Self::Tangy];

    /// In words on the page.
    pub fn words(self) -> &'static str {
        match self {
            Self::Usual => "As usual for this kind of cake",
            Self::Little => "A little tangy",
            Self::Tangy => "Tangy",
        }
    }

    /// Where the crumb of a kind is to lie.
    pub fn band(self, kind: Kind) -> PhBand {
        let usual = ph_band(kind);
        let (low, high) = match self {
            Self::Usual => return usual,
            Self::Little => (usual.low, usual.low + LITTLE * (usual.high - usual.low)),
            Self::Tangy => (usual.low - BEYOND, usual.low),
        };
        PhBand {
            low,
            high,
            // Inside, since the gas draws back a little what is led up from below.
            aim_from_below: low + (high - low) / 4.0,
            aim_from_above: high,
            source: usual.source,
        }
    }
}

/// What a limit of sodium is counted against.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Per {
    /// 100 g of batter.
    #[default]
    Hundred,
    /// One of the servings that the recipe says it makes.
    Serving,
}

impl Per {
    /// Every one, in the order shown.
    pub const ALL: [Self; 2] = [Self::Hundred, Self::Serving];

    /// In words on the page.
    pub fn words(self) -> &'static str {
        match self {
            Self::Hundred => "In 100 g of batter",
            Self::Serving => "In each serving",
        }
    }
}

/// The leaveners that may be used.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Cupboard {
    /// Baking soda.
    pub soda: bool,
    /// Baking powder.
    pub powder: bool,
    /// The key of the powder's kind; `None` is the recipe's own, or the usual one of its country.
    pub powder_kind: Option<String>,
    /// Cream of tartar.
    pub tartar: bool,
    /// Potassium bicarbonate.
    pub potassium: bool,
}

impl Default for Cupboard {
    fn default() -> Self {
        Self {
            soda: true,
            powder: true,
            powder_kind: None,
            tartar: false,
            potassium: false,
        }
    }
}

/// The choices of the baker, as they are kept with a recipe.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct WishEntry {
    /// How sour.
    pub tang: Tang,
    /// What there is.
    pub cupboard: Cupboard,
    /// The most sodium, mg, as typed; empty for no limit.
    pub sodium: String,
    /// In how much of the cake.
    pub sodium_per: Per,
    /// The pH that the crumb is to have, as typed; empty for the kind's own band.
    pub ph: String,
    /// Gas, per cent of flour, as typed; empty for the kind's own band.
    pub lift: String,
}

impl WishEntry {
    /// The limit, if one is given, mg; or what is wrong with it.
    pub fn sodium_limit(&self) -> Result<Option<f64>, String> {
        let typed = self.sodium.trim();
        let figure = typed.trim_end_matches("mg").trim_end().replace(',', ".");
        match decimal(&figure) {
            _ if typed.is_empty() => Ok(None),
            Some(limit) if (0.0..=MOST_SODIUM).contains(&limit) => Ok(Some(limit)),
            _ => Err(format!(
                "\"{typed}\" is not a limit: write milligrams from 0 to 40000, such as 300."
            )),
        }
    }

    /// The pH, if one is given, 3 to 10; or what is wrong with it.
    pub fn own_ph(&self) -> Result<Option<f64>, String> {
        within(&self.ph, 3.0, 10.0).ok_or_else(|| {
            let typed = self.ph.trim();
            format!("\"{typed}\" is not a pH for a crumb: write one from 3 to 10, such as 7.2.")
        })
    }

    /// The gas, if any is given, per cent of flour from 0 to 3; or what is wrong with it.
    pub fn own_lift(&self) -> Result<Option<f64>, String> {
        within(&self.lift, 0.0, 3.0).ok_or_else(|| {
            let typed = self.lift.trim();
            format!(
                "\"{typed}\" is not a gas: write per cent of the flour from 0 to 3, such as 0.7."
            )
        })
    }

    /// The wish for a kind of cake; or what is wrong with it.
    pub fn wish(&self, facts: &Facts) -> Result<Wish, String> {
        let (ph, lift) = (self.own_ph()?, self.own_lift()?);
        let sodium = self.sodium_limit()?;
        if sodium.is_some() && self.sodium_per == Per::Serving && facts.servings.is_none() {
            return Err(
                "Nothing says how many this recipe serves, so no limit for a serving can be kept: \
                 write a line such as \"Serves 8\", or count in 100 g."
                    .into(),
            );
        }
        Ok(Wish {
            ph: ph.map_or_else(|| self.tang.band(facts.kind), near_ph),
            gas: lift.map_or_else(|| gas_band(facts), near_lift),
            cupboard: self.cupboard.clone(),
            sodium,
            sodium_per: self.sodium_per,
        })
    }
}

/// What the leavening is to bring about.
#[derive(Clone, Debug, PartialEq)]
pub struct Wish {
    /// Where the crumb's pH is to lie.
    pub ph: PhBand,
    /// Where the gas is to lie, per cent of flour.
    pub gas: GasBand,
    /// What it may be made of.
    pub cupboard: Cupboard,
    /// The most sodium, mg.
    pub sodium: Option<f64>,
    /// In how much of the cake.
    pub sodium_per: Per,
}

/// How near a pH and, relative to it, a lift of one's own are to be met.
const NEAR: f64 = 0.1;

fn near_ph(ph: f64) -> PhBand {
    PhBand {
        low: ph - NEAR,
        high: ph + NEAR,
        aim_from_below: ph,
        aim_from_above: ph,
        source: "Your own.",
    }
}

fn near_lift(lift: f64) -> GasBand {
    GasBand {
        low: lift * (1.0 - NEAR),
        high: lift * (1.0 + NEAR),
        aim: lift,
        source: "Your own.",
    }
}

/// A figure within limits, or nothing; `None` for anything else.
fn within(text: &str, low: f64, high: f64) -> Option<Option<f64>> {
    let text = text.trim();
    if text.is_empty() {
        return Some(None);
    }
    let figure = decimal(&text.replace(',', "."))?;
    (low..=high).contains(&figure).then_some(Some(figure))
}
