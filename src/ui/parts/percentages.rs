//! Baker's percentages and the totals of the batter.

use super::common::{figure, paragraph, section, table_head};
use crate::baking::worksheet::{BalanceSheet, PartTotal, TableRow};
use crate::ui::dom::{Element, drawing, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;

/// How many rows are drawn; no recipe has more.
const ROWS: usize = 300;

/// The part on percentages.
pub fn percentages(bench: Bench) -> Element {
    let follow = move |of: fn(&BalanceSheet) -> Vec<Element>| {
        move || bench.part(Part::Balance, |sheet| of(&sheet.balance))
    };
    let basis = move || bench.part(Part::Balance, |sheet| sheet.balance.flour_basis.clone());
    let head = table_head([
        ("", "Ingredient"),
        ("percentages__head", "Weight"),
        ("percentages__head", "Of flour"),
    ]);
    let rows = follow(|balance| balance.rows.iter().take(ROWS).map(row).collect());
    let totals = follow(|balance| balance.totals.iter().map(total).collect());
    let figures = follow(|balance| {
        balance
            .figures
            .iter()
            .map(|shown| figure(shown.label.clone(), shown.value.clone(), shown.how.clone()))
            .collect()
    });
    let gaps = follow(|balance| {
        balance
            .gaps
            .iter()
            .map(|gap| paragraph("gap", gap.clone()))
            .collect()
    });
    let caption = "Baker's percentages: each ingredient against all the flour, which is 100 %";
    let table = element("table")
        .class("percentages")
        .child(element("caption").class("caption").text(caption))
        .child(head)
        .child(element("tbody").children_of(rows))
        .hidden_while(move || bench.part(Part::Balance, |sheet| sheet.balance.rows.is_empty()));
    section("/percentages", "Percentages").children([
        element("p").class("hint").text_of(basis),
        table,
        element("div").children_of(gaps),
        element("h3")
            .class("part__sub")
            .text("What the batter holds"),
        element("div")
            .class("percentages__totals")
            .children_of(totals),
        super::standing::standing(bench),
        element("div").children_of(figures),
    ])
}

fn row(row: &TableRow) -> Element {
    // The bar is full at twice the flour.
    let long = row.percent.unwrap_or(0.0).clamp(0.0, 200.0) / 2.0;
    let bar = drawing("svg")
        .class("bar bar--thin")
        .attribute("viewBox", "0 0 100 4")
        .attribute("preserveAspectRatio", "none")
        .attribute("aria-hidden", "true")
        .child(
            drawing("rect")
                .class("bar__share")
                .figure("width", long)
                .figure("height", 4.0),
        );
    let name = element("th")
        .class("percentages__name")
        .attribute("scope", "row")
        .text(row.name.clone())
        .child(bar);
    let figure =
        |class: &'static str, words: &String| element("td").class(class).text(words.clone());
    element("tr")
        .child(name)
        .child(figure("percentages__figure", &row.grams_shown))
        .child(figure(
            "percentages__figure percentages__figure--strong",
            &row.percent_shown,
        ))
}

fn total(total: &PartTotal) -> Element {
    let value = match total.percent_shown.is_empty() {
        true => total.grams_shown.clone(),
        false => format!("{} · {}", total.grams_shown, total.percent_shown),
    };
    figure(total.name.clone(), value, total.how.clone())
}
