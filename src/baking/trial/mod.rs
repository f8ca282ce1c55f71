//! A bake, written down: the formula as it was weighed, what was otherwise than planned, what came out; what changed from
//! one bake to the next; and what a measured bake teaches the reckoning.
//!
//! Goes in: a recipe's inputs, what was weighed, and figures as typed. Comes out: figures with a sentence at each that
//! cannot be, changes in grams and per cent, the versions of a recipe as a tree.

mod changes;
mod field;
mod learn;
mod measured;
mod oven_told;
mod record;
mod scale;
mod seen;
mod sheet;
mod tree;

pub use changes::{AmountChange, Changes, OtherChange, changes, version_changes};
pub use field::OutcomeField;
pub use learn::{Lesson, Taught, lessons};
pub use measured::{Measured, OutcomeTrouble, PanDepth, measured};
pub use oven_told::{OvenOff, OvenSaid, oven_ask, oven_off, oven_said};
pub use record::{MOST_PICTURES, Picture, Said, Score, Trial, Weight, line_key};
pub use scale::Scale;
pub use sheet::{TrialFigure, TrialSheet, trial_sheet};
pub use tree::{TreeNode, TreeRow, VersionNode, tree};
