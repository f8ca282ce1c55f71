//! Acid that curdles milk when the two are poured together.

use super::{Facts, Finding, Severity};
use crate::baking::chemistry::Curve;
use crate::baking::formula::Weighed;
use crate::baking::ingredient::Group;
use crate::baking::quantity::show;

/// The pH at which milk protein clots: 4.6 in the cold, about 5.2 where it is warm.
const CLOTS: f64 = 5.2;
/// Less milk than this, per cent of the flour, is not seen to curdle: our own limit.
const COUNTS: f64 = 15.0;

/// Reckons juice or vinegar and sweet milk by themselves.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let own_ph = |line: &Weighed| line.ingredient.acidity.map_or(7.0, |acidity| acidity.ph.1);
    let sour = |line: &Weighed| {
        matches!(line.ingredient.group, Group::Juice | Group::Acid) && own_ph(line) < CLOTS
    };
    let milk = |line: &Weighed| {
        matches!(line.ingredient.group, Group::Dairy | Group::PlantDairy) && own_ph(line) > 6.0
    };
    if facts.percent_of(milk) < COUNTS {
        return Vec::new();
    }
    // Base that the two by themselves want to reach that pH: where they want any, they lie below it.
    let wanted: f64 = facts
        .formula
        .batter()
        .filter(|line| sour(line) || milk(line))
        .filter_map(|line| {
            let curve = Curve::of_acidity(line.ingredient.acidity?, line.grams.mean);
            Some(curve.at(CLOTS).to_milliequivalents())
        })
        .sum();
    let acids = facts.lines_of(sour);
    if acids.is_empty() || wanted <= 0.0 {
        return Vec::new();
    }
    let milks = facts.lines_of(milk);
    let sentence = format!(
        "{} curdles {} if the two are poured together. Beat the milk in with flour first and add the acid last, unless soured milk is meant.",
        show::sentence(&show::lines(&acids)),
        show::lines(&milks)
    );
    let mut lines = acids;
    lines.extend(milks);
    vec![Finding {
        name: "curdled",
        severity: Severity::Note,
        title: "Acid and milk curdle".into(),
        sentence,
        why: "Milk and soya proteins clot in acid, and so does egg. A curdled batter still bakes, a little coarser.",
        limit: "A mixture below pH 5.2, where casein clots warm (4.6 in the cold): Walstra and others 2006, from memory.".into(),
        lines,
        remedies: Vec::new(),
    }]
}
