//! What bakes with a known time tell of the oven itself: by how much its dial is off.
//!
//! One recipe cannot tell its own time from the oven's heat. Several that were all done too soon, or too late, against what
//! their recipes say can: what they have in common is the oven.

use super::learn::is_undone;
use super::{Trial, measured};
use crate::baking::estimate::NORMAL_95;
use crate::baking::ingredient::Own;
use crate::baking::oven::forecast::{Answer, Ask};
use crate::baking::quantity::show;
use crate::baking::worksheet::{Looks, Settings, worksheet_again};

/// How much hotter the oven is asked to be to see what a kelvin does, K.
const STEP: f64 = 15.0;
/// As far off as a dial is looked for, K; one further off is broken.
const MOST: f64 = 60.0;
/// How far printed times were off where they were tried, as a relative standard deviation (`tests/heat/bakes.rs`).
const PRINTED: f64 = 0.13;
/// So many recipes have to agree.
const RECIPES: usize = 3;

/// What one bake tells.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OvenOff {
    /// By how much hotter the oven is than was reckoned with, K.
    pub kelvin: f64,
    /// Its standard deviation, K.
    pub deviation: f64,
}

/// What is asked of heat flow for a bake, and the minutes that it took; `None` where its time or its recipe's is not known, or it
/// was not done. Other timed bakes are left aside: they were baked in the same oven.
pub fn oven_ask(trial: &Trial, settings: &Settings, own: &Own) -> Option<(Ask, f64)> {
    let mut inputs = trial.as_baked();
    inputs.choices.oven.bakes.clear();
    let sheet = worksheet_again(&mut Looks::default(), &inputs, settings, own);
    let (found, _) = measured(trial, settings, None);
    let minutes = found.minutes?;
    let wanted = sheet.oven.rows.first().map(|row| row.core);
    if is_undone(found.core, wanted) {
        return None;
    }
    let mut ask = sheet.oven.ask.filter(|ask| !ask.known.is_empty())?;
    // What was baked in stands last where it is not the recipe's own pan.
    let baked = ask.asked.pop()?;
    let mut hotter = baked.clone();
    hotter.oven.celsius += STEP;
    ask.asked = vec![baked, hotter];
    ask.airs = None;
    Some((ask, minutes))
}

/// What the answer tells of the oven. `None` where either bake is not done in hours.
pub fn oven_off(answer: &Answer, minutes: f64) -> Option<OvenOff> {
    let [Some(as_set), Some(hotter)] = answer.bakes.as_slice() else {
        return None;
    };
    let slope = (hotter.minutes[1] / as_set.minutes[1]).ln() / STEP;
    let doubts = as_set.doubts;
    // The doubt of an oven is that of the writer's; a printed time is no surer than those that were tried, of the same pan too.
    let model = doubts.model.max(PRINTED);
    let deviation = [doubts.known, doubts.oven, doubts.done, doubts.stuff, model]
        .iter()
        .map(|doubt| doubt * doubt)
        .sum::<f64>()
        .sqrt();
    let off = OvenOff {
        kelvin: (minutes / as_set.minutes[1]).ln() / slope,
        deviation: deviation / slope.abs(),
    };
    (slope < 0.0 && off.kelvin.is_finite() && off.deviation.is_finite()).then_some(off)
}

/// What all bakes tell together.
#[derive(Clone, Debug, PartialEq)]
pub struct OvenSaid {
    /// In words.
    pub words: String,
    /// What the settings' field is to hold; `None` where nothing is to be changed.
    pub typed: Option<String>,
}

/// What bakes tell of the oven, each with the name of its recipe; bakes of one recipe count as one.
pub fn oven_said(told: &[(String, OvenOff)], settings: &Settings) -> OvenSaid {
    let mut recipes: Vec<(&str, Vec<OvenOff>)> = Vec::new();
    for (recipe, off) in told {
        match recipes.iter_mut().find(|(name, _)| name == recipe) {
            Some((_, of_it)) => of_it.push(*off),
            None => recipes.push((recipe, vec![*off])),
        }
    }
    let many = recipes.len();
    if many < RECIPES {
        return OvenSaid {
            words: format!(
                "{} with a time of its own so far: a recipe that is off looks like an oven that is. Time bakes of {RECIPES} recipes or more, each until it is done.",
                match many {
                    0 => "No recipe".to_owned(),
                    1 => "One recipe".to_owned(),
                    many => format!("{many} recipes"),
                }
            ),
            typed: None,
        };
    }
    // The mean, each weighed by its certainty. What one recipe has wrong all its bakes have.
    let (mut sum, mut weights) = (0.0, 0.0);
    for (_, of_it) in &recipes {
        let mean = |of: fn(&OvenOff) -> f64| of_it.iter().map(of).sum::<f64>() / of_it.len() as f64;
        let weight = mean(|off| off.deviation).max(1.0).powi(-2);
        sum += weight * mean(|off| off.kelvin);
        weights += weight;
    }
    let (kelvin, half) = (sum / weights, NORMAL_95 * weights.powf(-0.5));
    let figure = |kelvin: f64| show::fixed(kelvin.abs(), 0);
    let side = if kelvin > 0.0 { "hotter" } else { "cooler" };
    if kelvin.abs() <= half || kelvin.abs() > MOST {
        return OvenSaid {
            words: format!(
                "Bakes of {many} recipes, taken together, would be explained by an oven {} °C {side} than reckoned with, give or take {} °C: too close to call.",
                figure(kelvin),
                figure(half)
            ),
            typed: None,
        };
    }
    let before = settings.kitchen_oven().off.to_celsius();
    let now = (before + kelvin).clamp(-MOST, MOST).round();
    OvenSaid {
        words: format!(
            "Bakes of {many} recipes agree: the oven is some {} °C {side} than reckoned with, give or take {} °C. With that, its dial is off by {} °C. An oven thermometer would tell for sure.",
            figure(kelvin),
            figure(half),
            signed(now)
        ),
        typed: Some(format!("{} C", signed(now))),
    }
}

/// With its sign: "+12", "−8".
fn signed(kelvin: f64) -> String {
    let sign = if kelvin < 0.0 { "−" } else { "+" };
    format!("{sign}{}", show::fixed(kelvin.abs(), 0))
}
