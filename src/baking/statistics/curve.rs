//! One factor and one outcome: flat, straight or curved.
//!
//! Amounts are centred and scaled before the fit, so that ten bakes between 998 and 1002 g fit as well as ten between
//! -1 and 1.

use super::least_squares::{LeastSquares, least_squares};
use super::scatter::{PureError, Scatter, Usual, mean_and_squares, pure_error};
use super::student::{f_tail, quantile};
use super::{Cannot, all_plain};

/// Against the sum of squares of the outcomes: less than this is rounding.
const ROUNDING: f64 = 1e-27;

/// One amount and what came of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Observation {
    /// How much of the factor.
    pub amount: f64,
    /// What was seen.
    pub outcome: f64,
}

/// How an outcome goes with the amount. The number of its terms is its place plus one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Shape {
    /// The same whatever the amount.
    Flat,
    /// By a straight line.
    Straight,
    /// By a square, which turns once.
    Curved,
}

/// What a fit is told besides the observations.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Asked {
    /// What is known of the scatter beforehand.
    pub usual: Option<Usual>,
    /// Amounts no further apart than this are repeats of one another; not below 0.
    pub alike: f64,
}

/// A curve through observations.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// Its shape.
    pub shape: Shape,
    /// The smallest amount observed.
    pub low: f64,
    /// The largest.
    pub high: f64,
    /// How many observations it rests on.
    pub count: usize,
    /// The sum of squares that the curve leaves.
    pub residual: f64,
    /// Its degrees of freedom.
    pub degrees: usize,
    /// The scatter of repeats, where there are any.
    pub pure: Option<PureError>,
    /// How many amounts there are that are no repeats of one another.
    pub kinds: usize,
    /// What intervals are reckoned with; `None` where nothing tells of the scatter.
    pub scatter: Option<Scatter>,
    /// The part of the sum of squares about the mean that the curve tells, from 0 to 1; `None` where all outcomes are
    /// the same.
    pub told: Option<f64>,
    centre: f64,
    half: f64,
    fit: LeastSquares,
}

/// Two sums of squares held against one another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ratio {
    /// The ratio of their mean squares; infinite where there is no scatter at all.
    pub f: f64,
    /// Degrees of freedom above.
    pub above: f64,
    /// Degrees of freedom below.
    pub below: f64,
    /// The share of cases in which scatter alone makes it as large.
    pub by_chance: f64,
}

/// Fits one shape.
///
/// # Errors
///
/// Without observations, with a number that is not finite, and where there are fewer different amounts than the shape
/// has terms.
pub fn fit(observations: &[Observation], shape: Shape, asked: Asked) -> Result<Curve, Cannot> {
    let kinds = kinds(observations, asked.alike)?;
    let (low, high) = ends(observations);
    let (centre, half) = (
        (low + high) / 2.0,
        ((high - low) / 2.0).max(f64::MIN_POSITIVE),
    );
    let outcomes: Vec<f64> = observations.iter().map(|it| it.outcome).collect();
    let rows: Vec<Vec<f64>> = observations
        .iter()
        .map(|it| powers((it.amount - centre) / half, shape))
        .collect();
    let different = kinds.iter().max().map_or(0, |last| last + 1);
    let fit = (different > shape as usize)
        .then(|| least_squares(&rows, &outcomes))
        .flatten()
        .ok_or(too_few(observations.len(), different))?;
    let residual = above_rounding(fit.residual, &outcomes);
    let (_, about) = mean_and_squares(&outcomes);
    let about = above_rounding(about, &outcomes);
    Ok(Curve {
        shape,
        low,
        high,
        count: observations.len(),
        residual,
        degrees: fit.degrees,
        pure: pure_error(&kinds, &outcomes),
        kinds: different,
        scatter: Scatter::of(residual, fit.degrees, asked.usual),
        told: (about > 0.0).then(|| (1.0 - residual / about).clamp(0.0, 1.0)),
        centre,
        half,
        fit,
    })
}

/// Fits the shape that the observations bear out: curved where the square is needed, else straight where the slope is,
/// else flat. A term is needed where scatter alone would make it count for as much in less than a share `by_chance` of
/// cases (the extra sum of squares; Draper and Smith, Applied Regression Analysis, chapter 6, from memory). Where nothing
/// tells of the scatter no term is borne out.
///
/// # Errors
///
/// As [`fit`] of a flat shape.
pub fn fit_what_is_borne_out(
    observations: &[Observation],
    asked: Asked,
    by_chance: f64,
) -> Result<Curve, Cannot> {
    let flat = fit(observations, Shape::Flat, asked)?;
    let Ok(straight) = fit(observations, Shape::Straight, asked) else {
        return Ok(flat);
    };
    let needed = |less: &Curve, more: &Curve| {
        less.gain(more)
            .is_some_and(|gain| gain.by_chance < by_chance)
    };
    match fit(observations, Shape::Curved, asked) {
        Ok(curved) if needed(&straight, &curved) => Ok(curved),
        _ if needed(&flat, &straight) => Ok(straight),
        _ => Ok(flat),
    }
}

impl Curve {
    /// The curve's outcome at an amount.
    pub fn at(&self, amount: f64) -> f64 {
        self.fit.value(&self.terms(amount))
    }

    /// How far the mean outcome at an amount may lie from the curve, on either side, in a share `sure` of cases; NIST
    /// e-Handbook 4.5.1.2. `None` where nothing tells of the scatter.
    pub fn half_width(&self, amount: f64, sure: f64) -> Option<f64> {
        self.width(&self.terms(amount), sure)
    }

