//! A recipe with one thing moved: what a proposed bake is baked by, and what is reckoned of it beforehand.

use super::factor::{Factor, Part};
use super::outcome::Outcome;
use crate::baking::ingredient::Own;
use crate::baking::oven::scale::OvenScale;
use crate::baking::pan::{AmountEntry, HowMuch, PanEntry, Shape};
use crate::baking::quantity::show;
use crate::baking::statistics::best::Wish;
use crate::baking::trial::{Trial, line_key};
use crate::baking::worksheet::{Inputs, Looks, Settings, Status, worksheet_again};

/// The share of a recipe that a small batch is.
const SMALL: f64 = 1.0 / 6.0;
/// What a cup of a muffin pan takes of batter, g (common practice, no source).
const CUP: f64 = 60.0;
/// How often a range is halved in search of a reckoned best.
const HALVINGS: usize = 7;

/// The recipe with so much of a factor; `None` where no line of it can be moved.
pub fn moved(
    inputs: &Inputs,
    factor: &Factor,
    amount: f64,
    settings: &Settings,
    own: &Own,
) -> Option<Inputs> {
    let mut moved = inputs.clone();
    match factor {
        Factor::Weight(part) => weigh(&mut moved, part, amount, settings, own)?,
        Factor::AgainstFlour(part) => {
            let planned = as_planned(inputs, settings, own);
            let now = factor.amount(&planned, settings)?;
            let grams = Factor::Weight(part.clone()).amount(&planned, settings)?;
            weigh(&mut moved, part, grams * amount / now, settings, own)?;
        }
        Factor::Oven => {
            let scale = match settings.kitchen_oven().scale {
                OvenScale::Fahrenheit => "F",
                _ => "C",
            };
            moved.choices.oven.setting = format!("{} {scale}", show::fixed(amount, 0));
        }
        Factor::Waited => moved.choices.batter.waits = show::trimmed(amount, 1),
    }
    Some(moved)
}

/// The recipe as it is planned, as a bake of it would be written down.
pub fn as_planned(inputs: &Inputs, settings: &Settings, own: &Own) -> Trial {
    Trial::of(inputs, settings, own, &Default::default(), 0)
}

/// Makes a small batch of a recipe: a sixth of it, in as many muffin cups as that fills.
pub fn make_small(inputs: &mut Inputs, grams: f64) {
    let cups = (grams * SMALL / CUP).round().max(1.0);
    inputs.choices.amount = AmountEntry {
        how: HowMuch::Times,
        text: "1/6".to_owned(),
    };
    inputs.choices.shelf = vec![PanEntry {
        count: show::fixed(cups, 0),
        ..crate::baking::pan::Pan::usual(Shape::Cups).entry(Default::default())
    }];
}

/// Shares an amount out among the lines of an ingredient, as they stand to one another now.
fn weigh(
    inputs: &mut Inputs,
    part: &Part,
    grams: f64,
    settings: &Settings,
    own: &Own,
) -> Option<()> {
    let sheet = worksheet_again(&mut Looks::default(), inputs, settings, own);
    let lines: Vec<_> = sheet
        .lines
        .iter()
        .filter(|line| {
            line.status == Status::Weighed
                && line_key(line) == part.ingredient
                && line.beside.as_deref().unwrap_or("") == part.beside
        })
        .filter_map(|line| Some(((line.line, line.part), line.grams?.mean)))
        .collect();
    let now: f64 = lines.iter().map(|it| it.1).sum();
    if !(now > 0.0 && grams.is_finite()) {
        return None;
    }
    for (place, was) in lines {
        let share = (grams * was / now * 1000.0).round() / 1000.0;
        inputs.weigh(place, Some(share));
    }
    Some(())
}

/// Where the best amount is reckoned to lie, with its standard deviation. Only the pH of the crumb is reckoned from a
/// formula: of what is high, tender or good the engine knows no figure.
pub fn reckoned_best(
    inputs: &Inputs,
    (factor, low, high): (&Factor, f64, f64),
    (outcome, wish): (Outcome, Wish),
    settings: &Settings,
    own: &Own,
) -> Option<(f64, f64)> {
    let (Outcome::CrumbPh, Wish::Nearest(wanted)) = (outcome, wish) else {
        return None;
    };
    let crumb = |amount: f64| {
        let moved = moved(inputs, factor, amount, settings, own)?;
        let sheet = worksheet_again(&mut Looks::default(), &moved, settings, own);
        Some(sheet.leavening.rule?.crumb)
    };
    let over = |amount: f64| Some(crumb(amount)?.mean - wanted);
    let (mut from, mut to) = (low, high);
    let (first, last) = (over(from)?, over(to)?);
    if first * last > 0.0 {
        return None;
    }
    for _ in 0..HALVINGS {
        let middle = (from + to) / 2.0;
        if over(middle)? * first > 0.0 {
            from = middle;
        } else {
            to = middle;
        }
    }
    let best = (from + to) / 2.0;
    let spread = crumb(best)?;
    let slope = (last - first).abs() / (high - low);
    let deviation = (spread.high - spread.low) / (2.0 * crate::baking::estimate::NORMAL_95) / slope;
    (deviation > 0.0 && deviation.is_finite()).then_some((best, deviation.min((high - low) / 2.0)))
}
