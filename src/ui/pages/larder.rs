//! The larder: looking an ingredient up, the card of one, and the baker's own.

mod card;
mod entry;
mod own;
mod search;

use crate::baking::ingredient::by_key;
use crate::baking::ingredient::card::card as card_of;
use crate::ui::dom::{Element, Words, element};
use crate::ui::route::Larder;
use crate::ui::state::Bench;
use leptos::prelude::document;

/// The page of the larder that the address names.
pub fn larder(bench: Bench, place: Larder) -> Element {
    document().set_title("Larder · Batterwright");
    let sheet = element("div").class("sheet");
    match place {
        Larder::Search => search::search(bench, sheet),
        Larder::Card(key) => match by_key(key) {
            Some(known) => card::card_page(sheet, &card_of(known)),
            None => not_there(sheet),
        },
        Larder::Own => own::own(bench, sheet),
        Larder::Entry(number) => entry::entry(bench, number, sheet),
        Larder::Unknown => not_there(sheet),
    }
}

fn not_there(sheet: Element) -> Element {
    sheet.children([
        back("#/larder", "Back to the larder"),
        title("Not in the larder"),
        element("p").text("No ingredient has this address. Look it up by its name."),
    ])
}

/// The way back to the page before.
fn back(address: &'static str, words: &'static str) -> Element {
    element("a")
        .class("button button--plain no-print")
        .attribute("href", address)
        .text(words)
}

fn title(words: impl Into<Words>) -> Element {
    element("h1").class("sheet__title").text(words)
}

fn head(words: impl Into<Words>) -> Element {
    element("h2").class("part__title").text(words)
}

/// A link to an ingredient, in a list of them.
fn listed(address: String, name: String, beside: String) -> Element {
    element("a")
        .class("shelf__open")
        .attribute("href", address)
        .child(
            element("span")
                .class("shelf__title")
                .attribute("dir", "auto")
                .text(name),
        )
        .child(element("span").class("shelf__beside").text(beside))
}

pub use entry::begin_measures;

/// An ingredient of the baker's own begins here.
fn begin(bench: Bench) -> Element {
    use crate::ui::parts::button;
    button(
        "button button--strong",
        "Add an ingredient of your own",
        move || entry::begin(bench),
    )
}
