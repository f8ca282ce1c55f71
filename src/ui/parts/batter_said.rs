//! What the baker says of the batter: how long it waits, and the crumb's pH once it is measured.

use super::common::{button, paragraph, text_field};
use crate::baking::trial::Taught;
use crate::baking::worksheet::{BatterSaid, LeaveningSheet};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;

/// A field: its id, its label, what stands in it, what is wrong with it, and where it goes.
struct Field {
    id: &'static str,
    label: &'static str,
    undone: &'static str,
    value: fn(&BatterSaid) -> &String,
    trouble: fn(&LeaveningSheet) -> Option<&'static str>,
    place: fn(&mut BatterSaid) -> &mut String,
}

const WAITS: Field = Field {
    id: "waits",
    label: "Minutes between mixing and the oven (5 if empty)",
    undone: "how long the batter waits",
    value: |said| &said.waits,
    trouble: |sheet| sheet.waits_trouble,
    place: |said| &mut said.waits,
};

const CRUMB: Field = Field {
    id: "crumb-ph",
    label: "pH of the crumb, measured",
    undone: "the measured pH",
    value: |said| &said.crumb_ph,
    trouble: |sheet| sheet.crumb_ph_trouble,
    place: |said| &mut said.crumb_ph,
};

/// Both fields.
pub fn batter_said(bench: Bench) -> Element {
    let hint = "One part of crumb stirred into two parts of still water, read with a strip or a meter. It holds for this recipe as it stands.";
    element("div").class("no-print").children([
        field(bench, WAITS),
        field(bench, CRUMB),
        paragraph("hint", hint),
        told(bench),
    ])
}

/// What crumbs of trials moved, each to be taken back.
fn told(bench: Bench) -> Element {
    element("ul").class("plain-list").children_of(move || {
        let crumbs = bench.chosen(|choices| choices.crumbs.clone());
        let rows = crumbs.into_iter().map(|told| {
            let words = told.words();
            let back = button("button button--plain", "Take it back", move || {
                bench.turn_lesson(&Taught::Crumb(told.clone()), false);
            });
            element("li").child(paragraph("", words)).child(back)
        });
        rows.collect()
    })
}

fn field(bench: Bench, field: Field) -> Element {
    let leavening = move |read: fn(&LeaveningSheet) -> Option<&'static str>| {
        bench.part(Part::Leavening, |sheet| {
            read(&sheet.leavening).map(str::to_owned)
        })
    };
    text_field(
        field.id.into(),
        "decimal",
        move || field.label.to_owned(),
        move || {
            bench.part(Part::Leavening, |sheet| {
                (field.value)(&sheet.leavening.said).clone()
            })
        },
        move || leavening(field.trouble),
        move |text| {
            bench.change(field.undone.into(), true, |inputs| {
                *(field.place)(&mut inputs.choices.batter) = text;
            });
        },
    )
}
