//! The things that may differ from one bake to another, as plain numbers.

use crate::baking::balance::counts_as_flour;
use crate::baking::ingredient::by_key;
use crate::baking::oven::scale::{OvenScale, read_setting};
use crate::baking::quantity::show;
use crate::baking::recipe::oven_settings;
use crate::baking::trial::{OutcomeField, Trial, Weight};
use crate::baking::worksheet::Settings;
use std::cell::OnceCell;

/// One thing that may differ.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Factor {
    /// The grams of an ingredient, for the recipe once.
    Weight(Part),
    /// The same as a percentage of the flour.
    AgainstFlour(Part),
    /// What the oven was set to, as a still oven would be, in the degrees of the baker's dial.
    Oven,
    /// Minutes between mixing and the oven.
    Waited,
}

/// An ingredient in its place.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Part {
    /// Its key in the tables, or its words.
    pub ingredient: String,
    /// Where it goes if not into the batter.
    pub beside: String,
    /// What it is called.
    pub name: String,
}

/// A factor that may be chosen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FactorChoice {
    /// Which.
    pub factor: Factor,
    /// Whether it is not the same in all of the bakes.
    pub differs: bool,
}

/// Weights are alike within this share of the larger: what a weigh-in takes for as planned.
pub(super) const ALIKE: f64 = 0.005;
/// Weights of so little are alike within this, g.
pub(super) const ALIKE_GRAMS: f64 = 0.05;

/// What may be chosen of some bakes: every ingredient by weight, then the oven and the wait, then every ingredient against
/// the flour, those that differ first among each.
pub fn factor_choices(trials: &[&Trial], settings: &Settings) -> Vec<FactorChoice> {
    let parts = parts(trials);
    let bakes = Bakes::of(trials, settings);
    let weights = parts.iter().cloned().map(Factor::Weight);
    let against = parts.iter().cloned().map(Factor::AgainstFlour);
    let mut choices: Vec<FactorChoice> = weights
        .chain([Factor::Oven, Factor::Waited])
        .chain(against)
        .map(|factor| FactorChoice {
            differs: bakes.differ(&factor),
            factor,
        })
        .collect();
    choices.sort_by_key(|it| (matches!(it.factor, Factor::AgainstFlour(_)), !it.differs));
    choices
}

/// Every ingredient of any of the bakes.
pub(super) fn parts(trials: &[&Trial]) -> Vec<Part> {
    let mut parts: Vec<Part> = Vec::new();
    for weight in trials.iter().flat_map(|trial| &trial.weights) {
        if !parts.iter().any(|part| part.is(weight)) {
            parts.push(Part {
                ingredient: weight.ingredient.clone(),
                beside: weight.beside.clone(),
                name: weight.name.clone(),
            });
        }
    }
    parts
}

/// Bakes that are asked for many factors: what each of these needs is looked for once.
pub(super) struct Bakes<'a> {
    trials: &'a [&'a Trial],
    settings: &'a Settings,
    flours: OnceCell<Vec<Option<f64>>>,
}

impl<'a> Bakes<'a> {
    /// Some bakes.
    pub fn of(trials: &'a [&'a Trial], settings: &'a Settings) -> Self {
        Self {
            trials,
            settings,
            flours: OnceCell::new(),
        }
    }

    /// How much of a factor each of them had; `None` is unknown.
    pub fn amounts(&self, factor: &Factor) -> Vec<Option<f64>> {
        let trials = self.trials.iter();
        match factor {
            Factor::Weight(part) => trials.map(|trial| part.grams(trial)).collect(),
            Factor::AgainstFlour(part) => {
                let of_all = || self.trials.iter().map(|trial| flour(trial)).collect();
                let flours = self.flours.get_or_init(of_all);
                let amounts = trials.zip(flours);
                amounts
                    .map(|(trial, flour)| part.against(trial, *flour))
                    .collect()
            }
            Factor::Oven => {
                // Most bakes have the text of the one before: its oven is looked for once.
                let mut before: Option<(&Trial, Option<f64>)> = None;
                let amount = |trial: &&'a Trial| {
                    let amount = match before {
                        Some((other, amount)) if is_same_oven(trial, other) => amount,
                        _ => oven(trial, self.settings),
                    };
                    before = Some((trial, amount));
                    amount
                };
                trials.map(amount).collect()
            }
            Factor::Waited => trials.map(|trial| waited(trial)).collect(),
        }
    }

    fn differ(&self, factor: &Factor) -> bool {
        let mut amounts = self.amounts(factor).into_iter().flatten();
        let first = amounts.next();
        first.is_some_and(|first| amounts.any(|it| (it - first).abs() > factor.alike(first)))
    }
}

impl Part {
    fn is(&self, weight: &Weight) -> bool {
        self.ingredient == weight.ingredient && self.beside == weight.beside
    }

    /// Its grams in a bake: 0 where it is not in it, `None` where it has no weight.
    fn grams(&self, trial: &Trial) -> Option<f64> {
        let found = trial.weights.iter().find(|weight| self.is(weight));
        found.map_or(Some(0.0), |weight| weight.grams)
    }

