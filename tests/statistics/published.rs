//! Published examples, each with its place.

use super::{near, observations};
use batterwright::baking::statistics::Cannot;
use batterwright::baking::statistics::best::{Wish, best};
use batterwright::baking::statistics::curve::{Asked, Curve, Shape, fit, fit_what_is_borne_out};
use batterwright::baking::statistics::design::{
    Axial, amount, central_composite, coded, factorial,
};
use batterwright::baking::statistics::effects::{Effects, effects};
use batterwright::baking::statistics::scatter::Scatter;
use batterwright::baking::statistics::student::{f_tail, quantile};
use batterwright::baking::statistics::surface::{self, Level};

const PLAIN: Asked = Asked {
    usual: None,
    alike: 0.0,
};

/// NIST e-Handbook 1.3.6.7.2, the table of Student's t at 0.95 (one in twenty above) and 0.975.
#[test]
fn t_is_that_of_the_table() {
    let table = [
        (1.0, 6.314, 12.706),
        (2.0, 2.920, 4.303),
        (3.0, 2.353, 3.182),
        (4.0, 2.132, 2.776),
        (5.0, 2.015, 2.571),
        (10.0, 1.812, 2.228),
        (20.0, 1.725, 2.086),
        (30.0, 1.697, 2.042),
        (100.0, 1.660, 1.984),
    ];
    for (degrees, at_95, at_975) in table {
        let found = |sure| quantile(sure, degrees).expect("a quantile");
        assert!(
            (found(0.9) - at_95).abs() < 6e-4,
            "{degrees}: {}",
            found(0.9)
        );
        assert!(
            (found(0.95) - at_975).abs() < 6e-4,
            "{degrees}: {}",
            found(0.95)
        );
    }
}

/// NIST e-Handbook 1.3.6.7.3, the table of F at 5 %, and the critical value that 4.6.1.5 prints.
#[test]
fn f_is_that_of_the_table() {
    for (above, below, critical) in [
        (1.0, 1.0, 161.448),
        (1.0, 4.0, 7.709),
        (2.0, 10.0, 4.103),
        (18.0, 20.0, 2.151),
    ] {
        near(
            f_tail(critical, above, below).expect("a chance"),
            0.05,
            1e-3,
        );
    }
}

/// NIST StRD, Norris: 36 readings of an ozone meter, a straight line; certified values.
#[test]
fn a_line_is_the_certified_one() {
    let amounts = [
        0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5,
        666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1,
        887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
    ];
    let outcomes = [
        0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1,
        668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3,
        888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
    ];
    let line = fit(&observations(&amounts, &outcomes), Shape::Straight, PLAIN).expect("a line");
    certified(
        &line,
        &[
            (-0.262323073774029, 0.232818234301152),
            (1.00211681802045, 0.429796848199937e-3),
        ],
        1e-10,
    );
    assert_eq!(line.degrees, 34);
    near(line.told.expect("a part told"), 0.999993745883712, 1e-12);
}

fn load_cell() -> (Vec<f64>, [f64; 40]) {
    let loads = (0..40).map(|place| 150_000.0 * f64::from(place % 20 + 1));
    let deflections = [
        0.11019, 0.21956, 0.32949, 0.43899, 0.54803, 0.65694, 0.76562, 0.87487, 0.98292, 1.09146,
        1.20001, 1.30822, 1.41599, 1.52399, 1.63194, 1.73947, 1.84646, 1.95392, 2.06128, 2.16844,
        0.11052, 0.22018, 0.32939, 0.43886, 0.54798, 0.65739, 0.76596, 0.87474, 0.98300, 1.09150,
        1.20004, 1.30818, 1.41613, 1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177, 2.16829,
    ];
    (loads.collect(), deflections)
}

/// NIST StRD, Pontius: 40 readings of a load cell, a square; certified values.
#[test]
fn a_square_is_the_certified_one() {
    let (loads, deflections) = load_cell();
    let square = fit(&observations(&loads, &deflections), Shape::Curved, PLAIN).expect("a square");
    certified(
        &square,
        &[
            (0.673565789473684e-3, 0.107938612033077e-3),
            (0.732059160401003e-6, 0.157817399981659e-9),
            (-0.316081871345029e-14, 0.486652849992036e-16),
        ],
        1e-9,
    );
    near(square.told.expect("a part told"), 0.999999900178537, 1e-12);
    near(
        square.scatter.expect("a scatter").deviation,
        0.205177424076185e-3,
        1e-9,
    );
}

