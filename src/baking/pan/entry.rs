//! A pan as it is typed into the form: text fields, kept as typed, and read into a [`Pan`].

use super::{Pan, Shape};
use crate::baking::quantity::{Length, LengthUnit, show};
use crate::baking::text::decimal;
use serde::{Deserialize, Serialize};

/// A pan as typed. Nothing typed is dropped: a field that cannot be read keeps its text.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct PanEntry {
    /// Its shape.
    pub shape: Shape,
    /// How many of them; for cups, how many cups.
    pub count: String,
    /// Diameter, side or length.
    pub length: String,
    /// Width, for shapes that have one.
    pub width: String,
    /// Depth.
    pub depth: String,
    /// The unit of the three lengths.
    pub unit: LengthUnit,
}

impl Default for PanEntry {
    fn default() -> Self {
        Pan::usual(Shape::Round).entry(LengthUnit::Inches)
    }
}

/// A field of the form.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PanField {
    /// How many.
    Count,
    /// Diameter, side or length.
    Length,
    /// Width.
    Width,
    /// Depth.
    Depth,
}

/// A sentence that belongs at one field.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FieldTrouble {
    /// Where.
    pub field: PanField,
    /// What was found, what was expected.
    pub sentence: String,
}

/// The longest side that any oven of this trade takes, and the smallest cup side, in millimetres.
const SIDES: std::ops::RangeInclusive<f64> = 10.0..=1500.0;

impl PanEntry {
    /// The pan that the fields mean, or what is wrong with them.
    ///
    /// # Errors
    /// One sentence for each field that is not a number or is beyond any baking pan.
    pub fn read(&self) -> Result<Pan, Vec<FieldTrouble>> {
        let mut troubles = Vec::new();
        let count = match self.count.trim().parse::<u32>() {
            Ok(count) if (1..=200).contains(&count) => count,
            _ => {
                troubles.push(FieldTrouble {
                    field: PanField::Count,
                    sentence: format!(
                        "\"{}\" is not a count: write a whole number from 1 to 200.",
                        self.count.trim()
                    ),
                });
                1
            }
        };
        let mut side = |field: PanField, typed: &str| match self.length_of(typed) {
            Some(length) if SIDES.contains(&length.to_millimetres()) => length,
            Some(_) => {
                troubles.push(FieldTrouble {
                    field,
                    sentence: format!(
                        "{} {} is beyond any baking pan: write from {} to {}.",
                        typed.trim(),
                        self.unit.word(),
                        show::length(Length::millimetres(*SIDES.start()), self.unit),
                        show::length(Length::millimetres(*SIDES.end()), self.unit),
                    ),
                });
                Length::ZERO
            }
            None => {
                let typed = typed.trim();
                let found = if typed.is_empty() {
                    "Nothing is written here".to_owned()
                } else {
                    format!("\"{typed}\" is not a length")
                };
                troubles.push(FieldTrouble {
                    field,
                    sentence: format!(
                        "{found}: write a number in {}, such as {}.",
                        self.unit.word(),
                        example(self.unit)
                    ),
                });
                Length::ZERO
            }
        };
        let length = side(PanField::Length, &self.length);
        let width = if self.shape.has_width() {
            side(PanField::Width, &self.width)
        } else {
            length
        };
        let depth = side(PanField::Depth, &self.depth);
        if troubles.is_empty() {
            Ok(Pan {
                shape: self.shape,
                count,
                length,
                width,
                depth,
            })
        } else {
            Err(troubles)
        }
    }

    /// A typed number as a length; a comma may stand for the point, and "9 1/2" is understood.
    fn length_of(&self, typed: &str) -> Option<Length> {
        let value = plain_number(typed)?;
        Some(match self.unit {
            LengthUnit::Inches => Length::inches(value),
            LengthUnit::Centimetres => Length::centimetres(value),
        })
    }
}

/// What a length may look like in a unit.
fn example(unit: LengthUnit) -> &'static str {
    match unit {
        LengthUnit::Inches => "9 or 8.5",
        LengthUnit::Centimetres => "23 or 21.5",
    }
}

/// A decimal number, or a whole number with a fraction; `None` for anything else.
fn plain_number(typed: &str) -> Option<f64> {
    let mut total = 0.0;
    let mut words = 0;
    for word in typed.split_whitespace() {
        words += 1;
        total += match word.split_once('/') {
            Some((above, below)) => {
                let (above, below) = (above.parse::<u32>().ok()?, below.parse::<u32>().ok()?);
                if below == 0 {
                    return None;
                }
                f64::from(above) / f64::from(below)
            }
            None => decimal(&word.replace(',', "."))?,
        };
    }
    (words == 1 || words == 2).then_some(total)
}
