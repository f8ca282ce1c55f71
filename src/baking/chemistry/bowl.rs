//! A bowl: who brings acid, who brings base, the pH where they meet, and the gas that is made.

use super::{
    NEUTRAL, base_demand, base_demand_deviation, bicarbonate, carbonate, leavening_uptake,
    leavening_uptake_deviation,
};
use crate::baking::balance::{Constituent, total};
use crate::baking::estimate::Estimate;
use crate::baking::formula::{Formula, Weighed};
use crate::baking::quantity::{Equivalents, Mass, Ph, Share};

/// Half the 5 to 95 % range that the choice of model adds to a crumb's pH: which phosphates form,
/// how much carbon dioxide the crumb holds. Worked out by comparing models; weakly known.
const MODEL_SPREAD: f64 = 0.3;

/// An ingredient whose acidity no source gives may take this much base to pH 7, meq per 100 g, one
/// standard deviation: flour takes 1.4, ripe banana 6. A guess, shown as one.
const UNKNOWN_ACIDITY: f64 = 3.0;

/// The part of its acid that fruit in pieces gives to the batter around it, and the standard deviation of that
/// part against itself: juice leaves at the cut and as skins burst (common practice, no source).
const FROM_PIECES: f64 = 0.35;
const FROM_PIECES_DEVIATION: f64 = 0.5;

/// Relative standard deviation of the gas that soda and powder make, beside the weighing: age, fineness
/// and mixing (common practice, no source).
const GAS_MODEL: f64 = 0.05;

/// Carbon dioxide, g/mol.
const CARBON_DIOXIDE: f64 = 44.009;

/// Standard normal 95 % point.
const NORMAL_95: f64 = 1.645;

/// What a line brings, acid against base.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// The line of the text.
    pub line: usize,
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
    lines: Vec<Weighed>,
    water: Mass,
    base: Equivalents,
    guess: f64,
}

