//! A recipe as plain text with its weights in it, which any reader takes: ours reads it back alike.

use crate::baking::ingredient::Own;
use crate::baking::quantity::show;
use crate::baking::recipe::Looks;
use crate::baking::worksheet::{Inputs, Settings, SheetLine, Status, Worksheet, worksheet_again};

/// The recipe's text with what each line weighs, as the baker has corrected it.
///
/// A line is written as it stands with its grams behind it, or with grams first, whichever our own reader takes for the
/// same ingredient and weight where it stands; one that it takes so in no way stays as it is.
pub fn as_text(inputs: &Inputs, settings: &Settings, own: &Own) -> String {
    let written = inputs.recipe_text();
    let mut looks = Looks::default();
    let wanted = worksheet_again(&mut looks, inputs, settings, own);
    let wanted = by_line(&wanted);
    let mut lines: Vec<Wordings> = written
        .lines()
        .enumerate()
        .map(|(at, text)| Wordings::of(text, &wanted[at]))
        .collect();
    loop {
        let text = joined(&lines);
        let found = worksheet_again(&mut looks, &Inputs::of_text(text.as_str()), settings, own);
        let found = by_line(&found);
        let mut is_done = true;
        for ((line, wanted), found) in lines.iter_mut().zip(&wanted).zip(&found) {
            if !is_alike(wanted, found) && line.go_on() {
                is_done = false;
            }
        }
        // Each turn takes one wording off some line, of at most four.
        if is_done {
            return text + &chosen(inputs);
        }
    }
}

/// The ways in which a line may be written, the best first.
struct Wordings {
    all: Vec<String>,
    at: usize,
}

impl Wordings {
    fn of(text: &str, parts: &[&SheetLine]) -> Self {
        let mut all = Vec::new();
        let is_exact = |line: &SheetLine| line.range_shown.is_none();
        if let [line] = parts
            && let Some(grams) = line.grams.map(|grams| figure(grams.mean))
        {
            if is_exact(line) && !line.corrected {
                all.push(text.to_owned());
            }
            if !line.words.is_empty() {
                all.push(format!("{} ({grams} g)", text.trim_end()));
                all.push(format!("{grams} g {}", line.words));
            }
            all.extend(line.name.map(|name| format!("{grams} g {name}")));
        } else if parts.iter().any(|line| line.corrected) {
            all.push(text.to_owned());
            all.push(format!("Note: {}", text.trim()));
        }
        // What no wording makes alike stays as it was written.
        all.push(text.to_owned());
        Self { all, at: 0 }
    }

    /// Takes the next wording, if there is one.
    fn go_on(&mut self) -> bool {
        let has_more = self.at + 1 < self.all.len();
        self.at += usize::from(has_more);
        has_more
    }
}

fn joined(lines: &[Wordings]) -> String {
    let mut text = String::new();
    for line in lines {
        text.push_str(&line.all[line.at]);
        text.push('\n');
    }
    text
}

/// The parts of each line of the text.
fn by_line(sheet: &Worksheet) -> Vec<Vec<&SheetLine>> {
    let mut lines: Vec<Vec<&SheetLine>> = Vec::new();
    for line in &sheet.lines {
        if lines.len() < line.line {
            lines.push(Vec::new());
        }
        lines[line.line - 1].push(line);
    }
    lines
}

/// Whether two readings of a line come to the same: ingredients, grams as shown, and where they go.
fn is_alike(one: &[&SheetLine], other: &[&SheetLine]) -> bool {
    one.len() == other.len()
        && one.iter().zip(other).all(|(one, other)| {
            one.status == other.status
                && one.ingredient == other.ingredient
                && one.grams_shown == other.grams_shown
                && (one.in_batter, &one.beside) == (other.in_batter, &other.beside)
                && (one.status != Status::Title || one.text == other.text)
        })
}

/// Grams as a kitchen scale shows them, without anything that sets thousands apart.
pub fn figure(grams: f64) -> String {
    match grams {
        ..0.095 => show::trimmed(grams, 2),
        ..19.95 => show::trimmed(grams, 1),
        _ => show::trimmed(grams, 0),
    }
}

/// What was chosen beside the text, in words of the text's own kind.
fn chosen(inputs: &Inputs) -> String {
    let choices = &inputs.choices;
    let pan = choices.own_pan.as_ref().and_then(|pan| pan.read().ok());
    let mut said = Vec::new();
    if let Some(pan) = pan {
        let unit = choices
            .own_pan
            .as_ref()
            .map_or_else(Default::default, |pan| pan.unit);
        said.push(format!("Pan: {}", pan.label(unit)));
    }
    if !choices.oven.setting.trim().is_empty() {
        said.push(format!("Oven: {}", choices.oven.setting.trim()));
    }
    said.iter().map(|line| format!("{line}\n")).collect()
}
