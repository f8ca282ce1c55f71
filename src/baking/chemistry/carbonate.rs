//! Bicarbonate that a crumb keeps: soda that met no acid.

use super::acid::Protons;
use super::course::CRUMB_PRESSURE;
use super::solution::henry;
use crate::baking::quantity::Mass;

/// Base in the bicarbonate and carbonate that so much water keeps at a pH, in equilibrium with the crumb's pores: mmol.
pub fn kept(water: Mass, at: &Protons) -> f64 {
    let kilograms = water.to_grams() / 1000.0;
    let dissolved = henry(25.0) * CRUMB_PRESSURE * 1000.0 * kilograms;
    let [bicarbonate, carbonate] = at.carbonate();
    dissolved * (bicarbonate + 2.0 * carbonate)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Bicarbonate left in a crumb, mmol per kg of water at 0.03 atm, worked out beforehand from the same
    /// constants at ionic strength 0.3: pH 6.8 4, 7.2 10, 7.6 25, 8.0 63.
    #[test]
    fn a_crumb_keeps_more_bicarbonate_the_less_acid_it_is() {
        for (ph, expected) in [(6.8, 4.0), (7.2, 10.0), (7.6, 25.0), (8.0, 63.0)] {
            let base = kept(Mass::grams(1000.0), &Protons::at(ph));
            assert!((base / expected - 1.0).abs() < 0.1, "pH {ph}: {base}");
        }
    }
}
