//! A recipe as text and as linked data: our own reader reads both back alike.

use super::some::any_inputs;
use batterwright::baking::carry::{as_text, linked_data};
use batterwright::baking::demo::DEMOS;
use batterwright::baking::ingredient::{Larder, Region};
use batterwright::baking::recipe::linked::text_of;
use batterwright::baking::worksheet::{Inputs, Settings, Status, Worksheet, worksheet};
use proptest::prelude::*;
use serde_json::Value;

fn us() -> Settings {
    Settings {
        region: Region::Us,
        ..Settings::default()
    }
}

fn text(inputs: &Inputs, settings: &Settings) -> String {
    as_text(inputs, settings, Larder::of(settings.region).own)
}

fn linked(inputs: &Inputs, settings: &Settings) -> String {
    linked_data(inputs, settings, Larder::of(settings.region).own)
}

/// The demos, and the recipes of `tests/verdicts` with the country that each is in.
fn recipes() -> Vec<(String, Inputs, Settings)> {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/verdicts");
    let mut paths: Vec<_> = std::fs::read_dir(folder)
        .expect("a folder of the tests")
        .map(|entry| entry.expect("an entry of that folder").path())
        .collect();
    paths.sort();
    let mut recipes: Vec<_> = DEMOS
        .iter()
        .map(|demo| (demo.title.to_owned(), Inputs::of_text(demo.text), us()))
        .collect();
    for path in paths {
        let file = std::fs::read_to_string(&path).expect("a file of text");
        let (head, body): (Vec<&str>, Vec<&str>) =
            file.lines().partition(|line| line.starts_with("# "));
        let country = head
            .iter()
            .find_map(|line| line.strip_prefix("# country: "));
        let region = match country {
            Some("uk") => Region::Uk,
            _ => Region::Us,
        };
        let settings = Settings { region, ..us() };
        recipes.push((
            path.display().to_string(),
            Inputs::of_text(body.join("\n")),
            settings,
        ));
    }
    recipes
}

/// What is to come back: title, ingredients with their grams and places, oven, time, pan.
fn gist(sheet: &Worksheet) -> (Option<String>, Vec<String>, [String; 3]) {
    let lines = sheet
        .lines
        .iter()
        .filter(|line| matches!(line.status, Status::Weighed | Status::NotWeighed));
    let lines = lines.map(|line| {
        format!(
            "{:?} {:?} {:?}",
            line.ingredient, line.grams_shown, line.beside
        )
    });
    let oven = &sheet.oven;
    let rest = [
        format!("{:?}", oven.setting),
        sheet.pans.own.label.clone(),
        format!("{:?}", sheet.balance.servings),
    ];
    (sheet.title.clone(), lines.collect(), rest)
}

fn method(sheet: &Worksheet) -> Vec<&str> {
    let lines = sheet
        .lines
        .iter()
        .filter(|line| line.status == Status::Method);
    lines.map(|line| line.text.trim()).collect()
}

/// By hand: 2 US cups of flour, 250 g in all tables of ours; what is weighed already stays as it is.
#[test]
fn grams_stand_behind_what_is_measured() {
    let inputs = Inputs::of_text(
        "Plum cake\n\nFor the cake\n2 cups all-purpose flour\n200 g sugar\nsalt to taste\n\nMethod\nMix. Bake in a 9-inch round pan at 350°F for 40 minutes.",
    );
    let out = text(&inputs, &us());
    let lines: Vec<&str> = out.lines().collect();
    assert_eq!(lines[..3], ["Plum cake", "", "For the cake"]);
    assert!(
        lines[3].starts_with("2 cups all-purpose flour (") && lines[3].ends_with(" g)"),
        "{out}"
    );
    assert_eq!(lines[4..7], ["200 g sugar", "salt to taste", ""]);
    assert_eq!(
        lines[7..],
        [
            "Method",
            "Mix. Bake in a 9-inch round pan at 350°F for 40 minutes."
        ]
    );
}

/// What the baker said goes into the text: another ingredient, another weight, a pan, an oven.
#[test]
fn corrections_go_into_the_text() {
    let mut inputs = Inputs::of_text("Cake\n2 cups plain block\n3 eggs\n1 cup sugar");
    inputs.name((2, 0), Some("butter".into()));
    inputs.weigh((4, 0), Some(212.5));
    inputs.choices.own_pan = Some(Default::default());
    inputs.choices.oven.setting = "180 C".into();
    let before = worksheet(&inputs, &us());
    let out = text(&inputs, &us());
    let after = worksheet(&Inputs::of_text(out.as_str()), &us());
    assert_eq!(after.lines[1].ingredient, Some("butter"));
    assert_eq!(gist(&before).1, gist(&after).1, "{out}");
    assert!(out.contains("\nPan: 9 in round"), "{out}");
    assert!(out.contains("\nOven: 180 C\n"), "{out}");
}

