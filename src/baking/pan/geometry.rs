//! The geometry of what a pan holds. All sizes are inside sizes.

use super::{Finish, Shape, Symmetry};
use crate::baking::quantity::{Length, Volume};
use std::f64::consts::PI;

/// Pans of one size: their shape, how many, and their inside sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pan {
    /// The shape.
    pub shape: Shape,
    /// How many of them.
    pub count: u32,
    /// Diameter, side or length at the brim; of a ball, its diameter. A pan that is known by its water has the diameter of
    /// the straight round one that holds as much.
    pub length: Length,
    /// Width at the brim; the same as `length` where the shape has one side only.
    pub width: Length,
    /// Depth.
    pub depth: Length,
    /// Diameter, side or length at the base.
    pub base_length: Length,
    /// Width at the base.
    pub base_width: Length,
    /// Diameter of the core at the brim; zero without one.
    pub core: Length,
    /// Diameter of the core at the base.
    pub core_base: Length,
    /// Radius of the corners, the same at every height.
    pub corner: Length,
    /// What the flutes leave of a smooth pan's area, as a fraction; 1 for smooth walls.
    pub flutes: f64,
    /// Thickness of the paper or lining along each wall.
    pub lining: Length,
    /// A mark that the batter is not to stand above.
    pub fill_line: Option<Length>,
    /// What it is made of.
    pub finish: Finish,
}

/// Sides of one section and its core, in millimetres, lining taken off.
#[derive(Clone, Copy)]
struct Sides {
    length: f64,
    width: f64,
    core: f64,
}

impl Pan {
    /// One pan with the usual flare, core and flutes of its shape, without lining or mark.
    pub fn of(shape: Shape, length: Length, width: Length, depth: Length) -> Self {
        let width = if shape.has_width() { width } else { length };
        let (core, core_base) = shape.usual_core(length);
        Self {
            shape,
            count: 1,
            length,
            width,
            depth,
            base_length: shape.usual_base(length),
            base_width: shape.usual_base(width),
            core,
            core_base,
            corner: Length::ZERO,
            flutes: shape.usual_flutes(),
            lining: Length::ZERO,
            fill_line: None,
            finish: match shape {
                Shape::Jar => Finish::Glass,
                _ => Finish::default(),
            },
        }
    }

    /// The usual size of a shape, for a recipe that names none.
    pub fn usual(shape: Shape) -> Self {
        let (count, length, width, depth) = shape.usual();
        let [length, width, depth] = [length, width, depth].map(Length::inches);
        let one = Self::of(shape, length, width, depth);
        Self { count, ..one }
    }

    /// A single one of them.
    pub fn one(&self) -> Self {
        Self { count: 1, ..*self }
    }

    /// How it repeats itself.
    pub fn symmetry(&self) -> Symmetry {
        self.shape.symmetry()
    }

    /// What all of them hold at the brim.
    pub fn brim(&self) -> Volume {
        self.volume_to(self.depth)
    }

    /// The widest area of all of them, that at the brim unless they close above, in square millimetres.
    pub fn area(&self) -> f64 {
        self.column() * f64::from(self.count)
    }

    /// Slices of 1 by 2 inches that a tier of one pan's breadth is cut into, two layers high; `None` for pans that are no tiers.
    ///
    /// Half its square inches, rounded down: within two slices of wedding charts from 6 inches across (charts for cake
    /// decorators, read in excerpts).
    pub fn slices(&self) -> Option<u32> {
        let is_tier = matches!(
            self.shape,
            Shape::Round
                | Shape::Square
                | Shape::Rectangle
                | Shape::Sheet
                | Shape::Heart
                | Shape::Hexagon
                | Shape::Oval
        );
        let slice = 2.0 * Length::inches(1.0).to_millimetres().powi(2);
        let is_wide = self.length >= Length::inches(6.0);
        // A whole number is not to be lost to the last bit of an inch.
        (is_tier && is_wide).then(|| (self.column() / slice + 1e-9).floor() as u32)
    }

    /// What all of them hold to a height above the base. Above the brim the walls are thought on straight upwards.
    pub fn volume_to(&self, height: Length) -> Volume {
        let (height, depth) = (
            height.to_millimetres().max(0.0),
            self.depth.to_millimetres(),
        );
        let inside = self.inside(height.min(depth));
        let above = self.column() * (height - depth).max(0.0);
        Volume::millilitres((inside + above) / 1000.0 * f64::from(self.count))
    }

