//! What bakes say of a factor and an outcome. Figures are worked by hand; recipes are invented.

use super::{bake, settings};
use batterwright::baking::comparison::{Factor, Outcome, answer, beside, factor_choices};
use batterwright::baking::statistics::best::Wish;
use batterwright::baking::statistics::curve::Shape;
use batterwright::baking::trial::{OutcomeField, Trial};

/// Bakes with so much sugar and soda that came out so high, cm.
fn bakes(given: &[(f64, f64, f64)]) -> Vec<Trial> {
    let of = |(sugar, soda, height): &(f64, f64, f64)| {
        let mut trial = bake(*sugar, *soda);
        trial.say(OutcomeField::HeightCentre, format!("{height} cm"));
        trial
    };
    given.iter().map(of).collect()
}

fn sugar(trials: &[&Trial]) -> Factor {
    named(
        trials,
        |it| matches!(it, Factor::Weight(part) if part.ingredient == "caster_sugar"),
    )
}

fn named(trials: &[&Trial], is_it: impl Fn(&Factor) -> bool) -> Factor {
    let mut choices = factor_choices(trials, &settings()).into_iter();
    choices
        .find(|it| is_it(&it.factor))
        .expect("the factor")
        .factor
}

fn said_of(given: &[(f64, f64, f64)]) -> (batterwright::baking::comparison::Answer, String) {
    let trials = bakes(given);
    let trials: Vec<&Trial> = trials.iter().collect();
    let found = answer(
        &trials,
        &sugar(&trials),
        Outcome::Centre,
        Wish::Largest,
        &settings(),
    );
    let says = found.says.join(" ");
    (found, says)
}

#[test]
fn a_curve_is_found_with_its_best_amount() {
    // 6 − ((sugar − 110) / 20)² cm, exactly.
    let (found, says) = said_of(&[
        (80.0, 4.0, 3.75),
        (100.0, 4.0, 5.75),
        (120.0, 4.0, 5.75),
        (140.0, 4.0, 3.75),
    ]);
    assert_eq!(found.curve.expect("a curve").shape, Shape::Curved);
    let best = found.best.expect("a best amount");
    assert!((best.amount - 110.0).abs() < 1e-6, "{}", best.amount);
    assert!((best.outcome - 6.0).abs() < 1e-6, "{}", best.outcome);
    assert!(best.low.is_some_and(|it| it > 80.0) && best.high.is_some_and(|it| it < 140.0));
    assert!(says.contains("is highest at about 110 g"), "{says}");
    assert!(says.contains("Nothing was baked twice"), "{says}");
}

#[test]
fn what_no_bake_can_tell_is_said() {
    for (given, sentence) in [
        (&[][..], ""),
        (
            &[(100.0, 4.0, 6.0)][..],
            "One bake does not tell what caster sugar does",
        ),
        (
            &[(100.0, 4.0, 6.0), (100.0, 4.0, 6.2)][..],
            "the same amount of caster sugar",
        ),
        (
            &[(90.0, 4.0, 6.0), (100.0, 4.0, 6.1)][..],
            "nothing says that caster sugar makes a difference",
        ),
    ] {
        if given.is_empty() {
            let found = answer(
                &[],
                &Factor::Oven,
                Outcome::Core,
                Wish::Largest,
                &settings(),
            );
            assert!(
                found.says[0].starts_with("No bake has both"),
                "{:?}",
                found.says
            );
            continue;
        }
        let (found, says) = said_of(given);
        assert!(says.contains(sentence), "{says}");
        assert!(found.best.is_none());
    }
}

#[test]
fn what_changed_together_cannot_be_told_apart() {
    let (_, says) = said_of(&[(80.0, 4.0, 4.0), (100.0, 5.0, 6.0), (120.0, 6.0, 8.0)]);
    assert!(
        says.contains("did not change apart from baking soda"),
        "{says}"
    );
    let (_, says) = said_of(&[(80.0, 4.0, 4.0), (100.0, 4.0, 6.0), (120.0, 4.0, 8.0)]);
    assert!(
        !says.contains("apart from") && !says.contains("Other things changed"),
        "{says}"
    );
    // Changed by themselves, each has an effect of its own, and the soda's is in the scatter of the sugar's.
    let (_, says) = said_of(&[
        (80.0, 4.0, 4.0),
        (80.0, 6.0, 4.5),
        (120.0, 4.0, 8.0),
        (120.0, 6.0, 8.3),
    ]);
    assert!(
        says.contains("taken for scatter here: baking soda"),
        "{says}"
    );
}

#[test]
fn a_bake_without_the_figure_is_left_out_and_told() {
    let mut trials = bakes(&[(80.0, 4.0, 4.0), (100.0, 4.0, 6.0)]);
    trials.push(bake(120.0, 4.0));
    let trials: Vec<&Trial> = trials.iter().collect();
    let found = answer(
        &trials,
        &sugar(&trials),
        Outcome::Centre,
        Wish::Largest,
        &settings(),
    );
    assert_eq!(found.left_out, [2]);
    assert!(
        found
            .says
            .last()
            .is_some_and(|it| it.starts_with("1 of 3 bakes is left out")),
        "{:?}",
        found.says
    );
}

#[test]
fn amounts_are_read_as_a_baker_means_them() {
    let mut trial = bake(90.0, 4.0);
    let settings = settings();
    let against = named(
        &[&trial],
        |it| matches!(it, Factor::AgainstFlour(part) if part.ingredient == "caster_sugar"),
    );
    // 90 g of sugar to 200 g of flour.
    assert_eq!(against.amount(&trial, &settings), Some(45.0));
    assert_eq!(against.said(45.0, &settings), "45 % of the flour");
    // What the recipe says, what is chosen, and what is written of the bake.
    assert_eq!(Factor::Oven.amount(&trial, &settings), Some(180.0));
    trial.say(OutcomeField::Oven, "150 C fan".into());
    assert_eq!(Factor::Oven.amount(&trial, &settings), Some(170.0));
    assert_eq!(Factor::Waited.amount(&trial, &settings), None);
    trial.say(OutcomeField::Waited, "25 min".into());
    assert_eq!(Factor::Waited.amount(&trial, &settings), Some(25.0));
}

#[test]
fn outcomes_stand_side_by_side_with_what_their_difference_says() {
    let mut trials = bakes(&[
        (100.0, 4.0, 6.0),
        (100.0, 4.0, 6.2),
        (80.0, 4.0, 6.15),
        (140.0, 4.0, 3.0),
    ]);
    trials[0].say(OutcomeField::HeightEdge, "5.5 cm".into());
    let trials: Vec<&Trial> = trials.iter().collect();
    let rows = beside(&trials, &[0, 2], &settings());
    let outcomes: Vec<Outcome> = rows.iter().map(|it| it.outcome).collect();
    assert_eq!(outcomes, [Outcome::Centre, Outcome::Edge, Outcome::Contour]);
    assert_eq!(
        rows[0].shown,
        [Some("6 cm".to_owned()), Some("6.2 cm".to_owned())]
    );
    assert!(
        rows[0].says.contains("no more than your own repeats"),
        "{}",
        rows[0].says
    );
    assert_eq!(rows[2].values, [Some(0.5), None]);
    assert_eq!(rows[2].says, "");
    let rows = beside(&trials, &[0, 3], &settings());
    assert!(
        rows[0].says.contains("more than your own repeats"),
        "{}",
        rows[0].says
    );
}
