//! What the fields of a form mean: a pan, or a sentence at each field that is wrong.

use super::{FieldTrouble, Pan, PanEntry, PanField, Shape};
use crate::baking::quantity::{Length, LengthUnit, Volume, show};
use crate::baking::text::decimal;
use std::ops::RangeInclusive;

/// The longest side that any oven of this trade takes, and the smallest cup side, in millimetres.
const SIDES: RangeInclusive<f64> = 10.0..=1500.0;
/// The water of the smallest cup and of the largest pan, in millilitres.
const WATERS: RangeInclusive<f64> = 1.0..=200_000.0;
/// A base narrower than this part of the brim closes the pan.
const CLOSED: f64 = 0.1;
/// Paper is a tenth of a millimetre, a baking strip two or three.
const LINING: RangeInclusive<f64> = 0.0..=10.0;
/// No flutes leave less than half of a smooth pan.
const FLUTES: RangeInclusive<f64> = 50.0..=100.0;

impl PanEntry {
    /// The pan that the fields mean, or what is wrong with them.
    ///
    /// # Errors
    /// One sentence for each field that is not a number, is beyond any baking pan or cannot be with the others.
    pub fn read(&self) -> Result<Pan, Vec<FieldTrouble>> {
        let mut reader = Reader {
            entry: self,
            troubles: Vec::new(),
        };
        let count = reader.count();
        let pan = Pan {
            count,
            finish: self.finish,
            ..reader.outline()
        };
        // What may stay empty is held against sides that are known.
        let pan = match reader.troubles.is_empty() {
            true => reader.with_details(pan),
            false => pan,
        };
        match reader.troubles.is_empty() {
            true => Ok(pan),
            false => Err(reader.troubles),
        }
    }
}

struct Reader<'a> {
    entry: &'a PanEntry,
    troubles: Vec<FieldTrouble>,
}

