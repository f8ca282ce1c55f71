//! Ingredient lines that have no weight, and lines that could not be read.

use super::{Facts, Finding, Severity};
use crate::baking::quantity::show;

/// Names them, since every total leaves them out.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let mut lines: Vec<usize> = facts.formula.holes().map(|line| line.line).collect();
    lines.extend_from_slice(facts.unread);
    lines.sort_unstable();
    if lines.is_empty() {
        return Vec::new();
    }
    let (verb, them) = if lines.len() == 1 {
        ("has", "it")
    } else {
        ("have", "them")
    };
    vec![Finding {
        name: "line_without_weight",
        severity: Severity::Look,
        title: "A line without a weight".into(),
        sentence: format!(
            "{} {verb} no weight, so totals and percentages leave {them} out. Open {them} to see why and to mend {them}.",
            show::sentence(&show::lines(&lines))
        ),
        why: "A total with a hole in it looks like a total.",
        limit: "Every line of the batter has a weight, or is not an ingredient.".into(),
        lines,
        remedies: Vec::new(),
    }]
}
