//! The fields of a pan: shape, common sizes, count, lengths and their unit. Each trouble stands at its field.

use super::common::{folded, paragraph, select, text_field};
use crate::baking::ingredient::Region;
use crate::baking::pan::{Finish, Pan, PanEntry, PanField, Shape, Size, WaterUnit, sizes_of};
use crate::baking::worksheet::{LengthUnit, PanView};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::{Bench, PanPlace};
use leptos::prelude::{Get, Memo};

const UNITS: [(LengthUnit, &str); 2] = [
    (LengthUnit::Inches, "inches"),
    (LengthUnit::Centimetres, "centimetres"),
];

const WATERS: [(WaterUnit, &str); 2] = [
    (WaterUnit::Millilitres, "millilitres or grams"),
    (WaterUnit::Cups, "US cups"),
];

/// The form of a pan.
pub fn pan_form(bench: Bench, place: PanPlace) -> Element {
    let fields = |empty: bool| {
        PanField::ALL
            .into_iter()
            .filter(move |field| field.may_be_empty() == empty)
            .map(move |which| field(bench, place, which))
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
        element("legend").class("unseen").text(place.words()),
        element("div")
            .class("pan-form__fields")
            .children([
                element("div")
                    .class("pan-form__wide")
                    .child(shape(bench, place)),
                common_sizes(bench, place),
                unit(bench, place),
                finish(bench, place),
            ])
            .children(fields(false))
            .child(water_unit(bench, place)),
        details,
    ])
}

fn shape(bench: Bench, place: PanPlace) -> Element {
    choice(
        bench,
        place,
        ("shape", "Shape"),
        Shape::ALL.iter().map(|&shape| (shape, shape.words())),
        |entry| entry.shape,
        // Another shape has other sides, so it starts at its usual size.
        |entry, chosen| *entry = Pan::usual(chosen).entry(entry.unit),
    )
}

fn unit(bench: Bench, place: PanPlace) -> Element {
    choice(
        bench,
        place,
        ("unit", "Lengths in"),
        UNITS,
        |entry| entry.unit,
        |entry, chosen| *entry = entry.in_unit(chosen),
    )
}

fn finish(bench: Bench, place: PanPlace) -> Element {
    choice(
        bench,
        place,
        ("finish", "Made of"),
        Finish::ALL.map(|finish| (finish, finish.words())),
        |entry| entry.finish,
        |entry, chosen| entry.finish = chosen,
    )
}

fn water_unit(bench: Bench, place: PanPlace) -> Element {
    choice(
        bench,
        place,
        ("water-unit", "Water in"),
        WATERS,
        |entry| entry.water_unit,
        |entry, chosen| entry.water_unit = chosen,
    )
    .hidden_while(move || !has(bench, place, PanField::Water))
}

