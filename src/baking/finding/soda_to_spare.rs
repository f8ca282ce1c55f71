//! More soda in the bowl than its acid takes.

use super::VerdictKind;
use super::leavening::GROSS;
use super::{
    Facts, Finding, Severity, acid_verdict, left_over, mend, ph_band, soda_left,
    soda_short::bringers,
};
use crate::baking::quantity::{Equivalents, show};

/// This far above the band it is worth a look; nearer, an old recipe may mean it, and a note will do.
const NOTE_ABOVE: f64 = 0.3;
/// This far above it the cake is likely to fail.
const FAULT_ABOVE: f64 = 1.0;

/// Checks the crumb's pH against the upper end of its band.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let verdict = acid_verdict(facts);
    let (VerdictKind::Spare, Some(bowl)) = (verdict.kind, facts.bowl) else {
        return Vec::new();
    };
    if verdict.title == GROSS {
        return Vec::new();
    }
    let (band, left) = (ph_band(facts.kind), soda_left(facts.kind));
    let above = bowl.ph.mean.value() - band.high;
    let severity = if above > FAULT_ABOVE {
        Severity::Fault
    } else if above > NOTE_ABOVE {
        Severity::Look
    } else {
        Severity::Note
    };
    vec![Finding {
        name: "soda_to_spare",
        severity,
        title: verdict.title,
        sentence: verdict.sentence + &left_over::sentence(facts),
        why: "Soda that meets no acid stays in the crumb: dark, coarse, soapy to taste. A little of it browns and softens, and some old recipes mean it.",
        limit: format!(
            "Crumb pH up to {} for {}. {} Soda left over up to {} % of the flour. {}{}",
            show::ph(band.high),
            facts.kind.words(),
            band.source,
            show::plain(left.spare),
            left.source,
            left_over::SOURCE,
        ),
        lines: bringers(facts, |acid| acid < Equivalents::ZERO),
        remedies: mend::less_soda(facts, bowl),
    }]
}
