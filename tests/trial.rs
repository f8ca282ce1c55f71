//! Bakes written down. Expected figures are worked by hand from the lines of each recipe; recipes are invented.

use batterwright::baking::ingredient::{Larder, Own, Region};
use batterwright::baking::oven::forecast::forecast;
use batterwright::baking::oven::slices::Slices;
use batterwright::baking::quantity::LengthUnit;
use batterwright::baking::saved;
use batterwright::baking::trial::{
    OutcomeField, OvenOff, Scale, Taught, TreeNode, Trial, VersionNode, changes, measured,
    oven_ask, oven_off, oven_said, tree, trial_sheet, version_changes,
};
use batterwright::baking::worksheet::{Inputs, PutIn, Settings, WeighIn, worksheet};

const CAKE: &str = "Quay loaf\n\n200 g plain flour\n100 g caster sugar\n4 g baking soda\n180 g buttermilk\n60 g sunflower oil\n\nStir it all. Bake in a 20 cm round tin at 180 C for 35 minutes.";

const DOUBLED: &str = "Quay loaf\n\n400 g plain flour\n200 g caster sugar\n8 g baking soda\n360 g buttermilk\n120 g sunflower oil\n\nStir it all. Bake in a 20 cm round tin at 180 C for 35 minutes.";

fn own() -> &'static Own {
    Larder::of(Region::Uk).own
}

fn settings() -> Settings {
    Settings {
        region: Region::Uk,
        lengths: LengthUnit::Centimetres,
        ..Settings::default()
    }
}

fn trial_of(text: &str) -> Trial {
    let inputs = Inputs::of_text(text);
    Trial::of(&inputs, &settings(), own(), &WeighIn::default(), 1000)
}

fn grams(trial: &Trial, ingredient: &str) -> Option<f64> {
    let found = trial.weights.iter().find(|it| it.ingredient == ingredient);
    found.and_then(|it| it.grams)
}

/// A weigh-in of CAKE with these weights, by the numbers of its lines.
fn weighed(weights: &[(usize, f64)]) -> Trial {
    let inputs = Inputs::of_text(CAKE);
    let put_in = weights.iter().map(|&(line, grams)| PutIn {
        line: inputs.line_words((line, 0)).expect("a line of the cake"),
        name: "it".into(),
        grams,
    });
    let weigh_in = WeighIn {
        began: 500,
        put_in: put_in.collect(),
        ..WeighIn::default()
    };
    Trial::of(&inputs, &settings(), own(), &weigh_in, 1000)
}

#[test]
fn a_trial_is_the_formula_as_it_was_weighed() {
    let trial = weighed(&[(3, 230.0), (4, 100.0)]);
    // The sugar was as planned, the flour 30 g over; what was not weighed is as planned.
    assert_eq!(trial.weighed.len(), 1);
    assert_eq!(trial.baked, 500);
    assert_eq!(grams(&trial, "plain_flour"), Some(230.0));
    assert_eq!(grams(&trial, "sunflower_oil"), Some(60.0));
    let sheet = worksheet(&trial.as_baked(), &settings());
    assert_eq!(sheet.lines[2].grams.map(|it| it.mean), Some(230.0));
    // The plan is untouched, and what was not said is not in the record.
    assert_eq!(trial.plan, Inputs::of_text(CAKE));
    assert!(trial.said.is_empty() && trial.scores.is_empty());
}

#[test]
fn what_is_only_planned_to_be_swapped_was_not_baked() {
    let mut inputs = Inputs::of_text(CAKE);
    inputs.swap((7, 0), "butter_unsalted", None);
    assert!(inputs.choices.swaps.is_any());
    let trial = Trial::of(&inputs, &settings(), own(), &WeighIn::default(), 0);
    assert_eq!(trial.plan, Inputs::of_text(CAKE));
}

#[test]
fn what_is_reckoned_with_reckons_the_same() {
    let mut trial = weighed(&[(3, 230.0)]);
    trial.say(OutcomeField::CrumbPh, "7.1".into());
    trial.notes = "moist".into();
    trial.seen = vec!["low".into()];
    let sheet = |trial: &Trial| trial_sheet("1", trial, &trial.plan, &settings(), own());
    assert_eq!(sheet(&trial.reckoned()), sheet(&trial));
}

