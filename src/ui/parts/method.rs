//! The rest of the text: steps and notes, in order, every line kept. A line here can be called an ingredient.

use super::common::{button, folded, paragraph, section};
use crate::baking::worksheet::{SheetLine, Status};
use crate::ui::dom::{Element, element};
use crate::ui::shown::Part;
use crate::ui::state::Bench;

/// How many lines are shown.
const LINES: usize = 300;

/// A line as shown here.
struct Kept {
    line: usize,
    text: String,
    heading: bool,
    corrected: bool,
}

/// Method and notes.
pub fn method(bench: Bench) -> Element {
    let kept = move || bench.part(Part::Words, |sheet| kept(&sheet.lines));
    let shown = move |kept: Kept| match kept.heading {
        true => element("h3")
            .class("method__heading")
            .attribute("dir", "auto")
            .text(kept.text),
        false => paragraph("method__line", kept.text).attribute("dir", "auto"),
    };
    let text = element("div")
        .class("method")
        .children_of(move || kept().into_iter().map(shown).collect());
    let choices = move || {
        kept()
            .into_iter()
            .filter(|kept| !kept.heading)
            .map(|kept| choice(bench, kept))
            .collect()
    };
    let empty = paragraph("hint", "No method and no notes in the text.")
        .hidden_while(move || !kept().is_empty());
    let choices = folded("Is one of these an ingredient?")
        .child(element("ul").class("offers").children_of(choices))
        .hidden_while(move || kept().is_empty());
    section("/method", "Method and notes")
        .child(text)
        .child(empty)
        .child(choices)
}

fn kept(lines: &[SheetLine]) -> Vec<Kept> {
    let ingredient = |line: &SheetLine| {
        matches!(
            line.status,
            Status::Weighed | Status::NotWeighed | Status::NotRead
        )
    };
    let shown = lines
        .iter()
        .enumerate()
        .filter(|(index, line)| match line.status {
            Status::Method | Status::Note => true,
            // Headings of ingredients stand among the weights.
            Status::Heading => !lines[index + 1..]
                .iter()
                .find(|next| next.status != Status::Blank)
                .is_some_and(ingredient),
            _ => false,
        });
    let kept = shown.map(|(_, line)| Kept {
        line: line.line,
        text: line.text.trim().to_owned(),
        heading: line.status == Status::Heading,
        corrected: line.corrected,
    });
    kept.take(LINES).collect()
}

fn choice(bench: Bench, kept: Kept) -> Element {
    let Kept {
        line,
        text,
        corrected,
        ..
    } = kept;
    let label = if corrected {
        format!("Take back what I changed: {text}")
    } else {
        text.clone()
    };
    let choose = button("button button--offer", label, move || {
        bench.call_ingredient(line, &text, corrected);
    });
    element("li").child(choose)
}
