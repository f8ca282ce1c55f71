//! Pans: what they hold, against geometry worked out apart from the program, against charts and against the trade.

#[path = "pans/eggs.rs"]
mod eggs;
#[path = "pans/geometry.rs"]
mod geometry;
#[path = "pans/kit.rs"]
mod kit;
#[path = "pans/named.rs"]
mod named;
#[path = "pans/shared_out.rs"]
mod shared_out;
#[path = "pans/sheet.rs"]
mod sheet;
#[path = "pans/table.rs"]
mod table;
#[path = "pans/trade.rs"]
mod trade;
#[path = "pans/typed.rs"]
mod typed;
