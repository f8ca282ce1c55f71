//! What is to be said of the formula, gravest first, each with its remedies.

use super::section::{line_links, section};
use crate::baking::finding::{self, Remedy, Severity};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// How many are drawn; a long paste can bring thousands.
const MOST: usize = 100;

/// Every finding.
#[component]
pub fn Findings() -> impl IntoView {
    let bench = Bench::here();
    let findings = Memo::new(move |_| {
        bench.sheet.with(|sheet| {
            sheet
                .findings
                .iter()
                .take(MOST)
                .cloned()
                .collect::<Vec<_>>()
        })
    });
    let all = Memo::new(move |_| bench.sheet.with(|sheet| sheet.findings.len()));
    let body = view! {
        <div class="findings">
            {move || findings.get().into_iter().map(|finding| view! { <Finding finding heading=true /> }).collect_view()}
        </div>
        <p class="hint">{move || match all.get() {
            0 => "Nothing was found that wants mending.".to_owned(),
            all if all > MOST => format!("The first {MOST} of {all} are shown."),
            _ => String::new(),
        }}</p>
    };
    section("/findings", "Findings", body.into_any())
}

/// One finding.
#[component]
pub fn Finding(
    /// What was found.
    finding: finding::Finding,
    /// Whether its title is a heading of the page.
    heading: bool,
) -> impl IntoView {
    let (look, word) = match finding.severity {
        Severity::Fault => ("fault", "Fault"),
        Severity::Look => ("look", "Look"),
        Severity::Note => ("note", "Note"),
    };
    let title = finding.title.clone();
    let title = match heading {
        true => view! { <h3 class="finding__title">{title}</h3> }.into_any(),
        false => view! { <p class="finding__title">{title}</p> }.into_any(),
    };
    let limit = (!finding.limit.is_empty())
        .then(|| view! { <p class="finding__why">{format!("Limit: {}", finding.limit)}</p> });
    view! {
        <article class=format!("finding finding--{look}")>
            <p class="finding__grave">{word}</p>
            {title}
            <p class="finding__sentence">{finding.sentence}</p>
            {finding.remedies.into_iter().map(remedy).collect_view()}
            <details class="finding__more">
                <summary class="finding__summary">"Why, and by what limit"</summary>
                <p class="finding__why">{finding.why}</p>
                {limit}
            </details>
            {line_links(finding.lines)}
        </article>
    }
    .into_any()
}

fn remedy(remedy: Remedy) -> impl IntoView {
    let bench = Bench::here();
    let (label, sentence) = (remedy.label.clone(), remedy.sentence.clone());
    view! {
        <div class="remedy">
            <button class="button button--strong" type="button" on:click=move |_| bench.apply(&remedy)>{label}</button>
            <p class="remedy__sentence">{sentence}</p>
        </div>
    }
}
