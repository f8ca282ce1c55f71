//! Formulas of textbooks and the trade against the ranges and rules of their kinds: each is recognised where it can be
//! told, and each of its figures lies within. Written from baker's percentages on 100 g of flour.

use batterwright::baking::balance::Kind;
use batterwright::baking::finding::{Finding, Severity};
use batterwright::baking::worksheet::{Choices, Inputs, Settings, Worksheet, worksheet};

fn sheet(text: &str) -> Worksheet {
    worksheet(&Inputs::of_text(text), &Settings::default())
}

fn sheet_as(kind: Kind, text: &str) -> Worksheet {
    let inputs = Inputs {
        choices: Choices {
            kind: Some(kind),
            ..Choices::default()
        },
        ..Inputs::of_text(text)
    };
    worksheet(&inputs, &Settings::default())
}

/// What is said of balance.
fn on_balance(sheet: &Worksheet) -> Vec<&Finding> {
    let is_on_balance = |name: &str| name.ends_with("_beyond") || name == "balance_rule";
    sheet
        .findings
        .iter()
        .filter(|finding| is_on_balance(finding.name))
        .collect()
}

const POUND: &str = "100 g cake flour\n100 g sugar\n100 g butter\n100 g eggs\n1 g salt";
const HIGH_RATIO_WHITE: &str = "100 g cake flour\n125 g sugar\n50 g shortening\n67 g egg whites\n100 g skim milk\n6.25 g baking powder\n2 g salt";
const GENOISE: &str = "100 g cake flour\n100 g sugar\n33 g butter\n150 g eggs";
const ANGEL: &str =
    "100 g cake flour\n267 g sugar\n267 g egg whites\n1.5 g salt\n3 g cream of tartar";

/// Typical formulas: Gisslen's where the books of the trade are named beside the range, else common practice.
#[test]
fn typical_formulas_are_recognised_and_lie_within_the_ranges_of_their_kind() {
    for (kind, text) in [
        ("pound cakes", POUND),
        (
            "equal-weight creamed cakes",
            "100 g self-raising flour\n100 g sugar\n100 g butter\n100 g eggs\n5 g milk\n0.5 g salt",
        ),
        (
            "creamed and yellow layer cakes",
            "100 g cake flour\n100 g sugar\n50 g butter\n55 g eggs\n65 g milk\n4.5 g baking powder\n1.5 g salt",
        ),
        ("high-ratio white layer cakes", HIGH_RATIO_WHITE),
        (
            "high-ratio yellow layer cakes",
            "100 g cake flour\n125 g sugar\n45 g shortening\n67 g eggs\n100 g skim milk\n6.25 g baking powder\n2 g salt",
        ),
        // AACC 10-90: dried white and dried milk with their water.
        (
            "high-ratio white layer cakes",
            "100 g cake flour\n140 g sugar\n50 g shortening\n9 g dried egg white\n12 g skimmed milk powder\n135 g water\n5.5 g baking powder\n3 g salt",
        ),
        (
            "devil's food",
            "Devil's food\n\n100 g cake flour\n133 g sugar\n58 g shortening\n67 g eggs\n117 g skim milk\n17 g natural cocoa powder\n3 g baking powder\n2 g baking soda\n2 g salt",
        ),
        (
            "sponges",
            "Milk and butter sponge\n\n100 g cake flour\n125 g sugar\n25 g butter\n75 g eggs\n25 g egg yolks\n50 g skim milk\n3 g baking powder\n1.5 g salt",
        ),
        // Jelly roll.
        (
            "sponges",
            "100 g cake flour\n100 g sugar\n14 g corn syrup\n90 g eggs\n20 g egg yolks\n40 g water\n1.5 g baking powder\n2 g salt",
        ),
        ("genoises", GENOISE),
        (
            "chiffon cakes",
            "100 g cake flour\n130 g sugar\n50 g vegetable oil\n50 g egg yolks\n100 g egg whites\n75 g water\n5 g baking powder\n2.5 g salt\n0.5 g cream of tartar",
        ),
        ("angel food cakes", ANGEL),
        (
            "muffins",
            "Muffins\n\n100 g plain flour\n50 g sugar\n40 g butter\n30 g eggs\n70 g milk\n6 g baking powder\n1.25 g salt",
        ),
        (
            "muffins",
            "Cake-like muffins\n\n100 g plain flour\n75 g sugar\n50 g butter\n45 g eggs\n55 g milk\n4 g baking powder\n1.25 g salt",
        ),
        (
            "banana and fruit-puree breads",
            "100 g plain flour\n60 g sugar\n35 g vegetable oil\n40 g eggs\n100 g mashed banana\n25 g walnuts\n4 g baking powder\n0.8 g baking soda\n1.25 g salt",
        ),
        (
            "brownies",
            "100 g plain flour\n270 g sugar\n160 g butter\n140 g eggs\n35 g cocoa powder\n2 g salt",
        ),
        (
            "brownies",
            "100 g plain flour\n170 g sugar\n80 g butter\n80 g eggs\n20 g milk\n25 g cocoa powder\n1.5 g baking powder\n1.5 g salt",
        ),
        (
            "pumpkin and carrot cakes",
            "100 g plain flour\n140 g sugar\n90 g vegetable oil\n100 g eggs\n115 g grated carrot\n2 g baking powder\n1.4 g baking soda\n1.5 g salt",
        ),
        (
            "dark chocolate cakes with soda",
            "100 g plain flour\n165 g sugar\n50 g vegetable oil\n45 g eggs\n95 g water\n95 g milk\n35 g natural cocoa powder\n2 g baking powder\n3 g baking soda\n2 g salt",
        ),
        // The same oil cake without egg and milk, plain and with cocoa.
        (
            "plant-based oil cakes",
            "100 g plain flour\n105 g sugar\n39 g vegetable oil\n126 g water\n8 g vinegar\n2.5 g baking soda\n1.6 g salt",
        ),
        (
            "dark chocolate cakes with soda",
            "100 g plain flour\n105 g sugar\n39 g vegetable oil\n126 g water\n8 g vinegar\n11 g natural cocoa powder\n2.5 g baking soda\n1.6 g salt",
        ),
        (
            "gluten-free cakes",
            "65 g rice flour\n35 g potato starch\n0.5 g xanthan gum\n100 g sugar\n50 g butter\n80 g eggs\n80 g milk\n5.5 g baking powder\n1.5 g salt",
        ),
        (
            "rich fruit cakes",
            "100 g plain flour\n100 g sugar\n100 g butter\n110 g eggs\n10 g water\n300 g raisins\n0.5 g baking powder\n1 g salt",
        ),
    ] {
        let found = sheet(text);
        let ranges = &found.balance.ranges;
        assert!(
            ranges.kind.contains(kind),
            "{kind}: {}\n{text}",
            ranges.kind
        );
        assert!(ranges.rows.len() >= 4, "{text}: {:?}", ranges.rows);
        for row in &ranges.rows {
            // Dried fruit brings water that the ranges of rich fruit cakes leave out.
            let dried_fruit = kind == "rich fruit cakes" && row.name == "All water";
            assert!(
                row.stands.starts_with("within") || dried_fruit,
                "{kind}: {} {}, {}",
                row.name,
                row.shown,
                row.stands
            );
        }
        for rule in &ranges.rules {
            assert!(rule.contains(": kept."), "{kind}: {rule}");
        }
        let said = on_balance(&found);
        assert!(said.is_empty(), "{kind}: {said:?}");
    }
}

