//! What came by an address: the recipe of a link that is not kept yet, or why nothing was opened.

use super::common::button;
use crate::ui::dom::{Element, element};
use crate::ui::state::{Bench, Came};
use leptos::prelude::*;

/// The banner that says so, if anything came.
pub fn came(bench: Bench) -> Vec<Element> {
    let Some(came) = bench.came.get() else {
        return Vec::new();
    };
    let is_unkept = came == Came::Unkept;
    let (class, strong, words) = match came {
        Came::Unkept => (
            "banner banner--look",
            "This recipe came by a link. ",
            "It is kept on your shelf once you change it or keep it.".to_owned(),
        ),
        Came::Refused(reason) => ("banner banner--fault", "", reason + " Nothing was changed."),
    };
    let words = element("p")
        .class("banner__words")
        .child(element("strong").text(strong))
        .text(words);
    let touch = match is_unkept {
        true => button("button", "Keep it", move || bench.keep_given()),
        false => button("button", "Close", move || bench.came.set(None)),
    };
    vec![element("div").class(class).child(words).child(touch)]
}