impl Reader<'_> {
    fn trouble(&mut self, field: PanField, sentence: String) {
        self.troubles.push(FieldTrouble { field, sentence });
    }

    fn count(&mut self) -> u32 {
        let typed = self.entry.count.trim();
        match typed.parse::<u32>() {
            Ok(count) if (1..=200).contains(&count) => count,
            _ => {
                let sentence =
                    format!("\"{typed}\" is not a count: write a whole number from 1 to 200.");
                self.trouble(PanField::Count, sentence);
                1
            }
        }
    }

    /// The pan by its length, width and depth, or by its water and depth.
    fn outline(&mut self) -> Pan {
        let shape = self.entry.shape;
        if shape == Shape::Water {
            return self.by_water();
        }
        let length = self.side(PanField::Length);
        let width = match shape.has_width() {
            true => self.side(PanField::Width),
            false => length,
        };
        let depth = match shape {
            Shape::Ball => length,
            _ => self.side(PanField::Depth),
        };
        Pan::of(shape, length, width, depth)
    }

    /// The straight round pan that holds as much.
    fn by_water(&mut self) -> Pan {
        let (water, depth) = (self.water(), self.side(PanField::Depth));
        let area = water.to_millilitres() * 1000.0 / depth.to_millimetres();
        let across = Length::millimetres((area * 4.0 / std::f64::consts::PI).sqrt());
        let across = match self.troubles.is_empty() {
            true if !SIDES.contains(&across.to_millimetres()) => {
                let sentence = format!(
                    "So much water at that depth is {} across, beyond any baking pan: look at both figures again.",
                    self.shown(across)
                );
                self.trouble(PanField::Water, sentence);
                Length::ZERO
            }
            _ => across,
        };
        Pan::of(Shape::Water, across, across, depth)
    }

    /// What may stay empty.
    fn with_details(&mut self, outline: Pan) -> Pan {
        let mut pan = outline;
        if let Some(base) = self.base(PanField::BaseLength, pan.length) {
            pan.base_length = base;
            if !pan.shape.has_width() {
                pan.base_width = base;
            }
        }
        if let Some(base) = self.base(PanField::BaseWidth, pan.width) {
            pan.base_width = base;
        }
        if let Some(core) = self.core(PanField::Core, pan.length) {
            pan.core = core;
        }
        if let Some(core) = self.core(PanField::CoreBase, pan.base_length) {
            pan.core_base = core;
        }
        if let Some(lining) = self.lining(&pan) {
            pan.lining = lining;
        }
        if let Some(corner) = self.corner(&pan) {
            pan.corner = corner;
        }
        if let Some(flutes) = self.flutes() {
            pan.flutes = flutes;
        }
        pan.fill_line = self.fill_line(pan.depth);
        pan
    }

    /// A side that has to be there.
    fn side(&mut self, field: PanField) -> Length {
        let typed = self.entry.text(field).trim();
        if let Some(length) = self.length_of(typed) {
            if SIDES.contains(&length.to_millimetres()) {
                return length;
            }
            self.beyond(field);
            return Length::ZERO;
        }
        let sentence = match typed {
            "" => format!("Nothing is written here: {}.", self.as_length()),
            _ => format!("\"{typed}\" is not a length: {}.", self.as_length()),
        };
        self.trouble(field, sentence);
        Length::ZERO
    }

    fn beyond(&mut self, field: PanField) {
        let [least, most] = [*SIDES.start(), *SIDES.end()].map(Length::millimetres);
        let sentence = format!(
            "{} {} is beyond any baking pan: write from {} to {}.",
            self.entry.text(field).trim(),
            self.entry.unit.word(),
            self.shown(least),
            self.shown(most),
        );
        self.trouble(field, sentence);
    }

    /// A length that may be left out; `None` where it is, where the shape has none and where it cannot be read.
    fn optional(&mut self, field: PanField) -> Option<Length> {
        let typed = self.typed(field)?;
        let length = self.length_of(typed);
        if length.is_none() {
            let sentence = format!(
                "\"{typed}\" is not a length: {}, or leave it empty.",
                self.as_length()
            );
            self.trouble(field, sentence);
        }
        length
    }

    fn base(&mut self, field: PanField, brim: Length) -> Option<Length> {
        let base = self.optional(field)?;
        if base < brim * CLOSED {
            let sentence = format!(
                "A base of {} closes the pan: write at least {}, or leave it empty for the usual one.",
                self.shown(base),
                self.shown(brim * CLOSED),
            );
            self.trouble(field, sentence);
            return None;
        }
        if base.to_millimetres() > *SIDES.end() {
            self.beyond(field);
            return None;
        }
        Some(base)
    }

    fn core(&mut self, field: PanField, outer: Length) -> Option<Length> {
        let core = self.optional(field)?;
        // A tenth of the way across is left for the batter.
        let most = outer * (1.0 - CLOSED);
        if core > most {
            let sentence = format!(
                "A core of {} leaves no room for batter: write at most {}, or leave it empty for the usual one.",
                self.shown(core),
                self.shown(most),
            );
            self.trouble(field, sentence);
            return None;
        }
        Some(core)
    }

    fn corner(&mut self, pan: &Pan) -> Option<Length> {
        let corner = self.optional(PanField::Corner)?;
        let sides = [pan.length, pan.width, pan.base_length, pan.base_width];
        let least = sides.map(Length::to_millimetres);
        let most =
            least.into_iter().fold(f64::INFINITY, f64::min) / 2.0 - pan.lining.to_millimetres();
        if corner.to_millimetres() > most {
            let sentence = format!(
                "A corner radius of {} is more than half of the shortest side: write at most {}.",
                self.shown(corner),
                self.shown(Length::millimetres(most)),
            );
            self.trouble(PanField::Corner, sentence);
            return None;
        }
        Some(corner)
    }

    fn flutes(&mut self) -> Option<f64> {
        let percent = self.figure(
            PanField::Flutes,
            FLUTES,
            "write per cent of a smooth pan from 50 to 100, such as 93",
        )?;
        Some(percent / 100.0)
    }

    fn lining(&mut self, pan: &Pan) -> Option<Length> {
        let millimetres = self.figure(
            PanField::Lining,
            LINING,
            "write millimetres from 0 to 10, such as 0.3 for a paper case",
        )?;
        let lining = Length::millimetres(millimetres);
        let (tops, bases) = ([pan.length, pan.width], [pan.base_length, pan.base_width]);
        let narrow = [(tops, pan.core), (bases, pan.core_base)]
            .into_iter()
            .any(|(sides, core)| {
                let walls = if core > Length::ZERO { 4.0 } else { 2.0 };
                sides
                    .iter()
                    .any(|side| *side - core - lining * walls < *side * CLOSED * 0.5)
            });
        if narrow {
            let sentence = "So thick a lining leaves no room for batter: write less.".to_owned();
            self.trouble(PanField::Lining, sentence);
            return None;
        }
        Some(lining)
    }

    fn fill_line(&mut self, depth: Length) -> Option<Length> {
        let line = self.optional(PanField::FillLine)?;
        if line <= Length::ZERO || line > depth {
            let sentence = format!(
                "A fill line stands between base and brim: write more than 0 and at most {}.",
                self.shown(depth)
            );
            self.trouble(PanField::FillLine, sentence);
            return None;
        }
        Some(line)
    }

    /// The water that one holds.
    fn water(&mut self) -> Volume {
        let (typed, unit) = (self.entry.water.trim(), self.entry.water_unit);
        let example = "such as the grams that the water weighs, or 2.5 for US cups";
        let sentence = match plain_number(typed) {
            Some(value) if WATERS.contains(&unit.volume(value).to_millilitres()) => {
                return unit.volume(value);
            }
            Some(_) => format!(
                "{typed} {} is beyond any baking pan: write from {} to {}.",
                unit.word(),
                show::volume(Volume::millilitres(*WATERS.start())),
                show::volume(Volume::millilitres(*WATERS.end())),
            ),
            None if typed.is_empty() => {
                format!("Nothing is written here: write {}, {example}.", unit.word())
            }
            None => format!(
                "\"{typed}\" is not a volume: write {}, {example}.",
                unit.word()
            ),
        };
        self.trouble(PanField::Water, sentence);
        Volume::ZERO
    }

    /// A plain figure that may be left out.
    fn figure(&mut self, field: PanField, range: RangeInclusive<f64>, wanted: &str) -> Option<f64> {
        let typed = self.typed(field)?;
        let figure = plain_number(typed).filter(|figure| range.contains(figure));
        if figure.is_none() {
            self.trouble(field, format!("\"{typed}\" does not fit: {wanted}."));
        }
        figure
    }

    /// What is written in a field that the shape has and that may be left out.
    fn typed(&self, field: PanField) -> Option<&'_ str> {
        let typed = self.entry.text(field).trim();
        (field.is_of(self.entry.shape) && !typed.is_empty()).then_some(typed)
    }

    /// A typed number as a length; a comma may stand for the point, and "9 1/2" is understood.
    fn length_of(&self, typed: &str) -> Option<Length> {
        let value = plain_number(typed)?;
        Some(match self.entry.unit {
            LengthUnit::Inches => Length::inches(value),
            LengthUnit::Centimetres => Length::centimetres(value),
        })
    }

    /// What a length may look like.
    fn as_length(&self) -> String {
        let example = match self.entry.unit {
            LengthUnit::Inches => "9 or 8.5",
            LengthUnit::Centimetres => "23 or 21.5",
        };
        format!(
            "write a number in {}, such as {example}",
            self.entry.unit.word()
        )
    }

    fn shown(&self, length: Length) -> String {
        show::length(length, self.entry.unit)
    }
}

/// A decimal number, or a whole number with a fraction; `None` for anything else.
pub fn plain_number(typed: &str) -> Option<f64> {
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
