//! A batter shared out among pans.

use super::fill::filled;
use super::{Fill, Pan, size};
use crate::baking::estimate::Estimate;
use crate::baking::quantity::{Density, Length, Mass, Quantity, Share, Volume};

/// Pans whose depths differ by no more than this are of like depth (a judgement of our own).
const LIKE_DEPTH: f64 = 4.0 / 3.0;

/// What decides how high each pan is filled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Level {
    /// All stand equally deep, so that they bake alike.
    SameDepth,
    /// All stand at the same share of their depth, as the trade fills cups beside pans.
    SameShare,
}

/// A batter shared out.
#[derive(Clone, Debug, PartialEq)]
pub struct Split {
    /// What decided.
    pub level: Level,
    /// Each pan's part, in the order given.
    pub parts: Vec<Part>,
    /// What the pans don't take below their highest fill.
    pub left: Option<LeftOver>,
}

/// The part of pans of one size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// What to weigh into each of them.
    pub each: Estimate<Mass>,
    /// How it stands.
    pub fill: Fill,
}

/// Batter that is left over.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeftOver {
    /// How much.
    pub batter: Estimate<Mass>,
    /// How many standard muffin cups it would fill as high.
    pub cups: f64,
}

/// A batter to be poured.
#[derive(Clone, Copy, Debug)]
pub(super) struct Pour {
    /// All of it.
    pub batter: Estimate<Mass>,
    /// What it weighs.
    pub density: Estimate<Density>,
    /// Baked volume over that of the batter, where it is known.
    pub expansion: Option<Estimate<f64>>,
    /// The highest fill, a share of what a pan holds at the brim.
    pub highest: Share,
}

/// Shares a batter out among pans; `None` where there are none, or no batter.
///
/// Every pan is filled to one level, but none above its highest fill or its fill line; the level is found by halving, since
/// what all of them hold rises with it.
pub(super) fn split(pans: &[Pan], pour: &Pour) -> Option<Split> {
    let volume = pour.batter.mean / pour.density.mean;
    if pans.is_empty() || !volume.base().is_finite() || volume <= Volume::ZERO {
        return None;
    }
    let level = level_of(pans);
    let most: Vec<Volume> = pans.iter().map(|pan| most_in(pan, pour.highest)).collect();
    let room: Volume = most.iter().copied().sum();
    let poured = if volume > room { room } else { volume };
    let held = |at: f64| -> Vec<Volume> {
        let to = |pan: &Pan| match level {
            Level::SameDepth => Length::millimetres(at),
            Level::SameShare => pan.depth * at,
        };
        let each = pans.iter().zip(&most);
        each.map(|(pan, most)| {
            let volume = pan.volume_to(to(pan));
            if volume > *most { *most } else { volume }
        })
        .collect()
    };
    let volumes = held(halved(poured, |at| held(at).into_iter().sum()));
    let sum: Volume = volumes.iter().copied().sum();
    // By their sum and not by what was to be poured: the parts make up the whole to the last bit.
    let grams = pour.batter.times(poured / volume);
    let parts = pans.iter().zip(&volumes).map(|(pan, volume)| {
        let batter = grams.times(*volume / sum);
        Part {
            each: batter.times(1.0 / f64::from(pan.count)),
            fill: filled(pan, batter, pour.density, pour.expansion),
        }
    });
    Some(Split {
        level,
        parts: parts.collect(),
        left: left_over(volume - poured, volume, pour),
    })
}

/// The level at which all pans together hold a volume, by halving; `held` rises with the level.
fn halved(volume: Volume, held: impl Fn(f64) -> Volume) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    // Doubled at most sixty times: what is more stands above any pan.
    for _ in 0..60 {
        if held(high) >= volume {
            break;
        }
        high *= 2.0;
    }
    for _ in 0..80 {
        let middle = (low + high) / 2.0;
        if held(middle) < volume {
            low = middle
        } else {
            high = middle
        }
    }
    high
}

fn level_of(pans: &[Pan]) -> Level {
    let depths = || pans.iter().map(|pan| pan.depth.to_millimetres());
    let (least, most) = (
        depths().fold(f64::INFINITY, f64::min),
        depths().fold(0.0, f64::max),
    );
    if most <= least * (LIKE_DEPTH + 1e-9) {
        Level::SameDepth
    } else {
        Level::SameShare
    }
}

/// The most that goes into pans of one size.
fn most_in(pan: &Pan, highest: Share) -> Volume {
    let usual = pan.brim() * highest.to_fraction();
    match pan.fill_line.map(|line| pan.volume_to(line)) {
        Some(line) if line < usual => line,
        _ => usual,
    }
}

fn left_over(left: Volume, all: Volume, pour: &Pour) -> Option<LeftOver> {
    let batter = pour.batter.times(left / all);
    // Less than a gram stays on the spatula.
    if batter.mean < Mass::GRAM {
        return None;
    }
    let cup = size("muffin_std")?.pan.one();
    Some(LeftOver {
        batter,
        cups: left / (cup.brim() * pour.highest.to_fraction()),
    })
}
