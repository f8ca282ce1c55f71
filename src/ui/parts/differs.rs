//! What differs between a version and the recipe that it was made from: in words, and side by side.

mod rows;

pub use rows::rows;

use super::common::{button, is_open, paragraph, section, select, text_field};
use crate::baking::saved::first_words;
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::state::{Bench, Compared, Original};
use leptos::{leptos_dom::helpers::TimeoutHandle, prelude::*};
use std::sync::Arc;
use std::time::Duration;

/// How long nothing is typed before the two are compared again: a key is answered first.
const PAUSE: Duration = Duration::from_millis(300);

/// The part of a version; it is not there for a recipe that stands by itself. Nothing is compared while it is shut.
pub fn differs(bench: Bench) -> Element {
    let open = RwSignal::new(true);
    let as_it_was = RwSignal::new(false);
    let found = compared(bench, open, as_it_was);
    let original = Memo::new(move |_| found.with(|it| it.as_ref().map(|it| it.original)));
    let choice = select(
        "compared-with".into(),
        "Held against",
        vec![
            "The original as it is now",
            "The original as it was when this version was made",
        ],
        move || usize::from(as_it_was.get()),
        move |at| as_it_was.set(at == 1),
    )
    .hidden_while(move || original.get() != Some(Original::Changed));
    let fold = element("details")
        .class("figure differs")
        .attribute("open", "")
        .on("toggle", move |event| open.set(is_open(event)))
        .child(
            element("summary").class("figure__line no-print").child(
                element("span")
                    .class("figure__label")
                    .text("Changes, old and new"),
            ),
        )
        .child(element("div").children_of(move || match found.get() {
            Some(found) => rows(&found.difference),
            None => Vec::new(),
        }));
    section("/differs", "What differs")
        .child(element("div").children_of(move || from(bench, original.get())))
        .child(choice)
        .child(words(found))
        .child(fold)
        .child(name(bench))
        .hidden_while(move || bench.version(|_| ()).is_none())
}

/// The comparison, made anew once nothing has changed for a while, and only while it is looked at.
fn compared(
    bench: Bench,
    open: RwSignal<bool>,
    as_it_was: RwSignal<bool>,
) -> RwSignal<Option<Arc<Compared>>> {
    let found = RwSignal::new(None);
    let compare = move || {
        // The page may have been left for another one while this waited.
        let as_it_was = as_it_was.try_get_untracked().unwrap_or_default();
        let _ = found.try_set(bench.compared(as_it_was).map(Arc::new));
    };
    Effect::new(move |before: Option<Option<TimeoutHandle>>| {
        bench.inputs(|_| ());
        bench.own(|_| ());
        bench.settings();
        as_it_was.track();
        let is_version = bench.version(|_| ()).is_some();
        let is_wanted = open.get() && is_version;
        let is_first = before.is_none();
        if let Some(waiting) = before.flatten() {
            waiting.clear();
        }
        if !is_version {
            found.set(None);
        }
        if !is_wanted {
            return None;
        }
        if is_first {
            compare();
            return None;
        }
        set_timeout_with_handle(compare, PAUSE).ok()
    });
    found
}

/// What it was made from, and where that is.
fn from(bench: Bench, original: Option<Original>) -> Vec<Element> {
    let title = bench
        .version(|version| first_words(&version.original.text))
        .unwrap_or_default();
    let trouble = RwSignal::new(String::new());
    match original {
        Some(Original::Gone) => {
            let put_back = move || {
                if let Err(reason) = bench.put_original_back() {
                    trouble.set(format!("It could not be put back: {reason}."));
                }
            };
            vec![
                paragraph(
                    "gap",
                    format!(
                        "{title} is no longer on the shelf. This version kept a copy of it, as it was when the version was made; that is the original below."
                    ),
                ),
                button("button", "Put the original back on the shelf", put_back),
                element("p")
                    .class("trouble")
                    .attribute("role", "status")
                    .text_of(move || trouble.get()),
            ]
        }
        _ => {
            let open = element("a")
                .class("lines__link no-print")
                .attribute("href", "#/")
                .on_touch(move || {
                    bench.open_original();
                    device::show("main".into(), true);
                })
                .text("Open the original");
            vec![
                element("p")
                    .text("Made from ")
                    .child(element("strong").attribute("dir", "auto").text(title))
                    .text(". ")
                    .child(open),
            ]
        }
    }
}

/// The changes in words.
fn words(found: RwSignal<Option<Arc<Compared>>>) -> Element {
    told(move || {
        found.with(|found| {
            let found = found.as_ref();
            found.map_or_else(String::new, |found| found.difference.words.clone())
        })
    })
}

/// Changes in words, to be sent to somebody.
pub fn told(words: impl Fn() -> String + Copy + 'static) -> Element {
    let said = RwSignal::new("");
    let copy = button("button", "Copy these words", move || {
        device::copy(&words(), move |done| {
            let _ = said.try_set(match done {
                true => "Copied.",
                false => "This browser does not let the page copy. Select the words and copy them.",
            });
        });
    });
    let share = device::can_share().then(|| {
        button("button button--plain", "Send them", move || {
            device::share(&[("text", &words())]);
        })
    });
    element("div")
        .class("differs__told")
        .child(
            element("p")
                .class("differs__words")
                .attribute("dir", "auto")
                .text_of(words),
        )
        .child(
            element("div")
                .class("mend__buttons no-print")
                .child(copy)
                .children(share),
        )
        .child(
            element("p")
                .class("hint")
                .attribute("role", "status")
                .text_of(move || said.get().to_owned()),
        )
}

/// The version's name, to be changed.
fn name(bench: Bench) -> Element {
    let value = move || {
        let name = bench.version(|version| version.name.clone());
        name.unwrap_or_default()
    };
    let field = text_field(
        "version-called".into(),
        "text",
        || "Name of this version".to_owned(),
        value,
        || None,
        move |typed| bench.name_version(typed),
    );
    element("div")
        .class("differs__rename no-print")
        .child(field)
}
