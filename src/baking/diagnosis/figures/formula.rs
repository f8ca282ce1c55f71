//! Classes of the formula against what its kind holds.

use super::{By, Reading};
use crate::baking::balance::{Class, Kind};
use crate::baking::estimate::NORMAL_95;
use crate::baking::finding::{
    Facts, chance_above, chance_late, chance_outside, may_judge, setting_in_words,
};
use crate::baking::ingredient::FlourBasis;
use crate::baking::quantity::{Mass, Share, show};

/// A class above or below its range. Sugar of a kind without ranges is judged by where it makes the batter set. Where flour
/// accounts for it, the class by itself says nothing.
pub fn class(facts: &Facts, class: Class, above: bool) -> Option<Reading> {
    let Some(past) = chance_outside(facts, class)[usize::from(above)] else {
        return match (class, above) {
            (Class::Sugar, true) if !may_judge(facts) => sets_late(facts),
            _ => None,
        };
    };
    let standing = facts.standing;
    let (figure, range) = (standing.count(class).of_flour?, standing.range(class)?);
    let by_flour = flour(facts, !above).map_or(0.0, |flour| flour.chance);
    let accounted = match (by_flour > 0.5, above) {
        (false, _) => "",
        (true, true) => " So are the others: too little flour accounts for it.",
        (true, false) => " So are the others: too much flour accounts for it.",
    };
    Reading::new(
        past * (1.0 - by_flour / 2.0),
        By::Reckoned,
        format!(
            "{} is {} of the flour; {} hold {} to {}.{accounted}",
            class.name(),
            show::percent_with_range(&figure),
            facts.kind.words(),
            show::plain(range.low.to_percent()),
            show::percent(range.high),
        ),
    )
}

fn sets_late(facts: &Facts) -> Option<Reading> {
    Reading::new(
        chance_late(facts)?,
        By::Reckoned,
        format!(
            "It is reckoned to set at {}.",
            setting_in_words(facts.setting?)
        ),
    )
}

/// What flour is held against.
pub const AGAINST_FLOUR: [Class; 4] = [Class::Sugar, Class::Fat, Class::Egg, Class::Liquid];
/// How far past its end such a sum must lie, as a part of the end: as for one class (our own margin).
const MARGIN: f64 = 0.1;

/// Flour against sugar, fat, egg and liquid together. The one of them that lies furthest off is taken as usual, so that flour is
/// named only for what no one of them accounts for.
pub fn flour(facts: &Facts, much: bool) -> Option<Reading> {
    if !may_judge(facts) {
        return None;
    }
    let standing = facts.standing;
    let mut sums = [0.0; 3];
    let (mut off, mut least, mut most) = (0.0_f64, 0.0, 0.0);
    for class in AGAINST_FLOUR {
        let (count, range) = (standing.count(class).of_flour?, standing.range(class)?);
        let [figure, low, usual, high] =
            [count.mean, range.low, range.typical, range.high].map(Share::to_percent);
        sums[0] += figure;
        sums[1] += usual;
        sums[2] += count.deviation() * 100.0;
        least += (usual - low).powi(2);
        most += (high - usual).powi(2);
        if (figure - usual).abs() > off.abs() {
            off = figure - usual;
        }
    }
    let [all, usual, spread] = sums;
    // The ends of the sum, moved by those of its parts as independent errors add.
    let (low, high) = (usual - f64::sqrt(least), usual + f64::sqrt(most));
    let (end, over) = match much {
        true => (low, low - (all - off)),
        false => (high, all - off - high),
    };
    let margin = end * MARGIN;
    Reading::new(
        chance_above(over, spread.hypot(margin / NORMAL_95), margin),
        By::Reckoned,
        format!(
            "Sugar, fat, egg and liquid together are {} of the flour; {} hold some {} to {}.",
            show::percent(Share::percent(all)),
            facts.kind.words(),
            show::fixed(low, 0),
            show::percent(Share::percent(high)),
        ),
    )
}

/// From such a part of strong flour on a cake is tight, as a share; and how well that is known (common practice, no source).
const STRONG: [f64; 2] = [0.3, 0.1];

/// Strong flour in the flour.
pub fn strong_flour(facts: &Facts) -> Option<Reading> {
    let grams = |holds: &dyn Fn(&str) -> bool| -> Mass {
        let lines = facts.formula.batter();
        let flours = lines.filter(|line| line.ingredient.flour_basis == FlourBasis::Always);
        let held = flours.filter(|line| holds(line.ingredient.key));
        held.map(|line| line.grams.mean).sum()
    };
    let all = grams(&|_| true);
    if all <= Mass::ZERO || facts.kind == Kind::Yeast {
        return None;
    }
    let share = grams(&|key| key == "bread_flour") / all;
    Reading::new(
        chance_above(share, STRONG[1], STRONG[0]),
        By::Reckoned,
        format!(
            "{} of the flour is strong.",
            show::percent(Share::fraction(share))
        ),
    )
}
