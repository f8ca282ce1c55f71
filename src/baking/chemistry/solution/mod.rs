//! The water of a batter: the pH at which its charges balance.
//!
//! Goes in: what a kilogram of the batter's water holds, as [`Solution`]. Comes out: [`Answer`]. Every weak acid
//! gives its protons by constants at the batter's temperature, corrected for ions by the Davies equation at the
//! solution's own ionic strength and for water by Raoult's law; sodium and potassium pair with nothing, since
//! measured carbonate buffers agree better without. Nothing settles out here: solids, and what a leavening acid
//! does with time, are for whoever fills the bowl.
//!
//! At one ionic strength the charges' balance falls with pH, whatever is in the bowl, so there is one root and an
//! interval that holds it cannot lose it. The ionic strength is the root of a second function that has to cross zero
//! between none and all that is there; it is hunted in an interval too.
//!
//! To [`LEVEL`] the answer is what PHREEQC says with the same constants: 0.003 pH, 0.3 % of the carbon dioxide and
//! 0.5 % of all carbon over some hundred bowls. What is left is its own Davies A, 0.6 % higher at 95 C, and water that
//! the reactions make or use up, which is not followed here. How true it is is another matter.
//! Four measured buffers of 0.03 to 0.1 mol/kg are met to 0.011 pH. phreeqc.dat, PHREEQC's own database, which pairs
//! sodium with carbonate and phosphate, differs by up to 0.07 where pH is below 8, ions below [`DAVIES_LIMIT`] and
//! the bowl no hotter than 60 C; by 0.3 to 0.4 where ions are more or it is hotter; and by 0.7 in hot soda water.

mod activity;
mod buffer;
mod carbon;
mod constants;

pub use activity::{Activity, DAVIES_LIMIT, LEVEL};
pub use buffer::Buffer;
pub use carbon::{Carbon, Dissolved};
pub use constants::{
    ACIDS, ALL, Acid, CARBONIC, CONSTANTS, Constants, DAVIES, HENRY, STEPS, WATER, davies, henry,
    step_constant, water_constant,
};

use std::f64::consts::LN_10;

/// What a kilogram of a batter's water holds. Amounts count upwards from zero; [`Solution::solve`] says what it makes
/// of others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Solution {
    /// Moles of each acid in whatever form it came, salts of it too, in the order of [`ALL`].
    pub acids: [f64; ACIDS],
    /// Charge of the strong ions that have no other strong ion beside them, eq/kg: sodium, potassium and twice
    /// calcium less chloride and twice sulphate. A mole of soda brings one, of cream of tartar one, of sodium acid
    /// pyrophosphate two. Negative where strong acid prevails.
    pub strong: f64,
    /// Salt that takes no part, mol/kg, as sodium chloride.
    pub salt: f64,
    /// What else buffers, meq/kg.
    pub buffer: Buffer,
    /// Carbon.
    pub carbon: Carbon,
    /// Temperature, C.
    pub celsius: f64,
}

impl Default for Solution {
    fn default() -> Self {
        Self {
            acids: [0.0; ACIDS],
            strong: 0.0,
            salt: 0.0,
            buffer: Buffer::default(),
            carbon: Carbon::None,
            celsius: 25.0,
        }
    }
}

/// What had to be set right or is beyond what is known. All false for a batter.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Doubts {
    /// Something was not a number or below nothing, and was taken as nothing.
    pub not_an_amount: bool,
    /// An amount or a pressure was beyond [`MOST`] or [`MOST_PRESSURE`], and was taken as that.
    pub too_much: bool,
    /// The temperature was not one of liquid water, 0 to 100 C, and was taken as the nearest; 25 C where it was not
    /// a number.
    pub temperature: bool,
    /// The ionic strength is above [`DAVIES_LIMIT`].
    pub crowded: bool,
}

/// The most of anything that is reckoned with, mol/kg; no acid or salt of a kitchen is as soluble.
pub const MOST: f64 = 50.0;

/// The highest pressure of carbon dioxide that is reckoned with, atm; Henry's law holds to about there.
pub const MOST_PRESSURE: f64 = 10.0;

