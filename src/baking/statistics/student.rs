//! Student's t and Fisher's F, by the incomplete beta function.

use puruspe::{betai, invbetai};

/// The t that a share `sure` of cases lies within, on both sides of 0: 0.9 gives the 5 and 95 % points.
///
/// `degrees` of freedom need not be whole. `None` unless 0.5 <= `sure` < 1 and `degrees` > 0. NIST e-Handbook 1.3.6.7.2
/// has the table.
pub fn quantile(sure: f64, degrees: f64) -> Option<f64> {
    if !((0.5..1.0).contains(&sure) && degrees > 0.0 && degrees.is_finite()) {
        return None;
    }
    let x = invbetai(1.0 - sure, degrees / 2.0, 0.5);
    let t = (degrees * (1.0 - x) / x).sqrt();
    t.is_finite().then_some(t)
}

/// The share of cases in which F is at least `ratio` where nothing but scatter is at work; 0 for an infinite ratio.
///
/// `None` for a ratio below 0 or not a number, or for degrees of freedom that are not above 0. NIST e-Handbook 1.3.6.7.3
/// has the table.
pub fn f_tail(ratio: f64, above: f64, below: f64) -> Option<f64> {
    if !(ratio >= 0.0 && above > 0.0 && below > 0.0) {
        return None;
    }
    if ratio.is_infinite() {
        return Some(0.0);
    }
    let x = below / (below + above * ratio);
    x.is_finite().then(|| betai(below / 2.0, above / 2.0, x))
}
