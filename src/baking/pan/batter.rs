//! What batters weigh and how full their pans usually are, by kind of cake: `batters.csv`.

use crate::baking::balance::Kind;
use crate::baking::estimate::Estimate;
use crate::baking::packed::{self, Cells};
use crate::baking::quantity::{Density, Share};
use crate::baking::source::{self, Cited};
use std::sync::OnceLock;

include!(concat!(env!("OUT_DIR"), "/batter_lists.rs"));

/// The batter of a kind of cake.
#[derive(Debug, PartialEq)]
pub struct KindOfBatter {
    /// The kind.
    pub kind: Kind,
    /// How full its pans usually are, as shares of what they hold at the brim; `None` where nothing usual is known.
    pub fill: Option<UsualFill>,
    /// What it weighs, the air in it counted in.
    pub density: Estimate<Density>,
    /// Where that is from.
    pub density_cited: Cited,
    /// A word of explanation; empty where there is none.
    pub note: &'static str,
}

/// How full pans usually are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UsualFill {
    /// The least.
    pub low: Share,
    /// The most.
    pub high: Share,
    /// Where that is from.
    pub cited: Cited,
}

/// The batter of a kind.
pub fn batter_of(kind: Kind) -> &'static KindOfBatter {
    let all = kinds_of_batter();
    let of = |kind: Kind| all.iter().find(|row| row.kind == kind);
    // Every kind has a row, which `build.rs` checks.
    of(kind).or_else(|| of(Kind::Plain)).unwrap_or(&all[0])
}

/// Every kind's.
pub fn kinds_of_batter() -> &'static [KindOfBatter] {
    static ALL: OnceLock<Vec<KindOfBatter>> = OnceLock::new();
    ALL.get_or_init(|| packed::rows(10).map(unpacked).collect())
}

fn unpacked(mut cells: Cells) -> KindOfBatter {
    let kind = cells.choice(KINDS).unwrap_or(Kind::Plain);
    let (ends, cited) = (cells.text(), cells.text());
    let fill = (!ends.is_empty()).then(|| {
        let [low, high] = packed::figures(ends).map(Share::percent);
        UsualFill {
            low,
            high,
            cited: source::cited(cited),
        }
    });
    let [low, mean, high] = cells.figures().map(Density::grams_per_millilitre);
    KindOfBatter {
        kind,
        fill,
        density: Estimate::between(low, mean, high),
        density_cited: source::cited(cells.text()),
        note: cells.text(),
    }
}
