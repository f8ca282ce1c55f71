//! Keeping the open recipe as a new version: a button, and the form that asks for the version's name.

use super::common::{button, text_field};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

const ASK: &str = "keep-version";
const FORM: &str = "version-form";
const NAME: &str = "version-name";
const KEPT: &str = "version-kept";

/// The button and the form, which is shut until the button is touched.
pub fn new_version(bench: Bench) -> (Element, Element) {
    // The name as typed, while it is asked for.
    let name = RwSignal::new(None::<String>);
    let trouble = RwSignal::new(None::<String>);
    let kept = RwSignal::new(String::new());
    let is_open = move || name.with(Option::is_some);
    let open = move || {
        kept.set(String::new());
        trouble.set(None);
        name.set(Some(bench.version_name()));
        device::focus(NAME);
    };
    let shut = move || {
        name.set(None);
        trouble.set(None);
        device::focus(ASK);
    };
    let ask = button("button button--plain", "Keep as a new version", move || {
        if name.with_untracked(Option::is_some) {
            shut();
        } else {
            open();
        }
    })
    .attribute("id", ASK)
    .attribute("aria-controls", FORM)
    .attribute_of("aria-expanded", move || Some(is_open().to_string()))
    // There is nothing to keep of a blank recipe.
    .hidden_while(move || bench.inputs(|inputs| inputs.text.trim().is_empty()));
    let keep = move || {
        let typed = name.get_untracked().unwrap_or_default();
        match keep(bench, &typed) {
            Ok(()) => {
                kept.set(typed.trim().to_owned());
                name.set(None);
                device::focus(KEPT);
            }
            Err(sentence) => trouble.set(Some(sentence)),
        }
    };
    let field = text_field(
        NAME.into(),
        "text",
        || "Name of the new version".to_owned(),
        move || name.get().unwrap_or_default(),
        move || trouble.get(),
        move |typed| {
            trouble.set(None);
            name.set(Some(typed));
        },
    );
    let form = element("form")
        .class("new-version")
        .attribute("id", FORM)
        .attribute("aria-label", "New version")
        .on("submit", move |event| {
            event.prevent_default();
            keep();
        })
        .child(field)
        .child(
            element("div")
                .class("mend__buttons")
                .child(
                    element("button")
                        .class("button")
                        .attribute("type", "submit")
                        .text("Keep it"),
                )
                .child(button("button button--plain", "Cancel", shut)),
        )
        .hidden_while(move || !is_open());
    let said = element("p")
        .class("hint new-version__kept")
        .attribute("id", KEPT)
        .attribute("role", "status")
        .attribute("tabindex", "-1")
        .text_of(move || said(bench, &kept.get()));
    (ask, element("div").child(form).child(said))
}

/// Keeps it.
///
/// # Errors
/// A sentence that says why it was not kept.
fn keep(bench: Bench, name: &str) -> Result<(), String> {
    if name.trim().is_empty() {
        return Err("Write a name, such as \"with oat milk\".".into());
    }
    bench
        .keep_as_version(name)
        .map_err(|reason| format!("It could not be kept: {reason}."))
}

/// What holds from now on, while that version is open.
pub(super) fn said(bench: Bench, name: &str) -> String {
    match bench.version(|version| version.name == name) {
        Some(true) => format!(
            "This is \"{name}\" now. What you change from here on is this version; the recipe that it was made from stays on the shelf as it was."
        ),
        _ => String::new(),
    }
}
