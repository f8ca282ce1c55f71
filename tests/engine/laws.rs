//! Laws of whole bowls, of any ingredients and amounts.

use super::bowls::{bowl_of, known, of_lines, weighed};
use batterwright::baking::balance::{Constituent, total};
use batterwright::baking::chemistry::course::{Handling, Stage};
use batterwright::baking::chemistry::{Bowl, bicarbonate, bowl};
use batterwright::baking::estimate::Estimate;
use batterwright::baking::formula::Formula;
use batterwright::baking::ingredient::all;
use batterwright::baking::quantity::{Ph, Quantity};
use proptest::prelude::*;

/// Nothing, a trace, what a kitchen weighs, a lorry-load: grams.
fn grams() -> impl Strategy<Value = f64> {
    prop_oneof![
        1 => Just(0.0),
        1 => 1e-9..1e-3,
        6 => 0.1..1000.0,
        1 => 1e4..1e7,
    ]
}

/// Any ingredient; half of the time one that a cake is made of.
fn ingredient() -> impl Strategy<Value = &'static str> {
    const USUAL: [&str; 8] = [
        "plain_flour",
        "milk",
        "egg",
        "baking_soda",
        "baking_powder",
        "baking_powder_pyrophosphate",
        "cocoa_natural",
        "lemon_juice",
    ];
    prop_oneof![
        (0..all().len()).prop_map(|place| all()[place].key),
        prop::sample::select(&USUAL),
    ]
}

/// Grams of sugar syrup, which holds no salt as tap water does, that bring as much water as a gram of soda, by their rows.
fn syrup_for_soda() -> f64 {
    let water = |key: &str| {
        let share = known(key).composition.water;
        share.map_or(0.0, |share| share.to_fraction())
    };
    water("baking_soda") / water("simple_syrup")
}

