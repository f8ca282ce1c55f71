//! How an ingredient takes up base: its own pH, its known acids, and whatever else buffers.

use crate::baking::source::{Cited, Source};

/// The acid side of one ingredient, or of several that are alike (all cow's milk has one row).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Acidity {
    /// The row's name in `acidity.csv`.
    pub key: &'static str,
    /// pH as it is bought: low, typical, high.
    pub ph: (f64, f64, f64),
    /// Known acids, g per 100 g, salts counted as acid.
    pub acids: OrganicAcids,
    /// Everything else that buffers, as a slope.
    pub buffer: Buffer,
    /// Bicarbonate already in it, mmol/kg (egg white holds some).
    pub bicarbonate: f64,
    /// Relative standard deviation of the base it takes up, as a fraction.
    pub deviation: f64,
    /// Published titratable acidity to compare with.
    pub titratable: Option<Titratable>,
    /// Where the pH is from.
    pub ph_cited: Cited,
    /// Where the acids are from; `None` where there are none.
    pub acids_cited: Option<Cited>,
    /// Where the buffer slopes are from.
    pub buffer_cited: Cited,
    /// A word of explanation.
    pub note: &'static str,
}

/// A published range of titratable acidity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Titratable {
    /// The acid that it is given as.
    pub acid: &'static str,
    /// Lower end, g per 100 g.
    pub low: f64,
    /// Upper end, g per 100 g.
    pub high: f64,
    /// Where it is from.
    pub source: &'static Source,
}

/// Grams of each acid in 100 g of an ingredient; zero where the row lists none.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct OrganicAcids {
    /// Citric acid, anhydrous.
    pub citric: f64,
    /// Malic acid.
    pub malic: f64,
    /// Quinic acid.
    pub quinic: f64,
    /// Tartaric acid.
    pub tartaric: f64,
    /// Lactic acid.
    pub lactic: f64,
    /// Acetic acid.
    pub acetic: f64,
    /// Oxalic acid.
    pub oxalic: f64,
    /// Succinic acid.
    pub succinic: f64,
    /// Gluconic acid.
    pub gluconic: f64,
    /// Aconitic acid.
    pub aconitic: f64,
    /// Chlorogenic acid.
    pub chlorogenic: f64,
    /// Phosphoric acid.
    pub phosphoric: f64,
}

/// The slope of what buffers besides the known acids: meq of base per kg and pH unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Buffer {
    /// Below pH 6.
    pub below_6: f64,
    /// From pH 6 to 7.5.
    pub from_6_to_7_5: f64,
    /// Above pH 7.5.
    pub above_7_5: f64,
}
