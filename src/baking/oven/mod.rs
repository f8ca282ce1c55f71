//! Ovens: heat flow and bake time.

pub mod heat;
pub mod rise;
