//! Mass, in grams.

use super::quantity;
use serde::{Deserialize, Serialize};

/// A mass. Base unit: gram.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Mass(f64);
quantity!(Mass);

impl Mass {
    /// Nothing at all.
    pub const ZERO: Self = Self(0.0);
    /// One gram.
    pub const GRAM: Self = Self(1.0);
    /// The avoirdupois ounce, exact: NIST Handbook 44, appendix C.
    pub const OUNCE: Self = Self(28.349_523_125);
    /// The avoirdupois pound, exact: NIST Handbook 44, appendix C.
    pub const POUND: Self = Self(453.592_37);

    /// A mass of so many grams.
    pub const fn grams(value: f64) -> Self {
        Self(value)
    }

    /// In grams.
    pub const fn to_grams(self) -> f64 {
        self.0
    }
}
