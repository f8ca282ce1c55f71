//! Where the figures on this ticket are from.

use super::common::{paragraph, section};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;

/// The part on sources.
pub fn sources(bench: Bench) -> Element {
    let shown = move || {
        bench.part(Part::Sources, |sheet| {
            sheet
                .sources
                .iter()
                .map(|source| element("li").class("sources__source").text(source.citation))
                .collect()
        })
    };
    section("/sources", "Sources")
        .child(element("ul").class("sources").children_of(shown))
        .child(paragraph(
            "hint",
            "How far each figure can be trusted stands at its line; more on the page About.",
        ))
}
