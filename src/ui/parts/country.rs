//! Whose cups, spoons and words the recipe is in: what was taken, why, and the choice of another.

use super::common::{paragraph, select};
use crate::baking::ingredient::Region;
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;

/// The choice, with the reason below it.
pub fn country(bench: Bench) -> Element {
    let options = std::iter::once("As its words tell")
        .chain(Region::ALL.map(Region::words))
        .collect();
    let now = move || {
        let chosen = bench.chosen(|chosen| chosen.region);
        chosen
            .and_then(|chosen| Region::ALL.iter().position(|region| *region == chosen))
            .map_or(0, |at| at + 1)
    };
    let choose = move |at: usize| {
        let region = at
            .checked_sub(1)
            .and_then(|at| Region::ALL.get(at).copied());
        bench.change(
            "whose cups, spoons and words these are".into(),
            false,
            |inputs| {
                inputs.choices.region = region;
            },
        );
    };
    let why = paragraph("hint", "")
        .text_of(move || bench.part(Part::Country, |sheet| sheet.country.why.clone()));
    let choice = select(
        "country".into(),
        "Cups, spoons and words of",
        options,
        now,
        choose,
    );
    element("div")
        .class("country")
        .child(element("div").class("no-print").child(choice))
        .child(why)
}
