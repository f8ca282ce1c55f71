//! A pan in section, to be drawn to scale.

use serde::Serialize;

/// A pan cut through its middle, in millimetres, with the batter in it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Section {
    /// Width at the brim.
    pub top: f64,
    /// Width at the base.
    pub base: f64,
    /// Depth.
    pub depth: f64,
    /// Width of the tube at the brim and at the base; zero without one.
    pub tube_top: f64,
    /// Width of the tube at the base.
    pub tube_base: f64,
    /// Depth of the batter at its mean; `None` where it is not known. It may exceed `depth`.
    pub batter: Option<f64>,
    /// How many such pans there are.
    pub count: u32,
}