#[test]
fn a_batch_that_is_grown_is_the_same_formula() {
    let inputs = Inputs::of_text(CAKE);
    let weigh_in = WeighIn {
        grown: Some(1.5),
        put_in: vec![PutIn {
            line: inputs.line_words((3, 0)).expect("the flour"),
            name: "Flour".into(),
            grams: 330.0,
        }],
        ..WeighIn::default()
    };
    let trial = Trial::of(&inputs, &settings(), own(), &weigh_in, 0);
    assert_eq!(trial.times(), 1.5);
    // 330 g of a batch of one and a half are 220 g of the recipe.
    assert_eq!(grams(&trial, "plain_flour"), Some(220.0));
}

#[test]
fn what_was_done_otherwise_is_how_it_was_baked() {
    let mut trial = trial_of(CAKE);
    trial.say(OutcomeField::Oven, "160 C".into());
    trial.say(OutcomeField::Waited, "25".into());
    trial.say(OutcomeField::Pan, "18 cm round tin, 7 cm deep".into());
    let baked = trial.as_baked();
    assert_eq!(baked.choices.oven.setting, "160 C");
    assert_eq!(baked.choices.batter.waits, "25");
    let pan = baked.choices.shelf[0].read().expect("a pan");
    assert_eq!(
        (pan.length.to_centimetres(), pan.depth.to_centimetres()),
        (18.0, 7.0)
    );
    trial.say(OutcomeField::Oven, "  ".into());
    assert_eq!(trial.as_baked().choices.oven.setting, "");
}

/// A field, what is typed, the figure in its unit (minutes, C, mm, g, pH), or how the sentence at the field begins.
const TYPED: &[(OutcomeField, &str, Result<f64, &str>)] = &[
    (OutcomeField::Waited, "20", Ok(20.0)),
    (OutcomeField::Waited, "20 min", Ok(20.0)),
    (OutcomeField::Waited, "soon", Err("\"soon\" is no wait")),
    (OutcomeField::Waited, "-5", Err("\"-5\" is no wait")),
    (OutcomeField::Minutes, "34", Ok(34.0)),
    (OutcomeField::Minutes, "34 to 36", Ok(35.0)),
    (OutcomeField::Minutes, "1 h 10 min", Ok(70.0)),
    (
        OutcomeField::Minutes,
        "x",
        Err("\"x\" is no time of baking"),
    ),
    (OutcomeField::Core, "97", Ok(97.0)),
    (OutcomeField::Core, "97 °C", Ok(97.0)),
    (OutcomeField::Core, "212 F", Ok(100.0)),
    (OutcomeField::Core, "212", Ok(100.0)),
    (OutcomeField::Core, "400 C", Err("\"400 C\" is no core")),
    (OutcomeField::Core, "0", Err("\"0\" is no core")),
    (OutcomeField::OvenRead, "168", Ok(168.0)),
    (OutcomeField::OvenRead, "168 °C", Ok(168.0)),
    (OutcomeField::OvenRead, "329 F", Ok(165.0)),
    (
        OutcomeField::OvenRead,
        "900 C",
        Err("\"900 C\" is no heat of an oven"),
    ),
    (OutcomeField::HeightCentre, "6,2 cm", Ok(62.0)),
    (OutcomeField::HeightCentre, "62 mm", Ok(62.0)),
    (OutcomeField::HeightCentre, "6.2", Ok(62.0)),
    (OutcomeField::HeightCentre, "2 1/2 in", Ok(63.5)),
    (
        OutcomeField::HeightCentre,
        "50 cm",
        Err("50 cm is 10 times as high as its pan is deep (5 cm)"),
    ),
    (
        OutcomeField::HeightCentre,
        "high",
        Err("\"high\" is no height"),
    ),
    (OutcomeField::HeightEdge, "0", Err("\"0\" is no height")),
    (OutcomeField::MassIn, "540", Ok(540.0)),
    (OutcomeField::MassIn, "540.5 g", Ok(540.5)),
    (OutcomeField::MassIn, "0", Err("A cake that weighs nothing")),
    (OutcomeField::CrumbPh, "6,8", Ok(6.8)),
    (
        OutcomeField::CrumbPh,
        "15",
        Err("\"15\" is no pH of a crumb"),
    ),
    (
        OutcomeField::CrumbPh,
        "NaN",
        Err("\"NaN\" is no pH of a crumb"),
    ),
    (OutcomeField::Pan, "a bag", Err("\"a bag\" names no pan")),
    (OutcomeField::Oven, "900 C", Err("")),
];

