//! The range of a crumb's pH beside what drawing everything unsure gives.

use super::super::course::CRUMB_PRESSURE;
use super::super::solution::Carbon;
use super::*;
use crate::baking::formula::{How, Place, Weighed};
use crate::baking::ingredient::{Acidity, Ingredient, Leavening, OrganicAcids, by_key};

/// How many draws: a 5 % point among so many is good to about a fifteenth of a standard deviation.
const DRAWS: usize = 1000;

/// What is unsure of a line: weight, own pH, uptake, leavening acids.
const UNSURE: usize = 4;

/// Relative standard deviation of every weight, as of spoons and cups.
const WEIGHING: f64 = 0.06;

/// A line of grams with the spread of a measure.
fn weighed(line: usize, ingredient: &'static Ingredient, grams: f64) -> Weighed {
    Weighed {
        line,
        part: 0,
        ingredient,
        grams: Estimate::normal(grams, WEIGHING * grams),
        how: How {
            sentence: "Given".into(),
            cited: None,
            others: String::new(),
        },
        place: Place::Batter,
        in_pieces: false,
        doubts: Vec::new(),
    }
}

fn of_lines(lines: Vec<Weighed>) -> Formula {
    Formula {
        lines,
        unweighed: Vec::new(),
    }
}

/// An acidity with its own pH and all that it takes up moved by so many standard deviations.
fn moved_acidity(acidity: &Acidity, own_ph: f64, uptake: f64) -> &'static Acidity {
    let (low, own, high) = acidity.ph;
    let times = 1.0 + acidity.deviation * uptake;
    let mut moved = *acidity;
    moved.ph.1 = own + own_ph * (high - low) / 3.29;
    let acids = acidity.acids;
    moved.acids = OrganicAcids {
        citric: acids.citric * times,
        malic: acids.malic * times,
        quinic: acids.quinic * times,
        tartaric: acids.tartaric * times,
        lactic: acids.lactic * times,
        acetic: acids.acetic * times,
        oxalic: acids.oxalic * times,
        succinic: acids.succinic * times,
        gluconic: acids.gluconic * times,
        aconitic: acids.aconitic * times,
        chlorogenic: acids.chlorogenic * times,
        phosphoric: acids.phosphoric * times,
    };
    let buffer = &mut moved.buffer;
    for slope in [
        &mut buffer.below_6,
        &mut buffer.from_6_to_7_5,
        &mut buffer.above_7_5,
    ] {
        *slope *= times;
    }
    moved.bicarbonate *= times;
    Box::leak(Box::new(moved))
}

/// A leavening with its acids moved by so many standard deviations of its neutralising value.
fn moved_leavening(leavening: &Leavening, deviations: f64) -> &'static Leavening {
    let (low, middle, high) = leavening.neutralised;
    let mut moved = leavening.clone();
    if middle > 0.0 {
        let times = 1.0 + deviations * (high - low) / 3.29 / middle;
        moved.neutralised.1 *= times;
        for (_, share) in &mut moved.acids {
            *share *= times;
        }
    }
    Box::leak(Box::new(moved))
}

/// The line as it is once weight, own pH, uptake and leavening acids are moved by so many standard deviations.
fn moved(line: &Weighed, by: &[f64]) -> Weighed {
    let food = line.ingredient;
    let ingredient = Ingredient {
        key: food.key,
        name: food.name,
        group: food.group,
        flour_basis: food.flour_basis,
        composition: food.composition.clone(),
        sugars: food.sugars.clone(),
        cited: food.cited,
        acidity: food
            .acidity
            .map(|acidity| moved_acidity(acidity, by[1], by[2])),
        leavening: food
            .leavening
            .map(|leavening| moved_leavening(leavening, by[3])),
        fillings: Vec::new(),
        pieces: Vec::new(),
        others: Vec::new(),
        allergens: Vec::new(),
        plant_based: None,
        note: "",
    };
    let grams = line.grams.mean.to_grams() * (1.0 + WEIGHING * by[0]);
    weighed(line.line, Box::leak(Box::new(ingredient)), grams)
}

/// The pH of the crumb by the balance of charges, the course left out: a crumb forgets how it was reached.
fn crumb(formula: &Formula) -> f64 {
    let mut batter = Batter::default();
    for line in formula.batter() {
        Contribution::of(line).put_into(&mut batter);
    }
    let mut solution = batter.solution;
    for acid in &batter.acids {
        acid.let_in(&mut solution, 1.0);
    }
    solution.carbon = Carbon::Open {
        pressure_atm: CRUMB_PRESSURE,
    };
    let water = total(formula, Constituent::Water).grams.mean.to_grams() / 1000.0;
    solution
        .in_water(water)
        .expect("a batter with water")
        .solve()
        .ph
}

