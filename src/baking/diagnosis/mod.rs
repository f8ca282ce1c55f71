//! Why a cake failed: what was seen on it, weighed against what its own formula, pan, oven and measurements tell.
//!
//! Three tables: `signs.csv` what is seen, `causes.csv` what may be behind it, `likelihoods.csv` which fault tables of
//! textbooks and the trade name which cause for which sign. [`odds`] turns both into chances, by odds and factors (Good 1950,
//! from memory; with several signs it is what is called naive Bayes); [`figures`] reads what the formula's figures and the
//! measurements say of a cause. One fault at a time is supposed; a figure that is not known speaks neither for nor against.

mod diagnose;
mod figures;
mod known;
pub mod odds;
mod remedies;
mod table;

pub use diagnose::{Diagnosis, Evidence, Ranked, SignEvidence, diagnose};
pub use figures::{By, Reading};
pub use known::{Known, Measured, OvenKnown, Seen};
pub use remedies::remedies;
pub use table::{Cause, Figure, Group, Named, Place, Sign, cause, causes, sign, signs};
