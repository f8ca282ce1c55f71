//! What was done on the shelf a moment ago, and its way back.

use super::Page;
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::parts::button;
use crate::ui::storage::{self, Resting};
use leptos::prelude::*;

/// The button that puts back: the focus goes there, since what was touched is gone.
const PUT_BACK: &str = "shelf-put-back";

/// What can be taken back.
#[derive(Clone, PartialEq)]
pub enum Undo {
    /// A record was put into the bin.
    Removed(Resting),
    /// Records went for good. They are held while this page is open.
    ForGood(Vec<Gone>),
    /// Nothing was done yet: the bin has no room for a recipe of that name and title.
    NoRoom(String, String),
}

/// What went for good.
#[derive(Clone, PartialEq)]
pub struct Gone {
    /// What it was called.
    pub title: String,
    /// The keys that it and its bakes stood under, with what stood there.
    pub texts: Vec<(String, String)>,
}

/// The bar that says what was done. It lies over the page, so that it is in sight wherever the list stands.
pub fn bar(page: Page) -> Element {
    Effect::new(move |_| {
        if page.undo.with(Option::is_some) {
            device::focus(PUT_BACK);
        }
    });
    let bar = move || {
        page.undo
            .get()
            .map(|undo| said(page, undo))
            .into_iter()
            .collect()
    };
    element("div")
        .class("done-place")
        .attribute("role", "status")
        .children_of(bar)
}

fn said(page: Page, undo: Undo) -> Element {
    let words = match &undo {
        Undo::Removed(resting) => format!(
            "Removed: {}. It rests in the bin for 30 days.",
            resting.record.title
        ),
        Undo::ForGood(gone) => match gone.as_slice() {
            [one] => format!("Removed for good: {}.", one.title),
            many => format!("Removed for good: {} from the bin.", many.len()),
        },
        Undo::NoRoom(_, title) => {
            format!("The space is full, and the bin has no room for {title}.")
        }
    };
    let choice = match undo {
        Undo::NoRoom(id, title) => button("button", "Remove it for good", move || {
            remove_for_good(page, &id, &title);
        }),
        undo => button("button", "Put it back", move || {
            match take_back(&undo) {
                Ok(()) => page.done(None),
                Err(refusal) => page.refused("It could not be put back", refusal),
            }
            device::focus("main");
        }),
    };
    let close = button("button button--plain", "Close", move || {
        page.undo.set(None);
        device::focus("main");
    });
    element("div")
        .class("done")
        .child(element("p").class("done__words").text(words))
        .child(choice.attribute("id", PUT_BACK))
        .child(close)
}

fn remove_for_good(page: Page, id: &str, title: &str) {
    let key = storage::key_of(id);
    match storage::remove_for_good(&key) {
        Ok(texts) => {
            page.leave(id);
            page.done(Some(Undo::ForGood(vec![Gone {
                title: title.to_owned(),
                texts,
            }])));
        }
        Err(refusal) => page.refused("It could not be removed", refusal),
    }
}

fn take_back(undo: &Undo) -> Result<(), storage::Refusal> {
    match undo {
        Undo::Removed(resting) => storage::put_back(resting).map(drop),
        Undo::ForGood(gone) => gone
            .iter()
            .flat_map(|gone| &gone.texts)
            .try_for_each(|(key, text)| storage::stand_again(key, text)),
        Undo::NoRoom(..) => Ok(()),
    }
}
