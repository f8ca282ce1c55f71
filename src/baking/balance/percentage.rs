//! Baker's percentage: every weight against the total flour, which is 100.

use super::has_gluten;
use crate::baking::estimate::Estimate;
use crate::baking::formula::{Formula, Weighed};
use crate::baking::ingredient::{FlourBasis, Group, Ingredient};
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
    let lines: Vec<&Weighed> = formula.batter().collect();
    let ingredients: Vec<&Ingredient> = lines.iter().map(|line| line.ingredient).collect();
    let counts = counts_as_flour(&ingredients);
    let flour: Vec<&Weighed> = lines
        .into_iter()
        .zip(counts)
        .filter_map(|(line, counts)| counts.then_some(line))
        .collect();
    let is_always = |line: &&Weighed| line.ingredient.flour_basis == FlourBasis::Always;
    let total = Estimate::sum(flour.iter().map(|line| &line.grams));
    Percentages {
        flour: (total.mean > Mass::ZERO).then_some(total),
        flour_lines: flour.iter().map(|line| line.line).collect(),
        stands_in: !flour.is_empty() && !flour.iter().any(is_always),
        batter: Estimate::sum(formula.batter().map(|line| &line.grams)),
    }
}

/// Which ingredients of a batter are its flour, the 100 of its percentages.
///
/// Flours without gluten are used as a blend with starches, and the blend is the 100 (common practice, no source).
pub fn counts_as_flour(ingredients: &[&Ingredient]) -> Vec<bool> {
    let is_always = |it: &Ingredient| it.flour_basis == FlourBasis::Always;
    let stands_in = |it: &Ingredient| it.flour_basis == FlourBasis::WhereNoOther;
    let always = || ingredients.iter().filter(|it| is_always(it));
    let (has_flour, is_blend) = (
        always().next().is_some(),
        !always().any(|it| has_gluten(it)),
    );
    let counts = |it: &&Ingredient| match has_flour {
        false => stands_in(it),
        true => is_always(it) || is_blend && stands_in(it) && it.group == Group::Starch,
    };
    ingredients.iter().map(counts).collect()
}

impl Percentages {
    /// A weight against the flour; `None` without flour.
    pub fn of(&self, grams: Mass) -> Option<Share> {
        self.flour.map(|flour| Share::fraction(grams / flour.mean))
    }
}
