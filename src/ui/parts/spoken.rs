//! What a screen reader says after a change: the worksheet's summary, politely, once typing has paused.

use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;
use leptos::{leptos_dom::helpers::TimeoutHandle, prelude::*};
use std::time::Duration;

const PAUSE: Duration = Duration::from_millis(800);

/// The spoken summary; it is not seen.
pub fn spoken(bench: Bench) -> Element {
    let said = RwSignal::new(String::new());
    Effect::new(move |before: Option<Option<TimeoutHandle>>| {
        let summary = bench.part(Part::Summary, |sheet| sheet.summary.clone());
        // What the page opens with is read in its place.
        let waiting = before?;
        if let Some(waiting) = waiting {
            waiting.clear();
        }
        set_timeout_with_handle(move || said.set(summary), PAUSE).ok()
    });
    element("p")
        .class("unseen")
        .attribute("role", "status")
        .text_of(move || said.get())
}
