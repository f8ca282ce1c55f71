//! Plans of swaps held against the outside: laws that hold of any recipe, values of the trade, and input that is no good.

#[path = "plans/judged.rs"]
mod judged;
#[path = "plans/laws.rs"]
mod laws;
#[path = "plans/refused.rs"]
mod refused;
#[path = "plans/trade.rs"]
mod trade;

use batterwright::baking::demo::DEMOS;
use batterwright::baking::ingredient::{Larder, Own, Region};
use batterwright::baking::worksheet::{
    Choices, Inputs, LinePart, Settings, SwapPlan, Worksheet, swap_plan, worksheet,
};
use std::collections::BTreeMap;
use std::fs;

/// The demos, and the recipes that verdicts were written for, each with its name.
fn recipes() -> Vec<(String, Inputs)> {
    let demos = DEMOS
        .iter()
        .map(|demo| (demo.key.to_owned(), in_region(demo.text, Region::Us)));
    let mut files: Vec<_> = fs::read_dir("tests/verdicts")
        .expect("the folder of verdicts")
        .map(|file| file.expect("a file").path())
        .collect();
    files.sort();
    let files = files.iter().map(|path| {
        let text = fs::read_to_string(path).expect("a recipe");
        let region = match text.contains("# country: uk") {
            true => Region::Uk,
            false => Region::Us,
        };
        let recipe: Vec<&str> = text.lines().filter(|line| !line.starts_with('#')).collect();
        (
            path.display().to_string(),
            in_region(&recipe.join("\n"), region),
        )
    });
    demos.chain(files).collect()
}

fn in_region(text: &str, region: Region) -> Inputs {
    Inputs {
        choices: Choices {
            region: Some(region),
            ..Choices::default()
        },
        ..Inputs::of_text(text)
    }
}

fn own(inputs: &Inputs) -> &'static Own {
    Larder::of(inputs.choices.region.unwrap_or_default()).own
}

fn try_plan(inputs: &Inputs) -> Result<SwapPlan, String> {
    swap_plan(inputs, &Settings::default(), own(inputs))
}

fn sheet(inputs: &Inputs) -> Worksheet {
    worksheet(inputs, &Settings::default())
}

/// Every weighed ingredient: its place, its key and its grams.
fn weighed(inputs: &Inputs) -> Vec<(LinePart, &'static str, f64)> {
    let lines = sheet(inputs).lines.into_iter();
    lines
        .filter_map(|line| {
            let grams = line.grams?.mean;
            Some(((line.line, line.part), line.ingredient?, grams))
        })
        .collect()
}

/// All there is of each ingredient, g.
fn totals(inputs: &Inputs) -> BTreeMap<&'static str, f64> {
    let mut totals = BTreeMap::new();
    for (_, key, grams) in weighed(inputs) {
        *totals.entry(key).or_insert(0.0) += grams;
    }
    totals
}

/// The same of two recipes side by side, none as 0.
fn side_by_side(one: &Inputs, other: &Inputs) -> Vec<(&'static str, f64, f64)> {
    let (one, other) = (totals(one), totals(other));
    let mut keys: Vec<&'static str> = one.keys().chain(other.keys()).copied().collect();
    keys.sort_unstable();
    keys.dedup();
    let of = |totals: &BTreeMap<&str, f64>, key: &str| totals.get(key).copied().unwrap_or(0.0);
    keys.into_iter()
        .map(|key| (key, of(&one, key), of(&other, key)))
        .collect()
}

/// Where the first line of an ingredient stands.
#[track_caller]
fn place_of(inputs: &Inputs, key: &str) -> LinePart {
    let lines = weighed(inputs);
    lines
        .iter()
        .find(|(_, it, _)| *it == key)
        .unwrap_or_else(|| panic!("no {key} in {lines:?}"))
        .0
}

/// The same recipe with every amount weighed, times a factor, as a scale shows it.
fn weighed_out(inputs: &Inputs, factor: f64) -> Inputs {
    let mut out = inputs.clone();
    for (place, _, grams) in weighed(inputs) {
        out.weigh(place, Some(on_scale(grams) * factor));
    }
    out
}

fn on_scale(grams: f64) -> f64 {
    match grams < 10.0 {
        true => (grams * 10.0).round() / 10.0,
        false => grams.round(),
    }
}
