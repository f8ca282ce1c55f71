//! What the scale shows, and what an overshoot does: sums that can be done on paper.

use batterwright::baking::ingredient::{Larder, Own};
use batterwright::baking::pan::{AmountEntry, HowMuch};
use batterwright::baking::worksheet::{
    Inputs, ScaleStep, Settings, WeighIn, WeighInSheet, WeighRow, difference, grams_typed,
    weigh_in_sheet, worksheet,
};

const CAKE: &str = "Plain cake

200 g plain flour
100 g sugar
4 g baking powder
150 g milk
100 g eggs
salt to taste
butter for greasing

Whisk the flour, sugar and baking powder in a bowl. Stir in the milk and eggs.
Bake for 30 minutes.";

fn own() -> &'static Own {
    Larder::of(Default::default()).own
}

fn sheet_of(inputs: &Inputs, settings: &Settings, weigh_in: &WeighIn) -> WeighInSheet {
    weigh_in_sheet(inputs, settings, own(), weigh_in)
}

fn sheet(weigh_in: &WeighIn) -> WeighInSheet {
    sheet_of(&Inputs::of_text(CAKE), &Settings::default(), weigh_in)
}

fn rows(sheet: &WeighInSheet) -> Vec<&WeighRow> {
    sheet.bowls.iter().flat_map(|bowl| &bowl.rows).collect()
}

/// Puts in what a row asks for.
fn tick(weigh_in: &mut WeighIn, sheet: &WeighInSheet, at: usize, grams: Option<f64>) {
    let row = rows(sheet)[at];
    weigh_in.put(row.words.clone(), &row.name, grams.unwrap_or(row.target));
}

#[test]
fn the_running_total_is_the_sum_of_what_went_in() {
    let sheet = sheet(&WeighIn::default());
    let totals: Vec<f64> = rows(&sheet).iter().map(|row| row.total).collect();
    assert_eq!(totals, [200.0, 300.0, 304.0, 454.0, 554.0]);
    assert_eq!((sheet.done, sheet.weighings), (0, 5));
    let shown: Vec<Option<&str>> = rows(&sheet)
        .iter()
        .map(|row| row.total_shown.as_deref())
        .collect();
    assert_eq!(shown[..3], [None, Some("300 g"), Some("304 g")]);
    // What is greased or salted to taste stands beside the scale, with its reason.
    let beside: Vec<&str> = sheet.beside.iter().map(|row| row.text.as_str()).collect();
    assert_eq!(beside, ["salt to taste", "butter for greasing"]);
    assert!(sheet.beside.iter().all(|row| !row.why.is_empty()));
}

#[test]
fn a_scale_that_is_zeroed_shows_each_weight_alone() {
    let weigh_in = WeighIn {
        zeroed: true,
        ..WeighIn::default()
    };
    assert!(
        rows(&sheet(&weigh_in))
            .iter()
            .all(|row| row.total_shown.is_none())
    );
}

#[test]
fn what_is_too_little_for_the_scale_says_so_and_is_spooned() {
    let sheet = sheet(&WeighIn::default());
    let powder = rows(&sheet)[2].clone();
    // A teaspoon of baking powder is 4.6 g (USDA SR28): 4 g are seven eighths of one.
    assert_eq!(powder.counted.as_deref(), Some("7/8 tsp"));
    assert!(
        powder.notes[0].starts_with("Too little for a scale that reads to 1 g"),
        "{:?}",
        powder.notes
    );
    let fine = Settings {
        scale: ScaleStep::Tenth,
        ..Settings::default()
    };
    let row = rows(&sheet_of(
        &Inputs::of_text(CAKE),
        &fine,
        &WeighIn::default(),
    ))[2]
        .clone();
    assert_eq!((row.notes.len(), row.counted), (0, None));
}

