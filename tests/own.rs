//! A baker's own ingredients and taught words, from the record to the worksheet; countries and pages on the way in.

use batterwright::baking::ingredient::own::{Meaning, OwnEntry, OwnRecord, OwnWord, Weighing};
use batterwright::baking::ingredient::{Own, Region};
use batterwright::baking::recipe::plain_line;
use batterwright::baking::worksheet::{
    Inputs, Looks, Settings, SheetLine, Status, Worksheet, swap_offers, worksheet, worksheet_again,
};

fn sheet(text: &str, record: &OwnRecord) -> Worksheet {
    worksheet_again(
        &mut Looks::default(),
        &Inputs::of_text(text),
        &Settings::default(),
        &Own::of(record),
    )
}

#[track_caller]
fn line(sheet: &Worksheet, number: usize) -> &SheetLine {
    sheet
        .lines
        .iter()
        .find(|line| line.line == number)
        .unwrap_or_else(|| panic!("no line {number}"))
}

/// An invented block of fat: 75 % fat, weighed three times by the cup.
fn hazel_block() -> OwnRecord {
    let mut weighing = Weighing::default();
    for (field, grams) in weighing.figures.iter_mut().zip(["210", "214", "218"]) {
        *field = grams.to_owned();
    }
    let mut entry = OwnEntry {
        name: "Hazel block".into(),
        also_called: "nut block, hazelnut spread block".into(),
        weighings: vec![weighing],
        plant_based: Some(true),
        ..OwnEntry::default()
    };
    entry.label.fat = "75".into();
    let mut record = OwnRecord::default();
    record.add(entry);
    record
}

#[test]
fn an_own_ingredient_is_read_weighed_and_counted_like_any_other() {
    let record = hazel_block();
    let sheet = sheet(
        "Ingredients\n200 g flour\n100 g nut block, softened\n1 cup hazel block",
        &record,
    );
    let stated = line(&sheet, 3);
    assert_eq!(
        (stated.name, stated.status, stated.flagged),
        (Some("Hazel block"), Status::Weighed, false)
    );
    // By hand: the mean of 210, 214 and 218 is 214; the cup is the US one.
    let cup = line(&sheet, 4);
    assert_eq!(cup.grams_shown.as_deref(), Some("214 g"));
    // Student's t for 2 degrees of freedom at 95 % is 2.920; s = 4; 2.92 * 4 * sqrt(4/3) = 13.5.
    assert_eq!(cup.range_shown.as_deref(), Some("201 to 227 g"));
    let fat = sheet
        .balance
        .totals
        .iter()
        .find(|total| total.name == "Fat");
    // 75 % of 314 g, and the flour's own 1 % of 200 g.
    let grams = fat.map_or(0.0, |fat| fat.grams.mean);
    assert!(
        (grams - (0.75 * 314.0 + 0.0098 * 200.0)).abs() < 0.5,
        "{grams}"
    );
}

#[test]
fn an_own_name_goes_before_the_tables() {
    let mut record = hazel_block();
    record.entries[0].also_called = "butter".into();
    let sheet = sheet("Ingredients\n100 g butter\n100 g salted butter", &record);
    assert_eq!(line(&sheet, 2).name, Some("Hazel block"));
    assert_ne!(line(&sheet, 3).name, Some("Hazel block"));
}

#[test]
fn taught_words_hold_in_every_recipe_and_say_so() {
    let record = OwnRecord {
        words: vec![
            OwnWord {
                words: "sunny block".into(),
                key: Some("margarine".into()),
                amount: None,
            },
            OwnWord {
                words: "1 paper collar".into(),
                key: None,
                amount: None,
            },
            OwnWord {
                words: "gone thing".into(),
                key: Some("no_such_key".into()),
                amount: None,
            },
        ],
        ..OwnRecord::default()
    };
    let text = "Ingredients\n80 g Sunny Block (cold)\n1 paper collar\n5 g gone thing\n100 g butter";
    let taught = sheet(text, &record);
    let block = line(&taught, 2);
    assert_eq!((block.ingredient, block.taught), (Some("margarine"), true));
    assert_eq!(line(&taught, 3).status, Status::Note);
    // A meaning whose ingredient is gone leaves the words to the tables, which do not know them.
    assert_eq!(line(&taught, 4).ingredient, None);
    assert!(!line(&taught, 5).taught);
    let before = sheet(text, &OwnRecord::default());
    assert_eq!(line(&before, 2).ingredient, None);
    // An amount is remembered for the very same line.
    let mut record = OwnRecord::default();
    record.teach(
        &plain_line("- 2 frobs sugar"),
        Meaning::Amount("2 cups".into()),
    );
    let taught = sheet("Ingredients\n2 frobs sugar\n3 frobs sugar", &record);
    assert_eq!(line(&taught, 2).grams_shown.as_deref(), Some("396 g"));
    assert!(line(&taught, 2).taught && !line(&taught, 3).taught);
}

