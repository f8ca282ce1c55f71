//! Soda, and the acid that a baking powder brings along.

use crate::baking::formula::Weighed;
use crate::baking::ingredient::Bicarbonate;

/// Sodium bicarbonate, mmol per gram: 1000 / 84.007 g/mol, exact stoichiometry.
pub const SODA_MMOL_PER_GRAM: f64 = 1000.0 / 84.007;

/// What a line brings to leavening.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Soda {
    /// Bicarbonate, mmol: the gas it can make.
    pub bicarbonate: f64,
    /// Base left once its own acid has taken its part, meq; negative for cream of tartar.
    pub free: f64,
    /// Standard deviation of `free`, meq, from the acid's neutralising value.
    pub free_deviation: f64,
}

/// The soda and leavening acid of a line; nothing for a line without.
///
/// Base counts by stoichiometry, acid by its neutralising value: the grams of sodium bicarbonate
/// that 100 g of it take up, a figure of the trade.
pub fn soda(line: &Weighed) -> Soda {
    let Some(leavening) = line.ingredient.leavening else { return Soda::default() };
    let hundreds = line.grams.mean.to_grams() / 100.0;
    let bicarbonate = leavening.bicarbonate.map_or(0.0, |(kind, grams)| grams * hundreds * millimoles_per_gram(kind));
    let (low, typical, high) = leavening.neutralised;
    let acid = typical * hundreds * SODA_MMOL_PER_GRAM;
    Soda {
        bicarbonate,
        free: bicarbonate - acid,
        free_deviation: (high - low) / 3.29 * hundreds * SODA_MMOL_PER_GRAM,
    }
}

fn millimoles_per_gram(bicarbonate: Bicarbonate) -> f64 {
    match bicarbonate {
        Bicarbonate::Sodium => SODA_MMOL_PER_GRAM,
        Bicarbonate::Potassium => 1000.0 / 100.115,
        Bicarbonate::Ammonium => 1000.0 / 79.056,
    }
}
