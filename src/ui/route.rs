//! Addresses within the page: the part after `#`.
//!
//! Places on the ticket carry their address as their id (`id="/weights"`), so that a plain link
//! scrolls there without any help from us.

use super::device;
use crate::baking::ingredient::by_key;
use leptos::prelude::*;

/// A page, and the place on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Route {
    /// The open recipe.
    Ticket(Place),
    /// The open recipe at the scale.
    Bench,
    /// The bakes of the open recipe that were written down.
    Trials,
    /// The bake of this number.
    Trial(u64),
    /// The kept recipes.
    Shelf,
    /// Everything taken out, and brought in.
    Carry,
    /// What is known of ingredients.
    Larder(Larder),
    /// What holds for every recipe.
    Settings,
    /// How the figures are got.
    About,
}

/// A place on the ticket.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// Its top.
    Top,
    /// Its top, with the recipe that the address holds.
    Given,
    /// A part of it, or an unknown address: the browser scrolls to it if it is there.
    Part,
    /// The row of a line, counted from 1.
    Line(usize),
}

/// A page of the larder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Larder {
    /// Looking an ingredient up.
    Search,
    /// The ingredient of the tables that has this key.
    Card(&'static str),
    /// The baker's own ingredients and words.
    Own,
    /// The own ingredient of this number.
    Entry(u32),
    /// An ingredient that the larder does not hold.
    Unknown,
}

impl Larder {
    /// Reads the part of an address after `#/larder/`.
    fn read(place: &str) -> Self {
        let number = |place: &str| place.strip_prefix("own/")?.parse().ok();
        match place {
            "" => Self::Search,
            "own" => Self::Own,
            _ => match (number(place), by_key(place)) {
                (Some(number), _) => Self::Entry(number),
                (None, Some(known)) => Self::Card(known.key),
                (None, None) => Self::Unknown,
            },
        }
    }
}

impl Route {
    /// Reads the part of an address after `#`.
    pub fn read(hash: &str) -> Self {
        match hash.trim_start_matches('#') {
            "/bench" => Self::Bench,
            "/trials" => Self::Trials,
            "/shelf" => Self::Shelf,
            "/out-and-in" => Self::Carry,
            "/larder" => Self::Larder(Larder::Search),
            "/settings" => Self::Settings,
            "/about" => Self::About,
            "" | "/" => Self::Ticket(Place::Top),
            other => {
                if other.starts_with("/given/") {
                    return Self::Ticket(Place::Given);
                }
                if let Some(id) = other.strip_prefix("/trials/") {
                    return id.parse().map_or(Self::Trials, Self::Trial);
                }
                if let Some(place) = other.strip_prefix("/larder/") {
                    return Self::Larder(Larder::read(place));
                }
                match other
                    .strip_prefix("/line/")
                    .and_then(|line| line.parse().ok())
                {
                    Some(line) => Self::Ticket(Place::Line(line)),
                    None => Self::Ticket(Place::Part),
                }
            }
        }
    }

    /// True where two routes are places on the same page.
    pub fn same_page(self, other: Self) -> bool {
        match (self, other) {
            (Self::Larder(one), Self::Larder(other)) => one == other,
            (Self::Trial(one), Self::Trial(other)) => one == other,
            (Self::Trials, Self::Trial(_)) | (Self::Trial(_), Self::Trials) => false,
            _ => self.same_link(other),
        }
    }

    /// True where two routes are of the same link in the bar of pages.
    pub fn same_link(self, other: Self) -> bool {
        let page = |route: Self| match route {
            Self::Trial(_) => Self::Trials,
            other => other,
        };
        std::mem::discriminant(&page(self)) == std::mem::discriminant(&page(other))
    }
}

/// The route that the address bar shows, followed as it changes.
pub fn follow() -> ReadSignal<Route> {
    let (route, set_route) = signal(Route::read(&device::hash()));
    // The page listens for as long as it lives.
    let _ = window_event_listener_untyped("hashchange", move |_| {
        set_route.set(Route::read(&device::hash()))
    });
    route
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn addresses_read_as_pages_and_places() {
        for (hash, route) in [
            ("", Route::Ticket(Place::Top)),
            ("#/", Route::Ticket(Place::Top)),
            ("#/bench", Route::Bench),
            ("#/trials", Route::Trials),
            (
                "#/trials/1732800000000123",
                Route::Trial(1_732_800_000_000_123),
            ),
            ("#/trials/x", Route::Trials),
            ("#/shelf", Route::Shelf),
            ("#/out-and-in", Route::Carry),
            ("#/larder", Route::Larder(Larder::Search)),
            ("#/larder/butter", Route::Larder(Larder::Card("butter"))),
            ("#/larder/own", Route::Larder(Larder::Own)),
            ("#/larder/own/12", Route::Larder(Larder::Entry(12))),
            ("#/larder/own/x", Route::Larder(Larder::Unknown)),
            ("#/larder/patience", Route::Larder(Larder::Unknown)),
            ("#/line/12", Route::Ticket(Place::Line(12))),
            ("#/line/x", Route::Ticket(Place::Part)),
            ("#/given/abc", Route::Ticket(Place::Given)),
            ("#/weights", Route::Ticket(Place::Part)),
        ] {
            assert_eq!(Route::read(hash), route, "{hash}");
        }
    }
}
