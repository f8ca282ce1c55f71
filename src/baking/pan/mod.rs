//! Pans: shapes, sizes, what they hold, and how full they are.

mod entry;
mod fit;
mod section;
mod shape;

pub use entry::{FieldTrouble, PanEntry, PanField};
pub use fit::{Fill, Fit, Origin, fit};
pub use section::Section;
pub use shape::{Pan, Shape};
