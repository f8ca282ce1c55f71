//! The way from page to page: a bar at the foot of a small screen, at the head of a wide one.

use crate::ui::route::{Place, Route};
use leptos::prelude::*;

const PAGES: [(&str, &str, Route, &str); 4] = [
    (
        "#/",
        "Ticket",
        Route::Ticket(Place::Top),
        "M6 3h12v18l-3-2-3 2-3-2-3 2zM9 8h6M9 12h6",
    ),
    (
        "#/shelf",
        "Shelf",
        Route::Shelf,
        "M3 9h18M3 20h18M6 9V4h4v5M13 9V5h5v4M6 20v-6h5v6M14 20v-7h3v7",
    ),
    (
        "#/settings",
        "Settings",
        Route::Settings,
        "M5 4h10l-1 9H6zM15 6h3v4h-3.4M8 17h4M4 21h12",
    ),
    (
        "#/about",
        "About",
        Route::About,
        "M12 3a9 9 0 1 0 .01 0M12 11v6M12 7v.5",
    ),
];

/// The name of the program and the bar of pages.
#[component]
pub fn Navigation(
    /// The route that is shown.
    route: ReadSignal<Route>,
) -> impl IntoView {
    let links = PAGES.map(|(address, name, page, drawing)| {
        let current = move || route.get().same_page(page).then_some("page");
        view! {
            <li class="pages__item">
                <a class="pages__link" href=address aria-current=current>
                    <svg class="pages__icon" viewBox="0 0 24 24" aria-hidden="true"><path d=drawing /></svg>
                    {name}
                </a>
            </li>
        }
    });
    view! {
        <a class="skip" href="#main">"Skip to the page"</a>
        <header class="head">
            <p class="head__name">"Batterwright"</p>
            <p class="head__job">"Cups to grams, a leavening verdict, another pan"</p>
            <nav class="pages" aria-label="Pages">
                <ul class="pages__list">{links.into_iter().collect_view()}</ul>
            </nav>
        </header>
    }
}
