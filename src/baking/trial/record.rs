//! The record of one bake.

use super::{OutcomeField, Scale};
use crate::baking::ingredient::Own;
use crate::baking::pan::Pan;
use crate::baking::quantity::LengthUnit;
use crate::baking::recipe::pan_typed;
use crate::baking::worksheet::{
    Inputs, Looks, PutIn, Settings, SheetLine, Status, WeighIn, Worksheet, weigh_in_sheet,
    worksheet_again,
};
use serde::{Deserialize, Serialize};

/// Less of a recipe than this is a small bake (our own limit; what is proposed as a small batch is a sixth).
const SMALL: f64 = 0.5;

/// One bake, written down. It holds all that it was baked by: what becomes of the recipe afterwards changes nothing of it.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Trial {
    /// When it was last changed, in milliseconds since 1970 by the clock of the device.
    pub changed: u64,
    /// When it was baked, as far as the device knows: its first weight, or when it was written down. The same unit.
    pub baked: u64,
    /// The baker's own name for it, as typed; may be empty.
    pub name: String,
    /// The name of the trial's record that it is held against; `None` for the first of its kind.
    pub against: Option<String>,
    /// The recipe as it was planned on that day, whole.
    pub plan: Inputs,
    /// What went in otherwise than planned, in grams of the batch.
    pub weighed: Vec<PutIn>,
    /// How many times the recipe was baked; `None` is once.
    pub times: Option<f64>,
    /// What went in, by ingredient, for the recipe once: the formula as it was weighed.
    pub weights: Vec<Weight>,
    /// A mark of the method's words, which tells whether two bakes went by the same.
    pub method: u32,
    /// What was done otherwise and what came out, as typed.
    pub said: Vec<Said>,
    /// How it was scored.
    pub scores: Vec<Score>,
    /// What was seen, by the keys of the signs of faults.
    pub seen: Vec<String>,
    /// Anything else, in the baker's words.
    pub notes: String,
    /// Pictures, kept beside the record.
    pub pictures: Vec<Picture>,
}

/// How much of an ingredient went in.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Weight {
    /// Its key in the tables, or its words where they do not know it.
    pub ingredient: String,
    /// What it is called.
    pub name: String,
    /// Grams; `None` where it has no weight.
    pub grams: Option<f64>,
    /// Where it goes if not into the batter, in words.
    pub beside: String,
}

/// A field, as typed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Said {
    /// Which.
    pub field: OutcomeField,
    /// What stands in it.
    pub typed: String,
}

/// Points on a scale.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Score {
    /// The scale.
    pub scale: Scale,
    /// From 1 to 5.
    pub points: u8,
}

/// The most pictures of one bake: so many tell what there was to see, and fit into a file with hundreds of bakes.
pub const MOST_PICTURES: usize = 12;

/// A picture, kept beside the record.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Picture {
    /// The name that it is kept under.
    pub key: String,
    /// What it shows, in the baker's words.
    pub words: String,
}

/// Longer words for an ingredient are no name.
const LONGEST_NAME: usize = 40;

impl Trial {
    /// A bake of a recipe, with what of it was weighed; figures and scores are still to be said.
    pub fn of(plan: &Inputs, settings: &Settings, own: &Own, weigh_in: &WeighIn, now: u64) -> Self {
        let sheet = weigh_in_sheet(plan, settings, own, weigh_in);
        let is_missed = |put: &&PutIn| {
            let place = plan.line_of(&put.line);
            sheet.misses.iter().any(|(at, _)| Some(*at) == place)
        };
        let weighed = weigh_in.put_in.iter().filter(is_missed).cloned().collect();
        let mut trial = Self {
            changed: now,
            baked: if weigh_in.began > 0 {
                weigh_in.began
            } else {
                now
            },
            // What is to be swapped is a plan for another day.
            plan: plan.without_swaps(),
            weighed,
            times: Some(rounded(sheet.times)).filter(|times| *times != 1.0),
            ..Self::default()
        };
        trial.weigh(settings, own);
        trial
    }

    /// What of it there is to reckon with: the rest left empty, so that a letter in the notes reckons nothing anew.
    #[must_use]
    pub fn reckoned(&self) -> Self {
        Self {
            plan: self.plan.clone(),
            weighed: self.weighed.clone(),
            times: self.times,
            said: self.said.clone(),
            ..Self::default()
        }
    }

    /// How many times the recipe was baked.
    pub fn times(&self) -> f64 {
        let is_possible = |times: &f64| times.is_finite() && *times > 0.0;
        self.times.filter(is_possible).unwrap_or(1.0)
    }

    /// Whether it was a small bake.
    pub fn is_small(&self) -> bool {
        self.times() < SMALL
    }

    /// Reckons the weights anew, after the plan or what was weighed has changed.
    pub fn weigh(&mut self, settings: &Settings, own: &Own) {
        let baked = self.as_baked();
        let sheet = worksheet_again(&mut Looks::default(), &baked, settings, own);
        self.weights = weights_of(&baked, &sheet);
        self.method = method_mark(&sheet);
    }

    /// Says what went in of an ingredient, in grams of the batch; `None` takes that back.
    pub fn put(&mut self, put: PutIn, grams: Option<f64>) {
        self.weighed.retain(|it| it.line != put.line);
        if let Some(grams) = grams {
            self.weighed.push(PutIn { grams, ..put });
        }
    }

