//! A figure with its spread.

use super::quantity::Quantity;
use serde::{Deserialize, Serialize};

/// How many standard deviations lie between the mean and the 5 % (or 95 %) point of a normal spread.
pub const NORMAL_95: f64 = 1.645;

/// A quantity that is not known exactly: its mean, and the range that holds nine cases in ten.
///
/// The two halves of the range may differ: a cup of flour is more often too full than too empty.
/// Sums of estimates add the halves as independent errors do, by the root of the sum of squares.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Estimate<Q> {
    /// The mean.
    pub mean: Q,
    /// One case in twenty lies below this.
    pub low: Q,
    /// One case in twenty lies above this.
    pub high: Q,
}

impl<Q: Quantity> Estimate<Q> {
    /// A figure known exactly.
    pub fn exact(value: Q) -> Self {
        Self {
            mean: value,
            low: value,
            high: value,
        }
    }

    /// A mean with its 5 % and 95 % points. They are put in order if they are not.
    pub fn between(low: Q, mean: Q, high: Q) -> Self {
        let (a, b, c) = (low.base(), mean.base(), high.base());
        Self {
            mean,
            low: Q::from_base(a.min(b).min(c)),
            high: Q::from_base(c.max(b).max(a)),
        }
    }

    /// A mean with a standard deviation, both in the base unit, and a normal spread.
    pub fn normal(mean: f64, deviation: f64) -> Self {
        let half = NORMAL_95 * deviation;
        Self::between(
            Q::from_base(mean - half),
            Q::from_base(mean),
            Q::from_base(mean + half),
        )
    }

    /// A mean with independent relative errors, each given as its parts below and above. Nothing falls below zero.
    pub fn apart(mean: Q, errors: &[(f64, f64)]) -> Self {
        let root = |part: fn(&(f64, f64)) -> f64| {
            errors
                .iter()
                .map(|error| part(error).powi(2))
                .sum::<f64>()
                .sqrt()
        };
        let (below, above) = (root(|error| error.0), root(|error| error.1));
        let base = mean.base();
        Self::between(
            Q::from_base(base * (1.0 - below).max(0.0)),
            mean,
            Q::from_base(base * (1.0 + above)),
        )
    }

    /// The standard deviation of a normal spread with the same range, in the base unit.
    pub fn deviation(&self) -> f64 {
        (self.high.base() - self.low.base()) / (2.0 * NORMAL_95)
    }

    /// The standard deviation as a fraction of the mean; zero for a mean of zero.
    pub fn relative_deviation(&self) -> f64 {
        if self.mean.base() == 0.0 {
            0.0
        } else {
            self.deviation() / self.mean.base().abs()
        }
    }

    /// So many times as much, spread included.
    pub fn times(&self, factor: f64) -> Self {
        Self::between(
            Q::from_base(self.low.base() * factor),
            Q::from_base(self.mean.base() * factor),
            Q::from_base(self.high.base() * factor),
        )
    }

    /// The same with every point passed through a function that never turns back on itself.
    pub fn map<R: Quantity>(&self, function: impl Fn(Q) -> R) -> Estimate<R> {
        Estimate::between(function(self.low), function(self.mean), function(self.high))
    }

    /// The sum of independent estimates.
    pub fn sum<'a>(items: impl IntoIterator<Item = &'a Self>) -> Self
    where
        Q: 'a,
    {
        let (mut mean, mut below, mut above) = (0.0, 0.0, 0.0);
        for item in items {
            let (low, middle, high) = (item.low.base(), item.mean.base(), item.high.base());
            mean += middle;
            below += (middle - low) * (middle - low);
            above += (high - middle) * (high - middle);
        }
        Self {
            mean: Q::from_base(mean),
            low: Q::from_base(mean - f64::sqrt(below)),
            high: Q::from_base(mean + f64::sqrt(above)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::baking::quantity::Mass;

    fn grams(low: f64, mean: f64, high: f64) -> Estimate<Mass> {
        let [low, mean, high] = [low, mean, high].map(Mass::grams);
        Estimate::between(low, mean, high)
    }

    /// Independent errors add like the sides of a right angle: 3 and 4 give 5, on each side by itself.
    #[test]
    fn sums_add_their_halves_as_independent_errors_do() {
        let sum = Estimate::sum(&[grams(97.0, 100.0, 106.0), grams(46.0, 50.0, 58.0)]);
        assert_eq!(sum, grams(145.0, 150.0, 160.0));
    }

    #[test]
    fn errors_apart_never_fall_below_nothing() {
        let pinch = Estimate::apart(Mass::grams(2.0), &[(0.6, 0.3), (0.9, 0.4)]);
        assert_eq!((pinch.low, pinch.high), (Mass::ZERO, Mass::grams(3.0)));
    }

    /// The 5 and 95 % points of a normal spread lie 1.645 deviations out (Abramowitz and Stegun, table 26.1).
    #[test]
    fn a_normal_spread_gives_its_deviation_back() {
        let normal: Estimate<Mass> = Estimate::normal(10.0, 2.0);
        assert!((normal.high.to_grams() - 13.29).abs() < 1e-9);
        assert!((normal.deviation() - 2.0).abs() < 1e-12);
    }

    #[test]
    fn ends_are_put_in_order() {
        assert_eq!(grams(9.0, 5.0, 1.0), grams(1.0, 5.0, 9.0));
    }
}
