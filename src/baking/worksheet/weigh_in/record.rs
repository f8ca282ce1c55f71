//! A weigh-in under way, as it is kept: what is in the bowls, and by how much everything is weighed larger.

use crate::baking::quantity::{Mass, show};
use crate::baking::recipe::read_grams;
use crate::baking::worksheet::{Inputs, LinePart, LineWords};
use serde::{Deserialize, Serialize};

/// A weigh-in of one recipe.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct WeighIn {
    /// When its first weight was ticked, in milliseconds since 1970; 0 before that.
    pub began: u64,
    /// What is in the bowls, in the order in which it was put there.
    pub put_in: Vec<PutIn>,
    /// By how much everything is weighed larger than planned, since something was; `None` is as planned.
    pub grown: Option<f64>,
    /// Whether the baker zeroes the scale at each weight.
    pub zeroed: bool,
    /// Lines of the method that are done, by their words.
    pub steps: Vec<LineWords>,
}

/// Something that is in a bowl.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct PutIn {
    /// Which ingredient of the text.
    pub line: LineWords,
    /// Its name at that time, for a line that the text has no more.
    pub name: String,
    /// How much of it, g.
    pub grams: f64,
}

/// The least and the most that everything may be grown by.
const GROWTH: std::ops::RangeInclusive<f64> = 0.05..=20.0;
/// More of one thing than any bench weighs, g.
pub(super) const MOST: f64 = 1_000_000.0;

impl WeighIn {
    /// Whether nothing is weighed or done yet.
    pub fn is_untouched(&self) -> bool {
        self.put_in.is_empty() && self.steps.is_empty()
    }

    /// By how much everything is weighed larger than planned.
    pub fn growth(&self) -> f64 {
        let grown = self.grown.filter(|grown| GROWTH.contains(grown));
        grown.unwrap_or(1.0)
    }

    /// How much of it is in, g; `None` for what is not weighed yet.
    pub fn grams_of(&self, line: &LineWords) -> Option<f64> {
        let found = self.put_in.iter().find(|it| it.line == *line)?;
        (0.0..=MOST).contains(&found.grams).then_some(found.grams)
    }

    /// Says how much of an ingredient is in the bowl, in the place of what was said before.
    pub fn put(&mut self, line: LineWords, name: &str, grams: f64) {
        self.put_in.retain(|it| it.line != line);
        self.put_in.push(PutIn {
            line,
            name: name.to_owned(),
            grams,
        });
    }

    /// Takes back that an ingredient is in.
    pub fn take_out(&mut self, line: &LineWords) {
        self.put_in.retain(|it| it.line != *line);
        if self.put_in.is_empty() {
            self.grown = None;
        }
    }

    /// Says that a line of the method is done, or that it is not.
    pub fn turn_step(&mut self, line: LineWords) {
        match self.steps.iter().position(|it| *it == line) {
            Some(at) => {
                self.steps.remove(at);
            }
            None => self.steps.push(line),
        }
    }

    /// Grows everything, so that `grams` of a thing are just right where `planned` were planned. False where that is
    /// beyond what one bakes.
    pub fn grow(&mut self, grams: f64, planned: f64) -> bool {
        let grown = grams / planned;
        let is_so = planned > 0.0 && GROWTH.contains(&grown);
        if is_so {
            self.grown = Some(grown).filter(|grown| (grown - 1.0).abs() > 1e-9);
        }
        is_so
    }
}

impl Inputs {
    /// The recipe as it lies in the bowls: each of these ingredients told as weighed, in grams of a batch that is so many
    /// times the recipe.
    pub fn as_weighed(&self, weighed: &[(LinePart, f64)], times: f64) -> Self {
        let mut inputs = self.clone();
        for (place, grams) in weighed {
            inputs.weigh(*place, Some(grams / times));
        }
        inputs
    }
}

/// The grams of an ingredient that a person typed; `before` is what the scale showed already, 0 where it was zeroed.
/// `None` where nothing is typed.
///
/// # Errors
/// A sentence where it is no weight, or less than the scale showed already.
pub fn grams_typed(typed: &str, before: f64) -> Result<Option<f64>, String> {
    let Some(shown) = read_grams(typed)? else {
        return Ok(None);
    };
    let grams = shown - before;
    if grams < 0.0 {
        return Err(format!(
            "The scale showed {} before it, so this is less than nothing. Type what it shows now, with all that is in the bowl.",
            show::mass(Mass::grams(before))
        ));
    }
    Ok(Some(grams))
}
