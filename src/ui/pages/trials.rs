//! The bakes of the open recipe and of its versions: written down, as a tree, held against one another, and the next one.

use crate::baking::trial::{Changes, TreeNode, TreeRow, tree};
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
    bench.take_up_trials();
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
            let bar = bench.removed_trial().map(|kept| {
                element("div")
                    .class("done")
                    .child(paragraph(
                        "done__words",
                        format!("{} is removed.", called(&kept)),
                    ))
                    .child(button("button", "Put it back", move || {
                        bench.put_trial_back();
                        device::focus("main");
                    }))
            });
            bar.into_iter().collect()
        })
}

/// Why what is written is not being kept.
pub fn unkept(bench: Bench) -> Element {
    element("div").attribute("role", "alert").children_of(move || {
        let why = bench.trials_unkept().map(|why| {
            paragraph(
                "trouble",
                format!("What you write down is not being kept: {why}. It holds while this page is open."),
            )
        });
        why.into_iter().collect()
    })
}

/// What a trial is called: its name, or its day.
pub fn called(kept: &KeptTrial) -> String {
    match kept.trial.name.trim() {
        "" => format!("Bake of {}", device::date_shown(kept.trial.baked as f64)),
        name => name.to_owned(),
    }
}

/// The versions with their bakes.
fn list(bench: Bench) -> Element {
    let rows = move || {
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
                            let is_open = version.id == open;
                            version_row(row, &version.name, &version.line, is_open)
                        }
                        TreeNode::Trial(at, against) => {
                            let against = against
                                .as_ref()
                                .map(|(other, changes)| (called(&all[*other]), changes));
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
        .child(element("ul").class("tree").children_of(rows))
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

fn version_row(row: &TreeRow, name: &str, line: &str, is_open: bool) -> Element {
    let mut words = element("p").class("tree__version").child(
        element("strong")
            .attribute("dir", "auto")
            .text(name.to_owned()),
    );
    if is_open {
        words = words.text(" (open)");
    }
    let line = (!line.is_empty()).then(|| paragraph("tree__line", line.to_owned()));
    item(row).child(words).children(line)
}

fn trial_row(row: &TreeRow, kept: &KeptTrial, against: Option<(String, &Changes)>) -> Element {
    let link = element("a")
        .class("tree__link")
        .attribute("href", format!("#/trials/{}", kept.id))
        .attribute("dir", "auto")
        .text(called(kept));
    let mut item = item(row).child(link);
    if let Some((other, changes)) = against {
        let line = match changes.line.as_str() {
            "" => format!("A repeat of {other}."),
            line => format!("Against {other}: {line}."),
        };
        item = item.child(paragraph("tree__line", line));
        if changes.is_mixed() {
            let mark = format!("{} things changed at once", changes.things);
            item = item.child(paragraph("tree__mark", mark));
        }
        item = item.children(allergens(changes));
    }
    item
}

/// What came in that someone may not stand.
pub fn allergens(changes: &Changes) -> Option<Element> {
    let came = &changes.allergens;
    (!came.is_empty()).then(|| {
        let words = format!("Now with {}: tell whoever tastes it.", came.join(", "));
        paragraph("tree__mark", words)
    })
}
