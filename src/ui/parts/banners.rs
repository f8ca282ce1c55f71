//! What concerns the whole page: a recipe that is not being kept, a record set aside, a new version.

use crate::ui::device;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// Banners below the head of the page.
#[component]
pub fn Banners() -> impl IntoView {
    view! {
        <div class="banners">
            <Unkept />
            <Aside />
            <Versions />
        </div>
    }
}

/// Says that the open recipe is not being kept, and why.
#[component]
fn Unkept() -> impl IntoView {
    let bench = Bench::here();
    let download = move |_| {
        device::download(
            "recipe.txt",
            &bench.inputs().with_untracked(|inputs| inputs.text.clone()),
        )
    };
    move || {
        let reason = bench.unkept.get()?;
        Some(view! {
            <div class="banner banner--fault" role="alert">
                <p class="banner__words">
                    <strong>"This recipe is not being kept: "</strong>
                    {reason}
                    ". The text stays on this page while it is open; copy it or download it before you leave."
                </p>
                <button class="button" type="button" on:click=download>"Download the text"</button>
            </div>
        })
    }
}

/// Says that a record had to be set aside.
#[component]
fn Aside() -> impl IntoView {
    let bench = Bench::here();
    move || {
        let words = bench.aside.get()?;
        Some(view! {
            <div class="banner banner--look" role="alert">
                <p class="banner__words">{words}</p>
                <a class="button" href="#/shelf">"Go to the shelf"</a>
                <button class="button button--plain" type="button" on:click=move |_| bench.aside.set(None)>"Close"</button>
            </div>
        })
    }
}

/// Tells of a new version and of being ready for offline use. The marks are there for what was told before we listened.
#[component]
fn Versions() -> impl IntoView {
    let update = heard("data-update", "batterwright:update-ready");
    let offline = heard("data-offline", "batterwright:offline-ready");
    view! {
        {move || {
            update.get().then(|| view! {
                <div class="banner banner--look" role="status">
                    <p class="banner__words">"A new version is ready."</p>
                    <button class="button" type="button" on:click=|_| device::tell("batterwright:take-over")>"Use it now"</button>
                    <button class="button button--plain" type="button" on:click=move |_| update.set(false)>"Later"</button>
                </div>
            })
        }}
        <p class="banners__note" role="status">{move || offline.get().then_some("Ready for offline use.")}</p>
    }
}

fn heard(mark: &'static str, event: &'static str) -> RwSignal<bool> {
    let heard = RwSignal::new(device::marked(mark, "ready"));
    let listener = window_event_listener_untyped(event, move |_| heard.set(true));
    on_cleanup(move || listener.remove());
    heard
}
