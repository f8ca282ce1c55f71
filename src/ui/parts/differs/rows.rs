//! A difference side by side: a row for each change, old and new next to one another where there is room.

use crate::baking::finding::Severity;
use crate::baking::worksheet::{
    Amount, Difference, FigureChange, FigureSide, FindingNote, IngredientChange, SaidChange,
};
use crate::ui::dom::{Element, element};
use crate::ui::parts::common::paragraph;

/// How many rows of a kind are drawn; a long paste can bring thousands.
const MOST: usize = 200;

/// Everything that differs.
pub fn rows(found: &Difference) -> Vec<Element> {
    if found.is_nothing() {
        return vec![paragraph(
            "hint",
            "Nothing differs yet. Change the text, or mend a line, and the change shows here.",
        )];
    }
    let mut parts = vec![head("Ingredients")];
    parts.extend(ingredients(found));
    parts.push(head("Figures of the batter"));
    parts.extend(figures(found));
    for (title, names) in [
        ("Allergens that came in", &found.allergens_gained),
        ("Allergens that went out", &found.allergens_lost),
    ] {
        parts.extend(listed(title, names.iter().map(|name| line(name)).collect()));
    }
    if !found.allergens_lost.is_empty() {
        parts.push(paragraph(
            "hint",
            "By the names of the ingredients, as a help and never a guarantee: read every packet.",
        ));
    }
    for (title, findings) in [
        ("Findings that came", &found.findings_come),
        ("Findings that went", &found.findings_gone),
    ] {
        parts.extend(listed(title, findings.iter().map(finding).collect()));
    }
    for (title, lines) in [
        ("Other lines, in this version only", &found.lines_come),
        ("Other lines, in the original only", &found.lines_gone),
    ] {
        parts.extend(listed(title, lines.iter().map(|text| line(text)).collect()));
    }
    parts
}

fn head(words: &'static str) -> Element {
    element("h3").class("part__sub").text(words)
}

/// A list under its title; nothing where it is empty.
fn listed(title: &'static str, items: Vec<Element>) -> Vec<Element> {
    if items.is_empty() {
        return Vec::new();
    }
    let items = items.into_iter().take(MOST);
    vec![
        head(title),
        element("ul").class("plain-list").children(items),
    ]
}

fn line(text: &str) -> Element {
    let text = if text.is_empty() {
        "(a blank line)"
    } else {
        text
    };
    element("li").attribute("dir", "auto").text(text.to_owned())
}

fn finding(found: &FindingNote) -> Element {
    let grave = match found.severity {
        Severity::Fault => "Fault",
        Severity::Look => "Look",
        Severity::Note => "Note",
    };
    element("li")
        .child(element("strong").text(format!("{grave}: {}. ", found.title)))
        .text(found.sentence.clone())
}

fn ingredients(found: &Difference) -> Vec<Element> {
    let rows = found.ingredients.iter().take(MOST).map(ingredient);
    let stays = match (found.ingredients.len(), found.unchanged) {
        (0, _) => "No ingredient and no amount differs.".to_owned(),
        (all, _) if all > MOST => format!("The first {MOST} of {all} are shown."),
        (_, 0) => String::new(),
        (_, 1) => "One ingredient stays as it is.".to_owned(),
        (_, stay) => format!("{stay} ingredients stay as they are."),
    };
    let table = (!found.ingredients.is_empty())
        .then(|| table("What is another ingredient, or another amount", rows));
    table
        .into_iter()
        .chain([paragraph("hint", stays)])
        .collect()
}

fn ingredient(change: &IngredientChange) -> Element {
    let side = |amount: &Option<Amount>, none: &'static str| match amount {
        None => cell(none, Vec::new()),
        Some(amount) => {
            let percent = amount.percent_shown.iter();
            let small = amount.range_shown.iter().cloned();
            cell(
                &amount.shown,
                small
                    .chain(percent.map(|percent| format!("{percent} of flour")))
                    .chain(amount.spoons.clone())
                    .collect(),
            )
        }
    };
    let beside = change.beside.clone().unwrap_or_default();
    row(
        &change.name,
        beside,
        [
            side(&change.before, "not there"),
            side(&change.after, "left out"),
        ],
        &change.change_shown,
    )
}

