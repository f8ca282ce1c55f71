//! How a weight was got.

use crate::baking::source::Cited;

/// The way from a line's words to its grams.
#[derive(Clone, Debug, PartialEq)]
pub struct How {
    /// In one sentence, with the figures used.
    pub sentence: String,
    /// Where the figure is from; `None` where the recipe or the baker gave the weight.
    pub cited: Option<Cited>,
    /// What other sources say of the same measure, in a sentence; empty where none does.
    pub others: String,
}