#[track_caller]
fn certified(curve: &Curve, wanted: &[(f64, f64)], apart: f64) {
    let found = curve.coefficients();
    assert_eq!(found.len(), wanted.len());
    for ((value, error), (other, other_error)) in found.into_iter().zip(wanted) {
        near(value, *other, apart);
        near(error.expect("an error"), *other_error, apart);
    }
}

/// NIST e-Handbook 4.6.1.5: a straight line through the same readings leaves 0.0021712694 with 38 degrees of freedom and
/// does not fit: F = 214.7464 against a critical 2.15. 4.6.1.6 goes on to a square, which does. In whole fractions the two
/// are 0.00217127259605675 and 214.746923653909: what is printed is rounded on the way, in its seventh figure.
#[test]
fn a_line_that_does_not_fit_is_told_and_a_square_taken() {
    let (loads, deflections) = load_cell();
    let observed = observations(&loads, &deflections);
    let line = fit(&observed, Shape::Straight, PLAIN).expect("a line");
    let scatter = line.scatter.expect("a scatter");
    near(scatter.deviation, 0.0021712694, 3e-6);
    near(scatter.deviation, 0.00217127259605675, 1e-10);
    assert_eq!(scatter.degrees, 38.0);
    let lack = line.lack_of_fit().expect("repeats");
    near(lack.f, 214.7464, 3e-6);
    near(lack.f, 214.746923653909, 1e-9);
    assert_eq!((lack.above, lack.below), (18.0, 20.0));
    let taken = fit_what_is_borne_out(&observed, PLAIN, 0.1).expect("a curve");
    assert_eq!(taken.shape, Shape::Curved);
    // What one term more gains is the square of its coefficient against its error, both certified.
    let gain = line.gain(&taken).expect("a gain");
    near(
        gain.f,
        (0.316081871345029e-14_f64 / 0.486652849992036e-16).powi(2),
        1e-8,
    );
    assert_eq!((gain.above, gain.below), (1.0, 37.0));
    assert!(taken.lack_of_fit().expect("repeats").by_chance > 0.5);
}

/// Montgomery and Runger, Applied Statistics and Probability for Engineers, example S14-2: a factorial in time and
/// temperature with five centre points. The bend by its formula there: 4 x 5 (40.425 - 40.46)^2 / 9 = 0.00272 against the
/// centre's variance 0.172 / 4 = 0.043. Effects by hand: (40.9 + 41.5 - 39.3 - 40.0) / 2 = 1.55, (40.0 + 41.5 - 39.3 -
/// 40.9) / 2 = 0.65, (39.3 + 41.5 - 40.9 - 40.0) / 2 = -0.05.
#[test]
fn a_factorial_with_centre_points_is_the_printed_one() {
    let outcomes = [39.3, 40.9, 40.0, 41.5, 40.3, 40.5, 40.7, 40.2, 40.6];
    let found = told(&outcomes);
    near(found.mean, 40.425, 1e-12);
    near(found.main[0], 1.55, 1e-12);
    near(found.main[1], 0.65, 1e-12);
    near(found.interaction, -0.05, 1e-10);
    near(found.bend.expect("a bend"), -0.035, 1e-10);
    let scatter = found.scatter.expect("a scatter");
    near(scatter.deviation, 0.043_f64.sqrt(), 1e-12);
    assert_eq!(scatter.degrees, 4.0);
    let ratio = found.bend_ratio.expect("a ratio");
    near(ratio.f, 0.0027222222 / 0.043, 1e-7);
    assert!(ratio.by_chance > 0.5);
    // 2 x 0.20736 / sqrt(4) = 0.20736, times 2.132 for 4 degrees of freedom.
    near(found.half_width(0.9).expect("a width"), 0.4421, 1e-3);
}

/// The same book's solutions, exercise 14.7.1: corners 21, 125, 154, 352, centre 92, 130, 98, 152. Main effects make
/// 55201 of the sum of squares. With one observation a corner that is the sum of the squared effects.
#[test]
fn main_effects_make_the_printed_sum_of_squares() {
    let found = told(&[21.0, 125.0, 154.0, 352.0, 92.0, 130.0, 98.0, 152.0]);
    let [first, second] = found.main;
    assert!((first * first + second * second - 55201.0).abs() < 0.5);
}

