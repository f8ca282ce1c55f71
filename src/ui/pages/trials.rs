//! The bakes of the open recipe and of its versions: written down, as a tree, held against one another, and the next one.

mod tree;

use crate::baking::trial::Changes;
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::parts::{button, comparison, paragraph};
use crate::ui::shown::Part;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The page of trials.
pub fn trials(bench: Bench) -> Element {
    bench.flush();
    bench.take_up_trials_soon();
    let title = move || {
        bench
            .part(Part::Title, |sheet| sheet.title.clone())
            .unwrap_or_else(|| "Untitled recipe".into())
    };
    Effect::new(move |_| document().set_title(&format!("Trials: {} · Batterwright", title())));
    let write = move || {
        let id = bench.write_trial_down();
        device::go(&format!("#/trials/{id}"));
    };
    element("div").class("sheet trials").children([
        element("h1")
            .class("sheet__title")
            .child(element("span").class("at-bench__page").text("Trials "))
            .child(element("span").attribute("dir", "auto").text_of(title)),
        removed(bench),
        unkept(bench),
        paragraph(
            "hint",
            "A trial is one bake, written down: what went in, what was done, what came out. Change one thing at a time, and it tells you why.",
        ),
        button("button", "Write a bake down", write),
        tree::list(bench),
        comparison(bench),
    ])
}

/// What was just removed, with the way back.
pub fn removed(bench: Bench) -> Element {
    element("div")
        .class("done-place")
        .attribute("role", "status")
        .children_of(move || {
            let bar = bench.removed_trial().map(|title| {
                element("div")
                    .class("done")
                    .child(paragraph(
                        "done__words",
                        format!("Removed: {title}. It rests in the bin for 30 days."),
                    ))
                    .child(button("button", "Put it back", move || {
                        bench.put_trial_back();
                        device::focus("main");
                    }))
            });
            bar.into_iter().collect()
        })
}

/// What is to be said of how trials are kept: what is not, and what another window did.
pub fn unkept(bench: Bench) -> Element {
    element("div")
        .attribute("role", "alert")
        .children_of(move || {
            let news = bench.trials_news().map(|words| {
                let close = button("button button--plain", "Close", move || {
                    bench.close_trials_news();
                    device::focus("main");
                });
                element("div")
                    .class("trials__news")
                    .child(paragraph("trouble", words))
                    .child(close)
            });
            let said = bench.trials_said().into_iter();
            let said = said.map(|words| paragraph("trouble", words));
            news.into_iter().chain(said).collect()
        })
}

/// What came in that someone may not stand.
pub fn allergens(changes: &Changes) -> Option<Element> {
    let came = &changes.allergens;
    (!came.is_empty()).then(|| {
        let words = format!("Now with {}: tell whoever tastes it.", came.join(", "));
        paragraph("tree__mark", words)
    })
}
