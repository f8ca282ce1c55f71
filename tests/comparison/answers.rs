//! What bakes say of a factor and an outcome. Figures are worked by hand; recipes are invented.

use super::{bake, settings};
use batterwright::baking::comparison::{
    Factor, Levels, Outcome, Part, answer, arms_of_two, as_planned, beside, factor_choices,
    make_small, moved, observed, plan_of_two, reckoned_best, told_of_two,
};
use batterwright::baking::ingredient::{Larder, Region};
use batterwright::baking::statistics::best::Wish;
use batterwright::baking::statistics::curve::Shape;
use batterwright::baking::trial::{OutcomeField, Trial};
use batterwright::baking::worksheet::{Inputs, WeighIn, weigh_in_sheet, worksheet};

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
        Some(Wish::Largest),
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
                Some(Wish::Largest),
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
        Some(Wish::Largest),
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

/// The curve of [`a_curve_is_found_with_its_best_amount`], with cups of the same batter beside it that stand 3 cm high.
#[test]
fn small_bakes_and_whole_ones_are_held_apart() {
    let mut whole = bakes(&[
        (80.0, 4.0, 3.75),
        (100.0, 4.0, 5.75),
        (120.0, 4.0, 5.75),
        (140.0, 4.0, 3.75),
    ]);
    whole[1].say(OutcomeField::CrumbPh, "7.2".into());
    let small = |sugar: f64, height: f64| {
        let mut inputs = bake(sugar, 4.0).plan;
        make_small(&mut inputs, 444.0 + sugar);
        let own = Larder::of(Region::Uk).own;
        let mut trial = Trial::of(&inputs, &settings(), own, &WeighIn::default(), 2000);
        trial.say(OutcomeField::HeightCentre, format!("{height} cm"));
        trial.say(OutcomeField::CrumbPh, "7".into());
        trial
    };
    let cups = [small(80.0, 3.0), small(140.0, 3.2)];
    let all: Vec<&Trial> = whole.iter().chain(&cups).collect();
    let asked = |trials: &[&Trial], outcome| {
        answer(
            trials,
            &sugar(&all),
            outcome,
            Some(Wish::Largest),
            &settings(),
        )
    };
    let found = asked(&all, Outcome::Centre);
    assert_eq!(found.other_size, [4, 5]);
    let best = found.best.expect("a best amount");
    assert!((best.amount - 110.0).abs() < 1e-6, "{}", best.amount);
    let last = found.says.last().expect("a sentence");
    assert!(last.starts_with("2 small bakes are left out"), "{last}");
    // Where they are the more, the whole one stands aside.
    let found = asked(&[all[0], all[4], all[5]], Outcome::Centre);
    assert_eq!(found.other_size, [0]);
    let last = found.says.last().expect("a sentence");
    assert!(last.starts_with("1 whole bake is left out"), "{last}");
    // What is baked small next has the cups alone to go by, a whole one the others.
    let known = |is_small| {
        observed(&all, &sugar(&all), Outcome::Centre, is_small, &settings())
            .iter()
            .map(|it| it.outcome)
            .collect::<Vec<_>>()
    };
    assert_eq!(known(true), [3.0, 3.2]);
    assert_eq!(known(false), [3.75, 5.75, 5.75, 3.75]);
    // The pH of what was mixed is the same in a cup.
    let found = asked(&all, Outcome::CrumbPh);
    assert!(found.other_size.is_empty());
    assert_eq!(found.points.len(), 3);
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
        rows[0]
            .says
            .contains("within the scatter: by your own repeats"),
        "{}",
        rows[0].says
    );
    assert_eq!(rows[2].values, [Some(0.5), None]);
    assert_eq!(rows[2].says, "");
    let rows = beside(&trials, &[0, 3], &settings());
    assert!(
        rows[0]
            .says
            .contains("beyond the scatter: by your own repeats"),
        "{}",
        rows[0].says
    );
    let rows = beside(&trials, &[0, 0], &settings());
    assert_eq!(rows[0].says, "Alike.");
}

