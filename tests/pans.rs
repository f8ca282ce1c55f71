//! Pans: what they hold, against geometry worked out apart from the program, against charts and against the trade.

#[path = "pans/geometry.rs"]
mod geometry;
#[path = "pans/named.rs"]
mod named;
#[path = "pans/table.rs"]
mod table;
#[path = "pans/typed.rs"]
mod typed;
