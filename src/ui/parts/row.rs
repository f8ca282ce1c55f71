//! The rows of the table of weights: a heading, a line, the details of a line.

use super::common::{fact, paragraph};
use super::mend::mend;
use crate::baking::worksheet::{SheetLine, Status};
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The heading of a part of the recipe.
pub fn heading(bench: Bench, row: usize) -> Element {
    let words = Row::of(bench, row).words(|line| line.text.trim().to_owned());
    let cell = element("td")
        .class("weights__part")
        .attribute("colspan", "3")
        .attribute("dir", "auto")
        .text_of(words);
    element("tr").child(cell)
}

/// An ingredient: what to weigh, of what, and whether to check it. It is drawn once and follows its own line,
/// so a letter typed in another line leaves it alone.
pub fn row(bench: Bench, row: usize, scaled: Memo<bool>) -> Element {
    let open = move || bench.row.get() == Some(row);
    let this = Row::of(bench, row);
    let state = this.words(|line| match (&line.beside, &line.grams) {
        (Some(_), _) => " row--beside".into(),
        (None, None) => " row--unweighed".into(),
        (None, Some(_)) => String::new(),
    });
    let class = move || {
        Some(format!(
            "row{}{}",
            state(),
            if open() { " row--open" } else { "" }
        ))
    };
    let (own, other, percent) = (
        this.words(own_weight),
        this.words(other_weight),
        this.words(percent),
    );
    let (own_again, range, range_again) =
        (this.words(own_weight), this.words(range), this.words(range));
    // The weight for another pan leads, if there is one; the recipe's own, with its range, then stands beside it.
    let lead = move || if scaled.get() { other() } else { own() };
    let lead_range = move || if scaled.get() { String::new() } else { range() };
    let beside = move || if scaled.get() { own_again() } else { percent() };
    let beside_range = move || {
        if scaled.get() {
            range_again()
        } else {
            String::new()
        }
    };
    let grams = element("td")
        .class("row__grams")
        .child(element("span").class("row__mass").text_of(lead))
        .child(element("span").class("row__range").text_of(lead_range));
    let beside = element("td")
        .class("row__beside")
        .child(element("span").class("row__second").text_of(beside))
        .child(element("span").class("row__range").text_of(beside_range));
    let span = |class: &'static str, of: fn(&SheetLine) -> String| {
        element("span").class(class).text_of(this.words(of))
    };
    let button = element("button")
        .class("row__open")
        .attribute("type", "button")
        .attribute_of("aria-expanded", move || Some(open().to_string()))
        .on_touch(move || {
            bench
                .row
                .update(|shown| *shown = if *shown == Some(row) { None } else { Some(row) })
        })
        .child(span("row__name", name).attribute("dir", "auto"))
        .child(span("row__note", note))
        .child(span("row__flag", flag));
    element("tr")
        .attribute_of("id", this.id())
        .attribute_of("class", class)
        .child(grams)
        .child(
            element("th")
                .class("row__ingredient")
                .attribute("scope", "row")
                .child(button),
        )
        .child(beside)
}

/// What is known of a line, and how it can be mended by hand.
pub fn details(bench: Bench, row: usize) -> Element {
    let changes = bench.row_changes(row);
    let known = move || {
        changes.get();
        bench
            .sheet(|sheet| sheet.lines.get(row).map(facts))
            .into_iter()
            .flatten()
            .collect()
    };
    let details = element("div")
        .class("details")
        .attribute("role", "group")
        .attribute_of("aria-label", Row::of(bench, row).label())
        .child(element("div").class("details__known").children_of(known))
        .child(mend(bench, row, changes));
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

    /// Words about the line. `of` is a plain function so that all of them share one type.
    fn words(self, of: fn(&SheetLine) -> String) -> impl Fn() -> String + 'static {
        move || {
            self.changes.get();
            self.bench
                .sheet(|sheet| sheet.lines.get(self.row).map(of).unwrap_or_default())
        }
    }

    /// The address of its line, which stands at the first of the line's ingredients.
    fn id(self) -> impl Fn() -> Option<String> + 'static {
        let id = self.words(|line| match line.part {
            0 => format!("/line/{}", line.line),
            part => format!("/line/{}/{part}", line.line),
        });
        move || Some(id())
    }

    fn label(self) -> impl Fn() -> Option<String> + 'static {
        let label = self.words(|line| match line.part {
            0 => format!("Line {}", line.line),
            part => format!("Line {}, ingredient {}", line.line, part + 1),
        });
        move || Some(label())
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
