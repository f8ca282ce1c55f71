//! Acid, soda and gas against the world outside: bowls and stoichiometry worked out beforehand, titrations, measured
//! crumbs, law and trade; and the laws that any bowl keeps.
//!
//! The tables of `tests/engine/` name their sources; "memory" is what nobody looked up again. Where a figure of ours
//! cannot meet one of theirs, the row's last cell says why, and the test asks that it really does not.

#[path = "engine/bowls.rs"]
mod bowls;
#[path = "engine/crumbs.rs"]
mod crumbs;
#[path = "engine/laws.rs"]
mod laws;
#[path = "engine/recipes.rs"]
mod recipes;
#[path = "engine/stoichiometry.rs"]
mod stoichiometry;
#[path = "engine/titrations.rs"]
mod titrations;
#[path = "engine/trade.rs"]
mod trade;