/// The text and every line of its method come back, and so does all that is weighed, with no correction and no choice.
#[test]
fn every_recipe_comes_back_from_its_text() {
    for (name, inputs, settings) in recipes() {
        let before = worksheet(&inputs, &settings);
        let out = text(&inputs, &settings);
        let after = worksheet(&Inputs::of_text(out.as_str()), &settings);
        assert_eq!(gist(&before), gist(&after), "{name}:\n{out}");
        assert_eq!(method(&before), method(&after), "{name}:\n{out}");
        assert_eq!(
            before.oven.recipe_time, after.oven.recipe_time,
            "{name}:\n{out}"
        );
    }
}

#[test]
fn every_recipe_comes_back_from_its_linked_data() {
    for (name, inputs, settings) in recipes() {
        let before = worksheet(&inputs, &settings);
        let out = linked(&inputs, &settings);
        let page = text_of(&out).expect("linked data");
        assert!(
            page.said.starts_with("Read from linked data"),
            "{name}: {}",
            page.said
        );
        let after = worksheet(&Inputs::of_text(page.text.as_str()), &settings);
        assert_eq!(gist(&before), gist(&after), "{name}:\n{}", page.text);
        for step in method(&before) {
            assert!(page.text.contains(step), "{name}: {step}\n{}", page.text);
        }
    }
}

/// Named by schema.org, with a length of time as ISO 8601 writes it.
#[test]
fn linked_data_has_the_names_of_the_standard() {
    let inputs = Inputs::of_text(
        "Plum cake\nServes 8\n\nIngredients\n200 g flour\n\nFrosting\n100 g icing sugar\n\nMethod\nMix.\nBake at 350°F for 1 hour 30 minutes.",
    );
    let out: Value = serde_json::from_str(&linked(&inputs, &us())).expect("JSON");
    let by_hand = serde_json::json!({
        "@context": "https://schema.org",
        "@type": "Recipe",
        "name": "Plum cake",
        "recipeYield": "8",
        "cookTime": "PT1H30M",
        "recipeIngredient": ["200 g flour", "Frosting:", "100 g icing sugar"],
        "recipeInstructions": [
            {"@type": "HowToStep", "text": "Mix."},
            {"@type": "HowToStep", "text": "Bake at 350°F for 1 hour 30 minutes."},
        ],
    });
    assert_eq!(out, by_hand);
}

/// A page's script ends at the first `</script`, wherever that stands.
#[test]
fn nothing_in_a_recipe_ends_a_script() {
    let inputs = Inputs::of_text(
        "Cake</script><script>alert(1)</script>\n\nIngredients\n200 g flour <!-- </script>\n",
    );
    let out = linked(&inputs, &us());
    assert!(!out.contains('<'), "{out}");
    let value: Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(value["recipeIngredient"][0], "200 g flour <!-- </script>");
}

/// Nearly every line that is weighed by a measure has grams behind it; the rest are lines of several ingredients.
#[test]
fn measures_are_followed_by_grams() {
    let (mut with, mut all) = (0, 0);
    for (_, inputs, settings) in recipes() {
        let out = text(&inputs, &settings);
        let after = worksheet(&Inputs::of_text(out.as_str()), &settings);
        for line in after
            .lines
            .iter()
            .filter(|line| line.status == Status::Weighed)
        {
            all += 1;
            with += usize::from(line.range_shown.is_none());
        }
    }
    println!("{with} of {all} weighed ingredients have their grams in the text");
    assert!(with * 10 > all * 9, "{with} of {all}");
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(64) })]

    /// Whatever is typed: both come out, no line is lost, and the linked data is JSON in which no markup begins.
    #[test]
    fn any_recipe_has_a_text_and_linked_data(inputs in any_inputs()) {
        let out = text(&inputs, &us());
        let written = inputs.recipe_text();
        prop_assert!(out.lines().count() >= written.lines().count());
        let out = linked(&inputs, &us());
        prop_assert!(!out.contains('<') && serde_json::from_str::<Value>(&out).is_ok(), "{out}");
    }
}
