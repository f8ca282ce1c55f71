//! What is to be said of a formula: one check a file, and the ordered list of them.
//!
//! A check takes facts and gives findings. It computes nothing that a fact should have told it.
//!
//! To add a check: write its file, declare it here, put it into [`CHECKS`].

mod band;
mod facts;
mod leavening;
mod mend;
mod record;
mod verdict;

mod acid_hidden;
mod gas_excess;
mod gas_short;
mod line_without_weight;
mod no_flour;
mod pan_depth_changed;
mod pan_overfull;
mod soda_short;
mod soda_to_spare;
mod soda_too_close;
mod weigh_first;

pub use band::{GasBand, PhBand, gas_band, ph_band};
pub use facts::Facts;
pub use leavening::{acid_verdict, gas_verdict};
pub(in crate::baking) use mend::{POWDER, POWDER_KEPT, last_leavener, soda_name};
pub use record::{Edit, Finding, Remedy, Severity};
pub use verdict::{Verdict, VerdictKind};

/// A check: facts in, findings out.
type Check = fn(&Facts) -> Vec<Finding>;

/// Every check, in the order in which findings of like severity are shown.
const CHECKS: &[Check] = &[
    line_without_weight::check,
    no_flour::check,
    soda_short::check,
    soda_to_spare::check,
    soda_too_close::check,
    gas_short::check,
    gas_excess::check,
    acid_hidden::check,
    pan_overfull::check,
    pan_depth_changed::check,
    weigh_first::check,
];

/// All findings of a formula, gravest first.
pub fn findings(facts: &Facts) -> Vec<Finding> {
    let found: Vec<Finding> = CHECKS.iter().flat_map(|check| check(facts)).collect();
    [Severity::Fault, Severity::Look, Severity::Note]
        .into_iter()
        .flat_map(|severity| {
            found
                .iter()
                .filter(move |finding| finding.severity == severity)
        })
        .cloned()
        .collect()
}
