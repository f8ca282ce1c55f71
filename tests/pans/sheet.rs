//! Pans on the worksheet: what is said of them, and what is found wrong.

use super::kit::{amount, inches, round};
use batterwright::baking::pan::{HowMuch, PanEntry, Shape};
use batterwright::baking::worksheet::{BatterCup, Choices, Inputs, Settings, Worksheet, worksheet};

const CAKE: &str = "Cake\n300 g flour\n3 large eggs\n300 g sugar\n150 g butter\n200 g milk\n2 teaspoons baking powder\n\nMethod\nBake in an 8 x 8 x 2 inch square pan.";

fn sheet(choices: Choices) -> Worksheet {
    let inputs = Inputs {
        choices,
        ..Inputs::of_text(CAKE)
    };
    worksheet(&inputs, &Settings::default())
}

#[test]
fn each_pan_says_what_to_weigh_into_it() {
    let cups = inches(Shape::Cups, 6, 2.75, 2.75, 1.5);
    let pans = sheet(Choices {
        shelf: vec![round(2, 6.0, 2.0), cups],
        amount: amount(HowMuch::Recipe, ""),
        ..Choices::default()
    })
    .pans;
    assert_eq!(pans.shelf.len(), 2);
    for view in &pans.shelf {
        assert!(
            view.words.contains(" into each: it stands "),
            "{}",
            view.words
        );
        assert!(view.grams_shown.is_some());
    }
    assert!(
        pans.shared_out[0].contains("equally deep"),
        "{:?}",
        pans.shared_out
    );
    assert_eq!(pans.factor_shown.as_deref(), Some("1 times the recipe"));
    assert!(pans.words.starts_with("So you asked."), "{}", pans.words);
}

/// Nothing on the shelf and half the recipe: the recipe's own pan is shown once more, half as deep.
#[test]
fn another_amount_in_the_recipes_own_pan() {
    let pans = sheet(Choices {
        amount: amount(HowMuch::Half, ""),
        ..Choices::default()
    })
    .pans;
    let again = pans.own_again.expect("the own pan again");
    let depth = |section: Option<batterwright::baking::pan::Section>| {
        section.and_then(|section| section.batter).expect("batter")
    };
    let ratio = depth(again.section) / depth(pans.own.section);
    assert!((ratio - 0.5).abs() < 1e-6, "{ratio}");
    // 3 eggs are 1.5: two and one are offered.
    let eggs = pans.eggs.expect("a part of an egg");
    let labels: Vec<&str> = eggs
        .offers
        .iter()
        .map(|offer| offer.label.as_str())
        .collect();
    assert_eq!(labels, ["Take 1 egg", "Take 2 eggs"]);
    assert!(
        eggs.words
            .starts_with("The formula asks for 1.5 eggs of 50 g each: beat 2 and weigh 75 g."),
        "{}",
        eggs.words
    );
    assert!(
        eggs.offers[1]
            .words
            .starts_with("0.67 times the recipe; the batter stands ")
    );
}

#[test]
fn lines_follow_the_amount_without_a_pan_on_the_shelf() {
    let found = sheet(Choices {
        amount: amount(HowMuch::Times, "2"),
        ..Choices::default()
    });
    assert_eq!(found.lines[1].scaled_shown.as_deref(), Some("600 g"));
}

#[test]
fn a_weighed_cup_goes_before_the_kind() {
    let mut choices = Choices::default();
    let by_kind = sheet(choices.clone()).pans;
    assert!(
        by_kind.usual.contains("usually filled to"),
        "{}",
        by_kind.usual
    );
    choices.batter.cup_grams = "200".into();
    choices.batter.cup = BatterCup::Metric;
    let weighed = sheet(choices.clone()).pans;
    assert!(
        weighed
            .usual
            .contains("weigh 0.8 g (0.78 to 0.82): by your cup."),
        "{}",
        weighed.usual
    );
    choices.batter.cup_grams = "two hundred".into();
    let wrong = sheet(choices).pans;
    assert!(
        wrong
            .cup_trouble
            .is_some_and(|trouble| trouble.ends_with('.'))
    );
    assert_eq!(wrong.said.cup_grams, "two hundred");
    assert_eq!(wrong.usual, by_kind.usual);
}

/// By hand, half of what stands V / 64 deep in 64 in2: filled to one share, V / 302 in a round 2 in deep, V / 151 in one of
/// 4 in. Of several pans the one that is worst is told, by its name.
#[test]
fn the_worst_pan_is_told() {
    let found = sheet(Choices {
        shelf: vec![round(1, 8.0, 2.0), round(1, 8.0, 4.0)],
        amount: amount(HowMuch::Half, ""),
        ..Choices::default()
    });
    let shallow = found
        .findings
        .iter()
        .find(|it| it.name == "pan_overfull")
        .expect("a finding");
    assert_eq!(shallow.title, "Shallow in the pan");
    let changed = found
        .findings
        .iter()
        .find(|it| it.name == "pan_depth_changed")
        .expect("a finding");
    assert!(
        changed
            .sentence
            .contains(" in the 8 in round, 2 in deep stands 79 % shallower"),
        "{}",
        changed.sentence
    );
}

/// Filled to their marks, one pan to a tenth of its depth and one to a fifth: both are shallow, the first one more.
#[test]
fn the_shallower_of_two_is_told() {
    let marked = |across: f64, line: &str| PanEntry {
        fill_line: line.into(),
        ..round(1, across, 2.0)
    };
    for shelf in [
        vec![marked(8.0, "0.2"), marked(9.0, "0.4")],
        vec![marked(9.0, "0.4"), marked(8.0, "0.2")],
    ] {
        let found = sheet(Choices {
            shelf,
            amount: amount(HowMuch::Recipe, ""),
            ..Choices::default()
        });
        let told = found.findings.iter().find(|it| it.name == "pan_overfull");
        let told = &told.expect("a finding").sentence;
        assert!(told.contains(" in the 8 in round"), "{told}");
    }
}

/// By hand: 2085.0 mL are 8.81 US cups; charts print 8, 5 cups of batter, a textbook 8.5; 63.6 in2 are 31 slices.
#[test]
fn what_charts_say_stands_beside_geometry() {
    let pans = sheet(Choices {
        shelf: vec![round(2, 9.0, 2.0), round(1, 9.3, 2.0)],
        ..Choices::default()
    })
    .pans;
    let said = pans.shelf[0].charts.join(" ");
    for words in [
        "Printed for the brim of one: 8 US cups, where geometry has 8.81 US cups at the brim",
        "Printed as batter for one: 5 US cups",
        "Printed for one: 8.5 US cups",
        "make 31 (",
    ] {
        assert!(said.contains(words), "{said}");
    }
    // No chart knows a pan of 9.3 inches.
    assert_eq!(pans.shelf[1].charts.len(), 1);
}

#[test]
fn a_jar_brings_its_caution() {
    let jars = inches(Shape::Jar, 4, 3.0, 3.0, 4.5);
    let with = sheet(Choices {
        shelf: vec![jars],
        ..Choices::default()
    });
    let of_jars = |sheet: &Worksheet| sheet.cautions.iter().any(|it| it.contains("botulism"));
    assert!(of_jars(&with));
    assert!(!of_jars(&sheet(Choices::default())));
}
