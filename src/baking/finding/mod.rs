//! What is to be said of a formula: one check a file, and the ordered list of them.
//!
//! A check takes facts and gives findings. It computes nothing that a fact should have told it.

mod record;

pub use record::{Edit, Finding, Remedy, Severity};
