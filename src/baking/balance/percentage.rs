//! Baker's percentage: every weight against the total flour, which is 100.

use super::has_gluten;
use crate::baking::estimate::Estimate;
use crate::baking::formula::{Formula, Weighed};
use crate::baking::ingredient::{FlourBasis, Group};
use crate::baking::quantity::{Mass, Share};

/// A formula against its flour.
#[derive(Clone, Debug, PartialEq)]
pub struct Percentages {
    /// The flour; `None` where the batter has nothing that counts as flour.
    pub flour: Option<Estimate<Mass>>,
    /// The lines that count as flour.
    pub flour_lines: Vec<usize>,
    /// True where nut meal, starch or oats stand in, since there is no other flour.
    pub stands_in: bool,
    /// The batter's weight.
    pub batter: Estimate<Mass>,
}

/// The flour of a batter and its whole weight.
pub fn percentages(formula: &Formula) -> Percentages {
    let with = |basis: FlourBasis| -> Vec<&Weighed> {
        formula
            .batter()
            .filter(|line| line.ingredient.flour_basis == basis)
            .collect()
    };
    let always = with(FlourBasis::Always);
    let stands_in = always.is_empty();
    let flour = if stands_in {
        with(FlourBasis::WhereNoOther)
    } else if always.iter().any(|line| has_gluten(line.ingredient)) {
        always
    } else {
        blend(formula)
    };
    let total = Estimate::sum(flour.iter().map(|line| &line.grams));
    Percentages {
        flour: (total.mean > Mass::ZERO).then_some(total),
        flour_lines: flour.iter().map(|line| line.line).collect(),
        stands_in: stands_in && !flour.is_empty(),
        batter: Estimate::sum(formula.batter().map(|line| &line.grams)),
    }
}

/// Flours without gluten are used as a blend with starches, and the blend is the 100 (common practice, no source).
fn blend(formula: &Formula) -> Vec<&Weighed> {
    let in_blend = |line: &&Weighed| {
        let ingredient = line.ingredient;
        ingredient.flour_basis == FlourBasis::Always
            || ingredient.flour_basis == FlourBasis::WhereNoOther
                && ingredient.group == Group::Starch
    };
    formula.batter().filter(in_blend).collect()
}

impl Percentages {
    /// A weight against the flour; `None` without flour.
    pub fn of(&self, grams: Mass) -> Option<Share> {
        self.flour.map(|flour| Share::fraction(grams / flour.mean))
    }
}