/// What comes out, per kilogram of water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// pH: minus the decimal logarithm of the proton's activity, as a meter has it.
    pub ph: f64,
    /// Ionic strength, mol/kg.
    pub ionic_strength: f64,
    /// Activity of water, 1 where it is pure.
    pub water_activity: f64,
    /// Everything that is dissolved, mol/kg.
    pub solutes: f64,
    /// Carbon in the water.
    pub carbon: Dissolved,
    /// Carbon that left as gas, mol/kg; only [`Carbon::Venting`] has any.
    pub gas: f64,
    /// Pressure of carbon dioxide over the water, atm: where it is above that of the air, bubbles grow.
    pub pressure_atm: f64,
    /// Charge that is left over, eq/kg; how near the root was met.
    pub residual: f64,
    /// What had to be set right.
    pub doubts: Doubts,
}

/// Interval of pH that holds every root: more proton or hydroxide than [`MOST`] of everything could answer.
const ENDS: (f64, f64) = (-5.0, 20.0);

impl Solution {
    /// The solution that comes of so many kilograms of water with these amounts in all of it; `None` without water,
    /// for which no pH is.
    pub fn in_water(mut self, kilograms: f64) -> Option<Self> {
        if !(kilograms > 0.0 && kilograms.is_finite()) {
            return None;
        }
        let share = 1.0 / kilograms;
        self.acids = self.acids.map(|amount| amount * share);
        self.strong *= share;
        self.salt *= share;
        self.buffer = self.buffer.times(share);
        match &mut self.carbon {
            Carbon::Closed { total } | Carbon::Venting { total, .. } => *total *= share,
            Carbon::None | Carbon::Open { .. } => {}
        }
        Some(self)
    }

    /// Puts what another holds into it, carbon left aside.
    pub fn add(&mut self, other: &Self) {
        for (amount, more) in self.acids.iter_mut().zip(other.acids) {
            *amount += more;
        }
        self.strong += other.strong;
        self.salt += other.salt;
        self.buffer = self.buffer + other.buffer;
    }

    /// The pH at which all charges balance, and what goes with it. Anything gets an answer; what had to be set
    /// right for it stands in [`Answer::doubts`].
    pub fn solve(&self) -> Answer {
        self.solve_from(None)
    }

    /// The same, sooner where the answer of a solution much like it is known.
    pub fn solve_from(&self, like: Option<&Answer>) -> Answer {
        let (solution, doubts) = self.within_reason();
        let solve = |carbon| Reckoning::of(&solution, carbon).answer(like);
        let mut answer = match solution.carbon {
            Carbon::Venting {
                total,
                pressure_atm,
            } => {
                let mut open = solve(Carbon::Open { pressure_atm });
                open.gas = total - open.carbon.total();
                // Where the water could hold more than there is, none of it leaves.
                if open.gas >= 0.0 {
                    open
                } else {
                    solve(solution.carbon)
                }
            }
            carbon => solve(carbon),
        };
        answer.doubts = doubts;
        answer.doubts.crowded = answer.ionic_strength > DAVIES_LIMIT;
        answer
    }

    /// The same with everything a number and within what is reckoned with, and what was changed for it.
    fn within_reason(&self) -> (Self, Doubts) {
        let mut doubts = Doubts::default();
        let mut solution = *self;
        for amount in solution.acids.iter_mut().chain([&mut solution.salt]) {
            doubts.amount(amount, MOST);
        }
        doubts.charge(&mut solution.strong, MOST);
        for slope in &mut solution.buffer.slopes {
            doubts.amount(slope, MOST * 1000.0);
        }
        doubts.charge(&mut solution.buffer.given, MOST * 20_000.0);
        match &mut solution.carbon {
            Carbon::None => {}
            Carbon::Open { pressure_atm } => doubts.amount(pressure_atm, MOST_PRESSURE),
            Carbon::Closed { total } => doubts.amount(total, MOST),
            Carbon::Venting {
                total,
                pressure_atm,
            } => {
                doubts.amount(total, MOST);
                doubts.amount(pressure_atm, MOST_PRESSURE);
            }
        }
        solution.celsius = if self.celsius.is_nan() {
            25.0
        } else {
            self.celsius.clamp(0.0, 100.0)
        };
        doubts.temperature = solution.celsius != self.celsius;
        (solution, doubts)
    }
}

