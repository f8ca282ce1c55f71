//! A pan as it is typed into the form: text fields, kept as typed.

use super::{Finish, Pan, Shape};
use crate::baking::quantity::{Length, LengthUnit, Volume, show};
use serde::{Deserialize, Serialize};

/// A pan as typed. Nothing typed is dropped: a field that cannot be read keeps its text, and so does one that another
/// shape has no use for.
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
    /// Diameter, side or length at the base; empty for the usual flare.
    pub base_length: String,
    /// Width at the base; empty for the usual flare.
    pub base_width: String,
    /// Diameter of the core at the brim; empty for the usual one.
    pub core: String,
    /// Diameter of the core at the base; empty for the usual one.
    pub core_base: String,
    /// Radius of the corners; empty for square ones.
    pub corner: String,
    /// What the flutes leave of a smooth pan, per cent; empty for the usual.
    pub flutes: String,
    /// Thickness of the lining along each wall, in millimetres; empty for none.
    pub lining: String,
    /// Height of the mark that the batter is not to stand above; empty for none.
    pub fill_line: String,
    /// The water that one of them holds at the brim.
    pub water: String,
    /// The unit of the water.
    pub water_unit: WaterUnit,
    /// The unit of all lengths but the lining's.
    pub unit: LengthUnit,
    /// What it is made of.
    pub finish: Finish,
}

impl Default for PanEntry {
    fn default() -> Self {
        Pan::usual(Shape::Round).entry(LengthUnit::Inches)
    }
}

/// The unit that water is measured in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum WaterUnit {
    /// Millilitres, which weigh as many grams.
    #[default]
    Millilitres,
    /// US cups.
    Cups,
}

impl WaterUnit {
    /// The unit in a sentence.
    pub fn word(self) -> &'static str {
        match self {
            Self::Millilitres => "millilitres",
            Self::Cups => "US cups",
        }
    }

    /// So much of it.
    pub(super) fn volume(self, value: f64) -> Volume {
        match self {
            Self::Millilitres => Volume::millilitres(value),
            Self::Cups => Volume::US_CUP * value,
        }
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
    /// The water that it holds.
    Water,
    /// Diameter, side or length at the base.
    BaseLength,
    /// Width at the base.
    BaseWidth,
    /// The core at the brim.
    Core,
    /// The core at the base.
    CoreBase,
    /// Radius of the corners.
    Corner,
    /// What the flutes leave.
    Flutes,
    /// Thickness of the lining.
    Lining,
    /// The mark.
    FillLine,
}

/// A sentence that belongs at one field.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FieldTrouble {
    /// Where.
    pub field: PanField,
    /// What was found, what was expected.
    pub sentence: String,
}

impl PanField {
    /// Every field, in the order offered: those that have to be filled, then those that may stay empty.
    pub const ALL: [Self; 13] = [
        Self::Count,
        Self::Length,
        Self::Width,
        Self::Water,
        Self::Depth,
        Self::BaseLength,
        Self::BaseWidth,
        Self::Core,
        Self::CoreBase,
        Self::Corner,
        Self::Flutes,
        Self::Lining,
        Self::FillLine,
    ];

    /// Whether pans of a shape have it.
    pub fn is_of(self, shape: Shape) -> bool {
        match self {
            Self::Count | Self::FillLine => true,
            Self::Length => shape != Shape::Water,
            Self::Width => shape.has_width(),
            Self::Depth => shape != Shape::Ball,
            Self::Water => shape == Shape::Water,
            Self::BaseLength => shape.has_base(),
            Self::BaseWidth => shape.has_base() && shape.has_width(),
            Self::Core => shape.has_core().0,
            Self::CoreBase => shape.has_core().1,
            Self::Corner => shape.has_corners(),
            Self::Flutes => shape.has_flutes(),
            Self::Lining => shape.has_lining(),
        }
    }

    /// Whether it may stay empty.
    pub fn may_be_empty(self) -> bool {
        !matches!(
            self,
            Self::Count | Self::Length | Self::Width | Self::Depth | Self::Water
        )
    }

