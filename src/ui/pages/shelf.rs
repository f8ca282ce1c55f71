//! The shelf: kept recipes, the bin, the room that is left, invented demos, and records that had to be set aside.

mod aside;
mod bin;
mod list;
mod room;
mod rows;
mod strays;
mod undo;

use crate::baking::demo::{DEMOS, Demo};
use crate::ui::device;
use crate::ui::dom::{Element, Words, element};
use crate::ui::parts::{button, paragraph};
use crate::ui::state::Bench;
use crate::ui::storage::{self, Refusal, Shelf};
use leptos::prelude::*;
use undo::Undo;

/// What the parts of the page share.
#[derive(Clone, Copy)]
struct Page {
    bench: Bench,
    /// What is kept, as it was looked at last.
    shelf: StoredValue<Result<Shelf, Refusal>>,
    /// Counts changes of what is kept.
    changes: RwSignal<u32>,
    /// What was done last and can be taken back.
    undo: RwSignal<Option<Undo>>,
    /// Why the store did not do what it was asked.
    trouble: RwSignal<Option<String>>,
}

impl Page {
    /// Notes that what is kept has changed: what was done, and its way back.
    fn done(self, undo: Option<Undo>) {
        self.undo.set(undo);
        self.trouble.set(None);
        self.bench.keeping.hold_reserve();
        self.shelf.set_value(storage::shelf());
        self.changes.update(|count| *count += 1);
    }

    /// A recipe that is gone is not left open.
    fn leave(self, id: &str) {
        if id == self.bench.open_id() {
            self.bench.open_blank();
        }
    }

    /// Says that something could not be done.
    fn refused(self, what: &str, refusal: Refusal) {
        self.trouble
            .set(Some(format!("{what}: {refusal}. Nothing was changed.")));
    }
}

/// The page of kept recipes.
pub fn shelf(bench: Bench) -> Element {
    document().set_title("Shelf · Batterwright");
    bench.flush();
    let page = Page {
        bench,
        shelf: StoredValue::new(storage::shelf()),
        changes: RwSignal::new(0),
        undo: RwSignal::new(None),
        trouble: RwSignal::new(None),
    };
    let blank = button("button button--strong", "New blank recipe", move || {
        bench.open_blank();
        device::go("#/");
    });
    let trouble = move || {
        let said = page.trouble.get();
        said.map(|said| paragraph("trouble", said))
            .into_iter()
            .collect()
    };
    // What is not in sight at first waits until the list is.
    let later = RwSignal::new(false);
    device::after_frame(move || {
        // What rests in the bin past its time goes when somebody looks, for a page that is not looked at judges no time.
        let _ = storage::clear_out();
        bench.keeping.hold_reserve();
        bench.keeping.learn_promise();
        // The page may be left by then.
        let _ = later.try_set(true);
    });
    element("div").class("sheet").children([
        element("h1").class("sheet__title").text("Shelf"),
        paragraph("", "Recipes are kept on this device, in this browser, and nowhere else."),
        blank,
        element("div").attribute("role", "alert").children_of(trouble),
        aside::aside(page, later),
        element("div").class("shelf__beside-list").children([
            bin::bin(page, later),
            room::room(page, later),
        ]),
        list::list(page),
        strays::strays(page, later),
        element("p").child(
            element("a")
                .class("button")
                .attribute("href", "#/out-and-in")
                .text("Take everything out, or bring a file in"),
        ),
        element("h2").class("part__title").text("Demo recipes, all invented"),
        paragraph("hint", "From a stall that does not exist, in a town that does not exist. Changing one makes it a recipe of yours."),
        element("ul").class("shelf").children(DEMOS.iter().map(|known| demo(bench, known))),
        undo::bar(page),
    ])
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

/// Words on a shelf that open nothing.
fn words(title: impl Into<Words>, beside: impl Into<Words>) -> Element {
    element("p")
        .class("shelf__words")
        .child(
            element("span")
                .class("shelf__title shelf__title--words")
                .attribute("dir", "auto")
                .text(title),
        )
        .child(element("span").class("shelf__beside").text(beside))
}
