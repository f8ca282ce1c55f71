//! What is proposed to be baked next, worked by hand where it has a figure.

use batterwright::baking::comparison::{Levels, NextBake, Question, next_bake, plan_of_two};
use batterwright::baking::statistics::best::Wish;
use batterwright::baking::statistics::curve::Observation;
use batterwright::baking::statistics::scatter::Usual;
use proptest::prelude::*;

fn question(predicted: Option<(f64, f64)>, wish: Wish) -> Question {
    Question {
        factor: "sugar".into(),
        unit: " g",
        now: 180.0,
        low: 100.0,
        high: 300.0,
        step: 5.0,
        predicted,
        wish,
        usual: Usual {
            deviation: 1.5,
            worth: 4.0,
        },
    }
}

fn amounts(next: &NextBake) -> Vec<f64> {
    next.bakes.iter().map(|it| it.amount).collect()
}

fn observed(bakes: &[(f64, f64)]) -> Vec<Observation> {
    let of = |&(amount, outcome)| Observation { amount, outcome };
    bakes.iter().map(of).collect()
}

#[test]
fn the_first_bakes_stand_about_the_prediction_with_the_recipe_as_it_is() {
    // 225 with a deviation of 30: 180, 225 and 270, of which the first is what it is now.
    let next = next_bake(&question(Some((225.0, 30.0)), Wish::Largest), &[]);
    assert_eq!(amounts(&next), [180.0, 225.0, 270.0]);
    let controls: Vec<bool> = next.bakes.iter().map(|it| it.control).collect();
    assert_eq!(controls, [true, false, false]);
    assert!(
        next.says[0].contains("180 g (as it is), 225 g and 270 g"),
        "{:?}",
        next.says
    );
    // As far as it is from the recipe, the recipe is a fourth.
    let next = next_bake(&question(Some((255.0, 20.0)), Wish::Largest), &[]);
    assert_eq!(amounts(&next), [180.0, 225.0, 255.0, 285.0]);
    // Without a prediction they stand about the recipe, a quarter of the range away.
    let next = next_bake(&question(None, Wish::Largest), &[]);
    assert_eq!(amounts(&next), [130.0, 180.0, 230.0]);
}

#[test]
fn what_is_baked_is_not_proposed_again() {
    let asked = question(Some((225.0, 30.0)), Wish::Largest);
    let next = next_bake(&asked, &observed(&[(180.0, 55.0), (225.0, 60.0)]));
    assert_eq!(amounts(&next), [270.0]);
}

#[test]
fn a_plain_case_stops_and_names_the_amount() {
    // 60 − ((sugar − 210) / 10)²: three bakes of it without scatter tell it well.
    let height = |amount: f64| 60.0 - ((amount - 210.0) / 10.0_f64).powi(2);
    let bakes: Vec<_> = [180.0, 225.0, 270.0].map(|it| (it, height(it))).into();
    let next = next_bake(
        &question(Some((225.0, 30.0)), Wish::Largest),
        &observed(&bakes),
    );
    assert!(next.stop && next.bakes.is_empty(), "{next:?}");
    assert!(
        next.best.is_some_and(|it| (it - 210.0).abs() <= 5.0),
        "{next:?}"
    );
}

#[test]
fn an_outcome_wanted_is_looked_for_where_it_lies() {
    // 5 + sugar / 100: 7.3 is wanted, which 230 g give.
    let asked = Question {
        usual: Usual {
            deviation: 0.1,
            worth: 4.0,
        },
        ..question(None, Wish::Nearest(7.3))
    };
    let mut bakes: Vec<(f64, f64)> = Vec::new();
    let next = loop {
        let next = next_bake(&asked, &observed(&bakes));
        if next.bakes.is_empty() || bakes.len() > 8 {
            break next;
        }
        bakes.extend(
            next.bakes
                .iter()
                .map(|it| (it.amount, 5.0 + it.amount / 100.0)),
        );
    };
    assert!(next.stop, "{next:?}");
    assert!(
        next.best.is_some_and(|it| (it - 230.0).abs() <= 5.0),
        "{next:?}"
    );
}

