//! The rows of the table of weights: a heading, a line, the details of a line.

use super::common::{fact, paragraph};
use super::mend::mend;
use crate::baking::worksheet::{SheetLine, Status};
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The heading of a part of the recipe.
pub fn heading(bench: Bench, line: usize) -> Element {
    let words = words_of(bench, line, |line| line.text.trim().to_owned());
    let cell = element("td").class("weights__part").attribute("colspan", "3").attribute("dir", "auto").text_of(words);
    element("tr").child(cell)
}

/// A line: what to weigh, of what, and whether to check it. It is drawn once and follows its own line,
/// so a letter typed in another line leaves it alone.
pub fn row(bench: Bench, line: usize, scaled: Memo<bool>) -> Element {
    let open = move || bench.line.get() == Some(line);
    let class = {
        let beside = words_of(bench, line, |line| line.beside.clone().unwrap_or_default());
        move || {
            let beside = if beside().is_empty() { "" } else { " row--beside" };
            Some(format!("row{beside}{}", if open() { " row--open" } else { "" }))
        }
    };
    let (own, other) = (words_of(bench, line, own_weight), words_of(bench, line, other_weight));
    let lead = move || if scaled.get() { other() } else { own() };
    let (own, percent) = (
        words_of(bench, line, own_weight),
        words_of(bench, line, |line| line.percent_shown.clone().unwrap_or_default()),
    );
    let beside = move || if scaled.get() { own() } else { percent() };
    let span = |class: &'static str, words| element("span").class(class).text_of(words);
    let grams = element("td")
        .class("row__grams")
        .child(element("span").class("row__mass").text_of(lead))
        .child(span("row__range", words_of(bench, line, |line| line.range_shown.clone().unwrap_or_default())));
    let button = element("button")
        .class("row__open")
        .attribute("type", "button")
        .attribute_of("aria-expanded", move || Some(open().to_string()))
        .on_touch(move || bench.line.update(|shown| *shown = if *shown == Some(line) { None } else { Some(line) }))
        .child(span("row__name", words_of(bench, line, name)).attribute("dir", "auto"))
        .child(span("row__note", words_of(bench, line, note)))
        .child(span("row__flag", words_of(bench, line, flag)));
    element("tr")
        .attribute("id", format!("/line/{line}"))
        .attribute_of("class", class)
        .child(grams)
        .child(element("th").class("row__ingredient").attribute("scope", "row").child(button))
        .child(element("td").class("row__beside").text_of(beside))
}

/// What is known of a line, and how it can be mended by hand.
pub fn details(bench: Bench, line: usize) -> Element {
    let changes = bench.line_changes(line);
    let known = move || {
        changes.track();
        bench.sheet(|sheet| sheet.lines.get(line - 1).map(facts)).into_iter().flatten().collect()
    };
    let details = element("div")
        .class("details")
        .attribute("role", "group")
        .attribute("aria-label", format!("Line {line}"))
        .child(element("div").class("details__known").children_of(known))
        .child(mend(bench, line, changes));
    element("tr").class("row-details").child(element("td").attribute("colspan", "3").child(details))
}

/// Words about a line that follow it. `of` is a plain function so that all of them share one type.
fn words_of(bench: Bench, line: usize, of: fn(&SheetLine) -> String) -> impl Fn() -> String + 'static {
    let changes = bench.line_changes(line);
    move || {
        changes.track();
        bench.sheet(|sheet| sheet.lines.get(line - 1).map(of).unwrap_or_default())
    }
}

fn own_weight(line: &SheetLine) -> String {
    line.grams_shown.clone().unwrap_or_else(|| "No weight".into())
}

fn other_weight(line: &SheetLine) -> String {
    line.scaled_shown.clone().unwrap_or_else(|| own_weight(line))
}

fn name(line: &SheetLine) -> String {
    line.name.map_or_else(|| line.text.trim().to_owned(), str::to_owned)
}

fn note(line: &SheetLine) -> String {
    let eggs = line.eggs.as_ref().map(|eggs| eggs.shown.clone());
    let own = line.corrected.then(|| "mended by you".to_owned());
    let said = [Some(format!("line {}", line.line)), line.beside.clone(), eggs, own];
    said.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

fn flag(line: &SheetLine) -> String {
    match (line.flagged, line.doubts.first()) {
        (true, Some(doubt)) => format!("Check: {doubt}"),
        (true, None) if line.status == Status::NotRead => "Check: this line could not be read.".into(),
        (true, None) => "Check: this reading is unsure.".into(),
        (false, _) => String::new(),
    }
}

fn facts(line: &SheetLine) -> Vec<Element> {
    let known = [
        ("As pasted", line.text.trim()),
        ("Understood", &line.understood),
        ("Weight", line.how.as_deref().unwrap_or_default()),
        ("Source", line.source.as_deref().unwrap_or_default()),
        ("Left out", line.beside.as_deref().unwrap_or_default()),
        ("Eggs", line.eggs.as_ref().map_or("", |eggs| &eggs.shown)),
    ];
    let known = known.into_iter().filter(|(_, words)| !words.is_empty()).map(|(label, words)| fact(label, words.to_owned()));
    let mut shown = vec![element("dl").class("facts").children(known)];
    shown.extend(line.doubts.iter().map(|doubt| paragraph("details__doubt", doubt.clone())));
    shown
}
