//! Soda, and the acid that a baking powder brings along.

use super::Acid;
use crate::baking::ingredient::{Bicarbonate, Leavening};
use crate::baking::quantity::{Equivalents, Mass};

/// Sodium bicarbonate, mmol per gram: 1000 / 84.007 g/mol, exact stoichiometry.
pub const SODA_MMOL_PER_GRAM: f64 = 1000.0 / 84.007;

/// Monocalcium phosphate monohydrate, g/mol.
const CALCIUM_PHOSPHATE: f64 = 252.07;
/// Its neutralising value, grams of soda for 100 g: trade list.
const CALCIUM_PHOSPHATE_VALUE: f64 = 80.0;
/// Sodium acid pyrophosphate, g/mol.
const PYROPHOSPHATE: f64 = 221.94;
/// Its neutralising value: trade list.
const PYROPHOSPHATE_VALUE: f64 = 72.0;

/// Equivalents that a mole of monocalcium phosphate has taken up, by pH: less than apatite, more than nothing
/// precipitating, and the trade's value of 2.40 at pH 7.5. Worked out with an equilibrium program; weakly known.
const CALCIUM_PHOSPHATE_UPTAKE: [(f64, f64); 9] = [
    (4.0, 0.30),
    (5.0, 0.75),
    (5.5, 1.20),
    (6.0, 1.45),
    (6.5, 1.75),
    (7.0, 2.10),
    (7.5, 2.40),
    (8.0, 2.55),
    (8.5, 2.65),
];

/// The last two protons of pyrophosphoric acid; the acid salt has given up the first two already.
/// Goldberg, Kishore and Lennen 2002, at ionic strength 0.25 by the Davies equation for charges 2, 3 and 4.
const PYROPHOSPHATE_PK: [f64; 2] = [6.06, 8.54];

/// Bicarbonate in so much of a leavener, mmol: the base it brings and the gas it can make.
pub fn bicarbonate(leavening: &Leavening, grams: Mass) -> f64 {
    leavening.bicarbonate.map_or(0.0, |(kind, share)| {
        let millimoles_per_gram = match kind {
            Bicarbonate::Sodium => SODA_MMOL_PER_GRAM,
            Bicarbonate::Potassium => 1000.0 / 100.115,
            Bicarbonate::Ammonium => 1000.0 / 79.056,
        };
        share / 100.0 * grams.to_grams() * millimoles_per_gram
    })
}

/// Base that the leavening acids in so much of a leavener take up to a pH.
///
/// Most count by their neutralising value, a figure of the trade. The two phosphates don't follow one
/// reaction, so their part follows a curve.
pub fn leavening_uptake(leavening: &Leavening, grams: Mass, ph: f64) -> Equivalents {
    let by_value = leavening.neutralised.1
        - leavening.calcium_phosphate * CALCIUM_PHOSPHATE_VALUE / 100.0
        - leavening.pyrophosphate * PYROPHOSPHATE_VALUE / 100.0;
    let steady = by_value.max(0.0) * SODA_MMOL_PER_GRAM;
    let calcium =
        leavening.calcium_phosphate * 1000.0 / CALCIUM_PHOSPHATE * calcium_phosphate_uptake(ph);
    let pyrophosphate = leavening.pyrophosphate * 1000.0 / PYROPHOSPHATE * pyrophosphate_uptake(ph);
    Equivalents::milliequivalents((steady + calcium + pyrophosphate) * grams.to_grams() / 100.0)
}

/// Standard deviation of that uptake, from the range of the neutralising value.
pub fn leavening_uptake_deviation(leavening: &Leavening, grams: Mass) -> Equivalents {
    let (low, _, high) = leavening.neutralised;
    Equivalents::milliequivalents(
        (high - low) / 3.29 * SODA_MMOL_PER_GRAM * grams.to_grams() / 100.0,
    )
}

/// The curve between its points; level beyond them, so that it never falls.
fn calcium_phosphate_uptake(ph: f64) -> f64 {
    let curve = CALCIUM_PHOSPHATE_UPTAKE;
    let Some(above) = curve.iter().position(|(at, _)| *at >= ph) else {
        return curve[curve.len() - 1].1;
    };
    let Some(below) = above.checked_sub(1) else {
        return curve[0].1;
    };
    let ((low, from), (high, to)) = (curve[below], curve[above]);
    from + (to - from) * (ph - low) / (high - low)
}

fn pyrophosphate_uptake(ph: f64) -> f64 {
    Acid::lost_from(PYROPHOSPHATE_PK.into_iter(), ph)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// At pH 7 pyrophosphate has taken 35 g of soda for 100 g, not the 72 of the trade: its constants at
    /// ionic strength 0.3, worked beforehand.
    #[test]
    fn pyrophosphate_takes_half_its_trade_value_at_ph_7() {
        let value = pyrophosphate_uptake(7.0) * 1000.0 / PYROPHOSPHATE / SODA_MMOL_PER_GRAM * 100.0;
        assert!((value - 35.2).abs() < 0.5, "{value}");
    }

    #[test]
    fn the_phosphate_curve_passes_its_points_and_never_falls() {
        assert_eq!(calcium_phosphate_uptake(7.0), 2.10);
        assert!((calcium_phosphate_uptake(6.25) - 1.60).abs() < 1e-12);
        assert_eq!(
            (
                calcium_phosphate_uptake(0.0),
                calcium_phosphate_uptake(14.0)
            ),
            (0.30, 2.65)
        );
    }
}
