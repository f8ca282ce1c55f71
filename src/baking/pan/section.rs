//! A pan in section, to be drawn to scale.

use super::{Fill, Pan, Shape};
use crate::baking::quantity::Length;
use serde::Serialize;

/// A pan cut through its middle, in millimetres, with the batter in it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Section {
    /// Heights from the base to the brim, each with the half widths of core and wall. Straight lines join them.
    pub profile: Vec<Cut>,
    /// Depth.
    pub depth: f64,
    /// Depth of the batter at its mean; `None` where it is not known. It may exceed `depth`.
    pub batter: Option<f64>,
    /// Depth of the crumb that is expected, at its mean; `None` where it is not known.
    pub crumb: Option<f64>,
    /// Height of the mark that the batter is not to stand above.
    pub fill_line: Option<f64>,
    /// How many such pans there are.
    pub count: u32,
}

/// One height of a section.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Cut {
    /// Above the base.
    pub height: f64,
    /// Half the width of the core; zero without one.
    pub core: f64,
    /// Half the width of the wall.
    pub wall: f64,
}

/// As many heights as a round bottom needs to look round.
const ROUND: usize = 24;

impl Pan {
    /// The pan cut through its middle across its shorter side, with a batter in it.
    pub fn section(&self, fill: Option<&Fill>) -> Section {
        let depth = self.depth.to_millimetres();
        let steps = match self.shape {
            Shape::Ring | Shape::Hemisphere | Shape::Ball => ROUND,
            _ => 1,
        };
        let profile = (0..=steps).map(|step| {
            // Close together at both ends, where what is round turns fastest.
            let turn = std::f64::consts::PI * step as f64 / steps as f64;
            self.cut(depth * (1.0 - turn.cos()) / 2.0)
        });
        Section {
            profile: profile.collect(),
            depth,
            batter: fill.map(|fill| fill.depth.mean.to_millimetres()),
            crumb: fill
                .and_then(|fill| fill.baked)
                .map(|baked| baked.depth.mean.to_millimetres()),
            fill_line: self.fill_line.map(Length::to_millimetres),
            count: self.count,
        }
    }

    fn cut(&self, height: f64) -> Cut {
        let (core, wall) = self.cut_at(height);
        Cut { height, core, wall }
    }
}
