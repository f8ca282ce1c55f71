//! Baker's percentages and the totals of the batter.

use super::section::{figure, section, sentences};
use crate::baking::worksheet::{BalanceSheet, FigureShown, PartTotal, TableRow};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// How many rows are drawn; no recipe has more.
const ROWS: usize = 300;

/// The part on percentages.
#[component]
pub fn Percentages() -> impl IntoView {
    let bench = Bench::here();
    let balance = Memo::new(move |_| bench.sheet.with(|sheet| sheet.balance.clone()));
    let basis = move || balance.with(|balance| balance.flour_basis.clone());
    let rows = move || {
        balance.with(|balance| {
            balance
                .rows
                .iter()
                .take(ROWS)
                .cloned()
                .map(row)
                .collect_view()
        })
    };
    let totals = move || {
        balance.with(|balance| {
            balance
                .totals
                .iter()
                .cloned()
                .map(|total| figure(total_shown(total)))
                .collect_view()
        })
    };
    let gaps =
        move || balance.with(|balance: &BalanceSheet| sentences("gap", balance.gaps.clone()));
    let body = view! {
        <p class="hint">{basis}</p>
        <table class="percentages" hidden=move || balance.with(|balance| balance.rows.is_empty())>
            <caption class="caption">"Baker's percentages: each ingredient against all the flour, which is 100 %"</caption>
            <thead>
                <tr>
                    <th scope="col">"Ingredient"</th>
                    <th scope="col" class="percentages__head">"Weight"</th>
                    <th scope="col" class="percentages__head">"Of flour"</th>
                </tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
        {gaps}
        <h3 class="part__sub">"What the batter holds"</h3>
        {totals}
    };
    section("/percentages", "Percentages", body.into_any())
}

fn row(row: TableRow) -> impl IntoView {
    // The bar is full at twice the flour.
    let long = row.percent.unwrap_or(0.0).clamp(0.0, 200.0) / 2.0;
    view! {
        <tr>
            <th scope="row" class="percentages__name">
                {row.name}
                <svg class="bar bar--thin" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
                    <rect class="bar__share" width=long height="4" />
                </svg>
            </th>
            <td class="percentages__figure">{row.grams_shown}</td>
            <td class="percentages__figure percentages__figure--strong">{row.percent_shown}</td>
        </tr>
    }
}

fn total_shown(total: PartTotal) -> FigureShown {
    let value = [total.grams_shown, total.percent_shown]
        .into_iter()
        .filter(|words| !words.is_empty())
        .collect::<Vec<_>>()
        .join(" · ");
    FigureShown {
        label: total.name,
        value,
        how: total.how,
    }
}
