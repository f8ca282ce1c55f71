//! How far ions in company count for less than ions alone.

use super::constants::{STEPS, davies};

/// The ionic strength, mol/kg, up to which the Davies equation is meant to be used. Most batters are below it.
pub const DAVIES_LIMIT: f64 = 0.5;

/// The ionic strength, mol/kg, at which the equation is stopped: beyond, coefficients stay as they are here. It turns
/// upwards without a bound, and a solution would soon have no root or several.
pub const LEVEL: f64 = 3.0;

/// The share of water's activity that a mole of anything dissolved in a kilogram of it takes away: Raoult's law, 1 in
/// 55.5, as PHREEQC has it after Garrels and Christ 1965.
const RAOULT: f64 = 0.017;

/// The least activity of water that is reckoned with. A solution of 30 mol/kg is as dry; beyond it Raoult's line would take
/// more from bicarbonate than the sodium that dissolves with an acid does, and acid would raise a pH.
const DRIEST: f64 = 0.5;

/// Activity coefficients at one temperature and ionic strength.
#[derive(Clone, Copy, Debug)]
pub struct Activity {
    /// Of a species without a charge.
    pub neutral: f64,
    /// Of a species of one charge.
    pub single: f64,
    /// By charges lost before a step: what the step's constant is multiplied with, so that it holds for the proton's
    /// activity and the molalities of the rest.
    pub step: [f64; STEPS],
}

impl Activity {
    /// At a temperature in C and an ionic strength in mol/kg. Davies 1962, log10 g = -A z2 (sqrt I/(1 + sqrt I) -
    /// 0.3 I) for a charge z, and 0.1 I without one, as in PHREEQC.
    pub fn at(celsius: f64, ionic_strength: f64) -> Self {
        let ionic = ionic_strength.min(LEVEL);
        let root = ionic.sqrt();
        let one =
            (davies(celsius) * std::f64::consts::LN_10 * (root / (1.0 + root) - 0.3 * ionic)).exp();
        let neutral = (0.1 * std::f64::consts::LN_10 * ionic).exp();
        // A step from charge z to z + 1 has the squares' difference 2 z + 1.
        let two = one * one;
        let mut step = [one; STEPS];
        for charge in 1..STEPS {
            step[charge] = step[charge - 1] * two;
        }
        step[0] *= neutral;
        Self {
            neutral,
            single: 1.0 / one,
            step,
        }
    }
}

/// The activity of water with so many moles of solutes in a kilogram of it.
pub fn of_water(solutes: f64) -> f64 {
    (1.0 - RAOULT * solutes).max(DRIEST)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Davies at ionic strength 0.3 and 25 C by hand: 0.7332, 0.2889 and 0.0612 for one, two and three charges.
    #[test]
    fn coefficients_follow_davies() {
        let activity = Activity::at(25.0, 0.3);
        let [first, second, third, _] = activity.step;
        let (one, two, three) = (0.7332, 0.2889, 0.0612);
        assert!((activity.single - one).abs() < 5e-4);
        assert!((activity.neutral - 1.0715).abs() < 1e-3);
        assert!((first * one / activity.neutral - 1.0).abs() < 1e-3);
        assert!((second * two / one - 1.0).abs() < 2e-3);
        assert!((third * three / two - 1.0).abs() < 2e-3);
    }
}
