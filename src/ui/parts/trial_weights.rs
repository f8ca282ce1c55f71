//! What went into a bake: the recipe's ingredients as planned, each with what went in where that was otherwise.

use super::common::{folded, paragraph, text_field};
use crate::baking::quantity::{Mass, show};
use crate::baking::worksheet::{PutIn, WeighRow, grams_typed};
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The misses in words, and the fields where they are mended.
pub fn trial_weights(bench: Bench, id: u64) -> Element {
    let misses = move || {
        bench.trials(|all| {
            let kept = all.iter().find(|kept| kept.id == id);
            let weighed = kept.map_or(&[][..], |kept| &kept.trial.weighed);
            let words = weighed.iter().map(|put| {
                format!(
                    "{} {}",
                    show::mass(Mass::grams(put.grams)),
                    show::amid(&put.name)
                )
            });
            let words: Vec<String> = words.collect();
            match words.is_empty() {
                true => "Everything as planned.".to_owned(),
                false => format!(
                    "Otherwise than planned: {}. The rest as planned.",
                    show::listed(&words)
                ),
            }
        })
    };
    let rows = untrack(|| bench.trial_rows(id));
    let fields = rows.into_iter().map(|row| field(bench, id, row));
    element("div")
        .child(paragraph("", "").text_of(misses))
        .child(
            folded("Say what really went in")
                .child(paragraph("hint", "Empty: as planned."))
                .child(element("div").class("pan-form__fields").children(fields)),
        )
}

fn field(bench: Bench, id: u64, row: WeighRow) -> Element {
    let typed = RwSignal::new(None::<String>);
    let words = row.words.clone();
    let now = move || {
        typed.get().unwrap_or_else(|| {
            bench.trials(|all| {
                let kept = all.iter().find(|kept| kept.id == id);
                let put =
                    kept.and_then(|kept| kept.trial.weighed.iter().find(|put| put.line == words));
                put.map_or_else(String::new, |put| show::trimmed(put.grams, 1))
            })
        })
    };
    let label = format!("{}, planned {}", row.name, row.target_shown);
    text_field(
        format!("went-in-{}-{}", row.line, row.words.part),
        "decimal",
        move || label.clone(),
        now,
        move || typed.with(|typed| grams_typed(typed.as_deref().unwrap_or(""), 0.0).err()),
        move |text| {
            if let Ok(grams) = grams_typed(&text, 0.0) {
                let put = PutIn {
                    line: row.words.clone(),
                    name: row.name.clone(),
                    grams: 0.0,
                };
                bench.change_weighed(id, |trial| trial.put(put, grams));
            }
            typed.set(Some(text));
        },
    )
}