    /// What was said in a field; empty where nothing was.
    pub fn typed(&self, field: OutcomeField) -> &str {
        let found = self.said.iter().find(|said| said.field == field);
        found.map_or("", |said| said.typed.as_str())
    }

    /// Says something in a field; an empty text takes it back.
    pub fn say(&mut self, field: OutcomeField, typed: String) {
        self.said.retain(|said| said.field != field);
        if !typed.trim().is_empty() {
            self.said.push(Said { field, typed });
        }
    }

    /// The points on a scale, from 1 to 5.
    pub fn points(&self, scale: Scale) -> Option<u8> {
        let found = self.scores.iter().find(|score| score.scale == scale)?;
        (1..=5).contains(&found.points).then_some(found.points)
    }

    /// Gives points on a scale, or takes them back.
    pub fn score(&mut self, scale: Scale, points: Option<u8>) {
        self.scores.retain(|score| score.scale != scale);
        if let Some(points) = points {
            self.scores.push(Score { scale, points });
        }
    }

    /// Says that something was seen, or that it was not.
    pub fn turn_seen(&mut self, key: &str) {
        match self.seen.iter().position(|it| it == key) {
            Some(at) => {
                self.seen.remove(at);
            }
            None => self.seen.push(key.to_owned()),
        }
    }

    /// The pan that it was baked in where that was another than planned; `None` where nothing is said or no pan is named.
    pub fn other_pan(&self) -> Option<Pan> {
        let typed = self.typed(OutcomeField::Pan);
        pan_typed(typed).map(|mention| Pan::named(&mention))
    }

    /// The recipe as it was baked: as it was weighed, in the pan and the oven that it had, after the wait that it had. What
    /// was as planned is as planned.
    pub fn as_baked(&self) -> Inputs {
        let mut inputs = self.plan.clone();
        for put in &self.weighed {
            if let Some(place) = inputs.line_of(&put.line) {
                inputs.weigh(place, Some(put.grams / self.times()));
            }
        }
        let choices = &mut inputs.choices;
        let said = |field| Some(self.typed(field).trim()).filter(|typed| !typed.is_empty());
        if let Some(oven) = said(OutcomeField::Oven) {
            choices.oven.setting = oven.to_owned();
        }
        if let Some(waited) = said(OutcomeField::Waited) {
            choices.batter.waits = waited.to_owned();
        }
        if let Some(pan) = self.other_pan() {
            choices.shelf = vec![pan.entry(pan.unit(LengthUnit::default()))];
        }
        inputs
    }
}

/// What a recipe weighs by ingredient; lines of the same one in the same place are one.
fn weights_of(inputs: &Inputs, sheet: &Worksheet) -> Vec<Weight> {
    let mut weights: Vec<Weight> = Vec::new();
    for line in sheet.lines.iter().filter(|line| is_ingredient(line)) {
        let ingredient = line_key(line);
        let beside = line.beside.as_deref().unwrap_or("");
        let grams = line.grams.map(|grams| rounded(grams.mean));
        let is_same = |it: &&mut Weight| it.ingredient == ingredient && it.beside == beside;
        match weights.iter_mut().find(is_same) {
            // A line without a weight leaves the whole unknown.
            Some(weight) => {
                weight.grams = weight
                    .grams
                    .zip(grams)
                    .map(|(one, more)| rounded(one + more))
            }
            None => weights.push(Weight {
                ingredient: ingredient.to_owned(),
                name: called(inputs, line, line_words(line)),
                grams,
                beside: beside.to_owned(),
            }),
        }
    }
    weights
}

/// What an ingredient's weight is kept under: its key in the tables, or its words.
pub fn line_key(line: &SheetLine) -> &str {
    line.ingredient.unwrap_or_else(|| line_words(line))
}

fn line_words(line: &SheetLine) -> &str {
    match line.words.trim() {
        "" => line.text.trim(),
        words => words,
    }
}

/// What the baker calls it, where that is short and means it by itself; else its name in the tables.
fn called(inputs: &Inputs, line: &SheetLine, words: &str) -> String {
    let is_renamed = || {
        let correction = inputs.correction((line.line, line.part));
        correction.is_some_and(|it| it.ingredient.is_some())
    };
    let is_said = line.status == Status::Weighed
        && words.len() <= LONGEST_NAME
        && !line.taught
        && !(line.corrected && is_renamed());
    match line.name {
        Some(name) if !is_said => name.to_owned(),
        _ => words.to_owned(),
    }
}

/// To a thousandth: finer than any scale, and the same once it was written and read.
pub(super) fn rounded(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0
}

fn is_ingredient(line: &SheetLine) -> bool {
    matches!(
        line.status,
        Status::Weighed | Status::NotWeighed | Status::NotRead
    )
}

/// A mark of the method's words. FNV-1a, 32 bits (Fowler, Noll and Vo; from memory).
fn method_mark(sheet: &Worksheet) -> u32 {
    let steps = sheet
        .lines
        .iter()
        .filter(|line| line.status == Status::Method);
    let letters = steps.flat_map(|line| line.text.trim().bytes());
    letters.fold(0x811c_9dc5, |mark, letter| {
        (mark ^ u32::from(letter)).wrapping_mul(0x0100_0193)
    })
}