impl Doubts {
    /// Takes an amount into the range from nothing to `most`.
    fn amount(&mut self, amount: &mut f64, most: f64) {
        if *amount < 0.0 {
            self.not_an_amount = true;
            *amount = 0.0;
        }
        self.charge(amount, most);
    }

    /// The same for what may be of either sign.
    fn charge(&mut self, amount: &mut f64, most: f64) {
        if amount.is_nan() {
            self.not_an_amount = true;
            *amount = 0.0;
        }
        self.too_much |= amount.abs() > most;
        // Not clamp, which would bring the printing of numbers into the page for a panic that cannot be.
        *amount = amount.max(-most).min(most);
    }
}

/// An acid that is there: how much, and the constants of its steps.
#[derive(Clone, Copy, Default)]
struct Present {
    amount: f64,
    steps: usize,
    /// In activities, at this temperature.
    pure: [f64; STEPS],
    /// For the proton's activity and the molalities of the rest, at the present ionic strength.
    mixed: [f64; STEPS],
}

/// A solution on the way to its answer.
struct Reckoning<'a> {
    solution: &'a Solution,
    carbon: Carbon,
    acids: [Present; ACIDS],
    /// How many of them are there.
    count: usize,
    carbonic: Present,
    /// Carbon dioxide's activity under one atmosphere of it, mol/kg.
    henry: f64,
    water: f64,
    activity: Activity,
    water_activity: f64,
}

/// All charges at a pH.
#[derive(Clone, Copy, Default)]
struct Charges {
    /// Above nothing, eq/kg, and its change with pH.
    positive: [f64; 2],
    /// The same below nothing.
    negative: [f64; 2],
    /// Ionic strength, mol/kg.
    ionic: f64,
    /// Everything that is dissolved, mol/kg.
    solutes: f64,
    carbon: Dissolved,
}

impl<'a> Reckoning<'a> {
    fn of(solution: &'a Solution, carbon: Carbon) -> Self {
        let mut reckoning = Self {
            solution,
            carbon,
            acids: [Present::default(); ACIDS],
            count: 0,
            carbonic: Present::of(&CARBONIC, 0.0, solution.celsius),
            henry: henry(solution.celsius),
            water: water_constant(solution.celsius),
            activity: Activity::at(solution.celsius, 0.0),
            water_activity: 1.0,
        };
        for (constants, amount) in CONSTANTS.iter().zip(solution.acids) {
            if amount > 0.0 {
                reckoning.acids[reckoning.count] = Present::of(constants, amount, solution.celsius);
                reckoning.count += 1;
            }
        }
        reckoning
    }

    /// Takes the constants to an ionic strength and to so many solutes.
    fn mix(&mut self, ionic: f64, solutes: f64) {
        self.activity = Activity::at(self.solution.celsius, ionic);
        self.water_activity = activity::of_water(solutes);
        let step = self.activity.step;
        for acid in &mut self.acids[..self.count] {
            acid.mix(&step);
        }
        self.carbonic.mix(&step);
        // Carbon dioxide takes up a molecule of water before it gives a proton.
        self.carbonic.mixed[0] *= self.water_activity;
    }

