//! Where on a curve the best amount lies, and how sure that is.
//!
//! The amounts that cannot be told from the best one are those at which a test of the curve says nothing against it: of
//! its slope being 0 there, or of its outcome being the one wanted. For a straight line and for the turn of a square this
//! is Fieller's interval (Fieller 1954; NIST e-Handbook 2.3.6.7 has it for a line); unlike an interval of so many
//! standard errors it holds for few observations, and says so where it has no end. What is looked at is the range of
//! amounts that were observed and nothing beyond.

use super::curve::{Curve, Shape};

/// What is wanted of the outcome.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Wish {
    /// As large as can be.
    Largest,
    /// As small as can be.
    Smallest,
    /// As near to this as can be.
    Nearest(f64),
}

/// The best amount of those between the smallest and the largest observed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Best {
    /// The amount.
    pub amount: f64,
    /// A second amount at which the curve comes to the outcome wanted.
    pub other: Option<f64>,
    /// The curve's outcome at the first.
    pub outcome: f64,
    /// No amount below this is as good, as far as can be told; `None` where the smallest amount observed may be as good,
    /// so that smaller ones may be too.
    pub low: Option<f64>,
    /// No amount above this is as good; `None` where larger ones than were observed may be.
    pub high: Option<f64>,
    /// Whether the curve meets what is wanted: turns within the range, or comes to the outcome wanted.
    pub met: bool,
}

/// Into how many steps the way to an end is cut before a bound is looked for between two of them.
const STEPS: usize = 400;
/// How often a step is halved.
const HALVINGS: usize = 40;

/// The best amount, with the bounds that hold in a share `sure` of cases. `None` for a flat curve, where no amount is
/// better than another; bounds are `None` where nothing tells of the scatter.
pub fn best(curve: &Curve, wish: Wish, sure: f64) -> Option<Best> {
    if curve.shape == Shape::Flat {
        return None;
    }
    let (amount, other, met) = match wish {
        Wish::Nearest(outcome) => nearest(curve, outcome),
        Wish::Largest => extreme(curve, 1.0),
        Wish::Smallest => extreme(curve, -1.0),
    };
    let may_be = |at: f64| as_good(curve, wish, at, sure);
    Some(Best {
        amount,
        other,
        outcome: curve.at(amount),
        low: bound(amount, curve.low, may_be),
        high: bound(amount, curve.high, may_be),
        met,
    })
}

/// The amount at which the curve is highest (`up` 1) or lowest (-1), and whether it turns there.
fn extreme(curve: &Curve, up: f64) -> (f64, Option<f64>, bool) {
    let within = |turn: &f64| (curve.low..=curve.high).contains(turn) && up * curve.square() < 0.0;
    if let Some(turn) = curve.turn().filter(within) {
        return (turn, None, true);
    }
    let higher = up * curve.at(curve.high) > up * curve.at(curve.low);
    (if higher { curve.high } else { curve.low }, None, false)
}

/// The amounts at which the curve comes to an outcome, that nearest to the middle of the range first; where there are
/// none, the one at which it comes nearest.
fn nearest(curve: &Curve, outcome: f64) -> (f64, Option<f64>, bool) {
    let over = |at: f64| curve.at(at) - outcome;
    let middle = (curve.low + curve.high) / 2.0;
    let mut met = crossings(curve, over);
    met.sort_by(|a, b| f64::total_cmp(&(a - middle).abs(), &(b - middle).abs()));
    if let [first, ref rest @ ..] = met[..] {
        return (first, rest.first().copied(), true);
    }
    let turn = curve
        .turn()
        .filter(|turn| (curve.low..=curve.high).contains(turn));
    let closest = [curve.low, curve.high]
        .into_iter()
        .chain(turn)
        .min_by(|a, b| f64::total_cmp(&over(*a).abs(), &over(*b).abs()));
    (closest.unwrap_or(curve.low), None, false)
}

/// Where something of the curve goes through 0 within the range: at most two amounts, for it turns once at most.
fn crossings(curve: &Curve, over: impl Fn(f64) -> f64) -> Vec<f64> {
    let turn = curve
        .turn()
        .unwrap_or(curve.low)
        .clamp(curve.low, curve.high);
    let parts = [(curve.low, turn), (turn, curve.high)].into_iter();
    let mut found: Vec<f64> = parts
        .filter(|(from, to)| over(*from) * over(*to) <= 0.0 && from < to)
        .map(|(from, to)| change(from, to, |at| over(at) * over(from) > 0.0))
        .collect();
    found.dedup();
    found
}

/// Whether nothing says against an amount being the best.
fn as_good(curve: &Curve, wish: Wish, at: f64, sure: f64) -> bool {
    let off = |value: f64, width: Option<f64>| value.abs() > width.unwrap_or(f64::INFINITY);
    match wish {
        Wish::Nearest(outcome) => !off(curve.at(at) - outcome, curve.half_width(at, sure)),
        Wish::Largest | Wish::Smallest => {
            let (slope, width) = curve.slope(at, sure);
            !off(slope, width)
        }
    }
}

/// How far from the best amount towards an end nothing says against the amounts; `None` where that goes on to the end.
fn bound(best: f64, end: f64, may_be: impl Fn(f64) -> bool) -> Option<f64> {
    let at = |step: usize| best + (end - best) * step as f64 / STEPS as f64;
    let step = (1..=STEPS).find(|step| best != end && !may_be(at(*step)))?;
    Some(change(at(step - 1), at(step), may_be))
}

/// Where between two amounts something stops being so.
fn change(mut so: f64, mut no_more: f64, is_so: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..HALVINGS {
        let middle = (so + no_more) / 2.0;
        if is_so(middle) {
            so = middle;
        } else {
            no_more = middle;
        }
    }
    (so + no_more) / 2.0
}
