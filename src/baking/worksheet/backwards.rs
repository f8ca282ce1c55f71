//! The leavening worked out from what is wished of it, as it is shown.

use super::gather::with_facts;
use super::{Inputs, Settings};
use crate::baking::ingredient::Own;
use crate::baking::leaven::{Answer, Outcome, leaven};
use crate::baking::quantity::show;
use crate::baking::recipe::Looks;
use serde::Serialize;

/// What leavening a wish comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct LeaveningPlan {
    /// The figures behind it.
    pub answer: Answer,
    /// pH, gas and sodium, before and after.
    pub changes: Vec<Change>,
}

/// A figure before and after.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Change {
    /// What it is.
    pub label: &'static str,
    /// As the recipe stands.
    pub before: String,
    /// As it would be.
    pub after: String,
}

/// Works the leavening out for the wish among the inputs' choices; or says why it cannot, in a sentence.
///
/// It takes some fifty bowls, so it is no part of the worksheet: the page asks for it where it is looked at.
pub fn leavening_plan(
    inputs: &Inputs,
    settings: &Settings,
    own: &Own,
) -> Result<LeaveningPlan, String> {
    with_facts(&mut Looks::default(), inputs, settings, own, |known| {
        let wish = inputs.choices.leavening.wish(&known.facts)?;
        let answer = leaven(&known.facts, &wish)?;
        let changes = changes(&answer.before, &answer.after);
        Ok(LeaveningPlan { answer, changes })
    })
}

fn changes(before: &Outcome, after: &Outcome) -> Vec<Change> {
    let change = |label, of: fn(&Outcome) -> String| Change {
        label,
        before: of(before),
        after: of(after),
    };
    let mut changes = vec![
        change("Crumb pH", |outcome| {
            let [mean, low, high] =
                [outcome.ph.mean, outcome.ph.low, outcome.ph.high].map(|ph| show::ph(ph.value()));
            format!("{mean} ({low} to {high})")
        }),
        change("Gas on flour", |outcome| {
            let [mean, low, high] =
                [outcome.gas.mean, outcome.gas.low, outcome.gas.high].map(show::percent);
            format!("{mean} ({low} to {high})")
        }),
        change("Sodium in 100 g batter", |outcome| {
            show::milligrams(outcome.sodium / 1000.0)
        }),
    ];
    if before.sodium_in_serving.is_some() {
        changes.push(change("Sodium in a serving", |outcome| {
            show::milligrams(outcome.sodium_in_serving.unwrap_or_default() / 1000.0)
        }));
    }
    changes
}
