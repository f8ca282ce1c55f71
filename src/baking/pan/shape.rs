//! Shapes of pan and the geometry of what they hold. All sizes are inside sizes.

use super::{PanEntry, Section};
use crate::baking::quantity::{Length, LengthUnit, Volume, show};
use crate::baking::recipe::{PanKind, PanMention};
use serde::{Deserialize, Serialize};
use std::f64::consts::PI;

/// The shapes that can be reckoned with.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Shape {
    /// Straight-sided round pan, springform.
    #[default]
    Round,
    /// Straight-sided square pan.
    Square,
    /// Straight-sided rectangle, traybake or sheet.
    Rectangle,
    /// Loaf pan with flared walls.
    Loaf,
    /// Tube pan with flared walls and a core.
    Tube,
    /// Muffin cups; the count is the number of cups.
    Cups,
}

/// Pans of one size: their shape, how many, and their inside sizes at the brim.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pan {
    /// The shape.
    pub shape: Shape,
    /// How many of them.
    pub count: u32,
    /// Diameter, side or length.
    pub length: Length,
    /// Width; the same as `length` where the shape has one side only.
    pub width: Length,
    /// Depth.
    pub depth: Length,
}

/// Sheet-metal loaf pans close by 3/8 inch on each side from brim to base (common practice, no source).
const LOAF_FLARE: Length = Length::inches(0.375);
/// Muffin cups: base against brim, 2.0 in against 2.75 in for the standard cup (common practice, no source).
const CUP_BASE: f64 = 2.0 / 2.75;
/// Tube pans: base against brim, and the core at brim and base, from a 10 by 4 inch pan of
/// 10, 8.5, 2.25 and 3 inches (common practice, no source; weigh water where it matters).
const TUBE_BASE: f64 = 0.85;
const TUBE_CORE_TOP: f64 = 0.225;
const TUBE_CORE_BASE: f64 = 0.3;

impl Shape {
    /// Every shape, in the order offered.
    pub const ALL: [Self; 6] = [
        Self::Round,
        Self::Square,
        Self::Rectangle,
        Self::Loaf,
        Self::Tube,
        Self::Cups,
    ];

    /// Its name.
    pub fn words(self) -> &'static str {
        match self {
            Self::Round => "Round",
            Self::Square => "Square",
            Self::Rectangle => "Rectangle or sheet",
            Self::Loaf => "Loaf",
            Self::Tube => "Tube",
            Self::Cups => "Muffin cups",
        }
    }

    /// Whether it has a width beside its length.
    pub fn has_width(self) -> bool {
        matches!(self, Self::Rectangle | Self::Loaf)
    }

    /// What its first length is called.
    pub fn length_words(self) -> &'static str {
        match self {
            Self::Round | Self::Tube => "Diameter",
            Self::Cups => "Cup diameter",
            Self::Square => "Side",
            Self::Rectangle | Self::Loaf => "Length",
        }
    }
}

/// One pan as a stack of thin slices: its volume to a depth, by the prismatoid rule, which is exact for
/// straight and for flared walls.
fn prismatoid(depth: f64, area: impl Fn(f64) -> f64) -> f64 {
    depth / 6.0 * (area(0.0) + 4.0 * area(depth / 2.0) + area(depth))
}

impl Pan {
    /// The usual size of a shape, for a recipe that names none.
    pub fn usual(shape: Shape) -> Self {
        let (count, length, width, depth) = match shape {
            Shape::Round => (1, 9.0, 9.0, 2.0),
            Shape::Square => (1, 8.0, 8.0, 2.0),
            Shape::Rectangle => (1, 13.0, 9.0, 2.0),
            Shape::Loaf => (1, 9.0, 5.0, 2.75),
            Shape::Tube => (1, 10.0, 10.0, 4.0),
            Shape::Cups => (12, 2.75, 2.75, 1.5),
        };
        let [length, width, depth] = [length, width, depth].map(Length::inches);
        Self {
            shape,
            count,
            length,
            width,
            depth,
        }
    }

