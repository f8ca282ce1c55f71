//! What is to be swapped, as the baker chose and as it is kept.

use super::Inputs;
use super::input::{LinePart, place};
use crate::baking::ingredient::Ingredient;
use crate::baking::substitute::Without;
use serde::{Deserialize, Serialize};

/// What is to be swapped in a recipe, and what is to stay.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct SwapEntry {
    /// Ingredients of the text with what comes in their place.
    pub lines: Vec<SwapLine>,
    /// What the whole cake is to be without.
    pub without: Without,
    /// Keys of ingredients that are not to be had.
    pub missing: Vec<String>,
    /// Ingredients of the text whose amounts may not move.
    pub held: Vec<LineWords>,
    /// True where nothing may be added that the recipe does not have.
    pub nothing_new: bool,
}

/// An ingredient of the text, known by the words of its line, so that it is found when lines are added above it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(default)]
pub struct LineWords {
    /// The line's text, blanks at its ends taken off.
    pub text: String,
    /// Which of several lines with the same text, counted from 0.
    pub occurrence: usize,
    /// Which of the line's ingredients, counted from 0.
    pub part: usize,
}

/// One ingredient and what comes in its place.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct SwapLine {
    /// Which.
    pub line: LineWords,
    /// Keys of what comes, the main one first, joined by "+"; one key alone may be any ingredient.
    pub to: String,
    /// The share of it that goes, per cent; `None` for as much as practice replaces.
    pub percent: Option<u8>,
}

impl Inputs {
    /// The words of the line of an ingredient; `None` where the text has no such line.
    pub fn line_words(&self, (line, part): LinePart) -> Option<LineWords> {
        let (text, occurrence) = place(&self.recipe_text(), line)?;
        Some(LineWords {
            text,
            occurrence,
            part,
        })
    }

    /// Where an ingredient of those words stands; `None` where the text has no such line any more.
    pub fn line_of(&self, words: &LineWords) -> Option<LinePart> {
        let text = self.recipe_text();
        let mut same = text
            .lines()
            .enumerate()
            .filter(|(_, line)| line.trim() == words.text);
        let (at, _) = same.nth(words.occurrence)?;
        Some((at + 1, words.part))
    }

    /// Chooses what comes in the place of an ingredient, or takes that back with an empty text.
    pub fn swap(&mut self, place: LinePart, to: &str, percent: Option<u8>) {
        let Some(line) = self.line_words(place) else {
            return;
        };
        let lines = &mut self.choices.swaps.lines;
        lines.retain(|swap| swap.line != line);
        if !to.is_empty() {
            lines.push(SwapLine {
                line,
                to: to.to_owned(),
                percent,
            });
        }
    }

    /// What was chosen for an ingredient, if anything.
    pub fn swap_of(&self, place: LinePart) -> Option<&SwapLine> {
        let line = self.line_words(place)?;
        self.choices
            .swaps
            .lines
            .iter()
            .find(|swap| swap.line == line)
    }

    /// The same with nothing chosen to be swapped: what the worksheet shows goes by that alone.
    #[must_use]
    pub fn without_swaps(&self) -> Self {
        let mut inputs = self.clone();
        inputs.choices.swaps = SwapEntry::default();
        inputs
    }

    /// Holds an ingredient's amount, or lets it go.
    pub fn hold(&mut self, place: LinePart, is_held: bool) {
        let Some(line) = self.line_words(place) else {
            return;
        };
        let held = &mut self.choices.swaps.held;
        held.retain(|other| *other != line);
        if is_held {
            held.push(line);
        }
    }
}

impl SwapEntry {
    /// Whether an ingredient is not to be had.
    pub fn lacks(&self, ingredient: &Ingredient) -> bool {
        self.missing.iter().any(|key| key == ingredient.key)
    }

    /// Whether anything is to be swapped.
    pub fn is_any(&self) -> bool {
        !self.lines.is_empty() || self.without.is_any() || !self.missing.is_empty()
    }
}
