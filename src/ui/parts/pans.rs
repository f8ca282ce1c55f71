//! The recipe's pan and the one on the shelf: what to type, how full they are, and the factor between them.

use super::pan_drawing::PanDrawing;
use super::pan_form::PanForm;
use super::section::section;
use crate::baking::worksheet::PanView;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The part on pans.
#[component]
pub fn Pans() -> impl IntoView {
    let bench = Bench::here();
    let own = Memo::new(move |_| Some(bench.sheet.with(|sheet| sheet.pans.own.clone())));
    let other = Memo::new(move |_| bench.sheet.with(|sheet| sheet.pans.other.clone()));
    let chosen = Memo::new(move |_| other.with(Option::is_some));
    let own_chosen = Memo::new(move |_| {
        bench
            .inputs()
            .with(|inputs| inputs.choices.own_pan.is_some())
    });
    let factor = move || bench.sheet.with(|sheet| sheet.pans.factor_shown.clone());
    let words = move || bench.sheet.with(|sheet| sheet.pans.words.clone());
    // Both are drawn to one scale: the wider one fills the width.
    let widest = Memo::new(move |_| {
        let width = |view: &Option<PanView>| {
            view.as_ref()
                .and_then(|view| view.section)
                .map_or(0.0, |section| section.top.max(section.base))
        };
        own.with(width).max(other.with(width))
    });
    let body = view! {
        <p class="pans__factor">{factor}</p>
        <p class="pans__words">{words}</p>
        <div class="pans">
            <div class="pans__pan">
                <h3 class="part__sub">"The recipe's pan"</h3>
                <PanWords view=own />
                <PanDrawing view=own widest />
                <details class="figure no-print">
                    <summary class="figure__line">"Change the recipe's pan"</summary>
                    <PanForm other=false view=own />
                    {move || own_chosen.get().then(|| view! {
                        <button
                            class="button button--plain"
                            type="button"
                            on:click=move |_| bench.change("the recipe's pan".into(), false, |inputs| inputs.choices.own_pan = None)
                        >
                            "Take the pan that the text names"
                        </button>
                    })}
                </details>
            </div>
            <div class="pans__pan">
                <h3 class="part__sub">"The pan on the shelf"</h3>
                {move || match chosen.get() {
                    true => view! {
                        <PanWords view=other />
                        <PanDrawing view=other widest />
                        <PanForm other=true view=other />
                        <button
                            class="button button--plain no-print"
                            type="button"
                            on:click=move |_| bench.change("the pan on the shelf".into(), false, |inputs| inputs.choices.other_pan = None)
                        >
                            "Keep to the recipe's pan"
                        </button>
                    }.into_any(),
                    false => view! {
                        <p class="hint">"Say which pan you have, and the weights follow."</p>
                        <button class="button no-print" type="button" on:click=move |_| bench.choose_other_pan()>"Bake in another pan"</button>
                    }.into_any(),
                }}
            </div>
        </div>
    };
    section("/pan", "Pan", body.into_any())
}

/// What a pan is and how full.
#[component]
fn PanWords(view: Memo<Option<PanView>>) -> impl IntoView {
    let words = move |of: fn(&PanView) -> String| {
        move || view.with(|view| view.as_ref().map(of).unwrap_or_default())
    };
    view! {
        <p class="pan__label">{words(|view| view.label.clone())}</p>
        <p class="hint">{words(|view| view.from.clone())}</p>
        <p class="pan__words">{words(|view| view.words.clone())}</p>
    }
}
