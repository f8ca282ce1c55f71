//! The card of an ingredient: every figure with its source.

use super::{back, head, title};
use crate::baking::ingredient::Region;
use crate::baking::ingredient::card::{Card, CardGroup, CardRow};
use crate::baking::quantity::show;
use crate::ui::dom::{Element, element};
use crate::ui::parts::{fact, paragraph};
use leptos::prelude::document;

/// The page of one ingredient.
pub fn card_page(sheet: Element, card: &Card) -> Element {
    let name = show::sentence(card.name);
    document().set_title(&format!("{name} · Batterwright"));
    let note = match card.note {
        "" => String::new(),
        note => show::sentence(note) + ".",
    };
    let names = card.names.iter().map(|names| {
        let place = names.region.map_or("Everywhere", Region::words);
        fact(place, names.names.join(", "))
    });
    let names = element("dl").class("facts").children(names);
    let mut page = vec![
        back("#/larder", "Back to the larder"),
        title(name),
        paragraph("hint", card.group),
    ];
    if !note.is_empty() {
        page.push(paragraph("", note));
    }
    page.extend(groups(card));
    if !card.names.is_empty() {
        page.extend([head("Also called"), names]);
    }
    sheet.children(page)
}

/// The tables of a card.
pub fn groups(card: &Card) -> Vec<Element> {
    card.groups.iter().map(group).collect()
}

fn group(group: &CardGroup) -> Element {
    let common = group.common_how();
    let mut before = "";
    let rows = group.rows.iter().map(|row| {
        // Said once below the table, or in the row above.
        let how = match row.how.as_ref() {
            how if common == Some(how) => "",
            how if how == before && !how.is_empty() => "As above",
            how => how,
        };
        before = &row.how;
        line(row, how)
    });
    let caption = element("caption")
        .class("card__caption")
        .child(head(group.heading.clone()));
    let table = element("table")
        .class("card")
        .child(caption)
        .child(element("tbody").children(rows));
    let shown = element("div").class("card__group").child(table);
    match common {
        Some(how) => {
            let mut rows = group.rows.iter();
            let all = rows.all(|row| row.how.is_empty() || row.how == how);
            let whose = if all {
                "Source"
            } else {
                "Source of the others"
            };
            shown.child(paragraph("hint card__source", format!("{whose}: {how}.")))
        }
        None => shown,
    }
}

fn line(row: &CardRow, how: &str) -> Element {
    let label = element("th")
        .class("card__label")
        .attribute("scope", "row")
        .text(row.label.clone());
    let label = match how {
        "" => label,
        how => label.child(element("span").class("card__how").text(format!("{how}."))),
    };
    // The range stands below its figure, so that figures line up.
    let is_figure = row.value.starts_with(|first: char| first.is_ascii_digit());
    let (figure, range) = match row.value.split_once(" (") {
        Some((figure, range)) if is_figure => (figure, range.trim_end_matches(')')),
        _ => (row.value.as_ref(), ""),
    };
    let class = if is_figure {
        "card__value"
    } else {
        "card__value card__value--words"
    };
    let value = element("td").class(class).text(figure.to_owned());
    let value = match range {
        "" => value,
        range => value.child(element("span").class("card__range").text(range.to_owned())),
    };
    element("tr").class("card__row").child(label).child(value)
}
