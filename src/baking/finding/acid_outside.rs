//! Acid that meets the cake after it is baked.

use super::{Facts, Finding, Severity, VerdictKind, acid_verdict};
use crate::baking::chemistry::{Curve, NEUTRAL};
use crate::baking::formula::Place;
use crate::baking::ingredient::Group;
use crate::baking::quantity::show;

/// Sour lines of a glaze or syrup are named from here on, as soda against flour: our own limit.
const COUNTS: f64 = 0.3;

/// Says that soda in the batter is not for a sour glaze, syrup or topping.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let outside: Vec<_> = facts
        .formula
        .lines
        .iter()
        .filter(|line| matches!(line.place, Place::Beside | Place::ToServe))
        .filter(|line| {
            matches!(
                line.ingredient.group,
                Group::Juice | Group::Acid | Group::Fruit
            )
        })
        .filter_map(|line| {
            let acid = Curve::of_acidity(line.ingredient.acidity?, line.grams.mean).at(NEUTRAL);
            Some((line.line, acid.to_milliequivalents()))
        })
        .filter(|(_, acid)| *acid > 0.0)
        .collect();
    let sum: f64 = outside.iter().map(|(_, acid)| acid).sum();
    if facts.bowl.is_none() || facts.as_soda(sum).is_none_or(|percent| percent < COUNTS) {
        return Vec::new();
    }
    let lines: Vec<usize> = outside.iter().map(|(line, _)| *line).collect();
    let verdict = acid_verdict(facts);
    let spare = verdict.kind == VerdictKind::Spare && !verdict.mild;
    vec![Finding {
        name: "acid_outside",
        severity: if spare {
            Severity::Look
        } else {
            Severity::Note
        },
        title: "Acid outside the batter".into(),
        sentence: format!(
            "The acid of {} never meets the batter.{}",
            show::lines(&lines),
            if spare {
                " The soda in the batter has nothing of it to answer."
            } else {
                " Add no soda for it."
            }
        ),
        why: "A glaze or syrup sours the crust once the crumb has set. Soda for it stays in the crumb.",
        limit: "Named from 0.3 % of the flour in soda (our own limit).".into(),
        lines,
        remedies: Vec::new(),
    }]
}
