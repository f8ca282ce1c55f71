//! How far outcomes differ where nothing was changed.

use super::student::quantile;

/// The sum of squares of repeats about the mean of their kind, with its degrees of freedom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PureError {
    /// The sum of squares.
    pub sum: f64,
    /// Observations less kinds.
    pub degrees: usize,
}

/// What is known of the scatter beforehand: a standard deviation, and how many degrees of freedom it is worth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Usual {
    /// The standard deviation of one outcome; above 0.
    pub deviation: f64,
    /// How much it counts, in degrees of freedom; above 0.
    pub worth: f64,
}

/// The scatter that all intervals are reckoned with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scatter {
    /// The standard deviation of one outcome.
    pub deviation: f64,
    /// Its degrees of freedom.
    pub degrees: f64,
    /// The part of these that is the usual scatter's, from 0 to 1.
    pub usual: f64,
}

impl Scatter {
    /// From a sum of squares, the usual scatter standing beside it as so many more degrees of freedom: the posterior of
    /// a variance with a conjugate prior (Gelman and others, Bayesian Data Analysis, 3.2 and 14.2; from memory).
    ///
    /// `None` where neither gives a degree of freedom.
    pub fn of(sum: f64, degrees: usize, usual: Option<Usual>) -> Option<Self> {
        let (square, worth) = usual.map_or((0.0, 0.0), |it| (it.deviation.powi(2), it.worth));
        let all = degrees as f64 + worth;
        (all > 0.0).then(|| Self {
            deviation: ((sum + worth * square) / all).sqrt(),
            degrees: all,
            usual: worth / all,
        })
    }

    /// The difference of two means, of so many observations each, that scatter alone stays below in a share `sure` of
    /// cases (NIST e-Handbook 7.3.1). `None` where `sure` is not from 0.5 to below 1, or a count is 0.
    pub fn least_difference(&self, sure: f64, one: usize, other: usize) -> Option<f64> {
        let per = |count: usize| (count > 0).then(|| 1.0 / count as f64);
        let width = (per(one)? + per(other)?).sqrt();
        Some(quantile(sure, self.degrees)? * self.deviation * width)
    }
}

/// The scatter of repeats: `kinds` tells for each outcome what it is a repeat of. `None` where nothing was repeated.
///
/// NIST e-Handbook 4.4.4.6.
pub fn pure_error<K: PartialEq>(kinds: &[K], outcomes: &[f64]) -> Option<PureError> {
    let mut sum = 0.0;
    let mut degrees = 0;
    for (place, kind) in kinds.iter().enumerate() {
        if kinds[..place].contains(kind) {
            continue;
        }
        let alike = kinds.iter().zip(outcomes).filter(|(it, _)| *it == kind);
        let alike: Vec<f64> = alike.map(|(_, outcome)| *outcome).collect();
        let (_, about) = mean_and_squares(&alike);
        sum += about;
        degrees += alike.len() - 1;
    }
    (degrees > 0).then_some(PureError { sum, degrees })
}

/// The mean, and the sum of squares about it; 0 of nothing.
pub fn mean_and_squares(values: &[f64]) -> (f64, f64) {
    let mean = values.iter().sum::<f64>() / values.len().max(1) as f64;
    (mean, values.iter().map(|it| (it - mean).powi(2)).sum())
}