#[test]
fn what_is_typed_is_a_figure_or_a_sentence_and_stays() {
    let five = batterwright::baking::quantity::Length::centimetres(5.0);
    for (field, typed, wanted) in TYPED {
        let mut trial = Trial::default();
        trial.say(*field, (*typed).to_owned());
        let (found, troubles) = measured(&trial, &settings(), Some(five));
        let figure = match field {
            OutcomeField::Waited => found.waited,
            OutcomeField::Minutes => found.minutes,
            OutcomeField::Core => found.core.map(|it| it.to_celsius()),
            OutcomeField::OvenRead => found.oven_read.map(|it| it.to_celsius()),
            OutcomeField::HeightCentre => found.centre.map(|it| it.to_millimetres()),
            OutcomeField::HeightEdge => found.edge.map(|it| it.to_millimetres()),
            OutcomeField::MassIn => found.mass_in.map(|it| it.to_grams()),
            OutcomeField::MassOut => found.mass_out.map(|it| it.to_grams()),
            OutcomeField::CrumbPh => found.crumb_ph.map(|it| it.value()),
            OutcomeField::Pan => found.pan.map(|_| 0.0),
            OutcomeField::Oven => found.oven.map(|_| 0.0),
        };
        match wanted {
            Ok(wanted) => {
                assert!(troubles.is_empty(), "{typed}: {troubles:?}");
                assert!(
                    figure.is_some_and(|it| (it - wanted).abs() < 1e-9),
                    "{typed}: {figure:?}"
                );
            }
            Err(beginning) => {
                assert_eq!(figure, None, "{typed}");
                assert_eq!(troubles.len(), 1, "{typed}");
                assert_eq!(troubles[0].field, *field);
                let sentence = &troubles[0].sentence;
                assert!(sentence.starts_with(beginning), "{typed}: {sentence}");
            }
        }
        assert_eq!(trial.typed(*field), *typed);
    }
}

#[test]
fn a_cake_loses_weight_and_not_most_of_it() {
    let of = |before: &str, after: &str| {
        let mut trial = Trial::default();
        trial.say(OutcomeField::MassIn, before.into());
        trial.say(OutcomeField::MassOut, after.into());
        measured(&trial, &settings(), None)
    };
    let (found, troubles) = of("500", "445");
    assert!(troubles.is_empty() && found.mass_out.is_some());
    for (before, after) in [("500", "510"), ("500", "90")] {
        let (found, troubles) = of(before, after);
        assert_eq!(troubles[0].field, OutcomeField::MassOut, "{after}");
        assert!(found.mass_out.is_none() && found.mass_in.is_some());
    }
    let mut trial = trial_of(CAKE);
    trial.say(OutcomeField::MassIn, "500".into());
    trial.say(OutcomeField::MassOut, "445".into());
    trial.say(OutcomeField::HeightCentre, "6 cm".into());
    trial.say(OutcomeField::HeightEdge, "5 cm".into());
    let sheet = trial_sheet("1", &trial, &trial.plan, &settings(), own());
    let value = |label: &str| {
        let found = sheet.figures.iter().find(|it| it.label == label);
        found.map(|it| it.value.as_str())
    };
    // 55 of 500 g are 11 %; 6 less 5 cm.
    assert_eq!(value("Lost in the oven"), Some("11 % of its weight"));
    assert_eq!(value("Contour"), Some("domed: 1 cm above the edge"));
}

#[test]
fn what_changed_is_told_in_grams_and_per_cent() {
    let before = trial_of(CAKE);
    let line = |after: &str| {
        let found = changes(&before, &trial_of(after));
        (found.line.clone(), found.things)
    };
    assert_eq!(line(CAKE), (String::new(), 0));
    assert_eq!(
        line(&CAKE.replace("100 g caster", "90 g caster")),
        ("caster sugar 100 to 90 g (−10 %)".into(), 1)
    );
    assert_eq!(
        line(&CAKE.replace("4 g baking", "4.5 g baking")).1,
        1,
        "half a gram of soda is a change"
    );
    let (mixed, things) = line(
        &CAKE
            .replace("100 g caster", "120 g caster")
            .replace("60 g sunflower", "75 g sunflower"),
    );
    assert_eq!(things, 2);
    assert!(
        mixed.contains("100 to 120 g (+20 %)") && mixed.contains("60 to 75 g (+25 %)"),
        "{mixed}"
    );
    let found = changes(
        &before,
        &trial_of(&CAKE.replace("60 g sunflower oil\n", "")),
    );
    assert!(found.line.contains("60 g left out"), "{}", found.line);
    // The method's words are one thing.
    let found = changes(
        &before,
        &trial_of(&CAKE.replace("Stir it all.", "Beat it long.")),
    );
    assert_eq!((found.things, found.amounts.len()), (1, 0));
}

