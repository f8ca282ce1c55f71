//! Giving the open recipe on: a link that holds it, its text, its linked data.

use super::common::{button, paragraph};
use crate::baking::carry::link::FRAGMENT;
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

const ASK: &str = "share";
const PLACE: &str = "share-place";

/// The button, and the place that it opens.
pub fn share(bench: Bench) -> (Element, Element) {
    let open = RwSignal::new(false);
    let ask = button("button button--plain", "Share", move || {
        open.update(|open| *open = !*open);
    })
    .attribute("id", ASK)
    .attribute("aria-controls", PLACE)
    .attribute_of("aria-expanded", move || Some(open.get().to_string()))
    .hidden_while(move || bench.inputs(|inputs| inputs.text.trim().is_empty()));
    let place = element("section")
        .class("share no-print")
        .attribute("id", PLACE)
        .attribute("aria-label", "Share this recipe")
        .children_of(move || match open.get() {
            true => ways(bench),
            false => Vec::new(),
        })
        .hidden_while(move || !open.get());
    (ask, place)
}

/// All ways out. They follow the recipe while the place is open.
fn ways(bench: Bench) -> Vec<Element> {
    let said = RwSignal::new(String::new());
    let link = Memo::new(move |_| {
        bench.inputs(|_| ());
        let link = bench.link();
        link.map(|link| {
            (
                device::page_address() + FRAGMENT + &link.text,
                link.left_out,
            )
        })
    });
    let address = move || {
        link.with(|link| {
            link.as_ref()
                .map_or(String::new(), |(link, _)| link.clone())
        })
    };
    let is_none = move || link.with(Result::is_err);
    let words = move || {
        link.with(|link| match link {
            Err(reason) => reason.clone(),
            Ok((link, left_out)) => link_words(link, *left_out),
        })
    };
    let field = element("input")
        .class("input")
        .attribute("id", "share-link")
        .attribute("type", "text")
        .attribute("readonly", "")
        .attribute("aria-describedby", "share-words")
        .value_of(address);
    let field = element("div")
        .class("field")
        .child(
            element("label")
                .class("label")
                .attribute("for", "share-link")
                .text("Link that holds the recipe"),
        )
        .child(field)
        .hidden_while(is_none);
    let copied = move |what: &'static str| {
        move |done: bool| {
            said.set(match done {
                true => format!("{what} copied."),
                false => format!("{what} could not be copied by this browser."),
            });
        }
    };
    let copy_link = button("button", "Copy the link", move || {
        device::copy(&address(), copied("The link was"));
    })
    .hidden_while(is_none);
    let hand_on = device::can_share().then(|| {
        button("button", "Hand the link on", move || {
            let title = bench.sheet(|sheet| sheet.title.clone()).unwrap_or_default();
            device::share(&[("title", &title), ("url", &address())]);
        })
        .hidden_while(is_none)
    });
    let others = [
        button("button button--plain", "Copy the text", move || {
            device::copy(&bench.as_text(), copied("The text was"));
        }),
        button("button button--plain", "Download as text", move || {
            device::download("recipe.txt", &bench.as_text());
        }),
        button(
            "button button--plain",
            "Download as linked data",
            move || {
                device::download("recipe.json", &bench.as_linked_data());
            },
        ),
    ];
    vec![
        field,
        paragraph("hint", "")
            .attribute("id", "share-words")
            .text_of(words),
        element("div")
            .class("share__buttons")
            .child(copy_link)
            .children(hand_on),
        paragraph(
            "hint",
            "Text has the grams of each line in it, and this page reads it back alike. Linked data (schema.org Recipe) is for web pages and other programs.",
        ),
        element("div").class("share__buttons").children(others),
        paragraph("", "")
            .attribute("role", "status")
            .text_of(move || said.get()),
    ]
}

fn link_words(link: &str, left_out: usize) -> String {
    let mut words = format!(
        "{} letters. Whoever opens it gets the recipe from the link itself: it is sent to no server.",
        link.len()
    );
    match left_out {
        0 => {}
        1 => words
            .push_str(" One choice of an ingredient of your own larder does not travel with it."),
        many => words.push_str(&format!(
            " {many} choices of ingredients of your own larder do not travel with it."
        )),
    }
    words
}
