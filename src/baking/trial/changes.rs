//! What changed from one bake to another, in grams and per cent, and what can be concluded from it.

use super::{OutcomeField, Trial, Weight};
use crate::baking::ingredient::{Allergen, Own, by_key};
use crate::baking::quantity::{Mass, show};
use crate::baking::worksheet::{Inputs, Settings, WeighIn};
use serde::Serialize;

/// What changed between two bakes.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Changes {
    /// Ingredients that are more, less, there or gone, in the order of the later bake; what went stands last.
    pub amounts: Vec<AmountChange>,
    /// What was done otherwise.
    pub others: Vec<OtherChange>,
    /// All of it in one line: "caster sugar 200 to 180 g (−10 %); oven: as planned to 170 C". Empty where nothing changed.
    pub line: String,
    /// Allergens that came in, as labels name them.
    pub allergens: Vec<&'static str>,
    /// How many things changed.
    pub things: usize,
    /// What can be concluded, in a sentence or two.
    pub tells: String,
}

impl Changes {
    /// Whether more than one thing changed, so that nothing tells which of them did it.
    pub fn is_mixed(&self) -> bool {
        self.things > 1
    }
}

/// An ingredient that changed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AmountChange {
    /// Its key in the tables, or its words.
    pub ingredient: String,
    /// What it is called.
    pub name: String,
    /// Grams before, for the recipe once; 0 where it was not there, `None` where it had no weight.
    pub before: Option<f64>,
    /// Grams after.
    pub after: Option<f64>,
    /// "200 to 180 g (−10 %)", "2.6 g added", "12 g left out".
    pub shown: String,
}

/// Something done otherwise.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct OtherChange {
    /// What: "Oven".
    pub label: &'static str,
    /// Before, in words.
    pub before: String,
    /// After, in words.
    pub after: String,
}

/// Weights nearer to one another than this are the same: what a weigh-in takes for as planned, relatively and g.
const SAME: (f64, f64) = (0.005, 0.05);
/// All amounts grown alike are one thing, where their ratios differ by less than this.
const ALIKE: f64 = 0.01;

/// What changed from one bake to another of the same recipe or of versions of it.
pub fn changes(before: &Trial, after: &Trial) -> Changes {
    let amounts = amounts(&before.weights, &after.weights);
    let others = others(before, after);
    let mut pieces: Vec<String> = match grown(&amounts, before, after) {
        Some(times) => vec![format!("everything {} times", show::factor(times))],
        None => amounts
            .iter()
            .map(|it| format!("{} {}", show::amid(&it.name), it.shown))
            .collect(),
    };
    let of_amounts = match exchanged(&amounts) {
        Some(_) => 1,
        None => pieces.len(),
    };
    pieces.extend(others.iter().map(|it| match it.before.is_empty() {
        true => show::amid(&it.after),
        false => format!("{}: {} to {}", show::amid(it.label), it.before, it.after),
    }));
    let things = of_amounts + others.len();
    Changes {
        line: pieces.join("; "),
        tells: tells(things, &amounts, &others),
        allergens: allergens(before, after),
        things,
        amounts,
        others,
    }
}

/// What a version changed of what it was made from.
pub fn version_changes(before: &Inputs, after: &Inputs, settings: &Settings, own: &Own) -> Changes {
    let of = |plan| Trial::of(plan, settings, own, &WeighIn::default(), 0);
    changes(&of(before), &of(after))
}

fn amounts(before: &[Weight], after: &[Weight]) -> Vec<AmountChange> {
    let (was, is) = (in_order(before), in_order(after));
    let changed = after.iter().filter_map(|now| {
        let was = found(&was, now);
        change(now, was.map_or(Some(0.0), |was| was.grams), now.grams)
    });
    let gone = before.iter().filter(|was| found(&is, was).is_none());
    let gone = gone.filter_map(|was| change(was, was.grams, Some(0.0)));
    changed.chain(gone).collect()
}

/// What tells one weight of a bake from its others: what it is, and where it goes.
fn place(weight: &Weight) -> (&str, &str) {
    (&weight.ingredient, &weight.beside)
}

fn in_order(weights: &[Weight]) -> Vec<&Weight> {
    let mut sorted: Vec<&Weight> = weights.iter().collect();
    sorted.sort_by_key(|weight| place(weight));
    sorted
}

/// The first of them that stands for the same.
fn found<'a>(sorted: &[&'a Weight], like: &Weight) -> Option<&'a Weight> {
    let at = sorted.partition_point(|it| place(it) < place(like));
    let found = sorted.get(at).copied();
    found.filter(|it| place(it) == place(like))
}

fn change(weight: &Weight, before: Option<f64>, after: Option<f64>) -> Option<AmountChange> {
    let figure = |grams: f64| show::mass(Mass::grams(grams));
    let shown = match (before, after) {
        (None, None) => return None,
        (Some(was), Some(now)) => {
            let apart = (now - was).abs();
            if apart <= SAME.1 || apart <= SAME.0 * was.max(now) {
                return None;
            }
            if was == 0.0 {
                format!("{} added", figure(now))
            } else if now == 0.0 {
                format!("{} left out", figure(was))
            } else {
                let percent = (now / was - 1.0) * 100.0;
                let sign = if percent < 0.0 { "−" } else { "+" };
                let (was, now) = (figure(was), figure(now));
                format!(
                    "{} to {now} ({sign}{} %)",
                    was.strip_suffix(" g")
                        .filter(|_| now.ends_with(" g"))
                        .unwrap_or(&was),
                    show::trimmed(percent.abs(), u32::from(percent.abs() < 10.0))
                )
            }
        }
        (Some(was), None) => format!("{} to an amount without a weight", figure(was)),
        (None, Some(now)) => format!("an amount without a weight to {}", figure(now)),
    };
    Some(AmountChange {
        ingredient: weight.ingredient.clone(),
        name: weight.name.clone(),
        before,
        after,
        shown,
    })
}

