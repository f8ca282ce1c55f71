//! Soda, and the acid that a baking powder brings along.

use super::Acid;
use crate::baking::ingredient::{Bicarbonate, Leavening, Uptake};
use crate::baking::quantity::{Equivalents, Mass};

/// Sodium bicarbonate, mmol per gram: 1000 / 84.007 g/mol, exact stoichiometry.
pub const SODA_MMOL_PER_GRAM: f64 = 1000.0 / 84.007;

/// Carbon dioxide, grams per mmol: 44.009 g/mol.
pub const CARBON_DIOXIDE_GRAMS_PER_MMOL: f64 = Acid::CARBONIC.molar_mass / 1000.0;

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

/// The leavening acids in so much of a leavener.
pub(super) struct Acids {
    /// Those that count by their neutralising value, a figure of the trade, meq.
    pub steady: f64,
    /// Monocalcium phosphate, mmol: it takes up along a curve.
    pub calcium_phosphate: f64,
    /// Sodium acid pyrophosphate, mmol: it takes up by its constants.
    pub pyrophosphate: f64,
}

/// The leavening acids in so much of a leavener; what the two phosphates would take by the trade's value is
/// left out of the rest.
pub(super) fn acids(leavening: &Leavening, grams: Mass) -> Acids {
    let hundreds = grams.to_grams() / 100.0;
    let mut by_value = leavening.neutralised.1;
    let (mut calcium_phosphate, mut pyrophosphate) = (0.0, 0.0);
    for (acid, share) in &leavening.acids {
        let amount = match acid.uptake {
            Uptake::Value => continue,
            Uptake::CalciumPhosphate => &mut calcium_phosphate,
            Uptake::Pyrophosphate => &mut pyrophosphate,
        };
        *amount += share * 1000.0 / acid.molar_mass * hundreds;
        by_value -= share * acid.neutralising_value.1 / 100.0;
    }
    Acids {
        steady: by_value.max(0.0) * SODA_MMOL_PER_GRAM * hundreds,
        calcium_phosphate,
        pyrophosphate,
    }
}

/// Standard deviation of the base that they take up, from the range of the neutralising value.
pub fn leavening_uptake_deviation(leavening: &Leavening, grams: Mass) -> Equivalents {
    let (low, _, high) = leavening.neutralised;
    Equivalents::milliequivalents(
        (high - low) / 3.29 * SODA_MMOL_PER_GRAM * grams.to_grams() / 100.0,
    )
}

/// Equivalents that a mole of monocalcium phosphate has taken up at a pH: the curve between its points, level beyond them, so that it never falls.
pub(super) fn calcium_phosphate_uptake(ph: f64) -> f64 {
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

#[cfg(test)]
mod tests {
    use super::*;

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
