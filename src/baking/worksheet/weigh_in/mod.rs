//! The formula as a sequence of weighings, one bowl after the other, with what the scale shows at each.
//!
//! Goes in: a recipe as for a worksheet, and what of it is in the bowls. Comes out: bowls in the order of the method, for
//! each ingredient what to weigh and what the scale then shows, what is over or short, and what stands beside the scale.

mod record;
mod row;

pub use record::{PutIn, WeighIn, grams_typed};
pub use row::{Miss, WeighRow};

use super::gather::{Known, with_facts};
use super::{Inputs, LinePart, Looks, Settings};
use crate::baking::formula::{Place, Unweighed, Weighed};
use crate::baking::ingredient::Own;
use crate::baking::quantity::{Mass, show};
use crate::baking::recipe::{Bowl, Portion, Recipe, Role, StepTime, bowls, step_times};
use row::{Scale, row};
use serde::Serialize;

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
    let (recipe, formula) = (known.recipe, known.facts.formula);
    let scale = Scale {
        times: known.facts.fit.factor.unwrap_or(1.0) * weigh_in.growth(),
        step: settings.scale.grams(),
        is_zeroed: weigh_in.zeroed,
    };
    let mut misses = Vec::new();
    let found: Vec<BowlSheet> = bowls(recipe)
        .iter()
        .filter_map(|bowl| {
            let weighed: Vec<(&Weighed, &Portion)> = bowl
                .portions
                .iter()
                .filter_map(|portion| {
                    let is_it = |line: &&Weighed| (line.line, line.part) == portion.place;
                    Some((formula.lines.iter().find(is_it)?, portion))
                })
                .collect();
            let mut total = 0.0;
            let rows: Vec<WeighRow> = weighed
                .into_iter()
                .filter_map(|(weighed, portion)| {
                    let line = inputs.line_words(portion.place)?;
                    let is_in = weigh_in.grams_of(&line);
                    let found = row(recipe, weighed, portion, line, is_in, total, &scale);
                    total = found.total;
                    if let Some(grams) = is_in
                        && found.miss.is_some()
                    {
                        misses.push((portion.place, grams));
                    }
                    Some(found)
                })
                .collect();
            (!rows.is_empty()).then(|| bowl_sheet(bowl, rows))
        })
        .enumerate()
        .map(|(at, bowl)| BowlSheet {
            title: match bowl.title.as_str() {
                "" => format!("Bowl {}", at + 1),
                words => format!("Bowl {}: {words}", at + 1),
            },
            ..bowl
        })
        .collect();
    let rows = || found.iter().flat_map(|bowl| &bowl.rows);
    let strays = weigh_in
        .put_in
        .iter()
        .filter(|it| !rows().any(|row| row.words == it.line))
        .map(|it| {
            format!(
                "{} of {} are in a bowl, and the recipe has no such line any more.",
                show::mass(Mass::grams(it.grams)),
                show::amid(&it.name)
            )
        })
        .collect();
    WeighInSheet {
        weighings: rows().count(),
        done: rows().filter(|row| row.is_in).count(),
        beside: beside(recipe, &formula.lines, &formula.unweighed),
        amount: known
            .facts
            .fit
            .factor
            .map(|factor| format!("{} times the recipe", show::factor(factor))),
        grown: (weigh_in.growth() != 1.0).then(|| {
            format!(
                "Everything is weighed {} times, since something was.",
                show::factor(weigh_in.growth())
            )
        }),
        strays,
        method: method(recipe, inputs, weigh_in),
        timers: step_times(recipe).iter().map(offer).collect(),
        times: scale.times,
        misses,
        bowls: found,
    }
}

fn bowl_sheet(bowl: &Bowl, rows: Vec<WeighRow>) -> BowlSheet {
    let heading = bowl.heading.as_deref().map(show::amid);
    let title = match (&bowl.vessel, heading) {
        (Some(vessel), _) if vessel != "bowl" => vessel.clone(),
        (_, Some(heading)) => heading,
        _ => String::new(),
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

fn method(recipe: &Recipe, inputs: &Inputs, weigh_in: &WeighIn) -> Vec<MethodRow> {
    let lines = recipe.lines.iter().filter(|line| line.role == Role::Method);
    lines
        .map(|line| MethodRow {
            line: line.number,
            text: line.text.trim().to_owned(),
            is_done: inputs
                .line_words((line.number, 0))
                .is_some_and(|words| weigh_in.steps.contains(&words)),
        })
        .collect()
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
