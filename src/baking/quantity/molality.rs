//! How much is dissolved in water.

use super::quantity;
use serde::{Deserialize, Serialize};

/// Moles of what is dissolved in a kilogram of water. Base unit: mol/kg.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Molality(f64);
quantity!(Molality);

impl Molality {
    /// So many moles in a kilogram of water.
    pub const fn moles_per_kilogram(value: f64) -> Self {
        Self(value)
    }

    /// In moles in a kilogram of water.
    pub const fn to_moles_per_kilogram(self) -> f64 {
        self.0
    }
}
