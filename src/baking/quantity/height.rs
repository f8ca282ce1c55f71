//! Height above the sea, in metres.

use super::quantity;
use serde::{Deserialize, Serialize};

/// A height above the sea, negative below it. Base unit: metre.
///
/// A type apart from [`Length`](super::Length): that one is a pan's, in millimetres and never below zero, and no sum of
/// the two means anything.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Height(f64);
quantity!(Height);

/// Metres in a foot, exact (NIST SP 811, appendix B).
const METRES_PER_FOOT: f64 = 0.3048;

impl Height {
    /// The level of the sea.
    pub const SEA: Self = Self(0.0);

    /// So many metres above the sea.
    pub const fn metres(value: f64) -> Self {
        Self(value)
    }

    /// So many feet above the sea.
    pub const fn feet(value: f64) -> Self {
        Self(value * METRES_PER_FOOT)
    }

    /// In metres.
    pub const fn to_metres(self) -> f64 {
        self.0
    }

    /// In feet.
    pub const fn to_feet(self) -> f64 {
        self.0 / METRES_PER_FOOT
    }
}
