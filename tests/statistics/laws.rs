//! Laws of any observations.

use super::observations;
use batterwright::baking::statistics::apart::apart;
use batterwright::baking::statistics::best::{Wish, best};
use batterwright::baking::statistics::curve::{
    Asked, Curve, Observation, Shape, fit, fit_what_is_borne_out,
};
use batterwright::baking::statistics::scatter::Usual;
use proptest::num;
use proptest::prelude::*;

const SURE: f64 = 0.9;

/// Amounts of which four are different, so that any shape can be fitted and leaves something.
fn drawn() -> impl Strategy<Value = Vec<Observation>> {
    (
        prop::collection::vec((0_u8..8, -50.0..50.0), 0..8),
        prop::collection::vec(-50.0..50.0, 4),
    )
        .prop_map(|(more, first)| {
            let first = first.into_iter().enumerate();
            let first = first.map(|(place, outcome)| (2 * place as u8, outcome));
            let all = first.chain(more);
            all.map(|(amount, outcome)| Observation {
                amount: 100.0 + 3.0 * f64::from(amount),
                outcome,
            })
            .collect()
        })
}

fn asked(usual: bool) -> Asked {
    let usual = usual.then_some(Usual {
        deviation: 5.0,
        worth: 4.0,
    });
    Asked { usual, alike: 0.0 }
}

fn curved(observed: &[Observation]) -> Curve {
    fit(observed, Shape::Curved, asked(false)).expect("a curve")
}

fn close(one: f64, other: f64, size: f64) -> bool {
    (one - other).abs() <= 1e-6 * size
}

