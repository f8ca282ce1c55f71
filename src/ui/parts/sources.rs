//! Where the figures on this ticket are from.

use super::section::section;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The part on sources.
#[component]
pub fn Sources() -> impl IntoView {
    let bench = Bench::here();
    let sources = Memo::new(move |_| bench.sheet.with(|sheet| sheet.sources.clone()));
    let body = view! {
        <ul class="sources">
            {move || sources.get().into_iter().map(|source| view! { <li class="sources__source">{source.citation}</li> }).collect_view()}
        </ul>
        <p class="hint">"How far each figure can be trusted stands at its line; more on the page About."</p>
    };
    section("/sources", "Sources", body.into_any())
}
