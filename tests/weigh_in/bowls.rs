//! Which bowl each ingredient goes into, against bowls sorted by hand.

use batterwright::baking::demo::DEMOS;
use batterwright::baking::ingredient::{Larder, Region};
use batterwright::baking::recipe::{Bowl, Recipe, Role, bowls, read, step_times};
use proptest::prelude::*;
use std::collections::BTreeMap;
use std::fs;

const SORTED: &str = include_str!("sorted.txt");

/// A recipe, the bowls that were sorted by hand, and the times of its method.
struct Case<'a> {
    name: &'a str,
    text: &'a str,
    bowls: Vec<&'a str>,
    times: Vec<&'a str>,
}

fn cases() -> Vec<Case<'static>> {
    let mut cases = SORTED.split("\n=== ");
    cases.next();
    cases
        .map(|case| {
            let (name, rest) = case.split_once('\n').expect("a name");
            let (text, expected) = rest.split_once("\n---\n").expect("a ---");
            let (bowls, times) = expected.split_once("times\n").unwrap_or((expected, ""));
            let lines = |text: &'static str| text.lines().filter(|line| !line.trim().is_empty());
            Case {
                name,
                text,
                bowls: lines(bowls).collect(),
                times: lines(times).collect(),
            }
        })
        .collect()
}

fn read_plain(text: &str, region: Region) -> Recipe {
    read(text, Larder::of(region), &[])
}

/// A bowl as it is written in the file.
fn written(recipe: &Recipe, bowl: &Bowl) -> String {
    let keys = bowl.portions.iter().map(|portion| {
        let line = &recipe.lines[portion.place.0 - 1];
        let Role::Ingredient(reading) = &line.role else {
            panic!("line {} is no ingredient", line.number)
        };
        let reading = reading.all().nth(portion.place.1).expect("a part");
        let key = reading.ingredient.taken().map_or("?", |known| known.key);
        let again = portion.again.iter().map(|line| format!("+{line}"));
        format!(
            "{key}{}{}",
            if portion.is_named { "" } else { "!" },
            again.collect::<String>()
        )
    });
    let called = match (&bowl.vessel, &bowl.heading) {
        (Some(vessel), _) if vessel != "bowl" => vessel.clone(),
        (_, Some(heading)) if !matches!(heading.as_str(), "Dry" | "Wet" | "Syrup") => {
            heading.to_lowercase()
        }
        _ => String::new(),
    };
    let keys: Vec<String> = keys.collect();
    format!("{called}: {}", keys.join(" "))
}

#[test]
fn bowls_are_filled_as_a_baker_would_fill_them() {
    let mut wrong = Vec::new();
    for case in cases() {
        let recipe = read_plain(case.text, Region::Uk);
        let found: Vec<String> = bowls(&recipe)
            .iter()
            .map(|bowl| written(&recipe, bowl))
            .collect();
        if found != case.bowls {
            wrong.push(format!(
                "{}\n  by hand:\n    {}\n  ours:\n    {}",
                case.name,
                case.bowls.join("\n    "),
                found.join("\n    ")
            ));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_length_of_time_is_found_with_what_it_is_for() {
    for case in cases() {
        let recipe = read_plain(case.text, Region::Uk);
        let found: Vec<String> = step_times(&recipe)
            .iter()
            .map(|time| match time.low == time.high {
                true => format!("{} {}", time.deed, time.low),
                false => format!("{} {} {}", time.deed, time.low, time.high),
            })
            .collect();
        assert_eq!(found, case.times, "{}", case.name);
    }
}

/// Every ingredient that goes into a bowl stands in one of them, once.
fn each_once(recipe: &Recipe) {
    let mut seen: BTreeMap<(usize, usize), usize> = BTreeMap::new();
    for portion in bowls(recipe).iter().flat_map(|bowl| &bowl.portions) {
        *seen.entry(portion.place).or_default() += 1;
    }
    for line in &recipe.lines {
        let Role::Ingredient(first) = &line.role else {
            continue;
        };
        for (part, reading) in first.all().enumerate() {
            let wanted = usize::from(reading.aside.is_none());
            let found = seen.remove(&(line.number, part)).unwrap_or(0);
            assert_eq!(
                found, wanted,
                "line {} part {part}: {}",
                line.number, line.text
            );
        }
    }
    assert!(seen.is_empty(), "{seen:?} are no ingredients");
}

#[test]
fn nothing_is_dropped_and_nothing_stands_twice() {
    let files = fs::read_dir("tests/verdicts").expect("recipes");
    let mut texts: Vec<String> = files
        .map(|file| fs::read_to_string(file.expect("a file").path()).expect("text"))
        .collect();
    assert!(texts.len() >= 74);
    texts.extend(DEMOS.iter().map(|demo| demo.text.to_owned()));
    for text in texts {
        let text: Vec<&str> = text
            .lines()
            .filter(|line| !line.starts_with("# "))
            .collect();
        each_once(&read_plain(&text.join("\n"), Region::default()));
    }
}

#[test]
fn a_paste_of_many_recipes_is_weighed_by_its_list() {
    let list: Vec<String> = (1..=200).map(|grams| format!("{grams} g flour")).collect();
    let text = format!(
        "Cakes\n\nFor the glaze\n50 g sugar\n\nFor the cake\n{}\n\nMethod\nMix everything.",
        list.join("\n")
    );
    let recipe = read_plain(&text, Region::default());
    each_once(&recipe);
    let bowls = bowls(&recipe);
    let told: Vec<(Option<&str>, usize)> = bowls
        .iter()
        .map(|bowl| (bowl.heading.as_deref(), bowl.portions.len()))
        .collect();
    assert_eq!(
        told,
        [(Some("For the cake"), 200), (Some("For the glaze"), 1)]
    );
    assert!(
        bowls
            .iter()
            .flat_map(|bowl| &bowl.portions)
            .all(|it| !it.is_named)
    );
}

/// Words that methods are made of, in any order.
const WORDS: &[&str] = &[
    "cream",
    "the",
    "butter",
    "and",
    "sugar",
    "beat",
    "in",
    "eggs",
    "sift",
    "flour",
    "with",
    "soda",
    "into",
    "a",
    "large",
    "bowl",
    "another",
    "jug",
    "dry",
    "ingredients",
    "wet",
    "alternately",
    "remaining",
    "half",
    "everything",
    "else",
    "fold",
    "last",
    "apart",
    "then",
    "until",
    "bake",
    "for",
    "5",
    "minutes",
    ",",
    ".",
    "(",
    ")",
    "to",
    "pour",
    "milk",
    "of",
    "all",
];

proptest! {
    #[test]
    fn any_method_leaves_each_ingredient_in_one_bowl(words in prop::collection::vec(prop::sample::select(WORDS), 0..80)) {
        let text = format!(
            "Cake\n\nDry\n200 g flour\n1 tsp baking soda\n100 g sugar\nWet\n100 g butter\n2 eggs\n100 g milk\nFor the glaze\n50 g sugar\n\nMethod\n{}",
            words.join(" ")
        );
        each_once(&read_plain(&text, Region::default()));
    }

    #[test]
    fn any_text_is_sorted_to_an_end(text in "(\\PC{0,40}\n){0,12}") {
        let recipe = read_plain(&text, Region::default());
        each_once(&recipe);
        for time in step_times(&recipe) {
            prop_assert!(time.low > 0.0 && time.low <= time.high && time.high <= 1440.0);
        }
    }
}
