//! Against numpy and scipy; `make reference` writes their answers.

use super::{near, observations};
use batterwright::baking::statistics::best::{Best, Wish, best};
use batterwright::baking::statistics::curve::{Asked, Curve, Shape, fit};
use batterwright::baking::statistics::scatter::Usual;
use batterwright::baking::statistics::student::{f_tail, quantile};
use batterwright::baking::statistics::surface;

const SURE: f64 = 0.9;

fn rows(table: &'static str) -> impl Iterator<Item = Vec<&'static str>> {
    table.lines().map(|line| line.split('\t').collect())
}

fn number(cell: &str) -> f64 {
    cell.parse().expect("a number")
}

fn numbers(cell: &str) -> Vec<f64> {
    cell.split_whitespace().map(number).collect()
}

#[test]
fn quantiles_are_those_of_another_program() {
    let mut count = 0;
    for row in rows(include_str!("quantiles.tsv")) {
        let found = quantile(number(row[0]), number(row[1])).expect("a quantile");
        near(found, number(row[2]), 1e-9);
        count += 1;
    }
    assert_eq!(count, 75);
}

#[test]
fn tails_are_those_of_another_program() {
    let mut count = 0;
    for row in rows(include_str!("tails.tsv")) {
        let found = f_tail(number(row[0]), number(row[1]), number(row[2])).expect("a chance");
        near(found, number(row[3]), 1e-9);
        count += 1;
    }
    assert_eq!(count, 140);
}

struct Case {
    curve: Curve,
    row: Vec<&'static str>,
}

fn cases() -> impl Iterator<Item = Case> {
    rows(include_str!("curves.tsv")).map(|row| {
        let observed = observations(&numbers(row[0]), &numbers(row[1]));
        let shape = [Shape::Flat, Shape::Straight, Shape::Curved][number(row[2]) as usize - 1];
        let usual = numbers(row[3]);
        let usual = (!usual.is_empty()).then(|| Usual {
            deviation: usual[0],
            worth: usual[1],
        });
        let asked = Asked { usual, alike: 0.0 };
        let curve = fit(&observed, shape, asked).expect("a curve");
        Case { curve, row }
    })
}

#[test]
fn curves_and_their_scatter_are_those_of_another_program() {
    let mut count = 0;
    for Case { curve, row } in cases() {
        let wanted = numbers(row[4]).into_iter().zip(numbers(row[5]));
        for ((value, error), (other, other_error)) in curve.coefficients().into_iter().zip(wanted) {
            let error = error.expect("an error");
            near(error, other_error, 1e-7);
            assert!(
                (value - other).abs() < 1e-6 * error,
                "{value} is not {other}"
            );
        }
        // Through as many amounts as there are terms the curve goes exactly: rounding is no residual.
        if curve.degrees > 0 {
            near(curve.residual, number(row[6]), 1e-7);
        }
        let places = [curve.low, (curve.low + curve.high) / 2.0, curve.high];
        for (place, width) in places.into_iter().zip(numbers(row[7])) {
            near(curve.half_width(place, SURE).expect("a width"), width, 1e-7);
        }
        count += 1;
    }
    assert_eq!(count, 150);
}

#[test]
fn lack_of_fit_is_that_of_another_program() {
    let mut count = 0;
    for Case { curve, row } in cases() {
        let wanted = numbers(row[8]);
        assert_eq!(curve.lack_of_fit().is_some(), !wanted.is_empty());
        if let Some(lack) = curve.lack_of_fit() {
            near(lack.f, wanted[0], 1e-6);
            near(lack.by_chance, wanted[1], 1e-6);
            count += 1;
        }
    }
    assert_eq!(count, 73);
}

/// The best amount and its bounds, `-` for one that lies outside the range.
fn same_best(found: Best, wanted: &str, range: f64) {
    let wanted: Vec<Option<f64>> = wanted.split(' ').map(|it| it.parse().ok()).collect();
    let found = [Some(found.amount), found.low, found.high];
    for (one, other) in found.iter().zip(&wanted) {
        let near = one
            .zip(*other)
            .is_none_or(|(a, b)| (a - b).abs() < 1e-6 * range);
        assert!(
            one.is_some() == other.is_some() && near,
            "{found:?}, not {wanted:?}"
        );
    }
}

#[test]
fn the_turn_and_its_bounds_are_roots_of_the_same_polynomial() {
    let mut count = 0;
    for Case { curve, row } in cases().filter(|case| !case.row[9].is_empty()) {
        let wish = if curve.square() < 0.0 {
            Wish::Largest
        } else {
            Wish::Smallest
        };
        let found = best(&curve, wish, SURE).expect("a best amount");
        assert!(found.met);
        same_best(found, row[9], curve.high - curve.low);
        count += 1;
    }
    assert_eq!(count, 44);
}

#[test]
fn an_outcome_wanted_is_met_where_the_same_polynomial_meets_it() {
    let mut count = 0;
    for Case { curve, row } in cases().filter(|case| !case.row[11].is_empty()) {
        let wish = Wish::Nearest(number(row[10]));
        let found = best(&curve, wish, SURE).expect("a best amount");
        assert!(found.met);
        near(found.outcome, number(row[10]), 1e-9);
        same_best(found, row[11], curve.high - curve.low);
        count += 1;
    }
    assert_eq!(count, 103);
}

#[test]
fn surfaces_are_those_of_another_program() {
    let mut count = 0;
    for row in rows(include_str!("surfaces.tsv")) {
        let [first, second, outcomes, coefficients, errors, level] =
            [0, 1, 2, 3, 4, 5].map(|place| numbers(row[place]));
        let coded = first.into_iter().zip(second).map(|(a, b)| [a, b]);
        let runs: Vec<_> = coded.zip(outcomes).collect();
        let found = surface::fit(&runs, None).expect("a surface");
        let found_errors = found.errors().expect("errors");
        for place in 0..6 {
            near(found_errors[place], errors[place], 1e-8);
            let off = found.coefficients[place] - coefficients[place];
            assert!(off.abs() < 1e-8 * errors[place]);
        }
        let (at, _) = found.level().expect("a level point");
        near(at[0], level[0], 1e-6);
        near(at[1], level[1], 1e-6);
        count += 1;
    }
    assert_eq!(count, 30);
}
