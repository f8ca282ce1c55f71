//! The shelf: kept recipes, invented demos, and records that had to be set aside.

use crate::baking::demo::{DEMOS, Demo};
use crate::ui::device;
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
#[component]
pub fn ShelfPage() -> impl IntoView {
    let bench = Bench::here();
    document().set_title("Shelf · Batterwright");
    bench.flush();
    let shelf = RwSignal::new(storage::shelf());
    let removed = RwSignal::new(None::<Removed>);
    let remove = move |kept: Kept| {
        if let Some(record) = storage::remove_recipe(&kept.id) {
            if kept.id == bench.open_id() {
                bench.open_blank();
            }
            removed.set(Some(Removed {
                id: kept.id,
                title: kept.title,
                record,
            }));
            shelf.set(storage::shelf());
        }
    };
    let put_back = move |gone: Removed| {
        match storage::put_recipe_back(&gone.id, &gone.record) {
            Ok(()) => removed.set(None),
            Err(reason) => bench
                .aside
                .set(Some(format!("The recipe could not be put back: {reason}."))),
        }
        shelf.set(storage::shelf());
    };
    let blank = move |_| {
        bench.open_blank();
        device::go("#/");
    };
    view! {
        <div class="sheet">
            <h1 class="sheet__title">"Shelf"</h1>
            <p>"Recipes are kept on this device, in this browser, and nowhere else."</p>
            <button class="button button--strong" type="button" on:click=blank>"New blank recipe"</button>
            {move || removed.get().map(|gone| {
                let said = format!("Removed: {}", gone.title);
                view! {
                    <div class="done" role="status">
                        <p class="done__words">{said}</p>
                        <button class="button" type="button" on:click=move |_| put_back(gone.clone())>"Put it back"</button>
                    </div>
                }
            })}
            <h2 class="part__title">"Your recipes"</h2>
            <p class="hint" hidden=move || shelf.with(|shelf| !shelf.recipes.is_empty())>
                "None yet. A recipe is kept from the first letter that you type."
            </p>
            <ul class="shelf">
                <For
                    each=move || shelf.get().recipes
                    key=|kept| kept.id.clone()
                    children=move |kept| recipe(bench, kept, remove)
                />
            </ul>
            <h2 class="part__title">"Demo recipes, all invented"</h2>
            <p class="hint">"From a stall that does not exist, in a town that does not exist. Changing one makes it a recipe of yours."</p>
            <ul class="shelf">{DEMOS.iter().map(|known| demo(bench, known)).collect_view()}</ul>
            {move || {
                let aside = shelf.get().aside;
                (!aside.is_empty()).then(|| view! {
                    <h2 class="part__title" id="/aside">"Set aside"</h2>
                    <p class="hint">"These records cannot be read by this version of the page. They are left as they are."</p>
                    <ul class="shelf">{aside.into_iter().map(set_aside).collect_view()}</ul>
                })
            }}
        </div>
    }
}

fn recipe(bench: Bench, kept: Kept, remove: impl Fn(Kept) + Copy + 'static) -> AnyView {
    let (id, title, date) = (
        kept.id.clone(),
        kept.title.clone(),
        device::date_shown(kept.changed),
    );
    let label = format!("Remove {title}");
    view! {
        <li class="shelf__item">
            <a class="shelf__open" href="#/" on:click=move |_| bench.open_kept(&id)>
                <span class="shelf__title">{title}</span>
                <span class="shelf__beside">{date}</span>
            </a>
            <button class="button button--plain" type="button" aria-label=label on:click=move |_| remove(kept.clone())>"Remove"</button>
        </li>
    }
    .into_any()
}

fn demo(bench: Bench, demo: &'static Demo) -> impl IntoView {
    view! {
        <li class="shelf__item">
            <a class="shelf__open" href="#/" on:click=move |_| bench.open_demo(demo.key)>
                <span class="shelf__title">{demo.title}</span>
                <span class="shelf__beside">{demo.about}</span>
            </a>
        </li>
    }
}

fn set_aside(aside: SetAside) -> impl IntoView {
    let SetAside { key, reason, text } = aside;
    view! {
        <li class="shelf__item">
            <p class="shelf__words">
                <span class="shelf__title">{key.clone()}</span>
                <span class="shelf__beside">{reason}</span>
            </p>
            <button
                class="button"
                type="button"
                on:click=move |_| device::download(&format!("{}.json", key.replace('/', "-")), &text)
            >
                "Download it"
            </button>
        </li>
    }
}
