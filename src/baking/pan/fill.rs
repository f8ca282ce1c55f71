//! How a batter stands in pans, raw and baked.

use super::Pan;
use crate::baking::estimate::Estimate;
use crate::baking::quantity::{Density, Length, Mass, Quantity, Share, Volume};

/// How a batter stands in pans.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fill {
    /// The pans.
    pub pan: Pan,
    /// The batter in all of them.
    pub batter: Estimate<Mass>,
    /// Its volume.
    pub volume: Estimate<Volume>,
    /// Its depth.
    pub depth: Estimate<Length>,
    /// Its depth against the pan's.
    pub share: Estimate<Share>,
    /// Its volume against what the pans hold at the brim.
    pub of_brim: Estimate<Share>,
    /// What it bakes to; `None` where nothing tells how far it rises.
    pub baked: Option<Baked>,
}

/// How a baked crumb stands in pans.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Baked {
    /// Its depth; above the brim as if the walls went on.
    pub depth: Estimate<Length>,
    /// Its depth against the pan's.
    pub share: Estimate<Share>,
    /// Its volume against what the pans hold at the brim.
    pub of_brim: Estimate<Share>,
}

/// Fills pans with a batter of a density; `expansion` is the baked volume over that of the batter.
pub fn filled(
    pan: &Pan,
    batter: Estimate<Mass>,
    density: Estimate<Density>,
    expansion: Option<Estimate<f64>>,
) -> Fill {
    // A dense batter takes little room, so the ends change places.
    let room = density.map(|density| Mass::GRAM / density);
    let volume = product(batter, room.map(Volume::to_millilitres));
    let (depth, share, of_brim) = standing(pan, volume);
    let baked = expansion.map(|expansion| {
        let (depth, share, of_brim) = standing(pan, product(volume, expansion));
        Baked {
            depth,
            share,
            of_brim,
        }
    });
    Fill {
        pan: *pan,
        batter,
        volume,
        depth,
        share,
        of_brim,
        baked,
    }
}

fn standing(
    pan: &Pan,
    volume: Estimate<Volume>,
) -> (Estimate<Length>, Estimate<Share>, Estimate<Share>) {
    let depth = volume.map(|volume| pan.depth_of(Volume::millilitres(volume.base().max(0.0))));
    let brim = pan.brim();
    (
        depth,
        depth.map(|depth| Share::fraction(depth / pan.depth)),
        volume.map(|volume| Share::fraction(volume / brim)),
    )
}

/// The product of two that vary apart; its ends are set by the root of squares of what each moves.
fn product<Q: Quantity, R: Quantity>(one: Estimate<Q>, times: Estimate<f64>) -> Estimate<R> {
    let mean = one.mean.base() * times.mean;
    let moved = |one_end: Q, times_end: f64| {
        (one_end.base() * times.mean - mean).hypot(one.mean.base() * times_end - mean)
    };
    let (below, above) = (moved(one.low, times.low), moved(one.high, times.high));
    let [low, mean, high] = [mean - below, mean, mean + above].map(R::from_base);
    Estimate::between(low, mean, high)
}