    /// How deep a volume stands in them, shared out evenly.
    pub fn depth_of(&self, volume: Volume) -> Length {
        let (brim, depth) = (self.brim(), self.depth.to_millimetres());
        if volume >= brim {
            let above = (volume - brim).to_millilitres() * 1000.0 / self.area();
            return Length::millimetres(depth + above);
        }
        let (mut low, mut high) = (0.0, depth);
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

    /// Half widths of one pan's section at a height above the base: of its core, zero without one, and of its wall.
    ///
    /// For [`Symmetry::Axis`] these are radii; a shape that is not round has the radius of the circle of equal area. For
    /// [`Symmetry::Slab`] it is half the shorter side, round corners left out; for [`Symmetry::Ball`] the radius of the section.
    pub fn across(&self, height: Length) -> (Length, Length) {
        let height = height.to_millimetres();
        let (core, wall) = match self.symmetry() {
            Symmetry::Slab => (0.0, self.shorter_half(height)),
            _ if self.shape == Shape::Ring => self.ring_at(height),
            _ => {
                let core = self.sides_at(height).core / 2.0;
                (core, (self.area_at(height) / PI + core * core).sqrt())
            }
        };
        (Length::millimetres(core), Length::millimetres(wall))
    }

    /// Half widths of one pan cut through its middle across its shorter side, as it is seen: core and wall, in millimetres.
    pub(super) fn cut_at(&self, height: f64) -> (f64, f64) {
        match self.shape {
            Shape::Ring => self.ring_at(height),
            Shape::Hemisphere | Shape::Ball => (0.0, self.cap_radius_squared(height).sqrt()),
            _ => (self.sides_at(height).core / 2.0, self.shorter_half(height)),
        }
    }

    fn shorter_half(&self, height: f64) -> f64 {
        let sides = self.sides_at(height);
        sides.length.min(sides.width) / 2.0
    }

    /// The sides of a section, on walls that run straight from base to brim.
    fn sides_at(&self, height: f64) -> Sides {
        let part = (height / self.depth.to_millimetres()).clamp(0.0, 1.0);
        let between = |base: Length, brim: Length| {
            let (base, brim) = (base.to_millimetres(), brim.to_millimetres());
            base + (brim - base) * part
        };
        let lining = 2.0 * self.lining.to_millimetres();
        let core = between(self.core_base, self.core);
        Sides {
            length: between(self.base_length, self.length) - lining,
            width: between(self.base_width, self.width) - lining,
            core: if core > 0.0 { core + lining } else { 0.0 },
        }
    }

    /// The area of one pan at a height above its base, in square millimetres.
    fn area_at(&self, height: f64) -> f64 {
        let Sides {
            length,
            width,
            core,
        } = self.sides_at(height);
        let corner = self.corner.to_millimetres();
        let smooth = match self.shape {
            Shape::Square | Shape::Rectangle | Shape::Sheet | Shape::Loaf => {
                length * width - (4.0 - PI) * corner * corner
            }
            Shape::Ring => {
                let (core, wall) = self.ring_at(height);
                PI * (wall * wall - core * core)
            }
            Shape::Hemisphere | Shape::Ball => PI * self.cap_radius_squared(height),
            // Three rhombs of half the way across, 60 degrees at the corner.
            Shape::Hexagon => 3.0 * f64::sqrt(3.0) / 8.0 * length * length,
            Shape::Heart => {
                // Across both lobes a square of side s with two half discs measures s (1 + 1 / sqrt 2).
                let side = length / (1.0 + std::f64::consts::FRAC_1_SQRT_2);
                side * side * (1.0 + PI / 4.0)
            }
            Shape::Oval => PI / 4.0 * length * width,
            Shape::Round
            | Shape::Tube
            | Shape::Fluted
            | Shape::Cups
            | Shape::Tart
            | Shape::Jar
            | Shape::Water => PI / 4.0 * (length * length - core * core),
        };
        smooth * self.flutes
    }

    /// What one pan holds to a height no higher than its brim, in cubic millimetres.
    fn inside(&self, height: f64) -> f64 {
        if self.shape == Shape::Ring {
            return self.ring_volume(height);
        }
        // The prismatoid rule, exact where the area is at most of the third power of the height: straight and flared walls, balls.
        let [base, middle, top] = [0.0, height / 2.0, height].map(|height| self.area_at(height));
        height / 6.0 * (base + 4.0 * middle + top)
    }

    /// The area that is thought on upwards above the brim: the brim's own, and of what closes above its middle the widest.
    fn column(&self) -> f64 {
        let depth = self.depth.to_millimetres();
        let widest = match self.shape {
            Shape::Hemisphere | Shape::Ball => self.cap_sphere().min(depth),
            _ => depth,
        };
        self.area_at(widest)
    }

    /// The radius of the ball that a bowl is a part of: of a brim of radius r at a depth d, (r^2 + d^2) / 2d.
    fn cap_sphere(&self) -> f64 {
        let (radius, depth) = (
            self.length.to_millimetres() / 2.0,
            self.depth.to_millimetres(),
        );
        match self.shape {
            Shape::Ball => radius,
            _ => (radius * radius + depth * depth) / (2.0 * depth),
        }
    }

    fn cap_radius_squared(&self, height: f64) -> f64 {
        let height = height.clamp(0.0, self.depth.to_millimetres());
        (height * (2.0 * self.cap_sphere() - height)).max(0.0)
    }

    /// The radius of a ring's middle, and half the width of its section at the brim.
    fn ring(&self) -> (f64, f64) {
        let (outer, core) = (
            self.length.to_millimetres() / 2.0,
            self.core.to_millimetres() / 2.0,
        );
        ((outer + core) / 2.0, (outer - core) / 2.0)
    }

    /// A ring's section is half an ellipse, half a disc where it is as deep as half its width: core and wall at a height.
    fn ring_at(&self, height: f64) -> (f64, f64) {
        let (middle, half) = self.ring();
        let below = 1.0 - (height / self.depth.to_millimetres()).clamp(0.0, 1.0);
        let wide = half * (1.0 - below * below).sqrt();
        (middle - wide, middle + wide)
    }

    /// Pappus: the part of the half ellipse that is filled, carried round the circle of its middle.
    fn ring_volume(&self, height: f64) -> f64 {
        let (middle, half) = self.ring();
        let depth = self.depth.to_millimetres();
        let below = 1.0 - (height / depth).clamp(0.0, 1.0);
        let filled = half * depth * (below.acos() - below * (1.0 - below * below).sqrt());
        2.0 * PI * middle * filled
    }
}
