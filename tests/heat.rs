//! The flow of heat: bodies whose warming is known exactly, the balance of heat and water, and bakes that were printed.

#[path = "heat/bakes.rs"]
mod bakes;
#[path = "heat/kitchen.rs"]
mod kitchen;
#[path = "heat/laws.rs"]
mod laws;
#[path = "heat/series.rs"]
mod series;
