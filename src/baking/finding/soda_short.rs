//! More acid in the bowl than its soda answers.

use super::VerdictKind;
use super::leavening::is_weak;
use super::{Facts, Finding, Severity, acid_verdict, mend, ph_band};
use crate::baking::chemistry::{Part, SODA_MMOL_PER_GRAM};
use crate::baking::quantity::{Equivalents, Mass, show};

/// This far below the band a cake is likely to fail; nearer, a tart cake may be meant.
const FAULT_BELOW: f64 = 0.4;

/// Checks the crumb's pH against the lower end of its band.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let verdict = acid_verdict(facts);
    let (VerdictKind::Short, Some(bowl)) = (verdict.kind, facts.bowl) else {
        return Vec::new();
    };
    let band = ph_band(facts.kind);
    let grave = bowl.ph.mean.value() < band.low - FAULT_BELOW;
    let missing =
        Mass::grams(bowl.missing(band.aim_from_below).to_milliequivalents() / SODA_MMOL_PER_GRAM);
    let weak = is_weak(facts);
    let remedies = mend::more_soda(facts, bowl);
    let mut sentence = format!(
        "{} {} of soda are missing to pH {}.",
        verdict.sentence,
        show::mass(missing),
        show::ph(band.aim_from_below)
    );
    if remedies.is_empty() && facts.flour().is_some() {
        sentence.push_str(" No amount of soda mends this within what the flour can hold as gas: use much less of the sour ingredient.");
    }
    if weak {
        sentence.push_str(" This is weak evidence: layer cakes on powder alone are reckoned 0.4 to 0.7 below the textbook bands, and either may be off.");
    }
    vec![Finding {
        name: "soda_short",
        severity: if weak {
            Severity::Note
        } else if grave {
            Severity::Fault
        } else {
            Severity::Look
        },
        title: verdict.title,
        sentence,
        why: "Strong acid spends the powder's soda while the batter is still cold and sets protein early: the cake bakes dense and wet. A tart cake may want a little of it.",
        limit: format!(
            "Crumb pH from {} for {}. {}",
            show::ph(band.low),
            facts.kind.words(),
            band.source
        ),
        lines: bringers(facts, |acid| acid > Equivalents::ZERO),
        remedies,
    }]
}

/// The lines that bring at least a tenth of what counts, the largest first.
pub fn bringers(facts: &Facts, counts: impl Fn(Equivalents) -> bool) -> Vec<usize> {
    let Some(bowl) = facts.bowl else {
        return Vec::new();
    };
    let share = |part: &Part| {
        if counts(part.acid.mean) {
            part.acid.mean.to_milliequivalents().abs()
        } else {
            0.0
        }
    };
    let total: f64 = bowl.parts.iter().map(share).sum();
    bowl.parts_by(&share)
        .into_iter()
        .filter(|part| share(part) >= 0.1 * total && share(part) > 0.0)
        .map(|part| part.line)
        .collect()
}
