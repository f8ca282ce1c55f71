//! Several ingredients in one line: those that share its amount, those with amounts of their own, and what may
//! stand in the place of the first.

use super::gather::{Gather, shares_text};
use super::ingredient_line::attempt;
use super::part::{Part, part_of};
use super::{Match, Reading, Unit, understood};
use crate::baking::ingredient::lookup::Found;
use crate::baking::ingredient::{Ingredient, Larder, Piece};

/// What a line holds besides its first ingredient.
pub struct Line<'a> {
    /// What was gathered from it.
    pub gather: &'a Gather,
    /// What its first name was found to mean.
    pub found: &'a Found,
    /// The part of a fruit or egg that it asks for.
    pub part: Option<Part>,
    /// Whether the zest is named before the juice.
    pub zest_first: bool,
    /// In which words.
    pub larder: Larder<'a>,
}

/// Adds the line's other ingredients, and what may stand in the first one's place, to its reading.
pub fn add(line: &Line, reading: &mut Reading) {
    let sharing = sharing(line, reading);
    let is_shared_out = !sharing.is_empty() && !line.gather.says_each && measures(reading);
    reading.also = sharing
        .into_iter()
        .map(|ingredient| alike(reading, ingredient))
        .collect();
    if is_shared_out {
        share_out(reading);
    }
    // "1/2 lb each of candied orange and lemon peel" names one row of the table twice.
    if line.gather.says_each
        && reading.also.is_empty()
        && line.found.named_by.iter().any(|word| word == "and")
        && let Some(ingredient) = reading.ingredient.taken()
    {
        reading.also.push(alike(reading, ingredient));
    }
    if let Some(zest) = zest(line, reading) {
        reading.also.push(zest);
        if line.zest_first {
            // The order of the line is kept.
            let zest = reading.also.swap_remove(0);
            let juice = std::mem::replace(reading, zest);
            reading.instead = Vec::new();
            reading.also = vec![Reading {
                also: Vec::new(),
                ..juice
            }];
        }
    }
    for other in &line.gather.others {
        let found = (!other.text.is_empty())
            .then(|| {
                attempt(
                    &part_of_text(line, &other.text),
                    line.larder,
                    reading.section,
                )
            })
            .filter(|found| found.reading.ingredient != Match::Unknown && found.fault.is_none());
        match found {
            Some(mut found) => {
                let more = std::mem::take(&mut found.reading.also);
                reading.also.push(found.reading);
                reading.also.extend(more);
            }
            None => reading.doubts.push(format!(
                "The line also names {}. Give it a line of its own.",
                other.said.trim()
            )),
        }
    }
    if !line.gather.choices.is_empty() {
        offer(reading, &Match::OneOf(line.gather.choices.clone()));
    }
    for text in &line.gather.instead {
        let other = attempt(text, line.larder, reading.section).reading;
        let is_other = other.ingredient.taken().is_some_and(|other| {
            reading
                .ingredient
                .taken()
                .is_some_and(|taken| taken.key != other.key)
        });
        if is_other && other.doubts.is_empty() && !other.amounts.is_empty() {
            reading.instead.push(other);
        } else if is_other && other.doubts.is_empty() {
            offer(reading, &other.ingredient);
        }
    }
}

/// "Zest of 1 orange and 1 lemon": the part that was asked for of the first is asked for of the others.
fn part_of_text(line: &Line, text: &str) -> String {
    let names_part = text
        .split(|letter: char| !letter.is_alphanumeric())
        .any(|word| Part::of(&word.to_ascii_lowercase()).is_some());
    match line.part {
        Some(part @ (Part::Juice | Part::Zest)) if !names_part => {
            format!("{} of {text}", part.word())
        }
        _ => text.to_owned(),
    }
}

/// Other ingredients that share the amount: "salt and pepper", "1 tsp each cinnamon, cloves and nutmeg".
fn sharing(line: &Line, reading: &Reading) -> Vec<&'static Ingredient> {
    let mut several: Vec<&'static Ingredient> = Vec::new();
    let own = reading.ingredient.taken().map(|ingredient| ingredient.key);
    for ingredient in line.found.also.iter().chain(&line.gather.sharing) {
        let is_new =
            Some(ingredient.key) != own && several.iter().all(|known| known.key != ingredient.key);
        if is_new {
            several.push(ingredient);
        }
    }
    several
}

/// Whether the amount is something that can be measured out, and not a taste, a pinch or nothing.
fn measures(reading: &Reading) -> bool {
    reading.amounts.first().is_some_and(|amount| {
        !matches!(
            amount.unit,
            Unit::ToTaste | Unit::Piece(Piece::Pinch | Piece::Dash)
        )
    })
}

/// The same amount of another ingredient.
fn alike(reading: &Reading, ingredient: &'static Ingredient) -> Reading {
    let mut other = Reading {
        ingredient: Match::Known(ingredient),
        name: ingredient.name.to_owned(),
        doubts: Vec::new(),
        also: Vec::new(),
        instead: Vec::new(),
        ..reading.clone()
    };
    super::name::pieces(&mut other.amounts, ingredient.name, Some(ingredient));
    other.understood = understood::understood(&other);
    other
}

/// One amount for several ingredients together: an equal share is taken for each, and that is said.
fn share_out(reading: &mut Reading) {
    let many = 1.0 + reading.also.len() as f64;
    let doubt = "One amount stands for several ingredients; an equal share is taken for each.";
    let share = |reading: &mut Reading| {
        for amount in &mut reading.amounts {
            amount.low /= many;
            amount.high /= many;
        }
        reading.doubts.push(doubt.to_owned());
        reading.understood = understood::understood(reading);
    };
    share(reading);
    reading.also.iter_mut().for_each(share);
}

/// The zest beside the juice: "juice and zest of 2 limes". A volume in the line is the juice's.
fn zest(line: &Line, reading: &Reading) -> Option<Reading> {
    if line.part != Some(Part::JuiceAndZest) {
        return None;
    }
    let fruit = reading.name.trim_end_matches(Part::JuiceAndZest.word());
    let found = part_of(fruit.trim(), Part::Zest, line.larder)?;
    let mut zest = alike(reading, found.matched.taken()?);
    zest.amounts
        .retain(|amount| matches!(amount.unit, Unit::Piece(_)));
    zest.understood = understood::understood(&zest);
    Some(zest)
}

/// Offers what a name means beside what the line was taken for.
pub fn offer(reading: &mut Reading, other: &Match) {
    let offered = |matched: &Match| match matched {
        Match::Known(ingredient) => vec![*ingredient],
        Match::OneOf(several) => several.clone(),
        Match::Unknown => Vec::new(),
    };
    let mut several = offered(&reading.ingredient);
    for ingredient in offered(other) {
        if several.iter().all(|known| known.key != ingredient.key) && !several.is_empty() {
            several.push(ingredient);
        }
    }
    if several.len() > 1 {
        reading.ingredient = Match::OneOf(several);
    }
}

/// Whether a note offers another name in place of the first: "or margarine".
pub fn offers_by_note(notes: &[String], reading: &mut Reading, larder: Larder<'_>) {
    for note in notes {
        let Some(rest) = note.strip_prefix("or ") else {
            continue;
        };
        let found = crate::baking::ingredient::lookup::search(rest, larder);
        if found.is_sure() && !shares_text(rest, "more less to taste") {
            offer(reading, &found.matched);
        }
    }
}
