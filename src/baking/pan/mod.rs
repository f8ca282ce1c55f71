//! Pans: shapes, sizes, what they hold, and how full they are.

mod amount;
mod batter;
mod entry;
mod fill;
mod finish;
mod fit;
mod geometry;
mod label;
mod named;
mod read;
mod section;
mod shape;
mod sizes;
mod split;

pub use amount::{AmountEntry, HowMuch, Wanted};
pub use batter::{KindOfBatter, UsualFill, batter_of, kinds_of_batter};
pub use entry::{FieldTrouble, PanEntry, PanField, WaterUnit};
pub use fill::{Baked, Fill};
pub use finish::Finish;
pub use fit::{Asked, Fit, Origin, WholeEggs, fit};
pub use geometry::Pan;
pub use read::plain_number;
pub use section::{Cut, Section};
pub use shape::{Shape, Symmetry};
pub use sizes::{Made, Size, size, sizes, sizes_of};
pub use split::{LeftOver, Level, Part, Split};
