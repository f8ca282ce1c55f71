//! The next bake worth doing: amounts with the recipe as it is among them, each to be kept as a version.

use super::asked::{Asked, factor_field, key};
use super::common::{button, folded, paragraph, tick};
use crate::baking::comparison::{
    Factor, Levels, NextBake, PlannedBake, Question, arms_of_two, next_bake as next, observed,
    plan_of_two, told_of_two,
};
use crate::baking::quantity::show;
use crate::baking::trial::Trial;
use crate::baking::worksheet::Settings;
use crate::ui::dom::{Element, element};
use leptos::prelude::*;

/// How far amounts may go from what they are now, as a share.
const AROUND: f64 = 0.4;
/// How far each of two things is moved at once, as a share.
const BOTH: f64 = 0.15;

/// What stands in the part.
pub fn next_bake(asked: Asked) -> Vec<Element> {
    let is_small = RwSignal::new(false);
    let second = RwSignal::new(String::new());
    let proposed = Memo::new(move |_| propose(asked, is_small.get()));
    let both = Memo::new(move |_| {
        let chosen = second.get();
        let other = asked.choices.with(|all| {
            let found = all.iter().find(|it| key(&it.factor) == chosen);
            found.map(|it| it.factor.clone())
        })?;
        let first = asked.factor.get()?;
        Some(plan(asked, first, other))
    });
    let said = Kept {
        asked,
        is_small,
        said: RwSignal::new(None),
    };
    vec![
        paragraph(
            "hint",
            "Goes by the thing, the outcome and the wish that are chosen above. One thing is moved, all else stays.",
        ),
        tick(
            "As small batches: a sixth of the recipe, in muffin cups, all in one oven. Small bakes are held against small ones only: they rise and bake otherwise than a whole cake.",
            move || is_small.get(),
            move || is_small.update(|it| *it = !*it),
        ),
        element("div")
            .class("comparison__shown")
            .attribute("role", "status")
            .children_of(move || proposed.with(words)),
        element("ul").class("next__bakes").children_of(move || {
            proposed.with(|it| {
                let Some(factor) = asked.factor.get() else {
                    return Vec::new();
                };
                let rows = it.bakes.iter().map(|bake| {
                    said.row(vec![(factor.clone(), bake.amount)], bake.control)
                });
                rows.collect()
            })
        }),
        folded("How this is found").child(paragraph(
            "figure__how",
            "Every amount that may be best is weighed by how well a curve about it goes through the bakes (Bayes' rule over a grid; Gelman and others, Bayesian Data Analysis, from memory); the next bake is where it tells most. How far amounts may go, how near is near enough and the usual scatter are our own judgement. Only the pH of the crumb is reckoned beforehand.",
        )),
        factor_field(
            "next-second",
            "Move a second thing in the same bakes",
            Some("no"),
            asked.choices,
            move || second.get(),
            move |key| second.set(key),
        ),
        element("div").class("comparison__shown").children_of(move || both.with(|plan| match plan {
            None => Vec::new(),
            Some(Err(sentence)) => vec![paragraph("trouble", sentence.clone())],
            Some(Ok((factors, bakes, arms))) => {
                let rows = |bakes: &[PlannedBake]| {
                    let rows = bakes.iter().map(|bake| {
                        let amounts = factors.iter().cloned().zip(bake.amounts).collect();
                        said.row(amounts, bake.control)
                    });
                    element("ul").class("next__bakes").children(rows)
                };
                let told = asked.bench.trials(|all| {
                    let trials: Vec<_> = all.iter().map(|kept| &kept.trial).collect();
                    let settings = asked.bench.settings();
                    told_of_two(&trials, factors, bakes, asked.outcome.get(), &settings)
                });
                let arms = told.bends.then(|| rows(arms));
                let told = told.says.into_iter().map(|words| paragraph("", words));
                told.chain([
                    paragraph("", "Both low and both high in every combination tell what each does, and whether one hangs on the other. The recipe as it is, twice, tells the scatter, and whether the best lies between."),
                    rows(bakes),
                ])
                .chain(arms)
                .collect()
            }
        })),
        said.status(),
    ]
}

