//! The soda and the leavening acid in an ingredient.

use super::LeaveningAcid;
use crate::baking::quantity::show;
use crate::baking::source::Cited;
use std::borrow::Cow;

/// What an ingredient brings to leavening, per 100 g of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Leavening {
    /// The bicarbonate in it, if any, and how much: g per 100 g.
    pub bicarbonate: Option<(Bicarbonate, f64)>,
    /// Sodium bicarbonate that its leavening acid neutralises, g per 100 g: low, typical, high.
    /// By the neutralising values of the acids and their shares; the range holds the packets' differences too.
    pub neutralised: (f64, f64, f64),
    /// The leavening acids in it and how much of each, g per 100 g. Where the packet decides, those of a usual one.
    pub acids: Vec<(&'static LeaveningAcid, f64)>,
    /// What is said of the acids where the packet decides; empty where they are known.
    pub said: &'static str,
    /// Where the figures are from.
    pub cited: Cited,
    /// A word of explanation.
    pub note: &'static str,
}

impl Leavening {
    /// The acids in words: their shares, or that the packet decides; empty where there is none.
    pub fn acids_in_words(&self) -> Cow<'static, str> {
        match self.acids.as_slice() {
            _ if !self.said.is_empty() => self.said.into(),
            // A pure acid is its own share.
            [(acid, share)] if *share == 100.0 => acid.name.into(),
            acids => {
                let acids = acids
                    .iter()
                    .map(|(acid, share)| format!("{} {} %", acid.name, show::plain(*share)));
                acids.collect::<Vec<_>>().join(", ").into()
            }
        }
    }
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
