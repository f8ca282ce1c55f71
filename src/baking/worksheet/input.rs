//! What the baker gives: the text, what was mended in it, and what was chosen.

use super::{BatterSaid, CrumbTold, MixingEntry, OvenEntry, SwapEntry};
use crate::baking::balance::Kind;
use crate::baking::finding::{Edit, Remedy};
use crate::baking::ingredient::{Filling, PieceSize, Region};
use crate::baking::leaven::WishEntry;
use crate::baking::oven::scale::{OvenKind, OvenScale};
use crate::baking::pan::{AmountEntry, PanEntry};
use crate::baking::quantity::LengthUnit;
use crate::baking::recipe::{Correction, linked};
use serde::{Deserialize, Serialize};
use std::borrow::Cow;
use std::collections::HashMap;

/// One recipe as its baker gave it. A worksheet follows from it and [`Settings`] alone.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Inputs {
    /// The text as it was pasted or typed.
    pub text: String,
    /// What the baker mended in the reading.
    pub corrections: Vec<Correction>,
    /// What was chosen for this recipe.
    pub choices: Choices,
}

/// What was chosen for one recipe.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Choices {
    /// The recipe's own pan, where the baker says it; `None` takes the one that the text names.
    pub own_pan: Option<PanEntry>,
    /// The pans on the shelf; none keeps the recipe's own.
    pub shelf: Vec<PanEntry>,
    /// How much of the recipe is baked.
    pub amount: AmountEntry,
    /// Whose cups, spoons and words it is in, where the baker says it; `None` goes by its words.
    pub region: Option<Region>,
    /// What kind of cake it is, where the baker says it; `None` goes by its formula and title.
    pub kind: Option<Kind>,
    /// What the baker says of the batter.
    pub batter: BatterSaid,
    /// What crumbs of bakes that were written down tell.
    pub crumbs: Vec<CrumbTold>,
    /// What is wished of the leavening, where it is to be worked out.
    pub leavening: WishEntry,
    /// What is to be swapped.
    pub swaps: SwapEntry,
    /// What the baker says of the oven.
    pub oven: OvenEntry,
    /// The height of the kitchen that the recipe is made for, as typed with its unit; empty is the sea, which most are for.
    pub made_for: String,
    /// What is said of mixing.
    pub mixing: MixingEntry,
}

/// What holds for every recipe of this baker.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Settings {
    /// The baker's own country: whose cups, spoons, eggs and words hold where a recipe's words tell nothing.
    pub region: Region,
    /// How this baker, or the recipe's writer, fills a cup of flour.
    pub cup_habit: CupHabit,
    /// The size of egg on the shelf, for "2 eggs".
    pub eggs: EggSize,
    /// The unit that pans are given in.
    pub lengths: LengthUnit,
    /// The height of the kitchen above the sea, as typed with its unit; empty where nothing is said.
    pub height: String,
    /// How the oven brings its heat.
    pub oven: OvenKind,
    /// The scale of its dial; `None` takes the country's.
    pub oven_scale: Option<OvenScale>,
    /// How much hotter it is than its dial says, as typed with its scale; empty where nothing is said.
    pub oven_off: String,
    /// How much cooler an oven with a fan is set, as typed with its scale; empty takes the country's custom.
    pub fan_cooler: String,
    /// What the scale on the bench reads to.
    pub scale: ScaleStep,
}

/// What a scale reads to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ScaleStep {
    /// 0.1 g.
    Tenth,
    /// 1 g.
    #[default]
    One,
    /// 2 g.
    Two,
    /// 5 g.
    Five,
}

impl ScaleStep {
    /// Every step, the finest first.
    pub const ALL: [Self; 4] = [Self::Tenth, Self::One, Self::Two, Self::Five];

    /// In grams.
    pub fn grams(self) -> f64 {
        match self {
            Self::Tenth => 0.1,
            Self::One => 1.0,
            Self::Two => 2.0,
            Self::Five => 5.0,
        }
    }

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Tenth => "0.1 g",
            Self::One => "1 g",
            Self::Two => "2 g",
            Self::Five => "5 g",
        }
    }
}

/// How a cup of something that packs was filled.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CupHabit {
    /// Not known: the spread of all ways is carried.
    #[default]
    Unknown,
    /// Dipped into the bag and levelled.
    Dipped,
    /// Spooned in and levelled.
    Spooned,
    /// Sifted first.
    Sifted,
}

impl CupHabit {
    /// The way of filling, where it is known.
    pub fn filling(self) -> Option<Filling> {
        match self {
            Self::Unknown => None,
            Self::Dipped => Some(Filling::Dipped),
            Self::Spooned => Some(Filling::Spooned),
            Self::Sifted => Some(Filling::Sifted),
        }
    }
}

/// The egg size taken where a recipe does not say.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct EggSize(pub PieceSize);

impl Default for EggSize {
    fn default() -> Self {
        Self(PieceSize::Large)
    }
}

