//! Pressure, in pascals.

use super::quantity;
use serde::{Deserialize, Serialize};

/// A pressure. Base unit: pascal.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Pressure(f64);
quantity!(Pressure);

impl Pressure {
    /// The standard atmosphere, exact (NIST SP 811, appendix B).
    pub const ATMOSPHERE: Self = Self(101_325.0);

    /// A pressure of so many pascals.
    pub const fn pascals(value: f64) -> Self {
        Self(value)
    }

    /// A pressure of so many standard atmospheres.
    pub const fn atmospheres(value: f64) -> Self {
        Self(value * Self::ATMOSPHERE.0)
    }

    /// In pascals.
    pub const fn to_pascals(self) -> f64 {
        self.0
    }

    /// In standard atmospheres.
    pub const fn to_atmospheres(self) -> f64 {
        self.0 / Self::ATMOSPHERE.0
    }
}
