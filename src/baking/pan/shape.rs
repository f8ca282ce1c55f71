//! Shapes of pan: their names, which sizes tell one, and the usual size of what is left unsaid.

use crate::baking::quantity::Length;
use serde::{Deserialize, Serialize};

/// The shapes that can be reckoned with.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Shape {
    /// Round pan, springform.
    #[default]
    Round,
    /// Square pan.
    Square,
    /// Rectangle, traybake.
    Rectangle,
    /// Sheet pan, Swiss roll tin, gastronorm: a rectangle with flared walls.
    Sheet,
    /// Loaf pan with flared walls.
    Loaf,
    /// Tube pan with flared walls and a core.
    Tube,
    /// The same with fluted walls.
    Fluted,
    /// Ring with a rounded bottom, such as a savarin.
    Ring,
    /// Muffin cups; the count is the number of cups.
    Cups,
    /// Tart tin with a flared, fluted edge.
    Tart,
    /// Half a ball, or a bowl that is another part of one.
    Hemisphere,
    /// A whole ball.
    Ball,
    /// Six equal sides; its length is taken across two corners.
    Hexagon,
    /// A square on its corner with half a disc on each upper side; its length is taken across both lobes.
    Heart,
    /// An ellipse.
    Oval,
    /// A jar or glass, round.
    Jar,
    /// Any pan, by the water that it holds.
    Water,
}

/// How a pan repeats itself when it is turned or moved along.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Symmetry {
    /// Round an upright axis. A shape that is not round stands for the round one of equal area at every height.
    Axis,
    /// The same all along its longer side: a slab as thick as its shorter side is wide.
    Slab,
    /// A whole ball.
    Ball,
}

/// A side that closes from brim to base: by so much at each end, or to such a part of it.
enum Flare {
    Straight,
    EachEnd(Length),
    Part(f64),
}

/// Sheet-metal loaf pans close by 3/8 inch at each end, sheet pans by 1/4 inch (common practice, no source).
const LOAF: Flare = Flare::EachEnd(Length::inches(0.375));
const SHEET: Flare = Flare::EachEnd(Length::inches(0.25));
/// Tart tins close by 5 mm at each end (common practice, no source).
const TART: Flare = Flare::EachEnd(Length::millimetres(5.0));
/// Muffin cups: 2.0 in at the base for 2.75 in at the brim (common practice, no source).
const CUPS: Flare = Flare::Part(2.0 / 2.75);
/// Tube pans: 8.5 in at the base for 10 in at the brim, the core 2.25 in at the brim and 3 in at the base (common
/// practice, no source; weigh water where it matters).
const TUBE: Flare = Flare::Part(0.85);
const TUBE_CORE: (f64, f64) = (0.225, 0.3);
/// Fluted tubes: 7.5 in at the base for 9.75 in at the brim, the core 2.25 and 3 in (common practice, no source).
const FLUTED: Flare = Flare::Part(7.5 / 9.75);
const FLUTED_CORE: (f64, f64) = (2.25 / 9.75, 3.0 / 9.75);
/// Rings: a core of 9 cm in a ring of 22 cm (common practice, no source).
const RING_CORE: f64 = 90.0 / 220.0;
/// What flutes leave of a smooth pan of the same sizes: 0.93 meets what charts print for fluted tubes of 6, 9 and 12 cups
/// (worked out); a tart's are shallower (common practice, no source).
const FLUTES_OF_TUBE: f64 = 0.93;
const FLUTES_OF_TART: f64 = 0.97;

impl Shape {
    /// Every shape, in the order offered.
    pub const ALL: [Self; 17] = [
        Self::Round,
        Self::Square,
        Self::Rectangle,
        Self::Sheet,
        Self::Loaf,
        Self::Tube,
        Self::Fluted,
        Self::Ring,
        Self::Cups,
        Self::Tart,
        Self::Hemisphere,
        Self::Ball,
        Self::Hexagon,
        Self::Heart,
        Self::Oval,
        Self::Jar,
        Self::Water,
    ];