fn told(outcomes: &[f64]) -> Effects {
    let runs: Vec<_> = factorial(outcomes.len() - 4)
        .into_iter()
        .zip(outcomes.iter().copied())
        .collect();
    effects(&runs, None).expect("effects")
}

/// Corners that were not observed equally often, or a run that is no part of a factorial, are refused.
#[test]
fn effects_that_would_mix_are_not_told() {
    let mut runs: Vec<_> = factorial(1).into_iter().map(|at| (at, 1.0)).collect();
    runs.push(([1.0, 1.0], 2.0));
    assert_eq!(effects(&runs, None), Err(Cannot::NotApart));
    runs.pop();
    runs.push(([1.0, 0.5], 2.0));
    assert_eq!(effects(&runs, None), Err(Cannot::NotApart));
    assert_eq!(effects(&[], None), Err(Cannot::Nothing));
}

/// Montgomery, Design and Analysis of Experiments, 5th edition, example 11-1, as ReliaWiki prints it: a rotatable
/// composite in time and temperature. In actual amounts -1430.52285 + 7.80749 t + 13.27053 T - 0.05505 t^2 - 0.04005 T^2 +
/// 0.01 t T; residual 0.50 with 7 degrees of freedom, 0.21 of it pure error with 4; the largest yield 80.21 at 87 minutes
/// and 176.5 F.
#[test]
fn a_composite_is_the_printed_one() {
    let outcomes = [
        76.5, 78.0, 77.0, 79.5, 75.6, 78.4, 77.0, 78.5, 79.9, 80.3, 80.0, 79.7, 79.8,
    ];
    // The book rounds the axial distance.
    let book = |at: f64| {
        if at.abs() > 1.2 {
            1.414_f64.copysign(at)
        } else {
            at
        }
    };
    let design = central_composite(Axial::Rotatable, 5).into_iter();
    let runs: Vec<_> = design.map(|at| at.map(book)).zip(outcomes).collect();
    let found = surface::fit(&runs, None).expect("a surface");
    assert!((found.residual - 0.50).abs() < 0.005);
    assert_eq!(found.degrees, 7);
    let pure = found.pure.expect("repeats");
    assert!((pure.sum - 0.212).abs() < 1e-9 && pure.degrees == 4);
    let [_, b1, b2, b11, b22, b12] = found.coefficients;
    let (time, temperature) = (85.0, 175.0);
    let per = 25.0;
    let actual = [
        b1 / 5.0 - 2.0 * b11 * time / per - b12 * temperature / per,
        b2 / 5.0 - 2.0 * b22 * temperature / per - b12 * time / per,
        b11 / per,
        b22 / per,
        b12 / per,
    ];
    for (found, printed) in actual
        .into_iter()
        .zip([7.80749, 13.27053, -0.05505, -0.04005, 0.01])
    {
        near(found, printed, 2e-4);
    }
    let (at, kind) = found.level().expect("a level point");
    assert_eq!(kind, Level::Top);
    assert!((amount(at[0], 80.0, 90.0) - 87.0).abs() < 0.1);
    assert!((amount(at[1], 170.0, 180.0) - 176.5).abs() < 0.1);
    assert!((found.at(at) - 80.21).abs() < 0.005);
}

/// NIST e-Handbook 5.3.3.6.1: the distance for 2 factors is 1.414, a face-centred one's 1; 4 corners, 4 on the axes.
#[test]
fn composites_have_their_corners_and_axes() {
    assert!((Axial::Rotatable.distance() - 1.414).abs() < 5e-4);
    let runs = central_composite(Axial::FaceCentred, 2);
    assert_eq!(runs.len(), 10);
    assert_eq!(runs.iter().filter(|at| **at == [0.0, 0.0]).count(), 2);
    assert_eq!(runs.iter().filter(|at| at[0].abs() == 1.0).count(), 6);
    assert_eq!(amount(-1.0, 100.0, 140.0), 100.0);
    assert_eq!(coded(130.0, 100.0, 140.0), Some(0.5));
    assert_eq!(coded(130.0, 100.0, 100.0), None);
}

