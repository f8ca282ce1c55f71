//! Wishes that come to nothing: each a sentence with its reason, and the inputs as they were.

use super::{in_region, place_of, try_plan, weighed};
use batterwright::baking::ingredient::own::{OwnEntry, OwnRecord};
use batterwright::baking::ingredient::{Own, Region};
use batterwright::baking::worksheet::{Inputs, LinePart, Settings, SwapEntry, swap_plan};

const CAKE: &str = "Plain cake
225 g plain flour
225 g sugar
225 g butter
200 g egg
240 g whole milk
10 g baking powder
3 g salt";

fn cake() -> Inputs {
    in_region(CAKE, Region::Us)
}

/// The cake with one swap.
fn with_swap(text: &str, key: &str, to: &str) -> (Inputs, LinePart) {
    let mut inputs = in_region(text, Region::Us);
    let place = place_of(&inputs, key);
    inputs.swap(place, to, Some(100));
    (inputs, place)
}

#[track_caller]
fn assert_refused(inputs: &Inputs, words: &[&str]) {
    let before = inputs.clone();
    let said = try_plan(inputs).expect_err("a wish that cannot be had");
    for words in words {
        assert!(said.contains(words), "{words:?} is not in {said:?}");
    }
    assert!(said.ends_with(['.', '!']), "{said}");
    assert!(
        !said.starts_with(|first: char| first.is_ascii_lowercase()),
        "{said}"
    );
    assert_eq!(*inputs, before);
}

#[test]
fn nothing_is_planned_without_flour_or_liquid() {
    let (no_flour, _) = with_swap(
        "Meringue\n100 g egg white\n200 g sugar",
        "egg_white",
        "aquafaba",
    );
    assert_refused(&no_flour, &["against the flour", "no flour has a weight"]);
    let (dry, _) = with_swap(
        "Dry mix\n200 g plain flour\n100 g sugar\n5 g salt",
        "sugar",
        "caster_sugar",
    );
    assert_refused(&dry, &["No liquid is known"]);
}

#[test]
fn nothing_is_planned_of_nothing() {
    assert_refused(&cake(), &["Choose what is to be swapped"]);
    assert_refused(
        &in_region("", Region::Us),
        &["Choose what is to be swapped"],
    );
    let mut empty = in_region("", Region::Us);
    empty.choices.swaps.without.animals = true;
    assert_refused(&empty, &["Nothing in this recipe has to change"]);
}

/// With every other line held and nothing new, the swap alone changes, and what is lost is said.
#[test]
fn what_is_held_stays() {
    let (mut inputs, place) = with_swap(CAKE, "milk", "buttermilk");
    inputs.choices.swaps.nothing_new = true;
    for (other, ..) in weighed(&inputs) {
        inputs.hold(other, other != place);
    }
    let plan = try_plan(&inputs).expect("a plan");
    let whats: Vec<&str> = plan.amounts.iter().map(|amount| amount.what).collect();
    assert_eq!(whats, ["left out", "comes in"], "{:?}", plan.amounts);
    // The soda that buttermilk wants cannot come.
    assert!(plan.sentences[0].contains("pH"), "{:?}", plan.sentences);
}

/// An ingredient of one's own of which nothing is known but its name.
#[test]
fn what_nothing_is_known_of_cannot_come() {
    let mut record = OwnRecord::default();
    record.add(OwnEntry {
        name: "Grey powder".into(),
        ..OwnEntry::default()
    });
    let own = Own::of(&record);
    let key = own.ingredients()[0].key;
    let (inputs, _) = with_swap(CAKE, "sugar", key);
    let said = swap_plan(&inputs, &Settings::default(), &own).expect_err("no figures");
    assert!(
        said.contains("Nothing is known of what Grey powder is made of"),
        "{said}"
    );
    // Gone from the larder again.
    assert_refused(&inputs, &["not in the larder any more", "sugar"]);
}

