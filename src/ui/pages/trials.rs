//! The bakes of the open recipe and of its versions: written down, as a tree, held against one another, and the next one.

use crate::baking::quantity::show;
use crate::baking::trial::{Changes, TreeNode, TreeRow, VersionNode, tree};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::parts::{button, paragraph};
use crate::ui::shown::Part;
use crate::ui::state::Bench;
use crate::ui::storage::KeptTrial;
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
        list(bench),
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

/// The versions with their bakes.
fn list(bench: Bench) -> Element {
    let rows = move || {
        // Which of them is open.
        bench.outside.track();
        bench.trials(|all| {
            bench.family(|family| {
                let names: Vec<String> = all.iter().map(KeptTrial::name).collect();
                let given: Vec<_> = all
                    .iter()
                    .zip(&names)
                    .map(|(kept, name)| (name.as_str(), kept.recipe.as_str(), &kept.trial))
                    .collect();
                // A recipe with no bake yet and no versions has no tree.
                let is_bare = all.is_empty() && family.len() < 2;
                let rows = if is_bare {
                    Vec::new()
                } else {
                    tree(family, &given)
                };
                let open = bench.open_id();
                rows.iter()
                    .map(|row| match &row.node {
                        TreeNode::Version(at) => {
                            let version = &family[*at];
                            version_row(bench, row, version, version.id == open)
                        }
                        TreeNode::Trial(at, against) => {
                            let against = against
                                .as_ref()
                                .map(|(other, changes)| (all[*other].called(), changes));
                            trial_row(row, &all[*at], against)
                        }
                    })
                    .collect()
            })
        })
    };
    element("section")
        .class("part")
        .attribute("aria-labelledby", "trials-tree")
        .child(
            element("h2")
                .class("part__title")
                .attribute("id", "trials-tree")
                .text("Versions and bakes"),
        )
        .child(
            element("ul")
                .class("tree")
                .children_of(rows)
                .hidden_while(move || {
                    bench.trials(<[_]>::is_empty) && bench.family(|it| it.len() < 2)
                }),
        )
        .child(
            paragraph("hint", "No bake of this recipe is written down yet.")
                .hidden_while(move || bench.trials(|all| !all.is_empty())),
        )
}

fn item(row: &TreeRow) -> Element {
    // Deeper than this a phone has no room for it.
    let steps = row.depth.min(4);
    element("li")
        .class("tree__row")
        .attribute("data-depth", steps.to_string())
}

fn version_row(bench: Bench, row: &TreeRow, version: &VersionNode, is_open: bool) -> Element {
    let name = version.name.clone();
    let head = if is_open {
        element("p")
            .class("tree__version")
            .child(element("strong").attribute("dir", "auto").text(name))
            .text(" (open)")
    } else {
        let id = version.id.clone();
        button(
            "button button--plain tree__version",
            name.clone(),
            move || {
                bench.open_kept(&id);
                bench.take_up_trials();
            },
        )
        .attribute("aria-label", format!("Open {name}"))
        .attribute("dir", "auto")
    };
    let mut item = item(row).child(head);
    if let Some(changes) = &version.changes {
        let line = match changes.line.as_str() {
            "" => "Nothing changed yet.".to_owned(),
            line => format!("{}.", show::sentence(line)),
        };
        item = item
            .child(paragraph("tree__line", line))
            .children(marks(changes));
    }
    item
}

fn trial_row(row: &TreeRow, kept: &KeptTrial, against: Option<(String, &Changes)>) -> Element {
    let link = element("a")
        .class("tree__link")
        .attribute("href", format!("#/trials/{}", kept.id))
        .attribute("dir", "auto")
        .text(kept.called());
    let mut item = item(row).child(link);
    if let Some((other, changes)) = against {
        let line = match changes.line.as_str() {
            "" => format!("A repeat of {other}."),
            line => format!("Against {other}: {line}."),
        };
        item = item
            .child(paragraph("tree__line", line))
            .children(marks(changes));
    }
    item
}

/// What is to be minded of changes: that there are several at once, and what came in.
fn marks(changes: &Changes) -> Vec<Element> {
    let mixed = changes.is_mixed().then(|| {
        let mark = format!("{} things changed at once", changes.things);
        paragraph("tree__mark", mark)
    });
    mixed.into_iter().chain(allergens(changes)).collect()
}

/// What came in that someone may not stand.
pub fn allergens(changes: &Changes) -> Option<Element> {
    let came = &changes.allergens;
    (!came.is_empty()).then(|| {
        let words = format!("Now with {}: tell whoever tastes it.", came.join(", "));
        paragraph("tree__mark", words)
    })
}
