//! The shelf: kept recipes, invented demos, and records that had to be set aside.

use crate::baking::demo::{DEMOS, Demo};
use crate::baking::quantity::show;
use crate::baking::saved::families;
use crate::ui::device;
use crate::ui::dom::{Element, Words, element};
use crate::ui::parts::button;
use crate::ui::state::Bench;
use crate::ui::storage::{self, Kept, SetAside};
use leptos::prelude::*;

/// A recipe that was removed a moment ago.
#[derive(Clone, PartialEq)]
struct Removed {
    id: String,
    title: String,
    record: String,
}

/// The page of kept recipes.
pub fn shelf(bench: Bench) -> Element {
    document().set_title("Shelf · Batterwright");
    bench.flush();
    // Counts changes of what is kept; the store itself is read again each time.
    let changes = RwSignal::new(0_u32);
    let removed = StoredValue::new(None::<Removed>);
    let recipes = move || {
        changes.track();
        let recipes = storage::shelf().recipes;
        let of = |kept: &'_ Kept| kept.version.as_ref().map(|version| version.of.clone());
        let of: Vec<Option<String>> = recipes.iter().map(of).collect();
        let records: Vec<(&str, Option<&str>)> = recipes
            .iter()
            .zip(&of)
            .map(|(kept, of)| (kept.id.as_str(), of.as_deref()))
            .collect();
        families(&records)
            .iter()
            .map(|family| self::family(bench, &recipes, family, removed, changes))
            .collect()
    };
    let aside = move || {
        changes.track();
        let aside = storage::shelf().aside;
        if aside.is_empty() {
            return Vec::new();
        }
        vec![
            element("h2")
                .class("part__title")
                .attribute("id", "/aside")
                .text("Set aside"),
            hint(
                "These records cannot be read by this version of the page. They are left as they are.",
            ),
            element("ul")
                .class("shelf")
                .children(aside.into_iter().map(set_aside)),
        ]
    };
    let gone = move || {
        changes.track();
        removed
            .get_value()
            .map(|gone| removed_bar(bench, gone, removed, changes))
            .into_iter()
            .collect()
    };
    let blank = button("button button--strong", "New blank recipe", move || {
        bench.open_blank();
        device::go("#/");
    });
    element("div").class("sheet").children([
        element("h1").class("sheet__title").text("Shelf"),
        element("p").text("Recipes are kept on this device, in this browser, and nowhere else."),
        blank,
        element("div").children_of(gone),
        element("h2").class("part__title").text("Your recipes"),
        hint("A recipe is kept from the first letter that you type."),
        element("ul").class("shelf").children_of(recipes),
        element("h2").class("part__title").text("Demo recipes, all invented"),
        hint("From a stall that does not exist, in a town that does not exist. Changing one makes it a recipe of yours."),
        element("ul").class("shelf").children(DEMOS.iter().map(|known| demo(bench, known))),
        element("div").children_of(aside),
    ])
}

fn hint(words: &'static str) -> Element {
    element("p").class("hint").text(words)
}

fn removed_bar(
    bench: Bench,
    gone: Removed,
    removed: StoredValue<Option<Removed>>,
    changes: RwSignal<u32>,
) -> Element {
    let words = element("p")
        .class("done__words")
        .text(format!("Removed: {}", gone.title));
    let put_back = move || {
        match storage::put_recipe_back(&gone.id, &gone.record) {
            Ok(()) => removed.set_value(None),
            Err(reason) => bench
                .aside
                .set(Some(format!("The recipe could not be put back: {reason}."))),
        }
        changes.update(|count| *count += 1);
    };
    element("div")
        .class("done")
        .attribute("role", "status")
        .child(words)
        .child(button("button", "Put it back", put_back))
}

