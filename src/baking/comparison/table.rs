//! Bakes as rows, everything that may differ between them as columns.

use super::factor::{Bakes, Factor, parts};
use crate::baking::pan::PanEntry;
use crate::baking::statistics::apart::apart;
use crate::baking::statistics::scatter::{PureError, pure_error};
use crate::baking::trial::{OutcomeField, Trial};
use crate::baking::worksheet::Settings;

/// What differed between bakes.
pub(super) struct Table {
    /// What each column is called within a sentence.
    pub names: Vec<String>,
    /// One row for each bake. What is alike is the same number.
    pub rows: Vec<Vec<f64>>,
}

/// What stands in the place of an unknown amount: no amount is below 0, so that it counts as one of its own.
const UNKNOWN: f64 = -1.0;

impl Table {
    /// All that may differ; the first column is `factor`, the ingredients' are of its kind.
    pub fn of(trials: &[&Trial], factor: &Factor, settings: &Settings) -> Self {
        let is_against = matches!(factor, Factor::AgainstFlour(_));
        let parts = parts(trials).into_iter().map(|part| match is_against {
            true => Factor::AgainstFlour(part),
            false => Factor::Weight(part),
        });
        let others = parts.chain([Factor::Oven, Factor::Waited]);
        let factors: Vec<Factor> = std::iter::once(factor.clone())
            .chain(others.filter(|it| it != factor))
            .collect();
        let mut names: Vec<String> = factors.iter().map(Factor::words).collect();
        let bakes = Bakes::of(trials, settings);
        let mut columns: Vec<Vec<f64>> = factors
            .iter()
            .map(|factor| {
                let amounts = bakes.amounts(factor).into_iter();
                alike(factor, amounts.map(|it| it.unwrap_or(UNKNOWN)).collect())
            })
            .collect();
        names.extend(["the size of the batch", "the pan", "the method"].map(str::to_owned));
        columns.push(trials.iter().map(|it| it.times()).collect());
        columns.push(numbered(trials.iter().map(|it| pan(it)).collect()));
        columns.push(numbered(trials.iter().map(|it| it.method).collect()));
        let rows = (0..trials.len()).map(|row| columns.iter().map(|column| column[row]).collect());
        Self {
            rows: rows.collect(),
            names,
        }
    }

    /// The scatter of bakes in which nothing differed; `None` where nothing was repeated.
    pub fn repeats(&self, outcomes: &[f64], of: &[usize]) -> Option<PureError> {
        let kinds: Vec<&Vec<f64>> = of.iter().map(|row| &self.rows[*row]).collect();
        pure_error(&kinds, outcomes)
    }

    /// What the first column cannot be told from, and what else changed beside it.
    pub fn beside_the_first(&self) -> (Vec<&str>, Vec<&str>) {
        let Some(apart) = apart(&self.rows) else {
            return (Vec::new(), Vec::new());
        };
        let named = |places: Vec<usize>| places.into_iter().map(|it| self.names[it].as_str());
        let mixed = apart.mixed.iter().find(|group| group.contains(&0));
        let mixed: Vec<usize> = mixed
            .into_iter()
            .flatten()
            .copied()
            .filter(|it| *it != 0)
            .collect();
        let is_other = |it: &usize| *it != 0 && !apart.still.contains(it) && !mixed.contains(it);
        let others = (0..self.names.len()).filter(is_other).collect();
        (named(mixed.clone()).collect(), named(others).collect())
    }
}

/// A column in which amounts that are alike are the same, the smaller one's.
fn alike(factor: &Factor, mut column: Vec<f64>) -> Vec<f64> {
    let mut order: Vec<usize> = (0..column.len()).collect();
    order.sort_by(|a, b| column[*a].total_cmp(&column[*b]));
    let mut first = f64::NEG_INFINITY;
    for place in order {
        if column[place] - first > factor.alike(first.max(column[place])) {
            first = column[place];
        }
        column[place] = first;
    }
    column
}

/// Each as its place among those that are different.
fn numbered<T: PartialEq + Copy>(values: Vec<T>) -> Vec<f64> {
    let mut different: Vec<T> = Vec::new();
    let place = |value: &T| {
        let known = different.iter().position(|it| it == value);
        known.unwrap_or_else(|| {
            different.push(*value);
            different.len() - 1
        }) as f64
    };
    values.iter().map(place).collect()
}

/// What it was baked in, as said of the bake and as planned.
fn pan(trial: &Trial) -> (&str, &[PanEntry], &Option<PanEntry>) {
    let planned = &trial.plan.choices;
    (
        trial.typed(OutcomeField::Pan).trim(),
        &planned.shelf,
        &planned.own_pan,
    )
}
