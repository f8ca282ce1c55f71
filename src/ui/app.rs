//! The frame of the page: start, navigation, the page that the address names, what to say if it breaks.

use super::pages::{About, SettingsPage, ShelfPage, Ticket};
use super::parts::{Banners, Navigation, Spoken};
use super::route::{self, Place, Route};
use super::state::Bench;
use super::{device, early, storage};
use leptos::{ev, mount::mount_to, prelude::*};
use std::panic::PanicHookInfo;
use wasm_bindgen::JsCast;

/// Starts the page in place of the first paint, and takes over what was typed into that.
pub fn start() {
    let (early, place) = early::take();
    let Some(place) = place.or_else(|| document().body()) else {
        return;
    };
    let cursor = early.cursor;
    mount_to(place, move || view! { <App early=early /> }).forget();
    early::give_back(cursor);
    device::mark("data-ready", "true");
}

/// Says in plain words that the page broke. What was typed is kept already, so loading again goes on from there.
pub fn say_broken(trouble: &PanicHookInfo<'_>) {
    console_error_panic_hook::hook(trouble);
    let Some(place) = web_sys::window()
        .and_then(|window| window.document())
        .and_then(|document| document.body())
    else {
        return;
    };
    let said = "<div class=\"banner banner--fault\" role=\"alert\"><p class=\"banner__words\"><strong>This page has broken.</strong> \
        Your recipe is kept on this device as you last typed it; load the page again to go on. \
        If it breaks again, please report what you did.</p><p><a class=\"button\" href=\"\">Load again</a></p></div>";
    // Nothing is left to do where even this is refused.
    let _ = place.insert_adjacent_html("afterbegin", said);
}

/// The whole page.
#[component]
fn App(
    /// What was typed into the first paint.
    early: early::Early,
) -> impl IntoView {
    let bench = Bench::start(&early);
    provide_context(bench);
    let route = route::follow();
    keep_before_leaving(bench);
    follow_other_windows(bench);
    go_where_the_address_says(bench, route);
    let page = Memo::new(move |before: Option<&Route>| match (before, route.get()) {
        (Some(before), now) if before.same_page(now) => *before,
        (_, now) => now,
    });

    view! {
        <Navigation route />
        <Banners />
        <main class="main" id="main" tabindex="-1">
            {move || match page.get() {
                Route::Ticket(_) => view! { <Ticket /> }.into_any(),
                Route::Shelf => view! { <ShelfPage /> }.into_any(),
                Route::Settings => view! { <SettingsPage /> }.into_any(),
                Route::About => view! { <About /> }.into_any(),
            }}
        </main>
        <Spoken />
    }
}

/// A phone that locks its screen or closes the page may give no later chance.
fn keep_before_leaving(bench: Bench) {
    let leaving = [
        window_event_listener_untyped("pagehide", move |_| bench.flush()),
        window_event_listener_untyped("visibilitychange", move |_| bench.flush()),
    ];
    on_cleanup(move || leaving.into_iter().for_each(|listener| listener.remove()));
}

fn follow_other_windows(bench: Bench) {
    let listener = window_event_listener(
        ev::Custom::<web_sys::StorageEvent>::new("storage"),
        move |event| {
            if let Some(id) = event.key().as_deref().and_then(storage::recipe_of_key) {
                bench.follow_other_window(id);
            }
        },
    );
    on_cleanup(move || listener.remove());
}

/// Opens the row that an address names, scrolls to places, and puts the focus at the top of a new page.
fn go_where_the_address_says(bench: Bench, route: ReadSignal<Route>) {
    Effect::new(move |before: Option<Route>| {
        let now = route.get();
        if let Route::Ticket(Place::Line(line)) = now {
            bench.line.set(Some(line));
        }
        let new_page = before.is_none_or(|before| !before.same_page(now));
        match now {
            Route::Ticket(Place::Part | Place::Line(_)) => {
                device::show(device::hash().trim_start_matches('#').into(), false)
            }
            _ if new_page && before.is_some() => device::show("main".into(), true),
            _ => {}
        }
        now
    });
}

/// For tests: the page's root in any element.
pub fn mount_in(place: web_sys::Element) {
    mount_to(
        place.unchecked_into(),
        || view! { <App early=early::Early::default() /> },
    )
    .forget();
}
