//! The recipe's pan and those on the shelf: how much is baked, what to weigh into each, how full they are.

use super::common::{button, folded, paragraph, section};
use super::pan_amount::{amount, batter_weighed, whole_eggs};
use super::pan_drawing::{extent, pan_drawing};
use super::pan_form::pan_form;
use crate::baking::worksheet::{PanSheet, PanView};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::{Bench, PanPlace};
use leptos::prelude::*;

/// The button that adds a pan.
const ADD: &str = "add-pan";

/// The part on pans.
pub fn pans(bench: Bench) -> Element {
    let factor = move || {
        bench.part(Part::Pans, |sheet| {
            sheet.pans.factor_shown.clone().unwrap_or_default()
        })
    };
    let words = move || bench.part(Part::Pans, |sheet| sheet.pans.words.clone());
    // Advice to choose a pan is of no use on paper.
    let words_class = move || {
        let factor = bench.part(Part::Pans, |sheet| sheet.pans.factor.is_some());
        Some(
            if factor {
                "pans__words"
            } else {
                "pans__words no-print"
            }
            .to_owned(),
        )
    };
    let shared_out = element("div").children_of(move || {
        let sentences = bench.part(Part::Pans, |sheet| sheet.pans.shared_out.clone());
        let sentences = sentences.into_iter();
        sentences
            .map(|words| paragraph("pans__words", words))
            .collect()
    });
    section("/pan", "Pan").children([
        element("div").class("pans__factor").text_of(factor),
        element("p")
            .attribute_of("class", words_class)
            .text_of(words),
        amount(bench),
        shared_out,
        whole_eggs(bench),
        element("div")
            .class("pans")
            .child(own(bench))
            .child(again(bench)),
        shelf(bench),
        // It stays where it is while pans come and go, and keeps the focus.
        button("button no-print", "", move || bench.add_pan())
            .attribute("id", ADD)
            .text_of(move || {
                match is_bare(bench) {
                    true => "Bake in another pan",
                    false => "Add a pan",
                }
                .to_owned()
            }),
        batter_weighed(bench),
    ])
}

fn is_bare(bench: Bench) -> bool {
    bench.part(Part::Pans, |sheet| sheet.pans.shelf.is_empty())
}

/// The recipe's own pan; its fields open at a touch.
fn own(bench: Bench) -> Element {
    let back = button(
        "button button--plain",
        "Take the pan that the text names",
        move || {
            bench.change("the recipe's pan".into(), false, |inputs| {
                inputs.choices.own_pan = None
            });
        },
    )
    .hidden_while(move || bench.chosen(|chosen| chosen.own_pan.is_none()));
    element("div").class("pans__pan").children([
        element("h3").class("part__sub").text("The recipe's pan"),
        known(bench, |pans| Some(&pans.own)),
        charts(bench, |pans| Some(&pans.own)),
        folded("Change the recipe's pan")
            .child(pan_form(bench, PanPlace::Own))
            .child(back),
    ])
}

/// The recipe's own pan with another amount in it, where nothing stands on the shelf.
fn again(bench: Bench) -> Element {
    let none = move || bench.part(Part::Pans, |sheet| sheet.pans.own_again.is_none());
    element("div")
        .class("pans__pan")
        .child(
            element("h3")
                .class("part__sub")
                .text("The recipe's pan with what is baked"),
        )
        .child(known(bench, |pans| pans.own_again.as_ref()))
        .hidden_while(none)
}

/// The pans on the shelf.
fn shelf(bench: Bench) -> Element {
    let count = Memo::new(move |_| bench.part(Part::Pans, |sheet| sheet.pans.shelf.len()));
    element("div").class("pans").children_of(move || {
        let count = count.get();
        (0..count)
            .map(|place| on_the_shelf(bench, place, count))
            .collect()
    })
}

fn on_the_shelf(bench: Bench, place: usize, count: usize) -> Element {
    let remove = match count {
        1 => "Keep to the recipe's pan".to_owned(),
        _ => format!("Take pan {} off the shelf", place + 1),
    };
    let title = match count {
        1 => PanPlace::Shelf(0).words(),
        _ => format!("Pan {} on the shelf", place + 1),
    };
    element("div").class("pans__pan").children([
        element("h3").class("part__sub").text(title),
        known(bench, move |pans| pans.shelf.get(place)),
        charts(bench, move |pans| pans.shelf.get(place)),
        pan_form(bench, PanPlace::Shelf(place)),
        button("button button--plain no-print", remove, move || {
            bench.remove_pan(place);
            // The button that was touched is gone.
            device::focus(ADD);
        }),
    ])
}

/// What a pan is, how full, and its drawing.
fn known(bench: Bench, which: impl Fn(&PanSheet) -> Option<&PanView> + 'static) -> Element {
    element("div").children_of(move || {
        bench.part(Part::Pans, |sheet| {
            let Some(view) = which(&sheet.pans) else {
                return Vec::new();
            };
            let drawing = view
                .section
                .as_ref()
                .map(|section| pan_drawing(section, drawing_width(&sheet.pans)));
            let from = match view.from.as_str() {
                "" => None,
                from => Some(paragraph("hint", from.to_owned())),
            };
            let words = paragraph("pan__words", view.words.clone());
            std::iter::once(words).chain(from).chain(drawing).collect()
        })
    })
}

/// What charts say of a pan of that size; opens at a touch.
fn charts(
    bench: Bench,
    which: impl Fn(&PanSheet) -> Option<&PanView> + Clone + 'static,
) -> Element {
    let said = move || {
        bench.part(Part::Pans, |sheet| {
            which(&sheet.pans).map_or_else(Vec::new, |view| view.charts.clone())
        })
    };
    let all = said.clone();
    let sentences = element("div").children_of(move || {
        let sentences = all().into_iter();
        sentences.map(|words| paragraph("hint", words)).collect()
    });
    folded("What charts say of it")
        .child(sentences)
        .hidden_while(move || said().is_empty())
}

/// How many millimetres every drawing is wide, so that all have one scale: the widest pan and a margin, or more where a tall
/// one would stand higher than two thirds of that.
fn drawing_width(pans: &PanSheet) -> f64 {
    let views = std::iter::once(&pans.own)
        .chain(&pans.own_again)
        .chain(&pans.shelf);
    views
        .filter_map(|view| view.section.as_ref())
        .map(extent)
        .map(|(wide, high)| (wide * 1.12).max(high * 1.5))
        .fold(1.0, f64::max)
}
