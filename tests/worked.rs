//! The main job against something outside: worked by hand, published, or a fact of the trade.
//!
//! Each check names its source. Bowls that another solver worked out stand in `tests/engine/recipes.tsv`.

use batterwright::baking::balance::{Constituent, percentages, recognise, total};
use batterwright::baking::chemistry::course::Handling;
use batterwright::baking::chemistry::{Bowl, Curve, SODA_MMOL_PER_GRAM, bowl};
use batterwright::baking::estimate::Estimate;
use batterwright::baking::formula::{Formula, How, Place, Weighed};
use batterwright::baking::ingredient::by_key;
use batterwright::baking::pan::{Pan, Shape};
use batterwright::baking::quantity::{Length, Mass, Temperature, TemperatureChange, Volume};

/// A formula of exact weights.
#[track_caller]
fn formula(grams: &[(&str, f64)]) -> Formula {
    let lines = grams
        .iter()
        .enumerate()
        .map(|(index, (key, grams))| Weighed {
            line: index + 1,
            part: 0,
            ingredient: by_key(key).unwrap_or_else(|| panic!("no ingredient {key}")),
            grams: Estimate::exact(Mass::grams(*grams)),
            how: How {
                sentence: "Given".into(),
                cited: None,
                others: String::new(),
            },
            place: Place::Batter,
            in_pieces: false,
            doubts: Vec::new(),
        })
        .collect();
    Formula {
        lines,
        unweighed: Vec::new(),
    }
}

#[track_caller]
fn bowl_of(grams: &[(&str, f64)]) -> Bowl {
    bowl(&formula(grams), &Handling::default()).expect("a bowl with acid, base or a buffer in it")
}

/// Grams of soda that bring a bowl without any to a pH.
#[track_caller]
fn soda_to(ph: f64, grams: &[(&str, f64)]) -> f64 {
    bowl_of(grams).need(ph).to_milliequivalents() / SODA_MMOL_PER_GRAM
}

#[track_caller]
fn near(found: f64, expected: f64, tolerance: f64, what: &str) {
    assert!(
        (found - expected).abs() <= tolerance,
        "{what}: found {found}, expected {expected} +/- {tolerance}"
    );
}

/// Stoichiometry of soda by hand: 84.007 g/mol, so a gram answers 11.904 meq; with acetic acid of 60.052 g/mol
/// a gram of soda takes 0.71485 g of acid, 14.4 g of a 4.97 % vinegar.
#[test]
fn soda_answers_its_equivalents() {
    near(SODA_MMOL_PER_GRAM, 11.904, 0.001, "meq in a gram of soda");
    let vinegar = by_key("white_vinegar")
        .and_then(|food| food.acidity)
        .expect("vinegar has acidity");
    // To pH 8.2 acetic acid has given all it has.
    let demand = Curve::of_acidity(vinegar, Mass::grams(14.4))
        .at(8.2)
        .to_milliequivalents();
    near(
        demand,
        SODA_MMOL_PER_GRAM,
        0.15,
        "vinegar that answers a gram of soda",
    );
}

/// Neutralising value of cream of tartar: 84.007 / 188.177 = 44.64 g soda for 100 g, exact stoichiometry.
#[test]
fn cream_of_tartar_takes_its_neutralising_value() {
    let tartar = by_key("cream_of_tartar")
        .and_then(|food| food.leavening)
        .expect("a leavening acid");
    near(tartar.neutralised.1, 44.64, 0.3, "neutralising value");
}

/// Available carbon dioxide of baking powder: USDA SR28 sodium and phosphorus give 30.8 % soda, 16.2 % gas;
/// Canada B.03.002 asks for at least 10 %.
#[test]
fn baking_powder_has_the_gas_of_its_soda() {
    let gas = bowl_of(&[
        ("baking_powder_aluminium", 100.0),
        ("water", 0.0),
        ("plain_flour", 1.0),
    ])
    .gas
    .made
    .mean
    .to_grams();
    near(gas, 16.2, 0.3, "carbon dioxide in 100 g of powder");
}

