//! What concerns the whole page: a recipe that is not being kept, a record set aside, a new version.

use super::came::came;
use super::common::button;
use crate::baking::quantity::show;
use crate::ui::device;
use crate::ui::dom::{Element, Words, element};
use crate::ui::state::{Bench, Clash};
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
                let clash = bench.keeping.clash.get();
                clash.map(|it| clashing(bench, &it)).into_iter().collect()
            }),
        element("div")
            .attribute("role", "alert")
            .children_of(move || gone(bench)),
        element("div")
            .attribute("role", "alert")
            .children_of(move || full(bench)),
        element("div")
            .attribute("role", "status")
            .children_of(move || short(bench)),
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
            .attribute("role", "alert")
            .children_of(move || came(bench)),
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
        .child(
            element("a")
                .class("foot__link")
                .attribute("href", "#/about")
                .text("About"),
        )
        .child(element("p").attribute("role", "status").text_of(ready))
}

/// Says that the open recipe is not being kept, and why.
fn unkept(bench: Bench) -> Vec<Element> {
    let Some(reason) = bench.unkept.get() else {
        return Vec::new();
    };
    let words = element("p").class("banner__words").child(element("strong").text("This recipe is not being kept: ")).text(
        format!("{reason}. What was kept before stays. The text stands on this page while it is open; copy it or download it before you leave."),
    );
    let download = button("button", "Download the text", move || {
        bench.inputs_now(|inputs| device::download("recipe.txt", &inputs.text));
    });
    let banner = element("div")
        .class("banner banner--fault")
        .child(words)
        .child(download);
    vec![banner.child(to_shelf("Make room on the shelf"))]
}

/// A banner that asks for a look: its words, and what can be done.
fn look(words: impl Into<Words>, choices: impl IntoIterator<Item = Element>) -> Element {
    element("div")
        .class("banner banner--look")
        .child(element("p").class("banner__words").text(words))
        .children(choices)
}

fn to_shelf(words: &'static str) -> Element {
    element("a")
        .class("button")
        .attribute("href", "#/shelf")
        .text(words)
}

/// Asks what is to become of two states of the same recipe. Both are kept by then.
fn clashing(bench: Bench, clash: &Clash) -> Element {
    let words = format!(
        "Two windows have changed this recipe. The other one was changed at {}, yours at {}. Both are kept: yours is a copy \
         now, and what differs stands on its ticket.",
        device::date_shown(clash.theirs as f64),
        device::date_shown(clash.ours as f64),
    );
    let clash = bench.keeping.clash;
    look(
        words,
        [
            button("button", "Keep both", move || clash.set(None)),
            button("button", "Only this one", move || bench.stay_with_ours()),
            button("button", "Only the other", move || bench.stay_with_theirs()),
        ],
    )
}

/// Says that the record of the open recipe was taken away.
fn gone(bench: Bench) -> Vec<Element> {
    let gone = bench.keeping.gone;
    let said = gone
        .get()
        .map(|said| look(said, [close(move || gone.set(None))]));
    said.into_iter().collect()
}

/// Says what was given up so that the open recipe could be kept.
fn full(bench: Bench) -> Vec<Element> {
    let mut said = Vec::new();
    if bench.keeping.reserve_used.get() {
        said.push(look(
            "The space that this browser gives the page is full. Your last letters are kept from a reserve that is soon used \
             up. Empty the bin, or download recipes and remove them.",
            [to_shelf("Make room on the shelf")],
        ));
    }
    let left = bench.keeping.left_bin;
    let titles = left.with(|left| {
        left.iter()
            .map(|record| record.title.clone())
            .collect::<Vec<_>>()
    });
    if !titles.is_empty() {
        said.push(look(
            format!(
                "The space is full. So that this could be kept, what had rested in the bin longest went for good: {}.",
                show::listed(&titles)
            ),
            [
                to_shelf("Make room on the shelf"),
                close(move || left.set(Vec::new())),
            ],
        ));
    }
    said
}

/// Says that room is running short.
fn short(bench: Bench) -> Vec<Element> {
    let short = bench.keeping.short;
    let said = short.get().map(|said| {
        look(
            format!("Room is running short. {said}"),
            [
                to_shelf("Make room on the shelf"),
                close(move || short.set(None)),
            ],
        )
    });
    said.into_iter().collect()
}

fn close(close: impl Fn() + 'static) -> Element {
    button("button button--plain", "Close", close)
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
    let choices = [
        to_shelf("Go to the shelf"),
        close(move || bench.aside.set(None)),
    ];
    vec![look(words, choices)]
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
