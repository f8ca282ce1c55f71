//! The fields of a pan: shape, count, lengths and their unit. Each trouble stands at its field.

use super::common::{select, text_field};
use crate::baking::pan::{Pan, PanEntry, PanField, Shape};
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
            bench.change_pan(other, |entry| match entry.read() {
                Ok(pan) => *entry = pan.entry(chosen),
                Err(_) => entry.unit = chosen,
            });
        },
    );
    let narrow =
        move || !view(bench, other, |view| view.entry.shape.has_width()).unwrap_or_default();
    element("fieldset").class("pan-form no-print").children([
        element("legend").class("unseen").text(legend),
        shape,
        unit,
        field(bench, other, PanField::Count),
        field(bench, other, PanField::Length),
        field(bench, other, PanField::Width).hidden_while(narrow),
        field(bench, other, PanField::Depth),
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
    let (name, keypad) = match which {
        PanField::Count => ("count", "numeric"),
        PanField::Length => ("length", "decimal"),
        PanField::Width => ("width", "decimal"),
        PanField::Depth => ("depth", "decimal"),
    };
    let id = format!("{}-pan-{name}", if other { "other" } else { "own" });
    text_field(
        id,
        keypad,
        move || {
            view(bench, other, |view| label(view.entry.shape, which))
                .unwrap_or_default()
                .to_owned()
        },
        move || {
            view(bench, other, |view| {
                typed(&mut view.entry.clone(), which).clone()
            })
            .unwrap_or_default()
        },
        move || {
            let trouble = view(bench, other, |view| {
                view.troubles
                    .iter()
                    .find(|trouble| trouble.field == which)
                    .map(|trouble| trouble.sentence.clone())
            });
            trouble.flatten()
        },
        move |text| bench.change_pan(other, |entry| *typed(entry, which) = text),
    )
}

fn label(shape: Shape, which: PanField) -> &'static str {
    match which {
        PanField::Count if shape == Shape::Cups => "Cups to fill",
        PanField::Count => "How many",
        PanField::Length => shape.length_words(),
        PanField::Width => "Width",
        PanField::Depth => "Depth",
    }
}

/// The text of a field.
fn typed(entry: &mut PanEntry, which: PanField) -> &mut String {
    match which {
        PanField::Count => &mut entry.count,
        PanField::Length => &mut entry.length,
        PanField::Width => &mut entry.width,
        PanField::Depth => &mut entry.depth,
    }
}
