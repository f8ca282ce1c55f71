//! One weighing: what to put in, what the scale then shows, and how far off it was.

use crate::baking::formula::{Weighed, eggs};
use crate::baking::ingredient::Group;
use crate::baking::quantity::{Mass, show};
use crate::baking::recipe::{Portion, Reading, Recipe, Role};
use crate::baking::worksheet::LineWords;
use serde::Serialize;

/// One weighing.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WeighRow {
    /// The line of the text.
    pub line: usize,
    /// The ingredient as it is kept: the words of its line.
    #[serde(skip)]
    pub words: LineWords,
    /// The ingredient, as the recipe calls it.
    pub name: String,
    /// What the recipe writes.
    pub written: String,
    /// What to put in, g.
    pub exact: f64,
    /// The same as finely as it is weighed.
    pub target: f64,
    /// "250 g".
    pub target_shown: String,
    /// What is in the bowl before it, g.
    pub before: f64,
    /// What is in the bowl after it, g.
    pub total: f64,
    /// What the scale shows then, "410 g"; `None` where it is zeroed each time, or for what is weighed by itself.
    pub total_shown: Option<String>,
    /// How many eggs, or spoons, that is.
    pub counted: Option<String>,
    /// What the weight may be in the recipe's own measure: "231 to 268 g".
    pub range: Option<String>,
    /// What is to be minded, as sentences.
    pub notes: Vec<String>,
    /// Whether it is in.
    pub is_in: bool,
    /// How much of it is in, g.
    pub grams_in: Option<f64>,
    /// "262 g are in".
    pub in_shown: Option<String>,
    /// How far off that is.
    pub miss: Option<Miss>,
}

/// How far a weight is off what is wanted.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Miss {
    /// More than wanted, and not less.
    pub is_over: bool,
    /// "12 g over, 5 %", "33 g more to go in".
    pub words: String,
    /// By how much all the rest is weighed larger to suit it: "1.05 times"; `None` where that is beyond what one bakes.
    pub grow: Option<String>,
}

/// How the bench weighs.
pub struct Scale {
    /// How much of the recipe is weighed.
    pub times: f64,
    /// What the scale reads to, g.
    pub step: f64,
    /// Whether it is zeroed at each weight.
    pub is_zeroed: bool,
}

/// Below so many steps of the scale, a weight is read too roughly.
const FINE: f64 = 10.0;
/// A weight nearer to what is wanted than this share of it is right.
const RIGHT: f64 = 0.01;

impl Scale {
    /// A weight as finely as it is weighed: by the scale's steps, and what is too little for it by the tenth of a gram.
    fn rounded(&self, grams: f64) -> f64 {
        let step = if self.is_fine(grams) {
            self.step.min(0.1)
        } else {
            self.step
        };
        (grams / step).round() * step
    }

    fn is_fine(&self, grams: f64) -> bool {
        grams < FINE * self.step
    }
}

/// The weighing of a portion; `before` is what the bowl holds already.
pub fn row(
    recipe: &Recipe,
    weighed: &Weighed,
    portion: &Portion,
    words: LineWords,
    grams_in: Option<f64>,
    before: f64,
    scale: &Scale,
) -> WeighRow {
    let exact = weighed.grams.mean.to_grams() * scale.times;
    let target = scale.rounded(exact);
    let total = before + grams_in.unwrap_or(target);
    let reading = recipe
        .lines
        .get(weighed.line - 1)
        .and_then(|line| match &line.role {
            Role::Ingredient(reading) => reading.all().nth(weighed.part),
            _ => None,
        });
    let by_itself = scale.is_fine(exact) && scale.step > 0.1;
    let counted = counted(weighed, reading, exact, by_itself);
    let mut notes = Vec::new();
    if by_itself {
        notes.push(format!(
            "Too little for a scale that reads to {}: weigh it on a finer one{}.",
            show::mass(Mass::grams(scale.step)),
            if counted.is_some() {
                ", or spoon it level"
            } else {
                ""
            }
        ));
    }
    if !portion.again.is_empty() {
        notes.push(format!(
            "Only a part goes in at first: see {}.",
            show::lines(&portion.again)
        ));
    }
    if !portion.is_named {
        notes.push("The method does not name it.".to_owned());
    }
    WeighRow {
        line: weighed.line,
        name: reading
            .map(|reading| reading.name.trim())
            .filter(|name| !name.is_empty())
            .map_or_else(|| weighed.ingredient.name.to_owned(), show::sentence),
        written: recipe
            .lines
            .get(weighed.line - 1)
            .map_or_else(String::new, |line| line.text.trim().to_owned()),
        exact,
        target,
        target_shown: grams(target),
        before,
        total,
        total_shown: (!scale.is_zeroed && before > 0.0).then(|| grams(total)),
        counted,
        range: show::mass_range(&weighed.grams.times(scale.times)),
        notes,
        is_in: grams_in.is_some(),
        in_shown: grams_in.map(|is_in| format!("{} in", grams(is_in))),
        miss: grams_in.and_then(|is_in| miss(is_in, exact, target, scale)),
        grams_in,
        words,
    }
}

fn grams(grams: f64) -> String {
    show::mass(Mass::grams(grams))
}

/// Eggs by their count, and what is too little for the scale by the spoon.
fn counted(
    weighed: &Weighed,
    reading: Option<&Reading>,
    exact: f64,
    by_itself: bool,
) -> Option<String> {
    if let Some(eggs) = reading.and_then(|reading| eggs(weighed, reading)) {
        let count = exact / eggs.each.to_grams();
        return Some(format!(
            "{} of {} each",
            show::factor(count),
            show::mass(eggs.each)
        ));
    }
    let is_spooned = by_itself && weighed.ingredient.group != Group::Egg;
    let teaspoon = weighed.ingredient.teaspoon().filter(|_| is_spooned)?;
    Some(show::teaspoons(exact / teaspoon))
}

fn miss(is_in: f64, exact: f64, target: f64, scale: &Scale) -> Option<Miss> {
    let off = is_in - target;
    // What is read to a step is right to half of it.
    let fine = if scale.is_fine(exact) {
        0.05
    } else {
        scale.step / 2.0
    };
    if off.abs() <= fine + 1e-9 || off.abs() < RIGHT * target {
        return None;
    }
    let percent = (target > 0.0).then(|| show::fixed((off / target * 100.0).abs(), 0));
    let words = match (off > 0.0, percent) {
        (true, Some(percent)) => format!("{} over, {percent} %", grams(off)),
        (true, None) => format!("{} over", grams(off)),
        (false, _) => format!("{} more to go in", grams(-off)),
    };
    let grow = is_in / exact;
    Some(Miss {
        is_over: off > 0.0,
        words,
        grow: (exact > 0.0 && (0.2..=5.0).contains(&grow))
            .then(|| format!("{} times", show::factor(grow))),
    })
}
