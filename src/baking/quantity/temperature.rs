//! Temperature and a change of temperature: two types, since 32 is added to one and never to the other.

use super::Quantity;
use serde::{Deserialize, Serialize};

/// A point on the temperature scale. Base unit: degree Celsius.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Temperature(f64);

/// A difference of two temperatures. Base unit: degree Celsius.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct TemperatureChange(f64);

impl Temperature {
    /// So many degrees Celsius.
    pub const fn celsius(value: f64) -> Self {
        Self(value)
    }

    /// So many degrees Fahrenheit (NIST SP 811, appendix B: C = (F - 32) / 1.8).
    pub const fn fahrenheit(value: f64) -> Self {
        Self((value - 32.0) / 1.8)
    }

    /// A gas mark: 275 F and 25 F a mark from 1 on; 1/2 is 250 F and 1/4 is 225 F (common practice, no source).
    pub const fn gas_mark(mark: f64) -> Self {
        Self::fahrenheit(match mark {
            mark if mark < 0.3 => 225.0,
            mark if mark < 1.0 => 250.0,
            _ => 250.0 + 25.0 * mark,
        })
    }

    /// In degrees Celsius.
    pub const fn to_celsius(self) -> f64 {
        self.0
    }

    /// In degrees Fahrenheit.
    pub const fn to_fahrenheit(self) -> f64 {
        self.0 * 1.8 + 32.0
    }
}

impl Quantity for Temperature {
    fn base(self) -> f64 {
        self.0
    }
    fn from_base(value: f64) -> Self {
        Self(value)
    }
}

impl TemperatureChange {
    /// A change of so many degrees Celsius.
    pub const fn celsius(value: f64) -> Self {
        Self(value)
    }

    /// A change of so many degrees Fahrenheit.
    pub const fn fahrenheit(value: f64) -> Self {
        Self(value / 1.8)
    }

    /// In degrees Celsius.
    pub const fn to_celsius(self) -> f64 {
        self.0
    }

    /// In degrees Fahrenheit: nothing is added, since this is a difference.
    pub const fn to_fahrenheit(self) -> f64 {
        self.0 * 1.8
    }
}

impl std::ops::Sub<TemperatureChange> for Temperature {
    type Output = Self;
    fn sub(self, change: TemperatureChange) -> Self {
        Self(self.0 - change.0)
    }
}

impl std::ops::Add<TemperatureChange> for Temperature {
    type Output = Self;
    fn add(self, change: TemperatureChange) -> Self {
        Self(self.0 + change.0)
    }
}

impl std::ops::Sub for Temperature {
    type Output = TemperatureChange;
    fn sub(self, other: Self) -> TemperatureChange {
        TemperatureChange(self.0 - other.0)
    }
}
