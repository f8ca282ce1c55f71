//! The lines of a worksheet.

use super::{EggCount, LinePart, Offer, SheetLine, Spread, Status};
use crate::baking::balance::Percentages;
use crate::baking::formula::{Eggs, Formula, Place, Unweighed, Weighed, eggs};
use crate::baking::pan::Fit;
use crate::baking::quantity::{Mass, show};
use crate::baking::recipe::{Correction, Line, Match, Reading, Recipe, Role};
use crate::baking::source::Cited;
use std::collections::HashMap;

/// Every line of the text as the page shows it.
pub fn sheet_lines(
    recipe: &Recipe,
    formula: &Formula,
    percentages: &Percentages,
    fit: &Fit,
    corrections: &[Correction],
) -> Vec<SheetLine> {
    let weighed: HashMap<LinePart, &Weighed> = formula
        .lines
        .iter()
        .map(|line| ((line.line, line.part), line))
        .collect();
    let unweighed: HashMap<LinePart, &Unweighed> = formula
        .unweighed
        .iter()
        .map(|line| ((line.line, line.part), line))
        .collect();
    let mut seen: HashMap<&str, usize> = HashMap::new();
    let mut sheets = Vec::new();
    for line in &recipe.lines {
        let words = line.text.trim();
        let occurrence = seen.entry(words).or_default();
        let corrected = |part: usize| {
            corrections
                .iter()
                .any(|correction| correction.is_at(words, *occurrence, part))
        };
        let Role::Ingredient(reading) = &line.role else {
            sheets.push(bare(line, 0, corrected(0)));
            *occurrence += 1;
            continue;
        };
        for (part, reading) in reading.all().enumerate() {
            let mut sheet = bare(line, part, corrected(part));
            read_in(&mut sheet, reading);
            if let Some(weighed) = weighed.get(&(line.number, part)) {
                weigh_in(&mut sheet, reading, weighed, percentages, fit.factor);
            }
            if let Some(unweighed) = unweighed.get(&(line.number, part)) {
                not_weigh_in(&mut sheet, unweighed);
            }
            sheets.push(sheet);
        }
        *occurrence += 1;
    }
    sheets
}

/// Why there is no weight.
fn not_weigh_in(sheet: &mut SheetLine, unweighed: &Unweighed) {
    sheet.status = Status::NotWeighed;
    sheet.in_batter = unweighed.place == Place::Batter;
    sheet.beside = unweighed.place.words().map(str::to_owned);
    sheet.flagged |= unweighed.missed;
    if !sheet.doubts.contains(&unweighed.why) {
        sheet.doubts.push(unweighed.why.clone());
    }
}

/// A line before anything is known of an ingredient in it.
fn bare(line: &Line, part: usize, corrected: bool) -> SheetLine {
    let (status, doubts) = match &line.role {
        Role::Blank => (Status::Blank, Vec::new()),
        Role::Title => (Status::Title, Vec::new()),
        Role::Heading(_) => (Status::Heading, Vec::new()),
        Role::Ingredient(_) => (Status::Weighed, Vec::new()),
        Role::Method => (Status::Method, Vec::new()),
        Role::Note => (Status::Note, Vec::new()),
        Role::Unread(why) => (Status::NotRead, vec![why.clone()]),
    };
    SheetLine {
        line: line.number,
        part,
        text: line.text.clone(),
        status,
        flagged: status == Status::NotRead,
        ingredient: None,
        name: None,
        words: String::new(),
        taught: false,
        note: "",
        grams: None,
        grams_shown: None,
        range_shown: None,
        understood: String::new(),
        spoons: None,
        how: None,
        source: None,
        others: String::new(),
        doubts,
        offers: Vec::new(),
        in_batter: false,
        beside: None,
        percent_shown: None,
        scaled_shown: None,
        eggs: None,
        corrected,
    }
}

/// What the reader says of a line.
fn read_in(sheet: &mut SheetLine, reading: &Reading) {
    let taken = reading.ingredient.taken();
    sheet.ingredient = taken.map(|ingredient| ingredient.key);
    sheet.name = taken.map(|ingredient| ingredient.name);
    sheet.words = reading.name.clone();
    sheet.taught = reading.is_taught;
    sheet.note = taken.map_or("", |ingredient| ingredient.note);
    sheet.understood = reading.understood.clone();
    sheet.spoons = reading.spoons();
    sheet.doubts = reading.doubts.clone();
    sheet.flagged = !reading.doubts.is_empty() || taken.is_none();
    if let Match::OneOf(several) = &reading.ingredient {
        sheet.offers = several
            .iter()
            .map(|ingredient| Offer {
                key: ingredient.key.to_owned(),
                name: ingredient.name.to_owned(),
                instead: false,
            })
            .collect();
    }
    for instead in &reading.instead {
        if let Some(ingredient) = instead.ingredient.taken() {
            sheet.offers.push(Offer {
                key: ingredient.key.to_owned(),
                name: show::sentence(&instead.understood),
                instead: true,
            });
        }
    }
}

/// What the scale says of it.
fn weigh_in(
    sheet: &mut SheetLine,
    reading: &Reading,
    weighed: &Weighed,
    percentages: &Percentages,
    factor: Option<f64>,
) {
    let batter = weighed.place == Place::Batter;
    sheet.grams = Some(Spread::from(weighed.grams));
    sheet.grams_shown = Some(show::mass(weighed.grams.mean));
    sheet.range_shown = show::mass_range(&weighed.grams);
    sheet.how = Some(weighed.how.sentence.clone());
    sheet.source = weighed.how.cited.map(source);
    sheet.others.clone_from(&weighed.how.others);
    sheet.flagged |= !weighed.doubts.is_empty();
    sheet.doubts.extend(weighed.doubts.iter().cloned());
    sheet.in_batter = batter;
    sheet.beside = weighed.place.words().map(str::to_owned);
    sheet.percent_shown = percentages
        .of(weighed.grams.mean)
        .filter(|_| batter)
        .map(show::percent);
    if let Some(factor) = factor {
        let scaled = weighed.grams.mean * factor;
        sheet.scaled_shown = Some(show::mass(scaled));
        sheet.eggs = eggs(weighed, reading).map(|eggs| egg_count(&eggs, scaled));
    }
}

/// A source and its trust, in a sentence.
pub fn source(cited: Cited) -> String {
    format!("{} ({})", cited.source.citation, cited.confidence.words())
}

/// Scaled eggs: the grams to weigh and the nearest whole count to crack for them.
fn egg_count(eggs: &Eggs, scaled: Mass) -> EggCount {
    let count = scaled / eggs.each;
    let whole = count.round().max(1.0);
    let shown = format!(
        "{}: about {} of {} each, nearest whole {}",
        show::mass(scaled),
        show::factor(count),
        show::mass(eggs.each),
        show::fixed(whole, 0),
    );
    EggCount {
        whole: whole as u32,
        shown,
    }
}
