//! What differs between two worksheets: by hand, in figures and in words, and by law.

use batterwright::baking::demo::DEMOS;
use batterwright::baking::finding::Remedy;
use batterwright::baking::worksheet::{
    Call, Difference, FigureChange, IngredientChange, Inputs, Settings, Worksheet, difference,
    worksheet,
};
use proptest::prelude::*;
use std::fs;
use std::path::Path;

fn sheet(text: &str) -> Worksheet {
    worksheet(&Inputs::of_text(text), &Settings::default())
}

fn between(before: &str, after: &str, name: &str) -> Difference {
    difference(&sheet(before), &sheet(after), name)
}

#[track_caller]
fn ingredient<'a>(found: &'a Difference, name: &str) -> &'a IngredientChange {
    let mut all = found.ingredients.iter();
    all.find(|it| it.name == name)
        .unwrap_or_else(|| panic!("{name} does not differ: {:?}", found.ingredients))
}

#[track_caller]
fn figure<'a>(found: &'a Difference, label: &str) -> &'a FigureChange {
    let mut all = found.figures.iter();
    all.find(|it| it.label == label)
        .expect("a figure so called")
}

/// The means of a figure before and after.
#[track_caller]
fn means(found: &Difference, label: &str) -> (f64, f64) {
    let change = figure(found, label);
    let mean =
        |figure: Option<batterwright::baking::worksheet::Spread>| figure.expect("a figure").mean;
    (mean(change.before.figure), mean(change.after.figure))
}

fn first_sentence(found: &Difference) -> &str {
    let words = found.words.split(". ").next().unwrap_or_default();
    words.trim_end_matches('.')
}

const BUTTER: &str = "Plain sponge\n\n200 g plain flour\n100 g granulated sugar\n100 g unsalted butter\n100 g water\n2 g salt\n\nBake for 30 minutes.";
const OIL: &str = "Plain sponge\n\n100 g water\n200 g plain flour\n150 g granulated sugar\n80 g sunflower oil\n2 g salt\n\nBake for 25 minutes.";

/// Oil for butter and more sugar; the water has only moved. All weights are exact, so every change that is shown counts.
///
/// Shares of 100 g by USDA SR28: flour 11.92 water, 10.33 protein, 0.98 fat, 0.27 sugars, 73.34 starch, 2 mg sodium; sugar 0.02
/// water, 99.8 sugars, 1 mg; butter 17.94 water, 0.85 protein, 81.11 fat, 0.06 sugars, 11 mg; water 99.9 water, 4 mg; salt
/// 0.2 water, 38,758 mg; oil 100 fat.
#[test]
fn oil_for_butter_by_hand() {
    let found = between(BUTTER, OIL, "oil version");
    // Sugar 100 to 150 g: 50 to 75 % of 200 g flour.
    let sugar = ingredient(&found, "granulated sugar");
    let (before, after) = (sugar.before.as_ref(), sugar.after.as_ref());
    assert_eq!(
        before.map(|it| (it.shown.as_str(), it.percent)),
        Some(("100 g", Some(50.0)))
    );
    assert_eq!(
        after.map(|it| (it.shown.as_str(), it.percent)),
        Some(("150 g", Some(75.0)))
    );
    assert_eq!(sugar.change_shown, "+50 g");
    let butter = ingredient(&found, "butter, unsalted");
    assert!(butter.after.is_none() && butter.change_shown == "\u{2212}100 g");
    let oil = ingredient(&found, "sunflower oil");
    assert!(oil.before.is_none() && oil.change_shown == "+80 g");
    // Flour, water and salt stay.
    assert_eq!((found.ingredients.len(), found.unchanged), (3, 3));

    let by_hand = [
        // 200 + 100 + 100 + 100 + 2; 200 + 150 + 80 + 100 + 2.
        ("Batter", 502.0, 532.0, Call::More),
        // 23.84 + 0.02 + 17.94 + 99.9 + 0.004; 23.84 + 0.03 + 99.9 + 0.004.
        ("Water", 141.704, 123.774, Call::Less),
        // 1.96 + 81.11; 1.96 + 80.
        ("Fat", 83.07, 81.96, Call::Less),
        // 0.54 + 99.8 + 0.06; 0.54 + 149.7.
        ("Sugars", 100.4, 150.24, Call::More),
        // 20.66 + 0.85; 20.66.
        ("Protein", 21.51, 20.66, Call::Less),
        ("Starch", 146.68, 146.68, Call::Same),
        // 4 + 1 + 11 + 4 + 775.16 mg; 4 + 1.5 + 4 + 775.16.
        ("Sodium", 0.795_16, 0.784_66, Call::Less),
        // Times 2.5; both are shown as 2 g.
        ("Salt, as labels count it", 1.9879, 1.961_65, Call::Same),
        // Against 200 g of flour: sugar 100 and 150, butter 100 and oil 80, water 100 and 100, all water as above.
        ("Sugar on flour", 50.0, 75.0, Call::More),
        ("Fat on flour", 50.0, 40.0, Call::Less),
        ("Liquid on flour", 50.0, 50.0, Call::Same),
        ("All water on flour", 70.852, 61.887, Call::Less),
    ];
    for (label, before, after, call) in by_hand {
        let (old, new) = means(&found, label);
        assert!(
            (old - before).abs() < 1e-6 && (new - after).abs() < 1e-6,
            "{label}: {old} to {new}"
        );
        assert_eq!(figure(&found, label).call, call, "{label}");
    }
    assert_eq!(figure(&found, "Batter").change_shown, "+30 g");
    assert_eq!(figure(&found, "Water").change_shown, "\u{2212}17.9 g");

    assert_eq!(found.allergens_lost, ["Milk"]);
    assert!(found.allergens_gained.is_empty());
    assert_eq!(found.lines_gone, ["Bake for 30 minutes."]);
    assert_eq!(found.lines_come, ["Bake for 25 minutes."]);
    assert_eq!(
        found.words,
        "Plain sponge, oil version: 50 g more granulated sugar, 150 g in all; 80 g sunflower oil instead of 100 g unsalted butter. \
         Plant-based: yes, by its ingredients (was no). One other line of the text differs. \
         Allergens that went out, by its ingredients: milk. Read every packet."
    );
}

