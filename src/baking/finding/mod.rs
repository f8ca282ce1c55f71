//! What is to be said of a formula: one check a file, and the ordered list of them.
//!
//! A check takes facts and gives findings. It computes nothing that a fact should have told it.
//!
//! To add a check: write its file, declare it here, put it into [`CHECKS`].

mod band;
mod facts;
mod leavening;
mod left_over;
mod mend;
mod outside;
mod record;
mod setting;
mod verdict;

mod acid_hidden;
mod acid_in_foam;
mod acid_outside;
mod aluminium_taste;
mod ammonia_kept;
mod balance_rule;
mod cocoa_confused;
mod colour_shift;
mod crumb_gummy;
mod crumb_low_weak;
mod crumb_soapy;
mod curdled;
mod egg_beyond;
mod fat_beyond;
mod gas_early;
mod gas_excess;
mod gas_short;
mod line_without_weight;
mod liquid_beyond;
mod no_flour;
mod no_leavening;
mod pan_depth_changed;
mod pan_overfull;
mod potassium_weaker;
mod powder_in_acid;
mod salt_beyond;
mod sets_early;
mod sets_late;
mod soda_excess;
mod soda_short;
mod soda_to_spare;
mod soda_too_close;
mod soda_unmet;
mod sodium_much;
mod sugar_beyond;
mod weigh_first;

pub use band::{GasBand, PhBand, SodaLeft, gas_band, gas_band_with, ph_band, soda_left};
pub(in crate::baking) use colour_shift::chance_turned;
pub use facts::Facts;
pub(in crate::baking) use facts::chance_above;
pub(in crate::baking) use leavening::{LIKELY, VERY_LIKELY, is_weak};
pub use leavening::{acid_verdict, gas_verdict};
pub(in crate::baking) use mend::{
    POWDER, POWDER_KEPT, last_leavener, less_gas, less_soda, less_sugar, more_gas, more_soda,
    soda_name,
};
pub(in crate::baking) use outside::{chance_outside, may_judge};
pub(in crate::baking) use pan_overfull::{
    BAKED_OVER, BAKED_SHALLOW, SHALLOW, full, is_guessed, used,
};
pub use record::{Edit, Finding, Remedy, Severity};
pub(in crate::baking) use sets_late::chance_late;
pub use setting::at_words as setting_in_words;
pub use verdict::{Verdict, VerdictKind};

/// A check: facts in, findings out.
type Check = fn(&Facts) -> Vec<Finding>;

/// Every check, in the order in which findings of like severity are shown.
const CHECKS: &[Check] = &[
    line_without_weight::check,
    no_flour::check,
    ammonia_kept::check,
    soda_excess::check,
    soda_short::check,
    soda_to_spare::check,
    soda_too_close::check,
    powder_in_acid::check,
    soda_unmet::check,
    cocoa_confused::check,
    acid_outside::check,
    no_leavening::check,
    gas_short::check,
    gas_excess::check,
    sets_late::check,
    sets_early::check,
    crumb_gummy::check,
    crumb_soapy::check,
    colour_shift::check,
    crumb_low_weak::check,
    acid_in_foam::check,
    gas_early::check,
    curdled::check,
    potassium_weaker::check,
    aluminium_taste::check,
    acid_hidden::check,
    sugar_beyond::check,
    fat_beyond::check,
    egg_beyond::check,
    liquid_beyond::check,
    balance_rule::check,
    salt_beyond::check,
    pan_overfull::check,
    pan_depth_changed::check,
    sodium_much::check,
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
