//! Density, in grams per millilitre; it alone turns a volume into a mass.

use super::{Mass, Volume, quantity};
use serde::{Deserialize, Serialize};

/// A density as filled, air between the grains counted in. Base unit: gram per millilitre.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Density(f64);
quantity!(Density);

impl Density {
    /// A density of so many grams per millilitre.
    pub const fn grams_per_millilitre(value: f64) -> Self {
        Self(value)
    }

    /// In grams per millilitre.
    pub const fn to_grams_per_millilitre(self) -> f64 {
        self.0
    }
}

impl std::ops::Div<Volume> for Mass {
    type Output = Density;
    fn div(self, volume: Volume) -> Density {
        Density::grams_per_millilitre(self.to_grams() / volume.to_millilitres())
    }
}

impl std::ops::Div<Density> for Mass {
    type Output = Volume;
    fn div(self, density: Density) -> Volume {
        Volume::millilitres(self.to_grams() / density.to_grams_per_millilitre())
    }
}