/// How much larger everything is, where all weights grew alike.
fn grown(amounts: &[AmountChange], before: &Trial, after: &Trial) -> Option<f64> {
    let is_all = amounts.len() > 1
        && amounts.len() == before.weights.len()
        && amounts.len() == after.weights.len();
    let ratio = |it: &AmountChange| match (it.before, it.after) {
        (Some(was), Some(now)) if was > 0.0 && now > 0.0 => Some(now / was),
        _ => None,
    };
    let first = ratio(amounts.first()?)?;
    let alike = |it| ratio(it).is_some_and(|ratio| (ratio / first - 1.0).abs() < ALIKE);
    (is_all && amounts.iter().all(alike)).then_some(first)
}

/// What stands in the place of what, where that is all that changed.
fn exchanged(amounts: &[AmountChange]) -> Option<(&AmountChange, &AmountChange)> {
    let [came, went] = amounts else { return None };
    let is_so = came.before == Some(0.0) && went.after == Some(0.0);
    is_so.then_some((came, went))
}

/// What was done otherwise, in the order in which it is done.
fn others(before: &Trial, after: &Trial) -> Vec<OtherChange> {
    let mut found = Vec::new();
    let words = |trial: &Trial, field: OutcomeField, planned: &str| {
        let said = trial.typed(field).trim();
        match (said, planned.trim()) {
            ("", "") => "as the recipe says".to_owned(),
            ("", planned) => planned.to_owned(),
            (said, _) => said.to_owned(),
        }
    };
    let mut differ = |label, before: String, after: String| {
        if before != after {
            found.push(OtherChange {
                label,
                before,
                after,
            });
        }
    };
    let times = |trial: &Trial| format!("{} times the recipe", show::factor(trial.times()));
    differ("Batch", times(before), times(after));
    differ(
        "Wait",
        words(
            before,
            OutcomeField::Waited,
            &before.plan.choices.batter.waits,
        ),
        words(
            after,
            OutcomeField::Waited,
            &after.plan.choices.batter.waits,
        ),
    );
    differ("Pan", pan_words(before), pan_words(after));
    differ(
        "Oven",
        words(
            before,
            OutcomeField::Oven,
            &before.plan.choices.oven.setting,
        ),
        words(after, OutcomeField::Oven, &after.plan.choices.oven.setting),
    );
    if before.method != after.method {
        found.push(OtherChange {
            label: "Method",
            before: String::new(),
            after: "the method is worded otherwise".to_owned(),
        });
    }
    found
}

/// The pan in words: as said of the bake, or as planned.
fn pan_words(trial: &Trial) -> String {
    if let Some(pan) = trial.other_pan() {
        return pan.label(pan.unit(Default::default()));
    }
    let choices = &trial.plan.choices;
    let planned = choices.shelf.iter().chain(&choices.own_pan);
    let labels = planned.filter_map(|entry| Some(entry.read().ok()?.label(entry.unit)));
    let labels: Vec<String> = labels.take(choices.shelf.len().max(1)).collect();
    match labels.is_empty() {
        true => "the recipe's".to_owned(),
        false => labels.join(", "),
    }
}

/// The allergens that the later one has and the earlier one has not.
fn allergens(before: &Trial, after: &Trial) -> Vec<&'static str> {
    let of = |trial: &Trial| {
        let known = trial.weights.iter().filter_map(|it| by_key(&it.ingredient));
        let mut all: Vec<Allergen> = known.flat_map(|it| it.allergens.clone()).collect();
        all.sort_unstable();
        all.dedup();
        all
    };
    let was = of(before);
    let came = of(after).into_iter().filter(|it| !was.contains(it));
    came.map(Allergen::words).collect()
}

fn tells(things: usize, amounts: &[AmountChange], others: &[OtherChange]) -> String {
    match (things, exchanged(amounts)) {
        (0, _) => "Nothing changed: a repeat. What differs between the two is scatter, and tells how much a difference \
            has to be to count."
            .to_owned(),
        (1, Some((came, went))) => format!(
            "One thing changed: {} in the place of {}. What differs beyond the scatter is its doing.",
            show::amid(&came.name),
            show::amid(&went.name)
        ),
        (1, None) => {
            "One thing changed. What differs beyond the scatter is its doing.".to_owned()
        }
        _ => format!(
            "{} things changed at once: what differs may be due to any of them, or to two that work together. It tells \
             whether this cake is better as a whole, not why. To know why, bake the other one again with {} alone changed.",
            show::count(things),
            largest(amounts, others)
        ),
    }
}

/// What changed most, relatively.
fn largest(amounts: &[AmountChange], others: &[OtherChange]) -> String {
    let by = |it: &AmountChange| match (it.before, it.after) {
        (Some(was), Some(now)) => (now - was).abs() / was.max(now),
        _ => 0.0,
    };
    let most = amounts
        .iter()
        .max_by(|one, other| by(one).total_cmp(&by(other)));
    most.map(|it| show::amid(&it.name))
        .or_else(|| {
            others
                .first()
                .map(|it| format!("the {}", show::amid(it.label)))
        })
        .unwrap_or_default()
}
