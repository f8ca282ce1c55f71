//! What differs between two worksheets: ingredients, figures, what is said, and all of it in words.
//!
//! Ingredients are matched by what they are and where they go, never by the number of their line, so
//! that lines may be moved, split and written otherwise. A figure's change is called only where it is
//! larger than the spreads of both together.

mod figures;
mod ingredients;
mod words;

pub use figures::{Call, FigureChange, FigureSide};
pub use ingredients::{Amount, IngredientChange};

use super::{SheetLine, Status, Worksheet};
use crate::baking::finding::{Finding, Severity};
use crate::baking::quantity::show;
use serde::Serialize;
use std::collections::HashMap;

/// What differs between a recipe before and after.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Difference {
    /// Ingredients that are more, less, there or gone, in the order of the recipe after.
    pub ingredients: Vec<IngredientChange>,
    /// How many ingredients are the same in both.
    pub unchanged: usize,
    /// Every figure, changed or not, in the order shown.
    pub figures: Vec<FigureChange>,
    /// What is said of the recipe, changed or not: plant-based, pan, country.
    pub said: Vec<SaidChange>,
    /// Allergens that came in.
    pub allergens_gained: Vec<String>,
    /// Allergens that went out.
    pub allergens_lost: Vec<String>,
    /// Findings that came.
    pub findings_come: Vec<FindingNote>,
    /// Findings that went.
    pub findings_gone: Vec<FindingNote>,
    /// Lines that are no ingredients (name, headings, method, notes) and stand in the recipe after alone.
    pub lines_come: Vec<String>,
    /// Such lines that stand in the recipe before alone.
    pub lines_gone: Vec<String>,
    /// The changes in words that a reader can be sent.
    pub words: String,
}

/// Something said of the recipe, before and after.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SaidChange {
    /// What it is about.
    pub label: &'static str,
    /// Before.
    pub before: String,
    /// After.
    pub after: String,
}

impl SaidChange {
    /// Whether it is not the same in both.
    pub fn differs(&self) -> bool {
        self.before != self.after
    }
}

/// A finding that is there in one of the two only.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct FindingNote {
    /// The fault's name.
    pub name: &'static str,
    /// How grave it is.
    pub severity: Severity,
    /// A few words: "Short of soda".
    pub title: String,
    /// With the figures, in a sentence or two.
    pub sentence: String,
}

impl FindingNote {
    fn of(finding: &Finding) -> Self {
        Self {
            name: finding.name,
            severity: finding.severity,
            title: finding.title.clone(),
            sentence: finding.sentence.clone(),
        }
    }
}

impl Difference {
    /// True where nothing at all differs.
    pub fn is_nothing(&self) -> bool {
        self.ingredients.is_empty()
            && self.lines_come.is_empty()
            && self.lines_gone.is_empty()
            && !self.said.iter().any(SaidChange::differs)
            && !self.figures.iter().any(FigureChange::differs)
            && self.findings_come.is_empty()
            && self.findings_gone.is_empty()
    }
}

/// What differs between a recipe before and after; `name` is that of the version, empty where it has none.
pub fn difference(before: &Worksheet, after: &Worksheet, name: &str) -> Difference {
    let matched = ingredients::matched(before, after);
    let (findings_gone, findings_come) = findings(before, after);
    let (lines_gone, lines_come) = others(before, after);
    let (allergens_lost, allergens_gained) = allergens(before, after);
    let mut found = Difference {
        ingredients: Vec::new(),
        unchanged: matched.iter().filter(|it| !it.change.differs()).count(),
        figures: figures::changes(before, after),
        said: said(before, after),
        allergens_gained,
        allergens_lost,
        findings_come,
        findings_gone,
        lines_come,
        lines_gone,
        words: String::new(),
    };
    let head = words::head(before.title.as_deref(), name);
    found.words = words::words(&head, &matched, &found);
    found.ingredients = matched
        .into_iter()
        .map(|it| it.change)
        .filter(IngredientChange::differs)
        .collect();
    found
}

