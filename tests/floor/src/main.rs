//! The floor: a page with one button that counts, and nothing else.
//! `make bench` builds it by the same recipe as the page and gives sizes and times as a ratio to it.

use leptos::prelude::*;

fn main() {
    mount_to_body(|| {
        let (count, set_count) = signal(0);
        view! { <button on:click=move |_| set_count.update(|count| *count += 1)>{count}</button> }
    });
    if let Some(page) = document().document_element() {
        // The bench waits for this mark, as it does on the page itself.
        let _ = page.set_attribute("data-ready", "true");
    }
}
