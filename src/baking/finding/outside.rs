//! A class of ingredients far outside what formulas of its kind hold.

use super::facts::chance_above;
use super::{Facts, Finding, Severity};
use crate::baking::balance::{Class, Constituent, Range};
use crate::baking::estimate::{Estimate, NORMAL_95};
use crate::baking::ingredient::Group;
use crate::baking::quantity::{Share, show};

/// How far past its end a figure must lie before it is worth a word, as a part of the end: recipes vary, and ends are
/// known no better (our own margin).
const MARGIN: f64 = 0.1;
/// At least so much, per cent of flour, for what is no salt: ends of nothing have no tenth.
const LEAST: f64 = 5.0;

/// What is said of a class where there is too much of it, and where there is too little; `None` where that side says
/// nothing.
pub(super) struct Outside {
    pub name: &'static str,
    pub class: Class,
    pub much: (&'static str, &'static str),
    pub little: Option<(&'static str, &'static str)>,
}

impl Outside {
    /// The finding, where all of the spread lies past an end and its margin.
    pub fn check(&self, facts: &Facts) -> Vec<Finding> {
        let standing = facts.standing;
        let count = standing.count(self.class);
        let (Some(figure), Some(range)) = (count.of_flour, standing.range(self.class)) else {
            return Vec::new();
        };
        if !may_judge(facts) {
            return Vec::new();
        }
        let side = match self.little {
            _ if is_above(&figure, range) && !is_dry(facts, self.class) => {
                (self.much, "At most", range.high)
            }
            Some(little)
                if is_below(&figure, range) && !comes_otherwise(facts, self.class, range) =>
            {
                (little, "At least", range.low)
            }
            _ => return Vec::new(),
        };
        let ((title, why), most_or_least, end) = side;
        vec![Finding {
            name: self.name,
            severity: severity(facts),
            title: title.into(),
            sentence: format!(
                "{} is {} of the flour; {} hold {} to {}, usually {}. The kind is {}.",
                self.class.name(),
                show::percent_with_range(&figure),
                facts.kind.words(),
                show::plain(range.low.to_percent()),
                show::percent(range.high),
                show::percent(range.typical),
                facts.kind_by.words(),
            ),
            why,
            limit: format!(
                "{most_or_least} {} of the flour, and a tenth past it for margin, at least five points (our own). {}. {}",
                show::percent(end),
                range.cited.words(),
                self.class.counted(),
            ),
            lines: count.lines.clone(),
            remedies: Vec::new(),
        }]
    }
}

/// Much liquid makes no wet batter where little else brings water.
fn is_dry(facts: &Facts, class: Class) -> bool {
    class == Class::Liquid && !water_is(facts, is_above)
}

/// What is little as an ingredient may have come inside others: sugar in fruit, fat in cream, water in vegetables.
/// What is left out altogether, as egg in plant-based cakes, is meant.
fn comes_otherwise(facts: &Facts, class: Class, range: &Range) -> bool {
    let held = |constituent: Constituent, whole: f64| {
        let lines = facts.formula.batter();
        // Egg brings its own to every formula that the ranges are of.
        let lines = lines.filter(|line| line.ingredient.group != Group::Egg);
        let grams = lines.filter_map(|line| {
            let share = constituent.share(&line.ingredient.composition)?;
            Some(line.grams.mean * share.to_fraction())
        });
        facts
            .percentages
            .of(grams.sum())
            .is_some_and(|share| share.to_fraction() >= range.low.to_fraction() * whole)
    };
    match class {
        Class::Sugar => held(Constituent::Sugars, 1.0),
        // Ranges count butter, four fifths of which is fat.
        Class::Fat => held(Constituent::Fat, 0.8),
        Class::Liquid => !water_is(facts, is_below),
        _ => facts.standing.count(class).lines.is_empty(),
    }
}

/// How likely a class lies below its range and above it: past the end and its margin, which is what a finding asks for, by its
/// spread and the margin. `None` where it may not be judged, and for what is left out altogether and may be meant.
pub fn chance_outside(facts: &Facts, class: Class) -> [Option<f64>; 2] {
    let standing = facts.standing;
    let count = standing.count(class);
    let (Some(figure), Some(range)) = (count.of_flour, standing.range(class)) else {
        return [None; 2];
    };
    if !may_judge(facts) {
        return [None; 2];
    }
    let past = |end: Share, side: f64| {
        let margin = margin(end, class == Class::Salt);
        let deviation = (margin / NORMAL_95).hypot(figure.deviation() * 100.0);
        let over = (figure.mean.to_percent() - end.to_percent()) * side;
        chance_above(over, deviation, margin)
    };
    let below = match class {
        _ if range.low.to_percent() <= 0.0 => Some(0.0),
        // Salt is not meant to be missing, but butter may bring it.
        Class::Salt if count.lines.is_empty() => {
            let mut lines = facts.formula.batter();
            let brings = |key| matches!(key, "salted_butter" | "whipped_butter");
            (!lines.any(|line| brings(line.ingredient.key))).then(|| past(range.low, -1.0))
        }
        Class::Egg | Class::Cocoa | Class::Leavening if count.lines.is_empty() => None,
        _ if comes_otherwise(facts, class, range) => Some(0.0),
        _ => Some(past(range.low, -1.0)),
    };
    let above = match is_dry(facts, class) {
        true => 0.0,
        false => past(range.high, 1.0),
    };
    [below, Some(above)]
}

/// How grave a word on balance is: a look where the kind is sure, else a note.
pub(super) fn severity(facts: &Facts) -> Severity {
    if facts.kind_by.is_sure() {
        Severity::Look
    } else {
        Severity::Note
    }
}

/// Whether a formula may be held against its kind: all of it is weighed, its flour is flour, and formulas of its own
/// kind are known. What is only likened to another kind is shown and not judged.
pub fn may_judge(facts: &Facts) -> bool {
    !facts.percentages.stands_in && facts.standing.kind == Some(facts.kind) && !has_gaps(facts)
}

/// Whether a line without a weight, or one that was not read, may bring what is counted.
fn has_gaps(facts: &Facts) -> bool {
    !facts.unread.is_empty()
        || facts.formula.holes().any(|line| {
            line.ingredient
                .is_none_or(|it| !matches!(it.group, Group::Spice | Group::Flavour))
        })
}

fn margin(end: Share, class_is_salt: bool) -> f64 {
    let least = if class_is_salt { 0.0 } else { LEAST };
    (end.to_percent() * MARGIN).max(least)
}

fn is_above(figure: &Estimate<Share>, range: &Range) -> bool {
    figure.low.to_percent() > range.high.to_percent() + margin(range.high, range.is_of(Class::Salt))
}

fn is_below(figure: &Estimate<Share>, range: &Range) -> bool {
    figure.high.to_percent() < range.low.to_percent() - margin(range.low, range.is_of(Class::Salt))
}

fn water_is(facts: &Facts, is: fn(&Estimate<Share>, &Range) -> bool) -> bool {
    let water = facts.standing.count(Class::Water).of_flour;
    match (water, facts.standing.range(Class::Water)) {
        (Some(water), Some(range)) => is(&water, range),
        _ => false,
    }
}
