//! What was just carried out, with the way back at hand.

use super::common::button;
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The bar that says what was done.
pub fn done(bench: Bench) -> Element {
    element("div")
        .class("done-place")
        .attribute("role", "status")
        .children_of(move || {
            let Some(what) = bench.done.get() else {
                return Vec::new();
            };
            let words = element("p")
                .class("done__words")
                .child(element("strong").text("Done: "))
                .child(element("span").text(what));
            vec![
                element("div")
                    .class("done")
                    .child(words)
                    .child(button("button", "Take it back", move || bench.take_back()))
                    .child(button("button button--plain", "Close", move || {
                        bench.done.set(None)
                    })),
            ]
        })
}
