//! Two factors and one outcome by a surface of the second order: both amounts, their squares and their product.
//!
//! Box and Wilson 1951; NIST e-Handbook 5.5.3.3 for the point at which it is level.

use super::Cannot;
use super::design::Coded;
use super::least_squares::{LeastSquares, least_squares};
use super::scatter::{PureError, Scatter, Usual, pure_error};
use super::student::quantile;

/// What the surface is at the point at which it is level.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Level {
    /// Lower in every direction.
    Top,
    /// Higher in every direction.
    Bottom,
    /// Higher in some directions, lower in others.
    Saddle,
}

/// A surface through observations.
#[derive(Clone, Debug, PartialEq)]
pub struct Surface {
    /// Of 1, the first amount, the second, the first's square, the second's square and the product, coded.
    pub coefficients: [f64; 6],
    /// The sum of squares that it leaves.
    pub residual: f64,
    /// Its degrees of freedom.
    pub degrees: usize,
    /// The scatter of repeats, where there are any.
    pub pure: Option<PureError>,
    /// What intervals are reckoned with; `None` where nothing tells of the scatter.
    pub scatter: Option<Scatter>,
    fit: LeastSquares,
}

/// Fits a surface to coded amounts and their outcomes.
///
/// # Errors
///
/// Where the six terms cannot be told apart: that takes six different runs at least, three amounts of each factor among
/// them. Where a number is not finite.
pub fn fit(runs: &[(Coded, f64)], usual: Option<Usual>) -> Result<Surface, Cannot> {
    let rows: Vec<Vec<f64>> = runs.iter().map(|(at, _)| terms(*at).to_vec()).collect();
    let outcomes: Vec<f64> = runs.iter().map(|(_, outcome)| *outcome).collect();
    let fit = least_squares(&rows, &outcomes).ok_or(Cannot::NotApart)?;
    let kinds: Vec<Coded> = runs.iter().map(|(at, _)| *at).collect();
    Ok(Surface {
        coefficients: std::array::from_fn(|term| fit.coefficients[term]),
        residual: fit.residual,
        degrees: fit.degrees,
        pure: pure_error(&kinds, &outcomes),
        scatter: Scatter::of(fit.residual, fit.degrees, usual),
        fit,
    })
}

impl Surface {
    /// The outcome at coded amounts.
    pub fn at(&self, coded: Coded) -> f64 {
        self.fit.value(&terms(coded))
    }

    /// How far the mean outcome there may lie from that on either side, in a share `sure` of cases.
    pub fn half_width(&self, coded: Coded, sure: f64) -> Option<f64> {
        let scatter = self.scatter?;
        let error = scatter.deviation * self.fit.leverage(&terms(coded)).sqrt();
        Some(quantile(sure, scatter.degrees)? * error)
    }

    /// The standard error of each coefficient; `None` where nothing tells of the scatter.
    pub fn errors(&self) -> Option<[f64; 6]> {
        let deviation = self.scatter?.deviation;
        Some(std::array::from_fn(|term| {
            deviation * self.fit.inverse[term][term].sqrt()
        }))
    }

    /// Where the surface is level, in coded units, and what it is there. `None` where it is level along a whole line, or
    /// nowhere.
    pub fn level(&self) -> Option<(Coded, Level)> {
        let [_, b1, b2, b11, b22, b12] = self.coefficients;
        let bend = 4.0 * b11 * b22 - b12 * b12;
        let at = [
            (b12 * b2 - 2.0 * b22 * b1) / bend,
            (b12 * b1 - 2.0 * b11 * b2) / bend,
        ];
        let kind = match (bend > 0.0, b11 < 0.0) {
            (false, _) => Level::Saddle,
            (true, true) => Level::Top,
            (true, false) => Level::Bottom,
        };
        at.iter().all(|it| it.is_finite()).then_some((at, kind))
    }
}

fn terms([first, second]: Coded) -> [f64; 6] {
    [
        1.0,
        first,
        second,
        first * first,
        second * second,
        first * second,
    ]
}
