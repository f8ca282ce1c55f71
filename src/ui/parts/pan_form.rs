//! The fields of a pan: shape, count, lengths and their unit. Each trouble stands at its field.

use super::common::{folded, paragraph, select, text_field};
use crate::baking::pan::{Pan, PanField, Shape};
use crate::baking::worksheet::{LengthUnit, PanView};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;

const UNITS: [(LengthUnit, &str); 2] = [
    (LengthUnit::Inches, "inches"),
    (LengthUnit::Centimetres, "centimetres"),
];

/// The form of a pan: of the one on the shelf (`other`) or the recipe's own.
pub fn pan_form(bench: Bench, other: bool) -> Element {
    let name = if other { "other-pan" } else { "own-pan" };
    let legend = if other {
        "The pan on the shelf"
    } else {
        "The recipe's pan"
    };
    let shape = select(
        format!("{name}-shape"),
        "Shape",
        Shape::ALL.iter().map(|shape| shape.words()).collect(),
        move || {
            let shape = view(bench, other, |view| view.entry.shape);
            Shape::ALL
                .iter()
                .position(|known| Some(*known) == shape)
                .unwrap_or(0)
        },
        move |chosen| {
            let Some(&chosen) = Shape::ALL.get(chosen) else {
                return;
            };
            // Another shape has other sides, so it starts at its usual size.
            bench.change_pan(other, |entry| *entry = Pan::usual(chosen).entry(entry.unit));
        },
    );
    let unit = select(
        format!("{name}-unit"),
        "Lengths in",
        UNITS.map(|(_, words)| words).into(),
        move || {
            let unit = view(bench, other, |view| view.entry.unit);
            UNITS
                .iter()
                .position(|(known, _)| Some(*known) == unit)
                .unwrap_or(0)
        },
        move |chosen| {
            let Some(&(chosen, _)) = UNITS.get(chosen) else {
                return;
            };
            bench.change_pan(other, |entry| *entry = entry.in_unit(chosen));
        },
    );
    let fields = |empty: bool| {
        PanField::ALL
            .into_iter()
            .filter(move |field| field.may_be_empty() == empty)
            .map(move |which| field(bench, other, which))
    };
    let details = folded("Flare, core, corners, lining, fill line")
        .child(paragraph(
            "hint",
            "Leave empty what is usual for the shape, or what you don't know.",
        ))
        .child(
            element("div")
                .class("pan-form__fields")
                .children(fields(true)),
        );
    element("fieldset").class("pan-form no-print").children([
        element("legend").class("unseen").text(legend),
        element("div")
            .class("pan-form__fields")
            .children([shape, unit])
            .children(fields(false)),
        details,
    ])
}

/// A piece of the pan as the worksheet has it, followed.
fn view<R>(bench: Bench, other: bool, read: impl FnOnce(&PanView) -> R) -> Option<R> {
    bench.part(Part::Pans, |sheet| match other {
        true => sheet.pans.other.as_ref().map(read),
        false => Some(read(&sheet.pans.own)),
    })
}

/// One field, with what is wrong with it.
fn field(bench: Bench, other: bool, which: PanField) -> Element {
    let keypad = match which {
        PanField::Count => "numeric",
        _ => "decimal",
    };
    let name = if other { "other" } else { "own" };
    let id = format!("{name}-pan-{}", id_of(which));
    text_field(
        id,
        keypad,
        move || {
            view(bench, other, |view| which.words(view.entry.shape))
                .unwrap_or_default()
                .to_owned()
        },
        move || view(bench, other, |view| view.entry.text(which).to_owned()).unwrap_or_default(),
        move || {
            let trouble = view(bench, other, |view| {
                view.troubles
                    .iter()
                    .find(|trouble| trouble.field == which)
                    .map(|trouble| trouble.sentence.clone())
            });
            trouble.flatten()
        },
        move |text| bench.change_pan(other, |entry| *entry.text_mut(which) = text),
    )
    .hidden_while(move || {
        !view(bench, other, |view| which.is_of(view.entry.shape)).unwrap_or_default()
    })
}

/// Its part of an id.
fn id_of(field: PanField) -> &'static str {
    match field {
        PanField::Count => "count",
        PanField::Length => "length",
        PanField::Width => "width",
        PanField::Depth => "depth",
        PanField::Water => "water",
        PanField::BaseLength => "base-length",
        PanField::BaseWidth => "base-width",
        PanField::Core => "core",
        PanField::CoreBase => "core-base",
        PanField::Corner => "corner",
        PanField::Flutes => "flutes",
        PanField::Lining => "lining",
        PanField::FillLine => "fill-line",
    }
}
