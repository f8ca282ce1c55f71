//! Leavening acids: when they work, and what they are once they do; and how fast dry soda splits by heat alone.

use super::solution::{Acid, Buffer, Solution};

/// The gas constant, J/(mol K).
const GAS_CONSTANT: f64 = 8.314_462_618;

/// When a leavening acid works: the parts that do so while mixing, on the bench and in the oven, and between which
/// temperatures the last part wakes up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Release {
    /// Part that works while mixing.
    pub mixing: f64,
    /// Part that works on the bench.
    pub bench: f64,
    /// Core temperatures between which the rest wakes up, C.
    pub wakes: (f64, f64),
    /// True for the lactone, which is no acid before it has taken up water: it keeps its own time, see [`lactone`].
    pub is_lactone: bool,
}

/// The part of glucono-delta-lactone that has become acid after so many minutes at a temperature in C: first order,
/// 2.26e-4 in a second at 25 C by optical rotation, with an activation energy of 62.76 kJ/mol (Sawyer and Bagger
/// 1959, J Am Chem Soc 81:5302; the coulometric constant is 1.31e-4).
pub fn lactone(minutes: f64, celsius: f64) -> f64 {
    const PER_SECOND: f64 = 2.26e-4;
    const ACTIVATION: f64 = 62_760.0;
    let warmth = 1.0 / 298.15 - 1.0 / (celsius + 273.15);
    let rate = PER_SECOND * (ACTIVATION / GAS_CONSTANT * warmth).exp();
    1.0 - (-rate * minutes.max(0.0) * 60.0).exp()
}

/// The part of dry soda that has split into washing soda, steam and carbon dioxide after so many minutes at a temperature
/// in C: first order, 6.7e12 in a minute with an activation energy of 105.8 kJ/mol, measured from 87 to 177 C (Wu and
/// Shih 1993, read in its abstract). Others found it slower: at 100 C half is gone in 67 min by this, in 105 by Ball
/// and others 1986.
pub fn dry_soda(minutes: f64, celsius: f64) -> f64 {
    const PER_MINUTE: f64 = 6.7e12;
    const ACTIVATION: f64 = 105_800.0;
    let rate = PER_MINUTE * (-ACTIVATION / (GAS_CONSTANT * (celsius + 273.15))).exp();
    1.0 - (-rate * minutes.max(0.0)).exp()
}

/// The time in which the part for the bench is two thirds done, minutes. The trade measures it over 8.
const BENCH: f64 = 8.0;

impl Release {
    /// Everything at once, as crystals that dissolve do.
    pub const AT_ONCE: Self = Self {
        mixing: 1.0,
        bench: 0.0,
        wakes: (0.0, 0.0),
        is_lactone: false,
    };

    /// Ammonia, which leaves a hot batter: noticeable from about 60 C, gone near boiling.
    pub const AMMONIA: Self = Self {
        mixing: 0.0,
        bench: 0.0,
        wakes: (60.0, 98.0),
        is_lactone: false,
    };

    /// The part that works so many minutes after mixing began, at a core temperature.
    pub fn part(&self, minutes: f64, celsius: f64) -> f64 {
        let oven = (1.0 - self.mixing - self.bench).max(0.0);
        let (from, to) = self.wakes;
        let awake = if to > from {
            ((celsius - from) / (to - from)).clamp(0.0, 1.0)
        } else {
            f64::from(u8::from(celsius >= from))
        };
        if self.is_lactone {
            return lactone(minutes, celsius).max(awake);
        }
        // What the heat wakes up is not waited for any more.
        let bench = (1.0 - (-minutes.max(0.0) / BENCH).exp()).max(awake);
        self.mixing + self.bench * bench + oven * awake
    }
}

/// What a leavening acid is in the water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Doing {
    /// A weak acid, mol, and the strong charge that comes with a mole of it: cream of tartar brings one potassium,
    /// sodium acid pyrophosphate two sodium.
    Weak(Acid, f64, f64),
    /// Monocalcium phosphate, mol: apatite settles out as it goes, so it takes up base along lines of its own.
    Calcium(f64),
    /// An acid that counts by its neutralising value, eq.
    Steady(f64),
}