    /// Its name.
    pub fn words(self) -> &'static str {
        match self {
            Self::Round => "Round or springform",
            Self::Square => "Square",
            Self::Rectangle => "Rectangle",
            Self::Sheet => "Sheet or gastronorm",
            Self::Loaf => "Loaf",
            Self::Tube => "Tube",
            Self::Fluted => "Fluted tube",
            Self::Ring => "Ring with a round bottom",
            Self::Cups => "Muffin cups",
            Self::Tart => "Tart tin",
            Self::Hemisphere => "Half ball or bowl",
            Self::Ball => "Ball",
            Self::Hexagon => "Hexagon",
            Self::Heart => "Heart",
            Self::Oval => "Oval",
            Self::Jar => "Jar",
            Self::Water => "Known by its water",
        }
    }

    /// Its name within a label: "9 in round".
    pub(super) fn noun(self) -> &'static str {
        match self {
            Self::Round => "round",
            Self::Square => "square",
            Self::Rectangle => "rectangle",
            Self::Sheet => "sheet",
            Self::Loaf => "loaf",
            Self::Tube => "tube",
            Self::Fluted => "fluted tube",
            Self::Ring => "ring",
            Self::Cups => "muffin cup",
            Self::Tart => "tart tin",
            Self::Hemisphere => "bowl",
            Self::Ball => "ball",
            Self::Hexagon => "hexagon",
            Self::Heart => "heart",
            Self::Oval => "oval",
            Self::Jar => "jar",
            Self::Water => "pan",
        }
    }

    /// Whether it has a width beside its length.
    pub fn has_width(self) -> bool {
        matches!(
            self,
            Self::Rectangle | Self::Sheet | Self::Loaf | Self::Oval
        )
    }

    /// Whether its walls run straight from a base of their own to the brim.
    pub fn has_base(self) -> bool {
        !matches!(
            self,
            Self::Ring | Self::Hemisphere | Self::Ball | Self::Water
        )
    }

    /// Whether it has a core, and whether that has a base of its own.
    pub fn has_core(self) -> (bool, bool) {
        let flat = matches!(self, Self::Tube | Self::Fluted);
        (flat || self == Self::Ring, flat)
    }

    /// Whether its corners may be round.
    pub fn has_corners(self) -> bool {
        matches!(
            self,
            Self::Square | Self::Rectangle | Self::Sheet | Self::Loaf
        )
    }

    /// Whether its walls are fluted.
    pub fn has_flutes(self) -> bool {
        matches!(self, Self::Fluted | Self::Tart)
    }

    /// Whether paper or a lining goes between it and the batter; where water tells what a pan holds, it is in it already.
    pub fn has_lining(self) -> bool {
        self.has_base()
    }

    /// What its first length is called.
    pub fn length_words(self) -> &'static str {
        match self {
            Self::Cups => "Cup diameter",
            Self::Square => "Side",
            Self::Rectangle | Self::Sheet | Self::Loaf | Self::Oval => "Length",
            Self::Hexagon => "Across two corners",
            Self::Heart => "Across both lobes",
            Self::Water => "Water it holds",
            _ => "Diameter",
        }
    }

    /// How it repeats itself.
    pub fn symmetry(self) -> Symmetry {
        match self {
            Self::Rectangle | Self::Sheet | Self::Loaf => Symmetry::Slab,
            Self::Ball => Symmetry::Ball,
            _ => Symmetry::Axis,
        }
    }

    /// The usual size for a recipe that names none, in inches: how many, length, width, depth.
    pub(super) fn usual(self) -> (u32, f64, f64, f64) {
        match self {
            Self::Round => (1, 9.0, 9.0, 2.0),
            Self::Square => (1, 8.0, 8.0, 2.0),
            Self::Rectangle => (1, 13.0, 9.0, 2.0),
            Self::Sheet => (1, 17.0, 12.0, 1.0),
            Self::Loaf => (1, 9.0, 5.0, 2.75),
            Self::Tube => (1, 10.0, 10.0, 4.0),
            Self::Fluted => (1, 9.75, 9.75, 3.5),
            Self::Ring => (1, 8.75, 8.75, 2.25),
            Self::Cups => (12, 2.75, 2.75, 1.5),
            Self::Tart => (1, 9.5, 9.5, 1.0),
            Self::Hemisphere => (1, 6.0, 6.0, 3.0),
            Self::Ball => (1, 6.0, 6.0, 6.0),
            Self::Hexagon | Self::Heart => (1, 9.0, 9.0, 2.0),
            Self::Oval => (1, 10.75, 7.875, 2.0),
            Self::Jar => (1, 3.0, 3.0, 4.5),
            Self::Water => (1, 9.0, 9.0, 2.0),
        }
    }

    /// The usual depth at a length (common practice, no source).
    pub(super) fn usual_depth(self, length: Length) -> Length {
        let inches = length.to_inches();
        Length::inches(match self {
            Self::Rectangle if inches > 14.5 => 1.0,
            Self::Sheet | Self::Tart => 1.0,
            Self::Loaf if inches < 8.2 => 2.5,
            Self::Loaf => 2.75,
            Self::Tube => 3.5,
            Self::Fluted if inches < 9.2 => 3.0,
            Self::Fluted => 3.5,
            Self::Ring => 2.25,
            Self::Cups if inches < 2.2 => 0.75,
            Self::Cups if inches > 3.2 => 1.75,
            Self::Cups => 1.5,
            Self::Hemisphere => inches / 2.0,
            Self::Ball => inches,
            Self::Jar => inches * 1.5,
            _ => 2.0,
        })
    }

    /// The usual base of a side. A side too short for its flare keeps half of itself.
    pub(super) fn usual_base(self, side: Length) -> Length {
        let flare = match self {
            Self::Loaf => LOAF,
            Self::Sheet => SHEET,
            Self::Tart => TART,
            Self::Cups => CUPS,
            Self::Tube => TUBE,
            Self::Fluted => FLUTED,
            _ => Flare::Straight,
        };
        match flare {
            Flare::Straight => side,
            Flare::EachEnd(end) if side > end * 4.0 => side - end * 2.0,
            Flare::EachEnd(_) => side * 0.5,
            Flare::Part(part) => side * part,
        }
    }

    /// The usual core of a pan of that diameter, at brim and base; nothing without one.
    pub(super) fn usual_core(self, diameter: Length) -> (Length, Length) {
        let (brim, base) = match self {
            Self::Tube => TUBE_CORE,
            Self::Fluted => FLUTED_CORE,
            Self::Ring => (RING_CORE, RING_CORE),
            _ => (0.0, 0.0),
        };
        (diameter * brim, diameter * base)
    }

    /// What its flutes usually leave of a smooth pan, as a fraction.
    pub(super) fn usual_flutes(self) -> f64 {
        match self {
            Self::Fluted => FLUTES_OF_TUBE,
            Self::Tart => FLUTES_OF_TART,
            _ => 1.0,
        }
    }
}
