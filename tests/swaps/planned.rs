//! Worked examples of others against our whole plan: every ingredient that a source changes, ours beside theirs.

use super::examples::{Example, examples, weighed};
use batterwright::baking::formula::{Habits, Weighed, weigh};
use batterwright::baking::ingredient::{Larder, PieceSize};
use batterwright::baking::recipe::read;
use batterwright::baking::worksheet::{Choices, Inputs, Settings, SwapPlan, swap_plan};

/// Opens the reason of a row whose recipe has no plan; our sentence follows.
const NO_PLAN: &str = "No plan: ";
/// Lines of the text above the first ingredient.
const HEAD: usize = 3;

fn inputs(example: &Example) -> Inputs {
    let text = format!("Cake\n\nIngredients\n{}\n", example.recipe.join("\n"));
    let mut inputs = Inputs {
        choices: Choices {
            region: Some(example.region),
            ..Choices::default()
        },
        ..Inputs::of_text(text)
    };
    let percent = (example.replaced * 100.0).round() as u8;
    let place = (example.line + HEAD, 0);
    inputs.swap(place, &example.to.join("+"), Some(percent));
    inputs
}

/// The recipe as it becomes, each line with whether its words are new.
fn becomes(example: &Example, before: &Inputs, plan: &SwapPlan) -> Vec<(Weighed, bool)> {
    let text = plan.after.recipe_text();
    let recipe = read(&text, Larder::of(example.region), &plan.after.corrections);
    let habits = Habits {
        region: example.region,
        filling: None,
        eggs: PieceSize::Large,
    };
    let was_there = |line: usize| {
        let words = text.lines().nth(line - 1).unwrap_or_default();
        before.text.lines().any(|before| before == words)
    };
    let lines = weigh(&recipe, &habits).lines.into_iter();
    lines
        .map(|line| {
            let is_new = !was_there(line.line);
            (line, is_new)
        })
        .collect()
}

/// Grams of an ingredient that a source changes: of what comes in, that which comes; of the rest, all there is.
fn ours(example: &Example, key: &str, lines: &[(Weighed, bool)]) -> f64 {
    // "Baking powder" is another kind in each country's words.
    let is_it = |other: &str| {
        other == key
            || [other, key]
                .iter()
                .all(|key| key.starts_with("baking_powder"))
    };
    let comes = example.to.iter().any(|to| is_it(to));
    let of_it = lines
        .iter()
        .filter(|(line, is_new)| is_it(line.ingredient.key) && (*is_new || !comes));
    of_it.map(|(line, _)| line.grams.mean.to_grams()).sum()
}

#[test]
fn our_plans_lie_within_their_rounding() {
    let mut planned = 0;
    for example in examples() {
        let inputs = inputs(&example);
        let own = Larder::of(example.region).own;
        let plan = match swap_plan(&inputs, &Settings::default(), own) {
            Ok(plan) => plan,
            Err(why) => {
                println!("{}: {why}", example.id);
                let said = example.plan_differs.strip_prefix(NO_PLAN);
                assert_eq!(said, Some(why.as_str()), "{}", example.id);
                continue;
            }
        };
        planned += 1;
        let lines = becomes(&example, &inputs, &plan);
        let given = weighed(&example, &example.gives);
        let steps = weighed(&example, &example.rounding);
        let (mut apart, mut told) = (Vec::new(), false);
        for (given, step) in given.iter().zip(&steps) {
            let key = given.ingredient.key;
            let ours = ours(&example, key, &lines);
            let theirs = given.grams.mean.to_grams();
            let half = step.grams.mean.to_grams() / 2.0;
            let is_near = (ours - theirs).abs() <= half;
            println!(
                "{} {key:<24} ours {ours:>6.1} g, theirs {theirs:>6.1} +- {half:.1}{}",
                example.id,
                if is_near { "" } else { ": apart" }
            );
            if !is_near {
                // A reason that speaks of other amounts is one of a plan that is no more.
                told |= example.plan_differs.contains(&format!("{ours} g"));
                apart.push(format!(
                    "{key}: {ours:.1} g, theirs {theirs:.1} +- {half:.1}"
                ));
            }
        }
        assert_eq!(
            apart.is_empty(),
            example.plan_differs.is_empty(),
            "{}: {apart:?}; said to differ: {:?}",
            example.id,
            example.plan_differs
        );
        assert!(
            told || apart.is_empty(),
            "{}: {apart:?}; no such amount in {:?}",
            example.id,
            example.plan_differs
        );
    }
    assert!(planned >= 60, "{planned} plans");
}
