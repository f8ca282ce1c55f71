//! The pages, one a file.

mod about;
mod bench;
mod carry;
mod larder;
mod settings;
mod shelf;
mod ticket;
mod trial;
mod trials;

pub use about::about;
pub use bench::bench;
pub use carry::carry;
pub use larder::{begin_measures, larder};
pub use settings::settings;
pub use shelf::shelf;
pub use ticket::ticket;
pub use trial::trial;
pub use trials::trials;
