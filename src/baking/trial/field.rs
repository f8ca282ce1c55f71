//! The fields of a bake that are typed: what was otherwise than planned, and what came out.

use serde::{Deserialize, Serialize};

/// A field.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OutcomeField {
    /// Minutes between mixing and the oven.
    Waited,
    /// What the oven was set to.
    Oven,
    /// What a thermometer in the oven read.
    OvenRead,
    /// The pan.
    Pan,
    /// How long it baked.
    Minutes,
    /// Its core when it came out.
    Core,
    /// Its height in the middle.
    HeightCentre,
    /// Its height at the edge.
    HeightEdge,
    /// What it weighed before the oven.
    MassIn,
    /// What it weighed after.
    MassOut,
    /// The pH of its crumb.
    CrumbPh,
}

impl OutcomeField {
    /// What was otherwise than planned.
    pub const DONE: [Self; 4] = [Self::Waited, Self::Oven, Self::OvenRead, Self::Pan];
    /// What came out.
    pub const CAME: [Self; 7] = [
        Self::Minutes,
        Self::Core,
        Self::HeightCentre,
        Self::HeightEdge,
        Self::MassIn,
        Self::MassOut,
        Self::CrumbPh,
    ];

    /// What it asks for.
    pub fn label(self) -> &'static str {
        match self {
            Self::Waited => "Stood before the oven, minutes",
            Self::Oven => "Oven set to",
            Self::OvenRead => "A thermometer in it read",
            Self::Pan => "Pan, if another",
            Self::Minutes => "Baked, minutes",
            Self::Core => "Core when it came out",
            Self::HeightCentre => "Height in the middle",
            Self::HeightEdge => "Height at the edge",
            Self::MassIn => "Batter in one pan, g",
            Self::MassOut => "The same cake baked, g",
            Self::CrumbPh => "pH of the crumb",
        }
    }

    /// How it is typed.
    pub fn hint(self) -> &'static str {
        match self {
            Self::Waited => "Empty: as planned.",
            Self::Oven => "Such as 170 C or 160 C fan. Empty: as planned.",
            Self::OvenRead => "Such as 168 C, beside the tin, once it had settled.",
            Self::Pan => "Such as 18 cm round tin, 7 cm deep.",
            Self::Minutes => "Such as 34, or 34 to 36.",
            Self::Core => "Such as 97 C or 207 F.",
            Self::HeightCentre => "Such as 6.2 cm. Cut it, and measure the slice.",
            Self::HeightEdge => "A finger's width from the side, the mean of both.",
            Self::MassIn => "Tin zeroed.",
            Self::MassOut => "Cooled, out of the tin.",
            Self::CrumbPh => "One part crumb, two parts water, by strip.",
        }
    }

    /// The keypad that it asks for.
    pub fn keypad(self) -> &'static str {
        match self {
            Self::Waited | Self::MassIn | Self::MassOut | Self::CrumbPh => "decimal",
            _ => "text",
        }
    }
}
