//! What parts have in common: a headed section, a figure that tells how it was got, words that follow the worksheet.

use crate::baking::worksheet::FigureShown;
use leptos::prelude::*;

/// A section of the ticket; its id is its address within the page.
pub fn section(id: &'static str, title: &'static str, body: AnyView) -> AnyView {
    let heading = format!("{id}-title");
    let labelled = heading.clone();
    view! {
        <section class="part" id=id aria-labelledby=labelled>
            <h2 class="part__title" id=heading>{title}</h2>
            {body}
        </section>
    }
    .into_any()
}

/// A figure; how it was got opens at a touch.
pub fn figure(figure: FigureShown) -> AnyView {
    let FigureShown { label, value, how } = figure;
    view! {
        <details class="figure">
            <summary class="figure__line">
                <span class="figure__label">{label}</span>
                " "
                <strong class="figure__value">{value}</strong>
            </summary>
            <p class="figure__how">{how}</p>
        </details>
    }
    .into_any()
}

/// Sentences as paragraphs, or nothing.
pub fn sentences(class: &'static str, sentences: Vec<String>) -> AnyView {
    sentences
        .into_iter()
        .map(|sentence| view! { <p class=class>{sentence}</p> })
        .collect_view()
        .into_any()
}

/// Links to the rows of lines: "Line 5, line 7".
pub fn line_links(lines: Vec<usize>) -> AnyView {
    if lines.is_empty() {
        return ().into_any();
    }
    let bench = crate::ui::state::Bench::here();
    let links = lines.into_iter().map(|line| {
        view! {
            <li class="lines__item">
                // The address may be there already, and then only the touch opens the row.
                <a class="lines__link" href=format!("#/line/{line}") on:click=move |_| bench.line.set(Some(line))>
                    {format!("Line {line}")}
                </a>
            </li>
        }
    });
    view! { <ul class="lines">{links.collect_view()}</ul> }.into_any()
}