#[test]
fn what_makes_no_difference_is_called_that() {
    let bakes: Vec<_> = [130.0, 180.0, 230.0, 130.0, 180.0, 230.0, 280.0, 100.0]
        .map(|it| (it, 60.0))
        .into();
    let next = next_bake(&question(None, Wish::Largest), &observed(&bakes));
    assert!(
        next.says
            .iter()
            .any(|it| it.contains("hardly more of a difference")),
        "{:?}",
        next.says
    );
}

#[test]
fn what_cannot_be_asked_has_a_sentence() {
    for wrong in [
        Question {
            now: f64::NAN,
            ..question(None, Wish::Largest)
        },
        Question {
            step: 0.0,
            ..question(None, Wish::Largest)
        },
        Question {
            low: 180.0,
            high: 184.0,
            ..question(None, Wish::Largest)
        },
        Question {
            low: -10.0,
            ..question(None, Wish::Largest)
        },
        question(Some((f64::NAN, 3.0)), Wish::Largest),
        question(None, Wish::Nearest(f64::INFINITY)),
    ] {
        let next = next_bake(&wrong, &[]);
        assert!(
            next.bakes.is_empty() && !next.stop && next.says.len() == 1,
            "{next:?}"
        );
    }
}

#[test]
fn two_things_at_once_are_four_corners_and_the_recipe_twice() {
    let sugar = Levels {
        now: 180.0,
        by: 32.0,
        step: 5.0,
    };
    let soda = Levels {
        now: 4.0,
        by: 1.0,
        step: 0.1,
    };
    let plan = plan_of_two([sugar, soda]).expect("a plan");
    let amounts: Vec<[f64; 2]> = plan.iter().map(|it| it.amounts).collect();
    // 32 g are 30 g on this scale.
    let corners = [
        [150.0, 3.0],
        [210.0, 3.0],
        [150.0, 5.0],
        [210.0, 5.0],
        [180.0, 4.0],
        [180.0, 4.0],
    ];
    assert_eq!(amounts, corners);
    assert_eq!(plan.iter().filter(|it| it.control).count(), 2);
    assert!(plan_of_two([sugar, Levels { by: 5.0, ..soda }]).is_err());
    assert!(plan_of_two([sugar, Levels { by: 0.01, ..soda }]).is_err());
    assert!(
        plan_of_two([
            sugar,
            Levels {
                now: f64::NAN,
                ..soda
            }
        ])
        .is_err()
    );
}

proptest! {
    /// Amounts are what a scale shows, distinct and within the range, and the first bakes have the recipe among them.
    #[test]
    fn every_proposal_can_be_weighed(now in 20_u32..400, below in 0.0..200.0_f64, above in 0.0..200.0_f64, step in prop::sample::select(vec![0.1, 1.0, 5.0]),
        mean in 0.0..600.0, deviation in 0.5..100.0, thought: bool, bakes in prop::collection::vec((0.0..1.0, 20.0..80.0), 0..7)) {
        let now = f64::from(now);
        let (low, high) = ((now - below).max(0.0), now + above);
        let asked = Question {
            now, low, high, step, predicted: thought.then_some((mean, deviation)), ..question(None, Wish::Largest)
        };
        let bakes: Vec<_> = bakes.into_iter().map(|(at, outcome)| (low + at * (high - low), outcome)).collect();
        let next = next_bake(&asked, &observed(&bakes));
        prop_assert!(!next.says.is_empty());
        let amounts = amounts(&next);
        for pair in amounts.windows(2) {
            prop_assert!(pair[0] < pair[1]);
        }
        for amount in &amounts {
            prop_assert!((low - 1e-3..=high + 1e-3).contains(amount), "{}", amount);
            let steps = (amount - now) / step;
            prop_assert!((steps - steps.round()).abs() < 0.02 || *amount - low < step || high - *amount < step);
        }
        if bakes.is_empty() && !amounts.is_empty() {
            prop_assert!((2..=4).contains(&amounts.len()));
            prop_assert_eq!(next.bakes.iter().filter(|it| it.control).count(), 1);
        }
        prop_assert!(next.best.is_none_or(f64::is_finite));
    }
}
