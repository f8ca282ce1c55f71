//! What a pan is made of, which heat asks for.

use serde::{Deserialize, Serialize};

/// What a pan is made of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Finish {
    /// Bright metal.
    #[default]
    Bright,
    /// Bright metal with wet or padded strips round its sides.
    Strips,
    /// Dark or coated metal.
    Dark,
    /// Glass or stoneware.
    Glass,
    /// Silicone.
    Silicone,
}

impl Finish {
    /// All of them, in the order offered.
    pub const ALL: [Self; 5] = [
        Self::Bright,
        Self::Dark,
        Self::Glass,
        Self::Silicone,
        Self::Strips,
    ];

    /// Its name.
    pub fn words(self) -> &'static str {
        match self {
            Self::Bright => "Bright metal",
            Self::Strips => "Bright metal with strips round it",
            Self::Dark => "Dark or coated metal",
            Self::Glass => "Glass or stoneware",
            Self::Silicone => "Silicone",
        }
    }
}
