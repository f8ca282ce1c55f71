//! Charge curves: the base that things take up on their way from their own pH to another.
//!
//! A curve is linear in grams, so a bowl is the sum of its ingredients' curves, and a sum is read at a pH as
//! quickly as one ingredient.

use super::acid::Protons;
use super::release::{CALCIUM, Doing, Work};
use super::solution::{ACIDS, Acid, Buffer, Solution};
use crate::baking::ingredient::{Acidity, OrganicAcids};
use crate::baking::quantity::{Equivalents, Mass};
use std::ops::{Add, Mul};

/// What takes up base, of one thing or of a whole bowl.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Curve {
    /// Known acids, mmol, in the order of [`super::solution::ALL`].
    acids: [f64; ACIDS],
    /// Everything else that buffers: meq.
    buffer: Buffer,
    /// Base that these acids have taken up already where each thing is at its own pH, as salts, and the base that it
    /// brings as bicarbonate; less than nothing for a leavening acid that counts by its neutralising value: meq.
    given: f64,
}

impl Curve {
    /// The curve of so much of an ingredient: its acids by their constants, the rest as a buffer line, both
    /// counted from its own pH, since that fixes how much of its acid is a salt already; bicarbonate in it as base.
    pub fn of_acidity(acidity: &Acidity, grams: Mass) -> Self {
        let kilograms = grams.to_grams() / 1000.0;
        let own = Protons::at(acidity.ph.1);
        let buffer = &acidity.buffer;
        let mut curve = Self {
            acids: millimoles(&acidity.acids).map(|per_kilogram| per_kilogram * kilograms),
            ..Self::default()
        };
        curve.given = curve.at_protons(&own) + acidity.bicarbonate * kilograms * own.carbonic();
        let slopes = [buffer.below_6, buffer.from_6_to_7_5, buffer.above_7_5];
        curve.buffer = Buffer::around(acidity.ph.1, slopes).times(kilograms);
        curve
    }

    /// How fast the base of its bicarbonate rises with its own pH, meq per unit: the more of it is carbonate.
    pub fn carbonate_slope(acidity: &Acidity, grams: Mass) -> f64 {
        if acidity.bicarbonate <= 0.0 {
            return 0.0;
        }
        const STEP: f64 = 0.05;
        let at = |ph: f64| Protons::at(ph).carbonic();
        let rise = (at(acidity.ph.1 + STEP) - at(acidity.ph.1 - STEP)) / (2.0 * STEP);
        grams.to_grams() / 1000.0 * acidity.bicarbonate * rise
    }

    /// The curve of a leavening acid that has done all its work.
    pub fn of_work(work: &Work) -> Self {
        let mut curve = Self::default();
        match work.doing {
            Doing::Weak(acid, moles, charge) => {
                curve.acids[acid as usize] = moles * 1000.0;
                curve.given = moles * 1000.0 * charge;
            }
            Doing::Calcium(moles) => curve.buffer = CALCIUM.times(moles),
            Doing::Steady(equivalents) => curve.given = -equivalents * 1000.0,
        }
        curve
    }

    /// The same as what it is in the water, mol and eq.
    pub fn dissolved(&self) -> Solution {
        Solution {
            acids: self.acids.map(|millimoles| millimoles / 1000.0),
            strong: self.given / 1000.0,
            buffer: self.buffer,
            ..Solution::default()
        }
    }

    /// Base taken up to a pH; negative where base is given. It rises with pH.
    pub fn at(&self, ph: f64) -> Equivalents {
        Equivalents::milliequivalents(self.at_protons(&Protons::at(ph)))
    }

    /// How fast that rises, meq per unit of pH.
    pub fn slope(&self, ph: f64) -> f64 {
        const STEP: f64 = 0.05;
        (self.at(ph + STEP) - self.at(ph - STEP)).to_milliequivalents() / (2.0 * STEP)
    }

    /// The same at a pH that was made ready for many, meq.
    pub(super) fn at_protons(&self, protons: &Protons) -> f64 {
        let acids: f64 = self
            .acids
            .iter()
            .enumerate()
            .filter(|(_, millimoles)| **millimoles > 0.0)
            .map(|(place, millimoles)| millimoles * protons.lost(place))
            .sum();
        acids + self.buffer.taken_up(protons.ph).0 - self.given
    }
}

impl Add for Curve {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            acids: std::array::from_fn(|place| self.acids[place] + other.acids[place]),
            buffer: self.buffer + other.buffer,
            given: self.given + other.given,
        }
    }
}

impl Mul<f64> for Curve {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self {
            acids: self.acids.map(|amount| amount * factor),
            buffer: self.buffer.times(factor),
            given: self.given * factor,
        }
    }
}

impl std::iter::Sum for Curve {
    fn sum<I: Iterator<Item = Self>>(curves: I) -> Self {
        curves.fold(Self::default(), Add::add)
    }
}

/// The acids of a row in mmol per kg, from grams per 100 g, in the order of [`super::solution::ALL`].
fn millimoles(acids: &OrganicAcids) -> [f64; ACIDS] {
    let mut amounts = [0.0; ACIDS];
    for (acid, grams) in [
        (Acid::Citric, acids.citric),
        (Acid::Malic, acids.malic),
        (Acid::Quinic, acids.quinic),
        (Acid::Tartaric, acids.tartaric),
        (Acid::Lactic, acids.lactic),
        (Acid::Acetic, acids.acetic),
        (Acid::Oxalic, acids.oxalic),
        (Acid::Succinic, acids.succinic),
        (Acid::Gluconic, acids.gluconic),
        (Acid::Aconitic, acids.aconitic),
        (Acid::Chlorogenic, acids.chlorogenic),
        (Acid::Phosphoric, acids.phosphoric),
    ] {
        amounts[acid as usize] = grams * 10_000.0 / acid.constants().molar_mass;
    }
    amounts
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A mole of acetic acid takes a mole of base, half of it up to its constant.
    #[test]
    fn an_acid_takes_its_equivalents() {
        let acids = OrganicAcids {
            acetic: 6.0052,
            ..OrganicAcids::default()
        };
        let curve = Curve {
            acids: millimoles(&acids),
            ..Curve::default()
        };
        assert!((curve.at(11.0).to_milliequivalents() - 1000.0).abs() < 0.01);
    }
}
