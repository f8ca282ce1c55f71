//! What is asked of several bakes: which thing, which outcome, what is wanted of it. The same is asked of the curve and of
//! the next bake.

use super::common::{select, text_field};
use crate::baking::comparison::{Answer, Factor, FactorChoice, Outcome, answer, factor_choices};
use crate::baking::pan::plain_number;
use crate::baking::quantity::show;
use crate::baking::statistics::best::Wish;
use crate::baking::trial::{Scale, Trial};
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The question, as signals of the page.
#[derive(Clone, Copy)]
pub struct Asked {
    /// The bench.
    pub bench: Bench,
    /// The open recipe as it is planned.
    pub planned: Memo<Trial>,
    /// The things that may be chosen.
    pub choices: Memo<Vec<FactorChoice>>,
    /// The one that is chosen.
    pub factor: Memo<Option<Factor>>,
    /// Which outcome.
    pub outcome: RwSignal<Outcome>,
    /// What is wanted of it; `None` while no figure says it.
    pub wish: Memo<Option<Wish>>,
    /// What the bakes say.
    pub answer: Memo<Answer>,
    chosen: RwSignal<String>,
    wanted: RwSignal<usize>,
    near: RwSignal<String>,
}

const NEAREST: usize = 2;

impl Asked {
    /// Nothing is chosen yet: the first thing that differs is asked about, and the first outcome that was measured.
    pub fn of(bench: Bench) -> Self {
        let planned = Memo::new(move |_| bench.planned());
        let choices = Memo::new(move |_| {
            let settings = bench.settings();
            planned.with(|planned| {
                bench.trials(|all| {
                    let of_bakes = all.iter().map(|kept| &kept.trial);
                    let trials: Vec<&Trial> = of_bakes.chain([planned]).collect();
                    factor_choices(&trials, &settings)
                })
            })
        });
        let chosen = RwSignal::new(String::new());
        let factor = Memo::new(move |_| {
            let chosen = chosen.get();
            choices.with(|all| {
                let found = all.iter().find(|it| key(&it.factor) == chosen);
                Some(found.or(all.first())?.factor.clone())
            })
        });
        let outcome = RwSignal::new(Outcome::Centre);
        let (wanted, near) = usual_wish(Outcome::Centre);
        let (wanted, near) = (RwSignal::new(wanted), RwSignal::new(near.to_owned()));
        let wish = Memo::new(move |_| match wanted.get() {
            0 => Some(Wish::Largest),
            1 => Some(Wish::Smallest),
            _ => plain_number(near.get().trim()).map(Wish::Nearest),
        });
        let answer = Memo::new(move |_| {
            let (settings, wish) = (bench.settings(), wish.get());
            let (Some(factor), outcome) = (factor.get(), outcome.get()) else {
                return Answer::default();
            };
            bench.trials(|all| {
                let trials: Vec<&Trial> = all.iter().map(|kept| &kept.trial).collect();
                answer(&trials, &factor, outcome, wish, &settings)
            })
        });
        Self {
            bench,
            planned,
            choices,
            factor,
            outcome,
            wish,
            answer,
            chosen,
            wanted,
            near,
        }
    }

    /// The fields of the question.
    pub fn fields(self) -> Element {
        let outcomes: Vec<Outcome> = Outcome::all().collect();
        let names = outcomes.iter().map(|it| it.words()).collect();
        let (places, values) = (outcomes.clone(), outcomes);
        let outcome = select(
            "asked-outcome".into(),
            "What came out",
            names,
            move || {
                let now = self.outcome.get();
                places.iter().position(|it| *it == now).unwrap_or(0)
            },
            move |at| {
                if let Some(outcome) = values.get(at) {
                    let (wanted, near) = usual_wish(*outcome);
                    self.wanted.set(wanted);
                    self.near.set(near.to_owned());
                    self.outcome.set(*outcome);
                }
            },
        );
        let wanted = select(
            "asked-wish".into(),
            "Wanted",
            vec!["as high as can be", "as low as can be", "near to a figure"],
            move || self.wanted.get(),
            move |at| self.wanted.set(at),
        );
        let near = text_field(
            "asked-near".into(),
            "decimal",
            move || {
                let unit = self.outcome.get().unit(&self.bench.settings());
                format!(
                    "Near to{}",
                    if unit.is_empty() {
                        String::new()
                    } else {
                        format!(",{unit}")
                    }
                )
            },
            move || self.near.get(),
            move || {
                self.wish
                    .get()
                    .is_none()
                    .then(|| "Write the figure that is wanted, such as 7.".to_owned())
            },
            move |typed| self.near.set(typed),
        );
        element("div").class("asked").children([
            self.factor_field(),
            outcome,
            wanted,
            element("div")
                .child(near)
                .hidden_while(move || self.wanted.get() != NEAREST),
        ])
    }

    /// The list of things, drawn anew when there are others.
    fn factor_field(self) -> Element {
        factor_field(
            "asked-factor",
            "The thing that is moved",
            None,
            self.choices,
            move || {
                self.factor
                    .with(|it| it.as_ref().map(key).unwrap_or_default())
            },
            move |key| self.chosen.set(key),
        )
    }

    /// A figure of what came out, with its unit.
    pub fn outcome_said(self, value: f64) -> String {
        self.outcome.get().said(value, &self.bench.settings())
    }

    /// An amount of the thing with its unit.
    pub fn amount_said(self, amount: f64) -> String {
        let settings = self.bench.settings();
        self.factor
            .with(|it| it.as_ref().map(|it| it.said(amount, &settings)))
            .unwrap_or_default()
    }
}

/// A choice of a thing; `none` is the first option where there need not be one.
pub fn factor_field(
    id: &'static str,
    label: &'static str,
    none: Option<&'static str>,
    choices: Memo<Vec<FactorChoice>>,
    now: impl Fn() -> String + Clone + 'static,
    choose: impl Fn(String) + Clone + 'static,
) -> Element {
    let drawn = move || {
        let option =
            |value: String, words: String| element("option").attribute("value", value).text(words);
        let none = none.map(|words| option(String::new(), words.to_owned()));
        let things = choices.with(|all| {
            let things = all.iter().map(|it| {
                let differs = if it.differs { ", differs" } else { "" };
                let words = format!(
                    "{}{}{differs}",
                    show::sentence(&it.factor.words()),
                    it.factor.measure()
                );
                option(key(&it.factor), words)
            });
            things.collect::<Vec<_>>()
        });
        vec![
            element("select")
                .class("input")
                .attribute("id", id)
                .children(none.into_iter().chain(things))
                .value_of(now.clone())
                .on_value("change", choose.clone()),
        ]
    };
    element("div")
        .class("field")
        .child(
            element("label")
                .class("label")
                .attribute("for", id)
                .text(label),
        )
        .child(element("div").children_of(drawn))
}

/// What a thing is known by in a list.
pub fn key(factor: &Factor) -> String {
    format!("{}{}", factor.words(), factor.measure())
}

/// What is usually wanted of an outcome: its place in the list, and the figure that it is to be near to.
fn usual_wish(outcome: Outcome) -> (usize, &'static str) {
    match outcome {
        Outcome::Centre | Outcome::Edge | Outcome::Points(Scale::Flavour) => (0, ""),
        // The middle of a scale is what a cake is usually wanted to be.
        Outcome::Points(_) => (NEAREST, "3"),
        _ => (NEAREST, ""),
    }
}