#[test]
fn a_recipe_is_moved_as_it_would_be_weighed() {
    let settings = settings();
    let own = Larder::of(Region::Uk).own;
    // Two lines of sugar, one of them beside the batter.
    let text = "Quay loaf\n\n200 g plain flour\n90 g caster sugar\n30 g caster sugar\n4 g baking soda\n180 g buttermilk\n\nStir it all. Bake in a 20 cm round tin at 180 C for 35 minutes.";
    let inputs = Inputs::of_text(text);
    let trial = as_planned(&inputs, &settings, own);
    let sugar = sugar(&[&trial]);
    assert_eq!(sugar.amount(&trial, &settings), Some(120.0));
    let to = |factor: &Factor, amount: f64| {
        let moved = moved(&inputs, factor, amount, &settings, own).expect("a recipe");
        as_planned(&moved, &settings, own)
    };
    // Three quarters of it stay in the first line.
    let less = to(&sugar, 100.0);
    let grams: Vec<f64> = less
        .plan
        .corrections
        .iter()
        .filter_map(|it| it.grams)
        .collect();
    assert_eq!(grams, [75.0, 25.0]);
    assert_eq!(sugar.amount(&less, &settings), Some(100.0));
    let against = named(
        &[&trial],
        |it| matches!(it, Factor::AgainstFlour(part) if part.ingredient == "caster_sugar"),
    );
    assert_eq!(sugar.amount(&to(&against, 50.0), &settings), Some(100.0));
    assert_eq!(
        Factor::Oven.amount(&to(&Factor::Oven, 165.0), &settings),
        Some(165.0)
    );
    assert_eq!(
        Factor::Waited.amount(&to(&Factor::Waited, 12.0), &settings),
        Some(12.0)
    );
    let none = Part {
        ingredient: "salt".into(),
        ..Part::default()
    };
    assert!(moved(&inputs, &Factor::Weight(none), 3.0, &settings, own).is_none());
}

#[test]
fn a_small_batch_is_a_sixth_in_cups() {
    let mut inputs = bake(100.0, 4.0).plan;
    // 544 g of batter: a sixth are 91 g, in two cups.
    make_small(&mut inputs, 544.0);
    assert_eq!(inputs.choices.shelf.len(), 1);
    assert_eq!(inputs.choices.shelf[0].count, "2");
    let own = Larder::of(Region::Uk).own;
    let times = weigh_in_sheet(&inputs, &settings(), own, &WeighIn::default()).times;
    assert!((times - 1.0 / 6.0).abs() < 1e-3, "{times}");
}

#[test]
fn the_soda_for_a_crumb_that_is_wished_is_reckoned() {
    let trial = bake(100.0, 4.0);
    let (settings, own) = (settings(), Larder::of(Region::Uk).own);
    let soda = named(
        &[&trial],
        |it| matches!(it, Factor::Weight(part) if part.ingredient == "baking_soda"),
    );
    let reckoned = |wanted| {
        let asked = (Outcome::CrumbPh, Wish::Nearest(wanted));
        reckoned_best(&trial.plan, (&soda, 1.0, 7.0), asked, &settings, own)
    };
    // As much as there is gives the crumb that there is.
    let now = worksheet(&trial.plan, &settings)
        .leavening
        .rule
        .expect("a crumb")
        .crumb
        .mean;
    let (best, deviation) = reckoned(now).expect("an amount");
    assert!((best - 4.0).abs() < 0.05, "{best}");
    assert!(deviation > 0.0 && deviation <= 3.0, "{deviation}");
    assert!(reckoned(3.0).is_none());
    let height = (Outcome::Centre, Wish::Largest);
    assert!(reckoned_best(&trial.plan, (&soda, 1.0, 7.0), height, &settings, own).is_none());
}

/// What a plan for sugar, 80 to 120 g, and soda, 3 to 5 g, tells of these bakes.
fn told_of_plan(trials: &[Trial]) -> String {
    let trials: Vec<&Trial> = trials.iter().collect();
    let soda = named(
        &trials,
        |it| matches!(it, Factor::Weight(part) if part.ingredient == "baking_soda"),
    );
    let level = |now, by, step| Levels { now, by, step };
    let plan = plan_of_two([level(100.0, 20.0, 1.0), level(4.0, 1.0, 0.1)]).expect("a plan");
    let factors = [sugar(&trials), soda];
    told_of_two(&trials, &factors, &plan, Outcome::Centre, &settings())
        .says
        .join(" ")
}

