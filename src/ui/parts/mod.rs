//! The parts that pages are made of, in the order in which they stand on the ticket.

mod acid_shares;
mod allergens;
mod banners;
mod findings;
mod gas_rule;
mod leavening;
mod mend;
mod method;
mod navigation;
mod pan_drawing;
mod pan_form;
mod pans;
mod percentages;
mod ph_rule;
mod recipe_text;
mod row;
mod row_details;
mod section;
mod sources;
mod spoken;
mod verdict_strip;
mod weights;

pub use allergens::Allergens;
pub use banners::Banners;
pub use findings::Findings;
pub use leavening::Leavening;
pub use method::Method;
pub use navigation::Navigation;
pub use pans::Pans;
pub use percentages::Percentages;
pub use recipe_text::RecipeText;
pub use sources::Sources;
pub use spoken::Spoken;
pub use verdict_strip::VerdictStrip;
pub use weights::Weights;
