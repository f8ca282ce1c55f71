//! What the baker says of the batter and its crumb: as typed, as figures, and what is wrong with it.

use crate::baking::text::decimal;
use serde::{Deserialize, Serialize};

/// What the baker says of the batter, as it was typed; empty where nothing is said.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct BatterSaid {
    /// Minutes that it waits between mixing and the oven.
    pub waits: String,
    /// The pH of the crumb, measured.
    pub crumb_ph: String,
}

impl BatterSaid {
    /// Minutes that it waits, 0 to 1440; `None` where nothing is said.
    ///
    /// # Errors
    ///
    /// A sentence that says what is wrong.
    pub fn waits(&self) -> Result<Option<f64>, &'static str> {
        read(&self.waits, 0.0..=1440.0).ok_or("Write minutes from 0 to 1440, such as 20.")
    }

    /// The measured pH of the crumb, 2 to 11; `None` where nothing is said.
    ///
    /// # Errors
    ///
    /// A sentence that says what is wrong.
    pub fn crumb_ph(&self) -> Result<Option<f64>, &'static str> {
        read(&self.crumb_ph, 2.0..=11.0).ok_or("Write a pH from 2 to 11, such as 6.8.")
    }
}

/// A figure within a range, or nothing; `None` for anything else.
fn read(text: &str, range: std::ops::RangeInclusive<f64>) -> Option<Option<f64>> {
    let text = text.trim();
    if text.is_empty() {
        return Some(None);
    }
    let figure = decimal(&text.replace(',', "."))?;
    range.contains(&figure).then_some(Some(figure))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_read_and_the_rest_gets_a_sentence() {
        let said = |waits: &str, crumb_ph: &str| BatterSaid {
            waits: waits.into(),
            crumb_ph: crumb_ph.into(),
        };
        assert_eq!(said("", " ").waits(), Ok(None));
        assert_eq!(said("", " ").crumb_ph(), Ok(None));
        assert_eq!(said(" 20 ", "6,8").waits(), Ok(Some(20.0)));
        assert_eq!(said(" 20 ", "6,8").crumb_ph(), Ok(Some(6.8)));
        for wrong in ["-1", "soon", "1441", "1e3", "NaN"] {
            assert!(said(wrong, "").waits().is_err(), "{wrong}");
        }
        for wrong in ["1.9", "11.5", "pH 7", "∞"] {
            assert!(said("", wrong).crumb_ph().is_err(), "{wrong}");
        }
    }
}
