//! Bakes whose recipe is gone: each holds its recipe as it was planned, so that this can be put back.

use super::{Page, words};
use crate::baking::quantity::show;
use crate::ui::dom::{Element, element};
use crate::ui::parts::{button, paragraph};
use crate::ui::storage::{self, Stray};
use leptos::prelude::*;

/// The bakes, under a heading; nothing where there are none.
pub fn strays(page: Page, later: RwSignal<bool>) -> Element {
    element("div").class("shelf__part").children_of(move || {
        page.changes.track();
        let strays = match later.get() {
            true => storage::strays().unwrap_or_default(),
            false => Vec::new(),
        };
        if strays.is_empty() {
            return Vec::new();
        }
        vec![
            element("h2")
                .class("part__title")
                .attribute("id", "/strays")
                .text("Bakes without a recipe"),
            paragraph(
                "hint",
                "The recipe of these bakes is neither here nor in the bin. Each bake holds it as it was planned.",
            ),
            element("ul")
                .class("shelf")
                .children(strays.into_iter().map(|stray| item(page, stray))),
        ]
    })
}

fn item(page: Page, stray: Stray) -> Element {
    let bakes = match stray.bakes {
        1 => "1 bake".to_owned(),
        many => format!("{} bakes", show::count(many)),
    };
    let label = format!("Put the recipe back: {}", stray.title);
    let back = button(
        "button",
        "Put the recipe back",
        move || match storage::put_recipe_of(&stray.recipe) {
            Ok(()) => page.done(None),
            Err(refusal) => page.refused("It could not be put back", refusal),
        },
    );
    element("li")
        .class("shelf__item shelf__item--bin")
        .child(words(stray.title, bakes))
        .child(back.attribute("aria-label", label))
}