/// Where the words stand that only one of two lists holds, each as often as it holds it more often than the other.
fn apart(before: &[&str], after: &[&str]) -> (Vec<usize>, Vec<usize>) {
    let alone = |ours: &[&str], theirs: &[&str]| {
        let mut there: HashMap<&str, usize> = HashMap::new();
        for words in theirs {
            *there.entry(words).or_default() += 1;
        }
        let mut alone = Vec::new();
        for (at, words) in ours.iter().enumerate() {
            match there.get_mut(words) {
                Some(count) if *count > 0 => *count -= 1,
                _ => alone.push(at),
            }
        }
        alone
    };
    (alone(before, after), alone(after, before))
}

/// The allergens that went, and those that came.
fn allergens(before: &Worksheet, after: &Worksheet) -> (Vec<String>, Vec<String>) {
    let words = |sheet: &Worksheet| -> Vec<&str> {
        let all = sheet.allergens.iter();
        all.map(|note| note.allergen.words()).collect()
    };
    let names = |sheet: &Worksheet, places: Vec<usize>| {
        let names = places.iter().map(|at| sheet.allergens[*at].name.clone());
        names.collect()
    };
    let (went, came) = apart(&words(before), &words(after));
    (names(before, went), names(after, came))
}

/// The findings that went, and those that came.
fn findings(before: &Worksheet, after: &Worksheet) -> (Vec<FindingNote>, Vec<FindingNote>) {
    let words =
        |sheet: &Worksheet| -> Vec<&str> { sheet.findings.iter().map(|it| it.name).collect() };
    let notes = |sheet: &Worksheet, places: Vec<usize>| {
        let notes = places
            .iter()
            .map(|at| FindingNote::of(&sheet.findings[*at]));
        notes.collect()
    };
    let (went, came) = apart(&words(before), &words(after));
    (notes(before, went), notes(after, came))
}

/// The lines that are no ingredients and went, and those that came.
fn others(before: &Worksheet, after: &Worksheet) -> (Vec<String>, Vec<String>) {
    let texts = |lines: &[&str], places: Vec<usize>| {
        let texts = places.iter().map(|at| lines[*at].to_owned());
        texts.collect()
    };
    let (old, new) = (other_lines(before), other_lines(after));
    let (went, came) = apart(&old, &new);
    (texts(&old, went), texts(&new, came))
}

/// The words of the lines that are no ingredients.
fn other_lines(sheet: &Worksheet) -> Vec<&str> {
    let is_other = |line: &&SheetLine| {
        matches!(
            line.status,
            Status::Title | Status::Heading | Status::Method | Status::Note
        )
    };
    let lines = sheet.lines.iter().filter(is_other);
    lines.map(|line| line.text.trim()).collect()
}

/// What is said of a recipe: a label, and how it is got from a worksheet.
type Said = (&'static str, fn(&Worksheet) -> String);

/// Everything that is said, in the order shown. A row more is all that another one takes.
const SAID: &[Said] = &[
    ("Plant-based", |sheet| match sheet.is_plant_based {
        Some(true) => "yes, by its ingredients".into(),
        Some(false) => "no".into(),
        None if sheet.plant_based.is_empty() => "nothing to tell it by".into(),
        None => "if the packets say so".into(),
    }),
    ("Pan", |sheet| sheet.pans.own.label.clone()),
    ("Cups and spoons", |sheet| {
        sheet.country.region.words().into()
    }),
    ("Wait before the oven", |sheet| {
        match sheet.leavening.said.waits() {
            Ok(Some(minutes)) => format!("{} min", show::plain(minutes)),
            _ => "not said".into(),
        }
    }),
    ("Measured crumb pH", |sheet| {
        match sheet.leavening.said.crumb_ph() {
            Ok(Some(ph)) => show::plain(ph),
            _ => "none".into(),
        }
    }),
];

fn said(before: &Worksheet, after: &Worksheet) -> Vec<SaidChange> {
    let change = |(label, of): &Said| SaidChange {
        label,
        before: of(before),
        after: of(after),
    };
    SAID.iter().map(change).collect()
}