/// A select that sets a part of the entry.
fn choice<T: Copy + PartialEq + 'static>(
    bench: Bench,
    place: PanPlace,
    (id, label): (&'static str, &'static str),
    options: impl IntoIterator<Item = (T, &'static str)>,
    read: fn(&PanEntry) -> T,
    set: fn(&mut PanEntry, T),
) -> Element {
    let (values, words): (Vec<T>, Vec<&'static str>) = options.into_iter().unzip();
    let chosen = values.clone();
    select(
        format!("{}-{id}", name(place)),
        label,
        words,
        move || {
            let now = view(bench, place, |view| read(&view.entry));
            values
                .iter()
                .position(|known| Some(*known) == now)
                .unwrap_or(0)
        },
        move |at| {
            if let Some(&chosen) = chosen.get(at) {
                bench.change_pan(place, |entry| set(entry, chosen));
            }
        },
    )
}

/// The sizes of the shape that are common, those of the baker's country first; the one that the fields hold is shown.
fn common_sizes(bench: Bench, place: PanPlace) -> Element {
    let asked: Memo<Option<(Shape, LengthUnit, Region)>> = Memo::new(move |_| {
        let region = bench.settings().region;
        view(bench, place, |view| {
            (view.entry.shape, view.entry.unit, region)
        })
    });
    element("div").class("pan-form__wide").children_of(move || {
        let Some((shape, unit, region)) = asked.get() else {
            return Vec::new();
        };
        let sizes = sizes_of(shape, region);
        if sizes.is_empty() {
            return Vec::new();
        }
        vec![size_select(bench, place, sizes, unit)]
    })
}

fn size_select(
    bench: Bench,
    place: PanPlace,
    sizes: Vec<&'static Size>,
    unit: LengthUnit,
) -> Element {
    let id = format!("{}-size", name(place));
    let option = |at: usize, words: String| {
        element("option")
            .attribute("value", at.to_string())
            .text(words)
    };
    let options = sizes
        .iter()
        .enumerate()
        .map(|(at, size)| option(at + 1, size.label(unit)));
    let known = sizes.clone();
    let now = move || {
        let pan = view(bench, place, |view| view.entry.read().ok()).flatten();
        let at = pan.and_then(|pan| known.iter().position(|size| size.is(&pan)));
        at.map_or(0, |at| at + 1).to_string()
    };
    let select = element("select")
        .class("input")
        .attribute("id", id.clone())
        .child(option(0, "Other measures".into()))
        .children(options)
        .value_of(now)
        .on_value("change", move |chosen| {
            let at = chosen.parse::<usize>().ok();
            if let Some(size) = at.and_then(|at| sizes.get(at.wrapping_sub(1))) {
                bench.change_pan(place, |entry| *entry = taken(size, entry));
            }
        });
    let label = element("label")
        .class("label")
        .attribute("for", id)
        .text("Common sizes");
    element("div").class("field").child(label).child(select)
}

/// The fields filled with a size; how many is kept where it was no tray of cups.
fn taken(size: &Size, entry: &PanEntry) -> PanEntry {
    let filled = size.pan.entry(entry.unit);
    let count = match size.pan.count {
        1 => entry.count.clone(),
        _ => filled.count.clone(),
    };
    PanEntry { count, ..filled }
}

/// A piece of the pan as the worksheet has it, followed.
fn view<R>(bench: Bench, place: PanPlace, read: impl FnOnce(&PanView) -> R) -> Option<R> {
    bench.part(Part::Pans, |sheet| match place {
        PanPlace::Own => Some(read(&sheet.pans.own)),
        PanPlace::Shelf(place) => sheet.pans.shelf.get(place).map(read),
    })
}

/// Whether the pan's shape has a field.
fn has(bench: Bench, place: PanPlace, field: PanField) -> bool {
    view(bench, place, |view| field.is_of(view.entry.shape)).unwrap_or_default()
}

/// What ids of a pan begin with.
fn name(place: PanPlace) -> String {
    match place {
        PanPlace::Own => "own-pan".to_owned(),
        PanPlace::Shelf(place) => format!("pan-{place}"),
    }
}

/// One field, with what is wrong with it.
fn field(bench: Bench, place: PanPlace, which: PanField) -> Element {
    let keypad = match which {
        PanField::Count => "numeric",
        _ => "decimal",
    };
    text_field(
        format!("{}-{}", name(place), id_of(which)),
        keypad,
        move || {
            view(bench, place, |view| which.words(view.entry.shape))
                .unwrap_or_default()
                .to_owned()
        },
        move || view(bench, place, |view| view.entry.text(which).to_owned()).unwrap_or_default(),
        move || {
            let trouble = view(bench, place, |view| {
                view.troubles
                    .iter()
                    .find(|trouble| trouble.field == which)
                    .map(|trouble| trouble.sentence.clone())
            });
            trouble.flatten()
        },
        move |text| bench.change_pan(place, |entry| *entry.text_mut(which) = text),
    )
    .hidden_while(move || !has(bench, place, which))
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
