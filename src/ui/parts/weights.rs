//! The table of weights: the heart of the ticket.

use super::common::{button, paragraph, section};
use super::country::country;
use super::row::{details, heading, row};
use crate::baking::worksheet::{SheetLine, Status};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;
use leptos::prelude::*;

/// How many rows are drawn at first: far more than any recipe has, few enough for ten thousand pasted lines.
const ROWS: usize = 300;

/// What a row of the table is. Rows are told apart by one number, which rises down the table.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Heading,
    Line,
    Details,
}

const KINDS: [Kind; 3] = [Kind::Heading, Kind::Line, Kind::Details];

/// Every ingredient line with its grams.
pub fn weights(bench: Bench) -> Element {
    let most = RwSignal::new(ROWS);
    let all = move || bench.part(Part::Rows, |sheet| keys(&sheet.lines));
    // One answer for all rows, so that an amount that only changes leaves the heads alone.
    let scaled = Memo::new(move |_| bench.part(Part::Pans, |sheet| sheet.pans.factor.is_some()));
    let either = move |other: &'static str, own: &'static str| {
        move || if scaled.get() { other } else { own }.to_owned()
    };
    let head = |class: &'static str| element("th").attribute("scope", "col").class(class);
    let heads = element("tr")
        .child(head("weights__head weights__head--grams").text_of(either("To weigh", "Weight")))
        .child(head("weights__head").text("Ingredient"))
        .child(head("weights__head weights__head--beside").text_of(either("Recipe", "Of flour")));
    let caption = either(
        "What to weigh for what is baked, with the recipe's own weight beside it. Touch a line to see how it was got and to mend it.",
        "What to weigh. Touch a line to see how it was got and to mend it.",
    );
    let rows = move || with_details(all().into_iter().take(most.get()), bench.row.get());
    let drawn = move |key: usize| match KINDS[key % KINDS.len()] {
        Kind::Heading => heading(bench, key / KINDS.len()),
        Kind::Line => row(bench, key / KINDS.len(), scaled),
        Kind::Details => details(bench, key / KINDS.len()),
    };
    let table = element("table")
        .class("weights")
        .child(element("caption").class("caption").text_of(caption))
        .child(element("thead").child(heads))
        .child(element("tbody").rows_of(rows, drawn))
        .hidden_while(move || all().is_empty());
    let left = move || all().len().saturating_sub(most.get());
    let more = button("button", "", move || most.update(|most| *most += 10 * ROWS))
        .text_of(move || format!("Show more of the {} lines that are left", left()))
        .hidden_while(move || left() == 0);
    let empty = paragraph(
        "hint",
        "No ingredients yet. Paste a recipe into the text box, one ingredient on each line.",
    )
    .hidden_while(move || !all().is_empty());
    section("/weights", "Weights")
        .child(country(bench))
        .child(table)
        .child(empty)
        .child(more)
}

fn key(row: usize, kind: Kind) -> usize {
    row * KINDS.len() + kind as usize
}

/// The rows of ingredient lines, and of headings that have some below them.
fn keys(lines: &[SheetLine]) -> Vec<usize> {
    let mut keys = Vec::new();
    let mut heading = None;
    for (row, line) in lines.iter().enumerate() {
        match line.status {
            Status::Weighed | Status::NotWeighed | Status::NotRead => {
                keys.extend(heading.take().map(|heading| key(heading, Kind::Heading)));
                keys.push(key(row, Kind::Line));
            }
            Status::Heading => heading = Some(row),
            _ => {}
        }
    }
    keys
}

/// The details of the open line follow its row.
fn with_details(keys: impl Iterator<Item = usize>, open: Option<usize>) -> Vec<usize> {
    let mut rows: Vec<usize> = keys.collect();
    if let Some(row) = open
        && let Ok(at) = rows.binary_search(&key(row, Kind::Line))
    {
        rows.insert(at + 1, key(row, Kind::Details));
    }
    rows
}
