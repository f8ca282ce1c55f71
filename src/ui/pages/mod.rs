//! The pages, one a file.

mod about;
mod settings;
mod shelf;
mod ticket;

pub use about::About;
pub use settings::SettingsPage;
pub use shelf::ShelfPage;
pub use ticket::Ticket;
