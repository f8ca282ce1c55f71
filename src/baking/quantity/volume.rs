//! Volume, in millilitres.

use super::{Density, Mass, quantity};
use serde::{Deserialize, Serialize};

/// A volume. Base unit: millilitre.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Volume(f64);
quantity!(Volume);

impl Volume {
    /// Nothing at all.
    pub const ZERO: Self = Self(0.0);
    /// The US cup, exact: half a pint of the 231 cubic inch gallon (NIST Handbook 44, appendix C).
    pub const US_CUP: Self = Self(236.588_236_5);

    /// A volume of so many millilitres.
    pub const fn millilitres(value: f64) -> Self {
        Self(value)
    }

    /// In millilitres.
    pub const fn to_millilitres(self) -> f64 {
        self.0
    }
}

impl std::ops::Mul<Density> for Volume {
    type Output = Mass;
    fn mul(self, density: Density) -> Mass {
        Mass::grams(self.0 * density.to_grams_per_millilitre())
    }
}