#[test]
fn several_things_at_once_prove_nothing_of_any_of_them() {
    let before = trial_of(CAKE);
    let mut after = trial_of(&CAKE.replace("100 g caster", "50 g caster"));
    after.say(OutcomeField::Oven, "160 C".into());
    let found = changes(&before, &after);
    assert!(found.is_mixed());
    assert_eq!(
        found.line,
        "caster sugar 100 to 50 g (−50 %); oven: as the recipe says to 160 C"
    );
    assert!(
        found.tells.starts_with("2 things changed at once"),
        "{}",
        found.tells
    );
    assert!(
        found.tells.contains("caster sugar alone changed"),
        "{}",
        found.tells
    );
    let repeat = changes(&before, &before.clone());
    assert!(repeat.tells.starts_with("Nothing changed: a repeat"));
}

#[test]
fn one_for_another_and_all_alike_are_one_thing() {
    let before = trial_of(CAKE);
    let swapped = changes(
        &before,
        &trial_of(&CAKE.replace("60 g sunflower oil", "70 g butter")),
    );
    assert_eq!(swapped.things, 1);
    assert!(
        swapped
            .tells
            .contains("butter in the place of sunflower oil"),
        "{}",
        swapped.tells
    );
    let grown = changes(&before, &trial_of(DOUBLED));
    assert_eq!(
        (grown.things, grown.line.as_str()),
        (1, "everything 2 times")
    );
}

#[test]
fn an_allergen_that_comes_in_is_told() {
    let text = CAKE.replace("60 g sunflower oil", "60 g almond butter");
    let found = changes(&trial_of(CAKE), &trial_of(&text));
    assert_eq!(found.allergens.len(), 1, "{:?}", found.allergens);
    assert!(found.allergens[0].to_lowercase().contains("nut"));
    let back = changes(&trial_of(&text), &trial_of(CAKE));
    assert!(back.allergens.is_empty());
    let version = version_changes(
        &Inputs::of_text(CAKE),
        &Inputs::of_text(text),
        &settings(),
        own(),
    );
    assert_eq!(version, found);
}

#[test]
fn a_tree_holds_every_version_and_every_bake_once() {
    let version = |id: &str, of: Option<&str>| VersionNode {
        id: id.into(),
        of: of.map(str::to_owned),
        ..VersionNode::default()
    };
    let baked = |when: u64, against: Option<&str>| Trial {
        baked: when,
        against: against.map(str::to_owned),
        ..trial_of(CAKE)
    };
    let versions = [
        version("b", Some("a")),
        version("a", None),
        version("c", Some("b")),
        version("d", Some("a")),
        // A circle, and a version of what is gone.
        version("x", Some("y")),
        version("y", Some("x")),
        version("z", Some("gone")),
    ];
    let (late, early, other) = (baked(9, Some("2")), baked(1, None), baked(5, Some("none")));
    let trials = [("1", "b", &late), ("2", "b", &early), ("3", "z", &other)];
    let rows = tree(&versions, &trials);
    let told: Vec<String> = rows
        .iter()
        .map(|row| match &row.node {
            TreeNode::Version(at) => format!("{} {}", row.depth, versions[*at].id),
            TreeNode::Trial(at, against) => {
                let against = against.map(|other| trials[other].0);
                format!("{} {} {}", row.depth, trials[*at].0, against.unwrap_or("-"))
            }
        })
        .collect();
    assert_eq!(
        told,
        [
            "0 a", "1 b", "2 2 -", "2 1 2", "2 c", "1 d", "0 z", "1 3 -", "0 x", "1 y"
        ]
    );
}

