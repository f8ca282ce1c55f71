//! What a two-level factorial with centre points tells: effects, whether the factors act on one another, and whether
//! the surface bends.
//!
//! NIST e-Handbook 5.5.9.9 and 5.3.3.7; Montgomery, Design and Analysis of Experiments, 6.8.

use super::curve::Ratio;
use super::design::Coded;
use super::scatter::{Scatter, Usual, mean_and_squares, pure_error};
use super::student::{f_tail, quantile};
use super::{Cannot, all_plain};

/// What a factorial tells.
#[derive(Clone, Debug, PartialEq)]
pub struct Effects {
    /// The mean at the corners.
    pub mean: f64,
    /// By how much the outcome rises from a factor's low to its high amount, for each factor.
    pub main: [f64; 2],
    /// Half of by how much the first factor's effect is larger at the high amount of the second than at its low one.
    pub interaction: f64,
    /// The mean at the corners less that at the centre; `None` without a centre.
    pub bend: Option<f64>,
    /// The bend against the scatter; `None` without either.
    pub bend_ratio: Option<Ratio>,
    /// The scatter, from repeats and from what is known beforehand; `None` without either.
    pub scatter: Option<Scatter>,
    corners: usize,
}

impl Effects {
    /// How far an effect, or the interaction, may be off on either side in a share `sure` of cases. `None` where nothing
    /// tells of the scatter.
    pub fn half_width(&self, sure: f64) -> Option<f64> {
        let scatter = self.scatter?;
        let error = 2.0 * scatter.deviation / (self.corners as f64).sqrt();
        Some(quantile(sure, scatter.degrees)? * error)
    }
}

/// Effects from the coded amounts -1, 1 and, at the centre, 0 of two factors, with their outcomes.
///
/// # Errors
///
/// Without observations, where a number is not finite or a coded amount is another, and where the four corners were
/// not each observed equally often: then effects mix, and a fit of the surface is what tells.
pub fn effects(runs: &[(Coded, f64)], usual: Option<Usual>) -> Result<Effects, Cannot> {
    if runs.is_empty() {
        return Err(Cannot::Nothing);
    }
    if !all_plain(runs.iter().map(|(_, outcome)| *outcome)) {
        return Err(Cannot::NotFinite);
    }
    let at = |place: Coded| -> Vec<f64> {
        let there = runs.iter().filter(|(coded, _)| *coded == place);
        there.map(|(_, outcome)| *outcome).collect()
    };
    let corners = [[-1.0, -1.0], [1.0, -1.0], [-1.0, 1.0], [1.0, 1.0]].map(at);
    let centre = at([0.0, 0.0]);
    let each = corners[0].len();
    let even = each > 0 && corners.iter().all(|corner| corner.len() == each);
    if !even || 4 * each + centre.len() != runs.len() {
        return Err(Cannot::NotApart);
    }
    let [low, first, second, both] = corners.map(|corner| mean_and_squares(&corner).0);
    let mean = (low + first + second + both) / 4.0;
    let scatter = of_repeats(runs, usual);
    let bend = (!centre.is_empty()).then(|| mean - mean_and_squares(&centre).0);
    Ok(Effects {
        mean,
        main: [
            (first + both - low - second) / 2.0,
            (second + both - low - first) / 2.0,
        ],
        interaction: (low + both - first - second) / 2.0,
        bend,
        bend_ratio: bend.zip(scatter).and_then(|(bend, scatter)| {
            bend_ratio(bend, 4.0 * each as f64, centre.len() as f64, scatter)
        }),
        scatter,
        corners: 4 * each,
    })
}

fn of_repeats(runs: &[(Coded, f64)], usual: Option<Usual>) -> Option<Scatter> {
    let (kinds, outcomes): (Vec<Coded>, Vec<f64>) = runs.iter().copied().unzip();
    let pure = pure_error(&kinds, &outcomes);
    let (sum, degrees) = pure.map_or((0.0, 0), |it| (it.sum, it.degrees));
    Scatter::of(sum, degrees, usual)
}

/// The sum of squares of the bend, with one degree of freedom, against the scatter.
fn bend_ratio(bend: f64, corners: f64, centres: f64, scatter: Scatter) -> Option<Ratio> {
    let sum = corners * centres * bend * bend / (corners + centres);
    let f = if sum > 0.0 {
        sum / scatter.deviation.powi(2)
    } else {
        0.0
    };
    Some(Ratio {
        f,
        above: 1.0,
        below: scatter.degrees,
        by_chance: f_tail(f, 1.0, scatter.degrees)?,
    })
}
