//! Laws that hold for any input: nothing lost, nothing that is not a number, and chemistry that moves one way.

#[path = "laws/chance.rs"]
mod chance;
#[path = "laws/real.rs"]
mod real;

use batterwright::baking::demo::DEMOS;
use batterwright::baking::ingredient::all;
use batterwright::baking::ingredient::card::card;
use batterwright::baking::ingredient::own::{LabelStyle, OwnEntry, OwnField, Weighing};
use batterwright::baking::pan::{PanEntry, Shape};
use batterwright::baking::worksheet::{
    Choices, Inputs, LengthUnit, Settings, Spread, Worksheet, worksheet,
};
use chance::damaged_lines;
use proptest::prelude::*;

fn sheet(text: &str) -> Worksheet {
    worksheet(&Inputs::of_text(text), &Settings::default())
}

/// Any text gives a worksheet. A stray tag makes a page of it, whose text is taken in its place.
#[track_caller]
fn any_gives_a_worksheet(text: &str) {
    let inputs = Inputs::of_text(text);
    holds_together(
        &inputs.recipe_text(),
        &worksheet(&inputs, &Settings::default()),
    );
}

fn ph(text: &str) -> f64 {
    sheet(text)
        .leavening
        .rule
        .expect("a batter with a pH")
        .crumb
        .mean
}

fn finite(spread: &Spread) -> bool {
    spread.mean.is_finite()
        && spread.low.is_finite()
        && spread.high.is_finite()
        && spread.low <= spread.mean
        && spread.mean <= spread.high
}

/// Every line is there as it was pasted, numbered from 1, and every figure is a number.
#[track_caller]
fn holds_together(text: &str, sheet: &Worksheet) {
    // A line of several ingredients stands once for each.
    let first = || sheet.lines.iter().filter(|line| line.part == 0);
    let kept: Vec<&str> = first().map(|line| line.text.as_str()).collect();
    let pasted: Vec<&str> = text.lines().collect();
    assert_eq!(kept, pasted, "lines of {text:?}");
    for (index, line) in first().enumerate() {
        assert_eq!(line.line, index + 1);
    }
    for line in &sheet.lines {
        assert!(
            line.grams
                .as_ref()
                .is_none_or(|grams| finite(grams) && grams.low >= 0.0),
            "{line:?}"
        );
    }
    assert!(
        sheet
            .balance
            .totals
            .iter()
            .all(|total| finite(&total.grams)),
        "{text:?}"
    );
    assert!(sheet.balance.batter.as_ref().is_none_or(finite), "{text:?}");
    let ranges = &sheet.balance.ranges;
    assert!(
        ranges
            .rows
            .iter()
            .all(|row| finite(&row.percent) && row.percent.low >= 0.0),
        "{text:?}"
    );
    assert!(
        sheet
            .balance
            .pull
            .iter()
            .all(|pair| (0.0..=1.0).contains(&pair.left_share)),
        "{text:?}"
    );
    let leavening = &sheet.leavening;
    assert!(
        leavening.shares.iter().all(|share| finite(&share.acid)),
        "{text:?}"
    );
    assert!(
        leavening
            .rule
            .as_ref()
            .is_none_or(|rule| finite(&rule.crumb)),
        "{text:?}"
    );
    assert!(
        leavening
            .gas
            .as_ref()
            .is_none_or(|gas| finite(&gas.grams) && finite(&gas.percent)),
        "{text:?}"
    );
    assert!(sheet.pans.factor.is_none_or(f64::is_finite), "{text:?}");
}

/// Pieces of ordinary lines, to make nonsense that is nearly a recipe.
fn pieces() -> impl Strategy<Value = String> {
    prop::collection::vec(
        prop::sample::select(vec![
            "1",
            "2",
            "1/2",
            "1/0",
            "½",
            "1e308",
            "-3",
            "0",
            "cup",
            "cups",
            "tsp",
            "g",
            "kg",
            "oz",
            "(",
            ")",
            "/",
            "-",
            "flour",
            "sugar",
            "eggs",
            "lemon",
            "juice of",
            "butter",
            "baking soda",
            "to taste",
            "or",
            "plus",
            ",",
            "\n",
            "\n\n",
            "\t",
            "For the cake:",
            "Method",
            "9-inch round pan",
            "🍰",
            "שלום",
            "<b>",
            "&amp;",
            "NaN",
            "inf",
            "·",
            "½½",
            "999999999999999999999",
        ]),
        0..40,
    )
    .prop_map(|pieces| pieces.join(" "))
}

/// What people type into a field of figures, and what they don't.
fn typed() -> impl Strategy<Value = String> {
    prop_oneof![
        4 => (0.0..100.0f64).prop_map(|figure| format!("{figure:.1}")),
        1 => Just(String::new()),
        1 => "[-<]?[0-9]{1,3}[.,]?[0-9]{0,3} ?(g|mg)?",
        1 => any::<String>(),
    ]
}