/// 12.5 g in cake flour, 26.2 in yolk, 87.6 in white and 75 of water: 201.3 g; cake flour of SR28 holds 12.51 %.
#[test]
fn all_water_of_a_chiffon_cake() {
    let found = sheet(
        "100 g cake flour\n130 g sugar\n50 g vegetable oil\n50 g egg yolks\n100 g egg whites\n75 g water\n5 g baking powder",
    );
    let rows = &found.balance.ranges.rows;
    let water = rows.iter().find(|row| row.name == "All water");
    let water = water.expect("a row of water").percent.mean;
    assert!((water - 201.3).abs() < 0.5, "{water}");
}

/// White cake 125/50/67/100: egg 67 to fat 50 is 134 %, egg and milk 167 to sugar 125 is 134 %, flour and egg 167 to
/// sugar and fat 175 is 95 %. Equal weights are 100 % throughout. Genoise: 150 %. Angel food: 100 % and 37 to 38 %.
#[test]
fn rules_of_balance_by_hand() {
    for (text, ratios) in [
        (
            HIGH_RATIO_WHITE,
            &[
                ("Sugar to flour", "125 %"),
                ("Egg to fat", "134 %"),
                ("Egg and liquid to sugar", "134 %"),
                ("Flour and egg to sugar and fat", "95 %"),
            ][..],
        ),
        (
            POUND,
            &[
                ("Sugar to flour", "100 %"),
                ("Egg to fat", "100 %"),
                ("Egg and liquid to sugar", "100 %"),
                ("Flour and egg to sugar and fat", "100 %"),
            ],
        ),
        (GENOISE, &[("Egg to sugar", "150 %")]),
        (
            ANGEL,
            &[("Egg white to sugar", "100 %"), ("Flour to sugar", "37 %")],
        ),
    ] {
        let rules = sheet(text).balance.ranges.rules;
        assert_eq!(rules.len(), ratios.len(), "{rules:?}");
        for (rule, (words, percent)) in rules.iter().zip(ratios) {
            assert!(
                rule.starts_with(&format!("{words}: {percent}, where ")),
                "{words} {percent}: {rule}"
            );
        }
    }
}

