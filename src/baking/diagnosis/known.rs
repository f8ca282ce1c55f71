//! What was seen and measured, and what is known beside the formula.

use crate::baking::finding::Facts;
use crate::baking::oven::core_temperature::Core;
use crate::baking::quantity::{Length, Mass, Ph, Temperature};

/// What was seen on a bake, and what was measured.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Seen {
    /// Keys of signs; one that is not known is left aside.
    pub signs: Vec<String>,
    /// What was measured.
    pub measured: Measured,
}

/// What a baker measured; `None` wherever nothing was.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Measured {
    /// Of the crumb, by strip or meter.
    pub crumb_ph: Option<Ph>,
    /// In the middle, as it left the oven.
    pub core: Option<Temperature>,
    /// By a thermometer in the oven.
    pub oven: Option<Temperature>,
    /// Minutes in the oven.
    pub bake_minutes: Option<f64>,
    /// Minutes between mixing and the oven.
    pub waited_minutes: Option<f64>,
    /// The batter.
    pub mass_in: Option<Mass>,
    /// The cake.
    pub mass_out: Option<Mass>,
    /// In the middle.
    pub height_centre: Option<Length>,
    /// At the edge.
    pub height_edge: Option<Length>,
}

/// A middle that differs so much from the edge is sunken, or peaked (our own limits).
const SUNKEN: f64 = 0.9;
const PEAKED: f64 = 1.5;

impl Measured {
    /// The sign that the heights show, if any.
    pub fn shape(&self) -> Option<&'static str> {
        let ratio = self.height_centre? / self.height_edge?;
        match ratio {
            ratio if !ratio.is_finite() || ratio <= 0.0 => None,
            ratio if ratio < SUNKEN => Some("sunken"),
            ratio if ratio > PEAKED => Some("peaked"),
            _ => None,
        }
    }
}

/// What is known of the oven, in terms of a still one that runs true.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OvenKnown {
    /// The usual setting for the kind.
    pub usual: Temperature,
    /// What the recipe names.
    pub named: Option<Temperature>,
    /// What the baker's own is set to; `None` where neither recipe nor baker says.
    pub dial: Option<Temperature>,
    /// What a thermometer in it showed.
    pub measured: Option<Temperature>,
    /// The recipe's own time, minutes.
    pub baked: Option<[f64; 2]>,
    /// The time that heat flow forecasts, minutes: early, usual, late.
    pub forecast: Option<[f64; 3]>,
    /// The core at done; `None` for what has none.
    pub core: Option<Core>,
}

/// All that a diagnosis goes by.
#[derive(Clone, Copy, Debug)]
pub struct Known<'a> {
    /// The formula's facts, what was measured of crumb and standing already in them.
    pub facts: &'a Facts<'a>,
    /// What was measured.
    pub measured: &'a Measured,
    /// The oven.
    pub oven: OvenKnown,
}