    /// Its per cent of the flour in a bake.
    fn against(&self, trial: &Trial, flour: Option<f64>) -> Option<f64> {
        let flour = flour.filter(|flour| *flour > 0.0)?;
        Some(100.0 * self.grams(trial)? / flour)
    }
}

impl Factor {
    /// How much of it a bake had; `None` is unknown.
    pub fn amount(&self, trial: &Trial, settings: &Settings) -> Option<f64> {
        Bakes::of(&[trial], settings).amounts(self).pop()?
    }

    /// How much of it each bake had.
    pub fn amounts(&self, trials: &[&Trial], settings: &Settings) -> Vec<Option<f64>> {
        Bakes::of(trials, settings).amounts(self)
    }

    /// What it is called within a sentence.
    pub fn words(&self) -> String {
        match self {
            Self::Weight(part) | Self::AgainstFlour(part) => {
                let name = show::amid(&part.name);
                match part.beside.as_str() {
                    "" => name,
                    beside => format!("{name} ({beside})"),
                }
            }
            Self::Oven => "the oven's heat".to_owned(),
            Self::Waited => "the wait before the oven".to_owned(),
        }
    }

    /// How it is measured, where that is not plain: what stands behind its name in a list.
    pub fn measure(&self) -> &'static str {
        match self {
            Self::AgainstFlour(_) => " against the flour",
            _ => "",
        }
    }

    /// The unit behind a figure.
    pub fn unit(&self, settings: &Settings) -> &'static str {
        match self {
            Self::Weight(_) => " g",
            Self::AgainstFlour(_) => " % of the flour",
            Self::Oven if is_fahrenheit(settings) => " °F",
            Self::Oven => " °C",
            Self::Waited => " min",
        }
    }

    /// An amount with its unit.
    pub fn said(&self, amount: f64, settings: &Settings) -> String {
        let decimals = u32::from(amount.abs() < 20.0);
        format!("{}{}", show::trimmed(amount, decimals), self.unit(settings))
    }

    /// The least difference that the baker's scale, dial or clock shows.
    pub fn step(&self, settings: &Settings) -> f64 {
        match self {
            Self::Weight(_) => settings.scale.grams(),
            Self::AgainstFlour(_) => 0.5,
            Self::Oven => 5.0,
            Self::Waited => 1.0,
        }
    }

    /// Amounts near this one that are no further apart than this are repeats.
    pub(super) fn alike(&self, amount: f64) -> f64 {
        match self {
            Self::Weight(_) => (ALIKE * amount).max(ALIKE_GRAMS),
            Self::AgainstFlour(_) => (ALIKE * amount).max(0.1),
            Self::Oven | Self::Waited => 0.5,
        }
    }
}

/// The grams of flour in a batter; `None` where a line of it has no weight.
fn flour(trial: &Trial) -> Option<f64> {
    let batter = trial.weights.iter().filter(|it| it.beside.is_empty());
    let known: Vec<_> = batter
        .filter_map(|it| Some((by_key(&it.ingredient)?, it.grams)))
        .collect();
    let ingredients: Vec<_> = known.iter().map(|it| it.0).collect();
    let counts = counts_as_flour(&ingredients);
    let flours = known.iter().zip(counts).filter(|(_, counts)| *counts);
    flours.map(|((_, grams), _)| *grams).sum()
}

/// Whether nothing that tells the oven of two bakes differs.
fn is_same_oven(one: &Trial, other: &Trial) -> bool {
    one.typed(OutcomeField::Oven) == other.typed(OutcomeField::Oven)
        && one.plan.choices.oven.setting == other.plan.choices.oven.setting
        && one.plan.text == other.plan.text
}

/// What the oven was set to: as said of the bake, as chosen, or as the recipe has it.
fn oven(trial: &Trial, settings: &Settings) -> Option<f64> {
    let oven = settings.kitchen_oven();
    let typed = [
        trial.typed(OutcomeField::Oven),
        &trial.plan.choices.oven.setting,
    ];
    let said = typed.into_iter().find(|it| !it.trim().is_empty());
    let setting = match said {
        Some(said) => read_setting(said, oven.scale).ok().flatten()?,
        None => *oven_settings(&trial.plan.text).first()?,
    };
    let still = oven.still(setting);
    Some(match is_fahrenheit(settings) {
        true => still.to_fahrenheit(),
        false => still.to_celsius(),
    })
}

fn waited(trial: &Trial) -> Option<f64> {
    let typed = [
        trial.typed(OutcomeField::Waited),
        &trial.plan.choices.batter.waits,
    ];
    let said = typed.into_iter().find(|it| !it.trim().is_empty())?;
    let figure = said
        .trim()
        .trim_end_matches(|it: char| !it.is_ascii_digit());
    let minutes = crate::baking::pan::plain_number(figure)?;
    (0.0..=1440.0).contains(&minutes).then_some(minutes)
}

fn is_fahrenheit(settings: &Settings) -> bool {
    settings.kitchen_oven().scale == OvenScale::Fahrenheit
}
