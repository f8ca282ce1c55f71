//! How hot the core of a cake is once it is done, by its kind, what else tells, and what is to be minded.
//!
//! The temperatures are those of the sea. Higher up, water boils cooler and so does what the crumb can reach: as many degrees
//! are taken off as water boils cooler there. What egg alone sets well below boiling is only kept from what the crumb
//! cannot reach.

use super::air::boils_cooler;
use crate::baking::balance::Kind;
use crate::baking::chemistry::course::HOTTEST;
use crate::baking::quantity::{Pressure, Temperature, show};
use crate::baking::source::Confidence;

/// The core of a cake that is done.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Core {
    /// The coolest that passes.
    pub low: Temperature,
    /// The usual.
    pub typical: Temperature,
    /// The hottest before it dries.
    pub high: Temperature,
    /// How the figures are known.
    pub confidence: Confidence,
}

/// Where egg and starch are firm well before water boils, C: below this a core is kept from what it cannot reach only.
const WELL_BELOW: f64 = 92.0;

/// The core at done under an air; `None` for what has no core to measure: pancakes and cookies.
pub fn core(kind: Kind, air: Pressure) -> Option<Core> {
    let (celsius, confidence) = at_sea(kind)?;
    let cooler = boils_cooler(air).to_celsius();
    let most = HOTTEST - cooler;
    let here = |celsius: f64, typical: f64| {
        Temperature::celsius(if typical < WELL_BELOW {
            celsius.min(most)
        } else {
            celsius - cooler
        })
    };
    let [low, typical, high] = celsius.map(|figure| here(figure, celsius[1]));
    Some(Core {
        low,
        typical,
        high,
        confidence,
    })
}

/// Low, usual and high at the sea, C. Common practice, no source; those from memory are ranges that bakers' handbooks give.
fn at_sea(kind: Kind) -> Option<([f64; 3], Confidence)> {
    use Confidence::{Memory, Practice};
    Some(match kind {
        Kind::Pancake | Kind::Cookie => return None,
        Kind::Plain => ([95.0, 97.0, 99.0], Practice),
        Kind::AngelFood => ([94.0, 97.0, 98.0], Practice),
        Kind::Chiffon => ([94.0, 96.0, 97.0], Practice),
        Kind::Genoise => ([94.0, 95.0, 97.0], Practice),
        Kind::Sponge => ([93.0, 94.0, 97.0], Practice),
        Kind::Victoria => ([96.0, 97.0, 98.0], Practice),
        Kind::YellowLayer | Kind::Chocolate | Kind::Buttermilk | Kind::Citrus => {
            ([95.0, 97.0, 98.0], Practice)
        }
        Kind::WhiteLayer
        | Kind::HighRatioYellow
        | Kind::HighRatioWhite
        | Kind::DarkChocolate
        | Kind::DevilsFood
        | Kind::RedVelvet => ([95.0, 96.0, 98.0], Practice),
        Kind::Muffin | Kind::Berry => ([96.0, 97.0, 99.0], Practice),
        Kind::Banana | Kind::QuickBread | Kind::Gingerbread => ([96.0, 98.0, 99.0], Practice),
        Kind::Pound
        | Kind::Oil
        | Kind::PlantOil
        | Kind::GlutenFree
        | Kind::Pumpkin
        | Kind::FruitCake
        | Kind::LightFruit => ([97.0, 98.0, 99.0], Practice),
        Kind::Brownie => ([85.0, 90.0, 93.0], Practice),
        Kind::Biscuit => ([93.0, 96.0, 99.0], Memory),
        Kind::Yeast => ([88.0, 91.0, 96.0], Memory),
    })
}

/// What tells that it is done, without a thermometer: common practice, no source.
pub fn signs(kind: Kind) -> &'static str {
    match kind {
        Kind::AngelFood | Kind::Chiffon => {
            "The cracks on top are dry, and it springs back when pressed; it cools upside down in its pan."
        }
        Kind::Genoise | Kind::Sponge => {
            "It springs back when pressed, has drawn a little from the sides, and is evenly golden."
        }
        Kind::Pound | Kind::FruitCake | Kind::LightFruit => {
            "A skewer comes out clean from the deepest place, the crack on top is dry, and it hardly sings any more."
        }
        Kind::Brownie => {
            "The edges are firm and the middle just holds: a skewer comes out with a few moist crumbs, not wet with batter."
        }
        Kind::Cookie => {
            "The edges are set and coloured, the middle still soft; they firm as they cool."
        }
        Kind::Pancake => {
            "Bubbles break on top and stay open before it is turned; then both sides are brown and the edge is dry."
        }
        Kind::Biscuit => {
            "Well risen and brown on top and below; the sides where they break apart are dry."
        }
        Kind::Yeast => "Brown all round, and it sounds hollow when tapped below.",
        Kind::Banana
        | Kind::Pumpkin
        | Kind::Gingerbread
        | Kind::QuickBread
        | Kind::Oil
        | Kind::PlantOil => {
            "A skewer comes out without wet batter, and the middle springs back; the sides may not draw in."
        }
        _ => {
            "It springs back when pressed, has begun to draw from the sides, and a skewer comes out clean."
        }
    }
}

/// Minutes that kill nine in ten of Salmonella in muffin batter at 61 C, and the degrees that make it a tenth (Channaiah and
/// others 2017, measured from 55 to 61 C).
const TENTH_AT_61: f64 = 16.5;
const TENFOLD: f64 = 10.4;

/// How long a core at a temperature takes to leave one Salmonella in 100,000, minutes. Beyond 61 °C the line is drawn on.
pub fn five_log_minutes(core: Temperature) -> f64 {
    5.0 * TENTH_AT_61 * 10_f64.powf((61.0 - core.to_celsius()) / TENFOLD)
}

/// The usual cautions for a cake with raw egg or raw flour in it that is taken out at such a core, worst first; empty
/// without either.
pub fn cautions(core: &Core, has_egg: bool, has_flour: bool) -> Vec<String> {
    if !has_egg && !has_flour {
        return Vec::new();
    }
    let mut said = Vec::new();
    let minutes = five_log_minutes(core.low);
    let time = if minutes < 1.0 {
        format!("{} seconds", show::fixed((minutes * 60.0).ceil(), 0))
    } else {
        format!("{} minutes", show::fixed(minutes.ceil(), 0))
    };
    said.push(format!(
        "Raw flour and raw egg can carry germs. At {} °C a core kills all but one Salmonella in 100,000 in about {time} (worked out from what was measured in muffin batter from 55 to 61 °C; sugar and fat protect them, so a moment at 71 °C is not enough in batter).",
        show::fixed(core.low.to_celsius(), 0),
    ));
    if has_egg {
        said.push(
            "Egg dishes are to reach 71.1 °C (160 °F), says the US Department of Agriculture."
                .to_owned(),
        );
    }
    said.push(
        "Where food is sold or given away, local rules and licensed practice decide.".to_owned(),
    );
    said
}
