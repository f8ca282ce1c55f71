//! The shelf: kept recipes, invented demos, and records that had to be set aside.

use crate::baking::demo::{DEMOS, Demo};
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
        storage::shelf()
            .recipes
            .into_iter()
            .map(|kept| recipe(bench, kept, removed, changes))
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

fn recipe(
    bench: Bench,
    kept: Kept,
    removed: StoredValue<Option<Removed>>,
    changes: RwSignal<u32>,
) -> Element {
    let Kept { id, title, changed } = kept;
    let opened = id.clone();
    let label = format!("Remove {title}");
    let open = opening(title.clone(), device::date_shown(changed), move || {
        bench.open_kept(&opened)
    });
    let remove = move || {
        if let Some(record) = storage::remove_recipe(&id) {
            if id == bench.open_id() {
                bench.open_blank();
            }
            removed.set_value(Some(Removed {
                id: id.clone(),
                title: title.clone(),
                record,
            }));
            changes.update(|count| *count += 1);
        }
    };
    let remove = button("button button--plain", "Remove", remove).attribute("aria-label", label);
    element("li").class("shelf__item").child(open).child(remove)
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
