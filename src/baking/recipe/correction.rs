//! What the baker says of a line that was read wrongly.

use super::term::{self, Place, Term};
use super::tidy;
use super::token::tokens;
use crate::baking::text::decimal;
use serde::{Deserialize, Serialize};

/// A correction, tied to a line by its words, so that it holds when lines are added above it.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Correction {
    /// The line's text, blanks at its ends taken off.
    pub text: String,
    /// Which of several lines with the same text, counted from 0.
    pub occurrence: usize,
    /// Which of the line's ingredients, counted from 0.
    pub part: usize,
    /// The key of the ingredient that it is.
    pub ingredient: Option<String>,
    /// How much of it there is, as typed: "2 cups".
    pub amount: Option<String>,
    /// What it weighs, in grams; kept in whole milligrams.
    #[serde(rename = "milligrams", with = "milligrams")]
    pub grams: Option<f64>,
    /// Whether it is an ingredient at all.
    pub is_ingredient: Option<bool>,
}

impl Correction {
    /// Whether it is meant for this ingredient of this line.
    pub fn is_at(&self, text: &str, occurrence: usize, part: usize) -> bool {
        self.text == text && self.occurrence == occurrence && self.part == part
    }

    /// True where nothing is left to correct, so that it can be dropped.
    pub fn is_empty(&self) -> bool {
        self.ingredient.is_none()
            && self.amount.is_none()
            && self.grams.is_none()
            && self.is_ingredient.is_none()
    }
}

/// More than any kitchen weighs, in grams.
const HEAVIEST: f64 = 1_000_000.0;

/// A weight as typed, in grams: a comma may stand for the point, "g" may follow. Empty is no weight of one's own.
///
/// # Errors
/// A sentence where it is not a number, or no weight for a kitchen.
pub fn read_grams(typed: &str) -> Result<Option<f64>, String> {
    let typed = typed.trim();
    let plain = typed
        .trim_end_matches(['g', 'G'])
        .trim_end()
        .replace(',', ".");
    if plain.is_empty() && typed.is_empty() {
        return Ok(None);
    }
    match decimal(&plain) {
        Some(grams) if grams <= HEAVIEST => Ok(Some(grams)),
        Some(_) => Err(format!(
            "{typed} is no weight for a kitchen: write grams from 0 to 1000000."
        )),
        None => Err(format!(
            "\"{typed}\" is not a weight: write grams, such as 125 or 12.5."
        )),
    }
}

/// What is wrong with an amount as typed, in a sentence; `None` where it can be used, or is empty.
pub fn amount_trouble(typed: &str) -> Option<String> {
    read_amount(typed).err()
}

/// An amount as typed, with its unit: "2 cups", "3", "1 heaped tbsp". Empty is no amount of one's own.
///
/// # Errors
/// A sentence where it is no amount, or more than one.
pub(super) fn read_amount(typed: &str) -> Result<Option<Term>, String> {
    let tidied = tidy::tidy(typed);
    if tidied.is_empty() {
        return Ok(None);
    }
    let lower = tidied.to_ascii_lowercase();
    let all = tokens(&tidied, &lower);
    match term::term(&all, 0, Place::Start) {
        Some(Term {
            fault: Some(fault), ..
        }) => Err(fault),
        Some(term) if term.next == all.len() => Ok(Some(term)),
        _ => Err(format!(
            "\"{}\" is not an amount: write a number and a measure, such as 2 cups, 3 tsp or 250 g.",
            typed.trim()
        )),
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::baking::ingredient::Piece;
    use crate::baking::recipe::{Unit, VolumeUnit};

    #[test]
    fn an_amount_is_a_number_with_or_without_a_measure() {
        let amount = |typed: &str| {
            let term = read_amount(typed).ok().flatten()?;
            Some((term.amounts[0].low, term.amounts[0].unit))
        };
        assert_eq!(
            amount("1½ cups"),
            Some((1.5, Unit::Volume(VolumeUnit::Cup)))
        );
        assert_eq!(amount(" 3 "), Some((3.0, Unit::Piece(Piece::Each))));
        assert_eq!(amount("2 heaped tbsp").map(|found| found.0), Some(2.0));
        assert!(read_amount("  ").is_ok_and(|found| found.is_none()));
        for typed in [
            "cups of",
            "2 cups flour",
            "1/0 cup",
            "-2 g",
            "many",
            "2 cups 3 eggs",
        ] {
            assert!(read_amount(typed).is_err(), "{typed}");
        }
    }

    #[test]
    fn weights_are_read_with_point_or_comma() {
        assert_eq!(read_grams(" 12,5 g"), Ok(Some(12.5)));
        assert_eq!(read_grams(""), Ok(None));
        assert_eq!(read_grams("0"), Ok(Some(0.0)));
        for typed in ["-1", "1e308", "NaN", "some", "g", "1000001"] {
            assert!(read_grams(typed).is_err(), "{typed}");
        }
    }
}
