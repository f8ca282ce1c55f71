//! The way from page to page: a bar at the foot of a small screen, at the head of a wide one.

use crate::ui::dom::{Element, drawing, element};
use crate::ui::route::{Larder, Place, Route};
use leptos::prelude::*;

const PAGES: [(&str, &str, Route, &str); 6] = [
    (
        "#/",
        "Ticket",
        Route::Ticket(Place::Top),
        "M6 3h12v18l-3-2-3 2-3-2-3 2zM9 8h6M9 12h6",
    ),
    (
        "#/bench",
        "Bench",
        Route::Bench,
        "M4 7h16l-2 4H6zM12 11v2M6 21l1.5-8h9L18 21zM12 15v2.5l1.5 1",
    ),
    (
        "#/trials",
        "Trials",
        Route::Trials,
        "M5 3h14v18H5zM9 3v18M12 8h4M12 12h4M12 16h4",
    ),
    (
        "#/shelf",
        "Shelf",
        Route::Shelf,
        "M3 9h18M3 20h18M6 9V4h4v5M13 9V5h5v4M6 20v-6h5v6M14 20v-7h3v7",
    ),
    (
        "#/larder",
        "Larder",
        Route::Larder(Larder::Search),
        "M8 3h8v3H8zM8 6L6 9v12h12V9l-2-3M6 12h12M6 17h12",
    ),
    (
        "#/settings",
        "Settings",
        Route::Settings,
        "M5 4h10l-1 9H6zM15 6h3v4h-3.4M8 17h4M4 21h12",
    ),
];

/// The name of the program and the bar of pages.
pub fn navigation(route: ReadSignal<Route>) -> Vec<Element> {
    let links = PAGES.map(|(address, name, page, lines)| {
        let icon = drawing("svg")
            .class("pages__icon")
            .attribute("viewBox", "0 0 24 24")
            .attribute("aria-hidden", "true")
            .child(drawing("path").attribute("d", lines));
        let link = element("a")
            .class("pages__link")
            .attribute("href", address)
            .attribute_of("aria-current", move || {
                route.get().same_link(page).then(|| "page".to_owned())
            })
            .child(icon)
            .text(name);
        element("li").class("pages__item").child(link)
    });
    let pages = element("nav")
        .class("pages")
        .attribute("aria-label", "Pages")
        .child(element("ul").class("pages__list").children(links));
    let skip = element("a")
        .class("skip")
        .attribute("href", "#main")
        .text("Skip to the page");
    let head = element("header")
        .class("head")
        .child(element("div").class("head__name").text("Batterwright"))
        .child(
            element("p")
                .class("head__job")
                .text("Cups to grams, a leavening verdict, another pan"),
        )
        .child(pages);
    vec![skip, head]
}