/// The facts of a formula's batter; `None` where nothing in it brings acid, base or a buffer.
pub fn bowl(formula: &Formula) -> Option<Bowl> {
    let lines: Vec<Weighed> = formula.batter().cloned().collect();
    let parts: Vec<Part> = lines.iter().filter_map(part).collect();
    let acids: Vec<_> = lines
        .iter()
        .filter_map(|line| acid_to(line, NEUTRAL))
        .collect();
    let sodas: Vec<_> = lines.iter().map(|line| free_soda(line, NEUTRAL)).collect();
    let base = lines.iter().map(base_of).sum();
    let guess = root_of_squares(lines.iter().map(guess_deviation));
    let water = total(formula, Constituent::Water).grams.mean;
    let mut bowl = Bowl {
        acid: Estimate::sum(&acids),
        soda: Estimate::sum(&sodas),
        parts,
        ph: Estimate::exact(Ph::of(NEUTRAL)),
        gas: Gas {
            made: Estimate::exact(Mass::ZERO),
            early: Share::fraction(0.0),
        },
        lines,
        water,
        base,
        guess,
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
        let taken_up: Equivalents = self
            .lines
            .iter()
            .map(|line| {
                let acidity = demand(line, ph).unwrap_or(Equivalents::ZERO);
                let leavening = line
                    .ingredient
                    .leavening
                    .map_or(Equivalents::ZERO, |leavening| {
                        leavening_uptake(leavening, line.grams.mean, ph)
                    });
                acidity + leavening
            })
            .sum();
        taken_up + Equivalents::milliequivalents(carbonate::kept(self.water, ph).base)
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

    /// The standard deviation of need less soda at a pH, meq.
    fn deviation(&self, ph: f64) -> f64 {
        let ingredients = self
            .lines
            .iter()
            .filter_map(|line| Some(acid_to(line, ph)?.deviation()));
        let leaveners = self
            .lines
            .iter()
            .map(|line| free_soda(line, ph).deviation());
        root_of_squares(ingredients)
            .hypot(root_of_squares(leaveners))
            .hypot(self.guess)
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
        let all: f64 = self.base.to_milliequivalents();
        let kept = carbonate::kept(self.water, self.ph.mean.value())
            .carbon
            .min(all);
        let grams = |millimoles: f64| Mass::grams(millimoles * CARBON_DIOXIDE / 1000.0);
        let weighing = root_of_squares(
            self.lines
                .iter()
                .map(|line| base_of(line).to_milliequivalents() * line.grams.relative_deviation()),
        );
        let half = NORMAL_95 * weighing.hypot(GAS_MODEL * all);
        let made = all - kept;
        let without_acid: f64 = self
            .lines
            .iter()
            .filter(|line| {
                line.ingredient
                    .leavening
                    .is_some_and(|leavening| leavening.neutralised.1 == 0.0)
            })
            .map(|line| base_of(line).to_milliequivalents())
            .sum();
        Gas {
            made: Estimate::between(
                grams((made - half).max(0.0)),
                grams(made),
                grams(made + half),
            ),
            early: Share::fraction(if all > 0.0 { without_acid / all } else { 0.0 }),
        }
    }
}

/// What a line brings; `None` where it is known to bring neither acid nor base.
fn part(line: &Weighed) -> Option<Part> {
    let acid = acid_to(line, NEUTRAL);
    let soda = free_soda(line, NEUTRAL);
    let guess = guess_deviation(line);
    let mean =
        acid.map_or(0.0, |acid| acid.mean.to_milliequivalents()) - soda.mean.to_milliequivalents();
    let unknown = guess > 0.0;
    if mean == 0.0 && line.ingredient.leavening.is_none() && !unknown {
        return None;
    }
    let deviation = acid
        .map_or(0.0, |acid| acid.deviation())
        .hypot(soda.deviation())
        .hypot(guess);
    Some(Part {
        line: line.line,
        acid: normal(mean, deviation),
        unknown,
    })
}

/// Bicarbonate in a line: the base it brings.
fn base_of(line: &Weighed) -> Equivalents {
    let millimoles = line
        .ingredient
        .leavening
        .map_or(0.0, |leavening| bicarbonate(leavening, line.grams.mean));
    Equivalents::milliequivalents(millimoles)
}

/// Base that a leavener has left at a pH once its own acid has taken its part; negative for cream of tartar.
fn free_soda(line: &Weighed, ph: f64) -> Estimate<Equivalents> {
    let Some(leavening) = line.ingredient.leavening else {
        return Estimate::exact(Equivalents::ZERO);
    };
    let free =
        (base_of(line) - leavening_uptake(leavening, line.grams.mean, ph)).to_milliequivalents();
    let uptake = leavening_uptake_deviation(leavening, line.grams.mean).to_milliequivalents();
    normal(free, uptake.hypot(free * line.grams.relative_deviation()))
}

/// Base that a line takes up to a pH; `None` where no source tells.
fn demand(line: &Weighed, ph: f64) -> Option<Equivalents> {
    Some(base_demand(line.ingredient.acidity?, line.grams.mean, ph) * met(line))
}

/// The same with its spread: the weight's, the ingredient's own, and how much of it meets the batter.
fn acid_to(line: &Weighed, ph: f64) -> Option<Estimate<Equivalents>> {
    let mean = demand(line, ph)?.to_milliequivalents();
    let own = base_demand_deviation(line.ingredient.acidity?, line.grams.mean, ph);
    let own = own.to_milliequivalents() * met(line);
    let pieces = if line.in_pieces {
        mean * FROM_PIECES_DEVIATION
    } else {
        0.0
    };
    let weighing = mean * line.grams.relative_deviation();
    Some(normal(mean, own.hypot(weighing).hypot(pieces)))
}

/// The part of a line that meets the batter.
fn met(line: &Weighed) -> f64 {
    if line.in_pieces { FROM_PIECES } else { 1.0 }
}

/// The guess for a line of unknown acidity: as likely base as acid. Leaveners are known by what they hold.
fn guess_deviation(line: &Weighed) -> f64 {
    let known = line.ingredient.acidity.is_some() || line.ingredient.leavening.is_some();
    if known {
        0.0
    } else {
        line.grams.mean.to_grams() / 100.0 * UNKNOWN_ACIDITY
    }
}

fn normal(mean: f64, deviation: f64) -> Estimate<Equivalents> {
    let at = Equivalents::milliequivalents;
    Estimate::between(
        at(mean - NORMAL_95 * deviation),
        at(mean),
        at(mean + NORMAL_95 * deviation),
    )
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
