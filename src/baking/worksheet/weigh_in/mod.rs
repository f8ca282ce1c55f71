//! The formula as a sequence of weighings, one bowl after the other, with what the scale shows at each.
//!
//! Goes in: a recipe as for a worksheet, and what of it is in the bowls. Comes out: bowls in the order of the method, for
//! each ingredient what to weigh and what the scale then shows, what is over or short, and what stands beside the scale.

mod record;
mod row;

pub use record::{PutIn, WeighIn, grams_typed};
pub use row::{Miss, WeighRow};

use super::gather::{Known, with_facts};
use super::input::words_of_lines;
use super::{Inputs, LinePart, LineWords, Looks, Settings};
use crate::baking::formula::{Place, Unweighed, Weighed};
use crate::baking::ingredient::Own;
use crate::baking::quantity::{Mass, show};
use crate::baking::recipe::{Bowl, Recipe, Role, StepTime, bowls, step_times};
use row::{Scale, row};
use serde::Serialize;
use std::collections::{HashMap, HashSet};

/// A recipe at the scale.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WeighInSheet {
    /// The bowls, in the order in which they are filled.
    pub bowls: Vec<BowlSheet>,
    /// What is not weighed into a bowl: for the pan, to serve, optional, or without a weight.
    pub beside: Vec<BesideRow>,
    /// How many weighings there are.
    pub weighings: usize,
    /// How many of them are done.
    pub done: usize,
    /// What is baked, where that is not the recipe as it stands: "1.5 times the recipe".
    pub amount: Option<String>,
    /// What everything was grown by, in words.
    pub grown: Option<String>,
    /// What is in the bowls and no longer in the recipe, as sentences.
    pub strays: Vec<String>,
    /// The method, line by line.
    pub method: Vec<MethodRow>,
    /// Times that the method names, for timers.
    pub timers: Vec<TimeOffer>,
    /// How much of the recipe is weighed.
    #[serde(skip)]
    pub times: f64,
    /// What is in the bowls otherwise than planned, and how much of it, g.
    #[serde(skip)]
    pub misses: Vec<(LinePart, f64)>,
}

/// One bowl.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BowlSheet {
    /// "Bowl 1: large bowl", "Bowl 3: for the glaze".
    pub title: String,
    /// The lines of the method that fill it.
    pub lines: Vec<usize>,
    /// What goes in, one after the other.
    pub rows: Vec<WeighRow>,
    /// "430 of 760 g are in".
    pub so_far: String,
    /// Whether all of it is in.
    pub is_done: bool,
}

/// Something that stands beside the scale.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct BesideRow {
    /// The line of the text.
    pub line: usize,
    /// The line as it was pasted.
    pub text: String,
    /// Why it is in no bowl.
    pub why: String,
}

/// A line of the method.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct MethodRow {
    /// The line of the text.
    pub line: usize,
    /// Its words.
    pub text: String,
    /// Whether it is done.
    pub is_done: bool,
}

/// A time that a timer may be set to.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TimeOffer {
    /// What is done for so long: "Bake".
    pub name: String,
    /// How long, minutes: the shortest, when one goes and looks.
    pub minutes: f64,
    /// "32 to 36 minutes, line 21".
    pub words: String,
}

/// A recipe at the scale, as things are now.
pub fn weigh_in_sheet(
    inputs: &Inputs,
    settings: &Settings,
    own: &Own,
    weigh_in: &WeighIn,
) -> WeighInSheet {
    with_facts(&mut Looks::default(), inputs, settings, own, |known| {
        sheet(&known, inputs, settings, weigh_in)
    })
}

fn sheet(known: &Known, inputs: &Inputs, settings: &Settings, weigh_in: &WeighIn) -> WeighInSheet {
    let (recipe, formula, factor) = (known.recipe, known.facts.formula, known.facts.fit.factor);
    let bench = Bench {
        scale: Scale {
            recipe,
            percentages: known.facts.percentages,
            times: factor.unwrap_or(1.0) * weigh_in.growth(),
            step: settings.scale.grams(),
            is_zeroed: weigh_in.zeroed,
        },
        weighed: formula
            .lines
            .iter()
            .map(|line| ((line.line, line.part), line))
            .collect(),
        words: words_of_lines(&inputs.recipe_text()),
        weigh_in,
    };
    let filled = bowls(recipe)
        .into_iter()
        .map(|bowl| (bench.rows(&bowl), bowl));
    let bowls: Vec<BowlSheet> = filled
        .filter(|(rows, _)| !rows.is_empty())
        .enumerate()
        .map(|(at, (rows, bowl))| bowl_sheet(at + 1, &bowl, rows))
        .collect();
    let rows = || bowls.iter().flat_map(|bowl| &bowl.rows);
    WeighInSheet {
        weighings: rows().count(),
        done: rows().filter(|row| row.is_in).count(),
        beside: beside(recipe, &formula.lines, &formula.unweighed),
        amount: factor.map(|factor| format!("{} times the recipe", show::factor(factor))),
        grown: (weigh_in.growth() != 1.0).then(|| {
            format!(
                "Everything is weighed {} times, since something was.",
                show::factor(weigh_in.growth())
            )
        }),
        strays: strays(weigh_in, rows()),
        method: bench.method(),
        timers: step_times(recipe).iter().map(offer).collect(),
        times: bench.scale.times,
        misses: rows()
            .filter(|row| row.miss.is_some())
            .filter_map(|row| Some(((row.line, row.words.part), row.grams_in?)))
            .collect(),
        bowls,
    }
}

