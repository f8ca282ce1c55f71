//! The text box, and the buttons for the recipe as a whole.

use super::common::button;
use super::new_version::new_version;
use super::share::share;
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::early::TEXT_BOX;
use crate::ui::state::Bench;
use leptos::prelude::*;

const EXAMPLE: &str = "Paste a recipe, one ingredient on each line:\n\n2 cups plain flour\n1/2 tsp baking soda\n1 cup buttermilk\n\nBake in a 9 inch round pan.";

/// The recipe's text as the baker types it.
pub fn recipe_text(bench: Bench) -> Element {
    let editing = bench.editing;
    let class = move || {
        Some(
            if editing.get() {
                "recipe-text"
            } else {
                "recipe-text recipe-text--closed"
            }
            .to_owned(),
        )
    };
    let toggle = element("button")
        .class("button recipe-text__toggle")
        .attribute("type", "button")
        .attribute("aria-controls", "recipe-text-box")
        .attribute_of("aria-expanded", move || Some(editing.get().to_string()))
        .on_touch(move || editing.update(|editing| *editing = !*editing))
        .text_of(move || {
            if editing.get() {
                "Close the text"
            } else {
                "Edit text"
            }
            .to_owned()
        });
    let new = button("button button--plain", "New", move || {
        bench.open_blank();
        device::show(TEXT_BOX.into(), true);
    });
    let print = button("button button--plain", "Print", device::print);
    let unread = RwSignal::new(String::new());
    // The box holds its own text; it is written to only when the text changed elsewhere.
    let text = move || {
        bench.outside.track();
        bench.inputs_now(|inputs| inputs.text.clone())
    };
    let text_box = element("textarea")
        .class("recipe-text__text")
        .attribute("id", TEXT_BOX)
        .attribute("rows", "12")
        .attribute("dir", "auto")
        .attribute("spellcheck", "false")
        .attribute("autocomplete", "off")
        .attribute("placeholder", EXAMPLE)
        .value_of(text)
        .on_value("input", move |text| bench.type_text(text));
    let file = element("input")
        .class("input")
        .attribute("id", "recipe-file")
        .attribute("type", "file")
        .attribute(
            "accept",
            ".txt,.md,.html,.htm,.json,text/plain,text/html,application/json",
        )
        .on("change", move |event| {
            device::read_file(event, move |text| match text {
                Ok(text) => bench.open_text("the file", text),
                Err(why) => unread.set(why.to_owned()),
            });
        });
    let file = element("div")
        .class("field")
        .child(
            element("label")
                .class("label")
                .attribute("for", "recipe-file")
                .text("Or open a file: text, or a saved web page"),
        )
        .child(file)
        .child(
            element("p")
                .class("trouble")
                .attribute("role", "status")
                .text_of(move || unread.get()),
        );
    let (share, share_place) = share(bench);
    let (keep, form) = new_version(bench);
    let tools = element("div")
        .class("recipe-text__tools")
        .child(toggle)
        .child(new)
        .child(print)
        .child(share)
        .child(keep);
    let box_place = element("div")
        .class("recipe-text__box")
        .attribute("id", "recipe-text-box")
        .child(
            element("label")
                .class("label")
                .attribute("for", TEXT_BOX)
                .text("Recipe text"),
        )
        .child(text_box)
        .child(file)
        // Below the box, so that the first letter typed moves nothing.
        .child(
            element("div")
                .class("recipe-text__history")
                .children_of(move || history(bench)),
        );
    element("section")
        .attribute_of("class", class)
        .attribute("aria-label", "Recipe text")
        .child(tools)
        .child(share_place)
        .child(form)
        .child(box_place)
}

/// The ways back and forth.
fn history(bench: Bench) -> Vec<Element> {
    let step = |words: &'static str, what: String, touch: fn(Bench)| {
        button("button button--plain", words, move || touch(bench))
            .child(element("span").class("unseen").text(format!(": {what}")))
    };
    let back = bench
        .last_change()
        .map(|what| step("Take back", what, Bench::take_back));
    let forth = bench
        .next_change()
        .map(|what| step("Put back", what, Bench::put_back));
    back.into_iter().chain(forth).collect()
}