/// A recipe with its versions behind it.
fn family(
    bench: Bench,
    recipes: &[Kept],
    family: &[usize],
    removed: StoredValue<Option<Removed>>,
    changes: RwSignal<u32>,
) -> Element {
    let Some((head, versions)) = family.split_first() else {
        return element("li");
    };
    let head = &recipes[*head];
    let item = |kept: &Kept, of: Option<&Kept>| {
        let (title, beside) = told(kept, of);
        recipe(bench, kept, title, beside, removed, changes)
    };
    if versions.is_empty() {
        return element("li")
            .class("shelf__item")
            .children(item(head, None));
    }
    let versions = versions.iter().map(|at| {
        element("li")
            .class("shelf__item")
            .children(item(&recipes[*at], Some(head)))
    });
    element("li")
        .child(
            element("div")
                .class("shelf__item")
                .children(item(head, None)),
        )
        .child(
            element("ul")
                .class("shelf shelf--versions")
                .attribute("aria-label", format!("Versions of {}", head.title))
                .children(versions),
        )
}

/// What stands for a recipe on the shelf: its title, and the words beside it. `of` is the recipe whose versions it stands with.
fn told(kept: &Kept, of: Option<&Kept>) -> (String, String) {
    let date = device::date_shown(kept.changed);
    match (&kept.version, of) {
        (None, _) => (kept.title.clone(), date),
        (Some(version), None) => (
            format!("{}, {}", kept.title, version.name),
            format!(
                "A version of {}, which is no longer here · {date}",
                version.from
            ),
        ),
        (Some(version), Some(of)) => {
            let title = (kept.title != of.title).then(|| format!("{} · ", kept.title));
            let words = match version.of == of.id {
                true => "version",
                false => "version of a version",
            };
            let beside = format!("{}{words} · {date}", title.unwrap_or_default());
            (version.name.clone(), show::sentence(&beside))
        }
    }
}

/// What opens a recipe, and what removes it.
fn recipe(
    bench: Bench,
    kept: &Kept,
    title: String,
    beside: String,
    removed: StoredValue<Option<Removed>>,
    changes: RwSignal<u32>,
) -> [Element; 2] {
    let id = kept.id.clone();
    let opened = id.clone();
    let label = match &kept.version {
        Some(version) => format!("{}, {}", kept.title, version.name),
        None => kept.title.clone(),
    };
    let remove_label = format!("Remove {label}");
    let open = opening(title, beside, move || bench.open_kept(&opened));
    let remove = move || {
        if let Some(record) = storage::remove_recipe(&id) {
            if id == bench.open_id() {
                bench.open_blank();
            }
            removed.set_value(Some(Removed {
                id: id.clone(),
                title: label.clone(),
                record,
            }));
            changes.update(|count| *count += 1);
        }
    };
    let remove =
        button("button button--plain", "Remove", remove).attribute("aria-label", remove_label);
    [open, remove]
}

fn demo(bench: Bench, demo: &'static Demo) -> Element {
    let open = opening(demo.title, demo.about, move || bench.open_demo(demo.key));
    element("li").class("shelf__item").child(open)
}

/// A link to the ticket that opens a recipe on the way.
fn opening(
    title: impl Into<Words>,
    beside: impl Into<Words>,
    open: impl Fn() + 'static,
) -> Element {
    element("a")
        .class("shelf__open")
        .attribute("href", "#/")
        .on_touch(open)
        .child(
            element("span")
                .class("shelf__title")
                .attribute("dir", "auto")
                .text(title),
        )
        .child(element("span").class("shelf__beside").text(beside))
}

fn set_aside(aside: SetAside) -> Element {
    let SetAside { key, reason, text } = aside;
    let words = element("p")
        .class("shelf__words")
        .child(element("span").class("shelf__title").text(key.clone()))
        .child(element("span").class("shelf__beside").text(reason));
    let download = button("button", "Download it", move || {
        device::download(&format!("{}.json", key.replace('/', "-")), &text);
    });
    element("li")
        .class("shelf__item")
        .child(words)
        .child(download)
}
