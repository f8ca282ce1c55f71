//! The bands that crumb and gas are judged by.

use super::Facts;
use crate::baking::balance::Kind;

/// The pH band of a kind of cake.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PhBand {
    /// Below this a crumb of this kind is too acid.
    pub low: f64,
    /// Above this it is too alkaline.
    pub high: f64,
    /// Where a mend from below aims: the lower end of the target, which changes least.
    pub aim_from_below: f64,
    /// Where a mend from above aims: the upper end of the target.
    pub aim_from_above: f64,
    /// Where the band is from.
    pub source: &'static str,
}

/// The gas band, per cent of flour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GasBand {
    /// Below this a batter that has nothing else to lift it stays low.
    pub low: f64,
    /// Above this it outgrows its walls and falls.
    pub high: f64,
    /// Where a mend aims.
    pub aim: f64,
    /// Where the band is from.
    pub source: &'static str,
}

/// Soda that no acid answers to pH 7, per cent of flour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SodaLeft {
    /// From here on there is soda to spare, whatever the band says.
    pub spare: f64,
    /// From here on it is a gross excess.
    pub gross: f64,
    /// Where the limits are from.
    pub source: &'static str,
}

const TEXTBOOK: &str = "Ash and Colmey 1973 as textbooks quote it, from memory.";
const PRACTICE: &str = "Common practice, no source.";

/// The band of a kind: outer limits for the verdict, the target for mends.
pub fn ph_band(kind: Kind) -> PhBand {
    let (low, aim_from_below, aim_from_above, high, source) = match kind {
        Kind::AngelFood => (5.0, 5.2, 5.6, 6.0, TEXTBOOK),
        Kind::Chiffon => (6.0, 6.4, 7.4, 7.8, PRACTICE),
        Kind::Sponge | Kind::Genoise => (6.5, 7.3, 7.6, 8.0, TEXTBOOK),
        Kind::Pound | Kind::Victoria => (6.2, 6.6, 7.1, 7.5, TEXTBOOK),
        Kind::YellowLayer | Kind::HighRatioYellow | Kind::GlutenFree => {
            (6.8, 7.2, 7.6, 8.0, TEXTBOOK)
        }
        Kind::WhiteLayer | Kind::HighRatioWhite => (6.8, 7.2, 7.8, 8.2, TEXTBOOK),
        Kind::Chocolate => (6.8, 7.2, 8.0, 8.6, "Textbooks, from memory."),
        Kind::DevilsFood => (7.4, 7.8, 8.8, 9.2, TEXTBOOK),
        Kind::DarkChocolate => (
            6.8,
            7.2,
            8.8,
            9.2,
            "From the limit for chocolate cakes to that for devil's food: Ash and Colmey 1973 as textbooks quote it, from memory.",
        ),
        Kind::RedVelvet => (5.8, 6.4, 7.2, 7.6, PRACTICE),
        Kind::Buttermilk | Kind::QuickBread | Kind::Muffin | Kind::Oil | Kind::PlantOil => {
            (6.4, 6.8, 7.4, 7.8, PRACTICE)
        }
        Kind::Berry => (6.0, 6.4, 7.0, 7.3, PRACTICE),
        Kind::Banana => (6.2, 6.6, 7.6, 8.2, PRACTICE),
        Kind::Pumpkin => (6.4, 6.8, 7.8, 8.2, PRACTICE),
        Kind::Gingerbread => (6.6, 7.0, 8.0, 8.6, PRACTICE),
        Kind::Citrus => (5.4, 6.0, 7.0, 7.4, PRACTICE),
        Kind::Biscuit => (6.6, 6.9, 7.3, 7.8, "A list of the trade, from memory."),
        Kind::Pancake => (6.4, 6.8, 7.5, 8.0, PRACTICE),
        Kind::Cookie => (6.4, 6.8, 7.8, 8.4, PRACTICE),
        Kind::Brownie => (5.4, 6.0, 7.6, 8.2, PRACTICE),
        Kind::FruitCake => (4.2, 4.4, 5.0, 6.0, TEXTBOOK),
        Kind::LightFruit => (
            5.8,
            6.2,
            7.4,
            8.0,
            "Between rich fruit cake and gingerbread: common practice, no source.",
        ),
        Kind::Yeast => (5.0, 5.3, 5.8, 6.2, "A list of the trade, from memory."),
        Kind::Plain => (
            6.0,
            6.5,
            7.4,
            7.8,
            "From the limit for fruit muffins to that for buttermilk cakes: common practice, no source.",
        ),
    };
    PhBand {
        low,
        high,
        aim_from_below,
        aim_from_above,
        source,
    }
}

/// The gas band of a batter.
pub fn gas_band(facts: &Facts) -> GasBand {
    gas_band_with(facts, facts.has_loose_soda())
}

/// The gas band of the batter with loose soda in it or without.
pub fn gas_band_with(facts: &Facts, has_soda: bool) -> GasBand {
    let (low, aim, source) = match facts.kind {
        Kind::Cookie => (
            0.15,
            0.4,
            "Carbon dioxide on flour: cookies want little and hold much, since they spread (common practice, no source).",
        ),
        Kind::Brownie | Kind::FruitCake => (
            0.0,
            0.2,
            "Carbon dioxide on flour: brownies and rich fruit cakes want none (textbook formulas, from memory).",
        ),
        Kind::LightFruit | Kind::Gingerbread => (
            0.25,
            0.5,
            "Carbon dioxide on flour: close keeping cakes want little (common practice, no source).",
        ),
        _ => (
            0.4,
            0.65,
            "Carbon dioxide on flour: self-raising flour must give at least 0.4 % in the UK (Bread and Flour Regulations 1998, \
             from memory) and 0.5 % in the US (21 CFR 137.180). On powder alone 1.2 % is the most of textbook formulas for cream and layer \
             cakes, powder at 7 % of the flour (Gisslen, from memory); soda gives much of its gas on the bench, and soda at 3.0 % of flour, \
             1.6 % gas, gave the largest yellow cake, 4.6 %, 2.4 % gas, collapsed (Book and Brill 2015).",
        ),
    };
    let creamed = facts.kind.is_foam() || facts.kind.is_creamed();
    let high = match facts.kind {
        Kind::Cookie => 3.0,
        _ if creamed && !has_soda => 1.2,
        _ => 2.0,
    };
    GasBand {
        low,
        high,
        aim,
        source,
    }
}

/// How much soda may be left over.
pub fn soda_left(kind: Kind) -> SodaLeft {
    if kind.is_dark() {
        SodaLeft {
            spare: 1.0,
            gross: 1.9,
            source: "Soda that no acid answers, on flour: devil's food of the trade has soda up to 2.5 % and answers some 0.6 % of it \
                     (textbook formulas, from memory).",
        }
    } else {
        SodaLeft {
            spare: 1.0,
            gross: 1.5,
            source: "Soda that no acid answers, on flour: pale cakes bear less of it than devil's food, which bears 1.9 % (common practice, \
                     no source).",
        }
    }
}