#[test]
fn what_a_bake_teaches_can_be_taken_back() {
    let mut trial = trial_of(CAKE);
    trial.say(OutcomeField::CrumbPh, "7.6".into());
    trial.say(OutcomeField::Minutes, "38".into());
    let before = Inputs::of_text(CAKE);
    let sheet = trial_sheet("77", &trial, &before, &settings(), own());
    assert_eq!(sheet.lessons.len(), 2);
    let mut now = before.clone();
    for lesson in &sheet.lessons {
        assert!(!lesson.is_taken);
        now.learn(lesson.taught.as_ref().expect("a lesson"));
    }
    assert_eq!(now.choices.crumbs.len(), 1);
    assert_eq!(now.choices.oven.bakes.len(), 1);
    let again = trial_sheet("77", &trial, &now, &settings(), own());
    assert!(again.lessons.iter().all(|lesson| lesson.is_taken));
    // Another reading of the same trial takes the place of the first.
    trial.say(OutcomeField::CrumbPh, "7.0".into());
    let moved = trial_sheet("77", &trial, &now, &settings(), own());
    assert!(!moved.lessons[0].is_taken);
    now.learn(moved.lessons[0].taught.as_ref().expect("a lesson"));
    assert_eq!(now.choices.crumbs.len(), 1);
    for lesson in &sheet.lessons {
        now.unlearn(lesson.taught.as_ref().expect("a lesson"));
    }
    assert_eq!(now, before);
}

#[test]
fn a_bake_that_was_not_done_teaches_no_time() {
    let mut trial = trial_of(CAKE);
    trial.say(OutcomeField::Minutes, "20".into());
    trial.say(OutcomeField::Core, "68 C".into());
    let sheet = trial_sheet("1", &trial, &trial.plan, &settings(), own());
    assert_eq!(sheet.lessons.len(), 1);
    assert_eq!(sheet.lessons[0].taught, None);
    // Below the 71.1 C of the US Department of Agriculture it is not to be eaten.
    assert!(sheet.cautions[0].contains("71.1"), "{:?}", sheet.cautions);
}

/// The pH of the crumb as it is reckoned.
fn crumb(inputs: &Inputs) -> f64 {
    let rule = worksheet(inputs, &settings()).leavening.rule;
    rule.expect("acid and soda").crumb.mean
}

fn taught(text: &str, ph: &str) -> Taught {
    let mut trial = trial_of(text);
    trial.say(OutcomeField::CrumbPh, ph.into());
    let sheet = trial_sheet("5", &trial, &trial.plan, &settings(), own());
    sheet.lessons[0].taught.clone().expect("a lesson")
}

#[test]
fn a_measured_crumb_moves_this_recipe_and_what_is_made_from_it() {
    let plain = Inputs::of_text(CAKE);
    for ph in ["6.6", "7.6", "8.4"] {
        let mut told = plain.clone();
        told.learn(&taught(CAKE, ph));
        // Told of its own crumb it is what it is once that is typed.
        let mut typed = plain.clone();
        typed.choices.batter.crumb_ph = ph.into();
        assert!((crumb(&told) - crumb(&typed)).abs() < 0.002, "{ph}");
        // Twice the recipe has the same crumb.
        let mut twice = Inputs::of_text(DOUBLED);
        twice.learn(&taught(CAKE, ph));
        assert!((crumb(&told) - crumb(&twice)).abs() < 0.002, "{ph}");
        // A version with less soda is sourer, and goes by the same crumb.
        let less = CAKE.replace("4 g baking", "3 g baking");
        let mut version = Inputs::of_text(&less);
        let reckoned = crumb(&version);
        version.learn(&taught(CAKE, ph));
        assert!(crumb(&version) < crumb(&told), "{ph}");
        let is_up = crumb(&told) > crumb(&plain);
        assert_eq!(crumb(&version) > reckoned, is_up, "{ph}");
    }
}

#[test]
fn two_crumbs_are_surer_than_one() {
    let width = |inputs: &Inputs| {
        let crumb = worksheet(inputs, &settings())
            .leavening
            .rule
            .expect("a rule")
            .crumb;
        crumb.high - crumb.low
    };
    let mut inputs = Inputs::of_text(CAKE);
    let none = width(&inputs);
    inputs.learn(&taught(CAKE, "7.4"));
    let one = width(&inputs);
    if let Taught::Crumb(mut told) = taught(CAKE, "7.5") {
        told.trial = "6".into();
        inputs.learn(&Taught::Crumb(told));
    }
    assert!(width(&inputs) < one && one < none);
}