    fn charges(&self, ph: f64) -> Charges {
        let inverse = (ph * LN_10).exp();
        let proton = 1.0 / (inverse * self.activity.single);
        let hydroxide = self.water * self.water_activity * inverse / self.activity.single;
        let strong = self.solution.strong;
        let mut charges = Charges {
            positive: [proton + strong.max(0.0), -LN_10 * proton],
            negative: [hydroxide + (-strong).max(0.0), LN_10 * hydroxide],
            ionic: proton + hydroxide + strong.abs(),
            solutes: proton + hydroxide + strong.abs() + 2.0 * self.solution.salt,
            carbon: Dissolved::default(),
        };
        for acid in &self.acids[..self.count] {
            let [lost, square] = acid.lost(inverse);
            charges.add(acid.amount, lost, square);
        }
        let ratios = [
            self.carbonic.mixed[0] * inverse,
            self.carbonic.mixed[1] * inverse,
        ];
        match self.carbon {
            Carbon::None => {}
            Carbon::Open { pressure_atm } => {
                let dioxide = self.henry * pressure_atm / self.activity.neutral;
                let carbon = Dissolved::beside(dioxide, ratios);
                let square = carbon.bicarbonate + 4.0 * carbon.carbonate;
                charges.negative[0] += carbon.bicarbonate + 2.0 * carbon.carbonate;
                // Here the whole amount grows with pH, not its share alone.
                charges.negative[1] += LN_10 * square;
                charges.ionic += square;
                charges.solutes += carbon.total();
                charges.carbon = carbon;
            }
            Carbon::Closed { total } | Carbon::Venting { total, .. } => {
                let share = Dissolved::sharing(1.0, ratios);
                let lost = share.bicarbonate + 2.0 * share.carbonate;
                charges.add(total, lost, share.bicarbonate + 4.0 * share.carbonate);
                charges.carbon = Dissolved::sharing(total, ratios);
            }
        }
        let (taken_up, slope) = self.solution.buffer.taken_up(ph);
        let (taken_up, slope) = (taken_up / 1000.0, slope / 1000.0);
        if taken_up > 0.0 {
            charges.negative[0] += taken_up;
            charges.negative[1] += slope;
        } else {
            charges.positive[0] -= taken_up;
            charges.positive[1] -= slope;
        }
        // What a protein carries counts as so many single charges.
        charges.ionic = (charges.ionic + taken_up.abs()) / 2.0 + self.solution.salt;
        charges
    }

    /// The pH at which charges balance with the constants as they are, and the charges there; `guess` is where to
    /// begin.
    ///
    /// Newton's method on the logarithm of positive over negative charge, which is nearly straight in pH wherever
    /// proton, hydroxide or open carbonate prevail; halving wherever a step would leave the interval that is
    /// known to hold the root, or is slow.
    fn root(&self, guess: f64) -> (f64, Charges) {
        let (mut low, mut high) = ENDS;
        let (mut ph, mut last) = (guess, high - low);
        let mut charges = self.charges(ph);
        for _ in 0..100 {
            let [positive, rising] = charges.positive;
            let [negative, falling] = charges.negative;
            let over = positive - negative;
            if over > 0.0 {
                low = ph;
            } else {
                high = ph;
            }
            let step = (positive / negative).ln() / (falling / negative - rising / positive);
            let mut next = ph + step;
            // A step that is no number is not taken either.
            let good = next > low && next < high && step.abs() <= 0.9 * last;
            if !good {
                next = (low + high) / 2.0;
            }
            last = (next - ph).abs();
            if last <= PH_STEP {
                break;
            }
            ph = next;
            charges = self.charges(ph);
        }
        (ph, charges)
    }

    /// The root, at the ionic strength that it has itself.
    ///
    /// What comes out less what went in is above zero at none, and below it at more than is there, so an interval
    /// holds the strength; within it the line through the last two tries is followed. The activity of water, which
    /// moves the answer a hundred times less, is taken from the try before.
    fn answer(mut self, like: Option<&Answer>) -> Answer {
        let (mut low, mut high) = (0.0, f64::INFINITY);
        let guess = self.solution.strong.abs() / 2.0 + self.solution.salt;
        let (mut ph, mut ionic, mut solutes) = like.map_or((7.0, guess, 0.0), |like| {
            (like.ph, like.ionic_strength, like.solutes)
        });
        let mut before = None;
        let mut charges = Charges::default();
        for _ in 0..TRIES {
            self.mix(ionic, solutes);
            (ph, charges) = self.root(ph);
            let over = charges.ionic - ionic;
            let drift = (charges.solutes - solutes).abs();
            solutes = charges.solutes;
            if over.abs() <= NEAR * (ionic + 1e-6) && drift <= NEAR {
                break;
            }
            if over > 0.0 {
                low = ionic;
            } else {
                high = ionic;
            }
            let line = |(ionic_before, over_before): (f64, f64)| {
                ionic - over * (ionic - ionic_before) / (over - over_before)
            };
            let mut next = before.map_or(charges.ionic, line);
            let good = next > low && next < high;
            if !good {
                // Without an upper end, what came out is higher than what went in.
                next = if high < f64::INFINITY {
                    (low + high) / 2.0
                } else {
                    charges.ionic
                };
            }
            before = Some((ionic, over));
            ionic = next;
        }
        Answer {
            ph,
            ionic_strength: charges.ionic,
            water_activity: self.water_activity,
            solutes,
            carbon: charges.carbon,
            gas: 0.0,
            pressure_atm: charges.carbon.dioxide * self.activity.neutral / self.henry,
            residual: charges.positive[0] - charges.negative[0],
            doubts: Doubts::default(),
        }
    }
}

