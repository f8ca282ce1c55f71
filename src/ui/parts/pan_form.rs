//! The fields of a pan: shape, count, lengths and their unit. Each trouble stands at its field.

use crate::baking::pan::{Pan, PanEntry, PanField, Shape};
use crate::baking::worksheet::{LengthUnit, PanView};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;

/// The form of a pan: of the one on the shelf (`other`) or the recipe's own.
pub fn pan_form(bench: Bench, other: bool) -> Element {
    let name = if other { "other-pan" } else { "own-pan" };
    let legend = if other {
        "The pan on the shelf"
    } else {
        "The recipe's pan"
    };
    let shapes = Shape::ALL
        .iter()
        .enumerate()
        .map(|(at, shape)| (at.to_string(), shape.words()));
    let shape = select(
        format!("{name}-shape"),
        "Shape",
        shapes.collect(),
        move || {
            let shape = view(bench, other, |view| view.entry.shape);
            Shape::ALL
                .iter()
                .position(|known| Some(*known) == shape)
                .unwrap_or(0)
                .to_string()
        },
        move |chosen| {
            let Some(&chosen) = chosen
                .parse::<usize>()
                .ok()
                .and_then(|at| Shape::ALL.get(at))
            else {
                return;
            };
            // Another shape has other sides, so it starts at its usual size.
            bench.change_pan(other, |entry| *entry = Pan::usual(chosen).entry(entry.unit));
        },
    );
    let unit = select(
        format!("{name}-unit"),
        "Lengths in",
        vec![("in".into(), "inches"), ("cm".into(), "centimetres")],
        move || {
            let unit = view(bench, other, |view| view.entry.unit);
            if unit == Some(LengthUnit::Centimetres) {
                "cm"
            } else {
                "in"
            }
            .to_owned()
        },
        move |chosen| {
            let chosen = if chosen == "cm" {
                LengthUnit::Centimetres
            } else {
                LengthUnit::Inches
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

fn select(
    id: String,
    label: &'static str,
    options: Vec<(String, &'static str)>,
    now: impl Fn() -> String + 'static,
    choose: impl Fn(String) + 'static,
) -> Element {
    let options = options
        .into_iter()
        .map(|(value, words)| element("option").attribute("value", value).text(words));
    let select = element("select")
        .class("input")
        .attribute("id", id.clone())
        .children(options)
        .value_of(now)
        .on_value("change", choose);
    element("div")
        .class("field")
        .child(
            element("label")
                .class("label")
                .attribute("for", id)
                .text(label),
        )
        .child(select)
}

/// One field, with what is wrong with it.
fn field(bench: Bench, other: bool, which: PanField) -> Element {
    let (name, inputmode) = match which {
        PanField::Count => ("count", "numeric"),
        PanField::Length => ("length", "decimal"),
        PanField::Width => ("width", "decimal"),
        PanField::Depth => ("depth", "decimal"),
    };
    let id = format!("{}-pan-{name}", if other { "other" } else { "own" });
    let said = format!("{id}-trouble");
    let label = move || {
        view(bench, other, |view| label(view.entry.shape, which))
            .unwrap_or_default()
            .to_owned()
    };
    let value = move || {
        view(bench, other, |view| {
            typed(&mut view.entry.clone(), which).clone()
        })
        .unwrap_or_default()
    };
    let trouble = move || {
        let trouble = view(bench, other, |view| {
            view.troubles
                .iter()
                .find(|trouble| trouble.field == which)
                .map(|trouble| trouble.sentence.clone())
        });
        trouble.flatten()
    };
    let input = element("input")
        .class("input input--number")
        .attribute("id", id.clone())
        .attribute("type", "text")
        .attribute("inputmode", inputmode)
        .attribute("autocomplete", "off")
        .attribute("aria-describedby", said.clone())
        .attribute_of("aria-invalid", move || trouble().map(|_| "true".to_owned()))
        .value_of(value)
        .on_value("input", move |text| {
            bench.change_pan(other, |entry| *typed(entry, which) = text)
        });
    element("div").class("field").children([
        element("label")
            .class("label")
            .attribute("for", id)
            .text_of(label),
        input,
        element("p")
            .class("trouble")
            .attribute("id", said)
            .text_of(move || trouble().unwrap_or_default()),
    ])
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
