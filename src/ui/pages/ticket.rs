//! The ticket: the open recipe, from its text to what to weigh.

use crate::ui::parts::{
    Allergens, Findings, Leavening, Method, Pans, Percentages, RecipeText, Sources, VerdictStrip,
    Weights,
};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The page of the open recipe.
#[component]
pub fn Ticket() -> impl IntoView {
    let bench = Bench::here();
    let title = Memo::new(move |_| {
        bench
            .sheet
            .with(|sheet| sheet.title.clone())
            .unwrap_or_else(|| "Untitled recipe".into())
    });
    Effect::new(move |_| document().set_title(&format!("{} · Batterwright", title.get())));
    view! {
        <div class="bench">
            <div class="bench__text">
                <RecipeText />
            </div>
            <article class="ticket">
                <header class="ticket__head">
                    <h1 class="ticket__title" dir="auto">{title}</h1>
                </header>
                <VerdictStrip />
                <Done />
                <Weights />
                <Leavening />
                <Percentages />
                <Pans />
                <Findings />
                <Method />
                <Allergens />
                <Sources />
                <section class="ticket__notes" aria-hidden="true">
                    <p class="part__title">"Notes at the bench"</p>
                </section>
            </article>
        </div>
    }
}

/// What was just carried out, with the way back at hand.
#[component]
fn Done() -> impl IntoView {
    let bench = Bench::here();
    move || {
        let what = bench.done.get()?;
        Some(view! {
            <div class="done" role="status">
                <p class="done__words"><strong>"Done: "</strong>{what}</p>
                <button class="button" type="button" on:click=move |_| bench.take_back()>"Take it back"</button>
                <button class="button button--plain" type="button" on:click=move |_| bench.done.set(None)>"Close"</button>
            </div>
        })
    }
}