const CORNERS: [(f64, f64, f64); 4] = [
    (80.0, 3.0, 4.0),
    (120.0, 3.0, 5.0),
    (80.0, 5.0, 6.0),
    (120.0, 5.0, 9.0),
];

/// By hand: sugar (5 + 9 − 4 − 6) / 2 = 2, soda (6 + 9 − 4 − 5) / 2 = 3, together (4 + 9 − 5 − 6) / 2 = 1; the corners' mean
/// is 6, as the middle's.
#[test]
fn a_plan_for_two_tells_both_and_whether_they_hang_together() {
    let mut all = bakes(&CORNERS);
    all.extend(bakes(&[(100.0, 4.0, 6.1), (100.0, 4.0, 5.9)]));
    let says = told_of_plan(&all);
    assert!(
        says.contains("From 80 g to 120 g of caster sugar, height in the middle goes up by 2 cm"),
        "{says}"
    );
    assert!(
        says.contains("From 3 g to 5 g of baking soda, height in the middle goes up by 3 cm"),
        "{says}"
    );
    assert!(
        says.contains("hangs on baking soda") && says.contains("gains 1 cm more"),
        "{says}"
    );
    assert!(says.contains("no bend is seen"), "{says}");
    // A middle that stands higher than the corners say: the best lies inside.
    let mut bent = bakes(&CORNERS);
    bent.extend(bakes(&[(100.0, 4.0, 8.1), (100.0, 4.0, 7.9)]));
    assert!(
        told_of_plan(&bent).contains("In the middle it is 2 cm more"),
        "{}",
        told_of_plan(&bent)
    );
}

#[test]
fn a_plan_that_is_not_baked_through_tells_nothing_yet() {
    assert_eq!(
        told_of_plan(&bakes(&[(100.0, 4.0, 6.0), (80.0, 4.0, 5.0)])),
        ""
    );
    let three = told_of_plan(&bakes(&CORNERS[..3]));
    assert!(
        three.starts_with("3 of the four corners are baked"),
        "{three}"
    );
    // The fourth was baked in another pan.
    let mut all = bakes(&CORNERS);
    all[0].say(OutcomeField::Pan, "25 cm square tin".into());
    let says = told_of_plan(&all);
    assert!(
        says.starts_with("Left aside, since something else differs too: one bake. 3 of the four"),
        "{says}"
    );
    // All alike beyond the scatter: too close to call, twice.
    let flat: Vec<_> = CORNERS
        .iter()
        .map(|(sugar, soda, _)| (*sugar, *soda, 6.0))
        .collect();
    assert_eq!(
        told_of_plan(&bakes(&flat))
            .matches("too close to call")
            .count(),
        2
    );
}

/// By hand: 9 − x² − 2 y², with x the sugar and y the soda, coded: 6 at the corners, 9 in the middle, 8 and 7 on the arms. It is
/// highest in the middle.
#[test]
fn a_plan_with_its_arms_tells_where_the_best_lies() {
    let mut all = bakes(&CORNERS.map(|(sugar, soda, _)| (sugar, soda, 6.0)));
    all.extend(bakes(&[(100.0, 4.0, 9.0), (100.0, 4.0, 9.0)]));
    let level = |now, by, step| Levels { now, by, step };
    let arms = arms_of_two([level(100.0, 20.0, 1.0), level(4.0, 1.0, 0.1)]).expect("arms");
    let arms: Vec<[f64; 2]> = arms.iter().map(|arm| arm.amounts).collect();
    assert_eq!(
        arms,
        [[80.0, 4.0], [120.0, 4.0], [100.0, 3.0], [100.0, 5.0]]
    );
    assert!(
        told_of_plan(&all).contains("the four bakes below"),
        "{}",
        told_of_plan(&all)
    );
    all.extend(bakes(&[
        (80.0, 4.0, 8.0),
        (120.0, 4.0, 8.0),
        (100.0, 3.0, 7.0),
        (100.0, 5.0, 7.0),
    ]));
    let says = told_of_plan(&all);
    assert!(
        says.contains("highest at about 100 g of caster sugar and 4 g of baking soda: 9 cm"),
        "{says}"
    );
}