fn figures(found: &Difference) -> Vec<Element> {
    let changed = found.figures.iter().filter(|it| it.differs()).map(figure);
    let said = found.said.iter().filter(|it| it.differs()).map(said);
    let rows: Vec<Element> = changed.chain(said).collect();
    let same = found.figures.iter().filter(|it| !it.differs());
    let same: Vec<&str> = same.map(|it| it.label).collect();
    let stays = match same.as_slice() {
        [] => String::new(),
        same => format!("As before: {}.", same.join(", ")),
    };
    let hows = found.figures.iter().map(|it| {
        element("li")
            .child(element("strong").text(format!("{}: ", it.label)))
            .text(it.how)
    });
    let how = element("details")
        .class("figure no-print")
        .child(
            element("summary").class("figure__line").child(
                element("span")
                    .class("figure__label")
                    .text("How these are got, and when a change counts"),
            ),
        )
        .child(paragraph("figure__how", WHEN))
        .child(element("ul").class("plain-list figure__how").children(hows));
    let table = (!rows.is_empty()).then(|| table("What the batter holds and does", rows));
    table
        .into_iter()
        .chain([paragraph("hint", stays), how])
        .collect()
}

const WHEN: &str = "A change counts where it is larger than the two ranges together, each recipe measured and baked anew; otherwise it is too close to call. What is the same line in both makes the true change surer than that. Sources and lines stand with each recipe's own figures.";

fn figure(change: &FigureChange) -> Element {
    let side = |side: &FigureSide| {
        let beside = (!side.beside.is_empty()).then(|| side.beside.clone());
        let small = side.range_shown.iter().cloned().chain(beside);
        cell(&side.shown, small.collect())
    };
    row(
        change.label,
        String::new(),
        [side(&change.before), side(&change.after)],
        &change.words(),
    )
}

fn said(change: &SaidChange) -> Element {
    row(
        change.label,
        String::new(),
        [
            cell(&change.before, Vec::new()),
            cell(&change.after, Vec::new()),
        ],
        "",
    )
}

/// A table of changes. Its roles are said, since on a narrow screen its rows are laid out as no table is.
fn table(caption: &'static str, rows: impl IntoIterator<Item = Element>) -> Element {
    let heads = ["Of", "Original", "This version", "Change"].map(|words| {
        element("th")
            .attribute("role", "columnheader")
            .attribute("scope", "col")
            .text(words)
    });
    element("table")
        .class("differs__table")
        .attribute("role", "table")
        .child(element("caption").class("unseen").text(caption))
        .child(
            element("thead")
                .attribute("role", "rowgroup")
                .child(element("tr").attribute("role", "row").children(heads)),
        )
        .child(
            element("tbody")
                .attribute("role", "rowgroup")
                .children(rows),
        )
}

/// What stands in a cell: the figure, and smaller words below it.
struct Cell(String, Vec<String>);

fn cell(figure: &str, small: Vec<String>) -> Cell {
    Cell(figure.to_owned(), small)
}

fn row(name: &str, beside: String, [before, after]: [Cell; 2], change: &str) -> Element {
    let side = |label: &'static str, class: &'static str, Cell(figure, small): Cell| {
        let small = small
            .into_iter()
            .map(|words| element("span").class("differs__small").text(words));
        let figures = element("span")
            .class("differs__figures")
            .child(element("span").class("differs__figure").text(figure))
            .children(small);
        element("td")
            .class(class)
            .attribute("role", "cell")
            .child(
                element("span")
                    .class("differs__label")
                    .attribute("aria-hidden", "true")
                    .text(label),
            )
            .child(figures)
    };
    element("tr")
        .class("differs__row")
        .attribute("role", "row")
        .child(
            element("th")
                .class("differs__name")
                .attribute("role", "rowheader")
                .attribute("scope", "row")
                .text(name.to_owned())
                .child(element("span").class("differs__small").text(beside)),
        )
        .child(side("Original", "differs__side", before))
        .child(side("This version", "differs__side", after))
        .child(
            element("td")
                .class("differs__change")
                .attribute("role", "cell")
                .text(change.to_owned()),
        )
}