type Lines = Vec<(&'static str, f64)>;

fn lines() -> impl Strategy<Value = Lines> {
    prop::collection::vec((ingredient(), grams()), 1..9)
}

prop_compose! {
    fn handling()(bench in 2.0..40.0, waits in prop_oneof![Just(0.0), 0.0..2000.0], air in 0.6..1.1) -> Handling {
        Handling { bench, waits, air }
    }
}

fn formula(lines: &[(&str, f64)]) -> Formula {
    let lines = lines.iter().enumerate();
    of_lines(
        lines
            .map(|(index, (key, grams))| weighed(index + 1, known(key), *grams))
            .collect(),
    )
}

fn with(lines: &Lines, key: &'static str, grams: f64) -> Formula {
    let mut lines = lines.clone();
    lines.push((key, grams));
    formula(&lines)
}

/// True for what could be a batter: a twentieth of it is water at least.
fn is_batter(formula: &Formula) -> bool {
    let all: f64 = formula
        .lines
        .iter()
        .map(|line| line.grams.mean.to_grams())
        .sum();
    total(formula, Constituent::Water).grams.mean.to_grams() >= 0.05 * all && all > 0.0
}

fn crumb(formula: &Formula, handling: &Handling) -> Option<f64> {
    bowl(formula, handling).map(|bowl| bowl.ph.mean.value())
}

/// Every figure of a bowl.
fn figures(bowl: &Bowl) -> Vec<f64> {
    fn three<Q: Quantity>(estimate: &Estimate<Q>) -> [f64; 3] {
        [
            estimate.low.base(),
            estimate.mean.base(),
            estimate.high.base(),
        ]
    }
    let mut all = Vec::new();
    for part in &bowl.parts {
        all.extend(three(&part.acid));
    }
    all.extend(three(&bowl.acid));
    all.extend(three(&bowl.soda));
    all.extend(three(&bowl.ph));
    all.extend(three(&bowl.batter_ph));
    all.extend(three(&bowl.gas.made));
    all.extend(three(&bowl.gas.if_dry));
    all.extend([bowl.gas.early.to_fraction(), bowl.gas.lost.to_fraction()]);
    for state in &bowl.course {
        all.extend([
            state.minutes,
            state.celsius,
            state.ph,
            state.made,
            state.lost,
            state.dissolved,
            state.kept,
            state.carbonate,
            state.litres,
        ]);
    }
    for ph in [4.0, 7.0, 9.0] {
        all.extend([
            bowl.need(ph).to_milliequivalents(),
            bowl.missing(ph).to_milliequivalents(),
            bowl.chance_below(ph),
        ]);
    }
    all
}

/// Close, as far as figures of that size can be.
fn close(one: f64, other: f64, tolerance: f64) -> bool {
    (one - other).abs() <= tolerance * one.abs().max(other.abs()).max(1.0)
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(150) })]

    /// Every figure is a number, every range is in order, every share is one.
    #[test]
    fn every_figure_is_a_number(lines in lines(), handling in handling()) {
        if let Some(bowl) = bowl(&formula(&lines), &handling) {
            prop_assert!(figures(&bowl).iter().all(|figure| figure.is_finite()), "{bowl:?}");
            let shares = [bowl.gas.early.to_fraction(), bowl.gas.lost.to_fraction(), bowl.chance_below(7.0)];
            prop_assert!(shares.iter().all(|share| (0.0..=1.0).contains(share)), "{:?}", bowl.gas);
            prop_assert!(bowl.ph.low.value() <= bowl.ph.mean.value() && bowl.ph.mean.value() <= bowl.ph.high.value());
            prop_assert!(bowl.gas.made.low.to_grams() >= 0.0);
        }
    }

    /// More acid never raises the pH of a batter's crumb, as long as the crumb is less sour than the acid itself. It
    /// does not hold for a powder that is next to dry: the salts of an acid that counts by its neutralising value are not
    /// among the ions, so that those of the new acid are the first, and one charge counts for less in company. By
    /// 2e-4 pH, where a fiftieth is water.
    #[test]
    fn acid_never_raises_ph(lines in lines(), handling in handling(), more in 0.01..1000.0) {
        let more = with(&lines, "citric_acid", more);
        if !is_batter(&more) { return Ok(()) }
        let (before, after) = (crumb(&formula(&lines), &handling), crumb(&more, &handling));
        if let (Some(before), Some(after)) = (before, after) && before > 2.5 {
            prop_assert!(after <= before + 1e-6, "{before} to {after}");
        }
    }

    /// More soda never lowers that of anything, however little water there is; a trace of it comes with the soda and is
    /// put in before.
    #[test]
    fn soda_never_lowers_ph(lines in lines(), handling in handling(), more in 0.01..1000.0) {
        let before = crumb(&with(&lines, "simple_syrup", more * syrup_for_soda()), &handling);
        let after = crumb(&with(&lines, "baking_soda", more), &handling);
        if let (Some(before), Some(after)) = (before, after) {
            prop_assert!(after >= before - 1e-6, "{before} to {after}");
        }
    }

    /// Twice the bowl has the same pH everywhere and twice the gas.
    #[test]
    fn twice_the_bowl_is_the_same_twice(lines in lines(), handling in handling()) {
        let doubled: Lines = lines.iter().map(|(key, grams)| (*key, 2.0 * grams)).collect();
        let (one, two) = (bowl(&formula(&lines), &handling), bowl(&formula(&doubled), &handling));
        prop_assert_eq!(one.is_some(), two.is_some());
        if let (Some(one), Some(two)) = (one, two) {
            prop_assert!((one.ph.mean.value() - two.ph.mean.value()).abs() < 1e-6);
            prop_assert!((one.ph.low.value() - two.ph.low.value()).abs() < 1e-6);
            prop_assert!((one.batter_ph.mean.value() - two.batter_ph.mean.value()).abs() < 1e-6);
            for (one, two) in one.course.iter().zip(&two.course) {
                prop_assert!((one.ph - two.ph).abs() < 1e-6);
            }
            let (one, two) = (one.gas.made.mean.to_grams(), two.gas.made.mean.to_grams());
            prop_assert!(close(2.0 * one, two, 1e-6), "{one} g, twice {two} g");
        }
    }

    /// In whatever order. The root of a batter's charges is met to some 1e-8, so that sums which differ in their last
    /// digit show there, and in the gas.
    #[test]
    fn order_of_lines_is_of_no_account((lines, shuffled) in lines().prop_flat_map(|lines| (Just(lines.clone()), Just(lines).prop_shuffle())), handling in handling()) {
        let (one, other) = (bowl(&formula(&lines), &handling), bowl(&formula(&shuffled), &handling));
        prop_assert_eq!(one.is_some(), other.is_some());
        if let (Some(one), Some(other)) = (one, other) {
            prop_assert!((one.ph.mean.value() - other.ph.mean.value()).abs() < 1e-9);
            prop_assert!((one.batter_ph.mean.value() - other.batter_ph.mean.value()).abs() < 1e-7, "{} and {}", one.batter_ph.mean.value(), other.batter_ph.mean.value());
            let off = (one.gas.made.mean.to_grams() - other.gas.made.mean.to_grams()).abs();
            let all: f64 = lines.iter().map(|(_, grams)| grams).sum();
            prop_assert!(off <= 1e-8 * all, "{off} g of gas in {all} g");
            prop_assert!(close(one.acid.mean.to_milliequivalents(), other.acid.mean.to_milliequivalents(), 1e-9));
        }
    }

    /// What became gas, what is dissolved and what is kept are no more than the bicarbonate that was put in; gas does
    /// not go back into the batter, and no more is lost than was made.
    #[test]
    fn carbon_closes(lines in lines(), handling in handling()) {
        let Some(bowl) = bowl(&formula(&lines), &handling) else { return Ok(()) };
        let formula = formula(&lines);
        let put_in: f64 = formula
            .lines
            .iter()
            .filter_map(|line| Some(bicarbonate(line.ingredient.leavening?, line.grams.mean) / 1000.0))
            .sum();
        let mut before = 0.0;
        for state in &bowl.course {
            prop_assert!(state.made >= before && state.lost <= state.made * (1.0 + 1e-12), "{state:?}");
            before = state.made;
            if state.stage != Stage::Crumb {
                let there = state.made + state.dissolved + state.kept;
                prop_assert!(there <= put_in + 1e-9 * put_in.max(1.0), "{there} of {put_in}: {state:?}");
            }
        }
    }
}

