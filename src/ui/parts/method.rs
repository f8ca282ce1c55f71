//! The rest of the text: steps and notes, in order, every line kept. A line here can be called an ingredient.

use super::section::section;
use crate::baking::worksheet::{SheetLine, Status};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// How many lines are shown at first.
const LINES: usize = 300;

/// A line as shown here.
#[derive(Clone, PartialEq)]
struct Kept {
    line: usize,
    text: String,
    heading: bool,
    corrected: bool,
}

/// Method and notes.
#[component]
pub fn Method() -> impl IntoView {
    let bench = Bench::here();
    let kept = Memo::new(move |_| bench.sheet.with(|sheet| kept(&sheet.lines)));
    let text = move || {
        kept.with(|kept| {
            kept.iter()
                .map(|kept| match kept.heading {
                    true => {
                        view! { <h3 class="method__heading" dir="auto">{kept.text.clone()}</h3> }
                            .into_any()
                    }
                    false => view! { <p class="method__line" dir="auto">{kept.text.clone()}</p> }
                        .into_any(),
                })
                .collect_view()
        })
    };
    let choices = move || {
        kept.get()
            .into_iter()
            .filter(|kept| !kept.heading)
            .map(|kept| choice(bench, kept))
            .collect_view()
    };
    let body = view! {
        <div class="method">{text}</div>
        <p class="hint" hidden=move || !kept.with(Vec::is_empty)>"No method and no notes in the text."</p>
        <details class="figure no-print" hidden=move || kept.with(Vec::is_empty)>
            <summary class="figure__line">"Is one of these an ingredient?"</summary>
            <ul class="offers">{choices}</ul>
        </details>
    };
    section("/method", "Method and notes", body.into_any())
}

fn kept(lines: &[SheetLine]) -> Vec<Kept> {
    let mut kept: Vec<Kept> = Vec::new();
    for line in lines {
        let heading = line.status == Status::Heading;
        // Headings of ingredients stand among the weights.
        let before_ingredient = heading
            && lines[line.line..]
                .iter()
                .find(|next| next.status != Status::Blank)
                .is_some_and(|next| {
                    matches!(
                        next.status,
                        Status::Weighed | Status::NotWeighed | Status::NotRead
                    )
                });
        if (heading && !before_ingredient) || matches!(line.status, Status::Method | Status::Note) {
            kept.push(Kept {
                line: line.line,
                text: line.text.trim().to_owned(),
                heading,
                corrected: line.corrected,
            });
        }
        if kept.len() == LINES {
            break;
        }
    }
    kept
}

fn choice(bench: Bench, kept: Kept) -> impl IntoView {
    let Kept {
        line,
        text,
        corrected,
        ..
    } = kept;
    let change = move |_| match corrected {
        true => bench.change(format!("what line {line} was mended to"), false, |inputs| {
            inputs.uncorrect(line)
        }),
        false => bench.change(format!("line {line} is an ingredient"), false, |inputs| {
            inputs.call_ingredient(line, Some(true))
        }),
    };
    let label = if corrected {
        format!("Take back what I changed: {text}")
    } else {
        text
    };
    view! { <li><button class="button button--offer" type="button" on:click=change>{label}</button></li> }
}
