//! A bowl: who brings acid, who brings base, the pH where they meet, and the gas that is made.

use super::acid::Protons;
use super::contribution::Contribution;
use super::course::{
    Batter, HIGHEST, Handling, SETS_AT, Stage, State, course, crumb as crumb_water,
};
use super::leavening::{CARBON_DIOXIDE_GRAMS_PER_MMOL, SODA_MMOL_PER_GRAM};
use super::settling::Settling;
use super::{Curve, NEUTRAL, carbonate};
use crate::baking::balance::{Constituent, total};
use crate::baking::estimate::{Estimate, NORMAL_95};
use crate::baking::formula::Formula;
use crate::baking::quantity::{Equivalents, Mass, Ph, Share};

/// Half the 5 to 95 % range that the choice of model adds to a crumb's pH: how much carbon dioxide the crumb holds,
/// which buffers meet. Worked out by comparing models; weakly known. What phosphates may do goes upwards only and
/// stands beside it, in [`Settling`].
const MODEL_SPREAD: f64 = 0.3;

/// What is added to it where the powder holds sodium acid pyrophosphate alone, in the same measure: whether it takes
/// up what its constants say, or what the trade's value says, or is split on the way. Worked out by comparing.
const PYROPHOSPHATE_SPREAD: f64 = 0.6;

/// No crumb is below this pH.
const LOWEST: f64 = 1.0;

/// How near the ends of a range of pH are met.
const END_STEP: f64 = 1e-3;

/// The part of a mixed batter's volume that is air beaten in (common practice, no source: 0.05 stirred to 0.2 creamed;
/// a whisked foam holds more).
const AIR: f64 = 0.1;

/// A mole of air at the bench, L.
const MOLE_OF_AIR: f64 = 24.2;

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
    /// Carbon dioxide set free, ammonium's with it.
    pub made: Estimate<Mass>,
    /// What baker's ammonia adds to it where the goods bake thin and dry, as carbon dioxide that takes up as much room:
    /// from its ammonia alone to ammonia and the steam of its own water, a mole of each for one of carbon dioxide.
    pub if_dry: Estimate<Mass>,
    /// The part of it that is there before the oven.
    pub early: Share,
    /// The part of it that has left the batter before it sets.
    pub lost: Share,
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
    /// pH of the batter as it goes into the oven, its gas in it.
    pub batter_ph: Estimate<Ph>,
    /// Soda that stays solid in the crumb: there is too little water for it.
    pub undissolved: Mass,
    /// The course from the bench through the oven to the crumb; empty without water.
    pub course: Vec<State>,
    /// The gas.
    pub gas: Gas,
    contributions: Vec<Contribution>,
    curve: Curve,
    settling: Settling,
    /// All bicarbonate.
    bicarbonate: Equivalents,
    /// Base that is at work in the crumb: the bicarbonate, what the ionic strength makes of it, and what a measured
    /// crumb tells beyond it.
    base: Equivalents,
    /// No crumb is above this pH.
    highest: f64,
    /// What was measured.
    measured: Option<Measured>,
    water: Mass,
}

/// The facts of a formula's batter handled like that; `None` where nothing in it brings acid, base or a buffer.
pub fn bowl(formula: &Formula, handling: &Handling) -> Option<Bowl> {
    let mut bowl = crumb(formula)?;
    bowl.course = course(&bowl.batter(formula), handling).unwrap_or_default();
    bowl.batter_ph = bowl.before_the_oven();
    bowl.gas = bowl.gas();
    Some(bowl)
}

