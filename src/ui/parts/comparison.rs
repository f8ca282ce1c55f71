//! Several bakes held against one another: what changed, what came out, and what one thing does.

use super::asked::Asked;
use super::common::{folded, folded_while, paragraph, tick};
use super::comparison_drawing::{curve, minutes, phs, slices};
use super::next_bake::next_bake;
use crate::baking::comparison::{OutcomeRow, beside};
use crate::baking::quantity::show;
use crate::baking::trial::{Trial, changes};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// More bakes than these do not fit beside one another on a phone.
const MOST: usize = 4;

/// The parts, below the list of bakes; hidden while there is no bake. Each comes a frame after the one before it: of hundreds
/// of bakes the list is there at once, and the page answers in between.
pub fn comparison(bench: Bench) -> Element {
    let asked = Asked::of(bench);
    let drawn = RwSignal::new(0);
    Effect::new(move |has_begun: Option<bool>| {
        let begins = has_begun != Some(true) && !bench.trials(<[_]>::is_empty);
        if begins {
            draw_next(drawn);
        }
        begins || has_begun == Some(true)
    });
    element("div")
        .class("comparison")
        .children([
            part("Bakes side by side", drawn, 0, move || side_by_side(bench)),
            part("What one thing does", drawn, 1, move || one_thing(asked)),
            part("The next bake", drawn, 2, move || next_bake(asked)),
        ])
        .hidden_while(move || bench.trials(<[_]>::is_empty))
}

/// How many parts there are.
const PARTS: usize = 3;

fn draw_next(drawn: RwSignal<usize>) {
    device::after_frame(move || {
        // The page may be left by then.
        let now = drawn.try_update(|drawn| {
            *drawn += 1;
            *drawn
        });
        if now.is_some_and(|now| now < PARTS) {
            draw_next(drawn);
        }
    });
}

fn part(
    title: &'static str,
    drawn: RwSignal<usize>,
    place: usize,
    inside: impl Fn() -> Vec<Element> + 'static,
) -> Element {
    let is_its_turn = Memo::new(move |_| place < drawn.get());
    let inside = move || match is_its_turn.get() {
        true => inside(),
        false => Vec::new(),
    };
    element("section")
        .class("part")
        .attribute("aria-label", title)
        .child(element("h2").class("part__title").text(title))
        .child(element("div").class("trial__part").children_of(inside))
}

/// Bakes that are chosen, by their numbers.
fn side_by_side(bench: Bench) -> Vec<Element> {
    // The last two, until the baker chooses.
    let chosen = RwSignal::new(None::<Vec<u64>>);
    let now = Memo::new(move |_| {
        bench.trials(|all| match chosen.get() {
            Some(chosen) => chosen,
            None => {
                let last = &all[all.len().saturating_sub(2)..];
                last.iter().map(|it| it.id).collect()
            }
        })
    });
    let is_open = RwSignal::new(false);
    let turn = move |id: u64| {
        let mut next = now.get_untracked();
        match next.iter().position(|it| *it == id) {
            Some(at) => drop(next.remove(at)),
            None => next.push(id),
        }
        // The one that was chosen first makes room.
        if next.len() > MOST {
            next.remove(0);
        }
        chosen.set(Some(next));
    };
    let ticks = move || {
        if !is_open.get() {
            return Vec::new();
        }
        bench.trials(|all| {
            let ticks = all.iter().rev().map(|kept| {
                let id = kept.id;
                tick(
                    kept.called(),
                    move || now.with(|now| now.contains(&id)),
                    move || turn(id),
                )
            });
            ticks.collect()
        })
    };
    let choose = folded_while("figure no-print", "Choose the bakes", is_open).child(
        element("div")
            .class("comparison__choices")
            .attribute("role", "group")
            .attribute("aria-label", "Bakes to compare, four at most")
            .children_of(ticks),
    );
    let shown = element("div")
        .class("comparison__shown")
        .children_of(move || {
            let settings = bench.settings();
            bench.trials(|all| {
                let trials: Vec<&Trial> = all.iter().map(|kept| &kept.trial).collect();
                let place = |id: &u64| all.iter().position(|it| it.id == *id);
                let places: Vec<usize> = now.with(|now| now.iter().filter_map(place).collect());
                let names: Vec<String> = places.iter().map(|at| all[*at].called()).collect();
                if places.len() < 2 {
                    return vec![paragraph(
                        "hint",
                        "Write a second bake down, or choose two: then it is told what changed and what came of it.",
                    )];
                }
                let rows = beside(&trials, &places, &settings);
                let mut shown = differences(&trials, &places, &names);
                shown.extend(outcomes(&rows, &names));
                shown.extend(drawings(&rows));
                shown
            })
        });
    vec![choose, shown]
}