/// Whole egg has 9.51 % of fat and yolk 26.54 %: 35.8 g of yolk and 64.2 of white in 100 g. Firm: flour 100 and white
/// 64.2; tender: sugar 100, the fat of butter 81.1, yolk 35.8. Dry: flour 100; moist: 76.2 in egg, 17.9 in butter.
#[test]
fn what_pulls_a_pound_cake() {
    let pull = sheet(POUND).balance.pull;
    let [firm, dry] = pull.as_slice() else {
        panic!("{pull:?}");
    };
    assert!((firm.left_share - 164.2 / 381.1).abs() < 0.001, "{firm:?}");
    assert!((dry.left_share - 100.0 / 194.1).abs() < 0.001, "{dry:?}");
    assert_eq!(
        firm.words[0],
        "Tougheners are 43 % of both, 164 % of the flour: flour 100 %, egg white 64 %."
    );
    assert_eq!(
        firm.words[1],
        "Tenderisers are 57 % of both, 217 % of the flour: sugar 100 %, fat 81 %, yolk 36 %."
    );
}

/// Every kind can be chosen but the one that means that nothing tells, each once and by words of its own.
#[test]
fn every_kind_can_be_said() {
    let mut words: Vec<&str> = Kind::ALL.map(Kind::words).to_vec();
    words.push(Kind::Plain.words());
    words.sort_unstable();
    words.dedup();
    assert_eq!(words.len(), Kind::ALL.len() + 1);
    for kind in Kind::ALL {
        let rule = sheet_as(kind, POUND).leavening.rule.expect("a rule").words;
        assert!(
            rule.contains(&format!("The band for {} runs", kind.words())),
            "{rule}"
        );
    }
}

/// The baker's word goes before formula and title: bands, ranges and limits follow it.
#[test]
fn a_kind_that_is_said_holds() {
    let layer = "Yellow layer cake\n\n100 g cake flour\n100 g sugar\n50 g butter\n55 g eggs\n65 g milk\n4.5 g baking powder";
    let (told, said) = (sheet(layer), sheet_as(Kind::Pound, layer));
    assert!(on_balance(&told).is_empty());
    let rule = |sheet: &Worksheet| sheet.leavening.rule.as_ref().expect("a rule").words.clone();
    assert!(rule(&told).contains("creamed and yellow layer cakes"));
    assert!(rule(&said).contains("pound cakes") && rule(&said).contains("as you said"));
    assert!(said.balance.ranges.kind.contains("pound cakes"));
    // Half the butter and half the egg of a pound cake, and sure of it.
    let names: Vec<_> = on_balance(&said)
        .iter()
        .map(|finding| (finding.name, finding.severity))
        .collect();
    assert!(names.contains(&("fat_beyond", Severity::Look)), "{names:?}");
    assert!(names.contains(&("egg_beyond", Severity::Look)), "{names:?}");
}

/// A flavour has no formulas of its own: the citrus cake is laid against the creamed cake that carries it, and not judged.
#[test]
fn a_flavour_is_laid_against_what_carries_it() {
    let found = sheet(
        "250 g plain flour\n400 g sugar\n125 g butter\n140 g eggs\n60 g lemon juice\n60 g milk\n8 g baking powder",
    );
    let kind = &found.balance.ranges.kind;
    assert!(
        kind.contains("citrus and juice cakes") && kind.contains("high-ratio yellow layer cakes"),
        "{kind}"
    );
    assert!(on_balance(&found).is_empty());
    let cookie = sheet(
        "Cookies\n\n250 g plain flour\n200 g sugar\n150 g butter\n50 g eggs\n3 g baking soda",
    );
    let ranges = cookie.balance.ranges;
    assert!(
        ranges.kind.contains("No ranges are known"),
        "{}",
        ranges.kind
    );
    assert!(ranges.rows.iter().all(|row| row.range.is_none()) && ranges.rules.is_empty());
}

/// Flours without gluten are a blend with their starch, and the blend is the 100; a starch beside wheat is not flour.
#[test]
fn starch_is_flour_in_a_blend_without_gluten() {
    let flour = |text: &str| sheet(text).balance.flour.expect("flour").mean;
    assert_eq!(
        flour("150 g rice flour\n100 g potato starch\n5 g xanthan gum"),
        250.0
    );
    assert_eq!(flour("150 g plain flour\n100 g corn starch"), 150.0);
}

/// Without flour, or without anything, there is nothing to compare and nothing breaks.
#[test]
fn nothing_to_compare() {
    for text in [
        "",
        "100 g sugar",
        "100 g ground almonds\n100 g sugar\n2 eggs",
    ] {
        let found = sheet(text);
        assert!(on_balance(&found).is_empty(), "{text}");
        assert!(found.balance.ranges.rules.is_empty(), "{text}");
    }
    assert!(sheet("").balance.pull.is_empty());
    // A line without a weight may be the fat that seems to be missing.
    let gap = sheet_as(
        Kind::Pound,
        "100 g plain flour\n100 g sugar\nbutter\n100 g eggs",
    );
    assert!(on_balance(&gap).is_empty());
}
