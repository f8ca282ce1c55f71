//! What came out of several bakes, side by side.

use super::answer::SURE;
use super::factor::Factor;
use super::outcome::Outcome;
use super::table::Table;
use crate::baking::statistics::scatter::Scatter;
use crate::baking::trial::{Measured, Trial, measured};
use crate::baking::worksheet::Settings;

/// One outcome of every bake.
#[derive(Clone, Debug, PartialEq)]
pub struct OutcomeRow {
    /// Which.
    pub outcome: Outcome,
    /// One figure for each bake; `None` where it was not measured.
    pub values: Vec<Option<f64>>,
    /// The same in words.
    pub shown: Vec<Option<String>>,
    /// What the difference says; empty where fewer than two were measured.
    pub says: String,
}

/// The outcomes that any of `chosen` has. `all` are the bakes of the recipe, whose repeats tell the scatter; `chosen` are
/// places among them.
pub fn beside(all: &[&Trial], chosen: &[usize], settings: &Settings) -> Vec<OutcomeRow> {
    let found: Vec<Measured> = all
        .iter()
        .map(|it| measured(it, settings, None).0)
        .collect();
    let table = Table::of(all, &Factor::Oven, settings);
    let rows = Outcome::all().map(|outcome| {
        let value = |at: usize| outcome.value(all[at], &found[at], settings);
        let values: Vec<Option<f64>> = chosen.iter().map(|at| value(*at)).collect();
        let known: Vec<usize> = (0..all.len()).filter(|at| value(*at).is_some()).collect();
        let figures: Vec<f64> = known.iter().filter_map(|at| value(*at)).collect();
        let pure = table.repeats(&figures, &known);
        let (sum, degrees) = pure.map_or((0.0, 0), |it| (it.sum, it.degrees));
        let scatter = Scatter::of(sum, degrees, Some(outcome.usual(settings)));
        let said = |value: &Option<f64>| value.map(|it| outcome.said(it, settings));
        OutcomeRow {
            outcome,
            shown: values.iter().map(said).collect(),
            says: scatter.map_or(String::new(), |it| says(outcome, &values, it, settings)),
            values,
        }
    });
    rows.filter(|row| row.values.iter().any(Option::is_some))
        .collect()
}

fn says(outcome: Outcome, values: &[Option<f64>], scatter: Scatter, settings: &Settings) -> String {
    let known: Vec<f64> = values.iter().flatten().copied().collect();
    let apart = known.iter().fold(f64::NEG_INFINITY, |a, b| a.max(*b))
        - known.iter().fold(f64::INFINITY, |a, b| a.min(*b));
    let least = scatter.least_difference(SURE, 1, 1);
    let (Some(least), true) = (least, known.len() > 1) else {
        return String::new();
    };
    let difference = outcome.said(apart, settings);
    if difference == outcome.said(0.0, settings) {
        return "Alike.".to_owned();
    }
    let whose = match scatter.usual {
        1.0 => "bakes of one recipe usually differ",
        0.0 => "your own repeats differ",
        _ => "by your own repeats and what is usual, two bakes of one recipe differ",
    };
    let (where_to, many) = match apart <= least {
        true => ("within", ""),
        false if known.len() > 2 => (
            "beyond",
            " Of several bakes the two furthest apart differ more by chance: a curve through all of them tells better.",
        ),
        false => ("beyond", ""),
    };
    format!(
        "{difference} apart, {where_to} the scatter: {whose} by up to {}.{many}",
        outcome.said(least, settings)
    )
}
