//! The soda and the leavening acid in an ingredient.

use crate::baking::source::Cited;

/// What an ingredient brings to leavening, per 100 g of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leavening {
    /// The bicarbonate in it, if any, and how much: g per 100 g.
    pub bicarbonate: Option<(Bicarbonate, f64)>,
    /// Sodium bicarbonate that its leavening acid neutralises, g per 100 g: low, typical, high.
    /// This is the neutralising value of the acid times its share.
    pub neutralised: (f64, f64, f64),
    /// The part of that acid that is monocalcium phosphate, g per 100 g, counted as the monohydrate. What it
    /// takes up depends on the pH.
    pub calcium_phosphate: f64,
    /// The part of that acid that is sodium acid pyrophosphate, g per 100 g. What it takes up depends on the pH.
    pub pyrophosphate: f64,
    /// The acids in it, in words.
    pub acids: &'static str,
    /// Where the figures are from.
    pub cited: Cited,
    /// A word of explanation.
    pub note: &'static str,
}

/// The bicarbonates used in baking.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bicarbonate {
    /// NaHCO3, 84.007 g/mol.
    Sodium,
    /// KHCO3, 100.115 g/mol.
    Potassium,
    /// NH4HCO3, 79.056 g/mol.
    Ammonium,
}