#[test]
fn weights_are_rounded_to_what_the_scale_reads_to() {
    let text = "Cake\n\n203 g plain flour\n101 g sugar";
    for (step, wanted) in [
        (ScaleStep::One, [203.0, 101.0]),
        (ScaleStep::Two, [204.0, 102.0]),
        (ScaleStep::Five, [205.0, 100.0]),
    ] {
        let settings = Settings {
            scale: step,
            ..Settings::default()
        };
        let found = sheet_of(&Inputs::of_text(text), &settings, &WeighIn::default());
        let targets: Vec<f64> = rows(&found).iter().map(|row| row.target).collect();
        // 203 lies half-way between 202 and 204: it goes up, as on paper.
        assert_eq!(targets, wanted, "{step:?}");
    }
}

#[test]
fn one_and_a_half_times_the_recipe_is_one_and_a_half_times_each_weight() {
    let mut inputs = Inputs::of_text(CAKE);
    inputs.choices.amount = AmountEntry {
        how: HowMuch::Times,
        text: "1.5".into(),
    };
    let sheet = sheet_of(&inputs, &Settings::default(), &WeighIn::default());
    let targets: Vec<f64> = rows(&sheet).iter().map(|row| row.target).collect();
    assert_eq!(targets[..4], [300.0, 150.0, 6.0, 225.0]);
    assert_eq!(sheet.amount.as_deref(), Some("1.5 times the recipe"));
}

#[test]
fn an_overshoot_is_said_and_everything_can_be_weighed_to_suit_it() {
    let mut weigh_in = WeighIn::default();
    let planned = sheet(&weigh_in);
    tick(&mut weigh_in, &planned, 0, None);
    // 125 g of sugar for 100: a quarter over.
    tick(&mut weigh_in, &planned, 1, Some(125.0));
    let over = sheet(&weigh_in);
    let miss = rows(&over)[1].miss.clone().expect("a miss");
    assert!(miss.is_over);
    assert_eq!(miss.words, "25 g over, 25 %");
    assert_eq!(miss.grow.as_deref(), Some("1.25 times"));
    assert_eq!(over.done, 2);
    // The running total follows what is in: 200 + 125, then 4 more.
    assert_eq!(rows(&over)[2].total, 329.0);

    assert!(weigh_in.grow(125.0, rows(&planned)[1].exact));
    let grown = sheet(&weigh_in);
    let targets: Vec<f64> = rows(&grown).iter().map(|row| row.target).collect();
    assert_eq!(targets[..4], [250.0, 125.0, 5.0, 188.0]);
    let flour = rows(&grown)[0].miss.clone().expect("50 g are wanting");
    assert_eq!(
        (flour.is_over, flour.words.as_str()),
        (false, "50 g more to go in")
    );
    assert_eq!(rows(&grown)[1].miss, None);
    assert!(
        grown
            .grown
            .as_deref()
            .is_some_and(|words| words.contains("1.25 times"))
    );
}

#[test]
fn what_is_right_to_the_scales_step_or_to_one_in_a_hundred_is_no_miss() {
    let planned = sheet(&WeighIn::default());
    for (grams, is_miss) in [
        (200.0, false),
        (200.5, false),
        (201.9, false),
        (203.0, true),
        (196.0, true),
    ] {
        let mut weigh_in = WeighIn::default();
        tick(&mut weigh_in, &planned, 0, Some(grams));
        assert_eq!(
            rows(&sheet(&weigh_in))[0].miss.is_some(),
            is_miss,
            "{grams}"
        );
    }
}

#[test]
fn what_lies_in_the_bowls_is_held_against_the_plan() {
    let inputs = Inputs::of_text(CAKE);
    let mut weigh_in = WeighIn::default();
    let planned = sheet(&weigh_in);
    // Twice the baking powder, which is a lot of it.
    tick(&mut weigh_in, &planned, 2, Some(8.0));
    let found = sheet(&weigh_in);
    let weighed = inputs.as_weighed(&found.misses, found.times);
    let settings = Settings::default();
    let (before, after) = (
        worksheet(&inputs, &settings),
        worksheet(&weighed, &settings),
    );
    let apart = difference(&before, &after, "");
    let powder = apart
        .ingredients
        .iter()
        .find(|it| it.name.contains("baking powder"));
    // 8 g on 200 g of flour are 4 %, planned 2 %.
    let percent = powder
        .and_then(|it| it.after.clone())
        .and_then(|after| after.percent_shown);
    assert_eq!(percent.as_deref(), Some("4 %"));
    assert_eq!(apart.ingredients.len(), 1);
    assert!(
        apart
            .figures
            .iter()
            .any(|it| it.label.contains("Gas") && it.differs())
    );
}