/// What changed from the first to each of the others.
fn differences(trials: &[&Trial], places: &[usize], names: &[String]) -> Vec<Element> {
    let legend = names.iter().enumerate().map(|(at, name)| {
        element("li").attribute("dir", "auto").text(match at {
            0 => name.clone(),
            _ => {
                let changed = changes(trials[places[0]], trials[places[at]]);
                match changed.line.as_str() {
                    "" => format!("{name}: a repeat of the first."),
                    line => format!("{name}, against the first: {line}. {}", changed.tells),
                }
            }
        })
    });
    vec![element("ol").class("comparison__names").children(legend)]
}

/// Every outcome of every bake, and what the difference says.
fn outcomes(rows: &[OutcomeRow], names: &[String]) -> Vec<Element> {
    if rows.is_empty() {
        return vec![paragraph(
            "hint",
            "Nothing that came out of them is written down yet.",
        )];
    }
    let facts = rows.iter().map(|row| {
        let figures = row.shown.iter().enumerate().map(|(at, shown)| {
            element("li")
                .attribute(
                    "aria-label",
                    match shown {
                        Some(shown) => format!("{}: {shown}", names[at]),
                        None => format!("{}: not measured", names[at]),
                    },
                )
                .child(
                    element("span")
                        .class("comparison__number")
                        .text(format!("{}: ", at + 1)),
                )
                .text(shown.clone().unwrap_or_else(|| "not measured".to_owned()))
        });
        element("div")
            .class("comparison__outcome")
            .child(
                element("h3")
                    .class("lesson__title")
                    .text(row.outcome.words()),
            )
            .child(element("ul").class("comparison__figures").children(figures))
            .children((!row.says.is_empty()).then(|| paragraph("hint", row.says.clone())))
    });
    facts.collect()
}

fn drawings(rows: &[OutcomeRow]) -> Vec<Element> {
    [slices(rows), phs(rows), minutes(rows)]
        .into_iter()
        .flatten()
        .collect()
}

fn one_thing(asked: Asked) -> Vec<Element> {
    let said = element("div")
        .class("comparison__shown")
        .attribute("role", "status")
        .children_of(move || {
            asked.answer.with(|answer| {
                let says = answer.says.iter().map(|it| paragraph("", it.clone()));
                says.collect()
            })
        });
    let drawn = element("div").children_of(move || {
        asked
            .answer
            .with(|answer| curve(asked, answer))
            .into_iter()
            .collect()
    });
    let is_open = RwSignal::new(false);
    let figures = folded_while("figure", "The bakes in figures", is_open).child(
        element("ul").children_of(move || {
            if !is_open.get() {
                return Vec::new();
            }
            let bench = asked.bench;
            asked.answer.with(|answer| {
                bench.trials(|all| {
                    let points = answer.points.iter().filter_map(|point| {
                        let name = all.get(point.trial)?.called();
                        let (amount, outcome) = (
                            asked.amount_said(point.amount),
                            asked.outcome_said(point.outcome),
                        );
                        let words = format!("{name}: {amount}, {}", show::amid(&outcome));
                        Some(element("li").attribute("dir", "auto").text(words))
                    });
                    points.collect()
                })
            })
        }),
    );
    let how = folded("How this is found").child(paragraph(
        "figure__how",
        "Least squares (NIST/SEMATECH e-Handbook of Statistical Methods, 4.1.4). A slope or a bend is drawn only where scatter alone would make as much in less than one case of ten (Draper and Smith, Applied Regression Analysis, from memory). Where the best amount lies is told by Fieller's interval (1954). The usual scatter of each outcome is our own judgement.",
    ));
    vec![asked.fields(), drawn, said, how, figures]
}