proptest! {
    /// In other units, ounces for grams and inches for millimetres: the same curve, and the same best amount.
    #[test]
    fn units_do_not_matter(observed in drawn(), zero in -1e3..1e3, unit in 0.01..50.0, up in -1e3..1e3, by in 0.01..50.0) {
        let turned: Vec<_> = observed
            .iter()
            .map(|it| Observation { amount: zero + unit * it.amount, outcome: up + by * it.outcome })
            .collect();
        let (one, other) = (curved(&observed), curved(&turned));
        for amount in [100.0, 107.0, 121.0] {
            let there = zero + unit * amount;
            prop_assert!(close(up + by * one.at(amount), other.at(there), by * 100.0));
            let (a, b) = (one.half_width(amount, SURE), other.half_width(there, SURE));
            prop_assert!(close(by * a.expect("a width"), b.expect("a width"), by * 100.0));
        }
        let (a, b) = (best(&one, Wish::Largest, SURE), best(&other, Wish::Largest, SURE));
        let (a, b) = (a.expect("a best amount"), b.expect("a best amount"));
        // Where both ends are as good, either may be told.
        if a.met && one.square().abs() > 1e-3 {
            prop_assert!(close(zero + unit * a.amount, b.amount, unit * 21.0));
        }
    }

    #[test]
    fn the_order_of_observations_does_not_matter(mut observed in drawn(), usual: bool) {
        let one = fit_what_is_borne_out(&observed, asked(usual), 0.1).expect("a curve");
        observed.reverse();
        observed.rotate_left(1);
        let other = fit_what_is_borne_out(&observed, asked(usual), 0.1).expect("a curve");
        prop_assert_eq!(one.shape, other.shape);
        for amount in [100.0, 110.0, 121.0] {
            prop_assert!(close(one.at(amount), other.at(amount), 50.0));
        }
    }

    /// What lies on a curve is found to, with nothing left, whatever its shape is taken for.
    #[test]
    fn what_lies_on_a_curve_fits_it(base in -90.0..90.0, slope in 0.1..9.0, square in prop_oneof![Just(0.0), -0.9..-0.05]) {
        let amounts = [80.0, 90.0, 100.0, 115.0, 130.0];
        let outcomes = amounts.map(|amount| {
            let at = amount - 100.0;
            base + slope * at + square * at * at
        });
        let observed = observations(&amounts, &outcomes);
        let curve = fit_what_is_borne_out(&observed, asked(false), 0.1).expect("a curve");
        prop_assert_eq!(curve.shape, if square == 0.0 { Shape::Straight } else { Shape::Curved });
        prop_assert!(curve.half_width(100.0, SURE).expect("a width") < 1e-6);
        let found = best(&curve, Wish::Largest, SURE).expect("a best amount");
        let turn: f64 = if square == 0.0 { 130.0 } else { f64::min(100.0 - slope / (2.0 * square), 130.0) };
        prop_assert!((found.amount - turn).abs() < 1e-5);
    }

    /// Bounds of the best amount lie on either side of it, within the range; and nothing is ever no number.
    #[test]
    fn bounds_hold_the_best_amount(observed in drawn(), usual: bool, wanted in -60.0..60.0) {
        for shape in [Shape::Straight, Shape::Curved] {
            let curve = fit(&observed, shape, asked(usual)).expect("a curve");
            for wish in [Wish::Largest, Wish::Smallest, Wish::Nearest(wanted)] {
                let found = best(&curve, wish, SURE).expect("a best amount");
                let (low, high) = (found.low.unwrap_or(curve.low), found.high.unwrap_or(curve.high));
                prop_assert!(curve.low <= low && low <= found.amount && found.amount <= high && high <= curve.high);
                prop_assert!(found.outcome.is_finite());
            }
        }
    }

    /// The same bakes once more each make the curve no less sure.
    #[test]
    fn repeats_do_not_move_the_curve(observed in drawn()) {
        let one = curved(&observed);
        let twice: Vec<_> = observed.iter().chain(&observed).copied().collect();
        let other = curved(&twice);
        for amount in [100.0, 110.0, 121.0] {
            prop_assert!(close(one.at(amount), other.at(amount), 50.0));
            prop_assert!(other.half_width(amount, SURE) <= one.half_width(amount, SURE));
        }
    }

    /// Any numbers at all: a curve of numbers, or a reason.
    #[test]
    fn any_numbers_are_borne(
        pairs in prop::collection::vec((num::f64::ANY, num::f64::ANY), 0..6),
        deviation in num::f64::POSITIVE,
        alike in num::f64::ANY,
    ) {
        let observed: Vec<_> = pairs.iter().map(|(amount, outcome)| Observation { amount: *amount, outcome: *outcome }).collect();
        let usual = Some(Usual { deviation, worth: 4.0 });
        let Ok(curve) = fit_what_is_borne_out(&observed, Asked { usual, alike }, 0.1) else {
            return Ok(());
        };
        prop_assert!(curve.at(curve.low).is_finite());
        for wish in [Wish::Largest, Wish::Nearest(1.0)] {
            if let Some(found) = best(&curve, wish, SURE) {
                prop_assert!(found.amount.is_finite() && found.outcome.is_finite());
            }
        }
    }

    /// Factors that change by themselves are told apart; one that is a sum of others is mixed with just those.
    #[test]
    fn a_sum_of_columns_is_found(
        rows in prop::collection::vec(prop::collection::vec(-9.0..9.0, 4), 7),
        share in 0.2..3.0,
    ) {
        let rows: Vec<Vec<f64>> = rows
            .into_iter()
            .map(|row| {
                let sum = share * row[0] - row[2];
                vec![row[0], 5.0, row[1], row[2], sum, row[3]]
            })
            .collect();
        let found = apart(&rows).expect("rows of one length");
        prop_assert_eq!(found.still, vec![1]);
        prop_assert_eq!(found.told, vec![2, 5]);
        prop_assert_eq!(found.mixed, vec![vec![0, 3, 4]]);
    }
}

/// Two bakes that differ in three things tell nothing apart; nor does a third that changes all three again.
#[test]
fn two_bakes_tell_one_thing_at_most() {
    let found =
        apart(&[vec![100.0, 50.0, 3.0], vec![120.0, 40.0, 4.0]]).expect("rows of one length");
    assert_eq!(
        (found.told, found.mixed, found.still),
        (vec![], vec![vec![0, 1, 2]], vec![])
    );
    let found = apart(&[vec![1.0, 7.0], vec![2.0, 7.0]]).expect("rows of one length");
    assert_eq!(
        (found.told, found.mixed, found.still),
        (vec![0], vec![], vec![1])
    );
    assert_eq!(apart(&[]), Some(Default::default()));
    assert_eq!(apart(&[vec![1.0], vec![1.0, 2.0]]), None);
}
