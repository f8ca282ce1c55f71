//! What bakes that are known tell of oven and recipe.

use super::run::{Change, run};
use super::{Known, OVENS};
use crate::baking::estimate::NORMAL_95;

/// How far the heat that an oven gives may be from ours either way, as a factor.
const HEAT: f64 = 2.5;
/// How near the time of a known bake is met.
pub(super) const MET: f64 = 0.004;

/// What the known bakes tell of oven and recipe.
#[derive(Clone, Copy, Debug)]
pub(super) struct Anchor {
    /// Times the heat of the oven.
    pub heat: f64,
    /// Times the time that is left after that.
    pub times: f64,
    /// Relative standard deviation of the known time.
    pub deviation: f64,
    /// How far the heat is known, as a relative standard deviation.
    pub heat_deviation: f64,
}

/// The heat with which a known bake takes the time that it took.
pub(super) async fn anchor(known: &Known) -> Option<Anchor> {
    let [low, high] = known.minutes;
    let minutes = (low * high).sqrt();
    let (least, most) = (1.0 / HEAT, HEAT);
    let mut tried: Vec<[f64; 2]> = Vec::new();
    let mut heat: f64 = 1.0;
    for _ in 0..6 {
        let change = Change {
            heat,
            ..Change::NONE
        };
        let off = (run(&known.setup, change).await?.done() / minutes).ln();
        tried.push([heat.ln(), off]);
        if off.abs() < MET {
            break;
        }
        // Twice the heat, some two thirds of the time; from then on by what was seen.
        let slope = match tried[..] {
            [.., [one, off_one], [two, off_two]] if (two - one).abs() > 1e-6 => {
                ((off_two - off_one) / (two - one)).min(-0.15)
            }
            _ => -0.6,
        };
        let next = (heat.ln() - off / slope).exp().clamp(least, most);
        if (next / heat - 1.0).abs() < 1e-6 {
            break;
        }
        heat = next;
    }
    let [heat, off] = tried
        .iter()
        .min_by(|one, other| one[1].abs().total_cmp(&other[1].abs()))?;
    // A cook's "30 to 35 minutes" holds nine bakes in ten; a single figure is meant to five per cent.
    let deviation = ((high / low).ln() / (2.0 * NORMAL_95)).max(0.05 / NORMAL_95);
    let other_oven = if known.same_oven { 0.0 } else { OVENS[0] };
    Some(Anchor {
        heat: heat.exp(),
        times: (-off).exp(),
        deviation,
        heat_deviation: other_oven.hypot(deviation / 0.6),
    })
}

/// Several known bakes as one: each by its certainty.
pub(super) fn together(anchors: &[Anchor]) -> Option<Anchor> {
    let weight = |anchor: &Anchor| anchor.deviation.hypot(0.6 * anchor.heat_deviation).powi(-2);
    let all: f64 = anchors.iter().map(weight).sum();
    let mean = |of: fn(&Anchor) -> f64| {
        let sum: f64 = anchors
            .iter()
            .map(|anchor| of(anchor).ln() * weight(anchor))
            .sum();
        (sum / all).exp()
    };
    let fewer = |of: fn(&Anchor) -> f64| {
        let sum: f64 = anchors
            .iter()
            .map(|anchor| (of(anchor) * weight(anchor)).powi(2))
            .sum();
        sum.sqrt() / all
    };
    (!anchors.is_empty()).then(|| Anchor {
        heat: mean(|anchor| anchor.heat),
        times: mean(|anchor| anchor.times),
        deviation: fewer(|anchor| anchor.deviation),
        heat_deviation: fewer(|anchor| anchor.heat_deviation),
    })
}