/// Common practice, no source: half a teaspoon of soda (2.3 g, USDA SR28) answers a cup of sour milk, taken with
/// the flour and the eggs of its cake. Within a fifth.
#[test]
fn half_a_teaspoon_of_soda_answers_a_cup_of_sour_milk() {
    let needed = soda_to(
        7.2,
        &[
            ("plain_flour", 250.0),
            ("buttermilk", 245.0),
            ("egg", 100.0),
        ],
    );
    near(
        needed,
        2.3,
        0.46,
        "soda for a cup of buttermilk and its cake",
    );
}

/// Common practice, no source: soda has about four times the power of baking powder. By gas, three to four.
#[test]
fn soda_has_about_four_times_the_power_of_powder() {
    let gas_of = |key: &str| {
        bowl_of(&[(key, 1.0), ("plain_flour", 1.0), ("white_vinegar", 200.0)])
            .gas
            .made
            .mean
            .to_grams()
    };
    for powder in [
        "baking_powder",
        "baking_powder_phosphate",
        "baking_powder_tartrate",
    ] {
        let ratio = gas_of("baking_soda") / gas_of(powder);
        assert!((3.0..=4.2).contains(&ratio), "{powder}: {ratio}");
    }
}

/// Common practice, no source: a tablespoon of lemon juice or vinegar and a quarter teaspoon of soda (1.15 g)
/// answer one another, within a quarter.
#[test]
fn a_tablespoon_of_lemon_juice_answers_a_quarter_teaspoon_of_soda() {
    for (key, grams) in [("lemon_juice", 15.25), ("white_vinegar", 14.9)] {
        near(soda_to(7.0, &[(key, grams)]), 1.15, 0.29, key);
    }
}

/// Common practice, no source: lemon juice has a pH near 2, orange juice near 4. The FDA's list of approximate
/// pH values gives 2.0 to 2.6 and 3.3 to 4.2 (from memory).
#[test]
fn lemon_is_near_two_and_orange_near_four() {
    for (key, low, high) in [("lemon_juice", 2.0, 2.6), ("orange_juice", 3.3, 4.2)] {
        let acidity = by_key(key)
            .and_then(|food| food.acidity)
            .expect("a juice has acidity");
        assert!(
            (low..=high).contains(&acidity.ph.1),
            "{key}: {}",
            acidity.ph.1
        );
    }
}

/// Titratable acidity as published for each juice and milk (Belitz, Grosch and Schieberle table 18.3; Penniston and others 2008;
/// Walstra; 7 CFR 51.1178; named in the table's own column): ours to pH 8.2, counted as the acid it is given in.
#[test]
fn titratable_acidity_lies_in_the_published_range() {
    let equivalents = |acid: &str| match acid {
        "citric" => 64.04,
        "malic" => 67.04,
        "lactic" => 90.08,
        "acetic" => 60.05,
        "tartaric" => 75.04,
        "gluconic" => 196.16,
        other => panic!("no equivalent weight for {other}"),
    };
    let mut checked = 0;
    for ingredient in batterwright::baking::ingredient::all() {
        let Some(acidity) = ingredient.acidity else {
            continue;
        };
        let Some(published) = acidity.titratable else {
            continue;
        };
        let demand = Curve::of_acidity(acidity, Mass::grams(100.0))
            .at(8.2)
            .to_milliequivalents();
        let percent = demand * equivalents(published.acid) / 1000.0;
        checked += 1;
        // Read at the table's own precision.
        assert!(
            percent >= published.low * 0.98 && percent <= published.high * 1.02,
            "{}: {percent} %, published {published:?}",
            ingredient.key
        );
    }
    assert!(
        checked >= 20,
        "only {checked} foods have a published titratable acidity"
    );
}

