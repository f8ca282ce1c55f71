//! What concerns the whole page: a recipe that is not being kept, a record set aside, a new version.

use super::common::button;
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// Banners below the head of the page.
pub fn banners(bench: Bench) -> Element {
    let update = heard("data-update", "batterwright:update-ready");
    element("div").class("banners").children([
        element("div")
            .attribute("role", "alert")
            .children_of(move || unkept(bench)),
        element("div")
            .attribute("role", "alert")
            .children_of(move || {
                unkept_besides(bench.settings_unkept, "Your settings are not being kept: ")
            }),
        element("div")
            .attribute("role", "alert")
            .children_of(move || {
                unkept_besides(
                    bench.own_unkept,
                    "Your own ingredients are not being kept: ",
                )
            }),
        element("div")
            .attribute("role", "alert")
            .children_of(move || aside(bench)),
        element("div")
            .attribute("role", "status")
            .children_of(move || new_version(update)),
    ])
}

/// The foot of the page: whether it can do without a network.
pub fn foot() -> Element {
    let offline = heard("data-offline", "batterwright:offline-ready");
    let ready = move || {
        if offline.get() {
            "Ready for offline use."
        } else {
            ""
        }
        .to_owned()
    };
    element("footer")
        .class("foot")
        .child(element("p").attribute("role", "status").text_of(ready))
}

/// Says that the open recipe is not being kept, and why.
fn unkept(bench: Bench) -> Vec<Element> {
    let Some(reason) = bench.unkept.get() else {
        return Vec::new();
    };
    let words = element("p").class("banner__words").child(element("strong").text("This recipe is not being kept: ")).text(
        format!("{reason}. The text stays on this page while it is open; copy it or download it before you leave."),
    );
    let download = button("button", "Download the text", move || {
        bench.inputs_now(|inputs| device::download("recipe.txt", &inputs.text));
    });
    vec![
        element("div")
            .class("banner banner--fault")
            .child(words)
            .child(download),
    ]
}

/// Says that something besides recipes is not being kept, and why.
fn unkept_besides(unkept: RwSignal<Option<String>>, what: &'static str) -> Vec<Element> {
    let Some(reason) = unkept.get() else {
        return Vec::new();
    };
    let words = element("p")
        .class("banner__words")
        .child(element("strong").text(what))
        .text(format!("{reason}. They hold while this page is open."));
    vec![element("div").class("banner banner--fault").child(words)]
}

/// Says that a record had to be set aside.
fn aside(bench: Bench) -> Vec<Element> {
    let Some(words) = bench.aside.get() else {
        return Vec::new();
    };
    let banner = element("div")
        .class("banner banner--look")
        .child(element("p").class("banner__words").text(words))
        .child(
            element("a")
                .class("button")
                .attribute("href", "#/shelf")
                .text("Go to the shelf"),
        )
        .child(button("button button--plain", "Close", move || {
            bench.aside.set(None)
        }));
    vec![banner]
}

/// Offers a new version.
fn new_version(update: RwSignal<bool>) -> Vec<Element> {
    if !update.get() {
        return Vec::new();
    }
    let banner = element("div")
        .class("banner banner--look")
        .child(
            element("p")
                .class("banner__words")
                .text("A new version is ready."),
        )
        .child(button("button", "Use it now", || {
            device::tell("batterwright:take-over")
        }))
        .child(button("button button--plain", "Later", move || {
            update.set(false)
        }));
    vec![banner]
}

/// Whether something was told: by its mark before we listened, by its event since.
fn heard(mark: &'static str, event: &'static str) -> RwSignal<bool> {
    let heard = RwSignal::new(device::marked(mark, "ready"));
    // The page listens for as long as it lives.
    let _ = window_event_listener_untyped(event, move |_| heard.set(true));
    heard
}
