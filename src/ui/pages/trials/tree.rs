//! The versions with their bakes. What is in sight is drawn at once, the rest in slices right after it, so that hundreds of
//! bakes open as fast as a few.

use super::allergens;
use crate::baking::quantity::show;
use crate::baking::trial::{Changes, TreeNode, VersionNode, changes, tree};
use crate::ui::dom::{Element, element};
use crate::ui::parts::{BySlices, button, paragraph};
use crate::ui::state::Bench;
use crate::ui::storage::KeptTrial;
use leptos::prelude::*;

/// More rows than a screen shows.
const FIRST: usize = 15;
/// So many rows are added from frame to frame.
const SLICE: usize = 40;
/// A key holds the place of a row, times this, and how often what stands there has changed.
const CHANGES: usize = 64;

/// A row as it is to be drawn: all that its words follow from.
#[derive(Clone, PartialEq)]
struct Row {
    depth: usize,
    node: Node,
}

#[derive(Clone, PartialEq)]
enum Node {
    /// A version, and whether it is open.
    Version(VersionNode, bool),
    /// A bake, and the one that it is held against.
    Bake(Bake, Option<Bake>),
}

/// What tells one state of a bake from its others.
#[derive(Clone, PartialEq)]
struct Bake {
    id: u64,
    changed: u64,
    called: String,
}

impl Bake {
    fn of(kept: &KeptTrial) -> Self {
        Self {
            id: kept.id,
            changed: kept.trial.changed,
            called: kept.called(),
        }
    }
}

/// All rows, as they are and as they were given keys.
#[derive(Default)]
struct Rows {
    rows: Vec<Row>,
    keys: Vec<usize>,
}

impl Rows {
    /// A row that is as it was keeps its key, so that it is not drawn again.
    fn change(&mut self, rows: Vec<Row>) {
        self.keys.truncate(rows.len());
        for (at, row) in rows.iter().enumerate() {
            match self.keys.get_mut(at) {
                Some(_) if self.rows[at] == *row => {}
                Some(key) => *key = at * CHANGES + (*key + 1) % CHANGES,
                None => self.keys.push(at * CHANGES),
            }
        }
        self.rows = rows;
    }
}

/// The list under its heading.
pub fn list(bench: Bench) -> Element {
    let rows = StoredValue::new(Rows::default());
    let slices = BySlices::new(FIRST, SLICE);
    let keys = Memo::new(move |_| {
        // Which of them is open.
        bench.outside.track();
        let now = rows_now(bench);
        rows.update_value(|rows| rows.change(now));
        rows.with_value(|rows| rows.keys.clone())
    });
    let shown = move || slices.of(keys);
    let row = move |key: usize| {
        let row = rows.with_value(|rows| rows.rows.get(key / CHANGES).cloned());
        row.map_or_else(|| element("li"), |row| draw(bench, row))
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
                .rows_of(shown, row)
                .hidden_while(move || keys.with(Vec::is_empty)),
        )
        .child(
            paragraph("hint", "No bake of this recipe is written down yet.").hidden_while(
                move || {
                    // Before they are read nobody knows.
                    !bench.trials(<[_]>::is_empty) || bench.family(<[_]>::is_empty)
                },
            ),
        )
}

fn rows_now(bench: Bench) -> Vec<Row> {
    let open = bench.open_id();
    bench.trials(|all| {
        bench.family(|family| {
            // A recipe with no bake yet and no versions has no tree.
            if all.is_empty() && family.len() < 2 {
                return Vec::new();
            }
            let names: Vec<String> = all.iter().map(KeptTrial::name).collect();
            let given: Vec<_> = all
                .iter()
                .zip(&names)
                .map(|(kept, name)| (name.as_str(), kept.recipe.as_str(), &kept.trial))
                .collect();
            let bake = |at: usize| Bake::of(&all[at]);
            let rows = tree(family, &given).into_iter().map(|row| Row {
                // Deeper than this a phone has no room for it.
                depth: row.depth.min(4),
                node: match row.node {
                    TreeNode::Version(at) => {
                        let version = family[at].clone();
                        let is_open = version.id == open;
                        Node::Version(version, is_open)
                    }
                    TreeNode::Trial(at, against) => Node::Bake(bake(at), against.map(bake)),
                },
            });
            rows.collect()
        })
    })
}

fn draw(bench: Bench, row: Row) -> Element {
    let item = element("li")
        .class("tree__row")
        .attribute("data-depth", row.depth.to_string());
    match row.node {
        Node::Version(version, is_open) => item.children(version_row(bench, version, is_open)),
        Node::Bake(bake, against) => item.children(bake_row(bench, &bake, against)),
    }
}

fn version_row(bench: Bench, version: VersionNode, is_open: bool) -> Vec<Element> {
    let VersionNode {
        id, name, changes, ..
    } = version;
    let head = if is_open {
        element("p")
            .class("tree__version")
            .child(element("strong").attribute("dir", "auto").text(name))
            .text(" (open)")
    } else {
        let label = format!("Open {name}");
        button("button button--plain tree__version", name, move || {
            bench.open_kept(&id);
            bench.take_up_trials();
        })
        .attribute("aria-label", label)
        .attribute("dir", "auto")
    };
    let told = changes.map(|changes| {
        let line = match changes.line.as_str() {
            "" => "Nothing changed yet.".to_owned(),
            line => format!("{}.", show::sentence(line)),
        };
        tell(line, &changes)
    });
    std::iter::once(head)
        .chain(told.into_iter().flatten())
        .collect()
}

fn bake_row(bench: Bench, bake: &Bake, against: Option<Bake>) -> Vec<Element> {
    let link = element("a")
        .class("tree__link")
        .attribute("href", format!("#/trials/{}", bake.id))
        .attribute("dir", "auto")
        .text(bake.called.clone());
    let told = against.and_then(|other| {
        let changes = bench.trials_now(|all| {
            let of = |id: u64| all.iter().find(|kept| kept.id == id);
            Some(changes(&of(other.id)?.trial, &of(bake.id)?.trial))
        })?;
        let line = match changes.line.as_str() {
            "" => format!("A repeat of {}.", other.called),
            line => format!("Against {}: {line}.", other.called),
        };
        Some(tell(line, &changes))
    });
    std::iter::once(link)
        .chain(told.into_iter().flatten())
        .collect()
}

/// What changed, and what is to be minded of it: that there are several things at once, and what came in.
fn tell(line: String, changes: &Changes) -> Vec<Element> {
    let mixed = changes.is_mixed().then(|| {
        let mark = format!("{} things changed at once", changes.things);
        paragraph("tree__mark", mark)
    });
    std::iter::once(paragraph("tree__line", line))
        .chain(mixed)
        .chain(allergens(changes))
        .collect()
}