/// The fields of a packet and a scale, in the order in which the law below fills them.
const OWN_FIELDS: [OwnField; 15] = [
    OwnField::Name,
    OwnField::Fat,
    OwnField::Carbohydrate,
    OwnField::Sugars,
    OwnField::Fibre,
    OwnField::Protein,
    OwnField::Salt,
    OwnField::Sodium,
    OwnField::Water,
    OwnField::Alcohol,
    OwnField::Weighing(0, 0),
    OwnField::Weighing(0, 1),
    OwnField::Weighing(0, 2),
    OwnField::Piece,
    OwnField::Ph,
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn any_packet_makes_an_ingredient_of_at_most_a_whole(
        texts in prop::collection::vec(typed(), OWN_FIELDS.len()),
        within in any::<bool>(),
        like in 0..2 * all().len(),
    ) {
        let mut entry = OwnEntry { weighings: vec![Weighing::default()], ..OwnEntry::default() };
        entry.like = all().get(like).map(|like| like.key.into());
        entry.label.style = if within { LabelStyle::FibreWithin } else { LabelStyle::FibreBeside };
        for (field, text) in OWN_FIELDS.into_iter().zip(&texts) {
            text.clone_into(entry.field(field).expect("a field that is there"));
        }
        let made = entry.ingredient();
        let held = &made.composition;
        let parts = [held.water, held.protein, held.fat, held.carbohydrate, held.alcohol];
        let percents = |share: Option<batterwright::baking::quantity::Share>| share.map_or(0.0, |share| share.to_percent());
        let sum: f64 = parts.into_iter().map(percents).sum();
        prop_assert!((0.0..101.6).contains(&sum), "{entry:?} {sum}");
        for share in parts.into_iter().chain([held.sugars, held.starch, held.fibre, held.sodium]) {
            prop_assert!((0.0..=101.6).contains(&percents(share)), "{entry:?}");
        }
        for row in &made.fillings {
            let weight = row.weight;
            prop_assert!(weight.low.to_grams() >= 0.0 && weight.low <= weight.mean && weight.mean <= weight.high, "{entry:?}");
        }
        for group in card(made).groups {
            prop_assert!(group.rows.iter().all(|row| !row.value.contains("NaN")), "{entry:?}");
        }
    }

    #[test]
    fn any_text_gives_a_worksheet(text in any::<String>()) {
        any_gives_a_worksheet(&text);
    }

    #[test]
    fn any_heap_of_words_gives_a_worksheet(text in pieces()) {
        any_gives_a_worksheet(&text);
    }

    #[test]
    fn damaged_lines_give_a_worksheet(text in damaged_lines()) {
        any_gives_a_worksheet(&text);
    }

    #[test]
    fn more_acid_never_raises_ph_and_more_soda_never_lowers_it(juice in 1.0..300.0f64, soda in 0.1..8.0f64, more in 1.01..3.0f64) {
        let cake = |juice: f64, soda: f64| ph(&format!("250 g flour\n100 g milk\n{juice:.3} g lemon juice\n{soda:.3} g baking soda"));
        prop_assert!(cake(juice * more, soda) <= cake(juice, soda) + 1e-9);
        prop_assert!(cake(juice, soda * more) >= cake(juice, soda) - 1e-9);
    }

    #[test]
    fn doubling_doubles_grams_and_leaves_ph(flour in 50.0..500.0f64, soda in 0.5..5.0f64, milk in 50.0..400.0f64) {
        let cake = |times: f64| sheet(&format!("{:.4} g flour\n{:.4} g buttermilk\n{:.4} g baking soda", flour * times, milk * times, soda * times));
        let (one, two) = (cake(1.0), cake(2.0));
        for (one, two) in one.lines.iter().zip(&two.lines) {
            let (one, two) = (one.grams.expect("a weight").mean, two.grams.expect("a weight").mean);
            prop_assert!((two / one - 2.0).abs() < 1e-3);
        }
        let crumb = |sheet: &Worksheet| sheet.leavening.rule.as_ref().expect("a pH").crumb.mean;
        prop_assert!((crumb(&one) - crumb(&two)).abs() < 1e-3);
    }

    #[test]
    fn order_of_lines_is_of_no_account(order in Just(vec!["250 g flour", "120 g lemon juice", "5 g baking soda", "100 g milk", "100 g butter"]).prop_shuffle()) {
        let straight = ph("250 g flour\n120 g lemon juice\n5 g baking soda\n100 g milk\n100 g butter");
        prop_assert!((ph(&order.join("\n")) - straight).abs() < 1e-9);
    }
}

