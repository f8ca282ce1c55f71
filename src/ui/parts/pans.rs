//! The recipe's pan and the one on the shelf: what to type, how full they are, and the factor between them.

use super::common::{button, folded, paragraph, section};
use super::pan_drawing::pan_drawing;
use super::pan_form::pan_form;
use crate::baking::worksheet::{PanSheet, PanView};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;
use leptos::prelude::*;

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
    let pans = element("div")
        .class("pans")
        .child(own(bench))
        .child(other(bench));
    section("/pan", "Pan").children([
        element("p").class("pans__factor").text_of(factor),
        element("p")
            .attribute_of("class", words_class)
            .text_of(words),
        pans,
    ])
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
        folded("Change the recipe's pan")
            .child(pan_form(bench, false))
            .child(back),
    ])
}

/// The pan on the shelf, once there is one.
fn other(bench: Bench) -> Element {
    let chosen = Memo::new(move |_| bench.part(Part::Pans, |sheet| sheet.pans.other.is_some()));
    let inside = move || match chosen.get() {
        true => vec![
            known(bench, |pans| pans.other.as_ref()),
            pan_form(bench, true),
            button(
                "button button--plain no-print",
                "Keep to the recipe's pan",
                move || {
                    bench.change("the pan on the shelf".into(), false, |inputs| {
                        inputs.choices.other_pan = None
                    });
                },
            ),
        ],
        false => vec![
            paragraph("hint", "Say which pan you have, and the weights follow."),
            button("button no-print", "Bake in another pan", move || {
                bench.choose_other_pan()
            }),
        ],
    };
    let class = move || {
        Some(
            if chosen.get() {
                "pans__pan"
            } else {
                "pans__pan no-print"
            }
            .to_owned(),
        )
    };
    element("div")
        .attribute_of("class", class)
        .child(
            element("h3")
                .class("part__sub")
                .text("The pan on the shelf"),
        )
        .child(element("div").children_of(inside))
}

/// What a pan is, how full, and its drawing.
fn known(bench: Bench, which: fn(&PanSheet) -> Option<&PanView>) -> Element {
    element("div").children_of(move || {
        bench.part(Part::Pans, |sheet| {
            let Some(view) = which(&sheet.pans) else {
                return Vec::new();
            };
            let drawing = view
                .section
                .as_ref()
                .map(|section| pan_drawing(section, widest(&sheet.pans)));
            let words = [
                paragraph("pan__words", view.words.clone()),
                paragraph("hint", view.from.clone()),
            ];
            words.into_iter().chain(drawing).collect()
        })
    })
}

/// Both pans are drawn to one scale: the wider one fills the width. In millimetres.
fn widest(pans: &PanSheet) -> f64 {
    let sections = [Some(&pans.own), pans.other.as_ref()]
        .into_iter()
        .flatten()
        .filter_map(|view| view.section.as_ref());
    sections
        .flat_map(|section| &section.profile)
        .map(|cut| cut.wall * 2.0)
        .fold(0.0, f64::max)
}
