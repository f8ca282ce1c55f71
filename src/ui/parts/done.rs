//! What was just carried out, with the way back at hand.

use super::common::button;
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

const TAKE_BACK: &str = "take-it-back";

/// The bar that says what was done.
pub fn done(bench: Bench) -> Element {
    // What was touched is often gone once it is done, and the focus would be lost with it.
    Effect::new(move |before: Option<bool>| {
        let shown = bench.done.with(Option::is_some);
        match (before, shown) {
            (_, true) => device::focus(TAKE_BACK),
            (Some(true), false) => device::focus_if_lost("main"),
            _ => {}
        }
        shown
    });
    element("div")
        .class("done-place")
        .attribute("role", "status")
        .children_of(move || {
            bench
                .done
                .get()
                .map(|what| bar(bench, what))
                .into_iter()
                .collect()
        })
}

fn bar(bench: Bench, what: String) -> Element {
    let words = element("p")
        .class("done__words")
        .child(element("strong").text("Done: "))
        .text(what);
    let back = button("button", "Take it back", move || bench.take_back());
    let close = button("button button--plain", "Close", move || {
        bench.done.set(None)
    });
    element("div")
        .class("done")
        .child(words)
        .child(back.attribute("id", TAKE_BACK))
        .child(close)
}