    /// What it is called.
    pub fn words(self, shape: Shape) -> &'static str {
        match self {
            Self::Count if shape == Shape::Cups => "Cups to fill",
            Self::Count => "How many",
            Self::Length => shape.length_words(),
            Self::Width => "Width",
            Self::Depth => "Depth",
            Self::Water => "Water that one holds at the brim",
            Self::BaseLength if shape.has_width() => "Length at the base",
            Self::BaseLength => "Across the base",
            Self::BaseWidth => "Width at the base",
            Self::Core => "Core at the brim",
            Self::CoreBase => "Core at the base",
            Self::Corner => "Corner radius",
            Self::Flutes => "Flutes leave, %",
            Self::Lining => "Lining, mm thick",
            Self::FillLine => "Fill line, height",
        }
    }
}

impl PanEntry {
    /// The text of a field.
    pub fn text(&self, field: PanField) -> &str {
        match field {
            PanField::Count => &self.count,
            PanField::Length => &self.length,
            PanField::Width => &self.width,
            PanField::Depth => &self.depth,
            PanField::Water => &self.water,
            PanField::BaseLength => &self.base_length,
            PanField::BaseWidth => &self.base_width,
            PanField::Core => &self.core,
            PanField::CoreBase => &self.core_base,
            PanField::Corner => &self.corner,
            PanField::Flutes => &self.flutes,
            PanField::Lining => &self.lining,
            PanField::FillLine => &self.fill_line,
        }
    }

    /// The text of a field, to be changed.
    pub fn text_mut(&mut self, field: PanField) -> &mut String {
        match field {
            PanField::Count => &mut self.count,
            PanField::Length => &mut self.length,
            PanField::Width => &mut self.width,
            PanField::Depth => &mut self.depth,
            PanField::Water => &mut self.water,
            PanField::BaseLength => &mut self.base_length,
            PanField::BaseWidth => &mut self.base_width,
            PanField::Core => &mut self.core,
            PanField::CoreBase => &mut self.core_base,
            PanField::Corner => &mut self.corner,
            PanField::Flutes => &mut self.flutes,
            PanField::Lining => &mut self.lining,
            PanField::FillLine => &mut self.fill_line,
        }
    }

    /// The same pan in another unit of length; one that cannot be read keeps its figures.
    pub fn in_unit(&self, unit: LengthUnit) -> Self {
        let Ok(pan) = self.read() else {
            return Self {
                unit,
                ..self.clone()
            };
        };
        Self {
            water: self.water.clone(),
            water_unit: self.water_unit,
            ..pan.entry(unit)
        }
    }
}

impl Pan {
    /// The same pan as text fields in a unit; what is usual for its shape stays empty.
    pub fn entry(&self, unit: LengthUnit) -> PanEntry {
        let typed = |length| show::length_typed(length, unit);
        let usual = Self::of(self.shape, self.length, self.width, self.depth);
        let unusual = |length: Length, usual: Length| {
            // Finer than what is typed.
            if (length - usual).to_millimetres().abs() < 0.01 {
                String::new()
            } else {
                typed(length)
            }
        };
        let is_water = self.shape == Shape::Water;
        PanEntry {
            shape: self.shape,
            count: self.count.to_string(),
            length: typed(self.length),
            width: typed(self.width),
            depth: typed(self.depth),
            base_length: unusual(self.base_length, usual.base_length),
            base_width: unusual(self.base_width, usual.base_width),
            core: unusual(self.core, usual.core),
            core_base: unusual(self.core_base, usual.core_base),
            corner: unusual(self.corner, usual.corner),
            flutes: match self.flutes == usual.flutes {
                true => String::new(),
                false => show::trimmed(self.flutes * 100.0, 2),
            },
            lining: match self.lining == Length::ZERO {
                true => String::new(),
                false => show::trimmed(self.lining.to_millimetres(), 2),
            },
            fill_line: self.fill_line.map(typed).unwrap_or_default(),
            water: match is_water {
                true => show::trimmed(self.one().brim().to_millilitres(), 1),
                false => String::new(),
            },
            water_unit: WaterUnit::default(),
            unit,
            finish: self.finish,
        }
    }
}
