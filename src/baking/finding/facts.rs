//! All facts of a formula in one place, for the checks.

use crate::baking::balance::{By, Kind, Percentages, Setting, Standing};
use crate::baking::chemistry::course::Handling;
use crate::baking::chemistry::{Bowl, NEUTRAL, SODA_MMOL_PER_GRAM, bicarbonate};
use crate::baking::formula::{Formula, Unweighed, Weighed};
use crate::baking::ingredient::{FlourBasis, Group, Ingredient, Region};
use crate::baking::oven::charge::{Batch, Charge};
use crate::baking::pan::Fit;
use crate::baking::quantity::{Mass, Pressure};

/// What the stages before found out.
#[derive(Clone, Debug)]
pub struct Facts<'a> {
    /// The weights.
    pub formula: &'a Formula,
    /// Flour and batter.
    pub percentages: &'a Percentages,
    /// The broad kind of cake.
    pub kind: Kind,
    /// By what that was recognised.
    pub kind_by: By,
    /// How the formula stands to formulas of its kind.
    pub standing: &'a Standing,
    /// How many the recipe says it makes.
    pub servings: Option<f64>,
    /// Acid, soda and gas; `None` where nothing in the batter brings any.
    pub bowl: Option<&'a Bowl>,
    /// Where the batter sets; `None` without water, without starch and egg, and for a dry dough, which sets by what it
    /// loses in the oven and as it cools.
    pub setting: Option<&'a Setting>,
    /// The batter as the oven meets it; `None` without weights, or where it is too dry.
    pub charge: Option<&'a Charge>,
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
    /// The batter as the oven meets it in air of another pressure.
    pub fn charge_in(&self, air: Pressure) -> Option<Charge> {
        Batch {
            formula: self.formula,
            kind: self.kind,
            setting: self.setting,
            density: self.fit.density.mean,
            handling: self.handling,
            bowl: self.bowl,
        }
        .charge(air)
    }

    /// Flour, where there is any.
    pub fn flour(&self) -> Option<Mass> {
        self.percentages.flour.map(|flour| flour.mean)
    }

    /// The batter lines that are soda and nothing else.
    pub fn sodas(&self) -> impl Iterator<Item = &Weighed> {
        self.formula.batter().filter(|line| {
            line.ingredient.key != "bakers_ammonia"
                && line.ingredient.leavening.is_some_and(|leavening| {
                    leavening.bicarbonate.is_some() && leavening.neutralised.1 == 0.0
                })
        })
    }

    /// Whether there is soda that brings no acid of its own.
    pub fn has_loose_soda(&self) -> bool {
        self.sodas().next().is_some()
    }

    /// The lines of baker's ammonia, which goes off as gas and is no soda.
    pub fn ammonia(&self) -> Vec<usize> {
        self.lines_of(|line| line.ingredient.key == "bakers_ammonia")
    }

    /// The batter lines for which something holds.
    pub fn lines_of(&self, holds: impl Fn(&Weighed) -> bool) -> Vec<usize> {
        self.formula
            .batter()
            .filter(|line| holds(line))
            .map(|line| line.line)
            .collect()
    }

    /// The weight of the batter lines for which something holds, per cent of the flour.
    pub fn percent_of(&self, holds: impl Fn(&Weighed) -> bool) -> f64 {
        let grams: Mass = self
            .formula
            .batter()
            .filter(|line| holds(line))
            .map(|line| line.grams.mean)
            .sum();
        self.percentages
            .of(grams)
            .map_or(0.0, |share| share.to_percent())
    }

    /// Milliequivalents as grams of soda, per cent of the flour; `None` without flour.
    pub fn as_soda(&self, milliequivalents: f64) -> Option<f64> {
        Some(milliequivalents / SODA_MMOL_PER_GRAM / self.flour()?.to_grams() * 100.0)
    }

    /// What the sour lines take up to pH 7, meq, each with its line, the largest first.
    pub fn sour(&self) -> Vec<(usize, f64)> {
        let Some(bowl) = self.bowl else {
            return Vec::new();
        };
        bowl.parts_by(&|part| part.acid.mean.to_milliequivalents())
            .into_iter()
            .filter(|part| {
                self.formula.batter().any(|line| {
                    (line.line, line.part) == (part.line, part.part) && is_sour(line.ingredient)
                })
            })
            .map(|part| (part.line, part.acid.mean.to_milliequivalents()))
            .filter(|(_, acid)| *acid > 0.0)
            .collect()
    }

    /// The sum of that.
    pub fn sour_sum(&self) -> f64 {
        self.sour().iter().map(|(_, acid)| acid).sum()
    }

    /// Acid to pH 7 of all lines that bring some, meq; what others bring as base left aside.
    pub fn acid_sum(&self) -> f64 {
        let parts = self.bowl.map_or(&[][..], |bowl| &bowl.parts);
        parts
            .iter()
            .map(|part| part.acid.mean.to_milliequivalents().max(0.0))
            .sum()
    }

    /// Bicarbonate of loose soda, meq.
    pub fn loose_soda(&self) -> f64 {
        self.sodas()
            .filter_map(|line| Some(bicarbonate(line.ingredient.leavening?, line.grams.mean)))
            .sum()
    }

    /// Loose soda that is left at pH 7, per cent of flour: the mean and its standard deviation. `None` without
    /// flour or loose soda.
    pub fn soda_left(&self) -> Option<(f64, f64)> {
        let bowl = self.bowl.filter(|_| self.has_loose_soda())?;
        let mean = -self.as_soda(bowl.missing(NEUTRAL).to_milliequivalents())?;
        let deviation = self.as_soda(bowl.acid.deviation().hypot(bowl.soda.deviation()))?;
        Some((mean, deviation))
    }

    /// Whether anything in the batter brings bicarbonate.
    pub fn is_leavened(&self) -> bool {
        self.formula.batter().any(|line| {
            line.ingredient
                .leavening
                .is_some_and(|leavening| leavening.bicarbonate.is_some())
        })
    }

    /// Whether there is acid in it that a baker counts: by three thousandths of the flour in soda, a scant sixth
    /// of a teaspoon to two cups (our own limit).
    pub fn is_sour(&self) -> bool {
        self.as_soda(self.sour_sum())
            .is_none_or(|percent| percent >= 0.3)
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
                // A spice is too little to turn a verdict.
                ingredient.group == Group::Spice
                    || ingredient.leavening.is_none()
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

/// Whether an ingredient is sour to a baker: its own pH below 5.8, and neither flour nor leavener, which practice
/// does not count.
fn is_sour(ingredient: &Ingredient) -> bool {
    !matches!(
        ingredient.group,
        Group::Flour | Group::Starch | Group::Grain | Group::Leavener
    ) && ingredient.acidity.is_some_and(|acidity| acidity.ph.1 < 5.8)
}

/// How likely a figure lies above a limit: the normal curve by a logistic one, to 0.01.
pub fn chance_above(mean: f64, deviation: f64, limit: f64) -> f64 {
    1.0 / (1.0 + f64::exp(-1.702 * (mean - limit) / deviation.max(1e-9)))
}
