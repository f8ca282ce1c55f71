//! One line of the table of weights; its details open below it.

use super::row_details::RowDetails;
use crate::baking::worksheet::{SheetLine, Status};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// A line: what to weigh, of what, and whether to check it.
#[component]
pub fn Row(
    /// Counted from 1.
    line: usize,
    /// Whether weights for another pan lead.
    scaled: Memo<bool>,
) -> impl IntoView {
    let bench = Bench::here();
    // A row is drawn once and follows its own line; a letter typed in another line leaves it alone.
    let this = Memo::new(move |_| bench.sheet.with(|sheet| sheet.lines.get(line - 1).cloned()));
    let open = Memo::new(move |_| bench.line.get() == Some(line));
    let words = move |of: fn(&SheetLine) -> String| {
        move || this.with(|this| this.as_ref().map(of).unwrap_or_default())
    };
    let lead = move || {
        this.with(|this| {
            this.as_ref()
                .map(|this| lead(this, scaled.get()))
                .unwrap_or_default()
        })
    };
    let beside = move || {
        this.with(|this| {
            this.as_ref()
                .map(|this| beside(this, scaled.get()))
                .unwrap_or_default()
        })
    };
    let touch = move |_| {
        bench.line.update(|shown| {
            *shown = if *shown == Some(line) {
                None
            } else {
                Some(line)
            }
        })
    };
    let details = format!("details-{line}");
    let details_id = details.clone();
    view! {
        <tr class="row" class:row--open=open class:row--beside=move || words(|this| this.beside.clone().unwrap_or_default())() != "" id=format!("/line/{line}")>
            <td class="row__grams">
                <span class="row__mass">{lead}</span>
                <span class="row__range">{words(|this| this.range_shown.clone().unwrap_or_default())}</span>
            </td>
            <th scope="row" class="row__ingredient">
                <button class="row__open" type="button" aria-expanded=move || open.get().to_string() aria-controls=details on:click=touch>
                    <span class="row__name" dir="auto">{words(name)}</span>
                    <span class="row__note">{words(note)}</span>
                    <span class="row__flag">{words(flag)}</span>
                </button>
            </th>
            <td class="row__beside">{beside}</td>
        </tr>
        {move || open.get().then(|| view! {
            <tr class="row-details" id=details_id.clone()>
                <td colspan="3"><RowDetails line this /></td>
            </tr>
        })}
    }
    .into_any()
}

fn lead(line: &SheetLine, scaled: bool) -> String {
    let shown = if scaled {
        line.scaled_shown.as_ref().or(line.grams_shown.as_ref())
    } else {
        line.grams_shown.as_ref()
    };
    shown.cloned().unwrap_or_else(|| "No weight".into())
}

fn beside(line: &SheetLine, scaled: bool) -> String {
    let shown = if scaled {
        &line.grams_shown
    } else {
        &line.percent_shown
    };
    shown.clone().unwrap_or_default()
}

fn name(line: &SheetLine) -> String {
    line.name
        .map(str::to_owned)
        .unwrap_or_else(|| line.text.trim().to_owned())
}

fn note(line: &SheetLine) -> String {
    let eggs = line.eggs.as_ref().map(|eggs| eggs.shown.clone());
    let own = line.corrected.then(|| "mended by you".to_owned());
    [
        Some(format!("line {}", line.line)),
        line.beside.clone(),
        eggs,
        own,
    ]
    .into_iter()
    .flatten()
    .collect::<Vec<_>>()
    .join(" · ")
}

fn flag(line: &SheetLine) -> String {
    match (line.flagged, line.doubts.first()) {
        (true, Some(doubt)) => format!("Check: {doubt}"),
        (true, None) if line.status == Status::NotRead => {
            "Check: this line could not be read.".into()
        }
        (true, None) => "Check: this reading is unsure.".into(),
        (false, _) => String::new(),
    }
}
