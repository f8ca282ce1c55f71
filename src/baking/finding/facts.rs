//! All facts of a formula in one place, for the checks.

use crate::baking::balance::{Kind, Percentages};
use crate::baking::chemistry::Bowl;
use crate::baking::chemistry::course::Handling;
use crate::baking::formula::{Formula, Unweighed, Weighed};
use crate::baking::ingredient::{FlourBasis, Region};
use crate::baking::pan::Fit;
use crate::baking::quantity::Mass;

/// What the stages before found out.
#[derive(Clone, Debug)]
pub struct Facts<'a> {
    /// The weights.
    pub formula: &'a Formula,
    /// Flour and batter.
    pub percentages: &'a Percentages,
    /// The broad kind of cake.
    pub kind: Kind,
    /// Acid, soda and gas; `None` where nothing in the batter brings any.
    pub bowl: Option<&'a Bowl>,
    /// How the batter is handled.
    pub handling: Handling,
    /// The pans.
    pub fit: &'a Fit,
    /// Lines that could not be read at all.
    pub unread: &'a [usize],
    /// Whose words a remedy uses.
    pub region: Region,
}

impl Facts<'_> {
    /// Flour, where there is any.
    pub fn flour(&self) -> Option<Mass> {
        self.percentages.flour.map(|flour| flour.mean)
    }

    /// The batter lines that are soda and nothing else.
    pub fn sodas(&self) -> impl Iterator<Item = &Weighed> {
        self.formula.batter().filter(|line| {
            line.ingredient.leavening.is_some_and(|leavening| {
                leavening.bicarbonate.is_some() && leavening.neutralised.1 == 0.0
            })
        })
    }

    /// The batter lines that are baking powder.
    pub fn powders(&self) -> impl Iterator<Item = &Weighed> {
        self.formula.batter().filter(|line| {
            line.ingredient.flour_basis == FlourBasis::Never
                && line.ingredient.leavening.is_some_and(|leavening| {
                    leavening.bicarbonate.is_some() && leavening.neutralised.1 > 0.0
                })
        })
    }

    /// The batter lines that are soda or baking powder, soda first.
    pub fn leaveners(&self) -> impl Iterator<Item = &Weighed> {
        self.sodas().chain(self.powders())
    }

    /// Batter lines that keep a verdict from being whole: unread, or with a weight that is missed and
    /// an ingredient that may bring acid, base or gas.
    pub fn holes(&self) -> Vec<usize> {
        let neutral = |line: &Unweighed| {
            line.ingredient.is_some_and(|ingredient| {
                ingredient.leavening.is_none()
                    && ingredient
                        .acidity
                        .is_some_and(|acidity| acidity.key == "none")
            })
        };
        let mut lines: Vec<usize> = self
            .formula
            .holes()
            .filter(|line| !neutral(line))
            .map(|line| line.line)
            .collect();
        lines.extend_from_slice(self.unread);
        lines.sort_unstable();
        lines
    }
}
