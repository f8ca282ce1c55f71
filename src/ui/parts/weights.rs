//! The table of weights: the heart of the ticket.

use super::row::Row;
use super::section::section;
use crate::baking::worksheet::{SheetLine, Status};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// How many rows are drawn at first: far more than any recipe has, few enough for ten thousand pasted lines.
const ROWS: usize = 300;

/// Which line a row shows, and as what.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
struct Key {
    line: usize,
    heading: bool,
}

/// Every ingredient line with its grams.
#[component]
pub fn Weights() -> impl IntoView {
    let bench = Bench::here();
    let shown = RwSignal::new(ROWS);
    let keys = Memo::new(move |_| bench.sheet.with(|sheet| keys(&sheet.lines)));
    let scaled = Memo::new(move |_| {
        bench
            .sheet
            .with(|sheet| sheet.pans.other.is_some() && sheet.pans.factor.is_some())
    });
    let more = move || keys.with(Vec::len).saturating_sub(shown.get());
    let empty = move || keys.with(Vec::is_empty);
    let caption = move || match scaled.get() {
        true => {
            "What to weigh for the pan on the shelf, with the recipe's own weight beside it. Touch a line to see how it was got and to mend it."
        }
        false => "What to weigh. Touch a line to see how it was got and to mend it.",
    };
    let each = move || keys.with(|keys| keys.iter().take(shown.get()).copied().collect::<Vec<_>>());
    let row = move |key: Key| match key.heading {
        true => heading(bench, key.line),
        false => view! { <Row line=key.line scaled /> }.into_any(),
    };
    let body = view! {
        <table class="weights" class:weights--scaled=scaled>
            <caption class="caption">{caption}</caption>
            <thead>
                <tr>
                    <th scope="col" class="weights__head weights__head--grams">
                        {move || if scaled.get() { "Other pan" } else { "Weight" }}
                    </th>
                    <th scope="col" class="weights__head">"Ingredient"</th>
                    <th scope="col" class="weights__head weights__head--beside">
                        {move || if scaled.get() { "Recipe" } else { "Of flour" }}
                    </th>
                </tr>
            </thead>
            <tbody>
                <For
                    each=each
                    key=|key| *key
                    children=row
                />
            </tbody>
        </table>
        <p class="hint" hidden=move || !empty()>"No ingredients yet. Paste a recipe into the text box, one ingredient on each line."</p>
        <button
            class="button"
            type="button"
            hidden=move || more() == 0
            on:click=move |_| shown.update(|shown| *shown += 10 * ROWS)
        >
            {move || format!("Show more of the {} lines that are left", more())}
        </button>
    };
    section("/weights", "Weights", body.into_any())
}

fn keys(lines: &[SheetLine]) -> Vec<Key> {
    let mut keys = Vec::new();
    for line in lines {
        match line.status {
            Status::Weighed | Status::NotWeighed | Status::NotRead => keys.push(Key {
                line: line.line,
                heading: false,
            }),
            Status::Heading => keys.push(Key {
                line: line.line,
                heading: true,
            }),
            _ => {}
        }
    }
    // A heading with nothing to weigh below it ("Method") belongs to the method alone.
    let last = |index: usize| keys.get(index + 1).is_none_or(|next: &Key| next.heading);
    let bare: Vec<bool> = (0..keys.len())
        .map(|index| keys[index].heading && last(index))
        .collect();
    keys.into_iter()
        .zip(bare)
        .filter(|(_, bare)| !bare)
        .map(|(key, _)| key)
        .collect()
}

fn heading(bench: Bench, line: usize) -> AnyView {
    let text = Memo::new(move |_| {
        bench
            .sheet
            .with(|sheet| {
                sheet
                    .lines
                    .get(line - 1)
                    .map(|line| line.text.trim().to_owned())
            })
            .unwrap_or_default()
    });
    view! { <tr><td class="weights__part" colspan="3">{text}</td></tr> }.into_any()
}