impl Inputs {
    /// A recipe that is only text.
    pub fn of_text(text: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            ..Self::default()
        }
    }

    /// The recipe as it is read: the text, or what a page's source in its place holds.
    pub fn recipe_text(&self) -> Cow<'_, str> {
        linked::text_of(&self.text).map_or(Cow::Borrowed(&self.text), |page| Cow::Owned(page.text))
    }

    /// The inputs with a remedy carried out: a new value, so that the old one can be taken back.
    pub fn with_remedy(&self, remedy: &Remedy) -> Self {
        let mut inputs = self.clone();
        // Weights first, since they go by today's line numbers; then new lines, each below where the
        // ones before it have pushed its place.
        for edit in &remedy.edits {
            if let Edit::Weigh { line, part, grams } = edit {
                inputs.weigh((*line, *part), Some(*grams));
            }
        }
        let mut added: Vec<usize> = Vec::new();
        for edit in &remedy.edits {
            if let Edit::AddAfter { line, text } = edit {
                let pushed = added.iter().filter(|above| *above <= line).count();
                inputs.add_after(line + pushed, text);
                added.push(*line);
            }
        }
        inputs
    }

    /// Sets what an ingredient weighs by the baker's own word, or takes that word back.
    pub fn weigh(&mut self, place: LinePart, grams: Option<f64>) {
        self.correct(place, |correction| correction.grams = grams);
    }

    /// Sets how much of it there is, as typed, or takes that back.
    pub fn measure(&mut self, place: LinePart, amount: Option<String>) {
        self.correct(place, |correction| correction.amount = amount);
    }

    /// Sets which ingredient it is, or takes that back.
    pub fn name(&mut self, place: LinePart, key: Option<String>) {
        self.correct(place, |correction| correction.ingredient = key);
    }

    /// Says whether a line is an ingredient, or takes that back.
    pub fn call_ingredient(&mut self, line: usize, is_ingredient: Option<bool>) {
        self.correct((line, 0), |correction| {
            correction.is_ingredient = is_ingredient
        });
    }

    /// What was said of an ingredient, if anything.
    pub fn correction(&self, (line, part): LinePart) -> Option<&Correction> {
        let (text, occurrence) = place(&self.recipe_text(), line)?;
        self.corrections
            .iter()
            .find(|correction| correction.is_at(&text, occurrence, part))
    }

    /// Takes back all that was said of an ingredient.
    pub fn uncorrect(&mut self, place: LinePart) {
        self.correct(place, |correction| {
            correction.ingredient = None;
            correction.amount = None;
            correction.grams = None;
            correction.is_ingredient = None;
        });
    }

    /// Changes the correction of an ingredient, its line found by its words; a line that is not there is left alone.
    fn correct(&mut self, (line, part): LinePart, change: impl FnOnce(&mut Correction)) {
        let Some((text, occurrence)) = place(&self.recipe_text(), line) else {
            return;
        };
        let found = self
            .corrections
            .iter()
            .position(|correction| correction.is_at(&text, occurrence, part));
        let mut correction = match found {
            Some(index) => self.corrections.remove(index),
            None => Correction {
                text,
                occurrence,
                part,
                ..Correction::default()
            },
        };
        change(&mut correction);
        if !correction.is_empty() {
            self.corrections.push(correction);
        }
    }

    /// Gives a line other words. What was said of the old ones goes with them; lines with the same words below it move
    /// up in their count.
    pub(super) fn reword(&mut self, line: usize, words: &str) {
        let written = self.recipe_text().into_owned();
        let Some((text, occurrence)) = place(&written, line) else {
            return;
        };
        self.corrections.retain(|correction| {
            (correction.text.as_str(), correction.occurrence) != (text.as_str(), occurrence)
        });
        for correction in &mut self.corrections {
            if correction.text == text && correction.occurrence > occurrence {
                correction.occurrence -= 1;
            }
        }
        let mut lines: Vec<&str> = written.lines().collect();
        lines[line - 1] = words;
        self.text = lines.join("\n");
    }

    /// Puts a new line below the given one; below the last where there is no such line.
    pub(super) fn add_after(&mut self, line: usize, text: &str) {
        let written = self.recipe_text();
        let mut lines: Vec<&str> = written.lines().collect();
        let at = line.min(lines.len());
        lines.insert(at, text);
        self.text = lines.join("\n");
    }
}

/// An ingredient of the text: its line, counted from 1, and which of the line's ingredients, from 0.
pub type LinePart = (usize, usize);

/// The words of every line of a text, blanks at its ends taken off, each with which of its likes it is.
pub(super) fn words_of_lines(text: &str) -> Vec<(String, usize)> {
    let mut seen: HashMap<&str, usize> = HashMap::new();
    text.lines()
        .map(|line| {
            let words = line.trim();
            let count = seen.entry(words).or_default();
            *count += 1;
            (words.to_owned(), *count - 1)
        })
        .collect()
}

/// A line's words and which of its likes it is: the address that corrections are kept by.
pub(super) fn place(text: &str, line: usize) -> Option<(String, usize)> {
    let wanted = text.lines().nth(line.checked_sub(1)?)?.trim();
    let occurrence = text
        .lines()
        .take(line - 1)
        .filter(|other| other.trim() == wanted)
        .count();
    Some((wanted.to_owned(), occurrence))
}
