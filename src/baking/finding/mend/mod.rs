//! The amounts that mend a leavening fault, as edits to the baker's own lines.
//!
//! The need for base at a pH is linear in the grams, so each amount is a division, not a search. Amounts
//! are rounded to what a small scale shows; the mended formula is judged again like any other.

mod gas;
mod leavener;
mod less_soda;
mod less_sugar;
mod more_soda;

pub use gas::{less_gas, more_gas};
pub(in crate::baking) use leavener::{POWDER, POWDER_KEPT, last_leavener, soda_name};
pub use less_soda::less_soda;
pub use less_sugar::less_sugar;
pub use more_soda::more_soda;
