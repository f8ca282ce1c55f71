//! Mends for a batter that sets late.

use crate::baking::balance::setting;
use crate::baking::estimate::Estimate;
use crate::baking::finding::sets_late::is_late;
use crate::baking::finding::{Edit, Facts, Remedy};
use crate::baking::formula::Formula;
use crate::baking::ingredient::Group;
use crate::baking::quantity::{Mass, show};

/// The most of its sugar that a mend takes: a cake with less is another cake (our own limit).
const MOST: f64 = 0.4;

/// Less of the heaviest sugar, in steps of a whole gram, until it sets in time; none where that takes too much.
pub fn less_sugar(facts: &Facts) -> Vec<Remedy> {
    let sweet = facts
        .formula
        .batter()
        .filter(|line| matches!(line.ingredient.group, Group::Sugar | Group::Syrup));
    let Some(line) =
        sweet.max_by(|a, b| a.grams.mean.to_grams().total_cmp(&b.grams.mean.to_grams()))
    else {
        return Vec::new();
    };
    let before = line.grams.mean.to_grams();
    let ph = facts.bowl.map(|bowl| bowl.batter_ph.mean);
    let in_time = |grams: f64| {
        let mut changed: Formula = facts.formula.clone();
        let changed_line = changed
            .lines
            .iter_mut()
            .find(|other| (other.line, other.part) == (line.line, line.part));
        if let Some(changed_line) = changed_line {
            changed_line.grams = Estimate::exact(Mass::grams(grams));
        }
        setting(&changed, ph).is_some_and(|setting| !is_late(facts, &setting))
    };
    // Less sugar never sets later, so halving finds the most that sets in time.
    let (mut low, mut high) = ((before * (1.0 - MOST)).floor(), before);
    if low < 1.0 || !in_time(low) {
        return Vec::new();
    }
    while high - low > 1.0 {
        let middle = ((low + high) / 2.0).floor().max(low + 0.5);
        if in_time(middle) {
            low = middle
        } else {
            high = middle
        }
    }
    let grams = low.floor();
    let less = Mass::grams(grams);
    vec![Remedy {
        label: format!("Use {} {}", show::mass(less), line.ingredient.name),
        sentence: format!(
            "Instead of {}: it then sets while the bubbles hold, and tastes less sweet.",
            show::mass(line.grams.mean)
        ),
        edits: vec![Edit::Weigh {
            line: line.line,
            part: line.part,
            grams,
        }],
    }]
}
