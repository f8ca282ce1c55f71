//! How a batter rises: its gas by the course from bench to oven, with air and steam, until it sets.
//!
//! All gas that is in the batter on the bench is told by its density; what soda and powder make from then on comes from
//! the course. At each temperature the gas takes the room that the gas law gives it beside the steam over the batter's
//! own water. A part of what it gains leaves the batter, or is taken back as the cake cools.

use super::heat::stuff::{Batter, ICE, saturation};
use crate::baking::balance::{Kind, Setting};
use crate::baking::chemistry::course::{Stage, State, at};
use crate::baking::estimate::{Estimate, NORMAL_95};
use crate::baking::formula::Formula;
use crate::baking::ingredient::Composition;
use crate::baking::quantity::{Pressure, Quantity, Share, Temperature};

/// The gas constant, J/(mol K).
const GAS: f64 = 8.314_46;
/// How far beyond the middle of its setting a batter still gives way, K: three quarters of its starch are done there.
const GIVES: f64 = 4.0;
/// Where a batter sets that nothing tells of, C.
const SETS: f64 = 84.0;
/// No batter rises on beyond this, C below the boiling point of water.
const BELOW_BOILING: f64 = 3.0;
/// How sure the share held is, as a relative standard deviation (our own estimate: what typical formulas of one kind need
/// differs by so much).
const DEVIATION: f64 = 0.22;

/// How a batter rises.
#[derive(Clone, Debug, PartialEq)]
pub struct Rising {
    /// Temperatures, C, and how many times the batter's volume it has there; the last is where it sets.
    pub points: Vec<[f64; 2]>,
    /// The baked volume over the batter's.
    pub times: Estimate<Share>,
    /// The share of the gas's room that is held.
    pub held: Share,
    /// Gas in the batter on the bench, as a share of its volume.
    pub gas: Share,
    /// Where it sets, as far as it rises.
    pub sets: Temperature,
}

/// The share of the room that its gas gains that a cake of a kind still has once it has cooled: what typical formulas of
/// textbooks need to come to the volume that the trade gives (1.2 to 4.6 mL for each gram of cake; common practice, no
/// source), by this same reckoning.
fn held(kind: Kind) -> f64 {
    match kind {
        Kind::AngelFood => 0.16,
        Kind::Sponge => 0.33,
        Kind::Muffin | Kind::Berry | Kind::Biscuit | Kind::Pancake | Kind::QuickBread => 0.37,
        Kind::Banana | Kind::GlutenFree | Kind::Brownie | Kind::Cookie => 0.37,
        Kind::Genoise => 0.65,
        Kind::Oil | Kind::PlantOil | Kind::Pumpkin | Kind::Pound => 0.8,
        Kind::FruitCake | Kind::LightFruit => 0.8,
        _ => 0.5,
    }
}

/// Water, fat, carbohydrate, protein and the rest of a batter, as parts of its weight; `None` where it weighs nothing.
pub fn parts(formula: &Formula) -> Option<[f64; 5]> {
    let mut sums = [0.0; 5];
    let mut all = 0.0;
    for line in formula.batter() {
        let grams = line.grams.mean.to_grams();
        let of = &line.ingredient.composition;
        let known =
            |share: fn(&Composition) -> Option<Share>| share(of).map_or(0.0, Share::to_fraction);
        let parts = [
            known(|it| it.water) + known(|it| it.alcohol),
            known(|it| it.fat),
            known(|it| it.carbohydrate),
            known(|it| it.protein),
        ];
        // What no source tells of is taken as dry matter.
        let rest = (1.0 - parts.iter().sum::<f64>()).max(0.0);
        for (sum, part) in sums.iter_mut().zip(parts.into_iter().chain([rest])) {
            *sum += grams * part;
            all += grams * part;
        }
    }
    (all > 0.0).then(|| sums.map(|sum| sum / all))
}

