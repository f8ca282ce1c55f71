//! What has been chosen, each with a way to take it back.

use super::{Chosen, LINE, Weighed, change};
use crate::baking::ingredient::by_key;
use crate::baking::ingredient::own::OwnEntry;
use crate::baking::quantity::show;
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::parts::common::{button, paragraph};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The list; it is not there while nothing is chosen.
pub fn list(bench: Bench, lines: Memo<Vec<Weighed>>, chosen: Memo<Vec<Chosen>>) -> Element {
    let items = move || {
        chosen.with(|chosen| {
            let items = chosen.iter().map(|chosen| item(bench, lines, chosen));
            items.collect()
        })
    };
    element("div")
        .class("instead__step no-print")
        .child(paragraph("label", "Chosen so far"))
        .child(element("ul").class("instead__chosen").children_of(items))
        .hidden_while(move || chosen.with(Vec::is_empty))
}

fn item(bench: Bench, lines: Memo<Vec<Weighed>>, chosen: &Chosen) -> Element {
    let line = lines.with(|lines| {
        let line = lines.iter().find(|line| Some(line.place) == chosen.place);
        line.map(|line| line.words.clone())
    });
    let goes = line.unwrap_or_else(|| {
        format!(
            "\"{}\", which the recipe no longer has",
            chosen.swap.line.text
        )
    });
    let much = match chosen.swap.percent {
        None => "as much as practice replaces".to_owned(),
        Some(100) => "all of it".to_owned(),
        Some(percent) => format!("{percent} % of it"),
    };
    let words = element("p")
        .attribute("dir", "auto")
        .text(goes)
        .text(" → ")
        .child(element("strong").text(called(bench, &chosen.swap.to)))
        .child(element("span").class("instead__beside").text(much));
    let gone = chosen.swap.line.clone();
    let back = button("button button--plain", "Take it back", move || {
        change(bench, |inputs| {
            inputs.choices.swaps.lines.retain(|swap| swap.line != gone);
        });
        device::focus(LINE);
    });
    element("li").class("instead__one").child(words).child(back)
}

/// The names of what comes, by their keys.
fn called(bench: Bench, to: &str) -> String {
    let own = |key: &str| {
        bench.own_now(|own| {
            let own = own.entries.iter().find(|own| own.key == key);
            own.map(OwnEntry::shown_name)
        })
    };
    let name = |key: &str| match by_key(key) {
        Some(known) => known.name.to_owned(),
        None => own(key).unwrap_or_else(|| "an ingredient that is gone from the larder".into()),
    };
    let names: Vec<String> = to.split('+').map(name).collect();
    show::listed(&names)
}
