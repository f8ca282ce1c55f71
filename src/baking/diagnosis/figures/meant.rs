//! The kind that a recipe would be without the fault that is looked for. Where ratios alone told the kind, a fault may have
//! made one kind look like another: a layer cake with far too much sugar has the ratios of a high-ratio one, of which its sugar
//! is usual. Such a fault is read both ways.

use super::formula::AGAINST_FLOUR;
use crate::baking::balance::{By, Class, Recognised, Standing, recognise, standing};
use crate::baking::diagnosis::Figure;
use crate::baking::estimate::Estimate;
use crate::baking::finding::Facts;
use crate::baking::formula::{Formula, How, Place, Weighed};
use crate::baking::ingredient::by_key;
use crate::baking::quantity::Mass;

/// So many times as much of a class as was meant, or as little, a fault is taken to be (our own judgement).
const OFF: f64 = 1.5;
/// Baking powder of a recipe that has none by mistake, per cent of the flour (common practice, no source).
const USUAL_POWDER: f64 = 4.0;

/// The formula as it stands, as one of another kind.
pub struct Meant {
    recognised: Recognised,
    standing: Standing,
}

impl Meant {
    /// The kind that the recipe would be without what a figure looks for; `None` where it would be the same, where the kind
    /// was said, and where the title tells it.
    pub fn without(facts: &Facts, figure: Figure) -> Option<Self> {
        if facts.kind_by != By::Formula {
            return None;
        }
        let formula = match figure {
            Figure::Above(class) => scaled(facts.formula, &[class], 1.0 / OFF),
            Figure::Below(class) => scaled(facts.formula, &[class], OFF),
            // Against too much flour there is too little of all else.
            Figure::FlourAbove => scaled(facts.formula, &AGAINST_FLOUR, OFF),
            Figure::FlourBelow => scaled(facts.formula, &AGAINST_FLOUR, 1.0 / OFF),
            Figure::GasAbove => scaled(facts.formula, &[Class::Leavening], 1.0 / OFF),
            Figure::GasBelow => leavened(facts),
            _ => return None,
        };
        let recognised = recognise(&formula, facts.percentages, None, None);
        (recognised.by == By::Formula && recognised.kind != facts.kind).then(|| Self {
            standing: standing(facts.formula, facts.percentages, &recognised),
            recognised,
        })
    }

    /// The facts of the formula as it stands, of that kind.
    pub fn facts<'a>(&'a self, facts: &Facts<'a>) -> Facts<'a> {
        Facts {
            kind: self.recognised.kind,
            standing: &self.standing,
            ..facts.clone()
        }
    }
}

/// A formula with so many times as much of what counts mostly as one of some classes.
fn scaled(formula: &Formula, classes: &[Class], times: f64) -> Formula {
    let mut scaled = formula.clone();
    for line in &mut scaled.lines {
        let share = |class: &Class| class.share(line.ingredient).unwrap_or(0.0);
        if classes.iter().any(|class| share(class) > 0.5) {
            line.grams = line.grams.map(|grams| grams * times);
        }
    }
    scaled
}

/// The formula with more of its leavener; with a usual amount of powder where it has none.
fn leavened(facts: &Facts) -> Formula {
    let mut leavened = scaled(facts.formula, &[Class::Leavening], OFF);
    let has_any = !facts.standing.count(Class::Leavening).lines.is_empty();
    let (Some(flour), Some(powder), false) = (facts.flour(), by_key("baking_powder"), has_any)
    else {
        return leavened;
    };
    leavened.lines.push(Weighed {
        line: 0,
        part: 0,
        ingredient: powder,
        grams: Estimate::<Mass>::exact(flour * (USUAL_POWDER / 100.0)),
        how: How {
            sentence: String::new(),
            cited: None,
            others: String::new(),
        },
        place: Place::Batter,
        in_pieces: false,
        doubts: Vec::new(),
    });
    leavened
}