    /// How much the outcome rises for a unit of the factor at an amount, and how far that may be off either way.
    pub fn slope(&self, amount: f64, sure: f64) -> (f64, Option<f64>) {
        let at = (amount - self.centre) / self.half;
        let terms = [0.0, 1.0 / self.half, 2.0 * at / self.half];
        let terms = &terms[..self.terms_count()];
        (self.fit.value(terms), self.width(terms, sure))
    }

    /// The coefficient of the square: below 0 where the curve has a top. 0 unless curved.
    pub fn square(&self) -> f64 {
        let square = self.fit.coefficients.get(2);
        square.map_or(0.0, |it| it / (self.half * self.half))
    }

    /// Where the curve turns; `None` unless it is curved.
    pub fn turn(&self) -> Option<f64> {
        let [_, slope, square] = self.fit.coefficients[..] else {
            return None;
        };
        let turn = self.centre - self.half * slope / (2.0 * square);
        turn.is_finite().then_some(turn)
    }

    /// The coefficients of 1, the amount and its square, each with its standard error (`None` where nothing tells of
    /// the scatter); as many as the shape has terms.
    pub fn coefficients(&self) -> Vec<(f64, Option<f64>)> {
        let (c, h) = (self.centre, self.half);
        let sums = [
            [1.0, -c / h, (c / h).powi(2)],
            [0.0, 1.0 / h, -2.0 * c / (h * h)],
            [0.0, 0.0, 1.0 / (h * h)],
        ];
        let count = self.terms_count();
        sums[..count]
            .iter()
            .map(|sum| {
                let terms = &sum[..count];
                (self.fit.value(terms), self.error(terms))
            })
            .collect()
    }

    /// How much a curve with more terms through the same observations tells that this one does not. `None` where it
    /// has no more terms, or nothing tells of the scatter.
    pub fn gain(&self, more: &Self) -> Option<Ratio> {
        let terms = more.terms_count().checked_sub(self.terms_count())?;
        let scatter = more.scatter?;
        let gained = (self.residual - more.residual).max(0.0);
        ratio(
            gained,
            terms as f64,
            scatter.deviation.powi(2),
            scatter.degrees,
        )
    }

    /// What the curve leaves beyond the scatter of repeats (NIST e-Handbook 4.4.4.6). `None` without repeats, and where
    /// there are no more amounts than terms.
    pub fn lack_of_fit(&self) -> Option<Ratio> {
        let pure = self.pure?;
        let terms = self.degrees.checked_sub(pure.degrees)?;
        let mean = pure.sum / pure.degrees as f64;
        ratio(
            (self.residual - pure.sum).max(0.0),
            terms as f64,
            mean,
            pure.degrees as f64,
        )
    }

    fn terms_count(&self) -> usize {
        self.shape as usize + 1
    }

    fn terms(&self, amount: f64) -> Vec<f64> {
        powers((amount - self.centre) / self.half, self.shape)
    }

    fn error(&self, terms: &[f64]) -> Option<f64> {
        Some(self.scatter?.deviation * self.fit.leverage(terms).sqrt())
    }

    fn width(&self, terms: &[f64], sure: f64) -> Option<f64> {
        Some(quantile(sure, self.scatter?.degrees)? * self.error(terms)?)
    }
}

/// 1, the amount and its square, as many as the shape has.
fn powers(at: f64, shape: Shape) -> Vec<f64> {
    [1.0, at, at * at][..=shape as usize].to_vec()
}

fn ends(observations: &[Observation]) -> (f64, f64) {
    let amounts = observations.iter().map(|it| it.amount);
    let low = amounts.clone().fold(f64::INFINITY, f64::min);
    (low, amounts.fold(f64::NEG_INFINITY, f64::max))
}

/// For each observation which amount it is of, counted from the smallest up; amounts alike have one number.
fn kinds(observations: &[Observation], alike: f64) -> Result<Vec<usize>, Cannot> {
    if observations.is_empty() {
        return Err(Cannot::Nothing);
    }
    let numbers = observations.iter().flat_map(|it| [it.amount, it.outcome]);
    if !(all_plain(numbers) && alike >= 0.0) {
        return Err(Cannot::NotFinite);
    }
    let mut order: Vec<usize> = (0..observations.len()).collect();
    order.sort_by(|a, b| observations[*a].amount.total_cmp(&observations[*b].amount));
    let mut kinds = vec![0; order.len()];
    let (mut kind, mut first) = (0, observations[order[0]].amount);
    for place in order {
        let amount = observations[place].amount;
        if amount - first > alike {
            (kind, first) = (kind + 1, amount);
        }
        kinds[place] = kind;
    }
    Ok(kinds)
}

fn too_few(count: usize, different: usize) -> Cannot {
    match (count, different) {
        (1, _) => Cannot::Single,
        (_, 1) => Cannot::SameAmount,
        _ => Cannot::NotApart,
    }
}

/// A sum of squares, or 0 where it is no more than rounding of the outcomes.
fn above_rounding(sum: f64, outcomes: &[f64]) -> f64 {
    let whole: f64 = outcomes.iter().map(|it| it * it).sum();
    if sum > ROUNDING * whole { sum } else { 0.0 }
}

/// A sum of squares with so many degrees of freedom against a mean square; `None` where either has none.
fn ratio(sum: f64, above: f64, mean: f64, below: f64) -> Option<Ratio> {
    let f = if sum > 0.0 { sum / above / mean } else { 0.0 };
    let by_chance = f_tail(f, above, below)?;
    Some(Ratio {
        f,
        above,
        below,
        by_chance,
    })
}
