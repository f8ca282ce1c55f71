//! A part of a whole, as a fraction.

use super::quantity;
use serde::{Deserialize, Serialize};

/// A share of something named beside it: flour, batter, the brim of a pan. Base unit: fraction.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Share(f64);
quantity!(Share);

impl Share {
    /// A share given as a fraction: 0.5 is half.
    pub const fn fraction(value: f64) -> Self {
        Self(value)
    }

    /// A share given in per cent: 50 is half.
    pub const fn percent(value: f64) -> Self {
        Self(value / 100.0)
    }

    /// As a fraction.
    pub const fn to_fraction(self) -> f64 {
        self.0
    }

    /// In per cent.
    pub const fn to_percent(self) -> f64 {
        self.0 * 100.0
    }
}