/// What the sugars do in the same two, by hand: sucrose of 342.3 g/mol, 99.8 g in 141.7 g of water and 149.7 g in 123.8 g; the
/// flour's own half gram of sugars comes on top. A gram of sucrose to a gram of water raises the peak of starch by 23.2 C
/// (Allan and others 2020 and others, as named on the page).
#[test]
fn what_the_sugars_do_before_and_after_by_hand() {
    let found = between(BUTTER, OIL, "oil version");
    let (before, after) = means(&found, "Sugar in the batter's water");
    assert!((before - 2.06).abs() < 0.04, "{before}");
    assert!((after - 3.53).abs() < 0.04, "{after}");
    let (before, after) = means(&found, "As sweet as sugar");
    assert!((before - 99.8).abs() < 0.7 && (after - 149.7).abs() < 0.7);
    let (before, after) = means(&found, "Sets at");
    assert!((after - before - 23.2 * (149.7 / 123.8 - 99.8 / 141.7)).abs() < 0.5);
    assert!(figure(&found, "Sets at").after.shown.ends_with(" °C"));
    // No egg on either side is no difference; 50 g of it against 200 g of flour is 25 %, and without it none.
    assert_eq!(figure(&found, "Egg on flour").call, Call::Same);
    let found = between(&format!("{BUTTER}\n50 g egg"), BUTTER, "");
    assert_eq!(means(&found, "Egg on flour"), (25.0, 0.0));
    assert_eq!(figure(&found, "Egg on flour").call, Call::Less);
}

/// A cup of flour is published as 99 to 160 g around 125 g. Between 2 and 2 1/4 cups lie 31 g, far less than the spread; between 2
/// and 4 cups 250 g, against some 70 and 104 g together, 125 g.
#[test]
fn a_change_within_the_spread_is_too_close_to_call() {
    let cups = |cups: &str| format!("Cake\n{cups} cups all-purpose flour\n100 g sugar");
    let near = between(&cups("2"), &cups("2 1/4"), "");
    assert_eq!(figure(&near, "Starch").call, Call::TooClose);
    assert!(
        figure(&near, "Starch")
            .words()
            .ends_with("too close to call")
    );
    // The cups themselves were changed by the baker, and that is told.
    assert!(
        near.words
            .starts_with("Cake: 31 g more all-purpose flour, 281 g in all."),
        "{}",
        near.words
    );
    let far = between(&cups("2"), &cups("4"), "");
    assert_eq!(figure(&far, "Starch").call, Call::More);
    // The flour's own 0.27 %: 0.7 g more, with a spread of some 0.35 g.
    assert_eq!(figure(&far, "Sugars").change_shown, "+0.7 g");
}

/// A weight in place of a cup: as heavy, but surer.
#[test]
fn the_same_weight_with_another_spread_differs_and_says_so() {
    let found = between("2 cups all-purpose flour", "250 g all-purpose flour", "");
    assert_eq!(found.ingredients.len(), 1);
    assert_eq!(found.ingredients[0].change_shown, "");
    assert_eq!(
        found.words,
        "The amounts are the same, and how sure they are differs."
    );
}

