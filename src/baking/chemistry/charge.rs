//! The base that an ingredient takes up on its way from its own pH to another.

use super::Acid;
use crate::baking::ingredient::{Acidity, Buffer, OrganicAcids};
use crate::baking::quantity::{Equivalents, Mass};

/// Base taken up by so much of an ingredient to reach a pH; negative where it gives base.
///
/// Acids by their constants, the rest by its buffer line, bicarbonate already there as base:
/// the ingredient's own pH fixes how much of its acid is a salt already.
pub fn base_demand(acidity: &Acidity, grams: Mass, ph: f64) -> Equivalents {
    let own = acidity.ph.1;
    let acids: f64 = each_acid(&acidity.acids)
        .filter(|(_, percent)| *percent > 0.0)
        .map(|(acid, percent)| {
            let millimoles_per_kilogram = percent * 10_000.0 / acid.molar_mass;
            millimoles_per_kilogram * (acid.protons_lost(ph) - acid.protons_lost(own))
        })
        .sum();
    let bicarbonate = acidity.bicarbonate * Acid::CARBONIC.protons_lost(own);
    let per_kilogram = acids + buffer_between(&acidity.buffer, own, ph) - bicarbonate;
    Equivalents::milliequivalents(per_kilogram * grams.to_grams() / 1000.0)
}

/// The standard deviation of [`base_demand`] that comes from the ingredient itself: how much acid and
/// buffer it has, and where its own pH lies. The weighing's spread is not in it.
pub fn base_demand_deviation(acidity: &Acidity, grams: Mass, ph: f64) -> Equivalents {
    let amount = base_demand(acidity, grams, ph).to_milliequivalents() * acidity.deviation;
    let (low, own, high) = acidity.ph;
    let own_ph = (high - low) / 3.29;
    const STEP: f64 = 0.05;
    let slope = base_demand(acidity, grams, own + STEP) - base_demand(acidity, grams, own - STEP);
    let start = slope.to_milliequivalents() / (2.0 * STEP) * own_ph;
    Equivalents::milliequivalents(amount.hypot(start))
}

/// The buffer line between two pH values: three slopes, integrated.
fn buffer_between(buffer: &Buffer, from: f64, to: f64) -> f64 {
    if to < from {
        return -buffer_between(buffer, to, from);
    }
    let stretch = |low: f64, high: f64| (to.min(high) - from.max(low)).max(0.0);
    buffer.below_6 * stretch(f64::NEG_INFINITY, 6.0)
        + buffer.from_6_to_7_5 * stretch(6.0, 7.5)
        + buffer.above_7_5 * stretch(7.5, f64::INFINITY)
}

/// Every acid of a row with its grams per 100 g.
fn each_acid(acids: &OrganicAcids) -> impl Iterator<Item = (&'static Acid, f64)> {
    [
        (&Acid::CITRIC, acids.citric),
        (&Acid::MALIC, acids.malic),
        (&Acid::QUINIC, acids.quinic),
        (&Acid::TARTARIC, acids.tartaric),
        (&Acid::LACTIC, acids.lactic),
        (&Acid::ACETIC, acids.acetic),
        (&Acid::OXALIC, acids.oxalic),
        (&Acid::SUCCINIC, acids.succinic),
        (&Acid::GLUCONIC, acids.gluconic),
        (&Acid::ACONITIC, acids.aconitic),
        (&Acid::CHLOROGENIC, acids.chlorogenic),
        (&Acid::PHOSPHORIC, acids.phosphoric),
    ]
    .into_iter()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 2 x 0.5 below 6, 3 x 1.5 between, 5 x 0.5 above: by hand 8; and back the same.
    #[test]
    fn buffer_lines_add_up_over_their_corners() {
        let buffer = Buffer {
            below_6: 2.0,
            from_6_to_7_5: 3.0,
            above_7_5: 5.0,
        };
        assert!((buffer_between(&buffer, 5.5, 8.0) - 8.0).abs() < 1e-12);
        assert!((buffer_between(&buffer, 8.0, 5.5) + 8.0).abs() < 1e-12);
        assert_eq!(buffer_between(&buffer, 6.0, 6.0), 0.0);
    }
}
