//! When a batter sets against what its crumb reaches, from which two findings follow.

use super::facts::chance_above;
use super::leavening::LIKELY;
use super::{Facts, Finding, Severity};
use crate::baking::balance::Setting;
use crate::baking::ingredient::Group;
use crate::baking::quantity::{Mass, show};

/// What is known of a batter's setting, and of what keeps it from being judged.
pub(super) fn judged<'a>(facts: &'a Facts) -> Option<&'a Setting> {
    let setting = facts.setting?;
    // A line without a weight may be all the water or all the egg.
    let whole = facts.formula.holes().next().is_none() && facts.unread.is_empty();
    let unknown: Mass = facts
        .formula
        .batter()
        .filter(|line| setting.unknown.contains(&line.line))
        .map(|line| line.grams.mean)
        .sum();
    // A spice of which nobody knows the sugars is too little to turn it.
    let known = unknown <= facts.percentages.batter.mean * 0.1;
    (whole && known).then_some(setting)
}

/// How likely it sets above a temperature, C.
pub(super) fn chance_later(setting: &Setting, celsius: f64) -> f64 {
    chance_above(
        setting.at.mean.to_celsius(),
        setting.at.deviation(),
        celsius,
    )
}

/// What a chance of one side of a limit says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Side {
    /// Likely beyond it.
    Beyond,
    /// Too close to call.
    TooClose,
    /// Likely within it.
    Within,
}

impl Side {
    /// By the chance of being beyond it.
    pub fn of(chance: f64) -> Self {
        match chance {
            chance if chance >= LIKELY => Self::Beyond,
            chance if chance > 1.0 - LIKELY => Self::TooClose,
            _ => Self::Within,
        }
    }
}

/// The setting temperature with its spread, in words.
pub fn at_words(setting: &Setting) -> String {
    let of = |celsius: f64| show::fixed(celsius, 0);
    format!(
        "about {} °C ({} to {} °C), by {}",
        of(setting.at.mean.to_celsius()),
        of(setting.at.low.to_celsius()),
        of(setting.at.high.to_celsius()),
        setting.by.words()
    )
}

/// The lines that decide where it sets: sugar, flour and starch, egg.
pub(super) fn lines(facts: &Facts) -> Vec<usize> {
    facts.lines_of(|line| {
        matches!(
            line.ingredient.group,
            Group::Sugar | Group::Syrup | Group::Flour | Group::Starch | Group::Egg
        )
    })
}

/// A finding of its setting, of which the check says the rest.
pub(super) fn too_close(name: &'static str, what: &str, setting: &Setting) -> Finding {
    Finding {
        name,
        severity: Severity::Note,
        title: format!("Whether it sets {what} is too close to call"),
        sentence: format!("It is reckoned to set at {}.", at_words(setting)),
        why: "",
        limit: String::new(),
        lines: Vec::new(),
        remedies: Vec::new(),
    }
}
