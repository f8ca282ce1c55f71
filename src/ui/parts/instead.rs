//! Something else in the place of an ingredient: what is chosen, and what the whole recipe then comes to.

mod chosen;
mod offers;
mod planned;
mod whole;

use super::common::{is_open, section};
use super::new_version;
use crate::baking::worksheet::{Inputs, LinePart, SheetLine, Status, SwapLine};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The part's address, where the select of its lines is, and where it says what it did.
const PART: &str = "/instead";
const LINE: &str = "instead-line";
const KEPT: &str = "instead-kept";

/// An ingredient of the recipe that can be swapped.
#[derive(Clone, PartialEq, Eq)]
struct Weighed {
    place: LinePart,
    key: &'static str,
    name: &'static str,
    /// "milk, whole: 240 g (line 4)".
    words: String,
}

/// A swap that is chosen, and where its line stands now; `None` where the text has that line no more.
#[derive(Clone, PartialEq, Eq)]
struct Chosen {
    swap: SwapLine,
    place: Option<LinePart>,
}

/// The part. Nothing is drawn or reckoned while it is shut.
pub fn instead(bench: Bench) -> Element {
    let open = Memo::new(move |_| bench.instead_open.get());
    let kept = RwSignal::new(String::new());
    let fold = element("details")
        .class("figure instead")
        .attribute_of("open", move || open.get().then(String::new))
        .on("toggle", move |event| {
            bench.instead_open.set(is_open(event));
        })
        .child(
            element("summary").class("figure__line no-print").child(
                element("span")
                    .class("figure__label")
                    .text("Swap an ingredient, or bake it plant-based or without an allergen"),
            ),
        )
        .child(
            element("div")
                .class("instead__inside")
                .children_of(move || match open.get() {
                    true => inside(bench, kept),
                    false => Vec::new(),
                }),
        );
    let said = element("p")
        .class("hint new-version__kept")
        .attribute("id", KEPT)
        .attribute("role", "status")
        .attribute("tabindex", "-1")
        .text_of(move || new_version::said(bench, &kept.get()));
    section(PART, "Use something else")
        // Paper has it only where there is something to carry into the kitchen.
        .attribute_of("class", move || {
            let is_any = open.get() && bench.swaps(|swaps| swaps.is_any());
            Some(if is_any { "part" } else { "part no-print" }.to_owned())
        })
        .child(fold)
        .child(said)
}

fn inside(bench: Bench, kept: RwSignal<String>) -> Vec<Element> {
    let lines = Memo::new(move |_| {
        for part in [Part::Rows, Part::Balance, Part::Leavening] {
            bench.part(part, |_| ());
        }
        bench.sheet(|sheet| sheet.lines.iter().filter_map(weighed).collect())
    });
    let chosen = Memo::new(move |_| bench.inputs(chosen_in));
    vec![
        offers::one(bench, lines, chosen),
        chosen::list(bench, lines, chosen),
        whole::whole(bench, lines),
        planned::planned(bench, chosen, kept),
    ]
}

fn chosen_in(inputs: &Inputs) -> Vec<Chosen> {
    let swaps = inputs.choices.swaps.lines.iter();
    swaps
        .map(|swap| Chosen {
            swap: swap.clone(),
            place: inputs.line_of(&swap.line),
        })
        .collect()
}

fn weighed(line: &SheetLine) -> Option<Weighed> {
    let (key, name) = (line.ingredient?, line.name?);
    let grams = line.grams_shown.as_deref()?;
    can_be_swapped(line).then(|| Weighed {
        place: (line.line, line.part),
        key,
        name,
        words: format!("{name}: {grams} (line {})", line.line),
    })
}

/// Whether something else can come in a line's place.
pub fn can_be_swapped(line: &SheetLine) -> bool {
    line.status == Status::Weighed && line.ingredient.is_some() && line.grams_shown.is_some()
}

/// Leads to the part, with the ingredient of a row as the one to be replaced.
pub fn seek_instead(bench: Bench, row: usize) {
    bench.instead.set(Some(bench.place(row)));
    bench.instead_open.set(true);
    device::show(PART.into(), false);
    device::focus(LINE);
}

/// Changes what is to be swapped. All that is chosen in one go is taken back together.
fn change(bench: Bench, change: impl FnOnce(&mut Inputs)) {
    bench.change("what is to be swapped".into(), true, change);
}
