//! What stands at the head of every page while timers run: how long the next one has, and an alarm once one has rung.

use super::common::button;
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// How many minutes more are offered once a timer has rung.
const MORE: f64 = 5.0;

/// Timers that run, and the ones that have rung.
pub fn alarm(bench: Bench) -> Element {
    let due = Memo::new(move |_| {
        let now = bench.clock();
        bench.timers(|timers| {
            let due = timers.due(now);
            due.map(|timer| (timer.id, timer.name.clone(), timer.recipe.clone()))
                .collect::<Vec<_>>()
        })
    });
    let rung = element("div")
        .attribute("role", "alert")
        .children_of(move || {
            due.get()
                .into_iter()
                .map(|(id, name, recipe)| one(bench, id, name, recipe))
                .collect()
        });
    element("section")
        .class("alarms")
        .attribute("aria-label", "Time left")
        .child(rung)
        .child(running(bench))
}

fn one(bench: Bench, id: u32, name: String, recipe: String) -> Element {
    let of = if recipe.is_empty() {
        String::new()
    } else {
        format!(", {recipe}")
    };
    let more = button("button alarm__button", "5 minutes more", move || {
        bench.change_timer(id, |timer, now| timer.add(MORE, now));
    });
    let stop = button("button button--strong alarm__button", "Stop", move || {
        bench.put_timer_away(id);
    });
    let more = more.attribute("aria-label", format!("5 minutes more for {name}"));
    let stop = stop.attribute("aria-label", format!("Stop {name}"));
    element("div")
        .class("alarm")
        .child(
            element("p")
                .class("alarm__words")
                .child(element("strong").text(format!("Time is up: {name}")))
                .text(of),
        )
        .child(stop)
        .child(more)
}

/// The timers that run, in one line that leads to the bench.
fn running(bench: Bench) -> Element {
    let words = move || {
        let now = bench.clock();
        bench.timers(|timers| {
            let running = timers.timers.iter().filter(|timer| !timer.is_due(now));
            let words: Vec<String> = running
                .map(|timer| {
                    let stopped = if timer.left.is_some() {
                        " (stopped)"
                    } else {
                        ""
                    };
                    format!("{} {}{stopped}", timer.name, timer.shown(now))
                })
                .collect();
            words.join(" · ")
        })
    };
    let is_any = Memo::new(move |_| !words().is_empty());
    element("a")
        .class("alarms__running no-print")
        .attribute("href", "#/bench")
        .hidden_while(move || !is_any.get())
        .text_of(words)
}
