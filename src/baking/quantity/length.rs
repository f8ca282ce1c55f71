//! Length, in millimetres.

use super::quantity;
use serde::{Deserialize, Serialize};

/// A length. Base unit: millimetre.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Length(f64);
quantity!(Length);

/// Millimetres in an inch, exact (NIST SP 811, appendix B).
const MILLIMETRES_PER_INCH: f64 = 25.4;

impl Length {
    /// No length.
    pub const ZERO: Self = Self(0.0);

    /// A length of so many millimetres.
    pub const fn millimetres(value: f64) -> Self {
        Self(value)
    }

    /// A length of so many centimetres.
    pub const fn centimetres(value: f64) -> Self {
        Self(value * 10.0)
    }

    /// A length of so many inches.
    pub const fn inches(value: f64) -> Self {
        Self(value * MILLIMETRES_PER_INCH)
    }

    /// In millimetres.
    pub const fn to_millimetres(self) -> f64 {
        self.0
    }

    /// In centimetres.
    pub const fn to_centimetres(self) -> f64 {
        self.0 / 10.0
    }

    /// In inches.
    pub const fn to_inches(self) -> f64 {
        self.0 / MILLIMETRES_PER_INCH
    }
}

/// The unit that pan sizes are typed and shown in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LengthUnit {
    /// Inches.
    #[default]
    Inches,
    /// Centimetres.
    Centimetres,
}

impl LengthUnit {
    /// The unit in a sentence.
    pub fn word(self) -> &'static str {
        match self {
            Self::Inches => "inches",
            Self::Centimetres => "centimetres",
        }
    }

    /// The unit behind a figure.
    pub fn short(self) -> &'static str {
        match self {
            Self::Inches => "in",
            Self::Centimetres => "cm",
        }
    }
}
