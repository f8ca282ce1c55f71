//! The line that most wants the scale.

use super::{Facts, Finding, Severity};
use crate::baking::quantity::show;

/// A spread below this share of the line's own weight is not worth a word.
const SMALL_SPREAD: f64 = 0.05;
/// Nor is a line lighter than this share of the batter.
const SMALL_LINE: f64 = 0.05;

/// Names the batter line whose weight is the least sure in grams.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let batter = facts.percentages.batter.mean;
    let widest = facts
        .formula
        .batter()
        .filter(|line| {
            line.grams.relative_deviation() > SMALL_SPREAD && line.grams.mean / batter > SMALL_LINE
        })
        .max_by(|a, b| a.grams.deviation().total_cmp(&b.grams.deviation()));
    let Some(line) = widest else {
        return Vec::new();
    };
    let Some(range) = show::mass_range(&line.grams) else {
        return Vec::new();
    };
    vec![Finding {
        name: "weigh_first",
        severity: Severity::Note,
        title: "Weigh this first".into(),
        sentence: format!(
            "{} may be anywhere from {range} here. Weighed, it makes every bake alike.",
            show::sentence(line.ingredient.name)
        ),
        why: "The widest line sets how far two bakes of one recipe can differ.",
        limit:
            "Named where nine cups in ten spread by more than a twelfth either way (our own limit)."
                .into(),
        lines: vec![line.line],
        remedies: Vec::new(),
    }]
}
