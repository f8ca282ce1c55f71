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
use crate::baking::quantity::{Pressure, Share, Temperature};

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
    pub times: Estimate<f64>,
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
        times: Estimate::between(times - apart, times, times + apart),
        points,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::baking::balance::{setting, testing::formula};
    use crate::baking::chemistry::{bowl, course::Handling};
    use crate::baking::oven::air::boiling_point;

    /// A formula in air of a pressure, with a batter of so many grams in a millilitre.
    fn of(text: &str, kind: Kind, gravity: f64, air: f64) -> Rising {
        let formula = formula(text);
        let grams = formula
            .batter()
            .map(|line| line.grams.mean.to_grams())
            .sum();
        let batter = Batter {
            parts: parts(&formula).expect("a batter"),
            density: gravity * 1000.0,
            activity: 0.93,
        };
        let air = Pressure::atmospheres(air);
        let handling = Handling {
            air: air.to_atmospheres(),
            ..Handling::default()
        };
        let course = bowl(&formula, &handling).map(|bowl| bowl.course);
        let setting = setting(&formula, None);
        let boiling = boiling_point(air).expect("air");
        rising(
            &batter,
            grams,
            &course.unwrap_or_default(),
            setting.as_ref(),
            kind,
            air,
            boiling,
        )
    }

    /// Volume of the baked cake for each gram of batter, by the trade's figures for a gram of cake and its loss in the
    /// oven (textbooks, from memory; common practice): 1.6 to 2.4 and 6 to 11 % for pound cake, and so on. One share held
    /// for each kind has to serve all of its formulas.
    #[test]
    fn baked_volumes_of_the_trade() {
        for (kind, gravity, low, high, text) in [
            (
                Kind::Pound,
                0.85,
                1.6,
                2.4,
                "400 g cake flour\n400 g sugar\n400 g butter\n400 g eggs\n4 g salt",
            ),
            (
                Kind::Victoria,
                0.85,
                2.2,
                2.8,
                "400 g self-raising flour\n400 g sugar\n400 g butter\n400 g eggs\n20 g milk",
            ),
            (
                Kind::YellowLayer,
                0.83,
                2.3,
                3.0,
                "400 g cake flour\n400 g sugar\n200 g butter\n220 g eggs\n260 g milk\n18 g baking powder\n6 g salt",
            ),
            (
                Kind::HighRatioWhite,
                0.85,
                2.4,
                3.1,
                "400 g cake flour\n500 g sugar\n200 g shortening\n268 g egg whites\n400 g skim milk\n25 g baking powder\n8 g salt",
            ),
            (
                Kind::DevilsFood,
                0.85,
                2.4,
                3.1,
                "400 g cake flour\n532 g sugar\n232 g shortening\n268 g eggs\n468 g skim milk\n68 g natural cocoa powder\n12 g baking powder\n8 g baking soda\n8 g salt",
            ),
            (
                Kind::Genoise,
                0.50,
                3.0,
                4.2,
                "400 g cake flour\n400 g sugar\n132 g butter\n600 g eggs",
            ),
            (
                Kind::Sponge,
                0.50,
                3.0,
                4.0,
                "400 g cake flour\n500 g sugar\n100 g butter\n300 g eggs\n100 g egg yolks\n200 g skim milk\n12 g baking powder\n6 g salt",
            ),
            (
                Kind::Chiffon,
                0.48,
                3.4,
                4.5,
                "400 g cake flour\n520 g sugar\n200 g vegetable oil\n200 g egg yolks\n400 g egg whites\n300 g water\n20 g baking powder\n10 g salt\n2 g cream of tartar",
            ),
            (
                Kind::AngelFood,
                0.30,
                4.0,
                5.2,
                "100 g cake flour\n267 g sugar\n267 g egg whites\n1.5 g salt\n3 g cream of tartar",
            ),
            (
                Kind::Muffin,
                0.95,
                1.9,
                2.5,
                "400 g plain flour\n200 g sugar\n160 g butter\n120 g eggs\n280 g milk\n24 g baking powder\n5 g salt",
            ),
            (
                Kind::Banana,
                0.95,
                1.6,
                2.2,
                "400 g plain flour\n240 g sugar\n140 g vegetable oil\n160 g eggs\n400 g banana\n16 g baking powder\n3 g baking soda\n5 g salt",
            ),
            (
                Kind::Brownie,
                1.10,
                1.0,
                1.3,
                "100 g plain flour\n270 g sugar\n160 g butter\n140 g eggs\n35 g cocoa\n2 g salt",
            ),
            (
                Kind::Pumpkin,
                0.98,
                1.8,
                2.4,
                "400 g plain flour\n560 g sugar\n360 g vegetable oil\n400 g eggs\n460 g carrots\n8 g baking powder\n5.6 g baking soda\n6 g salt",
            ),
            (
                Kind::Oil,
                1.02,
                2.0,
                2.6,
                "400 g plain flour\n660 g sugar\n200 g vegetable oil\n180 g eggs\n760 g water\n140 g natural cocoa powder\n8 g baking powder\n12 g baking soda\n8 g salt",
            ),
            (
                Kind::PlantOil,
                0.95,
                1.9,
                2.6,
                "400 g plain flour\n428 g sugar\n156 g vegetable oil\n504 g water\n32 g vinegar\n44 g natural cocoa powder\n10 g baking soda\n6 g salt",
            ),
            (
                Kind::GlutenFree,
                0.90,
                1.9,
                2.6,
                "280 g rice flour\n120 g potato starch\n400 g sugar\n200 g butter\n320 g eggs\n320 g milk\n22 g baking powder\n6 g salt\n2 g xanthan gum",
            ),
            (
                Kind::FruitCake,
                1.10,
                1.1,
                1.4,
                "400 g plain flour\n400 g sugar\n400 g butter\n440 g eggs\n40 g water\n2 g baking powder\n1200 g raisins",
            ),
        ] {
            let rising = of(text, kind, gravity, 1.0);
            let [least, mean, most] = [rising.times.low, rising.times.mean, rising.times.high]
                .map(|times| times / gravity / 0.91);
            println!(
                "{kind:?}: {mean:.2} ({least:.2} to {most:.2}) mL of each gram, trade {low} to {high}; sets at {:.0}",
                rising.points[6][0]
            );
            assert!(
                least <= high && most >= low,
                "{kind:?}: {least:.2} to {most:.2} mL/g, trade {low} to {high}"
            );
            assert!(
                (low - 0.25..=high + 0.25).contains(&mean),
                "{kind:?}: {mean:.2} mL/g, trade {low} to {high}"
            );
        }
    }

    /// Thinner air, more room for the same gas; and never smaller as it warms.
    #[test]
    fn laws() {
        let text = "400 g cake flour\n400 g sugar\n200 g butter\n220 g eggs\n260 g milk\n18 g baking powder";
        let mut last = 0.0;
        for air in [1.0, 0.9, 0.8, 0.7, 0.65] {
            let rising = of(text, Kind::YellowLayer, 0.83, air);
            assert!(
                rising
                    .points
                    .windows(2)
                    .all(|pair| pair[0][0] < pair[1][0] && pair[0][1] <= pair[1][1])
            );
            let times = rising.times.mean;
            assert!(times > last, "{air} atm: {times} after {last}");
            last = times;
        }
    }

    #[test]
    fn parts_sum_to_one() {
        let parts =
            parts(&formula("100 g flour\n100 g sugar\n50 g water\n5 g salt")).expect("parts");
        assert!((parts.iter().sum::<f64>() - 1.0).abs() < 1e-12);
    }
}
