//! Records that cannot be read: left as they are until the baker says otherwise.

use super::undo::Undo;
use super::{Page, words};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::parts::{button, paragraph};
use crate::ui::storage::{self, SetAside};
use leptos::prelude::*;

/// Of a key that is longer than this, the beginning is shown.
const KEY_SHOWN: usize = 80;

/// The records that were set aside.
pub fn aside(page: Page) -> Element {
    element("div").children_of(move || {
        page.changes.track();
        let aside = page.shelf.with_value(|shelf| match shelf {
            Ok(shelf) => shelf.aside.clone(),
            // The list says why.
            Err(_) => Vec::new(),
        });
        if aside.is_empty() {
            return Vec::new();
        }
        vec![
            element("h2")
                .class("part__title")
                .attribute("id", "/aside")
                .text("Set aside"),
            paragraph(
                "hint",
                "These records cannot be read by this version of the page. They are left as they are.",
            ),
            element("ul")
                .class("shelf")
                .children(aside.into_iter().map(|it| set_aside(page, it))),
        ]
    })
}

fn set_aside(page: Page, aside: SetAside) -> Element {
    let SetAside { key, reason } = aside;
    let shown: String = key.chars().take(KEY_SHOWN).collect();
    let file = format!("{}.json", shown.replace('/', "-"));
    let name = shown.clone();
    let of = key.clone();
    let download = button("button", "Download it", move || {
        if let Some(text) = storage::text_at(&of) {
            device::download(&file, &text);
        }
    });
    let remove =
        button(
            "button button--plain",
            "Put it into the bin",
            move || match storage::throw_away(&key, name.clone()) {
                Ok(removed) => page.done(removed.map(|(resting, effort)| {
                    page.bench.keeping.note(effort);
                    Undo::Removed(resting)
                })),
                Err(refusal) => page.refused("It could not be put into the bin", refusal),
            },
        );
    element("li")
        .class("shelf__item shelf__item--bin")
        .child(words(shown, reason))
        .child(download)
        .child(remove)
}
