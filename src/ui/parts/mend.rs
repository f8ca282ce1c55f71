//! Mending one line by hand: which ingredient, what weight, or that it is none.

use super::common::{button, paragraph, seek_field, text_field};
use super::instead::{can_be_swapped, seek_instead};
use crate::baking::ingredient::find::find;
use crate::baking::recipe::{amount_trouble, read_grams};
use crate::baking::worksheet::Offer;
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// How many ingredients are offered at once.
const OFFERS: usize = 6;

/// The form for mending a line. What is written holds at once.
pub fn mend(bench: Bench, row: usize, changes: Memo<u32>) -> Element {
    let none = button("button button--plain", "Not an ingredient", move || {
        bench.dismiss(row);
    });
    let back = button(
        "button button--plain",
        "Take back what I changed",
        move || {
            bench.unsay(row);
        },
    )
    .hidden_while(move || {
        changes.get();
        !bench.sheet(|sheet| {
            sheet
                .lines
                .get(row)
                .is_some_and(|line| line.corrected || line.taught)
        })
    });
    let remember = button("button button--plain", "", move || bench.remember_name(row))
        .text_of(move || {
            changes.get();
            let words = bench.unremembered(row).unwrap_or_default();
            format!("Remember it for \"{words}\" in every recipe")
        })
        .hidden_while(move || {
            changes.get();
            bench.unremembered(row).is_none()
        });
    let instead = button("button button--plain", "Use something else", move || {
        seek_instead(bench, row);
    })
    .hidden_while(move || {
        changes.get();
        !bench.sheet(|sheet| sheet.lines.get(row).is_some_and(can_be_swapped))
    });
    let buttons = element("div")
        .class("mend__buttons")
        .child(instead)
        .child(none)
        .child(remember)
        .child(back);
    element("div").class("mend").children([
        own_amount(bench, row, changes),
        own_weight(bench, row, changes),
        own_ingredient(bench, row, changes),
        buttons,
    ])
}

/// How much of it there is, where the line says it otherwise than it was read.
fn own_amount(bench: Bench, row: usize, changes: Memo<u32>) -> Element {
    let value = move || {
        changes.get();
        bench.inputs_now(|inputs| {
            let correction = inputs.correction(bench.place(row));
            correction.and_then(|correction| correction.amount.clone())
        })
    };
    text_field(
        format!("own-amount-{}", at(bench, row)),
        "text",
        || "It is this much, such as 2 cups or 3".to_owned(),
        move || value().unwrap_or_default(),
        move || value().as_deref().and_then(amount_trouble),
        move |typed| bench.measure(row, &typed),
    )
}

/// What tells the fields of this row from those of others: its line, and its place where the line has several.
fn at(bench: Bench, row: usize) -> String {
    match bench.place(row) {
        (line, 0) => line.to_string(),
        (line, part) => format!("{line}-{part}"),
    }
}

/// The baker's own weight for the line.
fn own_weight(bench: Bench, row: usize, changes: Memo<u32>) -> Element {
    let trouble = RwSignal::new(String::new());
    let id = format!("own-weight-{}", at(bench, row));
    let (hint, said) = (format!("{id}-hint"), format!("{id}-trouble"));
    let written = StoredValue::new(String::new());
    // What was written stays as it was written; the field changes only when the weight was changed elsewhere.
    let value = move || {
        changes.get();
        let given = bench.inputs_now(|inputs| {
            inputs
                .correction(bench.place(row))
                .and_then(|correction| correction.grams)
        });
        let written = written.get_value();
        match read_grams(&written) {
            Ok(grams) if grams != given => given.map(|grams| grams.to_string()).unwrap_or_default(),
            _ => written,
        }
    };
    let typed = move |typed: String| {
        written.set_value(typed.clone());
        match read_grams(&typed) {
            Ok(grams) => {
                trouble.set(String::new());
                let place = bench.place(row);
                bench.change(
                    format!("your weight for line {}", place.0),
                    true,
                    |inputs| inputs.weigh(place, grams),
                );
            }
            Err(sentence) => trouble.set(sentence),
        }
    };
    let input = element("input")
        .class("input input--number")
        .attribute("id", id.clone())
        .attribute("type", "text")
        .attribute("inputmode", "decimal")
        .attribute("autocomplete", "off")
        .attribute("aria-describedby", format!("{hint} {said}"))
        .value_of(value)
        .attribute_of("aria-invalid", move || {
            trouble.with(|trouble| (!trouble.is_empty()).then(|| "true".to_owned()))
        })
        .on_value("input", typed);
    element("div").class("field").children([
        element("label")
            .class("label")
            .attribute("for", id)
            .text("Your own weight in the recipe, in grams"),
        paragraph("hint", "From the scale or the packet. Empty takes it back.")
            .attribute("id", hint),
        input,
        element("p")
            .class("trouble")
            .attribute("id", said)
            .attribute("role", "status")
            .text_of(move || trouble.get()),
    ])
}

/// Which ingredient the line is: the likely ones first, any other by its name.
fn own_ingredient(bench: Bench, row: usize, changes: Memo<u32>) -> Element {
    let asked = RwSignal::new(String::new());
    let id = format!("own-ingredient-{}", at(bench, row));
    let offers = move || {
        changes.get();
        match asked.with(|asked| asked.trim().is_empty()) {
            true => bench
                .sheet(|sheet| sheet.lines.get(row).map(|line| line.offers.clone()))
                .unwrap_or_default(),
            false => asked.with(|asked| found(bench, asked)),
        }
    };
    let offer = move |offer: Offer| {
        let offered = offer.clone();
        let choose = button("button button--offer", offer.name, move || {
            asked.set(String::new());
            bench.call(row, &offered);
        });
        element("li").child(choose)
    };
    let none = move || match asked
        .with(|asked| !asked.trim().is_empty() && found(bench, asked).is_empty())
    {
        true => {
            "The tables hold no such ingredient. Give its weight above; its make-up stays unknown."
                .to_owned()
        }
        false => String::new(),
    };
    seek_field(
        id,
        "It is another ingredient",
        "Write a name, such as buttermilk",
        asked,
        "Ingredients that it may be",
        move || offers().into_iter().map(offer).collect(),
        none,
    )
}

/// Ingredients that a few letters may be the beginning of, the baker's own among them.
pub(super) fn found(bench: Bench, asked: &str) -> Vec<Offer> {
    let region = bench.sheet(|sheet| sheet.country.region);
    bench.own_now(|own| {
        find(asked, &own.entries, region, OFFERS)
            .into_iter()
            .map(|hit| Offer {
                key: hit.key,
                name: hit.name,
                instead: false,
            })
            .collect()
    })
}
