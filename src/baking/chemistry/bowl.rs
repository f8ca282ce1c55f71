//! A bowl: who brings acid, who brings base, the pH where they meet, and the gas that is made.

use super::contribution::Contribution;
use super::leavening::CARBON_DIOXIDE_GRAMS_PER_MMOL;
use super::{Curve, NEUTRAL, carbonate};
use crate::baking::balance::{Constituent, total};
use crate::baking::estimate::{Estimate, NORMAL_95};
use crate::baking::formula::Formula;
use crate::baking::quantity::{Equivalents, Mass, Ph, Share};

/// Half the 5 to 95 % range that the choice of model adds to a crumb's pH: which phosphates form,
/// how much carbon dioxide the crumb holds. Worked out by comparing models; weakly known.
const MODEL_SPREAD: f64 = 0.3;

/// Relative standard deviation of the gas that soda and powder make, beside the weighing: age, fineness
/// and mixing (common practice, no source).
const GAS_MODEL: f64 = 0.05;

/// What a line brings, acid against base.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// The line of the text.
    pub line: usize,
    /// Which of the line's ingredients, from 0.
    pub part: usize,
    /// Base it takes up to pH 7, less the free soda it brings: positive brings acid.
    pub acid: Estimate<Equivalents>,
    /// True where no source gives its acidity.
    pub unknown: bool,
}

/// The gas.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gas {
    /// Carbon dioxide set free.
    pub made: Estimate<Mass>,
    /// The part of it that comes from soda without an acid of its own, so for the most part on the bench.
    pub early: Share,
}

/// All facts of acid, soda and gas.
#[derive(Clone, Debug, PartialEq)]
pub struct Bowl {
    /// The lines that bring acid or base, in the recipe's order.
    pub parts: Vec<Part>,
    /// Acid of all ingredients to pH 7.
    pub acid: Estimate<Equivalents>,
    /// Free soda of all leaveners: bicarbonate less what its own acid takes to pH 7.
    pub soda: Estimate<Equivalents>,
    /// pH of the crumb, the spread of cups, fruit, buffers and model in it.
    pub ph: Estimate<Ph>,
    /// The gas.
    pub gas: Gas,
    contributions: Vec<Contribution>,
    curve: Curve,
    base: Equivalents,
    water: Mass,
}

/// The facts of a formula's batter; `None` where nothing in it brings acid, base or a buffer.
pub fn bowl(formula: &Formula) -> Option<Bowl> {
    let contributions: Vec<Contribution> = formula.batter().map(Contribution::of).collect();
    let acids: Vec<_> = contributions
        .iter()
        .map(|line| line.acid(NEUTRAL))
        .collect();
    let sodas: Vec<_> = contributions
        .iter()
        .map(|line| line.free_soda(NEUTRAL))
        .collect();
    let mut bowl = Bowl {
        parts: contributions.iter().filter_map(part).collect(),
        acid: Estimate::sum(&acids),
        soda: Estimate::sum(&sodas),
        ph: Estimate::exact(Ph::of(NEUTRAL)),
        gas: Gas {
            made: Estimate::exact(Mass::ZERO),
            early: Share::fraction(0.0),
        },
        curve: contributions.iter().map(Contribution::curve).sum(),
        base: contributions.iter().map(|line| line.base).sum(),
        water: total(formula, Constituent::Water).grams.mean,
        contributions,
    };
    // Without a buffer, a base or an acid there is no curve to find a root on.
    if bowl.parts.is_empty() || bowl.slope(NEUTRAL) <= 0.0 {
        return None;
    }
    bowl.ph = bowl.crumb();
    bowl.gas = bowl.gas();
    Some(bowl)
}

impl Bowl {
    /// Base that the whole bowl takes up to reach a pH: its ingredients, its leavening acids, and the bicarbonate
    /// that its crumb then keeps. It rises with pH.
    pub fn need(&self, ph: f64) -> Equivalents {
        self.curve.at(ph) + Equivalents::milliequivalents(carbonate::kept(self.water, ph).base)
    }

    /// Soda missing to reach a pH; negative where there is more than enough.
    pub fn missing(&self, ph: f64) -> Equivalents {
        self.need(ph) - self.base
    }

    /// How likely the crumb lies below a pH, from 0 to 1, by the spread of all that is in the bowl.
    pub fn chance_below(&self, ph: f64) -> f64 {
        let deviation = self
            .deviation(ph)
            .hypot(self.slope(ph) * MODEL_SPREAD / NORMAL_95);
        let missing = self.missing(ph).to_milliequivalents();
        if deviation <= 0.0 {
            f64::from(u8::from(missing > 0.0))
        } else {
            normal_below(missing / deviation)
        }
    }