/// How a batter rises in air of a pressure, by its course where it has one; `grams` is what it weighs.
pub fn rising(
    batter: &Batter,
    grams: f64,
    course: &[State],
    setting: Option<&Setting>,
    kind: Kind,
    air: Pressure,
    boiling: Temperature,
) -> Rising {
    let air = air.to_pascals();
    let bench = course.iter().rfind(|state| state.stage == Stage::Bench);
    let starts = bench.map_or(22.0, |state| state.celsius);
    let sets = setting.map_or(SETS, |setting| setting.at.mean.to_celsius()) + GIVES;
    let sets = sets.clamp(starts + 20.0, boiling.to_celsius() - BELOW_BOILING);
    let there = |state: &State| state.made - state.lost;
    let on_the_bench = bench.map_or(0.0, there);
    let volume = grams / 1000.0 / batter.density;
    let solid = (grams / 1000.0 / batter.solid_density()).min(volume);
    let moles = (volume - solid) * air / (GAS * (starts + ICE));
    let room = |celsius: f64| {
        let more = at(course, celsius).map_or(0.0, |state| there(&state) - on_the_bench);
        let dry = air - batter.activity * saturation(celsius);
        (solid + (moles + more.max(0.0)) * GAS * (celsius + ICE) / dry) / volume
    };
    let (held, first) = (held(kind), room(starts));
    let mut points: Vec<[f64; 2]> = Vec::new();
    for part in [0.0, 0.3, 0.5, 0.65, 0.8, 0.9, 1.0] {
        let celsius = starts + part * (sets - starts);
        let times = 1.0 + held * (room(celsius) - first);
        let before = points.last().map_or(1.0, |point| point[1]);
        points.push([celsius, times.max(before)]);
    }
    let times = points.last().map_or(1.0, |point| point[1]);
    let apart = (times - 1.0) * DEVIATION * NORMAL_95;
    Rising {
        times: Estimate::between(times - apart, times, times + apart).map(Share::fraction),
        held: Share::fraction(held),
        gas: Share::fraction(1.0 - solid / volume),
        sets: Temperature::celsius(sets),
        points,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::baking::balance::{setting, testing::formula};
    use crate::baking::chemistry::{bowl, course::Handling};
    use crate::baking::oven::heat::stuff::{Batter, saturation};
    #[test]
    fn scratch() {
        for (name, sg, sv, loss, text) in [
            (
                "pound",
                0.85,
                2.0,
                0.08,
                "400 g cake flour\n400 g sugar\n400 g butter\n400 g eggs\n4 g salt",
            ),
            (
                "victoria",
                0.85,
                2.5,
                0.09,
                "400 g self-raising flour\n400 g sugar\n400 g butter\n400 g eggs\n20 g milk",
            ),
            (
                "yellow",
                0.83,
                2.6,
                0.09,
                "400 g cake flour\n400 g sugar\n200 g butter\n220 g eggs\n260 g milk\n18 g baking powder\n6 g salt",
            ),
            (
                "hr white",
                0.85,
                2.7,
                0.10,
                "400 g cake flour\n500 g sugar\n200 g shortening\n268 g egg whites\n400 g skim milk\n25 g baking powder\n8 g salt",
            ),
            (
                "devil",
                0.85,
                2.7,
                0.10,
                "400 g cake flour\n532 g sugar\n232 g shortening\n268 g eggs\n468 g skim milk\n68 g natural cocoa powder\n12 g baking powder\n8 g baking soda\n8 g salt",
            ),
            (
                "genoise",
                0.50,
                3.5,
                0.11,
                "400 g cake flour\n400 g sugar\n132 g butter\n600 g eggs",
            ),
            (
                "sponge mb",
                0.50,
                3.4,
                0.10,
                "400 g cake flour\n500 g sugar\n100 g butter\n300 g eggs\n100 g egg yolks\n200 g skim milk\n12 g baking powder\n6 g salt",
            ),
            (
                "chiffon",
                0.48,
                3.9,
                0.11,
                "400 g cake flour\n520 g sugar\n200 g vegetable oil\n200 g egg yolks\n400 g egg whites\n300 g water\n20 g baking powder\n10 g salt\n2 g cream of tartar",
            ),
            (
                "angel",
                0.30,
                4.6,
                0.11,
                "100 g cake flour\n267 g sugar\n267 g egg whites\n1.5 g salt\n3 g cream of tartar",
            ),
            (
                "muffin",
                0.95,
                2.2,
                0.10,
                "400 g plain flour\n200 g sugar\n160 g butter\n120 g eggs\n280 g milk\n24 g baking powder\n5 g salt",
            ),
            (
                "banana",
                0.95,
                1.9,
                0.09,
                "400 g plain flour\n240 g sugar\n140 g vegetable oil\n160 g eggs\n400 g banana\n16 g baking powder\n3 g baking soda\n5 g salt",
            ),
            (
                "brownie f",
                1.10,
                1.15,
                0.07,
                "100 g plain flour\n270 g sugar\n160 g butter\n140 g eggs\n35 g cocoa\n2 g salt",
            ),
            (
                "brownie c",
                0.95,
                1.7,
                0.08,
                "100 g plain flour\n170 g sugar\n80 g butter\n80 g eggs\n20 g milk\n25 g cocoa\n1.5 g baking powder\n1.5 g salt",
            ),
            (
                "carrot",
                0.98,
                2.1,
                0.09,
                "400 g plain flour\n560 g sugar\n360 g vegetable oil\n400 g eggs\n460 g carrots\n8 g baking powder\n5.6 g baking soda\n6 g salt",
            ),
            (
                "choc oil",
                1.02,
                2.3,
                0.11,
                "400 g plain flour\n660 g sugar\n200 g vegetable oil\n180 g eggs\n760 g water\n140 g natural cocoa powder\n8 g baking powder\n12 g baking soda\n8 g salt",
            ),
            (
                "vegan",
                0.95,
                2.2,
                0.11,
                "400 g plain flour\n428 g sugar\n156 g vegetable oil\n504 g water\n32 g vinegar\n44 g natural cocoa powder\n10 g baking soda\n6 g salt",
            ),
            (
                "gf",
                0.90,
                2.2,
                0.10,
                "280 g rice flour\n120 g potato starch\n400 g sugar\n200 g butter\n320 g eggs\n320 g milk\n22 g baking powder\n6 g salt\n2 g xanthan gum",
            ),
            (
                "fruit",
                1.10,
                1.25,
                0.06,
                "400 g plain flour\n400 g sugar\n400 g butter\n440 g eggs\n40 g water\n2 g baking powder\n1200 g raisins",
            ),
        ] {
            let f = formula(text);
            let p = parts(&f).unwrap();
            let all: f64 = f.batter().map(|l| l.grams.mean.to_grams()).sum();
            let b = Batter {
                parts: p,
                density: sg * 1000.0,
                activity: 0.93,
            };
            let solid = b.solid_density();
            let h = Handling::default();
            let bw = bowl(&f, &h);
            let set = setting(&f, None).map_or(90.0, |s| s.at.mean.to_celsius());
            let course = bw.map(|b| b.course).unwrap_or_default();
            let held = |s: &State| s.made - s.lost;
            let bench = course
                .iter()
                .rfind(|s| s.stage == Stage::Bench)
                .map_or(0.0, held);
            let vb = all / sg / 1e6;
            let vl = all / 1000.0 / solid;
            let n0 = (vb - vl) * 101325.0 / GAS / (295.15);
            let v = |t: f64| {
                let dn = crate::baking::chemistry::course::at(&course, t).map_or(0.0, |s| held(&s))
                    - bench;
                (vl + (n0 + dn.max(0.0)) * GAS * (t + ICE) / (101325.0 - 0.93 * saturation(t))) / vb
            };
            let want = sv * (1.0 - loss) * sg;
            let t = set.min(97.0);
            println!(
                "{name:10} parts {:.2?} solid {:.0} gas0 {:.2} set {:.1} dn/n0 {:.2} x(60) {:.2} x(80) {:.2} x(set) {:.2} want {:.2} hold {:.2}",
                p,
                solid,
                1.0 - vl / vb,
                set,
                (course
                    .iter()
                    .rfind(|s| s.stage == Stage::Oven)
                    .map_or(0.0, held)
                    - bench)
                    / n0,
                v(60.0),
                v(80.0),
                v(t),
                want,
                (want - 1.0) / (v(t) - 1.0)
            );
        }
    }
}
