//! What a screen reader says after a change: the worksheet's summary, politely, once typing has paused.

use crate::ui::state::Bench;
use leptos::{leptos_dom::helpers::TimeoutHandle, prelude::*};
use std::time::Duration;

const PAUSE: Duration = Duration::from_millis(800);

/// The spoken summary; it is not seen.
#[component]
pub fn Spoken() -> impl IntoView {
    let bench = Bench::here();
    let summary = Memo::new(move |_| bench.sheet.with(|sheet| sheet.summary.clone()));
    let said = RwSignal::new(String::new());
    Effect::new(move |before: Option<Option<TimeoutHandle>>| {
        let summary = summary.get();
        let first = before.is_none();
        if let Some(waiting) = before.flatten() {
            waiting.clear();
        }
        // What the page opens with is read in its place.
        if first {
            None
        } else {
            set_timeout_with_handle(move || said.set(summary), PAUSE).ok()
        }
    });
    view! { <p class="unseen" role="status">{said}</p> }
}
