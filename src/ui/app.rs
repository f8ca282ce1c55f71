//! The frame of the page: start, navigation, the page that the address names, what to say if it breaks.

use super::dom::{self, Element, element};
use super::route::{self, Place, Route};
use super::state::Bench;
use super::storage::{self, Of};
use super::{device, early, pages, parts};
use crate::baking::worksheet::{Inputs, Settings, worksheet};
use leptos::ev::Custom;
use leptos::prelude::*;
use std::panic::PanicHookInfo;
use std::time::Duration;
use web_sys::{HtmlElement, StorageEvent};

/// A recipe that goes through all that is reckoned, and is soon done.
const SMALL: &str = "Cake\n\n1 cup flour\n1 tsp soda\n1 cup buttermilk";

/// What is said of a page that broke.
const BROKEN: &str = "This page has broken. Your recipe is kept on this device as you last typed it; load the page \
    again to go on. If it breaks again, please report what you did.";

/// Starts the page in place of the first paint, and takes over what was typed into that. Each step is a task of its own, so
/// that the first paint still answers in between.
pub fn start() {
    let make_ready = || {
        // A small worksheet unpacks the tables, and has the browser compile what the first real one calls.
        worksheet(&Inputs::of_text(SMALL), &Settings::default());
        set_timeout(begin, Duration::ZERO);
    };
    set_timeout(make_ready, Duration::ZERO);
}

fn begin() {
    let (early, place) = early::take();
    let Some(place) = place.or_else(|| document().body()) else {
        return;
    };
    let cursor = early.cursor;
    start_in(place, early, || device::mark("data-ready", "true"));
    early::give_back(cursor);
    // What a screen shows stands and takes touches; the rest is drawn piece by piece until the page is ready.
    device::mark("data-standing", "true");
}

/// Starts the page in any place, with what was typed before it came; `then` is called once all of it is drawn.
pub fn start_in(place: HtmlElement, early: early::Early, then: impl FnOnce() + 'static) {
    // An address that names a place on the ticket is gone to at once, so all that comes before it has to be there.
    let names_place = matches!(
        Route::read(&device::hash()),
        Route::Ticket(Place::Part | Place::Line(_))
    );
    let build = move || {
        let bench = Bench::start(&early);
        (page(bench), bench.haste)
    };
    dom::mount(place, !names_place, build, then);
}

/// Says in plain words that the page broke. What was typed is kept already, so loading again goes on from there.
pub fn say_broken(trouble: &PanicHookInfo<'_>) {
    console_error_panic_hook::hook(trouble);
    // Nothing is left to do where even this is refused.
    let _ = put_broken();
}

/// Puts the banner of a broken page first on it, with nothing of our own drawing: that may be what broke.
fn put_broken() -> Option<()> {
    let document = web_sys::window()?.document()?;
    let made = |name, class, words: &str| {
        let element = document.create_element(name).ok()?;
        element.set_class_name(class);
        element.set_text_content(Some(words));
        Some(element)
    };
    let said = made("p", "banner__words", BROKEN)?;
    let again = made("a", "button", "Load again")?;
    again.set_attribute("href", "").ok()?;
    let banner = made("div", "banner banner--fault", "")?;
    banner.set_attribute("role", "alert").ok()?;
    banner.append_with_node_2(&said, &again).ok()?;
    document.body()?.prepend_with_node_1(&banner).ok()
}

fn page(bench: Bench) -> Vec<Element> {
    let route = route::follow();
    bench.open_shared();
    keep_before_leaving(bench);
    follow_other_windows(bench);
    go_where_the_address_says(bench, route);
    // A place on the same page is no reason to draw it again.
    let page = Memo::new(move |before: Option<&Route>| match (before, route.get()) {
        (Some(before), now) if before.same_page(now) => *before,
        (_, now) => now,
    });
    let main = element("main")
        .class("main")
        .attribute("id", "main")
        .attribute("tabindex", "-1")
        .children_of(move || {
            vec![match page.get() {
                Route::Ticket(_) => pages::ticket(bench),
                Route::Bench => pages::bench(bench),
                Route::Trials => pages::trials(bench),
                Route::Trial(id) => pages::trial(bench, id),
                Route::Shelf => pages::shelf(bench),
                Route::Carry => pages::carry(bench),
                Route::Larder(place) => pages::larder(bench, place),
                Route::Settings => pages::settings(bench),
                Route::About => pages::about(),
            }]
        });
    let mut page = parts::navigation(route);
    page.extend([
        parts::banners(bench),
        parts::alarm(bench),
        main,
        parts::paper(bench, route),
        parts::foot(),
        parts::spoken(bench),
    ]);
    page
}

/// A phone that locks its screen or closes the page may give no later chance.
fn keep_before_leaving(bench: Bench) {
    for event in ["pagehide", "visibilitychange"] {
        // The page listens for as long as it lives.
        let _ = window_event_listener_untyped(event, move |_| bench.flush());
    }
}

fn follow_other_windows(bench: Bench) {
    let _ = window_event_listener(Custom::<StorageEvent>::new("storage"), move |event| {
        let Some(key) = event.key() else {
            // Everything was cleared.
            return bench.catch_up();
        };
        match storage::of_key(&key) {
            Of::Recipe(id) => bench.follow_other_window(id, event.old_value().as_deref()),
            Of::Trial(recipe, id) => {
                bench.follow_other_trial(recipe, id, event.old_value().as_deref());
            }
            Of::Settings => bench.follow_other_settings(),
            Of::Larder => bench.follow_other_larder(),
            Of::Other => bench.follow_other_kitchen(&key),
        }
    });
    // A page that slept has missed what was told meanwhile.
    for event in ["pageshow", "focus"] {
        let _ = window_event_listener_untyped(event, move |_| bench.catch_up());
    }
}

/// Opens the row that an address names, scrolls to places, and puts the focus at the top of a new page.
fn go_where_the_address_says(bench: Bench, route: ReadSignal<Route>) {
    Effect::new(move |before: Option<Route>| {
        let now = route.get();
        match now {
            Route::Ticket(Place::Line(line)) => bench.open_line(line),
            Route::Ticket(Place::Given) => bench.open_given(),
            _ => {}
        }
        let new_page = before.is_none_or(|before| !before.same_page(now));
        match now {
            Route::Ticket(Place::Part | Place::Line(_)) => {
                device::show(device::hash().trim_start_matches('#').into(), false);
            }
            _ if new_page && before.is_some() => device::show("main".into(), true),
            _ => {}
        }
        now
    });
}
