//! The bands that crumb and gas are judged by.

use crate::baking::balance::Kind;

/// The pH band of a kind of cake.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PhBand {
    /// Below this a crumb of this kind is too acid.
    pub low: f64,
    /// Above this it is too alkaline.
    pub high: f64,
    /// Where a mend from below aims: inside, changing least.
    pub aim_from_below: f64,
    /// Where a mend from above aims.
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

/// The band of a kind.
///
/// The outer limits are used, not the narrow targets of textbooks: reckoned crumbs of plain powder cakes lie
/// 0.4 to 0.7 below those, and it is not known which of the two is off.
pub fn ph_band(kind: Kind) -> PhBand {
    let (low, high, aim_from_below, aim_from_above, source) = match kind {
        Kind::Plain => (
            6.0,
            7.8,
            6.5,
            7.4,
            "From the limit for fruit muffins to that for buttermilk cakes: common practice, no source.",
        ),
        Kind::Cocoa => (
            6.8,
            8.8,
            7.2,
            8.0,
            "Limits for chocolate and devil's food cakes: Ash and Colmey 1973 as textbooks quote it, from memory.",
        ),
        Kind::Rich => (
            6.2,
            7.5,
            6.6,
            7.1,
            "Limits for pound cakes: Ash and Colmey 1973 as textbooks quote it, from memory.",
        ),
        Kind::EggFoam => (
            6.0,
            8.0,
            6.4,
            7.6,
            "Limits for chiffon and sponge cakes: Ash and Colmey 1973 as textbooks quote it, from memory.",
        ),
        Kind::WhiteFoam => (
            5.0,
            6.0,
            5.2,
            5.6,
            "Limits for angel food: Ash and Colmey 1973 as textbooks quote it, from memory.",
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

/// The gas band of cakes raised by powder or soda.
pub fn gas_band() -> GasBand {
    GasBand {
        low: 0.4,
        high: 2.0,
        aim: 0.65,
        source: "Carbon dioxide on flour: self-raising flour must give at least 0.4 % in the UK (Bread and Flour Regulations 1998, \
                 from memory) and 0.5 % in the US (21 CFR 137.180); soda at 3.0 % of flour, 1.6 % gas, gave the largest yellow cake \
                 and 4.6 %, 2.4 % gas, collapsed (Book and Brill 2015).",
    }
}
