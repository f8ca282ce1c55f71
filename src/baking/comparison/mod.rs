//! Bakes held against one another: what one factor does to one outcome, and which bake is worth doing next.
//!
//! Goes in: bakes as they were written down. Comes out: curves with how sure they are, amounts to bake, sentences.

mod next;
mod plan_of_two;

pub use next::{NextBake, ProposedBake, Question, next_bake};
pub use plan_of_two::{Levels, PlannedBake, plan_of_two};