    /// The pan that a text names; sizes that it leaves out are the usual ones of that kind.
    pub fn named(mention: &PanMention) -> Self {
        let shape = match mention.kind {
            PanKind::Round => Shape::Round,
            PanKind::Square => Shape::Square,
            PanKind::Rectangle => Shape::Rectangle,
            PanKind::Loaf => Shape::Loaf,
            PanKind::Tube => Shape::Tube,
            PanKind::Cups => Shape::Cups,
        };
        let mut pan = Self {
            count: mention.count.max(1),
            ..Self::usual(shape)
        };
        let lengths = &mention.lengths;
        if let Some(length) = lengths.first() {
            pan.length = *length;
            pan.width = *length;
            pan.depth = usual_depth(shape, *length);
        }
        if shape.has_width() {
            match lengths[..] {
                [a, b] => (pan.length, pan.width) = longer_first(a, b),
                [a, b, depth, ..] => {
                    (pan.length, pan.width) = longer_first(a, b);
                    pan.depth = depth;
                }
                [length] if shape == Shape::Loaf => pan.width = length * (5.0 / 9.0),
                [length] => pan.width = length * (9.0 / 13.0),
                [] => {}
            }
            if lengths.len() == 2 {
                pan.depth = usual_depth(shape, pan.length);
            }
        } else if let (true, Some(depth)) = (Self::names_depth(mention), lengths.last()) {
            // "8 x 8 x 2" and "8 x 2" name the depth last; "8 x 8" names none.
            pan.depth = *depth;
        }
        pan
    }

    /// Whether a text names a pan's depth: the third length of an oblong, the second and shorter of the others.
    pub fn names_depth(mention: &PanMention) -> bool {
        match (mention.kind, &mention.lengths[..]) {
            (PanKind::Rectangle | PanKind::Loaf, lengths) => lengths.len() >= 3,
            (_, [length, .., depth]) => *depth < *length * 0.75,
            _ => false,
        }
    }

    /// The same pan as text fields in a unit.
    pub fn entry(&self, unit: LengthUnit) -> PanEntry {
        PanEntry {
            shape: self.shape,
            count: self.count.to_string(),
            length: show::length_typed(self.length, unit),
            width: show::length_typed(self.width, unit),
            depth: show::length_typed(self.depth, unit),
            unit,
        }
    }

    /// The unit that the pan was made in, as far as its length tells: a baker who asks for inches is
    /// still shown a 20 cm tin as one.
    pub fn unit(&self, asked: LengthUnit) -> LengthUnit {
        let whole =
            |length: f64, parts: f64| ((length * parts).round() / parts - length).abs() < 4e-4;
        let is_inches = whole(self.length.to_inches(), 8.0);
        let is_centimetres = whole(self.length.to_centimetres(), 2.0);
        match (is_inches, is_centimetres) {
            (true, false) => LengthUnit::Inches,
            (false, true) => LengthUnit::Centimetres,
            _ => asked,
        }
    }

    /// What all of them hold at the brim.
    pub fn brim(&self) -> Volume {
        self.volume_to(self.depth)
    }

    /// The area of all of them at the brim, in square millimetres.
    pub fn area(&self) -> f64 {
        self.area_at(self.depth.to_millimetres()) * f64::from(self.count)
    }

    /// What all of them hold to a depth.
    pub fn volume_to(&self, depth: Length) -> Volume {
        let cubic_millimetres = prismatoid(depth.to_millimetres(), |height| self.area_at(height));
        Volume::millilitres(cubic_millimetres / 1000.0 * f64::from(self.count))
    }

    /// How deep a volume stands in them, shared out evenly. Above the brim the walls are thought on upwards.
    pub fn depth_of(&self, volume: Volume) -> Length {
        let (mut low, mut high) = (0.0, self.depth.to_millimetres() * 4.0);
        while self.volume_to(Length::millimetres(high)) < volume && high < 1e6 {
            high *= 2.0;
        }
        for _ in 0..60 {
            let middle = (low + high) / 2.0;
            if self.volume_to(Length::millimetres(middle)) < volume {
                low = middle
            } else {
                high = middle
            }
        }
        Length::millimetres((low + high) / 2.0)
    }

    /// The area of one pan at a height above its base, in square millimetres.
    fn area_at(&self, height: f64) -> f64 {
        let part = height / self.depth.to_millimetres();
        let between = |base: f64, top: f64| base + (top - base) * part;
        let (length, width) = (self.length.to_millimetres(), self.width.to_millimetres());
        match self.shape {
            Shape::Round => PI / 4.0 * length * length,
            Shape::Square => length * length,
            Shape::Rectangle => length * width,
            Shape::Loaf => {
                between(self.loaf_base(length), length) * between(self.loaf_base(width), width)
            }
            Shape::Tube => {
                let outer = between(length * TUBE_BASE, length);
                let core = between(length * TUBE_CORE_BASE, length * TUBE_CORE_TOP);
                PI / 4.0 * (outer * outer - core * core)
            }
            Shape::Cups => {
                let across = between(length * CUP_BASE, length);
                PI / 4.0 * across * across
            }
        }
    }

    /// The base of a loaf pan's side; a side too short for the flare keeps half of itself.
    fn loaf_base(&self, side: f64) -> f64 {
        (side - 2.0 * LOAF_FLARE.to_millimetres()).max(side / 2.0)
    }

