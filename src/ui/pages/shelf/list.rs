//! The list of kept recipes. What is in sight is drawn at once, the rest in slices right after it, so that thousands of
//! recipes open as fast as a few, and a keyboard, a screen reader and the browser's own search reach them all.

use super::rows::{Family, Rows};
use super::undo::Undo;
use super::{Page, opening};
use crate::baking::quantity::show;
use crate::baking::saved::Listed;
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::parts::{BySlices, button, paragraph};
use crate::ui::storage::{self, Refusal};
use leptos::prelude::*;

/// More rows than a screen shows.
const FIRST: usize = 20;
/// So many rows are added from frame to frame.
const SLICE: usize = 60;
/// From so many recipes on there is a field to look one up.
const MANY: usize = 8;

/// What the list shows, and how much of it is drawn.
#[derive(Clone, Copy)]
struct List {
    page: Page,
    rows: StoredValue<Rows>,
    /// The words that are looked up.
    asked: RwSignal<String>,
    /// The keys of all rows that are to be shown.
    found: Memo<Vec<usize>>,
    /// How much of them is drawn.
    slices: BySlices,
}

/// The list under its heading.
pub fn list(page: Page) -> Element {
    let rows = StoredValue::new(Rows::default());
    let asked = RwSignal::new(String::new());
    let refused = Memo::new(move |_| {
        page.changes.track();
        page.shelf.with_value(|shelf| match shelf {
            Ok(shelf) => {
                rows.update_value(|rows| rows.change(&shelf.recipes));
                None
            }
            Err(refusal) => Some(refusal.to_string()),
        })
    });
    let found = Memo::new(move |_| {
        refused.track();
        page.changes.track();
        asked.with(|asked| rows.with_value(|rows| rows.found(asked)))
    });
    let list = List {
        page,
        rows,
        asked,
        found,
        slices: BySlices::new(FIRST, SLICE),
    };
    let keys = move || list.slices.of(found);
    let row = move |key| {
        let family = rows.with_value(|rows| rows.family(key).cloned());
        family.map_or_else(|| element("li"), |family| list.row(&family))
    };
    let said = move || {
        refused.get().map(|reason| {
            let said = format!(
                "Your recipes cannot be listed: {reason}. They are left as they are; load the page again to try once more."
            );
            paragraph("trouble", said)
        })
    };
    element("section")
        .class("shelf__part")
        .attribute("aria-labelledby", "shelf-title")
        .children([
            element("h2")
                .class("part__title")
                .attribute("id", "shelf-title")
                .text("Your recipes"),
            paragraph(
                "hint",
                "A recipe is kept from the first letter that you type.",
            ),
            element("div")
                .attribute("role", "alert")
                .children_of(move || said().into_iter().collect()),
            list.field(),
            element("ul").class("shelf shelf--long").rows_of(keys, row),
        ])
}

impl List {
    /// The field that looks a recipe up, and how many there are.
    fn field(self) -> Element {
        let Self { page, rows, .. } = self;
        let recipes = move || {
            page.changes.track();
            rows.with_value(Rows::recipes)
        };
        let said = move || match (self.asked.with(|asked| asked.trim().is_empty()), recipes()) {
            (_, many) if many < MANY => String::new(),
            (true, many) => format!("{} recipes.", show::count(many)),
            (false, _) => match self.found.with(Vec::len) {
                0 => "No title has all of these words.".to_owned(),
                1 => "1 found.".to_owned(),
                many => format!("{} found.", show::count(many)),
            },
        };
        let input = element("input")
            .class("input")
            .attribute("id", "shelf-search")
            .attribute("type", "search")
            .attribute("autocomplete", "off")
            .value_of(move || self.asked.get())
            .on_value("input", move |typed| {
                // What is found first stands in sight first.
                self.slices.begin_again();
                self.asked.set(typed);
            });
        let label = element("label")
            .class("label")
            .attribute("for", "shelf-search")
            .text("Look a recipe up by words of its title");
        let field = element("div")
            .class("field")
            .child(label)
            .child(input)
            .hidden_while(move || recipes() < MANY);
        let status = paragraph("hint", "")
            .attribute("role", "status")
            .text_of(said);
        element("div")
            .class("shelf__seek")
            .child(field)
            .child(status)
    }

    /// A recipe with its versions behind it.
    fn row(self, family: &Family) -> Element {
        let Some((head, versions)) = family.members.split_first() else {
            return element("li");
        };
        if versions.is_empty() {
            return element("li")
                .class("shelf__item")
                .children(self.recipe(head, None));
        }
        let versions = versions.iter().map(|version| {
            element("li")
                .class("shelf__item")
                .children(self.recipe(version, Some(head)))
        });
        let versions = element("ul")
            .class("shelf shelf--versions")
            .attribute("aria-label", format!("Versions of {}", head.title))
            .children(versions);
        let head = element("div")
            .class("shelf__item")
            .children(self.recipe(head, None));
        element("li").child(head).child(versions)
    }

    /// What opens a recipe, and what removes it.
    fn recipe(self, listed: &Listed, of: Option<&Listed>) -> [Element; 2] {
        let page = self.page;
        let (title, beside) = told(listed, of);
        let called = listed.called();
        let remove_label = format!("Remove {called}");
        let id = listed.id.clone();
        let opened = id.clone();
        let open = opening(title, beside, move || page.bench.open_kept(&opened));
        let remove = button("button button--plain", "Remove", move || {
            remove(page, &id, called.clone());
        });
        [open, remove.attribute("aria-label", remove_label)]
    }
}

/// Puts a recipe into the bin.
fn remove(page: Page, id: &str, called: String) {
    match storage::remove_recipe(id, called.clone()) {
        Ok(removed) => {
            page.leave(id);
            let undo = removed.map(|(resting, effort)| {
                page.bench.keeping.note(effort);
                Undo::Removed(resting)
            });
            page.done(undo);
        }
        Err(Refusal::Full) => page.undo.set(Some(Undo::NoRoom(id.to_owned(), called))),
        Err(refusal) => page.refused("It could not be removed", refusal),
    }
}

/// What stands for a recipe on the shelf: its title, and the words beside it. `of` is the recipe whose versions it stands with.
fn told(listed: &Listed, of: Option<&Listed>) -> (String, String) {
    let date = device::date_shown(listed.changed as f64);
    match (&listed.version, of) {
        (None, _) => (listed.title.clone(), date),
        (Some(version), None) => (
            listed.called(),
            format!(
                "A version of {}, which is no longer here · {date}",
                version.from
            ),
        ),
        (Some(version), Some(of)) => {
            let title = (listed.title != of.title).then(|| format!("{} · ", listed.title));
            let words = match version.of == of.id {
                true => "version",
                false => "version of a version",
            };
            let beside = format!("{}{words} · {date}", title.unwrap_or_default());
            (version.name.clone(), show::sentence(&beside))
        }
    }
}
