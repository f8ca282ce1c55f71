//! Far more soda than practice bears.

use super::leavening::GROSS;
use super::soda_short::bringers;
use super::{Facts, Finding, Severity, acid_verdict, left_over, mend, soda_left};
use crate::baking::quantity::{Equivalents, show};

/// Checks the soda that is left against its gross limit.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let verdict = acid_verdict(facts);
    let Some(bowl) = facts.bowl.filter(|_| verdict.title == GROSS) else {
        return Vec::new();
    };
    let left = soda_left(facts.kind);
    vec![Finding {
        name: "soda_excess",
        severity: Severity::Fault,
        title: verdict.title,
        sentence: verdict.sentence + &left_over::sentence(facts),
        why: "So much soda stays in the crumb: yellow or dark, coarse, soapy and bitter. A tablespoon may have been read for a teaspoon.",
        limit: format!(
            "At most {} % of the flour in {}. {}{}",
            show::plain(left.gross),
            facts.kind.words(),
            left.source,
            left_over::SOURCE,
        ),
        lines: bringers(facts, |acid| acid < Equivalents::ZERO),
        remedies: mend::less_soda(facts, bowl),
    }]
}