/// The same without the course and its gas: what the crumb is in the end is no matter of how it came to be.
fn crumb(formula: &Formula) -> Option<Bowl> {
    let contributions: Vec<Contribution> = formula.batter().map(Contribution::of).collect();
    let neutral = Protons::at(NEUTRAL);
    let acids: Vec<_> = contributions
        .iter()
        .map(|line| line.acid(&neutral))
        .collect();
    let sodas: Vec<_> = contributions
        .iter()
        .map(|line| line.free_soda(&neutral))
        .collect();
    let bicarbonate: Equivalents = contributions.iter().map(|line| line.base).sum();
    let mut bowl = Bowl {
        parts: contributions
            .iter()
            .filter_map(|line| part(line, &neutral))
            .collect(),
        acid: Estimate::sum(&acids),
        soda: Estimate::sum(&sodas),
        ph: Estimate::exact(Ph::of(NEUTRAL)),
        batter_ph: Estimate::exact(Ph::of(NEUTRAL)),
        undissolved: Mass::ZERO,
        course: Vec::new(),
        gas: Gas {
            made: Estimate::exact(Mass::ZERO),
            if_dry: Estimate::exact(Mass::ZERO),
            early: Share::fraction(0.0),
            lost: Share::fraction(0.0),
        },
        curve: contributions.iter().map(Contribution::curve).sum(),
        settling: contributions.iter().map(|line| line.settling).sum(),
        bicarbonate,
        base: bicarbonate,
        highest: HIGHEST,
        measured: None,
        water: total(formula, Constituent::Water).grams.mean,
        contributions,
    };
    // Without a buffer, a base or an acid there is no curve to find a root on.
    if bowl.parts.is_empty() || bowl.slope(NEUTRAL) <= 0.0 {
        return None;
    }
    let found = crumb_water(&bowl.batter(formula));
    if let Some((water, solid)) = found {
        // From here on the sum of curves is read from where the charges balance at the crumb's own ionic strength. Soda
        // that stays solid is base for any acid to come, but raises the pH no further.
        bowl.base = bowl.need(water.ph) + Equivalents::milliequivalents(solid * 1000.0);
        if solid > 0.0 {
            bowl.undissolved = Mass::grams(solid * 1000.0 / SODA_MMOL_PER_GRAM);
            bowl.highest = water.ph;
        }
    }
    bowl.ph = bowl.crumb(found.map_or_else(|| bowl.root(), |(water, _)| water.ph));
    Some(bowl)
}

/// What a measured crumb tells.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Measured {
    /// Standard deviation of the pH with the model and the measurement together.
    deviation: f64,
    /// Base that the model did not know of; negative where it is acid.
    beyond: Equivalents,
}

/// Standard deviation of a crumb's pH by a strip or a plain meter in a slurry of one part crumb and one or two parts
/// of water (common practice, no source: strips are read to 0.25, meters to 0.1, and the slurry takes its part). The
/// water itself moves the pH by hundredths: the crumb's carbon stays in it for the minutes of a reading (worked out).
pub const METER: f64 = 0.2;

impl Bowl {
    /// The same once the baker has measured its crumb's pH: the mean of model and measurement, each weighed by its
    /// certainty, and the narrower spread of both. What the model did not know is taken as base or acid.
    pub fn with_measured(self, ph: f64) -> Self {
        self.with_measured_by(ph, METER)
    }

    /// The same once crumbs of other bakes of this recipe were measured: each tells how much base a kilogram of its batter
    /// held beyond what was reckoned, meq, and by that where this one's crumb would have been read. Their mean is taken, as
    /// sure as so many readings are.
    pub fn with_told(self, beyond: &[f64], batter: Mass) -> Self {
        if beyond.is_empty() {
            return self;
        }
        let many = beyond.len() as f64;
        let read = |beyond: &f64| {
            let base = Equivalents::milliequivalents(beyond * batter.to_grams() / 1000.0);
            self.root_of(self.base + base, HIGHEST)
        };
        let ph = beyond.iter().map(read).sum::<f64>() / many;
        self.with_measured_by(ph, METER / many.sqrt())
    }

    /// Base in a kilogram of batter beyond what was reckoned, meq, where its crumb is read at a pH; negative where it is
    /// acid.
    pub fn beyond(&self, ph: f64, batter: Mass) -> f64 {
        self.missing(ph).to_milliequivalents() / (batter.to_grams() / 1000.0)
    }

    fn with_measured_by(mut self, ph: f64, meter: f64) -> Self {
        let model = self.ph.deviation().max(1e-3);
        let (by_model, by_meter) = (model.powi(-2), meter.powi(-2));
        let mean = (self.ph.mean.value() * by_model + ph * by_meter) / (by_model + by_meter);
        let measured = Measured {
            deviation: (by_model + by_meter).powf(-0.5),
            beyond: self.need(mean) - self.base,
        };
        self.highest = self.highest.max(mean);
        self.carry(measured);
        self
    }

