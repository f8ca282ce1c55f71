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

/// The records that were set aside: recipes, and `later` all others, for there may be hundreds of bakes to be read.
pub fn aside(page: Page, later: RwSignal<bool>) -> Element {
    element("div").class("shelf__part").children_of(move || {
        page.changes.track();
        let mut aside = page.shelf.with_value(|shelf| match shelf {
            Ok(shelf) => shelf.aside.clone(),
            // The list says why.
            Err(_) => Vec::new(),
        });
        if later.get() {
            aside.extend(storage::others_aside().unwrap_or_default());
        }
        aside.sort_by(|one, other| one.key.cmp(&other.key));
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
                .children(aside.iter().map(|it| set_aside(it, to_bin(page, it.key.clone())))),
        ]
    })
}

/// The beginning of a key, which may be as long as somebody wanted it.
pub fn shown(key: &str) -> String {
    key.chars().take(KEY_SHOWN).collect()
}

fn to_bin(page: Page, key: String) -> Element {
    button(
        "button button--plain",
        "Put it into the bin",
        move || match storage::throw_away(&key, shown(&key)) {
            Ok(removed) => page.done(removed.map(|(resting, effort)| {
                page.bench.keeping.note(effort);
                Undo::Removed(resting)
            })),
            Err(refusal) => page.refused("It could not be put into the bin", refusal),
        },
    )
}

/// A record that cannot be read: why, a way to take it out, and what else can be done with it.
pub fn set_aside(aside: &SetAside, choice: Element) -> Element {
    let SetAside { key, reason } = aside.clone();
    let shown = shown(&key);
    let file = format!("{}.json", shown.replace('/', "-"));
    let download = button("button", "Download it", move || {
        if let Some(text) = storage::text_at(&key) {
            device::download(&file, &text);
        }
    });
    element("li")
        .class("shelf__item shelf__item--bin")
        .child(words(shown, reason))
        .child(download)
        .child(choice)
}