/// How small a step of pH is before the root counts as met.
const PH_STEP: f64 = 1e-10;

/// How near ionic strength, as a share of it, and solutes have to come to what they were reckoned with.
const NEAR: f64 = 1e-9;

/// After so many tries the interval of ionic strength has shrunk to nothing that counts; four to seven are usual.
const TRIES: usize = 60;

impl Present {
    fn of(constants: &Constants, amount: f64, celsius: f64) -> Self {
        let mut present = Self {
            amount,
            steps: constants.steps.len(),
            ..Self::default()
        };
        for (pure, step) in present.pure.iter_mut().zip(constants.steps) {
            *pure = step_constant(step, celsius);
        }
        present
    }

    fn mix(&mut self, step: &[f64; STEPS]) {
        self.mixed = std::array::from_fn(|place| self.pure[place] * step[place]);
    }

    /// The mean number of protons lost by a molecule where the proton's activity has that inverse, and the mean of
    /// its square.
    fn lost(&self, inverse: f64) -> [f64; 2] {
        let (mut weight, mut sum, mut lost, mut square) = (1.0, 1.0, 0.0, 0.0);
        for (place, constant) in self.mixed[..self.steps].iter().enumerate() {
            let charge = (place + 1) as f64;
            weight *= constant * inverse;
            sum += weight;
            lost += weight * charge;
            square += weight * charge * charge;
        }
        [lost / sum, square / sum]
    }
}

impl Charges {
    /// So many moles that have lost so many protons in the mean.
    fn add(&mut self, amount: f64, lost: f64, square: f64) {
        self.negative[0] += amount * lost;
        self.negative[1] += amount * LN_10 * (square - lost * lost);
        self.ionic += amount * square;
        self.solutes += amount;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The ionic strength that an answer gives is the one that it was reckoned with, and by few tries: over every
    /// acid, from pure water to brine.
    #[test]
    fn ionic_strength_meets_itself() {
        for place in 0..ACIDS {
            for amount in [0.0, 1e-5, 1e-3, 0.1, 1.0, 20.0] {
                for strong in [-1.0, -1e-3, 0.0, 1e-3, 0.3, 5.0] {
                    let mut solution = Solution {
                        strong,
                        carbon: Carbon::Open { pressure_atm: 0.1 },
                        ..Solution::default()
                    };
                    solution.acids[place] = amount;
                    let answer = solution.solve();
                    let mut again = Reckoning::of(&solution, solution.carbon);
                    // Open carbonate changes what is dissolved, and that the activity of water.
                    for _ in 0..8 {
                        let solutes = again.charges(answer.ph).solutes;
                        again.mix(answer.ionic_strength, solutes);
                    }
                    let (ph, charges) = again.root(answer.ph);
                    let what = format!("{place} {amount} {strong}: {answer:?}");
                    assert!((ph - answer.ph).abs() < 1e-6, "{what} {ph}");
                    let share = charges.ionic / answer.ionic_strength - 1.0;
                    assert!(share.abs() < 1e-6, "{what} {share}");
                }
            }
        }
    }
}