#[test]
fn the_words_tell_whose_cups_they_are() {
    let milk = |text: &str| {
        let sheet = worksheet(&Inputs::of_text(text), &Settings::default());
        (sheet.country.region, line(&sheet, 2).grams_shown.clone())
    };
    // A US cup of whole milk is 244 g (SR28); 250 mL are 257.8 g by its density.
    let (region, grams) = milk(
        "Ingredients\n1 cup milk\n200 g caster sugar\n250 g self-raising flour\n1 tsp bicarb soda\n50 g sultanas",
    );
    assert_ne!(region, Region::Us);
    assert_eq!(grams.as_deref(), Some("258 g"));
    let (region, grams) = milk("Ingredients\n1 cup milk\n2 cups all-purpose flour");
    assert_eq!((region, grams.as_deref()), (Region::Us, Some("244 g")));
    // What the baker says goes before the words.
    let mut inputs = Inputs::of_text("Ingredients\n1 cup milk\n2 cups all-purpose flour");
    inputs.choices.region = Some(Region::Au);
    let sheet = worksheet(&inputs, &Settings::default());
    assert_eq!(line(&sheet, 2).grams_shown.as_deref(), Some("258 g"));
    assert!(sheet.country.chosen);
}

#[test]
fn cornflour_is_a_starch_or_a_meal_by_country() {
    let key = |text: &str| {
        let sheet = worksheet(&Inputs::of_text(text), &Settings::default());
        line(&sheet, 2).ingredient
    };
    assert_eq!(
        key("Ingredients\n2 tbsp cornflour\n100 g caster sugar\n1 tsp bicarbonate of soda"),
        Some("corn_starch")
    );
    assert_eq!(
        key("Ingredients\n1 cup corn flour\n2 cups all-purpose flour\n1 stick butter"),
        Some("corn_flour")
    );
}

#[test]
fn a_page_is_read_and_mended_like_the_text_in_it() {
    let page = r#"<html><script type="application/ld+json">{"@type":"Recipe","name":"Ferry buns",
        "recipeIngredient":["200 g flour","1 cup milk"],"recipeInstructions":"Bake."}</script></html>"#;
    let mut inputs = Inputs::of_text(page);
    let first = worksheet(&inputs, &Settings::default());
    assert_eq!(first.title.as_deref(), Some("Ferry buns"));
    assert!(first.taken_from.is_some());
    let flour = first
        .lines
        .iter()
        .find(|line| line.ingredient == Some("plain_flour"));
    let number = flour.map_or(0, |line| line.line);
    inputs.weigh((number, 0), Some(222.0));
    let second = worksheet(&inputs, &Settings::default());
    assert_eq!(line(&second, number).grams_shown.as_deref(), Some("222 g"));
}

/// A block of fat stands first where butter goes, and behind the swaps of the trade where milk does; what is not in the house
/// stands last.
#[test]
fn own_ingredients_of_the_same_kind_are_offered_first() {
    let own = Own::of(&hazel_block());
    let mut inputs = Inputs::of_text("Cake\n200 g flour\n100 g butter\n120 g whole milk");
    let offers = |inputs: &Inputs, line: usize| -> Vec<String> {
        let offers = swap_offers(inputs, &Settings::default(), &own, (line, 0));
        offers.into_iter().map(|offer| offer.name).collect()
    };
    assert_eq!(offers(&inputs, 3)[0], "Hazel block");
    let for_milk = offers(&inputs, 4);
    assert_ne!(for_milk[0], "Hazel block");
    assert_eq!(for_milk.last().map(String::as_str), Some("Hazel block"));
    let first = swap_offers(&inputs, &Settings::default(), &own, (4, 0)).swap_remove(0);
    inputs.choices.swaps.missing.push(first.to);
    assert_eq!(offers(&inputs, 4).last(), Some(&first.name));
}
