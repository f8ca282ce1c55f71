//! What is known of one line, and how it can be mended by hand.

use super::mend::Mend;
use super::section::sentences;
use crate::baking::worksheet::SheetLine;
use leptos::prelude::*;

/// The details of a line.
#[component]
pub fn RowDetails(
    /// Counted from 1.
    line: usize,
    /// The line as the worksheet has it.
    this: Memo<Option<SheetLine>>,
) -> impl IntoView {
    let facts = move || this.with(|this| this.as_ref().map(facts));
    let doubts = move || {
        this.with(|this| {
            this.as_ref()
                .map(|this| sentences("details__doubt", this.doubts.clone()))
        })
    };
    view! {
        <div class="details" role="group" aria-label=format!("Line {line}")>
            {facts}
            {doubts}
            <Mend line this />
        </div>
    }
}

fn facts(line: &SheetLine) -> AnyView {
    let said = |text: &str| (!text.is_empty()).then(|| text.to_owned());
    let facts = [
        ("As pasted", said(line.text.trim())),
        ("Understood", said(&line.understood)),
        ("Weight", line.how.clone()),
        ("Source", line.source.clone()),
        ("Left out", line.beside.clone()),
        ("Eggs", line.eggs.as_ref().map(|eggs| eggs.shown.clone())),
    ];
    let shown = facts
        .into_iter()
        .filter_map(|(label, fact)| fact.map(|fact| (label, fact)));
    let rows = shown.map(|(label, fact)| view! { <div class="facts__fact"><dt class="facts__label">{label}</dt><dd class="facts__words">{fact}</dd></div> });
    view! { <dl class="facts">{rows.collect_view()}</dl> }.into_any()
}