/// What is on the bench: how it weighs, what there is to weigh, and what is in.
struct Bench<'a> {
    scale: Scale<'a>,
    weighed: HashMap<LinePart, &'a Weighed>,
    /// The words of each line of the text, and which of its likes it is.
    words: Vec<(String, usize)>,
    weigh_in: &'a WeighIn,
}

impl Bench<'_> {
    /// The weighings of a bowl; what has no weight is not among them.
    fn rows(&self, bowl: &Bowl) -> Vec<WeighRow> {
        let mut total = 0.0;
        let mut rows = Vec::new();
        for portion in &bowl.portions {
            let Some(weighed) = self.weighed.get(&portion.place) else {
                continue;
            };
            let words = self.words(portion.place);
            let is_in = self.weigh_in.grams_of(&words);
            let found = row(weighed, portion, words, is_in, total, &self.scale);
            total = found.total;
            rows.push(found);
        }
        rows
    }

    fn words(&self, (line, part): LinePart) -> LineWords {
        let found = line.checked_sub(1).and_then(|at| self.words.get(at));
        let (text, occurrence) = found.cloned().unwrap_or_default();
        LineWords {
            text,
            occurrence,
            part,
        }
    }

    fn method(&self) -> Vec<MethodRow> {
        let lines = self.scale.recipe.lines.iter();
        lines
            .filter(|line| line.role == Role::Method)
            .map(|line| MethodRow {
                line: line.number,
                text: line.text.trim().to_owned(),
                is_done: self.weigh_in.steps.contains(&self.words((line.number, 0))),
            })
            .collect()
    }
}

/// What is in a bowl and no longer in the recipe.
fn strays<'a>(weigh_in: &WeighIn, rows: impl Iterator<Item = &'a WeighRow>) -> Vec<String> {
    let known: HashSet<&LineWords> = rows.map(|row| &row.words).collect();
    let gone = weigh_in
        .put_in
        .iter()
        .filter(|it| !known.contains(&it.line));
    gone.map(|it| {
        format!(
            "{} of {} are in a bowl, and the recipe has no such line any more.",
            show::mass(Mass::grams(it.grams)),
            show::amid(&it.name)
        )
    })
    .collect()
}

/// A bowl by its number, from 1.
fn bowl_sheet(number: usize, bowl: &Bowl, rows: Vec<WeighRow>) -> BowlSheet {
    let heading = bowl.heading.as_deref().map(show::amid);
    let title = match (&bowl.vessel, heading) {
        (Some(vessel), _) if vessel != "bowl" => format!("Bowl {number}: {vessel}"),
        (_, Some(heading)) => format!("Bowl {number}: {heading}"),
        _ => format!("Bowl {number}"),
    };
    let is_in: f64 = rows.iter().filter_map(|row| row.grams_in).sum();
    let wanted: f64 = rows.iter().map(|row| row.target).sum();
    let figure = |grams: f64| show::mass(Mass::grams(grams));
    BowlSheet {
        title,
        lines: bowl.lines.clone(),
        so_far: format!("{} of {} are in", figure(is_in), figure(wanted)),
        is_done: rows.iter().all(|row| row.is_in),
        rows,
    }
}

/// What is in no bowl, in the order of the text.
fn beside(recipe: &Recipe, weighed: &[Weighed], unweighed: &[Unweighed]) -> Vec<BesideRow> {
    let text = |line: usize| {
        let line = recipe.lines.get(line - 1);
        line.map_or("", |line| line.text.trim()).to_owned()
    };
    let apart = weighed.iter().filter_map(|line| {
        let why = match line.place {
            Place::Batter | Place::Beside => return None,
            place => place.words().unwrap_or_default(),
        };
        Some(BesideRow {
            line: line.line,
            text: text(line.line),
            why: format!("{why}. {} as written.", show::mass(line.grams.mean)),
        })
    });
    let without = unweighed.iter().map(|line| BesideRow {
        line: line.line,
        text: text(line.line),
        why: line.why.clone(),
    });
    let mut rows: Vec<BesideRow> = apart.chain(without).collect();
    rows.sort_by_key(|row| row.line);
    rows
}

fn offer(time: &StepTime) -> TimeOffer {
    TimeOffer {
        name: time.deed.to_owned(),
        minutes: time.low,
        words: format!(
            "{}, line {}",
            super::oven::minutes_words([time.low, time.high]),
            time.line
        ),
    }
}