/// By its kind and place: two lines of sugar are one, one in the glaze is another.
#[test]
fn ingredients_are_matched_by_kind_and_place() {
    let one = "Cake\n\nIngredients\n200 g flour\n100 g sugar\n\nFor the glaze\n50 g sugar\n\nMethod\nBake.";
    let split = "Cake\n\nIngredients\n60 g sugar\n200 g flour\n40 g sugar\n\nFor the glaze\n70 g sugar\n\nMethod\nBake.";
    let found = between(one, split, "");
    assert_eq!(found.ingredients.len(), 1, "{:?}", found.ingredients);
    assert_eq!(found.ingredients[0].change_shown, "+20 g");
    assert!(found.ingredients[0].beside.is_some());
    assert_eq!(
        found.words,
        "Cake: 20 g more sugar (not in the batter), 70 g in all."
    );
    assert_eq!(figure(&found, "Sugars").call, Call::Same);
}

/// Spoons stand beside the grams where the line has them: a teaspoon of salt weighs 6 g, half a teaspoon of soda 2.3 g by USDA SR28.
#[test]
fn words_have_the_spoons_of_the_line() {
    let found = between(
        "Cake\n200 g flour\n1/2 tsp salt",
        "Cake\n200 g flour\n1 tsp salt\n1/2 tsp baking soda",
        "salted",
    );
    assert_eq!(
        first_sentence(&found),
        ("Cake, salted: 3 g more salt, 6 g (1 teaspoon) in all; 2.3 g (1/2 teaspoon) baking soda added")
    );
    // A weight by hand takes the place of the spoon.
    let mut inputs = Inputs::of_text("Cake\n200 g flour\n1/2 tsp salt");
    let before = worksheet(&inputs, &Settings::default());
    inputs.weigh((3, 0), Some(4.0));
    let found = difference(&before, &worksheet(&inputs, &Settings::default()), "");
    assert_eq!(
        found.words,
        "Cake: 1 g more salt, table or fine, 4 g in all."
    );
}

/// What stood in one place is told together; leavening has a place of its own.
#[test]
fn what_went_in_for_it_is_told_with_it() {
    let found = between(
        "200 g flour\n240 g buttermilk\n3 g baking soda\n50 g sugar",
        "200 g flour\n225 g soya milk\n15 g cider vinegar\n10 g baking powder\n50 g sugar",
        "",
    );
    let first = first_sentence(&found);
    assert_eq!(
        first,
        "225 g soya milk and 15 g cider vinegar instead of 240 g buttermilk; 10 g baking powder instead of 3 g baking soda"
    );
    assert_eq!(
        (found.allergens_lost, found.allergens_gained),
        (vec!["Milk".to_owned()], vec!["Soya".to_owned()])
    );
}

/// A step that is told twice and then once is one step less, wherever it stands.
#[test]
fn lines_are_counted_as_often_as_they_stand() {
    let twice = "Cake\n\n200 g flour\n\nMethod\nStir the batter well.\nBake it in a tin.\nStir the batter well.";
    let once = "Cake\n\n200 g flour\n\nMethod\nBake it in a tin.\nStir the batter well.";
    let found = between(twice, once, "");
    assert_eq!(found.lines_gone, ["Stir the batter well."]);
    assert!(found.lines_come.is_empty());
    assert_eq!(found.words, "Cake: One other line of the text differs.");
}

/// Two for two, line by line.
#[test]
fn as_many_as_went_are_told_one_for_one() {
    let found = between(
        "200 g flour\n100 g unsalted butter\n120 g milk\n50 g sugar",
        "200 g flour\n80 g sunflower oil\n110 g oat milk\n50 g sugar",
        "",
    );
    assert_eq!(
        first_sentence(&found),
        "80 g sunflower oil instead of 100 g unsalted butter; 110 g oat milk instead of 120 g milk"
    );
}

/// What is left out of one sum alone keeps it from being held against the other; what both leave out does not.
#[test]
fn sums_that_leave_different_things_out_are_not_compared() {
    let whole = "200 g flour\n100 g sugar";
    let hole = "200 g flour\n120 g sugar\n2 cups patience";
    let found = between(whole, hole, "");
    assert_eq!(figure(&found, "Batter").call, Call::CannotTell);
    assert!(figure(&found, "Water").after.beside.contains("patience"));
    assert_eq!(
        ingredient(&found, "patience")
            .after
            .as_ref()
            .map(|it| it.shown.as_str()),
        Some("no weight")
    );
    let both = between("200 g flour\n100 g sugar\n2 cups patience", hole, "");
    assert_eq!(figure(&both, "Batter").call, Call::More);
}