/// A leavening acid in the batter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Work {
    /// What it is.
    pub doing: Doing,
    /// When it works.
    pub release: Release,
}

/// What a mole of monocalcium phosphate takes up, in meq: lines through 0.30 eq at pH 4, 1.45 at 6, 2.40 at 7.5 and
/// 2.65 at 8.5. Less than apatite, more than nothing settling out; the trade's value of 2.40 holds at pH 7.5. Worked
/// out with an equilibrium program; weakly known.
pub const CALCIUM: Buffer = Buffer {
    slopes: [575.0, 633.0, 250.0],
    given: -1450.0,
};

impl Work {
    /// Lets a part of it into the water.
    pub fn let_in(&self, solution: &mut Solution, part: f64) {
        match self.doing {
            Doing::Weak(acid, moles, charge) => {
                solution.acids[acid as usize] += moles * part;
                solution.strong += moles * part * charge;
            }
            Doing::Calcium(moles) => {
                solution.buffer = solution.buffer + CALCIUM.times(moles * part);
            }
            Doing::Steady(equivalents) => solution.strong -= equivalents * part,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Grade 28 by the trade's definition, 28 % in 8 min, and Hoseney's split 30, 8, 62 %: by hand 30 % at once, 8 x
    /// (1 - 1/e) = 5.1 % more after 8 min, half of the last 62 % at 47.5 C between 35 and 60.
    #[test]
    fn a_slow_acid_waits_for_the_oven() {
        let slow = Release {
            mixing: 0.30,
            bench: 0.08,
            wakes: (35.0, 60.0),
            is_lactone: false,
        };
        assert!((slow.part(0.0, 22.0) - 0.30).abs() < 1e-12);
        assert!((slow.part(8.0, 22.0) - 0.3506).abs() < 1e-3);
        assert!((slow.part(60.0, 98.0) - 1.0).abs() < 1e-3);
        assert!((slow.part(0.0, 47.5) - (0.30 + 0.04 + 0.31)).abs() < 1e-9);
        assert_eq!(Release::AT_ONCE.part(0.0, 5.0), 1.0);
    }

    /// Sawyer and Bagger's constants by hand: 1 - exp(-2.26e-4 x 600) = 12.7 % in 10 min at 25 C; at 60 C the rate is
    /// 14.3 times that, 85.6 %.
    #[test]
    fn the_lactone_keeps_its_own_time() {
        assert!((lactone(10.0, 25.0) - 0.1268).abs() < 5e-4);
        assert!((lactone(10.0, 60.0) - 0.856).abs() < 2e-3);
        let release = Release {
            is_lactone: true,
            ..Release::AT_ONCE
        };
        assert_eq!(release.part(0.0, -5.0), 0.0);
    }

    /// Wu and Shih's constants by hand at 150 C: ln 6.7e12 is 29.533, 105.8 kJ/mol over RT is 30.071, so 0.584 in a minute
    /// and a half-life of 1.19 min. Nothing is split in no time.
    #[test]
    fn dry_soda_splits_faster_the_hotter() {
        assert!((dry_soda(1.19, 150.0) - 0.5).abs() < 2e-3);
        assert_eq!(dry_soda(0.0, 150.0), 0.0);
        assert!(dry_soda(10.0, 98.0) < 0.1 && dry_soda(10.0, 150.0) > 0.99);
    }

    /// Lines of monocalcium phosphate at their points, by hand: 2.40 at pH 7.5.
    #[test]
    fn calcium_phosphate_takes_up_along_its_lines() {
        let mut solution = Solution::default();
        let work = Work {
            doing: Doing::Calcium(0.001),
            release: Release::AT_ONCE,
        };
        work.let_in(&mut solution, 1.0);
        for (ph, taken) in [(4.0, 0.30), (6.0, 1.45), (7.5, 2.40), (8.5, 2.65)] {
            assert!(
                (solution.buffer.taken_up(ph).0 - taken).abs() < 0.002,
                "{ph}"
            );
        }
    }
}
