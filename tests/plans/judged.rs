//! How far a plan keeps the cake, on both sides of what makes another one.

use super::{Region, in_region, place_of, try_plan};
use batterwright::baking::worksheet::{Inputs, Judgement, SwapPlan};

const YELLOW: &str = "Yellow cake\n225 g plain flour\n225 g sugar\n120 g butter\n120 g egg\n150 g whole milk\n10 g baking powder\n3 g salt";
const MUFFINS: &str = "Muffins\n225 g plain flour\n100 g sugar\n90 g butter\n50 g egg\n180 g whole milk\n10 g baking powder\n3 g salt";
const VICTORIA: &str = "Victoria sandwich\n225 g plain flour\n225 g sugar\n225 g butter\n225 g egg\n10 g baking powder\n30 g whole milk";
const OIL: &str = "Oil cake\n225 g plain flour\n225 g sugar\n130 g sunflower oil\n100 g egg\n180 g whole milk\n12 g baking powder\n3 g salt";

fn swapped(text: &str, key: &str, to: &str, percent: u8) -> SwapPlan {
    planned(in_region(text, Region::Us), key, to, percent)
}

fn planned(mut inputs: Inputs, key: &str, to: &str, percent: u8) -> SwapPlan {
    inputs.swap(place_of(&inputs, key), to, Some(percent));
    try_plan(&inputs).unwrap_or_else(|why| panic!("{key} to {to}: {why}"))
}

#[track_caller]
fn assert_judged(plan: &SwapPlan, judgement: Judgement, first: &str) {
    assert_eq!(plan.judgement, judgement, "{:?}", plan.sentences);
    assert!(plan.sentences[0].starts_with(first), "{:?}", plan.sentences);
}

#[test]
fn what_is_like_it_keeps_the_cake() {
    for (key, to) in [
        ("sugar", "caster_sugar"),
        ("milk", "soy_milk"),
        ("butter", "margarine"),
    ] {
        let plan = swapped(YELLOW, key, to, 100);
        assert_ne!(plan.judgement, Judgement::GivesUp, "{:?}", plan.sentences);
    }
    let plan = swapped(YELLOW, "sugar", "caster_sugar", 100);
    assert_judged(&plan, Judgement::Kept, "Everything that is reckoned");
}

/// All of the egg's protein goes, or of a pulse's protein seven tenths. A layer cake and an oil cake want it to set, muffins
/// hardly, and a gel of flax or a pulse binds as much as those want, but not as much as a Victoria sandwich does, by the tables
/// of what an egg and its replacers do.
#[test]
fn a_cake_that_wants_egg_is_another_without() {
    for cake in [YELLOW, OIL] {
        let plan = swapped(cake, "egg", "apple_sauce", 100);
        assert_judged(&plan, Judgement::GivesUp, "This makes another cake: ");
        assert!(
            plan.sentences[0].contains("100 % less protein that sets"),
            "{:?}",
            plan.sentences
        );
    }
    let muffins = swapped(MUFFINS, "egg", "apple_sauce", 100);
    assert_judged(
        &muffins,
        Judgement::KeptButFor,
        "The cake is kept, but for ",
    );
    for (cake, to) in [(OIL, "vegan_liquid_egg"), (OIL, "flaxseed+water")] {
        let plan = swapped(cake, "egg", to, 100);
        assert_judged(&plan, Judgement::KeptButFor, "The cake is kept, but for ");
    }
    let victoria = swapped(VICTORIA, "egg", "flaxseed+water", 100);
    assert_judged(&victoria, Judgement::GivesUp, "This makes another cake: ");
    let gel = swapped(MUFFINS, "egg", "flaxseed+water", 100);
    assert_judged(&gel, Judgement::KeptButFor, "The cake is kept, but for ");
    // Less than half of it.
    let third = swapped(OIL, "egg", "apple_sauce", 33);
    assert_judged(&third, Judgement::KeptButFor, "The cake is kept, but for ");
}

/// Apple sauce for butter, with nothing else to bring fat: a twelfth of the fat may go, a third not.
#[test]
fn a_fifth_of_the_fat_makes_another_cake() {
    let with_nothing_new = |percent| {
        let mut inputs = in_region(YELLOW, Region::Us);
        inputs.choices.swaps.nothing_new = true;
        planned(inputs, "butter", "apple_sauce", percent)
    };
    let some = with_nothing_new(12);
    assert_ne!(some.judgement, Judgement::GivesUp, "{:?}", some.sentences);
    let much = with_nothing_new(33);
    assert_judged(&much, Judgement::GivesUp, "This makes another cake: ");
    assert!(
        much.sentences[0].contains("less fat"),
        "{:?}",
        much.sentences
    );
}

/// Passion-fruit juice for milk, with no soda to answer it.
#[test]
fn a_limit_that_cannot_hold_is_told_first() {
    let mut inputs = in_region(YELLOW, Region::Us);
    inputs.choices.swaps.nothing_new = true;
    let plan = planned(inputs, "milk", "passion_fruit_juice", 100);
    assert_judged(
        &plan,
        Judgement::GivesUp,
        "This cannot be done within the limits of ",
    );
    assert!(
        plan.sentences[0].contains("it stays more acid"),
        "{:?}",
        plan.sentences
    );
}

/// Where a class leaves the range of its kind it is told, but not where the trade only counts it by another weight:
/// ghee is all fat, a fifth lighter than its butter.
#[test]
fn a_range_that_is_left_is_told() {
    let plan = swapped(YELLOW, "egg", "apple_sauce", 100);
    let told = plan
        .sentences
        .iter()
        .any(|said| said.starts_with("Egg comes to 0 % of the flour"));
    assert!(told, "{:?}", plan.sentences);
    let lean = swapped(
        &YELLOW.replace("120 g butter", "105 g butter"),
        "butter",
        "ghee+water",
        100,
    );
    assert!(
        !lean
            .sentences
            .iter()
            .any(|said| said.starts_with("Fat comes")),
        "{:?}",
        lean.sentences
    );
}

/// Half of four large eggs of 50 g is two: the recipe says so and no weight has to be mended. A third of them is no whole count.
#[test]
fn eggs_that_stay_are_counted_where_they_are_whole() {
    let text = OIL.replace("100 g egg", "4 large eggs, beaten");
    let half = swapped(&text, "egg", "apple_sauce", 50);
    assert!(
        half.after.text.contains("\n2 large eggs, beaten"),
        "{}",
        half.after.text
    );
    assert!(
        half.after
            .corrections
            .iter()
            .all(|it| !it.text.contains("egg"))
    );
    let third = swapped(&text, "egg", "apple_sauce", 33);
    assert!(third.after.text.contains("\n4 large eggs, beaten"));
    let weighed = third
        .after
        .corrections
        .iter()
        .find(|it| it.text.contains("egg"));
    assert_eq!(weighed.and_then(|it| it.grams), Some(134.0));
}

/// Ground flax that was looked up in the larder comes as the trade has it, with its water: 1 part to 3 or so, and not gram for gram.
#[test]
fn what_the_trade_knows_is_meant_wherever_it_was_chosen() {
    let found = swapped(MUFFINS, "egg", "flaxseed", 100);
    let offered = swapped(MUFFINS, "egg", "flaxseed+water", 100);
    assert_eq!(found.amounts, offered.amounts);
}
