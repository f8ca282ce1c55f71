//! Whatever is pasted, damaged as it may be, is read to an end: every line is kept, every figure is a number.
//! `make fuzz` throws a hundred thousand of each at it.

#[path = "laws/chance.rs"]
mod chance;
#[path = "laws/real.rs"]
mod real;

use batterwright::baking::carry::{self, Here, Taken, WhenBoth, link, merge, preview};
use batterwright::baking::demo::DEMOS;
use batterwright::baking::formula::{Habits, weigh};
use batterwright::baking::ingredient::own::{Meaning, OwnRecord};
use batterwright::baking::ingredient::{Larder, Own, PieceSize, Region, all};
use batterwright::baking::recipe::linked::text_of;
use batterwright::baking::recipe::{Reading, Recipe, Role, guess, read};
use batterwright::baking::saved::{self, BinRecord, KeptRecipe};
use batterwright::baking::trial::{Trial, changes, trial_sheet};
use batterwright::baking::worksheet::{Inputs, Settings};
use chance::{damaged_lines, damaged_one};
use proptest::prelude::*;
use real::real_lines;

/// Pages and linked data as they are pasted.
fn pages() -> Vec<String> {
    files("tests/pages")
}

/// Records as they are kept.
fn records() -> Vec<String> {
    files("tests/saved")
}

/// Everything that is kept, as one file, and with nothing in it.
fn everything() -> Vec<String> {
    let first = include_str!("carry/everything-1.json").to_owned();
    let small = include_str!("carry/everything-2.json").to_owned();
    let empty = carry::write(&Default::default()).expect("nothing is within the limits");
    vec![first, small, empty]
}

/// The demos as links, one of them with corrections.
fn links() -> Vec<String> {
    let inputs = DEMOS.iter().map(|demo| {
        let mut inputs = Inputs::of_text(demo.text);
        inputs.weigh((5, 0), Some(240.5));
        inputs
    });
    inputs
        .map(|inputs| link::write(&inputs).expect("a short recipe").text)
        .collect()
}

/// The files of a folder.
fn files(folder: &str) -> Vec<String> {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    let mut paths: Vec<_> = std::fs::read_dir(folder)
        .expect("a folder of the tests")
        .map(|entry| entry.expect("an entry of that folder").path())
        .collect();
    // The order decides what a seed stands for.
    paths.sort();
    paths
        .iter()
        .map(|path| std::fs::read_to_string(path).expect("a file of text"))
        .collect()
}

/// Pieces of pages, put together by chance.
const MARKUP: &[&str] = &[
    "<!doctype html>",
    "<html>",
    "<head>",
    "<body>",
    "<script type=\"application/ld+json\">",
    "</script>",
    "<p>",
    "</p>",
    "<li>",
    "<ul>",
    "<li itemprop=recipeIngredient>",
    "<div itemscope itemtype=\"https://schema.org/Recipe\">",
    "<h1 itemprop=\"name\">",
    "</div>",
    "<br>",
    "<table>",
    "<tr>",
    "<td>",
    "<style>",
    "<nav>",
    "<!--",
    "-->",
    "<",
    ">",
    "{",
    "}",
    "[",
    "]",
    ":",
    ",",
    "\"@type\":\"Recipe\"",
    "\"recipeIngredient\":[",
    "\"2 cups flour\"",
    "\"name\":\"Cake\"",
    "\"@graph\":[",
    "\"recipeInstructions\":",
    "\"text\":\"Mix.\"",
    "null",
    "true",
    "1e400",
    "-0.5",
    "\"\\u00bd\"",
    "\"\\ud83e\"",
    "&frac12;",
    "&#xd800;",
    "2 cups flour",
    "1 egg",
    "PT1H30M",
    "\"totalTime\":\"P1DT\"",
    "\n",
    " ",
    "é",
];

/// What a baker may call something.
fn words() -> impl Strategy<Value = String> {
    prop_oneof![damaged_one(real_lines()), any::<String>()]
}

/// The country of a number.
fn region(at: usize) -> Region {
    Region::ALL[at % Region::ALL.len()]
}

