//! Batterwright: from a pasted recipe to weights, a leavening verdict and another pan.
//!
//! A value goes one way. Each stage takes the value before it and returns a new one:
//!
//! ```text
//! pasted text --read--> Recipe --weigh--> Formula --facts--> balance, chemistry, pan
//!             --judge--> Findings --gather--> Worksheet --show--> the page
//! ```
//!
//! [`baking`] is the whole trade, with no browser in it; [`baking::worksheet`] is its one door.
//! `ui` is the page, behind the cargo feature of the same name.

pub mod baking;
#[cfg(feature = "ui")]
pub mod ui;
