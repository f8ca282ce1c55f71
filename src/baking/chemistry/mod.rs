//! Facts of acid, soda and gas, from what is in the bowl.
//!
//! Every ingredient is a charge curve: its known acids enter by their constants, whatever else
//! buffers as a slope around its own pH. The base that it takes up to reach a pH is linear in its
//! grams, so who brings what, and how sure each is, is told by sums of curves. The pH itself is where the charges
//! of all that is in the water balance ([`solution`]), followed from the bench through the oven to the crumb
//! ([`course`]) while leavening acids wake up ([`release`]) and gas leaves. Soda for which
//! there is too little water stays solid and out of the pH.
//!
//! Goes in: a formula. Comes out: [`Bowl`], with no opinion of it.

mod acid;
mod bowl;
mod carbonate;
mod charge;
mod contribution;
pub mod course;
mod dissolving;
mod leavening;
pub mod release;
mod settling;
pub mod solution;

pub use acid::Protons;
pub use bowl::{Bowl, Gas, METER, Part, bowl};
pub use carbonate::kept;
pub use charge::Curve;
pub use contribution::base_missing;
pub use leavening::{
    CARBON_DIOXIDE_GRAMS_PER_MMOL, SODA_MMOL_PER_GRAM, bicarbonate, leavening_uptake_deviation,
};

/// The ionic strength at which constants are taken, mol per kg of the batter's water.
///
/// Salt 1.5 %, powder 5 % and milk on 125 g water per 100 g flour give 0.2 to 0.6; the constants move
/// by less than 0.03 pH over that range (worked out from the Davies equation).
pub const IONIC_STRENGTH: f64 = 0.25;

/// The pH to which acid and base are counted in milliequivalents.
pub const NEUTRAL: f64 = 7.0;