/// A juice far more acid than the puree that it replaces, on baking powder alone, ends far too acid: facts of the trade.
#[test]
fn a_sour_juice_on_powder_alone_ends_acid() {
    let cake = |fruit: &'static str| {
        [
            ("plain_flour", 250.0),
            ("light_brown_sugar", 160.0),
            ("baking_powder", 11.5),
            (fruit, 123.0),
            ("oat_milk", 180.0),
            ("sunflower_oil", 72.0),
        ]
    };
    let (pear, passion) = (
        bowl_of(&cake("pear_puree")).ph.mean.value(),
        bowl_of(&cake("passion_fruit_juice")).ph.mean.value(),
    );
    assert!(pear > 6.0, "pear {pear}");
    assert!(passion < 5.5, "passion fruit {passion}");
}

/// A pound cake by hand: 100 each of flour, sugar, butter, egg. USDA SR28: butter (unsalted) 17.94 % water and 81.11 % fat,
/// egg 76.15 % water and 9.51 % fat, flour 11.92 % water and 0.98 % fat. Water 106.0, fat 91.6.
#[test]
fn totals_of_a_pound_cake() {
    let cake = formula(&[
        ("plain_flour", 100.0),
        ("sugar", 100.0),
        ("butter", 100.0),
        ("egg", 100.0),
    ]);
    near(
        total(&cake, Constituent::Water).grams.mean.to_grams(),
        106.0,
        0.2,
        "water",
    );
    near(
        total(&cake, Constituent::Fat).grams.mean.to_grams(),
        91.6,
        0.3,
        "fat",
    );
    let percentages = percentages(&cake);
    near(
        percentages
            .of(Mass::grams(50.0))
            .map_or(0.0, |share| share.to_percent()),
        50.0,
        1e-9,
        "half the flour",
    );
    assert_eq!(
        recognise(&cake, &percentages, None, None).kind,
        batterwright::baking::balance::Kind::Pound
    );
}

/// Area and volume ratios by hand: 9 over 8 in round 1.265625; 10 in square over 8 in round 1.989437; 13 x 9 over 9 in round 1.839118.
#[test]
fn pan_factors_are_geometry() {
    let pan = |shape, length: f64, width: f64| {
        let [length, width, depth] = [length, width, 2.0].map(Length::inches);
        Pan::of(shape, length, width, depth)
    };
    let factor = |from: Pan, to: Pan| to.brim() / from.brim();
    near(
        factor(pan(Shape::Round, 8.0, 8.0), pan(Shape::Round, 9.0, 9.0)),
        1.265_625,
        1e-6,
        "8 to 9 round",
    );
    near(
        factor(pan(Shape::Round, 8.0, 8.0), pan(Shape::Square, 10.0, 10.0)),
        1.989_437,
        1e-6,
        "8 round to 10 square",
    );
    near(
        factor(
            pan(Shape::Round, 9.0, 9.0),
            pan(Shape::Rectangle, 13.0, 9.0),
        ),
        1.839_118,
        1e-5,
        "9 round to 13 x 9",
    );
}

/// NIST SP 811 and Handbook 44, exact: inch, pound, US cup; 350 F is 176.667 C, a difference of 25 F is 13.889 C.
#[test]
fn units_are_those_of_the_standards() {
    near(Length::inches(1.0).to_millimetres(), 25.4, 0.0, "inch");
    near(Mass::POUND.to_grams(), 453.592_37, 0.0, "pound");
    near(Mass::OUNCE.to_grams() * 16.0, 453.592_37, 1e-9, "16 ounces");
    near(
        Volume::US_CUP.to_millilitres() * 16.0,
        3_785.411_784,
        1e-9,
        "US gallon",
    );
    near(
        Temperature::fahrenheit(350.0).to_celsius(),
        176.667,
        0.001,
        "350 F",
    );
    near(
        TemperatureChange::fahrenheit(25.0).to_celsius(),
        13.889,
        0.001,
        "a difference of 25 F",
    );
    near(
        Temperature::gas_mark(6.0).to_fahrenheit(),
        400.0,
        1e-9,
        "gas mark 6",
    );
}
