//! Allergens in what was read, whether it is plant-based, and the usual cautions.

use super::section::{line_links, section, sentences};
use crate::baking::worksheet::AllergenNote;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The part on allergens and cautions.
#[component]
pub fn Allergens() -> impl IntoView {
    let bench = Bench::here();
    let allergens = Memo::new(move |_| bench.sheet.with(|sheet| sheet.allergens.clone()));
    let plant_based = Memo::new(move |_| bench.sheet.with(|sheet| sheet.plant_based.clone()));
    let cautions = Memo::new(move |_| bench.sheet.with(|sheet| sheet.cautions.clone()));
    let body = view! {
        <ul class="allergens">{move || allergens.get().into_iter().map(allergen).collect_view()}</ul>
        <p class="hint" hidden=move || !allergens.with(Vec::is_empty)>"None that the tables know of in the lines that were read."</p>
        <p>{plant_based}</p>
        <div class="cautions">{move || sentences("cautions__sentence", cautions.get())}</div>
    };
    section("/allergens", "Allergens and cautions", body.into_any())
}

fn allergen(note: AllergenNote) -> impl IntoView {
    view! { <li class="allergens__allergen"><strong>{note.name}</strong>{line_links(note.lines)}</li> }
}
