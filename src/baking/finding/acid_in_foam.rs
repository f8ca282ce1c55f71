//! Acid that is there for the beaten egg.

use super::{Facts, Finding, Severity};

/// Cream of tartar on egg, per cent: a quarter of a teaspoon, 0.75 g, a white of 33 g with or without its yolk.
const MOST: f64 = 2.4;

/// Says that a little cream of tartar in a foam wants no soda.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let tartar = |name: &str| name == "cream_of_tartar";
    let lines = facts.lines_of(|line| tartar(line.ingredient.key));
    if lines.is_empty() || !facts.kind.is_foam() || facts.has_loose_soda() {
        return Vec::new();
    }
    let eggs = facts.percent_of(|line| line.ingredient.key.starts_with("egg"));
    let much = facts.percent_of(|line| tartar(line.ingredient.key)) > MOST / 100.0 * eggs;
    vec![Finding {
        name: "acid_in_foam",
        severity: if much { Severity::Look } else { Severity::Note },
        title: "Acid in the foam".into(),
        sentence: if much {
            "The cream of tartar is more than a foam wants: a quarter of a teaspoon for each white is the most that is usual.".into()
        } else {
            "The cream of tartar is there for the beaten whites. It wants no soda.".into()
        },
        why: "Acid holds a foam of egg white, whitens the crumb and is not a fault there.",
        limit: "1/12 to 1/4 teaspoon for each white: Oldham and others 2000, and common practice."
            .into(),
        lines,
        remedies: Vec::new(),
    }]
}
