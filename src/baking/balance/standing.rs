//! How a formula stands to formulas of its kind: each class counted, the kind's ranges, its rules, what pulls it.

use super::{
    Class, Count, Kind, Percentages, Pull, Range, Recognised, Ruled, count, pull, range, rules,
};
use crate::baking::formula::Formula;

/// How a formula stands to formulas of its kind.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// Every class, in the order of [`Class::ALL`].
    pub counts: [Count; Class::ALL.len()],
    /// The kind whose ranges and rules hold; `None` where no formulas of it are known.
    pub kind: Option<Kind>,
    /// Its rules with this formula's ratios; none without flour.
    pub rules: Vec<Ruled>,
    /// What pulls the batter.
    pub pull: Pull,
}

impl Standing {
    /// A class as it was counted.
    pub fn count(&self, class: Class) -> &Count {
        &self.counts[class as usize]
    }

    /// The range of a class; `None` where the kind has none.
    pub fn range(&self, class: Class) -> Option<&'static Range> {
        range(self.kind?, class)
    }
}

/// How a formula stands to formulas of the kind that it was recognised as.
pub fn standing(formula: &Formula, percentages: &Percentages, recognised: &Recognised) -> Standing {
    let counts = Class::ALL.map(|class| count(formula, percentages, class));
    let kind = kind_with_ranges(recognised);
    let rules = match (kind, percentages.flour) {
        (Some(kind), Some(flour)) if !percentages.stands_in => rules(kind, &counts, flour),
        _ => Vec::new(),
    };
    Standing {
        kind,
        rules,
        pull: pull(formula),
        counts,
    }
}

/// The kind itself where formulas of it are known; for kinds that are a flavour, the one that carries the cake. Chocolate
/// cakes are known with and without egg.
fn kind_with_ranges(recognised: &Recognised) -> Option<Kind> {
    let has_ranges = |kind: &Kind| range(*kind, Class::Sugar).is_some();
    let carries = || recognised.carried_by.filter(has_ranges);
    match recognised.kind {
        Kind::Chocolate | Kind::DarkChocolate if recognised.carried_by == Some(Kind::PlantOil) => {
            Some(Kind::PlantOil)
        }
        kind if has_ranges(&kind) => Some(kind),
        Kind::Citrus | Kind::Buttermilk | Kind::RedVelvet => carries(),
        Kind::Berry => carries().or(Some(Kind::Muffin)),
        _ => None,
    }
}
