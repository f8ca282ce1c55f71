//! The room that is left for more, and whether the browser has promised to keep what is there.

use super::Page;
use crate::baking::quantity::show;
use crate::baking::saved::Room;
use crate::ui::dom::{Element, drawing, element};
use crate::ui::parts::{button, fact, paragraph};
use crate::ui::state::Promise;
use crate::ui::storage;
use leptos::prelude::*;

/// How full the store is; what of, and how that is known, opens at a touch.
pub fn room(page: Page, later: RwSignal<bool>) -> Element {
    element("div").class("shelf__room").children_of(move || {
        page.changes.track();
        if !later.get() {
            return Vec::new();
        }
        match storage::room() {
            Ok(room) => vec![gauge(page, &room)],
            // The list says why.
            Err(_) => Vec::new(),
        }
    })
}

fn gauge(page: Page, room: &Room) -> Element {
    let share = room.share();
    let class = if room.is_short() {
        "gauge gauge--short"
    } else {
        "gauge"
    };
    let bar = element("div")
        .class(class)
        .attribute("role", "meter")
        .attribute("aria-label", "Room used")
        .attribute("aria-valuemin", "0")
        .attribute("aria-valuemax", "100")
        .attribute("aria-valuenow", show::fixed(share * 100.0, 0))
        .attribute("aria-valuetext", show::fullness(share))
        .child(filled(share));
    let line = element("summary")
        .class("figure__line")
        .child(element("span").class("figure__label").text("Room"))
        .text(" ")
        .child(element("span").class("shelf__beside").text(room.sentence()));
    let facts = room
        .parts()
        .into_iter()
        .map(|(what, letters)| fact(what, letters));
    element("details").class("figure").children([
        line,
        bar,
        element("dl").class("facts").children(facts),
        paragraph("hint", room.how()),
        element("div")
            .class("shelf__promise")
            .children_of(move || promise(page)),
    ])
}

/// The filled part of the bar, of a hundred wide.
fn filled(share: f64) -> Element {
    let used = drawing("rect")
        .class("gauge__used")
        .attribute("height", "10")
        .figure("width", share * 100.0);
    drawing("svg")
        .class("gauge__bar")
        .attribute("viewBox", "0 0 100 10")
        .attribute("preserveAspectRatio", "none")
        .attribute("aria-hidden", "true")
        .child(used)
}

fn promise(page: Page) -> Vec<Element> {
    let keeping = page.bench.keeping;
    let said = match keeping.promise.get() {
        Promise::Unasked => return Vec::new(),
        Promise::Untold => {
            "This browser does not tell whether it would clear what is kept here by itself."
        }
        Promise::Given => "This browser has promised to keep it until you clear it yourself.",
        Promise::NotGiven => {
            "This browser has not promised to keep it: it may clear it when the device runs short of space."
        }
        Promise::Refused => {
            "This browser was asked to keep it and does not promise that: it may clear it when the device runs short of \
             space. Put on the home screen, or used often, the page may be promised it later. Download what you cannot do without."
        }
    };
    let ask = button("button", "Ask the browser to keep it", move || {
        keeping.ask_promise()
    });
    let can_ask = matches!(keeping.promise.get(), Promise::NotGiven | Promise::Refused);
    let mut shown = vec![paragraph("", said).attribute("role", "status")];
    shown.extend(can_ask.then_some(ask));
    shown
}
