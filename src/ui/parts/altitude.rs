//! What the recipe needs in the air of a high kitchen: the reckoning beside the tables, and the weights at one touch.

use super::common::{button, paragraph, section, text_field};
use crate::baking::worksheet::{AltitudeRow, AltitudeSheet};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The part on height; hidden while neither kitchen nor recipe lies high.
pub fn altitude(bench: Bench) -> Element {
    let of = move |read: fn(&AltitudeSheet) -> Vec<Element>| {
        bench.part(Part::Altitude, |sheet| {
            sheet.altitude.as_ref().map(read).unwrap_or_default()
        })
    };
    let has = Memo::new(move |_| bench.part(Part::Altitude, |sheet| sheet.altitude.is_some()));
    let apply = move || {
        let remedy = bench.part(Part::Altitude, |sheet| {
            let sheet = sheet.altitude.as_ref()?;
            sheet.remedy.clone()
        });
        let Some(remedy) = remedy else {
            return Vec::new();
        };
        let take = button("button button--strong", remedy.label, move || take(bench));
        vec![take, paragraph("remedy__sentence", remedy.sentence)]
    };
    section("/height", "At your height")
        .hidden_while(move || !has.get())
        .children([
            element("div").children_of(move || of(words)),
            element("dl").class("facts").children_of(move || {
                let hotter = bench.bakes.with(|bakes| bakes.hotter);
                let rows = bench.part(Part::Altitude, |sheet| {
                    let sheet = sheet.altitude.as_ref();
                    sheet.map_or_else(Vec::new, |sheet| sheet.rows.clone())
                });
                rows.iter().map(|of| row(&of.with_oven(hotter))).collect()
            }),
            element("div").class("no-print").children_of(apply),
            made_for(bench),
        ])
}

/// The air, and what follows from it.
fn words(sheet: &AltitudeSheet) -> Vec<Element> {
    let words = sheet.words.iter();
    [paragraph("hint", sheet.air.clone())]
        .into_iter()
        .chain(words.map(|words| paragraph("remedy__sentence", words.clone())))
        .collect()
}

/// One thing that changes: the weights' change, the reckoning, the tables.
fn row(row: &AltitudeRow) -> Element {
    let mut lines = Vec::new();
    if !row.taken.is_empty() {
        lines.push(element("strong").text(format!("{} in the weights", row.taken)));
    }
    if !row.reckoned.is_empty() {
        let stands = match row.stands.as_str() {
            "" => String::new(),
            stands => format!(", {stands}"),
        };
        lines.push(paragraph("", format!("Reckoned: {}{stands}", row.reckoned)));
    }
    lines.extend(
        row.tables
            .iter()
            .map(|table| paragraph("hint", table.clone())),
    );
    element("div")
        .class("facts__fact")
        .child(element("dt").class("facts__label").text(row.label))
        .child(element("dd").class("facts__words").children(lines))
}

fn take(bench: Bench) {
    let sheet = bench.sheet(|sheet| sheet.altitude.clone());
    if let Some(sheet) = sheet {
        bench.change("the weights for your height".into(), false, |inputs| {
            *inputs = inputs.made_for(&sheet);
        });
    }
}

/// The height that the recipe is made for.
fn made_for(bench: Bench) -> Element {
    let trouble = move || {
        bench.part(Part::Altitude, |sheet| {
            let sheet = sheet.altitude.as_ref()?;
            sheet.made_for_trouble.map(str::to_owned)
        })
    };
    let field = text_field(
        "made-for".into(),
        "text",
        || "The recipe is made for a kitchen at (the sea if empty)".to_owned(),
        move || bench.chosen(|chosen| chosen.made_for.clone()),
        trouble,
        move |text| {
            bench.change("the height that the recipe is for".into(), true, |inputs| {
                inputs.choices.made_for = text;
            });
        },
    );
    element("div").class("no-print").child(field)
}
