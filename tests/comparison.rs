//! Bakes held against one another: the next one worth doing, and what the answers come to.

#[path = "comparison/simulated.rs"]
mod simulated;
