//! From tables and figures to chances.
//!
//! Odds are multiplied by a factor for each piece of evidence: how likely it is where the cause is at work, over how likely it is
//! otherwise (Good 1950, Probability and the weighing of evidence; from memory). The pieces are taken to be independent, as
//! naive Bayes does. What the factors are made of is our own judgement and stands here, once.

/// How often a cause shows a sign that no table names for it.
const UNNAMED: f64 = 0.02;
/// What is added where every table names it.
const NAMED: f64 = 0.9;
/// How often something that is not in the list at all shows any one sign.
pub const OTHERWISE: f64 = 0.1;
/// How common something that is not in the list is, in the measure of [`super::Cause::prior`].
pub const OTHER: f64 = 3.0;

/// How likely a cause shows a sign: by how many of the tables that speak of the sign name the cause, one more counted that
/// does not, so that one table's word is half of what many agree on.
pub fn shows(named: usize, tables: usize) -> f64 {
    UNNAMED + NAMED * named as f64 / (tables as f64 + 1.0)
}

/// How likely a figure is found past its limit where no cause took it there.
const FALSE_ALARM: f64 = 0.05;

/// The factor of a figure that lies past its limit with a chance; `shown` is how likely it is found past it where the cause is
/// at work. At an even chance it is near 1: it says nothing.
pub fn factor(chance: f64, shown: f64) -> f64 {
    let mix = |past: f64| past * chance + (1.0 - past) * (1.0 - chance);
    mix(shown) / mix(FALSE_ALARM)
}

/// From weights to chances that sum to 1 with that of something else, which comes last. A weight that is no figure counts as
/// nothing.
pub fn chances(weights: &[f64], other: f64) -> (Vec<f64>, f64) {
    let sound = |weight: f64| match weight.is_finite() {
        true => weight.max(0.0),
        false => 0.0,
    };
    let other = sound(other).max(f64::MIN_POSITIVE);
    let sum: f64 = other + weights.iter().copied().map(sound).sum::<f64>();
    let chances = weights.iter().map(|weight| sound(*weight) / sum).collect();
    (chances, other / sum)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two coins of odds 3 and 1 against a third of 1; 3/5, 1/5, 1/5 by hand.
    #[test]
    fn odds_become_chances() {
        let (chances, other) = chances(&[3.0, 1.0, f64::NAN], 1.0);
        assert!((chances[0] - 0.6).abs() < 1e-12 && (chances[1] - 0.2).abs() < 1e-12);
        assert_eq!(chances[2], 0.0);
        assert!((other - 0.2).abs() < 1e-12);
    }

    /// By hand: 0.9 / 0.05 = 18 for, 0.1 / 0.95 against, 0.5 / 0.5 where it is even.
    #[test]
    fn a_figure_speaks_for_against_or_not_at_all() {
        assert!((factor(1.0, 0.9) - 18.0).abs() < 1e-12);
        assert!((factor(0.0, 0.9) - 0.1 / 0.95).abs() < 1e-12);
        assert!((factor(0.5, 0.9) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn one_table_counts_half_of_what_many_agree_on() {
        assert!((shows(1, 1) - 0.47).abs() < 1e-12);
        assert!((shows(8, 8) - 0.82).abs() < 1e-12);
        assert!((shows(0, 8) - 0.02).abs() < 1e-12);
    }
}
