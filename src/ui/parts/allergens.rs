//! Allergens in what was read, whether it is plant-based, and the usual cautions.

use super::common::{line_links, paragraph, section};
use crate::baking::worksheet::AllergenNote;
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;

/// The part on allergens and cautions.
pub fn allergens(bench: Bench) -> Element {
    let notes = move || {
        bench.part(Part::Allergens, |sheet| {
            sheet
                .allergens
                .iter()
                .map(|note| allergen(bench, note))
                .collect()
        })
    };
    let none = move || match bench.part(Part::Allergens, |sheet| sheet.allergens.is_empty()) {
        true => "None that the tables know of in the lines that were read.".to_owned(),
        false => String::new(),
    };
    let plant_based = move || bench.part(Part::Allergens, |sheet| sheet.plant_based.clone());
    let cautions = move || {
        bench.part(Part::Allergens, |sheet| {
            sheet
                .cautions
                .iter()
                .map(|caution| paragraph("cautions__sentence", caution.clone()))
                .collect()
        })
    };
    section("/allergens", "Allergens and cautions").children([
        element("ul").class("allergens").children_of(notes),
        element("p").class("hint").text_of(none),
        element("p").text_of(plant_based),
        element("div").class("cautions").children_of(cautions),
    ])
}

fn allergen(bench: Bench, note: &AllergenNote) -> Element {
    element("li")
        .class("allergens__allergen")
        .child(element("strong").text(note.name.clone()))
        .child(line_links(bench, &note.lines))
}