#[test]
fn a_miss_in_twice_the_recipe_counts_half_in_the_recipe() {
    let mut inputs = Inputs::of_text(CAKE);
    inputs.choices.amount = AmountEntry {
        how: HowMuch::Times,
        text: "2".into(),
    };
    let mut weigh_in = WeighIn::default();
    let planned = sheet_of(&inputs, &Settings::default(), &weigh_in);
    // 300 g of sugar for 200: in the recipe, 150 g for 100.
    tick(&mut weigh_in, &planned, 1, Some(300.0));
    let found = sheet_of(&inputs, &Settings::default(), &weigh_in);
    let weighed = inputs.as_weighed(&found.misses, found.times);
    assert_eq!(weighed.corrections.len(), 1);
    assert_eq!(weighed.corrections[0].grams, Some(150.0));
}

#[test]
fn a_batch_that_was_grown_is_held_against_the_plan_by_its_proportions() {
    let inputs = Inputs::of_text(CAKE);
    let mut weigh_in = WeighIn::default();
    let planned = sheet(&weigh_in);
    for at in 0..5 {
        // All of it half as much again, by hand.
        let grams = rows(&planned)[at].exact * 1.5;
        tick(&mut weigh_in, &planned, at, Some(grams));
    }
    assert!(weigh_in.grow(150.0, 100.0));
    let grown = sheet(&weigh_in);
    assert_eq!(grown.misses, []);
    assert_eq!(grown.done, 5);
    assert_eq!(inputs.as_weighed(&grown.misses, grown.times), inputs);
}

#[test]
fn a_line_that_is_gone_from_the_recipe_stays_in_the_bowl_and_says_so() {
    let mut weigh_in = WeighIn::default();
    let planned = sheet(&weigh_in);
    tick(&mut weigh_in, &planned, 1, None);
    let text = CAKE.replace("100 g sugar", "90 g sugar");
    let found = sheet_of(&Inputs::of_text(text), &Settings::default(), &weigh_in);
    assert_eq!(
        found.strays,
        ["100 g of sugar are in a bowl, and the recipe has no such line any more."]
    );
    assert_eq!(found.done, 0);
}

#[test]
fn what_is_typed_is_a_weight_or_a_sentence() {
    assert_eq!(grams_typed("430", 300.0), Ok(Some(130.0)));
    assert_eq!(grams_typed("12,5 g", 0.0), Ok(Some(12.5)));
    assert_eq!(grams_typed("  ", 300.0), Ok(None));
    assert!(
        grams_typed("250", 300.0)
            .is_err_and(|why| why.starts_with("The scale showed 300 g before it"))
    );
    assert!(grams_typed("heavy", 0.0).is_err());
    assert!(grams_typed("-3", 0.0).is_err());
    assert!(grams_typed("1e99", 0.0).is_err());
}

#[test]
fn a_record_with_any_figures_in_it_makes_no_nonsense() {
    let planned = sheet(&WeighIn::default());
    for grams in [f64::NAN, f64::INFINITY, -5.0, 1e300, 0.0] {
        for grown in [Some(0.0), Some(-1.0), Some(f64::NAN), Some(1e9), None] {
            let mut weigh_in = WeighIn {
                grown,
                ..WeighIn::default()
            };
            tick(&mut weigh_in, &planned, 0, Some(grams));
            let found = sheet(&weigh_in);
            for row in rows(&found) {
                assert!(
                    row.target.is_finite() && row.total.is_finite(),
                    "{grams} {grown:?}: {row:?}"
                );
            }
        }
    }
    // Nothing of nothing can be grown.
    assert!(!WeighIn::default().grow(5.0, 0.0));
}
