//! Ingredients whose acidity no source gives.

use super::{Facts, Finding, Severity};
use crate::baking::quantity::{Mass, show};

/// Below this share of the batter an unknown acidity moves nothing.
const SMALL: f64 = 0.02;

/// Names the lines whose acidity is not known and that are large enough to matter.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let Some(bowl) = facts.bowl else {
        return Vec::new();
    };
    let batter = facts.percentages.batter.mean;
    let lines: Vec<usize> = bowl
        .parts
        .iter()
        .filter(|part| part.unknown)
        .filter(|part| {
            let grams: Mass = facts
                .formula
                .batter()
                .filter(|line| (line.line, line.part) == (part.line, part.part))
                .map(|line| line.grams.mean)
                .sum();
            grams / batter > SMALL
        })
        .map(|part| part.line)
        .collect();
    if lines.is_empty() {
        return Vec::new();
    }
    vec![Finding {
        name: "acid_hidden",
        severity: Severity::Note,
        title: "Acidity not known".into(),
        sentence: format!(
            "No source gives the acidity of {}; the spread of the pH is widened for it.",
            show::lines(&lines)
        ),
        why: "Not known is not none: a sour ingredient here would change the verdict.",
        limit: "Named where it is more than 2 % of the batter (our own limit).".into(),
        lines,
        remedies: Vec::new(),
    }]
}