/// How many standard deviations a share of a normal spread lies below. Abramowitz and Stegun 1964, formula 26.2.23,
/// absolute error below 4.5e-4.
fn deviations(share: f64) -> f64 {
    let tail = share.min(1.0 - share);
    let t = (-2.0 * tail.ln()).sqrt();
    let above = t
        - (2.515_517 + t * (0.802_853 + t * 0.010_328))
            / (1.0 + t * (1.432_788 + t * (0.189_269 + t * 0.001_308)));
    if share < 0.5 { -above } else { above }
}

/// Points that fill a box of so many sides evenly: steps by the powers of the root of x^(n + 1) = x + 1, the golden
/// ratio's kin in n dimensions.
fn points(sides: usize) -> impl Iterator<Item = Vec<f64>> {
    let mut root = 1.5_f64;
    for _ in 0..60 {
        root = (1.0 + root).powf(1.0 / (sides as f64 + 1.0));
    }
    (1..=DRAWS).map(move |draw| {
        let share = |side: usize| (0.5 + draw as f64 * root.powi(-(side as i32) - 1)).fract();
        (0..sides)
            .map(|side| deviations(share(side).clamp(1e-6, 1.0 - 1e-6)))
            .collect()
    })
}

/// The points below and above which one draw in twenty lies.
fn drawn(formula: &Formula) -> (f64, f64) {
    let mut crumbs: Vec<f64> = points(UNSURE * formula.lines.len())
        .map(|by| {
            let lines = formula.lines.iter().zip(by.chunks(UNSURE));
            crumb(&of_lines(lines.map(|(line, by)| moved(line, by)).collect()))
        })
        .collect();
    crumbs.sort_unstable_by(f64::total_cmp);
    (crumbs[DRAWS / 20], crumbs[DRAWS - 1 - DRAWS / 20])
}

/// The range of a bowl's crumb with the choice of model taken out of it.
fn without_model(bowl: &Bowl) -> (f64, f64) {
    let [low, mean, high] = [bowl.ph.low, bowl.ph.mean, bowl.ph.high].map(Ph::value);
    let model = bowl.model_spread();
    let less = |half: f64| (half * half - model * model).max(0.0).sqrt();
    (mean - less(mean - low), mean + less(high - mean))
}

/// Usual formulas, from memory: grams.
const CAKES: [(&str, &str); 6] = [
    ("pound", "plain_flour 100; egg 100; butter 100; sugar 100"),
    (
        "yellow layer, aluminium powder",
        "plain_flour 100; milk 80; egg 55; butter 50; baking_powder_aluminium 4.5",
    ),
    (
        "buttermilk and soda",
        "plain_flour 250; buttermilk 245; egg 100; butter 113; baking_soda 2.3",
    ),
    (
        "devil's food",
        "plain_flour 100; cocoa_natural 20; milk 120; egg 60; baking_soda 2.5",
    ),
    (
        "gingerbread",
        "plain_flour 250; molasses 337; water 237; egg 50; baking_soda 4.6",
    ),
    (
        "angel food",
        "egg_white 100; cake_flour 36; sugar 100; cream_of_tartar 1.1",
    ),
];

/// Six cakes. The ends may differ by 0.1: a point of a thousand draws is good to 0.03 where the deviation is 0.4; a
/// weight and an uptake that are multiplied leave a normal spread by their product; and a slope that changes over the
/// range, as at the corners of the buffers, does the rest.
#[test]
fn the_range_is_what_drawing_gives() {
    for (name, lines) in CAKES {
        let lines = lines.split("; ").enumerate().map(|(index, line)| {
            let (key, grams) = line.split_once(' ').expect("a key and its grams");
            let ingredient = by_key(key).expect("an ingredient");
            weighed(index + 1, ingredient, grams.parse().expect("a number"))
        });
        let formula = of_lines(lines.collect());
        let found = bowl(&formula, &Handling::default()).expect("a bowl");
        let mean = found.ph.mean.value();
        assert!(
            (crumb(&formula) - mean).abs() < 1e-3,
            "{name}: the course ends elsewhere"
        );
        let ((low, high), (drawn_low, drawn_high)) = (without_model(&found), drawn(&formula));
        let ends = format!(
            "{name}: {mean:.2}, {low:.2} to {high:.2}; drawn {drawn_low:.2} to {drawn_high:.2}"
        );
        println!("{ends}");
        let off = (low - drawn_low).abs().max((high - drawn_high).abs());
        assert!(off <= 0.1, "{ends}");
    }
}
