//! Baker's ammonia in goods that keep it.

use super::{Facts, Finding, Severity};
use crate::baking::balance::Kind;

/// Names it in anything that is not a cookie.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let lines = facts.ammonia();
    if lines.is_empty() || facts.kind == Kind::Cookie {
        return Vec::new();
    }
    vec![Finding {
        name: "ammonia_kept",
        severity: Severity::Fault,
        title: "Ammonia stays in a cake".into(),
        sentence: "Baker's ammonia is for thin, dry biscuits. A moist crumb holds the ammonia: take baking powder.".into(),
        why: "Ammonia dissolves in water and leaves only where the goods bake dry. It smells and tastes sharp.",
        limit: "None outside thin, dry goods: common practice, no source.".into(),
        lines,
        remedies: Vec::new(),
    }]
}
