//! Bicarbonate that a crumb keeps: soda that met no acid.

use super::Acid;
use crate::baking::quantity::Mass;
use std::sync::OnceLock;

/// Solubility of carbon dioxide at 25 C, mol per kg of water and atmosphere.
/// Carroll, Slupsky and Mather 1991, J Phys Chem Ref Data 20:1201.
const HENRY: f64 = 0.0347;

/// Pressure of carbon dioxide over a cooled crumb, atm: 0.01 to 0.05 (worked out, weakly known).
const CRUMB_PRESSURE: f64 = 0.03;

/// The two constants of carbonic acid as a meter sees them, worked out once.
fn constants() -> [f64; 2] {
    static CONSTANTS: OnceLock<[f64; 2]> = OnceLock::new();
    *CONSTANTS.get_or_init(|| [Acid::CARBONIC.mixed_pk(0), Acid::CARBONIC.mixed_pk(1)])
}

/// What the water of a crumb keeps at a pH.
pub struct Kept {
    /// Base in it, mmol: bicarbonate, and carbonate twice.
    pub base: f64,
    /// Carbon in it, mmol: that much carbon dioxide is not gas.
    pub carbon: f64,
}

/// Carbonate kept by so much water at a pH, in equilibrium with the crumb's bubbles.
pub fn kept(water: Mass, ph: f64) -> Kept {
    let kilograms = water.to_grams() / 1000.0;
    let dissolved = HENRY * CRUMB_PRESSURE * 1000.0 * kilograms;
    let [first, second] = constants();
    let bicarbonate = dissolved * 10_f64.powf(ph - first);
    let carbonate = bicarbonate * 10_f64.powf(ph - second);
    Kept {
        base: bicarbonate + 2.0 * carbonate,
        carbon: dissolved + bicarbonate + carbonate,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Bicarbonate left in a crumb, mmol per kg of water at 0.03 atm, worked out beforehand from the same
    /// constants at ionic strength 0.3: pH 6.8 4, 7.2 10, 7.6 25, 8.0 63.
    #[test]
    fn a_crumb_keeps_more_bicarbonate_the_less_acid_it_is() {
        for (ph, expected) in [(6.8, 4.0), (7.2, 10.0), (7.6, 25.0), (8.0, 63.0)] {
            let base = kept(Mass::grams(1000.0), ph).base;
            assert!((base / expected - 1.0).abs() < 0.1, "pH {ph}: {base}");
        }
    }
}