/// Without water nothing dissolves: no course, no gas, and a pH that is a number still. Water alone is no bowl.
#[test]
fn without_water_there_is_no_course() {
    let dry = bowl_of("citric_acid 10; bakers_ammonia 1");
    assert!(dry.course.is_empty());
    assert_eq!(dry.gas.made.mean.to_grams(), 0.0);
    assert!(dry.ph.mean.value().is_finite());
    assert!(bowl(&formula(&[("water", 100.0)]), &Handling::default()).is_none());
}

/// Soda in water without acid lets go of half of its gas at most when it is boiled, by 2 NaHCO3 to Na2CO3, and ends
/// soapy.
#[test]
fn without_acid_soda_keeps_at_least_half_of_its_gas() {
    let bowl = bowl_of("water 100; baking_soda 5");
    let made = bowl.gas.made.mean.to_grams();
    assert!((0.0..=1.31).contains(&made), "{made} g of 2.62");
    assert!(bowl.ph.mean.value() > 8.0);
}

/// Nearly all of the soda left over outlives the oven in a wet crumb. By hand: hot soda water of pH 8.0 to 8.6 with
/// the second constant of carbonic acid at 10.11 and three times 0.155 of Davies for its charges, at ionic strength 0.5,
/// has 0.023 to 0.09 carbonate beside one bicarbonate, two of soda each: 4 to 15 % is split. Without soda there is
/// none to split.
#[test]
fn soda_outlives_the_oven_in_a_wet_crumb() {
    let bowl = bowl_of("plain_flour 300; milk 200; egg 165; baking_soda 6");
    let split = bowl.split_in_crumb().expect("soda left").to_fraction();
    assert!((0.03..=0.18).contains(&split), "{split}");
    assert!(
        bowl_of("plain_flour 300; milk 200; egg 165; citric_acid 5")
            .split_in_crumb()
            .is_none_or(|split| split.to_fraction() < 0.01)
    );
}

/// A kilogram of soda in a cake leaves nearly all of itself behind: 300 g of water dissolve a tenth of their weight of
/// it, and what the rest would do to the pH nobody tastes. By hand: 1.2 mol/kg of bicarbonate under 0.03 atm of
/// carbon dioxide, 0.00104 mol/kg dissolved, by 6.35 for the first constant: 9.4, less what is carbonate there.
#[test]
fn a_kilogram_of_soda_gives_sense() {
    let cake = "plain_flour 250; milk 240; egg 100";
    let bowl = bowl_of(&format!("{cake}; baking_soda 1000"));
    assert!(figures(&bowl).iter().all(|figure| figure.is_finite()));
    assert!((9.0..9.5).contains(&bowl.ph.mean.value()), "{:?}", bowl.ph);
    let undissolved = bowl.undissolved.to_grams();
    assert!((930.0..980.0).contains(&undissolved), "{undissolved}");
    assert!(bowl.gas.made.mean.to_grams() <= 523.9);
    assert!(bowl.missing(9.0).to_milliequivalents() < -10_000.0);
}

/// An ingredient of which nobody gives the acidity leaves the mean where it is, and widens the range.
#[test]
fn what_is_not_known_widens_the_range() {
    let cake = vec![
        ("plain_flour", 250.0),
        ("milk", 240.0),
        ("baking_powder", 10.0),
    ];
    let unknown = all()
        .iter()
        .map(|food| food.key)
        .find(|key| {
            bowl(&with(&cake, key, 100.0), &Handling::default())
                .is_some_and(|bowl| bowl.parts.iter().any(|part| part.unknown))
        })
        .expect("an ingredient of unknown acidity");
    let ph = |formula: &Formula| bowl(formula, &Handling::default()).expect("a bowl").ph;
    let (before, after) = (ph(&formula(&cake)), ph(&with(&cake, unknown, 100.0)));
    println!("{unknown}: {before:?} to {after:?}");
    // Its water and salt move it by hundredths.
    assert!((before.mean.value() - after.mean.value()).abs() < 0.1);
    let wide = |ph: Estimate<Ph>| ph.high.value() - ph.low.value();
    assert!(wide(after) > wide(before) + 0.05);
}