    /// The lines that bring acid or base, those first for which a figure is largest.
    pub fn parts_by(&self, figure: &dyn Fn(&Part) -> f64) -> Vec<&Part> {
        let mut parts: Vec<&Part> = self.parts.iter().collect();
        parts.sort_unstable_by(|a, b| figure(b).total_cmp(&figure(a)).then(a.line.cmp(&b.line)));
        parts
    }

    /// The standard deviation of need less soda at a pH, meq.
    fn deviation(&self, ph: f64) -> f64 {
        root_of_squares(self.contributions.iter().map(|line| line.deviation(ph)))
    }

    /// How fast the need rises with pH, meq per unit.
    fn slope(&self, ph: f64) -> f64 {
        const STEP: f64 = 0.05;
        (self.need(ph + STEP) - self.need(ph - STEP)).to_milliequivalents() / (2.0 * STEP)
    }

    /// The pH where need meets soda, at the mean and at both ends of the spread.
    fn crumb(&self) -> Estimate<Ph> {
        let mean = self.root(0.0);
        let spread = NORMAL_95 * self.deviation(mean);
        let (low, high) = (self.root(-spread), self.root(spread));
        Estimate::between(
            Ph::of(mean - (mean - low).hypot(MODEL_SPREAD)),
            Ph::of(mean),
            Ph::of(mean + (high - mean).hypot(MODEL_SPREAD)),
        )
    }

    /// The pH at which the bowl takes up its soda and so much more. The need rises with pH, so halving
    /// an interval that holds the root cannot fail; the ends stand for all that lies beyond them.
    fn root(&self, more: f64) -> f64 {
        let base = self.base.to_milliequivalents() + more;
        let (mut low, mut high) = (1.0, 12.0);
        for _ in 0..40 {
            let middle = (low + high) / 2.0;
            if self.need(middle).to_milliequivalents() < base {
                low = middle
            } else {
                high = middle
            }
        }
        (low + high) / 2.0
    }

    /// Carbon dioxide from all bicarbonate, less what the crumb's water keeps.
    fn gas(&self) -> Gas {
        let all = self.base.to_milliequivalents();
        let kept = carbonate::kept(self.water, self.ph.mean.value())
            .carbon
            .min(all);
        let grams = |millimoles: f64| Mass::grams(millimoles * CARBON_DIOXIDE_GRAMS_PER_MMOL);
        let weighing = root_of_squares(self.contributions.iter().map(Contribution::base_deviation));
        let half = NORMAL_95 * weighing.hypot(GAS_MODEL * all);
        let made = all - kept;
        let without_acid: Equivalents = self
            .contributions
            .iter()
            .filter(|line| line.is_soda_alone())
            .map(|line| line.base)
            .sum();
        let early = if all > 0.0 {
            without_acid / self.base
        } else {
            0.0
        };
        Gas {
            made: Estimate::between(
                grams((made - half).max(0.0)),
                grams(made),
                grams(made + half),
            ),
            early: Share::fraction(early),
        }
    }
}

/// What a line brings to pH 7; `None` where it is known to bring neither acid nor base.
fn part(line: &Contribution) -> Option<Part> {
    let acid = line.acid(NEUTRAL).mean - line.free_soda(NEUTRAL).mean;
    (acid != Equivalents::ZERO || line.is_leavener() || line.is_unknown()).then(|| Part {
        line: line.line,
        part: line.part,
        acid: Estimate::normal(acid.to_milliequivalents(), line.deviation(NEUTRAL)),
        unknown: line.is_unknown(),
    })
}

fn root_of_squares(items: impl Iterator<Item = f64>) -> f64 {
    items.map(|item| item * item).sum::<f64>().sqrt()
}

/// The share of a normal spread that lies below so many standard deviations.
/// Abramowitz and Stegun 1964, formula 26.2.18, absolute error below 2.5e-4.
fn normal_below(deviations: f64) -> f64 {
    let x = deviations.abs();
    let series = 1.0 + x * (0.196_854 + x * (0.115_194 + x * (0.000_344 + x * 0.019_527)));
    let above = 0.5 * series.powi(-4);
    if deviations < 0.0 { above } else { 1.0 - above }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Abramowitz and Stegun 1964, table 26.1: P(0) 0.5, P(1) 0.8413, P(1.645) 0.9500.
    #[test]
    fn the_normal_curve_is_as_tabled() {
        for (deviations, below) in [(0.0, 0.5), (1.0, 0.8413), (1.645, 0.9500), (-1.0, 0.1587)] {
            assert!(
                (normal_below(deviations) - below).abs() < 5e-4,
                "{deviations}"
            );
        }
    }
}
