//! Looking an ingredient up by any of its names.

use super::{back, begin, listed, title};
use crate::baking::ingredient::Region;
use crate::baking::ingredient::find::{Hit, find};
use crate::baking::quantity::show;
use crate::ui::dom::{Element, element};
use crate::ui::parts::paragraph;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// How many results are shown at once.
const MOST: usize = 30;

/// The first page of the larder.
pub fn search(bench: Bench, sheet: Element) -> Element {
    let found = move || {
        let region = bench.settings().region;
        bench.own(|own| {
            bench
                .asked
                .with(|asked| find(asked, &own.entries, region, MOST))
        })
    };
    let said =
        move || {
            let many = found().len();
            match many {
            _ if bench.asked.with(|asked| asked.trim().is_empty()) => String::new(),
            0 => "The larder holds nothing of that name. Try a shorter word, or add it as your own."
                .into(),
            1 => "1 ingredient found.".into(),
            MOST.. => format!("The first {MOST} are shown; write more letters."),
            _ => format!("{many} ingredients found."),
        }
        };
    let field = element("input")
        .class("input")
        .attribute("id", "larder-search")
        .attribute("type", "search")
        .attribute("autocomplete", "off")
        .attribute("aria-describedby", "larder-search-hint")
        .value_of(move || bench.asked.get())
        .on_value("input", move |typed| bench.asked.set(typed));
    let label = element("label")
        .class("label")
        .attribute("for", "larder-search")
        .text("Look an ingredient up");
    let hint = paragraph(
        "hint",
        "By any of its names, in the words of any country: bicarb, caster sugar, zucchini.",
    );
    let field = element("div").class("field larder__search").children([
        label,
        hint.attribute("id", "larder-search-hint"),
        field,
    ]);
    let results = element("ul")
        .class("shelf")
        .attribute("aria-label", "Ingredients found")
        .children_of(move || found().into_iter().map(result).collect());
    sheet.children([
        title("Larder"),
        field,
        paragraph("hint", "")
            .attribute("role", "status")
            .text_of(said),
        results,
        begin(bench),
        back("#/larder/own", "Your own ingredients and words"),
    ])
}

fn result(hit: Hit) -> Element {
    let beside = match &hit.by {
        None => hit.group.words().to_owned(),
        Some(by) => {
            let regions: Vec<&str> = hit
                .regions
                .iter()
                .map(|region| Region::words(*region))
                .collect();
            let place = if regions.is_empty() {
                String::new()
            } else {
                format!(" in {}", regions.join(", "))
            };
            format!("called \"{by}\"{place}")
        }
    };
    let link = listed(
        format!("#/larder/{}", hit.key),
        show::sentence(&hit.name),
        beside,
    );
    element("li").class("shelf__item").child(link)
}
