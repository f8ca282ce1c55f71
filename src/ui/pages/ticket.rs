//! The ticket: the open recipe, from its text to what to weigh.

use crate::ui::dom::{Element, element};
use crate::ui::parts;
use crate::ui::shown::Part;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The page of the open recipe.
pub fn ticket(bench: Bench) -> Element {
    let title = move || {
        bench
            .part(Part::Title, |sheet| sheet.title.clone())
            .unwrap_or_else(|| "Untitled recipe".into())
    };
    let named = move || match bench.version(|version| version.called().to_owned()) {
        Some(name) => format!("{}, {name}", title()),
        None => title(),
    };
    Effect::new(move |_| document().set_title(&format!("{} · Batterwright", named())));
    let head = element("h1")
        .class("ticket__title")
        .attribute("dir", "auto")
        .text_of(title);
    let notes = element("div")
        .class("ticket__notes")
        .attribute("aria-hidden", "true")
        .child(element("p").class("part__title").text("Notes at the bench"));
    let ticket = element("article").class("ticket").children([
        head,
        parts::version_head(bench),
        parts::verdict_strip(bench),
        parts::done(bench),
        parts::weights(bench),
        parts::instead(bench),
        parts::differs(bench),
        parts::leavening(bench),
        parts::percentages(bench),
        parts::pans(bench),
        parts::oven(bench),
        parts::altitude(bench),
        parts::findings(bench),
        parts::method(bench),
        parts::allergens(bench),
        parts::sources(bench),
        notes,
    ]);
    element("div")
        .class("bench")
        .child(
            element("div")
                .class("bench__text")
                .child(parts::recipe_text(bench)),
        )
        .child(ticket)
}
