//! Numbers with a meaning have a type.
//!
//! One base unit inside, named constructors and getters at the edge, and only the arithmetic
//! that means something. [`show`] is the only place where a figure is rounded.

mod amount;
mod density;
mod height;
mod length;
mod mass;
mod molality;
mod ph;
mod pressure;
mod share;
pub mod show;
mod temperature;
mod volume;

pub use amount::Equivalents;
pub use density::Density;
pub use height::Height;
pub use length::{Length, LengthUnit};
pub use mass::Mass;
pub use molality::Molality;
pub use ph::Ph;
pub use pressure::Pressure;
pub use share::Share;
pub use temperature::{Temperature, TemperatureChange};
pub use volume::Volume;

/// A quantity that can be kept as an estimate: one number in its base unit.
pub trait Quantity: Copy + PartialOrd {
    /// The value in the base unit of its type.
    fn base(self) -> f64;
    /// The quantity that has this value in the base unit.
    fn from_base(value: f64) -> Self;
}

/// A plain ratio is kept as an estimate like any quantity.
impl Quantity for f64 {
    fn base(self) -> f64 {
        self
    }
    fn from_base(value: f64) -> Self {
        value
    }
}

/// Writes what every quantity has in common: its one number, sums, differences and multiples.
macro_rules! quantity {
    ($name:ident) => {
        impl crate::baking::quantity::Quantity for $name {
            fn base(self) -> f64 {
                self.0
            }
            fn from_base(value: f64) -> Self {
                Self(value)
            }
        }
        impl std::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }
        impl std::ops::Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }
        impl std::ops::Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }
        impl std::ops::Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }
        impl std::ops::Div for $name {
            type Output = f64;
            /// The ratio of two like quantities, a plain number.
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }
        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
                Self(items.map(|item| item.0).sum())
            }
        }
    };
}
pub(crate) use quantity;
