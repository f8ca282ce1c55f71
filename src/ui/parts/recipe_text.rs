//! The text box, and the buttons for the recipe as a whole.

use crate::ui::early::TEXT_BOX;
use crate::ui::state::Bench;
use leptos::{html::Textarea, prelude::*};

const EXAMPLE: &str = "Paste a recipe, one ingredient on each line:\n\n2 cups plain flour\n1/2 tsp baking soda\n1 cup buttermilk\n\nBake in a 9 inch round pan.";

/// The recipe's text as the baker types it.
#[component]
pub fn RecipeText() -> impl IntoView {
    let bench = Bench::here();
    let text_box = NodeRef::<Textarea>::new();
    // The box holds its own text; it is written to only when the text changed elsewhere.
    Effect::new(move |_| {
        bench.outside.track();
        if let Some(text_box) = text_box.get() {
            let text = bench.inputs().with_untracked(|inputs| inputs.text.clone());
            if text_box.value() != text {
                text_box.set_value(&text);
            }
        }
    });
    let typed = move |_| {
        if let Some(text_box) = text_box.get_untracked() {
            bench.type_text(text_box.value());
        }
    };
    let editing = bench.editing;
    let new = move |_| {
        bench.open_blank();
        if let Some(text_box) = text_box.get_untracked() {
            let _ = text_box.focus();
        }
    };
    view! {
        <section class="recipe-text" class:recipe-text--closed=move || !editing.get() aria-label="Recipe text">
            <div class="recipe-text__tools">
                <button
                    class="button recipe-text__toggle"
                    type="button"
                    aria-expanded=move || editing.get().to_string()
                    aria-controls="recipe-text-box"
                    on:click=move |_| editing.update(|editing| *editing = !*editing)
                >
                    {move || if editing.get() { "Close the text" } else { "Edit text" }}
                </button>
                <button class="button button--plain" type="button" on:click=new>"New"</button>
                {move || bench.history().with(|history| history.last().map(|step| step.what.clone())).map(|what| view! {
                    <button class="button button--plain" type="button" on:click=move |_| bench.take_back()>
                        "Take back"<span class="unseen">{format!(": {what}")}</span>
                    </button>
                })}
                {move || bench.history().with(|history| history.next().map(|step| step.what.clone())).map(|what| view! {
                    <button class="button button--plain" type="button" on:click=move |_| bench.put_back()>
                        "Put back"<span class="unseen">{format!(": {what}")}</span>
                    </button>
                })}
                <button class="button button--plain" type="button" on:click=|_| { let _ = window().print(); }>"Print"</button>
            </div>
            <div class="recipe-text__box" id="recipe-text-box">
                <label class="label" for=TEXT_BOX>"Recipe text"</label>
                <textarea
                    class="recipe-text__text"
                    id=TEXT_BOX
                    node_ref=text_box
                    rows="12"
                    dir="auto"
                    spellcheck="false"
                    autocomplete="off"
                    placeholder=EXAMPLE
                    on:input=typed
                ></textarea>
            </div>
        </section>
    }
}
