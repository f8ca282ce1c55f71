//! What a recipe puts into the oven: its batter as heat meets it, and that in a pan.

use super::air::{boiling_point, syrup_boiling_point};
use super::forecast::Setup;
use super::heat::bake::Load;
use super::heat::mesh::{Symmetry as Turned, Vessel};
use super::heat::stuff;
use super::kitchen::{oven, skin};
use super::rise::{Rising, parts, rising};
use super::scale::OvenKind;
use crate::baking::balance::{Kind, Setting, water_binding};
use crate::baking::chemistry::course::Handling;
use crate::baking::chemistry::{Bowl, bowl};
use crate::baking::estimate::Estimate;
use crate::baking::formula::Formula;
use crate::baking::pan::{Pan, Symmetry};
use crate::baking::quantity::{Density, Length, Pressure, Temperature, Volume};

/// The least water that a batter may hold to be reckoned with, as a part of its weight: flour alone has 0.12.
const LEAST_WATER: f64 = 0.13;
/// The activity of a batter's water where nothing tells of it (cake 0.90 to 0.95; from memory), and between what it is
/// believed.
const ACTIVITY: f64 = 0.93;
const ACTIVITIES: [f64; 2] = [0.8, 0.98];
/// A core is not asked to be nearer to its boiling point than this, K: it gets there in the end, but nobody waits for it.
const BELOW_PLATEAU: f64 = 1.5;
/// In how many straight pieces a wall is drawn that is not straight.
const PIECES: usize = 8;

/// A batter ready for the oven, and how it bakes in air of a pressure.
#[derive(Clone, Debug, PartialEq)]
pub struct Charge {
    /// The batter.
    pub batter: stuff::Batter,
    /// Its temperature.
    pub warmth: Temperature,
    /// How it rises there.
    pub rising: Rising,
    /// The boiling point of its own syrup, which its core cannot pass.
    pub plateau: Temperature,
    /// The pressure.
    pub air: Pressure,
}

/// What the charge follows from.
#[derive(Clone, Copy, Debug)]
pub struct Batch<'a> {
    /// The weights.
    pub formula: &'a Formula,
    /// The kind of cake.
    pub kind: Kind,
    /// Where it sets, as far as that is known.
    pub setting: Option<&'a Setting>,
    /// Density of the batter.
    pub density: Density,
    /// How it is handled.
    pub handling: Handling,
    /// The bowl of it so handled; `None` where nothing in it brings acid, base or a buffer.
    pub bowl: Option<&'a Bowl>,
}

impl Batch<'_> {
    /// The charge in air of a pressure; `None` without weights, or where it is too dry to be a batter.
    pub fn charge(&self, air: Pressure) -> Option<Charge> {
        let parts = parts(self.formula)?;
        if parts[0] < LEAST_WATER {
            return None;
        }
        let activity = water_binding(self.formula)
            .map_or(ACTIVITY, |binding| binding.activity.mean.to_fraction())
            .clamp(ACTIVITIES[0], ACTIVITIES[1]);
        let batter = stuff::Batter {
            parts,
            density: self.density.to_grams_per_millilitre() * 1000.0,
            activity,
        };
        let grams = self
            .formula
            .batter()
            .map(|line| line.grams.mean.to_grams())
            .sum();
        let elsewhere = match air.to_atmospheres() == self.handling.air {
            true => None,
            false => self.bowl_in(air),
        };
        let course = elsewhere
            .as_ref()
            .or(self.bowl)
            .map_or(&[][..], |bowl| &bowl.course);
        let plateau = syrup_boiling_point(air, activity)?;
        Some(Charge {
            rising: rising(
                &batter,
                grams,
                course,
                self.setting,
                self.kind,
                air,
                boiling_point(air)?,
            ),
            batter,
            warmth: Temperature::celsius(self.handling.bench),
            plateau,
            air,
        })
    }
}

impl Batch<'_> {
    /// The bowl of it in other air.
    fn bowl_in(&self, air: Pressure) -> Option<Bowl> {
        let handling = Handling {
            air: air.to_atmospheres(),
            ..self.handling
        };
        bowl(self.formula, &handling)
    }
}