#[test]
fn a_record_is_what_was_written() {
    let mut trial = weighed(&[(3, 212.7), (5, 4.2)]);
    trial.name = "less \u{1F370} sugar\nand a line".into();
    trial.against = Some("12".into());
    trial.notes = "x".repeat(3000);
    trial.seen = vec!["low".into()];
    trial.score(Scale::Grain, Some(2));
    for field in OutcomeField::DONE.into_iter().chain(OutcomeField::CAME) {
        trial.say(field, "anything at all".into());
    }
    trial.plan.learn(&taught(CAKE, "7.3"));
    let text = saved::to_text(&trial).expect("a record");
    assert_eq!(saved::from_text::<Trial>(&text), Ok(trial));
    let bare = saved::to_text(&Trial::default()).expect("a record");
    assert_eq!(saved::from_text::<Trial>(&bare), Ok(Trial::default()));
}

#[test]
fn points_beyond_the_scale_are_none() {
    let mut trial = Trial::default();
    trial.score(Scale::Volume, Some(9));
    assert_eq!(trial.points(Scale::Volume), None);
    trial.score(Scale::Volume, Some(4));
    assert_eq!(trial.points(Scale::Volume), Some(4));
    trial.score(Scale::Volume, None);
    assert!(trial.scores.is_empty());
    trial.times = Some(0.0);
    assert_eq!(trial.times(), 1.0);
    trial.times = Some(f64::NAN);
    assert_eq!(trial.times(), 1.0);
}

/// An oven that is 20 K hotter than its dial: what its bakes took, given back as timed bakes, is told as that. The slope is
/// taken over 15 K, so that 20 may come out a few off.
#[test]
fn an_oven_that_is_hotter_is_told_by_its_bakes() {
    for text in [CAKE, &CAKE.replace("20 cm round tin", "23 cm square tin")] {
        let mut hotter = settings();
        hotter.oven_off = "+20 C".into();
        let mut baked = Inputs::of_text(text);
        baked.choices.oven.setting = "180 C".into();
        let sheet = worksheet(&baked, &hotter);
        let ask = sheet.oven.ask.expect("a bake that can be reckoned");
        let answer = Slices::of(forecast(ask)).at_once();
        let minutes = answer.bakes[0].as_ref().expect("it is done").minutes[1];
        let mut trial = trial_of(text);
        trial.say(OutcomeField::Minutes, format!("{minutes:.1}"));
        trial.say(OutcomeField::Oven, "180 C".into());
        let (ask, minutes) = oven_ask(&trial, &settings(), own()).expect("a timed bake");
        let off = oven_off(&Slices::of(forecast(ask)).at_once(), minutes).expect("both are done");
        assert!((off.kelvin - 20.0).abs() < 4.0, "{off:?}");
        assert!(off.deviation > 5.0, "one recipe alone is not sure: {off:?}");
    }
}

#[test]
fn three_recipes_have_to_agree_before_an_oven_is_blamed() {
    let said = |settings: &Settings, told: &[(&str, f64)]| {
        let told: Vec<(String, OvenOff)> = told
            .iter()
            .map(|&(recipe, kelvin)| {
                let off = OvenOff {
                    kelvin,
                    deviation: 10.0,
                };
                (recipe.to_owned(), off)
            })
            .collect();
        oven_said(&told, settings)
    };
    let plain = settings();
    assert_eq!(said(&plain, &[]).typed, None);
    // Ten bakes of one recipe are one recipe.
    assert_eq!(said(&plain, &[("a", 20.0); 10]).typed, None);
    // 1.645 x 10 / sqrt 3 is 9.5 either side.
    let sure = said(&plain, &[("a", 20.0), ("b", 18.0), ("c", 22.0)]);
    assert_eq!(sure.typed.as_deref(), Some("+20 C"));
    let close = said(&plain, &[("a", 9.0), ("b", 9.0), ("c", 9.0)]);
    assert!(
        close.typed.is_none() && close.words.contains("too close to call"),
        "{close:?}"
    );
    let mut off = settings();
    off.oven_off = "+10 C".into();
    // What is reckoned with already is 10 hotter: 10 less 15.
    let moved = said(&off, &[("a", -15.0), ("b", -14.0), ("c", -16.0)]);
    assert_eq!(moved.typed.as_deref(), Some("−5 C"));
    off.oven_off = "−5 C".into();
    assert!(off.oven_off().is_ok_and(|off| off.is_some()));
}
