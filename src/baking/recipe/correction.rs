//! What the baker says of a line that was read wrongly.

use serde::{Deserialize, Serialize};

/// A correction, tied to a line by its words, so that it holds when lines are added above it.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Correction {
    /// The line's text, blanks at its ends taken off.
    pub text: String,
    /// Which of several lines with the same text, counted from 0.
    pub occurrence: usize,
    /// The key of the ingredient that it is.
    pub ingredient: Option<String>,
    /// What it weighs, in grams; kept in whole milligrams.
    #[serde(rename = "milligrams", with = "milligrams")]
    pub grams: Option<f64>,
    /// Whether it is an ingredient at all.
    pub is_ingredient: Option<bool>,
}

impl Correction {
    /// True where nothing is left to correct, so that it can be dropped.
    pub fn is_empty(&self) -> bool {
        self.ingredient.is_none() && self.grams.is_none() && self.is_ingredient.is_none()
    }
}

/// A weight kept as a whole number: no scale of a baker's tells less than a milligram, and writing fractions would
/// bring a table of 10 kB along.
mod milligrams {
    use serde::{Deserialize, Deserializer, Serialize, Serializer};

    #[expect(clippy::ref_option, reason = "serde calls it so")]
    pub fn serialize<S: Serializer>(grams: &Option<f64>, serializer: S) -> Result<S::Ok, S::Error> {
        grams
            .map(|grams| (grams * 1000.0).round() as u64)
            .serialize(serializer)
    }

    pub fn deserialize<'de, D: Deserializer<'de>>(
        deserializer: D,
    ) -> Result<Option<f64>, D::Error> {
        let milligrams = Option::<u64>::deserialize(deserializer)?;
        Ok(milligrams.map(|milligrams| milligrams as f64 / 1000.0))
    }
}
