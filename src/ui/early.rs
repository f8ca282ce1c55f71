//! What was typed into the first paint before the module arrived: taken over, never lost.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, HtmlTextAreaElement};

/// The id of the text box, in index.html and on the page.
pub const TEXT_BOX: &str = "recipe-text";

/// The state of the text box of the first paint.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Early {
    /// What stands in it.
    pub text: String,
    /// Where the cursor is, if the box has the focus.
    pub cursor: Option<(u32, u32)>,
}

/// Takes the state of the first paint and clears its place, which is returned.
pub fn take() -> (Early, Option<HtmlElement>) {
    let early = text_box().map(|text_box| {
        let focused = document()
            .active_element()
            .is_some_and(|active| active.id() == TEXT_BOX);
        let selection = |side: Result<Option<u32>, _>| side.ok().flatten().unwrap_or(0);
        Early {
            text: text_box.value(),
            cursor: focused.then(|| {
                (
                    selection(text_box.selection_start()),
                    selection(text_box.selection_end()),
                )
            }),
        }
    });
    let place = document()
        .get_element_by_id("page")
        .and_then(|place| place.dyn_into::<HtmlElement>().ok());
    if let Some(place) = &place {
        place.set_text_content(None);
    }
    (early.unwrap_or_default(), place)
}

/// Gives the cursor back to the page's own text box.
pub fn give_back(cursor: Option<(u32, u32)>) {
    if let (Some((start, end)), Some(text_box)) = (cursor, text_box()) {
        let _ = text_box.focus();
        let _ = text_box.set_selection_range(start, end);
    }
}

fn text_box() -> Option<HtmlTextAreaElement> {
    document().get_element_by_id(TEXT_BOX)?.dyn_into().ok()
}
