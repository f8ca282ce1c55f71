//! Soda, and the acid that a baking powder brings along.

use super::release::{Doing, Release, Work};
use super::solution::{Acid, CARBONIC};
use crate::baking::ingredient::{Bicarbonate, Leavening, LeaveningAcid, Uptake};
use crate::baking::quantity::{Equivalents, Mass};

/// Sodium bicarbonate, mmol per gram: 1000 / 84.007 g/mol, exact stoichiometry.
pub const SODA_MMOL_PER_GRAM: f64 = 1000.0 / 84.007;

/// Carbon dioxide, grams per mmol: 44.009 g/mol.
pub const CARBON_DIOXIDE_GRAMS_PER_MMOL: f64 = CARBONIC.molar_mass / 1000.0;

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

/// The acid that a leavening acid is once it is dissolved, and the strong charge that a mole of it brings; `None` where
/// something settles out and it counts otherwise.
fn weak(acid: &LeaveningAcid) -> Option<(Acid, f64)> {
    Some(match acid.key {
        _ if acid.uptake == Uptake::Pyrophosphate => (Acid::Pyrophosphoric, 2.0),
        "cream_of_tartar" => (Acid::Tartaric, 1.0),
        "adipic_acid" => (Acid::Adipic, 0.0),
        "citric_acid" | "citric_acid_monohydrate" => (Acid::Citric, 0.0),
        "fumaric_acid" => (Acid::Fumaric, 0.0),
        "glucono_delta_lactone" => (Acid::Gluconic, 0.0),
        "malic_acid" => (Acid::Malic, 0.0),
        "tartaric_acid" => (Acid::Tartaric, 0.0),
        _ => return None,
    })
}

/// Whether it counts by its neutralising value.
pub(super) fn is_by_value(acid: &LeaveningAcid) -> bool {
    acid.uptake == Uptake::Value && weak(acid).is_none()
}

/// The leavening acids in so much of a leavener: the phosphates by what they are, the others by the neutralising
/// value of the whole less that of the phosphates, shared out as they stand in it.
pub(super) fn work(leavening: &Leavening, grams: Mass) -> Vec<Work> {
    let of = |acid: &LeaveningAcid, share: f64| grams.to_grams() * share / 100.0 / acid.molar_mass;
    let soda = |acid: &LeaveningAcid, share: f64| share * acid.neutralising_value.1 / 100.0;
    let (mut steady, mut shares) = (leavening.neutralised.1, 0.0);
    for (acid, share) in &leavening.acids {
        if is_by_value(acid) {
            shares += soda(acid, *share);
        } else {
            steady -= soda(acid, *share);
        }
    }
    let equivalents = steady.max(0.0) / 100.0 * grams.to_grams() * SODA_MMOL_PER_GRAM / 1000.0;
    let mut works: Vec<Work> = leavening
        .acids
        .iter()
        .map(|(acid, share)| Work {
            doing: match (acid.uptake, weak(acid)) {
                (_, Some((weak, charge))) => Doing::Weak(weak, of(acid, *share), charge),
                (Uptake::CalciumPhosphate, _) => Doing::Calcium(of(acid, *share)),
                _ => Doing::Steady(equivalents * soda(acid, *share) / shares),
            },
            release: Release {
                mixing: acid.gas.mixing / 100.0,
                bench: acid.gas.bench / 100.0,
                wakes: (acid.active.0.to_celsius(), acid.active.1.to_celsius()),
                is_lactone: acid.key == "glucono_delta_lactone",
            },
        })
        .collect();
    // A value that the named acids do not account for is that of others, at work like them.
    if shares <= 0.0 && equivalents > 0.0 {
        let release = works.first().map_or(Release::AT_ONCE, |work| work.release);
        works.push(Work {
            doing: Doing::Steady(equivalents),
            release,
        });
    }
    works
}

/// Standard deviation of the base that they take up, from the range of the neutralising value.
pub fn leavening_uptake_deviation(leavening: &Leavening, grams: Mass) -> Equivalents {
    let (low, _, high) = leavening.neutralised;
    Equivalents::milliequivalents(
        (high - low) / 3.29 * SODA_MMOL_PER_GRAM * grams.to_grams() / 100.0,
    )
}