    /// The pan cut through its middle across its shorter side, with a batter in it.
    pub fn section(&self, batter: Option<Length>) -> Section {
        let side = self
            .width
            .to_millimetres()
            .min(self.length.to_millimetres());
        let (base, tube_top, tube_base) = match self.shape {
            Shape::Round | Shape::Square | Shape::Rectangle => (side, 0.0, 0.0),
            Shape::Loaf => (self.loaf_base(side), 0.0, 0.0),
            Shape::Tube => (
                side * TUBE_BASE,
                side * TUBE_CORE_TOP,
                side * TUBE_CORE_BASE,
            ),
            Shape::Cups => (side * CUP_BASE, 0.0, 0.0),
        };
        Section {
            top: side,
            base,
            depth: self.depth.to_millimetres(),
            tube_top,
            tube_base,
            batter: batter.map(Length::to_millimetres),
            count: self.count,
        }
    }

    /// The pan in words: "9 in round, 2 in deep", "2 of 8 in round, 2 in deep", "12 muffin cups, ...".
    pub fn label(&self, unit: LengthUnit) -> String {
        let show = |length| show::length_figure(length, unit);
        let (length, width, depth) = (
            show(self.length),
            show(self.width),
            show::length(self.depth, unit),
        );
        let unit = match unit {
            LengthUnit::Inches => "in",
            LengthUnit::Centimetres => "cm",
        };
        let one = match self.shape {
            Shape::Round => format!("{length} {unit} round"),
            Shape::Square => format!("{length} {unit} square"),
            Shape::Rectangle => format!("{length} x {width} {unit} rectangle"),
            Shape::Loaf => format!("{length} x {width} {unit} loaf"),
            Shape::Tube => format!("{length} {unit} tube"),
            Shape::Cups => {
                let cups = if self.count == 1 {
                    "muffin cup"
                } else {
                    "muffin cups"
                };
                return format!(
                    "{} {cups}, {length} {unit} across, {depth} deep",
                    self.count
                );
            }
        };
        if self.count == 1 {
            format!("{one}, {depth} deep")
        } else {
            format!("{} of {one}, {depth} deep", self.count)
        }
    }
}

/// The usual depth of a pan of that shape and length (common practice, no source).
fn usual_depth(shape: Shape, length: Length) -> Length {
    let inches = length.to_inches();
    Length::inches(match shape {
        Shape::Rectangle if inches > 14.5 => 1.0,
        Shape::Loaf if inches < 8.2 => 2.5,
        Shape::Loaf => 2.75,
        Shape::Tube => 3.5,
        Shape::Cups if inches < 2.2 => 0.75,
        Shape::Cups if inches > 3.2 => 1.75,
        Shape::Cups => 1.5,
        _ => 2.0,
    })
}

fn longer_first(a: Length, b: Length) -> (Length, Length) {
    if a < b { (b, a) } else { (a, b) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pan(shape: Shape, length: f64, width: f64, depth: f64) -> Pan {
        let [length, width, depth] = [length, width, depth].map(Length::inches);
        Pan {
            shape,
            count: 1,
            length,
            width,
            depth,
        }
    }

    /// Brim volumes by hand: pi/4 x 9 x 9 x 2 in3 = 127.23 in3 = 2085.0 mL; 13 x 9 x 2 = 234 in3 = 3834.6 mL;
    /// frustum 2.75 / 2.0 / 1.5 in = 109.8 mL; loaf 9 x 5 over 8.25 x 4.25, 3 deep = 1963.4 mL.
    #[test]
    fn brims_are_geometry() {
        for (pan, millilitres) in [
            (pan(Shape::Round, 9.0, 9.0, 2.0), 2085.0),
            (pan(Shape::Rectangle, 13.0, 9.0, 2.0), 3834.6),
            (pan(Shape::Cups, 2.75, 2.75, 1.5), 109.8),
            (pan(Shape::Loaf, 9.0, 5.0, 3.0), 1963.4),
            (pan(Shape::Tube, 10.0, 10.0, 4.0), 4057.4),
        ] {
            let brim = pan.brim().to_millilitres();
            assert!(
                (brim / millilitres - 1.0).abs() < 5e-4,
                "{:?}: {brim}",
                pan.shape
            );
        }
    }

    #[test]
    fn depth_undoes_volume() {
        for shape in Shape::ALL {
            let pan = Pan::usual(shape);
            for part in [0.1, 0.5, 1.0] {
                let depth = pan.depth * part;
                assert!(
                    (pan.depth_of(pan.volume_to(depth)) / depth - 1.0).abs() < 1e-9,
                    "{shape:?} {part}"
                );
            }
        }
    }
}
