//! How warm the batter comes out of the bowl, and how warm its liquid has to be.

use super::common::{folded_while, paragraph, text_field, tick};
use crate::baking::worksheet::{MixingEntry, MixingSheet};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// A field: its id, its label, its place among the troubles, and where it goes.
struct Field {
    id: &'static str,
    label: &'static str,
    trouble: usize,
    place: fn(&mut MixingEntry) -> &mut String,
    value: fn(&MixingEntry) -> &String,
}

const FIELDS: [Field; 4] = [
    Field {
        id: "mixing-wanted",
        label: "The batter is to be at, such as 22 C or 72 F",
        trouble: 2,
        place: |entry| &mut entry.wanted,
        value: |entry| &entry.wanted,
    },
    Field {
        id: "mixing-room",
        label: "The kitchen is at (21 C if empty)",
        trouble: 0,
        place: |entry| &mut entry.room,
        value: |entry| &entry.room,
    },
    Field {
        id: "mixing-fridge",
        label: "The fridge is at (4 C if empty)",
        trouble: 1,
        place: |entry| &mut entry.fridge,
        value: |entry| &entry.fridge,
    },
    Field {
        id: "mixing-rise",
        label: "Mixing warms it by (1 C if empty)",
        trouble: 3,
        place: |entry| &mut entry.rise,
        value: |entry| &entry.rise,
    },
];

/// The folded panel. Nothing is reckoned while it is shut.
pub fn mixing(bench: Bench) -> Element {
    let open = RwSignal::new(false);
    let sheet = Memo::new(move |_| {
        open.get().then(|| {
            // A new weight or a new word on mixing, and nothing else, asks for new figures.
            bench.part(Part::Balance, |_| ());
            bench.part(Part::Rows, |_| ());
            bench.settings();
            bench.chosen(|_| ());
            bench.mixing()
        })
    });
    let of = move |read: fn(&MixingSheet) -> Vec<Element>| {
        sheet.with(|sheet| sheet.as_ref().map(read).unwrap_or_default())
    };
    let words = |sheet: &MixingSheet| {
        let words = sheet.words.iter();
        words
            .map(|words| paragraph("remedy__sentence", words.clone()))
            .collect()
    };
    let ticks = move || {
        let lines = sheet.with(|sheet| sheet.as_ref().map(|sheet| sheet.lines.clone()));
        let lines = lines.unwrap_or_default();
        lines
            .into_iter()
            .map(|(place, name, is_cold)| {
                tick(
                    name,
                    move || is_cold,
                    move || {
                        bench.change("what comes out of the fridge".into(), true, |inputs| {
                            inputs.chill(place, !is_cold);
                        });
                    },
                )
            })
            .collect()
    };
    let cold = element("fieldset")
        .class("choice")
        .child(
            element("legend")
                .class("choice__legend")
                .text("Out of the fridge"),
        )
        .child(element("div").children_of(ticks));
    folded_while("figure no-print", "How warm the batter is", open).child(
        element("div")
            .class("plan")
            .child(
                element("div")
                    .attribute("role", "status")
                    .children_of(move || of(words)),
            )
            .children(FIELDS.map(|it| field(bench, it, sheet)))
            .child(cold),
    )
}

fn field(bench: Bench, field: Field, sheet: Memo<Option<MixingSheet>>) -> Element {
    text_field(
        field.id.into(),
        "text",
        move || field.label.to_owned(),
        move || bench.chosen(|chosen| (field.value)(&chosen.mixing).clone()),
        move || {
            sheet.with(|sheet| {
                let trouble = sheet.as_ref()?.troubles[field.trouble];
                trouble.map(str::to_owned)
            })
        },
        move |text| {
            bench.change("how warm the batter is".into(), true, |inputs| {
                *(field.place)(&mut inputs.choices.mixing) = text;
            });
        },
    )
}
