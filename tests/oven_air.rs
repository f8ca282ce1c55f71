//! The air, ovens and their scales, batter temperatures and heights above the sea.

#[path = "oven_air/air.rs"]
mod air;
#[path = "oven_air/altitude.rs"]
mod altitude;
#[path = "oven_air/bake_time.rs"]
mod bake_time;
#[path = "oven_air/core_temperature.rs"]
mod core_temperature;
#[path = "oven_air/kitchen.rs"]
mod kitchen;
#[path = "oven_air/laws.rs"]
mod laws;
#[path = "oven_air/mixing.rs"]
mod mixing;
#[path = "oven_air/scale.rs"]
mod scale;