fn fitted(own: (Shape, &str, &str, &str), other: (Shape, &str, &str, &str)) -> f64 {
    let entry = |(shape, length, width, depth): (Shape, &str, &str, &str)| PanEntry {
        shape,
        count: "1".into(),
        length: length.into(),
        width: width.into(),
        depth: depth.into(),
        unit: LengthUnit::Centimetres,
        ..PanEntry::default()
    };
    let choices = Choices {
        leavening: Default::default(),
        region: None,
        kind: None,
        swaps: Default::default(),
        oven: Default::default(),
        own_pan: Some(entry(own)),
        shelf: vec![entry(other)],
        amount: Default::default(),
        ..Choices::default()
    };
    let inputs = Inputs {
        choices,
        ..Inputs::of_text("250 g flour\n250 g milk")
    };
    worksheet(&inputs, &Settings::default())
        .pans
        .factor
        .expect("two pans that can be read")
}

#[test]
fn the_same_pan_takes_the_recipe_once_and_there_and_back_is_one() {
    let (round, loaf) = (
        (Shape::Round, "23", "", "5"),
        (Shape::Loaf, "23", "13", "7"),
    );
    assert!((fitted(round, round) - 1.0).abs() < 1e-12);
    assert!((fitted(round, loaf) * fitted(loaf, round) - 1.0).abs() < 1e-9);
}

/// A fault's remedy, once applied, leaves that fault behind and brings no new one.
#[test]
fn a_remedy_mends_what_it_says() {
    let faulty = [
        DEMOS[0].text,
        "2 cups flour\n1 cup sugar\n1 cup buttermilk\n2 eggs\n1/2 cup butter\n1 tablespoon baking soda",
        "300 g flour\n200 g sugar\n120 g lemon juice\n120 g milk\n2 eggs\n2 teaspoons baking powder",
        "300 g flour\n200 g sugar\n240 g milk\n2 eggs\n100 g oil\n1/4 teaspoon baking powder",
        "200 g flour\n100 g sugar\n300 g passion fruit juice\n50 g oil\n2 teaspoons baking powder",
        "300 g flour\n300 g sugar\n150 g butter\n165 g eggs\n200 g milk\n9 g baking soda",
        "300 g flour\n300 g sugar\n150 g butter\n165 g eggs\n200 g milk",
        "250 g flour\n330 g sugar\n45 g natural cocoa powder\n140 g shortening\n290 g milk\n165 g eggs\n6 g baking soda",
        "250 g flour\n250 g sugar\n60 g alkalised cocoa\n120 g butter\n100 g eggs\n290 g milk\n7 g baking soda",
        "300 g flour\n300 g sugar\n150 g butter\n165 g eggs\n200 g milk\n28 g baking powder",
        "250 g flour\n11 g baking powder\n200 g sugar\n150 g eggs\n100 g oil\n250 g yogurt",
        "250 g flour\n200 g sugar\n100 g oil\n200 g water\n10 g baking powder\n30 g lemon juice",
        "Gingerbread\n310 g flour\n11 g baking powder\n110 g butter\n50 g egg\n330 g molasses\n170 g water",
    ];
    for text in faulty {
        let inputs = Inputs::of_text(text);
        let before = worksheet(&inputs, &Settings::default());
        let leavening = |sheet: &Worksheet| {
            sheet
                .findings
                .iter()
                // "Bake at once" comes with soda in powder's place, and is no fault.
                .filter(|finding| {
                    finding.name != "gas_early"
                        && ["soda_", "gas_", "crumb_", "powder_", "no_leavening"]
                            .iter()
                            .any(|start| finding.name.starts_with(start))
                })
                .map(|finding| finding.name)
                .collect::<Vec<_>>()
        };
        let mended: Vec<_> = before
            .findings
            .iter()
            .filter(|finding| !finding.remedies.is_empty())
            .collect();
        assert!(
            !mended.is_empty(),
            "nothing to mend in {text}: {:?}",
            before.leavening.verdict
        );
        for finding in mended {
            for remedy in &finding.remedies {
                let after = worksheet(&inputs.with_remedy(remedy), &Settings::default());
                let left = leavening(&after);
                assert!(
                    !left
                        .iter()
                        .any(|name| *name == finding.name || !leavening(&before).contains(name)),
                    "{} after \"{}\": {left:?}, {}",
                    finding.name,
                    remedy.label,
                    after.leavening.verdict.sentence
                );
            }
        }
    }
}

/// The table holds what the laws above walk over.
#[test]
fn every_ingredient_has_a_bowl_of_its_own() {
    for ingredient in all() {
        let text = format!("100 g flour\n100 g water\n50 g {}", ingredient.name);
        holds_together(&text, &sheet(&text));
    }
}
