//! A pan in words.

use super::{Pan, Shape};
use crate::baking::quantity::{LengthUnit, show};

impl Pan {
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

    /// The pan in words: "9 in round, 2 in deep", "2 of 8 in round, 2 in deep", "12 muffin cups, ...".
    pub fn label(&self, unit: LengthUnit) -> String {
        let one = self.label_of_one(unit);
        match (self.shape, self.count) {
            (_, 1) => one,
            (Shape::Cups, count) => {
                format!("{count} {}", one.replacen("1 muffin cup", "muffin cups", 1))
            }
            (_, count) => format!("{count} of {one}"),
        }
    }

    /// The measures alone, each in a unit: "22.9 x 5.1 cm".
    pub(super) fn measures(&self, unit: LengthUnit) -> String {
        let mut lengths = vec![self.length];
        if self.shape.has_width() {
            lengths.push(self.width);
        }
        if self.shape != Shape::Ball {
            lengths.push(self.depth);
        }
        let figures: Vec<String> = lengths
            .into_iter()
            .map(|length| show::length_figure(length, unit))
            .collect();
        format!("{} {}", figures.join(" x "), unit.short())
    }

    fn label_of_one(&self, unit: LengthUnit) -> String {
        let show = |length| show::length_figure(length, unit);
        let (length, width, depth) = (
            show(self.length),
            show(self.width),
            show::length(self.depth, unit),
        );
        let noun = self.shape.noun();
        let unit = unit.short();
        match self.shape {
            Shape::Cups => format!("1 {noun}, {length} {unit} across, {depth} deep"),
            Shape::Ball => format!("{length} {unit} {noun}"),
            Shape::Water => {
                let holds = show::volume(self.one().brim());
                format!("{noun} that holds {holds}, {depth} deep")
            }
            shape if shape.has_width() => {
                format!("{length} x {width} {unit} {noun}, {depth} deep")
            }
            _ => format!("{length} {unit} {noun}, {depth} deep"),
        }
    }
}