impl Charge {
    /// Core temperatures at which it may be, is usually, and has to be done: those of its kind, or where it sets if that is
    /// hotter, but never beyond what its core can reach.
    pub fn core(&self, kind: [Temperature; 3], setting: Option<&Setting>) -> [Temperature; 3] {
        let most = self.plateau.to_celsius() - BELOW_PLATEAU;
        let sets = setting.map_or(f64::MIN, |setting| setting.at.mean.to_celsius());
        // Each is a little warmer than the one before it, though the plateau may press them together.
        let mut least = f64::MIN;
        kind.map(|wanted| {
            let celsius = wanted.to_celsius().max(sets).min(most).max(least + 0.1);
            least = celsius;
            Temperature::celsius(celsius)
        })
    }

    /// How many times the batter's volume the cake has; `None` for what rises by yeast, or bakes without a pan.
    pub fn expansion(&self, kind: Kind) -> Option<Estimate<f64>> {
        let is_batter = !matches!(kind, Kind::Yeast | Kind::Cookie | Kind::Pancake);
        is_batter.then_some(self.rising.times)
    }

    /// So much of it in one pan, in an oven of a kind at a temperature, done at those cores.
    pub fn setup(
        &self,
        pan: &Pan,
        batter: Volume,
        heat: (OvenKind, Temperature),
        core: [Temperature; 3],
    ) -> Setup {
        let pan = pan.one();
        let depth = match pan.symmetry() {
            Symmetry::Ball => pan.depth,
            _ => pan.depth_of(batter),
        };
        Setup {
            load: Load {
                batter: self.batter,
                celsius: self.warmth.to_celsius(),
                rise: self.rising.points.clone(),
                vessel: vessel(&pan),
                skin: skin(pan.finish),
                depth: metres(depth),
                vapour: 1.0,
            },
            oven: oven(heat.0, heat.1, self.air),
            core: core.map(Temperature::to_celsius),
        }
    }
}

/// A pan's section. Of a slab, the ends count as one more pair of sides: its width is that of an endless slab whose
/// first term of the series falls as fast.
fn vessel(pan: &Pan) -> Vessel {
    let symmetry = match pan.symmetry() {
        Symmetry::Axis => Turned::Axis,
        Symmetry::Slab => Turned::Slab,
        Symmetry::Ball => Turned::Ball,
    };
    let ends = match symmetry {
        Turned::Slab => {
            let [one, other] = [pan.length, pan.width].map(metres);
            one.max(other) / one.hypot(other)
        }
        Turned::Axis | Turned::Ball => 1.0,
    };
    let at = |height: Length| {
        let (core, wall) = pan.across(height);
        [metres(height), metres(core) * ends, metres(wall) * ends]
    };
    if symmetry == Turned::Ball {
        let half = metres(pan.depth) / 2.0;
        return Vessel::straight(symmetry, half, metres(pan.depth));
    }
    let levels: Vec<[f64; 3]> = (0..=PIECES)
        .map(|piece| at(pan.depth * (piece as f64 / PIECES as f64)))
        .collect();
    Vessel {
        symmetry,
        levels: without_straight(levels),
        brim: metres(pan.depth),
    }
}

/// Levels that lie on a straight line between those beside them say nothing.
fn without_straight(levels: Vec<[f64; 3]>) -> Vec<[f64; 3]> {
    let mut kept = vec![levels[0]];
    for three in levels.windows(3) {
        let last = kept[kept.len() - 1];
        let part = (three[1][0] - last[0]) / (three[2][0] - last[0]);
        let is_straight = [1, 2].iter().all(|&side| {
            (last[side] + (three[2][side] - last[side]) * part - three[1][side]).abs() < 1e-6
        });
        if !is_straight {
            kept.push(three[1]);
        }
    }
    kept.extend(levels.last());
    kept
}

fn metres(length: Length) -> f64 {
    length.to_millimetres() / 1000.0
}