/// By hand: 10, 12 and 14 at 1, 2 and 3 lie on a line; 13 is met at 2.5. A square through 0, 3 and 2 at 0, 1 and 2 is
/// 5 x - 2 x^2, which turns at 1.25 and comes to 1.5 there and back at (5 -+ sqrt 13) / 4, of which the first, 0.349,
/// lies within.
#[test]
fn small_curves_by_hand() {
    let line = fit(
        &observations(&[1.0, 2.0, 3.0], &[10.0, 12.0, 14.0]),
        Shape::Straight,
        PLAIN,
    );
    let met = best(&line.expect("a line"), Wish::Nearest(13.0), 0.9).expect("met");
    assert!(met.met && (met.amount - 2.5).abs() < 1e-9 && (met.outcome - 13.0).abs() < 1e-9);
    let square = fit(
        &observations(&[0.0, 1.0, 2.0], &[0.0, 3.0, 2.0]),
        Shape::Curved,
        PLAIN,
    );
    let square = square.expect("a square");
    near(square.turn().expect("a turn"), 1.25, 1e-12);
    let top = best(&square, Wish::Largest, 0.9).expect("a top");
    assert!(top.met && (top.low, top.high) == (None, None));
    near(top.outcome, 3.125, 1e-12);
    let met = best(&square, Wish::Nearest(1.5), 0.9).expect("met");
    near(met.amount, (5.0 - 13_f64.sqrt()) / 4.0, 1e-9);
    assert_eq!(met.other, None);
    // 2.5 at (5 -+ sqrt 5) / 4: 0.691 and 1.809, the first nearer to the middle by a little.
    let twice = best(&square, Wish::Nearest(2.6), 0.9).expect("met");
    near(twice.amount + twice.other.expect("a second"), 2.5, 1e-9);
    let bottom = best(&square, Wish::Smallest, 0.9).expect("an end");
    assert!(!bottom.met && bottom.amount == 0.0 && bottom.low.is_none());
    let beyond = best(&square, Wish::Nearest(4.0), 0.9).expect("a nearest");
    assert!(!beyond.met && (beyond.amount - 1.25).abs() < 1e-12);
}

/// Two bakes each with a scatter of 2 and 8 degrees of freedom: 1.860 x 2 x sqrt(1/2 + 1/2) = 3.72.
#[test]
fn the_least_difference_by_hand() {
    let scatter = Scatter::of(32.0, 8, None).expect("a scatter");
    assert!((scatter.least_difference(0.9, 2, 2).expect("a difference") - 3.72).abs() < 0.005);
    assert_eq!(scatter.least_difference(0.9, 0, 2), None);
}

/// What cannot be said is said to be so.
#[test]
fn too_little_is_named() {
    let told = |amounts: &[f64], outcomes: &[f64], shape| {
        fit(&observations(amounts, outcomes), shape, PLAIN).map(|_| ())
    };
    assert_eq!(told(&[], &[], Shape::Flat), Err(Cannot::Nothing));
    assert_eq!(told(&[1.0], &[2.0], Shape::Straight), Err(Cannot::Single));
    assert_eq!(
        told(&[1.0, 1.0], &[2.0, 3.0], Shape::Straight),
        Err(Cannot::SameAmount)
    );
    assert_eq!(
        told(&[1.0, 2.0], &[2.0, 3.0], Shape::Curved),
        Err(Cannot::NotApart)
    );
    assert_eq!(
        told(&[1.0, f64::NAN], &[2.0, 3.0], Shape::Straight),
        Err(Cannot::NotFinite)
    );
    assert_eq!(
        told(&[1.0, 2.0], &[2.0, f64::INFINITY], Shape::Straight),
        Err(Cannot::NotFinite)
    );
    let same = fit(
        &observations(&[1.0, 2.0, 3.0], &[5.0; 3]),
        Shape::Straight,
        PLAIN,
    )
    .expect("a line");
    assert_eq!(same.told, None);
    let taken = fit_what_is_borne_out(&observations(&[1.0, 2.0, 3.0], &[5.0; 3]), PLAIN, 0.1);
    assert_eq!(taken.expect("a curve").shape, Shape::Flat);
}
