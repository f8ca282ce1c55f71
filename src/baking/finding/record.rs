//! A finding and what it holds.

use serde::{Deserialize, Serialize};

/// Something a baker should know about this formula.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Finding {
    /// The fault's name; it reads well after "allow": `soda_short`, `pan_overfull`.
    pub name: &'static str,
    /// How grave it is.
    pub severity: Severity,
    /// A few words: "Short of soda".
    pub title: String,
    /// What was found, with the figures, in a sentence or two.
    pub sentence: String,
    /// Why a baker cares.
    pub why: &'static str,
    /// The limit that was applied and where it is from.
    pub limit: String,
    /// The lines that cause it.
    pub lines: Vec<usize>,
    /// What would mend it, each applied with one touch.
    pub remedies: Vec<Remedy>,
}

/// How grave a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Severity {
    /// The cake is likely to fail.
    Fault,
    /// Worth a look before the oven is hot.
    Look,
    /// Good to know.
    Note,
}

/// A change that mends a finding.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Remedy {
    /// The button: "Use 5.2 g soda and 3.8 g powder".
    pub label: String,
    /// What it does and what is to be expected, in a sentence, amounts in spoons too.
    pub sentence: String,
    /// The changes to the baker's inputs.
    pub edits: Vec<Edit>,
}

/// One change to the baker's inputs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Edit {
    /// Line `line` weighs `grams` from now on.
    Weigh {
        /// Counted from 1.
        line: usize,
        /// Which of the line's ingredients, from 0.
        #[serde(default)]
        part: usize,
        /// The new weight.
        grams: f64,
    },
    /// A new line of text below line `line`.
    AddAfter {
        /// Counted from 1; 0 puts it first.
        line: usize,
        /// The new line, which the reader reads like any other.
        text: String,
    },
}