/// The invented demo: mended by its own remedy, the shortage of soda goes and the soda comes.
#[test]
fn a_remedy_shows_as_a_difference() {
    let inputs = Inputs::of_text(DEMOS[0].text);
    let before = worksheet(&inputs, &Settings::default());
    let short = before
        .findings
        .iter()
        .find(|it| it.name == "soda_short")
        .expect("short of soda");
    let remedy: &Remedy = short.remedies.first().expect("a remedy");
    let after = worksheet(&inputs.with_remedy(remedy), &Settings::default());
    let found = difference(&before, &after, "mended");
    assert!(found.findings_gone.iter().any(|it| it.name == "soda_short"));
    let soda = ingredient(&found, "baking soda (bicarbonate of soda)");
    assert!(soda.before.is_none());
    assert!(
        found
            .words
            .starts_with("Harbour pear cake, passion-fruit version, mended: "),
        "{}",
        found.words
    );
    let ph = figure(&found, "Crumb pH");
    assert!(
        ph.before.beside.contains("Short of soda") && !ph.after.beside.contains("Short of soda")
    );
}

/// Whole recipes to try laws on: the demos and the recipes with verdicts.
fn recipes() -> Vec<Worksheet> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/verdicts");
    let mut files: Vec<_> = fs::read_dir(folder)
        .expect("a folder of recipes")
        .map(|entry| entry.expect("an entry of that folder").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "txt"))
        .collect();
    files.sort();
    let texts = files
        .iter()
        .step_by(4)
        .map(|path| fs::read_to_string(path).expect("a text"));
    let demos = DEMOS.iter().map(|demo| demo.text.to_owned());
    texts.chain(demos).map(|text| sheet(&text)).collect()
}

/// Before and after exchanged in everything that tells the two apart.
fn mirrored(mut found: Difference) -> Difference {
    let signs = |shown: &str| match shown.chars().next() {
        Some('+') => shown.replacen('+', "\u{2212}", 1),
        Some(_) => shown.replacen('\u{2212}', "+", 1),
        None => String::new(),
    };
    for it in &mut found.ingredients {
        std::mem::swap(&mut it.before, &mut it.after);
        it.change_shown = signs(&it.change_shown);
    }
    for it in &mut found.figures {
        std::mem::swap(&mut it.before, &mut it.after);
        it.change_shown = signs(&it.change_shown);
        it.call = match it.call {
            Call::More => Call::Less,
            Call::Less => Call::More,
            same => same,
        };
    }
    for it in &mut found.said {
        std::mem::swap(&mut it.before, &mut it.after);
    }
    std::mem::swap(&mut found.allergens_gained, &mut found.allergens_lost);
    std::mem::swap(&mut found.findings_come, &mut found.findings_gone);
    std::mem::swap(&mut found.lines_come, &mut found.lines_gone);
    found
}

/// The words and the order are told from the recipe after; all else is one and the same.
fn without_order(mut found: Difference) -> Difference {
    found.words.clear();
    found
        .ingredients
        .sort_by(|one, other| (&one.name, &one.beside).cmp(&(&other.name, &other.beside)));
    found
}

fn check_mirror(one: &Worksheet, other: &Worksheet) {
    let there = without_order(difference(one, other, ""));
    let back = without_order(mirrored(difference(other, one, "")));
    assert_eq!(there, back, "{:?} and {:?}", one.title, other.title);
}

#[test]
fn a_recipe_differs_from_itself_in_nothing() {
    for sheet in recipes() {
        let found = difference(&sheet, &sheet, "");
        assert!(found.is_nothing(), "{:?}: {found:?}", sheet.title);
        assert!(found.words.ends_with("Nothing differs."), "{}", found.words);
    }
}

#[test]
fn the_difference_back_is_the_mirror_of_the_difference_there() {
    let all = recipes();
    for one in &all {
        for other in &all {
            check_mirror(one, other);
        }
    }
}

const LINES: &[&str] = &[
    "200 g flour",
    "2 cups flour",
    "100 g sugar",
    "1 tbsp sugar",
    "1 cup buttermilk",
    "1/2 tsp baking soda",
    "salt to taste",
    "2 cups patience",
    "1/0 cup milk",
    "butter for the pan",
    "For the glaze",
    "1 tbsp lemon juice",
    "2 eggs",
    "Bake for 30 minutes.",
    "",
    "\u{1f370}\u{0301} 3",
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Any heap of lines: there and back, and never an end to the program.
    #[test]
    fn any_two_heaps_mirror(
        one in prop::collection::vec(prop::sample::select(LINES), 0..10),
        other in prop::collection::vec(prop::sample::select(LINES), 0..10),
    ) {
        let (one, other) = (sheet(&one.join("\n")), sheet(&other.join("\n")));
        check_mirror(&one, &other);
        prop_assert!(difference(&one, &one, "").is_nothing());
    }
}