fn propose(asked: Asked, is_small: bool) -> NextBake {
    let settings = asked.bench.settings();
    let (Some(factor), outcome) = (asked.factor.get(), asked.outcome.get()) else {
        return NextBake::default();
    };
    let Some(wish) = asked.wish.get() else {
        return NextBake {
            says: vec!["Write the figure that is wanted first.".to_owned()],
            ..NextBake::default()
        };
    };
    let now = asked
        .planned
        .with(|planned| factor.amount(planned, &settings));
    let Some(now) = now else {
        return NextBake {
            says: vec![format!(
                "How much there is of {} in the open recipe is not known: say it there first.",
                factor.words()
            )],
            ..NextBake::default()
        };
    };
    let (low, high) = range(&factor, now);
    let predicted = asked
        .bench
        .reckoned_best((&factor, low, high), (outcome, wish));
    let question = Question {
        factor: factor.words(),
        unit: factor.unit(&settings),
        now,
        low,
        high,
        step: step(&factor, now, &settings),
        predicted,
        wish,
        usual: outcome.usual(&settings),
    };
    // A version that is small is baked small.
    let is_small = is_small || asked.planned.with(Trial::is_small);
    let known = asked.bench.trials(|all| {
        let trials: Vec<_> = all.iter().map(|kept| &kept.trial).collect();
        observed(&trials, &factor, outcome, is_small, &settings)
    });
    next(&question, &known)
}

/// The amounts that come into question.
fn range(factor: &Factor, now: f64) -> (f64, f64) {
    match factor {
        // A fifth of the dial either way burns it or leaves it raw.
        Factor::Oven => (0.85 * now, 1.15 * now),
        Factor::Waited => (0.0, (2.0 * now).max(30.0)),
        _ => ((1.0 - AROUND) * now, (1.0 + AROUND) * now),
    }
}

/// What can be told apart. Of what is weighed in a few grams a bench scale tells nothing: a finer one, or a larger batch, is
/// what bakers take.
fn step(factor: &Factor, now: f64, settings: &Settings) -> f64 {
    let step = factor.step(settings);
    match factor {
        Factor::Weight(_) if now < 10.0 * step => step.min(0.1),
        _ => step,
    }
}

fn words(next: &NextBake) -> Vec<Element> {
    next.says
        .iter()
        .map(|it| paragraph("", it.clone()))
        .collect()
}

/// The two things, the bakes of their plan, and those that are added where its middle bends.
type Plan = Result<([Factor; 2], Vec<PlannedBake>, Vec<PlannedBake>), String>;

fn plan(asked: Asked, first: Factor, second: Factor) -> Plan {
    if first == second {
        return Err("Choose another thing for the second: this one is moved already.".to_owned());
    }
    let settings = asked.bench.settings();
    let levels = |factor: &Factor| {
        let now = asked
            .planned
            .with(|planned| factor.amount(planned, &settings));
        let now = now.ok_or_else(|| {
            format!(
                "How much there is of {} in the open recipe is not known.",
                factor.words()
            )
        })?;
        let step = step(factor, now, &settings);
        Ok::<_, String>(Levels {
            now,
            by: (BOTH * now).max(step),
            step,
        })
    };
    let levels = [levels(&first)?, levels(&second)?];
    Ok(([first, second], plan_of_two(levels)?, arms_of_two(levels)?))
}

/// What becomes of a touch.
#[derive(Clone, Copy)]
struct Kept {
    asked: Asked,
    is_small: RwSignal<bool>,
    said: RwSignal<Option<Result<String, String>>>,
}

impl Kept {
    /// A bake that is proposed, with the touch that keeps it as a version.
    fn row(self, amounts: Vec<(Factor, f64)>, is_control: bool) -> Element {
        let settings = self.asked.bench.settings();
        let named: Vec<String> = amounts
            .iter()
            .map(|(factor, amount)| match factor {
                Factor::Oven | Factor::Waited => {
                    format!("{} {}", factor.words(), factor.said(*amount, &settings))
                }
                _ => format!("{} {}", factor.said(*amount, &settings), factor.words()),
            })
            .collect();
        let name = named.join(", ");
        let words = match is_control {
            true => format!("{name}: the recipe as it is"),
            false => name.clone(),
        };
        let keep = button("button", "Keep as a version", {
            let name = name.clone();
            move || self.keep(&name, &amounts)
        })
        .attribute("aria-label", format!("Keep as a version: {name}"));
        element("li")
            .class("next__bake")
            .child(
                element("span")
                    .attribute("dir", "auto")
                    .text(show::sentence(&words)),
            )
            .child(keep)
    }

    fn keep(self, name: &str, amounts: &[(Factor, f64)]) {
        let is_small = self.is_small.get_untracked();
        let name = match is_small {
            true => format!("{name}, small"),
            false => name.to_owned(),
        };
        let kept = self.asked.bench.keep_moved(&name, amounts, is_small);
        self.said.set(Some(kept.map(|()| {
            format!("Kept as the version \"{name}\": open it in the list above, bake it, write the bake down.")
        })));
    }

    fn status(self) -> Element {
        element("div")
            .attribute("role", "status")
            .children_of(move || {
                let said = self.said.get().map(|said| match said {
                    Ok(words) => paragraph("hint", words),
                    Err(words) => paragraph("trouble", words),
                });
                said.into_iter().collect()
            })
    }
}