    /// The crumb of a changed formula, with what was measured of this one; without a course and its gas, which is a
    /// hundredth of the work. For trying out amounts.
    pub fn tried(&self, formula: &Formula) -> Option<Self> {
        Some(crumb(formula)?.told_by(self))
    }

    /// The same with its course and its gas.
    pub fn changed(&self, formula: &Formula, handling: &Handling) -> Option<Self> {
        Some(bowl(formula, handling)?.told_by(self))
    }

    /// With what was measured of another bowl, if anything was.
    fn told_by(mut self, other: &Self) -> Self {
        if let Some(measured) = other.measured {
            self.carry(measured);
        }
        self
    }

    fn carry(&mut self, measured: Measured) {
        self.base = self.base + measured.beyond;
        self.measured = Some(measured);
        let mean = self.root();
        let shift = mean - self.ph.mean.value();
        self.ph = Estimate::normal(mean, measured.deviation);
        self.batter_ph = Estimate::normal(self.batter_ph.mean.value() + shift, measured.deviation);
    }

    /// Base that the whole bowl takes up to reach a pH: its ingredients, its leavening acids, and the bicarbonate
    /// that its crumb then keeps. It rises with pH.
    pub fn need(&self, ph: f64) -> Equivalents {
        let at = Protons::at(ph);
        Equivalents::milliequivalents(self.curve.at_protons(&at) + carbonate::kept(self.water, &at))
    }

    /// Soda missing to reach a pH; negative where there is more than enough.
    pub fn missing(&self, ph: f64) -> Equivalents {
        self.need(ph) - self.base
    }

