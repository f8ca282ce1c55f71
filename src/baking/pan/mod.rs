//! Pans: shapes, sizes, what they hold, and how full they are.

mod entry;
mod fit;
mod geometry;
mod label;
mod named;
mod read;
mod section;
mod shape;
mod sizes;

pub use entry::{FieldTrouble, PanEntry, PanField, WaterUnit};
pub use fit::{Fill, Fit, Origin, batter_density, fit};
pub use geometry::Pan;
pub use section::{Cut, Section};
pub use shape::{Shape, Symmetry};
pub use sizes::{Made, Size, size, sizes, sizes_of};
