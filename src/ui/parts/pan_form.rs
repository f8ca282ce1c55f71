//! The fields of a pan: shape, count, lengths and their unit. Each trouble stands at its field.

use crate::baking::pan::{Pan, PanEntry, PanField, Shape};
use crate::baking::worksheet::{LengthUnit, PanView};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The form of one pan.
#[component]
pub fn PanForm(
    /// True for the pan on the shelf, false for the recipe's own.
    other: bool,
    /// The pan as the worksheet has it.
    view: Memo<Option<PanView>>,
) -> impl IntoView {
    let bench = Bench::here();
    let entry = Memo::new(move |_| {
        view.with(|view| {
            view.as_ref()
                .map(|view| view.entry.clone())
                .unwrap_or_default()
        })
    });
    let shape = Memo::new(move |_| entry.with(|entry| entry.shape));
    let unit = Memo::new(move |_| entry.with(|entry| entry.unit));
    let name = if other { "other-pan" } else { "own-pan" };
    let shapes = Shape::ALL.iter().enumerate().map(|(index, &of)| {
        view! { <option value=index.to_string() selected=move || shape.get() == of>{of.words()}</option> }
    });
    let choose_shape = move |event| {
        let Some(&chosen) = event_target_value(&event)
            .parse::<usize>()
            .ok()
            .and_then(|index| Shape::ALL.get(index))
        else {
            return;
        };
        // Another shape has other sides, so it starts at its usual size.
        bench.change_pan(other, |entry| *entry = Pan::usual(chosen).entry(entry.unit));
    };
    let choose_unit = move |event| {
        let chosen = if event_target_value(&event) == "cm" {
            LengthUnit::Centimetres
        } else {
            LengthUnit::Inches
        };
        bench.change_pan(other, |entry| match entry.read() {
            Ok(pan) => *entry = pan.entry(chosen),
            Err(_) => entry.unit = chosen,
        });
    };
    view! {
        <fieldset class="pan-form no-print">
            <legend class="unseen">{if other { "The pan on the shelf" } else { "The recipe's pan" }}</legend>
            <div class="field">
                <label class="label" for=format!("{name}-shape")>"Shape"</label>
                <select class="input" id=format!("{name}-shape") on:change=choose_shape>{shapes.collect_view()}</select>
            </div>
            <div class="field">
                <label class="label" for=format!("{name}-unit")>"Lengths in"</label>
                <select class="input" id=format!("{name}-unit") on:change=choose_unit>
                    <option value="in" selected=move || unit.get() == LengthUnit::Inches>"inches"</option>
                    <option value="cm" selected=move || unit.get() == LengthUnit::Centimetres>"centimetres"</option>
                </select>
            </div>
            <Field other view which=PanField::Count />
            <Field other view which=PanField::Length />
            {move || shape.get().has_width().then(|| view! { <Field other view which=PanField::Width /> })}
            <Field other view which=PanField::Depth />
        </fieldset>
    }
}

/// One field, with what is wrong with it.
#[component]
fn Field(other: bool, view: Memo<Option<PanView>>, which: PanField) -> impl IntoView {
    let bench = Bench::here();
    let name = if other { "other-pan" } else { "own-pan" };
    let id = format!(
        "{name}-{}",
        match which {
            PanField::Count => "count",
            PanField::Length => "length",
            PanField::Width => "width",
            PanField::Depth => "depth",
        }
    );
    let said = format!("{id}-trouble");
    let value = Memo::new(move |_| {
        view.with(|view| {
            view.as_ref()
                .map(|view| field(&view.entry, which).clone())
                .unwrap_or_default()
        })
    });
    let label = move || {
        view.with(|view| {
            view.as_ref()
                .map(|view| label(view.entry.shape, which))
                .unwrap_or_default()
        })
    };
    let trouble = Memo::new(move |_| {
        let troubles = view.with(|view| {
            view.as_ref()
                .map(|view| view.troubles.clone())
                .unwrap_or_default()
        });
        troubles
            .into_iter()
            .find(|trouble| trouble.field == which)
            .map(|trouble| trouble.sentence)
            .unwrap_or_default()
    });
    view! {
        <div class="field">
            <label class="label" for=id.clone()>{label}</label>
            <input
                class="input input--number"
                id=id
                type="text"
                inputmode=if which == PanField::Count { "numeric" } else { "decimal" }
                autocomplete="off"
                aria-describedby=said.clone()
                aria-invalid=move || trouble.with(|trouble| (!trouble.is_empty()).to_string())
                prop:value=value
                on:input=move |event| bench.change_pan(other, |entry| *field_mut(entry, which) = event_target_value(&event))
            />
            <p class="trouble" id=said>{trouble}</p>
        </div>
    }
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

fn field(entry: &PanEntry, which: PanField) -> &String {
    match which {
        PanField::Count => &entry.count,
        PanField::Length => &entry.length,
        PanField::Width => &entry.width,
        PanField::Depth => &entry.depth,
    }
}

fn field_mut(entry: &mut PanEntry, which: PanField) -> &mut String {
    match which {
        PanField::Count => &mut entry.count,
        PanField::Length => &mut entry.length,
        PanField::Width => &mut entry.width,
        PanField::Depth => &mut entry.depth,
    }
}
