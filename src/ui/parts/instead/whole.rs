//! The whole cake: what it is to be without, what is not in the house, and what is to stay as it is.

use super::{Weighed, change};
use crate::baking::substitute::Without;
use crate::baking::worksheet::SwapEntry;
use crate::ui::dom::{Element, element};
use crate::ui::parts::common::{is_open, paragraph, tick};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// How many lines get a tick; a long paste can bring thousands.
const MOST: usize = 100;

/// One of the things that a cake can be without.
type Part = fn(&mut Without) -> &mut bool;

/// The ticks.
pub fn whole(bench: Bench, lines: Memo<Vec<Weighed>>) -> Element {
    element("div")
        .class("instead__step no-print")
        .child(without(bench))
        .child(fold("I do not have ...", move || missing(bench, lines)))
        .child(fold("What is to stay as it is", move || held(bench, lines)))
}

fn without(bench: Bench) -> Element {
    let ticks: [(&str, Part); 5] = [
        ("Plant-based", |without| &mut without.animals),
        ("Without gluten", |without| &mut without.gluten),
        ("Without nuts", |without| &mut without.nuts),
        ("Without milk", |without| &mut without.milk),
        ("Without egg", |without| &mut without.egg),
    ];
    let ticks = ticks.map(|(words, part)| {
        tick(
            words,
            move || *part(&mut bench.swaps(|swaps| swaps.without)),
            move || {
                change(bench, |inputs| {
                    let set = part(&mut inputs.choices.swaps.without);
                    *set = !*set;
                });
            },
        )
    });
    group("Or make the whole cake", ticks)
}

fn group(legend: &'static str, ticks: impl IntoIterator<Item = Element>) -> Element {
    element("fieldset")
        .class("choice")
        .child(element("legend").class("label").text(legend))
        .child(element("div").class("instead__ticks").children(ticks))
}

/// A fold whose inside is drawn while it is open.
fn fold(words: &'static str, inside: impl Fn() -> Vec<Element> + 'static) -> Element {
    let open = RwSignal::new(false);
    element("details")
        .class("figure")
        .on("toggle", move |event| open.set(is_open(event)))
        .child(
            element("summary")
                .class("figure__line")
                .child(element("span").class("figure__label").text(words)),
        )
        .child(element("div").children_of(move || match open.get() {
            true => inside(),
            false => Vec::new(),
        }))
}

/// The recipe's own ingredients, each once.
fn missing(bench: Bench, lines: Memo<Vec<Weighed>>) -> Vec<Element> {
    let mut known: Vec<(&'static str, &'static str)> = Vec::new();
    lines.with(|lines| {
        for line in lines {
            if !known.iter().any(|(key, _)| *key == line.key) {
                known.push((line.key, line.name));
            }
        }
    });
    let many = known.len();
    let ticks = known.into_iter().take(MOST).map(|(key, name)| {
        let is_missing = move |swaps: &SwapEntry| swaps.missing.iter().any(|it| it == key);
        tick(
            name,
            move || bench.swaps(is_missing),
            move || {
                change(bench, |inputs| {
                    let swaps = &mut inputs.choices.swaps;
                    if is_missing(swaps) {
                        swaps.missing.retain(|it| it != key);
                    } else {
                        swaps.missing.push(key.to_owned());
                    }
                });
            },
        )
    });
    with_rest(group("Not in the house", ticks), many)
}

fn held(bench: Bench, lines: Memo<Vec<Weighed>>) -> Vec<Element> {
    let nothing_new = tick(
        "Add nothing that the recipe does not have",
        move || bench.swaps(|swaps| swaps.nothing_new),
        move || {
            change(bench, |inputs| {
                let swaps = &mut inputs.choices.swaps;
                swaps.nothing_new = !swaps.nothing_new;
            });
        },
    );
    let stays = Memo::new(move |_| {
        bench.inputs(|inputs| {
            let held = inputs.choices.swaps.held.iter();
            held.filter_map(|words| inputs.line_of(words))
                .collect::<Vec<_>>()
        })
    });
    let (many, ticks) = lines.with(|lines| {
        let ticks = lines.iter().take(MOST).map(|line| {
            let place = line.place;
            let is_held = move || stays.with(|stays| stays.contains(&place));
            tick(line.words.clone(), is_held, move || {
                let held = !is_held();
                change(bench, |inputs| inputs.hold(place, held));
            })
        });
        (lines.len(), ticks.collect::<Vec<_>>())
    });
    let group = group(
        "These amounts do not move",
        std::iter::once(nothing_new).chain(ticks),
    );
    with_rest(group, many)
}

fn with_rest(group: Element, many: usize) -> Vec<Element> {
    let rest = (many > MOST).then(|| {
        paragraph(
            "hint",
            format!("The first {MOST} of {many} ingredients are shown."),
        )
    });
    std::iter::once(group).chain(rest).collect()
}