#[test]
fn contradictory_wishes_are_told() {
    let (mut held, place) = with_swap(CAKE, "milk", "soy_milk");
    held.hold(place, true);
    assert_refused(
        &held,
        &["Milk, whole (line 6)", "to be swapped and to stay as it is"],
    );

    let (mut plants, _) = with_swap(CAKE, "butter", "ghee+water");
    plants.choices.swaps.without.animals = true;
    assert_refused(
        &plants,
        &["Ghee", "line 4", "the cake is to be plant-based"],
    );

    let (mut no_milk, _) = with_swap(CAKE, "milk", "buttermilk");
    no_milk.choices.swaps.without.milk = true;
    assert_refused(&no_milk, &["Buttermilk", "the cake is to be without milk"]);

    // Held, and not to be in the cake.
    let mut held = cake();
    held.choices.swaps.without.egg = true;
    held.hold(place_of(&held, "egg"), true);
    assert_refused(
        &held,
        &["Egg, whole (line 5)", "the cake is to be without egg"],
    );

    // Half of it would stay.
    let mut half = cake();
    half.swap(place_of(&half, "butter"), "vegetable_oil+water", Some(50));
    half.choices.swaps.without.milk = true;
    assert_refused(
        &half,
        &["A part of butter", "the cake is to be without milk"],
    );

    let (mut nothing, place) = with_swap(CAKE, "milk", "soy_milk");
    nothing.swap(place, "soy_milk", Some(0));
    assert_refused(&nothing, &["0 % of milk"]);
}

#[test]
fn a_line_that_is_gone_cannot_be_swapped() {
    let (mut inputs, _) = with_swap(CAKE, "milk", "soy_milk");
    inputs.text = CAKE.replace("240 g whole milk", "250 g whole milk");
    assert_refused(
        &inputs,
        &["\"240 g whole milk\"", "the recipe has that line no more"],
    );
    // There, and without a weight.
    let (mut inputs, place) = with_swap(CAKE, "milk", "soy_milk");
    inputs.call_ingredient(place.0, Some(false));
    assert_refused(
        &inputs,
        &[
            "\"240 g whole milk\" (line 6)",
            "no ingredient with a weight",
        ],
    );
}

/// What is not in the house neither comes for a line, nor is added, nor stays.
#[test]
fn what_is_missing_does_not_come() {
    let (mut chosen, _) = with_swap(CAKE, "milk", "soy_milk");
    chosen.choices.swaps.missing = vec!["soy_milk".into()];
    assert_refused(&chosen, &["Soya milk", "is not in the house"]);

    for missing in ["baking_soda", "cream_of_tartar", "water"] {
        let (mut chosen, _) = with_swap(CAKE, "milk", "buttermilk");
        chosen.choices.swaps.missing = vec![missing.into()];
        let plan = try_plan(&chosen).expect("a plan");
        let keys: Vec<&str> = weighed(&plan.after).iter().map(|line| line.1).collect();
        assert!(!keys.contains(&missing), "{missing}: {keys:?}");
    }

    // What stands for what is missing is not missing itself.
    let offered = |missing: &[&str]| {
        let mut inputs = cake();
        inputs.choices.swaps = SwapEntry {
            missing: missing.iter().map(|key| (*key).to_owned()).collect(),
            ..SwapEntry::default()
        };
        try_plan(&inputs).map(|plan| weighed(&plan.after))
    };
    let mut missing = vec!["milk"];
    for _ in 0..4 {
        let lines = offered(&missing).expect("milk has many swaps");
        let comes = lines
            .iter()
            .map(|line| line.1)
            .find(|key| key.contains("milk"));
        assert!(
            lines.iter().all(|line| !missing.contains(&line.1)),
            "{missing:?}: {lines:?}"
        );
        missing.extend(comes);
    }
}

/// A cake that is from plants stays so: honey is known for maple syrup, and is not taken unasked.
#[test]
fn nothing_from_animals_comes_unasked() {
    let text = "Plain cake\n225 g plain flour\n200 g maple syrup\n110 g plant butter\n140 g soy milk\n12 g baking powder";
    let mut inputs = in_region(text, Region::Us);
    inputs.choices.swaps.missing = vec!["maple_syrup".into()];
    assert_refused(
        &inputs,
        &["No swap that fits is known for maple syrup (line 3)"],
    );
    // Asked for, it comes.
    inputs.choices.swaps.missing.clear();
    inputs.swap(place_of(&inputs, "maple_syrup"), "honey", Some(100));
    assert!(try_plan(&inputs).is_ok());
}
