//! The pages, one a file.

mod about;
mod settings;
mod shelf;
mod ticket;

pub use about::about;
pub use settings::settings;
pub use shelf::shelf;
pub use ticket::ticket;