    /// How likely the crumb lies below a pH, from 0 to 1, by the spread of all that is in the bowl.
    pub fn chance_below(&self, ph: f64) -> f64 {
        if let Some(measured) = self.measured {
            return normal_below((ph - self.ph.mean.value()) / measured.deviation);
        }
        let missing = self.missing(ph).to_milliequivalents();
        // Base that phosphates may spare can only take a crumb upwards.
        let spared = if missing > 0.0 {
            self.settling.spared(ph)
        } else {
            0.0
        };
        let model = (self.slope(ph) * self.model_spread()).hypot(spared) / NORMAL_95;
        let deviation = self.deviation(ph).hypot(model);
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

    /// How much higher than the mean the crumb lies if its phosphates settle otherwise than reckoned, all the way;
    /// nothing once it is measured.
    pub fn settled_otherwise(&self) -> f64 {
        if self.is_measured() {
            0.0
        } else {
            self.higher_by_settling(self.ph.mean.value())
        }
    }

    /// Whether the baker's own measurement is in the pH.
    pub fn is_measured(&self) -> bool {
        self.measured.is_some()
    }

    /// The standard deviation of need less soda at a pH, meq.
    fn deviation(&self, ph: f64) -> f64 {
        let at = Protons::at(ph);
        root_of_squares(self.contributions.iter().map(|line| line.deviation(&at)))
    }

    /// How fast the need rises with pH, meq per unit.
    fn slope(&self, ph: f64) -> f64 {
        const STEP: f64 = 0.05;
        (self.need(ph + STEP) - self.need(ph - STEP)).to_milliequivalents() / (2.0 * STEP)
    }

    /// The part of the soda left over that heat splits in the crumb, which stays wet: what of it is carbonate in the
    /// hottest water of the course, in balance with the gas in its bubbles. `None` without water, or with no soda left.
    pub fn split_in_crumb(&self) -> Option<Share> {
        let hottest = self
            .course
            .iter()
            .rfind(|state| state.stage == Stage::Oven)?;
        // Two of soda are one of carbonate.
        let split = 2.0 * hottest.carbonate;
        let soda = hottest.kept + hottest.carbonate;
        (soda > 0.0).then(|| Share::fraction(split / soda))
    }

    /// What goes through the course.
    fn batter(&self, formula: &Formula) -> Batter {
        let all: Mass = formula.batter().map(|line| line.grams.mean).sum();
        let mut batter = Batter {
            water: self.water.to_grams() / 1000.0,
            air: all.to_grams() / 1000.0 * AIR / (1.0 - AIR) / MOLE_OF_AIR,
            ..Batter::default()
        };
        for line in &self.contributions {
            line.put_into(&mut batter);
        }
        batter.take_enough_water();
        batter
    }

    /// Half the 5 to 95 % range that the model adds to the pH.
    fn model_spread(&self) -> f64 {
        let all = self.bicarbonate.to_milliequivalents();
        let pyrophosphate: f64 = self
            .contributions
            .iter()
            .map(Contribution::pyrophosphate)
            .sum();
        let part = if all > 0.0 {
            // A powder of nothing else has half a mole of it to a mole of soda.
            (2.0 * pyrophosphate / all).min(1.0)
        } else {
            0.0
        };
        MODEL_SPREAD.hypot(PYROPHOSPHATE_SPREAD * part)
    }

    /// The pH where need meets soda, with both ends of its spread.
    fn crumb(&self, mean: f64) -> Estimate<Ph> {
        let so_far = |deviations: f64| {
            self.end(mean, deviations, &|ph| {
                self.missing(ph).to_milliequivalents() - deviations * self.deviation(ph)
            })
        };
        let (low, high) = (so_far(-NORMAL_95), so_far(NORMAL_95));
        let model = self.model_spread();
        Estimate::between(
            Ph::of(mean - (mean - low).max(0.0).hypot(model)),
            Ph::of(mean),
            Ph::of(
                mean + (high - mean)
                    .max(0.0)
                    .hypot(model)
                    .hypot(self.higher_by_settling(mean)),
            ),
        )
    }

    fn higher_by_settling(&self, mean: f64) -> f64 {
        if self.settling.spared(mean) <= 0.0 {
            return 0.0;
        }
        let high = self.end(mean, 1.0, &|ph| {
            self.missing(ph).to_milliequivalents() - self.settling.spared(ph)
        });
        (high - mean).max(0.0)
    }

    /// The pH of the batter as it goes into the oven. Its spread is that of the crumb at most: carbon dioxide, which
    /// the crumb has lost, buffers the batter.
    fn before_the_oven(&self) -> Estimate<Ph> {
        let last = self
            .course
            .iter()
            .rfind(|state| state.stage == Stage::Bench);
        let Some(batter) = last else {
            return self.ph;
        };
        let mean = Ph::of(batter.ph);
        let shift = batter.ph - self.ph.mean.value();
        Estimate::between(
            Ph::of(self.ph.low.value() + shift),
            mean,
            Ph::of(self.ph.high.value() + shift),
        )
    }

    /// The pH at which the bowl takes up its soda. The need rises with pH, so halving an interval that holds the root
    /// cannot fail; the ends stand for all that lies beyond them.
    fn root(&self) -> f64 {
        self.root_of(self.base, self.highest)
    }

    /// The pH at which the need is so much base, or the highest that there is.
    fn root_of(&self, base: Equivalents, highest: f64) -> f64 {
        let (mut low, mut high) = (LOWEST, highest);
        for _ in 0..40 {
            let middle = (low + high) / 2.0;
            if self.need(middle) < base {
                low = middle
            } else {
                high = middle
            }
        }
        (low + high) / 2.0
    }

    /// An end of a range, below the mean or above it: the pH at which `over` passes through nothing. So many standard
    /// deviations are taken as they are at that pH, since what is unsure of an acid grows with how much of it is met.
    /// The line through the last two tries is followed, halving wherever it leaves the interval that is known to hold
    /// the end.
    fn end(&self, mean: f64, side: f64, over: &dyn Fn(f64) -> f64) -> f64 {
        let (mut low, mut high) = if side < 0.0 {
            (LOWEST, mean)
        } else {
            (mean, self.highest)
        };
        let mut before = (mean, over(mean));
        let mut ph = mean - before.1 / self.slope(mean);
        for _ in 0..20 {
            if !(ph > low && ph < high) {
                ph = (low + high) / 2.0;
            }
            let tried = (ph, over(ph));
            if tried.1 < 0.0 {
                low = ph
            } else {
                high = ph
            }
            ph = tried.0 - tried.1 * (tried.0 - before.0) / (tried.1 - before.1);
            before = tried;
            if (ph - tried.0).abs() < END_STEP {
                return ph;
            }
        }
        before.0
    }

    /// What baker's ammonia gives beside its carbon dioxide: NH4HCO3 is NH3, CO2 and H2O.
    fn if_dry(&self) -> Estimate<Mass> {
        let lines = self.contributions.iter();
        let lines = lines.filter(|line| line.ammonium() > Equivalents::ZERO);
        let half = NORMAL_95 * root_of_squares(lines.map(Contribution::base_deviation));
        let all: Equivalents = self.contributions.iter().map(Contribution::ammonium).sum();
        let all = all.to_milliequivalents();
        let room = |moles: f64| Mass::grams(moles.max(0.0) * CARBON_DIOXIDE_GRAMS_PER_MMOL);
        Estimate::between(room(all - half), room(1.5 * all), room(2.0 * (all + half)))
    }

    /// Carbon dioxide that becomes gas while the batter can still rise or set around it.
    fn gas(&self) -> Gas {
        let all = self.bicarbonate.to_milliequivalents();
        let oven = |state: &&State| state.stage == Stage::Oven;
        let made = self
            .course
            .iter()
            .rfind(oven)
            .map_or(0.0, |state| state.made * 1000.0);
        let share = |found: Option<f64>| match found {
            Some(part) if made > 0.0 => Share::fraction((part * 1000.0 / made).min(1.0)),
            _ => Share::fraction(0.0),
        };
        let bench = self
            .course
            .iter()
            .rfind(|state| state.stage == Stage::Bench);
        let sets = self
            .course
            .iter()
            .filter(oven)
            .find(|state| state.celsius >= SETS_AT)
            .or(self.course.iter().rfind(oven));
        let grams = |millimoles: f64| Mass::grams(millimoles * CARBON_DIOXIDE_GRAMS_PER_MMOL);
        let weighing = root_of_squares(self.contributions.iter().map(Contribution::base_deviation));
        let half = NORMAL_95 * weighing.hypot(GAS_MODEL * all);
        Gas {
            if_dry: self.if_dry(),
            made: Estimate::between(
                grams((made - half).max(0.0)),
                grams(made),
                grams(made + half),
            ),
            early: share(bench.map(|state| state.made)),
            lost: share(sets.map(|state| state.lost)),
        }
    }
}

/// What a line brings to pH 7; `None` where it is known to bring neither acid nor base.
fn part(line: &Contribution, neutral: &Protons) -> Option<Part> {
    let acid = line.acid(neutral).mean - line.free_soda(neutral).mean;
    (acid != Equivalents::ZERO || line.is_leavener() || line.is_unknown()).then(|| Part {
        line: line.line,
        part: line.part,
        acid: Estimate::normal(acid.to_milliequivalents(), line.deviation(neutral)),
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
mod sampling;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::baking::formula::{Habits, weigh};
    use crate::baking::ingredient::{Larder, PieceSize, Region};
    use crate::baking::recipe::read;

    fn formula(text: &str) -> Formula {
        let habits = Habits {
            region: Region::Us,
            filling: None,
            eggs: PieceSize::Large,
        };
        weigh(&read(text, Larder::of(habits.region), &[]), &habits)
    }

    /// Two readings of one thing, weighed by their certainty (common to all of measurement): the mean lies nearer the
    /// surer one and is surer than either; base that the model did not know stays where soda is added.
    #[test]
    fn a_measured_crumb_narrows_the_model() {
        let cake = "200 g flour\n200 g sugar\n240 g buttermilk\n2 eggs\n1 tsp baking soda";
        let before = bowl(&formula(cake), &Handling::default()).expect("a bowl");
        let reading = before.ph.mean.value() - 0.5;
        let after = before.clone().with_measured(reading);
        let found = after.ph.mean.value();
        assert!(found > reading && found < before.ph.mean.value());
        assert!(after.ph.deviation() < METER && after.ph.deviation() < before.ph.deviation());
        assert!((after.chance_below(found) - 0.5).abs() < 1e-3);
        let more = formula(&format!("{cake}\n2 g baking soda"));
        let told = after.tried(&more).expect("a bowl").ph.mean.value();
        let untold = before.tried(&more).expect("a bowl").ph.mean.value();
        assert!(told < untold && told > found);
    }

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
