//! Bakes held against one another: what one factor does to one outcome, and which bake is worth doing next.
//!
//! Goes in: bakes as they were written down. Comes out: curves with how sure they are, amounts to bake, sentences. The
//! weights that a bake was written down with are taken as they are; no worksheet is made, so that hundreds of bakes are
//! compared at once.

mod answer;
mod beside;
mod factor;
mod moved;
mod next;
mod outcome;
mod plan_of_two;
mod table;

pub use answer::{Answer, Point, answer, observed};
pub use beside::{OutcomeRow, beside};
pub use factor::{Factor, FactorChoice, Part, factor_choices};
pub use moved::{as_planned, make_small, moved, reckoned_best};
pub use next::{NextBake, ProposedBake, Question, next_bake};
pub use outcome::Outcome;
pub use plan_of_two::{Levels, PlannedBake, ToldOfTwo, arms_of_two, plan_of_two, told_of_two};
