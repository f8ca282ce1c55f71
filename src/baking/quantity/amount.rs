//! Amount of acid or base, in milliequivalents.

use super::quantity;
use serde::{Deserialize, Serialize};

/// An amount of acid or base: the protons it can give or take. Base unit: milliequivalent.
///
/// What it means depends on where it stands: acid is counted as the base it takes up.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Equivalents(f64);
quantity!(Equivalents);

impl Equivalents {
    /// Neither acid nor base.
    pub const ZERO: Self = Self(0.0);

    /// So many milliequivalents.
    pub const fn milliequivalents(value: f64) -> Self {
        Self(value)
    }

    /// In milliequivalents.
    pub const fn to_milliequivalents(self) -> f64 {
        self.0
    }
}