/// Every line is kept as pasted, no amount is beyond use, every weight is a number.
fn holds_together(text: &str, recipe: &Recipe, region: Region) -> Result<(), TestCaseError> {
    let kept: Vec<&str> = recipe.lines.iter().map(|line| line.text.as_str()).collect();
    prop_assert_eq!(kept, text.lines().collect::<Vec<_>>());
    for line in &recipe.lines {
        let Role::Ingredient(reading) = &line.role else {
            continue;
        };
        let every = reading.all().flat_map(|part: &Reading| part.amounts.iter());
        for amount in every {
            prop_assert!(
                amount.low.is_finite() && amount.high.is_finite(),
                "{amount:?} in {text:?}"
            );
            prop_assert!(
                0.0 <= amount.low && amount.low <= amount.high,
                "{amount:?} in {text:?}"
            );
        }
    }
    let habits = Habits {
        region,
        filling: None,
        eggs: PieceSize::Large,
    };
    for line in weigh(recipe, &habits).lines {
        let grams = [line.grams.low, line.grams.mean, line.grams.high].map(|mass| mass.to_grams());
        prop_assert!(
            grams.iter().all(|grams| grams.is_finite() && *grams >= 0.0),
            "{grams:?} in {text:?}"
        );
        prop_assert!(grams.is_sorted(), "{grams:?} in {text:?}");
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(600) })]

    #[test]
    fn damaged_lines_are_read(text in damaged_lines(), place in 0..Region::ALL.len(), headed in any::<bool>()) {
        let text = if headed { format!("Ingredients\n{text}") } else { text };
        let region = region(place);
        holds_together(&text, &read(&text, Larder::of(region), &[]), region)?;
    }

    #[test]
    fn any_text_is_read(text in any::<String>(), place in 0..Region::ALL.len()) {
        let region = region(place);
        holds_together(&text, &read(&text, Larder::of(region), &[]), region)?;
    }

    #[test]
    fn damaged_pages_give_a_text(page in damaged_one(pages())) {
        if let Some(found) = text_of(&page) {
            prop_assert!(!found.text.trim().is_empty() && found.said.ends_with('.'), "{page:?}");
            let region = guess(&found.text, Region::Us).region;
            holds_together(&found.text, &read(&found.text, Larder::of(region), &[]), region)?;
        }
    }

    #[test]
    fn any_heap_of_markup_gives_a_text(pieces in prop::collection::vec(prop::sample::select(MARKUP), 0..40)) {
        if let Some(found) = text_of(&pieces.concat()) {
            prop_assert!(found.said.ends_with('.'), "{pieces:?}");
            holds_together(&found.text, &read(&found.text, Larder::of(Region::Uk), &[]), Region::Uk)?;
        }
    }

    /// The strongest signs are at most three, and each stands on a line that is there.
    #[test]
    fn a_country_is_guessed_for_any_text(text in prop_oneof![damaged_lines(), any::<String>()], place in 0..Region::ALL.len()) {
        let lines = text.lines().count();
        let guess = guess(&text, region(place));
        prop_assert!(guess.because.len() <= 3, "{guess:?}");
        prop_assert!(guess.because.iter().all(|(line, words)| (1..=lines).contains(line) && !words.is_empty()), "{guess:?} of {text:?}");
    }

    /// A kept record that was damaged is loaded or refused with a reason.
    #[test]
    fn a_damaged_record_is_refused_with_a_reason(record in damaged_one(records())) {
        let troubles = [
            saved::from_text::<KeptRecipe>(&record).err(),
            saved::from_text::<Settings>(&record).err(),
            saved::from_text::<OwnRecord>(&record).err(),
            saved::from_text::<BinRecord>(&record).err(),
            saved::from_text::<Trial>(&record).err(),
        ];
        prop_assert!(troubles.iter().flatten().all(|trouble| !trouble.to_string().is_empty()), "{record}");
    }

    /// A bake that was damaged is refused with a reason, or read: then it is written and read again as it is, and all that
    /// is shown of it is a figure.
    #[test]
    fn a_damaged_bake_is_refused_or_shown(record in damaged_one(vec![include_str!("saved/trial-1.json").to_owned()])) {
        match saved::from_text::<Trial>(&record) {
            Err(trouble) => prop_assert!(!trouble.to_string().is_empty(), "{record}"),
            Ok(trial) => {
                let text = saved::to_text(&trial).expect("it was read");
                prop_assert_eq!(saved::from_text::<Trial>(&text), Ok(trial.clone()));
                let sheet = trial_sheet("1", &trial, &trial.plan, &Settings::default(), &Own::default());
                let whole = include_str!("saved/trial-1.json");
                let whole: Trial = saved::from_text(whole).expect("the record before the damage");
                let shown = format!("{:?} {:?} {:?}", sheet, changes(&whole, &trial), changes(&trial, &whole));
                prop_assert!(!shown.contains("NaN") && !shown.contains(": inf"), "{record}\n{shown}");
            }
        }
    }

    /// A file that was damaged is refused whole with a sentence, or comes in, and then again brings nothing new.
    #[test]
    fn a_damaged_file_is_refused_or_comes_in_whole(file in prop_oneof![damaged_one(everything()), damaged_one(records()), any::<String>()], choice in 0..3_usize) {
        match carry::read(&file) {
            Err(said) => prop_assert!(said.starts_with("This file cannot be brought in: ") && said.ends_with('.'), "{said}"),
            Ok(mut found) => {
                // In the order in which they are written.
                found.recipes.sort_by(|one, other| one.id.cmp(&other.id));
                found.trials.sort_by(|one, other| (&one.recipe, one.id).cmp(&(&other.recipe, other.id)));
                let taken = Taken { all: WhenBoth::ALL[choice], settings: true, larder: true, ..Taken::default() };
                let here = Here::default();
                let writes = merge(&found, &here, &taken, || unreachable!("no name is taken"));
                prop_assert_eq!(writes.recipes.len(), found.recipes.len());
                prop_assert_eq!(writes.trials.len(), found.trials.len());
                prop_assert_eq!(preview(&found, &here).rows.len(), found.recipes.len());
                prop_assert_eq!(carry::write(&found).map(|file| carry::read(&file)), Ok(Ok(found)));
            }
        }
    }

    /// A link that was damaged opens as the recipe that it was made of, or says in a sentence why it does not.
    #[test]
    fn a_damaged_link_opens_no_other_recipe(link in prop_oneof![damaged_one(links()), "a[A-Za-z0-9_-]{0,40}", any::<String>()]) {
        match link::read(&link) {
            Err(said) => prop_assert!(said.starts_with("This link cannot be opened: ") && said.ends_with('.'), "{said}"),
            Ok(found) => {
                let known = DEMOS.iter().any(|demo| demo.text == found.text);
                prop_assert!(known, "{link} opens as {found:?}");
            }
        }
    }

    /// Taught words and amounts, whatever they are: lines are read with them. `laws.rs` has any packet.
    #[test]
    fn any_larder_of_ones_own_is_read_with(
        named in prop::collection::vec((words(), 0..all().len()), 1..4),
        taught in prop::collection::vec((words(), prop::option::of(0..all().len())), 0..4),
        text in damaged_lines(),
    ) {
        let mut record = OwnRecord::default();
        for (words, at) in &named {
            record.teach(words, Meaning::Ingredient(all()[*at].key.to_owned()));
        }
        for (words, at) in &taught {
            record.teach(words, match at {
                Some(at) if at % 2 == 0 => Meaning::Ingredient(all()[*at].key.to_owned()),
                Some(_) => Meaning::Amount(words.clone()),
                None => Meaning::NoIngredient,
            });
        }
        let own = Own::of(&record);
        let text = format!("{text}\n2 cups {}", named[0].0.lines().next().unwrap_or_default());
        holds_together(&text, &read(&text, Larder { region: Region::Us, own: &own }, &[]), Region::Us)?;
    }
}
