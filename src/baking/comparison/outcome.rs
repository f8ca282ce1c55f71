//! What came out of a bake, as plain numbers, and how far bakes of the same recipe usually differ in it.

use crate::baking::oven::scale::OvenScale;
use crate::baking::quantity::{LengthUnit, show};
use crate::baking::statistics::scatter::Usual;
use crate::baking::trial::{Measured, Scale, Trial};
use crate::baking::worksheet::Settings;

/// One thing that came out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Height in the middle.
    Centre,
    /// Height at the edge.
    Edge,
    /// Height in the middle less that at the edge.
    Contour,
    /// What it lost of its weight in the oven.
    MassLost,
    /// Its core when it came out.
    Core,
    /// How long it baked.
    Minutes,
    /// The pH of its crumb.
    CrumbPh,
    /// Points on a scale.
    Points(Scale),
}

/// So many degrees of freedom is the usual scatter worth beside a baker's own repeats: half a dozen of them outweigh it
/// (our own judgement).
const WORTH: f64 = 4.0;

impl Outcome {
    /// Every outcome, what is measured first.
    pub fn all() -> impl Iterator<Item = Self> {
        let measured = [
            Self::Centre,
            Self::Edge,
            Self::Contour,
            Self::MassLost,
            Self::Core,
            Self::Minutes,
            Self::CrumbPh,
        ];
        measured.into_iter().chain(Scale::ALL.map(Self::Points))
    }

    /// What it is called.
    pub fn words(self) -> &'static str {
        match self {
            Self::Centre => "Height in the middle",
            Self::Edge => "Height at the edge",
            Self::Contour => "Contour, middle above edge",
            Self::MassLost => "Lost in the oven",
            Self::Core => "Core when it came out",
            Self::Minutes => "Baked",
            Self::CrumbPh => "pH of the crumb",
            Self::Points(scale) => scale.words(),
        }
    }

    /// The figure of a bake, in the unit of the baker's settings; `None` where it was not measured.
    pub fn value(self, trial: &Trial, measured: &Measured, settings: &Settings) -> Option<f64> {
        let length = |it: crate::baking::quantity::Length| match settings.lengths {
            LengthUnit::Inches => it.to_inches(),
            LengthUnit::Centimetres => it.to_centimetres(),
        };
        match self {
            Self::Centre => measured.centre.map(length),
            Self::Edge => measured.edge.map(length),
            Self::Contour => Some(length(measured.centre?) - length(measured.edge?)),
            Self::MassLost => {
                let (before, after) = (measured.mass_in?, measured.mass_out?);
                Some(100.0 * (1.0 - after.to_grams() / before.to_grams()))
            }
            Self::Core => measured.core.map(|it| match is_fahrenheit(settings) {
                true => it.to_fahrenheit(),
                false => it.to_celsius(),
            }),
            Self::Minutes => measured.minutes,
            Self::CrumbPh => measured.crumb_ph.map(|it| it.value()),
            Self::Points(scale) => trial.points(scale).map(f64::from),
        }
    }

    /// Whether a small cake differs in it from a whole one of the same batter. What was mixed tastes and reads alike in both.
    pub fn hangs_on_size(self) -> bool {
        !matches!(
            self,
            Self::CrumbPh | Self::Points(Scale::Sweetness | Scale::Sourness)
        )
    }

    /// The unit behind a figure.
    pub fn unit(self, settings: &Settings) -> &'static str {
        match self {
            Self::Centre | Self::Edge | Self::Contour => match settings.lengths {
                LengthUnit::Inches => " in",
                LengthUnit::Centimetres => " cm",
            },
            Self::MassLost => " %",
            Self::Core if is_fahrenheit(settings) => " °F",
            Self::Core => " °C",
            Self::Minutes => " min",
            Self::CrumbPh | Self::Points(_) => "",
        }
    }

    /// A figure with its unit.
    pub fn said(self, value: f64, settings: &Settings) -> String {
        let decimals = match self {
            Self::Core | Self::Minutes => 0,
            Self::MassLost | Self::Points(_) => 1,
            Self::CrumbPh => 2,
            _ => 1 + u32::from(settings.lengths == LengthUnit::Inches),
        };
        format!("{}{}", show::trimmed(value, decimals), self.unit(settings))
    }

    /// How far bakes of the same recipe by one baker usually differ, as a standard deviation. Nobody has printed these for a
    /// kitchen: they are our own judgement, and a baker's own repeats soon outweigh them.
    pub fn usual(self, settings: &Settings) -> Usual {
        let deviation = match self {
            // Some 2.5 % of a cake of 6 cm.
            Self::Centre | Self::Edge => self.lengths(settings, 0.15),
            Self::Contour => self.lengths(settings, 0.2),
            Self::MassLost => 0.7,
            Self::Core if is_fahrenheit(settings) => 2.7,
            Self::Core => 1.5,
            Self::Minutes => 1.5,
            // Half of what a strip is read to.
            Self::CrumbPh => 0.1,
            Self::Points(_) => 0.6,
        };
        Usual {
            deviation,
            worth: WORTH,
        }
    }

    fn lengths(self, settings: &Settings, centimetres: f64) -> f64 {
        match settings.lengths {
            LengthUnit::Inches => centimetres / 2.54,
            LengthUnit::Centimetres => centimetres,
        }
    }
}

fn is_fahrenheit(settings: &Settings) -> bool {
    settings.kitchen_oven().scale == OvenScale::Fahrenheit
}
