//! Least squares, its scatter and its designs: published examples, another program's fits, and laws.

#[path = "statistics/laws.rs"]
mod laws;
#[path = "statistics/published.rs"]
mod published;
#[path = "statistics/reference.rs"]
mod reference;

use batterwright::baking::statistics::curve::Observation;

fn observations(amounts: &[f64], outcomes: &[f64]) -> Vec<Observation> {
    assert_eq!(amounts.len(), outcomes.len());
    let pairs = amounts.iter().zip(outcomes);
    pairs
        .map(|(amount, outcome)| Observation {
            amount: *amount,
            outcome: *outcome,
        })
        .collect()
}

/// As near as a part `apart` of the value wanted.
#[track_caller]
fn near(found: f64, wanted: f64, apart: f64) {
    assert!(
        (found - wanted).abs() <= apart * wanted.abs(),
        "{found:e}, not {wanted:e}"
    );
}
