//! The rows of the table of weights: a heading, a line, the details of a line.

use super::common::{fact, paragraph};
use super::mend::mend;
use crate::baking::worksheet::{SheetLine, Status};
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The heading of a part of the recipe.
pub fn heading(bench: Bench, row: usize) -> Element {
    let this = Row::of(bench, row);
    let words = move || {
        this.read(|line| line.text.trim().to_owned())
            .unwrap_or_default()
    };
    let cell = element("td")
        .class("weights__part")
        .attribute("colspan", "3")
        .attribute("dir", "auto")
        .text_of(words);
    element("tr").child(cell)
}

/// An ingredient: what to weigh, of what, and whether to check it. It follows its own line, so a letter typed in
/// another line leaves it alone.
pub fn row(bench: Bench, row: usize, scaled: Memo<bool>) -> Element {
    let this = Row::of(bench, row);
    element("tr").drawn_as(move || {
        let (is_open, is_scaled) = (bench.row.get() == Some(row), scaled.get());
        let touch = move || {
            bench
                .row
                .update(|shown| *shown = if *shown == Some(row) { None } else { Some(row) })
        };
        let drawn = this.read(|line| cells(line, is_open, is_scaled, touch));
        drawn.unwrap_or_else(|| element("tr"))
    })
}

fn cells(line: &SheetLine, is_open: bool, is_scaled: bool, touch: impl Fn() + 'static) -> Element {
    let span = |class: &'static str, words: String| element("span").class(class).text(words);
    // The weight for what is baked leads, if it is not the recipe; the recipe's own, with its range, then stands beside it.
    let (lead, beside) = match is_scaled {
        true => (
            [other_weight(line), String::new()],
            [own_weight(line), range(line)],
        ),
        false => (
            [own_weight(line), range(line)],
            [percent(line), String::new()],
        ),
    };
    let cell = |class: &'static str, first: &'static str, [words, range]: [String; 2]| {
        element("td")
            .class(class)
            .child(span(first, words))
            .child(span("row__range", range))
    };
    let button = element("button")
        .class("row__open")
        .attribute("type", "button")
        .attribute("aria-expanded", is_open.to_string())
        .on_touch(touch)
        .child(span("row__name", name(line)).attribute("dir", "auto"))
        .child(span("row__note", note(line)))
        .child(span("row__flag", flag(line)));
    let state = match (&line.beside, &line.grams) {
        (Some(_), _) => " row--beside",
        (None, None) => " row--unweighed",
        (None, Some(_)) => "",
    };
    let open = if is_open { " row--open" } else { "" };
    element("tr")
        .attribute("id", address(line))
        .class(format!("row{state}{open}"))
        .child(cell("row__grams", "row__mass", lead))
        .child(
            element("th")
                .class("row__ingredient")
                .attribute("scope", "row")
                .child(button),
        )
        .child(cell("row__beside", "row__second", beside))
}

/// The address of a line, which stands at the first of its ingredients.
fn address(line: &SheetLine) -> String {
    match line.part {
        0 => format!("/line/{}", line.line),
        part => format!("/line/{}/{part}", line.line),
    }
}

/// What is known of a line, and how it can be mended by hand.
pub fn details(bench: Bench, row: usize) -> Element {
    let this = Row::of(bench, row);
    let known = move || this.read(facts).unwrap_or_default();
    let details = element("div")
        .class("details")
        .attribute("role", "group")
        .attribute_of("aria-label", move || this.label())
        .child(element("div").class("details__known").children_of(known))
        .child(mend(bench, row, this.changes));
    element("tr")
        .class("row-details")
        .child(element("td").attribute("colspan", "3").child(details))
}

/// A row that is followed. One count of its changes serves everything that is shown of it.
#[derive(Clone, Copy)]
struct Row {
    bench: Bench,
    row: usize,
    changes: Memo<u32>,
}

impl Row {
    fn of(bench: Bench, row: usize) -> Self {
        Self {
            bench,
            row,
            changes: bench.row_changes(row),
        }
    }

    /// A piece of the line, followed; `None` where it is gone.
    fn read<R>(self, read: impl FnOnce(&SheetLine) -> R) -> Option<R> {
        self.changes.get();
        self.bench
            .sheet(|sheet| sheet.lines.get(self.row).map(read))
    }

    fn label(self) -> Option<String> {
        self.read(|line| match line.part {
            0 => format!("Line {}", line.line),
            part => format!("Line {}, ingredient {}", line.line, part + 1),
        })
    }
}

fn own_weight(line: &SheetLine) -> String {
    line.grams_shown
        .clone()
        .unwrap_or_else(|| "No weight".into())
}

fn other_weight(line: &SheetLine) -> String {
    line.scaled_shown
        .clone()
        .unwrap_or_else(|| own_weight(line))
}

fn range(line: &SheetLine) -> String {
    line.range_shown.clone().unwrap_or_default()
}

fn percent(line: &SheetLine) -> String {
    line.percent_shown.clone().unwrap_or_default()
}

fn name(line: &SheetLine) -> String {
    line.name
        .map_or_else(|| line.text.trim().to_owned(), str::to_owned)
}

fn note(line: &SheetLine) -> String {
    let eggs = line.eggs.as_ref().map(|eggs| eggs.shown.clone());
    let own = line.corrected.then(|| "mended by you".to_owned());
    let said = [
        Some(format!("line {}", line.line)),
        line.beside.clone(),
        eggs,
        own,
    ];
    said.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

fn flag(line: &SheetLine) -> String {
    match (line.flagged, line.doubts.first()) {
        (true, Some(doubt)) => format!("Check: {doubt}"),
        (true, None) if line.status == Status::NotRead => {
            "Check: this line could not be read.".into()
        }
        (true, None) => "Check: this reading is unsure.".into(),
        (false, _) => String::new(),
    }
}

/// What is said of a line whose words were mended before.
const REMEMBERED: &str =
    "You said once what these words mean. The button below makes it forgotten.";

fn facts(line: &SheetLine) -> Vec<Element> {
    let known = [
        ("As pasted", line.text.trim()),
        ("Understood", &line.understood),
        ("Note", line.note),
        ("Weight", line.how.as_deref().unwrap_or_default()),
        ("Source", line.source.as_deref().unwrap_or_default()),
        ("Other sources", &line.others),
        ("Remembered", if line.taught { REMEMBERED } else { "" }),
        ("Left out", line.beside.as_deref().unwrap_or_default()),
        ("Eggs", line.eggs.as_ref().map_or("", |eggs| &eggs.shown)),
    ];
    let known = known
        .into_iter()
        .filter(|(_, words)| !words.is_empty())
        .map(|(label, words)| fact(label, words.to_owned()));
    let mut shown = vec![element("dl").class("facts").children(known)];
    if let (Some(key), Some(name)) = (line.ingredient, line.name) {
        let card = element("a")
            .class("lines__link")
            .attribute("href", format!("#/larder/{key}"))
            .text(format!("All figures for {name}"));
        shown.push(element("p").class("lines").child(card));
    }
    shown.extend(
        line.doubts
            .iter()
            .map(|doubt| paragraph("details__doubt", doubt.clone())),
    );
    shown
}
