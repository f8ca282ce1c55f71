//! pH, a scale of its own: it is compared and shown, and never multiplied.

use super::Quantity;
use serde::{Deserialize, Serialize};

/// A pH.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Ph(f64);

impl Quantity for Ph {
    fn base(self) -> f64 {
        self.0
    }
    fn from_base(value: f64) -> Self {
        Self(value)
    }
}

impl Ph {
    /// This pH.
    pub const fn of(value: f64) -> Self {
        Self(value)
    }

    /// The plain number.
    pub const fn value(self) -> f64 {
        self.0
    }
}
