//! The acids of baking powders, each with what it takes up, when, and what it leaves behind.

use super::unpack;
use crate::baking::quantity::Temperature;
use crate::baking::source::Cited;

/// A leavening acid: one row of `leavening_acids.csv`.
#[derive(Debug, PartialEq)]
pub struct LeaveningAcid {
    /// The name used in the tables: `lower_snake_case`.
    pub key: &'static str,
    /// The name shown on the page.
    pub name: &'static str,
    /// Molar mass with its crystal water, g/mol.
    pub molar_mass: f64,
    /// How what it takes up is reckoned.
    pub uptake: Uptake,
    /// The neutralising value: grams of baking soda that 100 g of it use up; low, typical, high.
    pub neutralising_value: (f64, f64, f64),
    /// When the gas comes.
    pub gas: GasTiming,
    /// Between which temperatures it sets to work.
    pub active: (Temperature, Temperature),
    /// Sodium, mg in 1 g, by its formula.
    pub sodium: f64,
    /// Potassium, mg in 1 g, by its formula.
    pub potassium: f64,
    /// Aluminium, mg in 1 g, by its formula.
    pub aluminium: f64,
    /// What is left on the tongue, in words; from memory.
    pub taste: &'static str,
    /// Where the neutralising value is from.
    pub value_cited: Cited,
    /// Where the timing and the temperatures are from.
    pub rate_cited: Cited,
    /// A word of explanation.
    pub note: &'static str,
}

/// When the gas of soda with one acid comes, per cent of it; together 100.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GasTiming {
    /// While the batter is mixed.
    pub mixing: f64,
    /// While it stands.
    pub bench: f64,
    /// In the oven.
    pub oven: f64,
}

/// How what an acid takes up is reckoned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Uptake {
    /// By its neutralising value, at any pH.
    Value,
    /// As a monocalcium phosphate, along a curve of the pH.
    CalciumPhosphate,
    /// As a sodium acid pyrophosphate, by its constants.
    Pyrophosphate,
}

/// Every leavening acid, in the order of their keys.
pub fn all() -> &'static [LeaveningAcid] {
    unpack::leavening_acids()
}

/// The leavening acid of that key.
pub fn by_key(key: &str) -> Option<&'static LeaveningAcid> {
    all().iter().find(|acid| acid.key == key)
}
