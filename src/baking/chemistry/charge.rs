//! Charge curves: the base that things take up on their way from their own pH to another.
//!
//! A curve is linear in grams, so a bowl is the sum of its ingredients' curves, and a sum is read at a pH as
//! quickly as one ingredient.

use super::acid::{Acid, Protons};
use super::leavening;
use crate::baking::ingredient::{Acidity, Leavening, OrganicAcids};
use crate::baking::quantity::{Equivalents, Mass};
use std::ops::{Add, Mul};

/// How many acids the tables name.
const ACIDS: usize = Acid::ALL.len();

/// The corners of the buffer lines.
const CORNERS: (f64, f64) = (6.0, 7.5);

/// What takes up base, of one thing or of a whole bowl.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Curve {
    /// Known acids, mmol, in the order of [`Acid::ALL`].
    acids: [f64; ACIDS],
    /// Everything else that buffers: meq per unit of pH below 6, from 6 to 7.5, and above.
    buffer: [f64; 3],
    /// Leavening acid that counts by its neutralising value, meq.
    steady: f64,
    /// Monocalcium phosphate, mmol.
    calcium_phosphate: f64,
    /// Sodium acid pyrophosphate, mmol.
    pyrophosphate: f64,
    /// What the sums above come to at each thing's own pH, and the base that it brings as bicarbonate: meq
    /// that are not taken up.
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
            buffer: [buffer.below_6, buffer.from_6_to_7_5, buffer.above_7_5]
                .map(|slope| slope * kilograms),
            ..Self::default()
        };
        curve.given = curve.at_protons(&own) + acidity.bicarbonate * kilograms * own.carbonic();
        curve
    }

    /// The curve of the leavening acids in so much of a leavener.
    pub fn of_leavening(leavening: &Leavening, grams: Mass) -> Self {
        let acids = leavening::acids(leavening, grams);
        Self {
            steady: acids.steady,
            calcium_phosphate: acids.calcium_phosphate,
            pyrophosphate: acids.pyrophosphate,
            ..Self::default()
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

    fn at_protons(&self, protons: &Protons) -> f64 {
        let acids: f64 = self
            .acids
            .iter()
            .enumerate()
            .filter(|(_, millimoles)| **millimoles > 0.0)
            .map(|(place, millimoles)| millimoles * protons.lost(place))
            .sum();
        let ph = protons.ph;
        let [below, between, above] = self.buffer;
        // Measured from the first corner; where a line starts is of no account, since only differences count.
        let buffer = below * (ph.min(CORNERS.0) - CORNERS.0)
            + between * (ph.clamp(CORNERS.0, CORNERS.1) - CORNERS.0)
            + above * (ph.max(CORNERS.1) - CORNERS.1);
        let phosphates = self.calcium_phosphate * leavening::calcium_phosphate_uptake(ph)
            + self.pyrophosphate * protons.pyrophosphate();
        acids + buffer + self.steady + phosphates - self.given
    }
}

impl Add for Curve {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            acids: std::array::from_fn(|place| self.acids[place] + other.acids[place]),
            buffer: std::array::from_fn(|place| self.buffer[place] + other.buffer[place]),
            steady: self.steady + other.steady,
            calcium_phosphate: self.calcium_phosphate + other.calcium_phosphate,
            pyrophosphate: self.pyrophosphate + other.pyrophosphate,
            given: self.given + other.given,
        }
    }
}

impl Mul<f64> for Curve {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self {
            acids: self.acids.map(|amount| amount * factor),
            buffer: self.buffer.map(|amount| amount * factor),
            steady: self.steady * factor,
            calcium_phosphate: self.calcium_phosphate * factor,
            pyrophosphate: self.pyrophosphate * factor,
            given: self.given * factor,
        }
    }
}

impl std::iter::Sum for Curve {
    fn sum<I: Iterator<Item = Self>>(curves: I) -> Self {
        curves.fold(Self::default(), Add::add)
    }
}

/// The acids of a row in mmol per kg, from grams per 100 g, in the order of [`Acid::ALL`].
fn millimoles(acids: &OrganicAcids) -> [f64; ACIDS] {
    let grams = [
        acids.citric,
        acids.malic,
        acids.quinic,
        acids.tartaric,
        acids.lactic,
        acids.acetic,
        acids.oxalic,
        acids.succinic,
        acids.gluconic,
        acids.aconitic,
        acids.chlorogenic,
        acids.phosphoric,
    ];
    std::array::from_fn(|place| grams[place] * 10_000.0 / Acid::ALL[place].molar_mass)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 2 x 0.5 below 6, 3 x 1.5 between, 5 x 0.5 above: by hand 8 from pH 5.5 to 8.
    #[test]
    fn buffer_lines_add_up_over_their_corners() {
        let curve = Curve {
            buffer: [2.0, 3.0, 5.0],
            ..Curve::default()
        };
        assert!((curve.at(8.0) - curve.at(5.5)).to_milliequivalents() - 8.0 < 1e-12);
        assert_eq!(curve.at(6.0), Equivalents::ZERO);
    }

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
