//! What parts have in common: headed sections, buttons, figures that tell how they were got, links to lines.

use crate::ui::dom::{Element, Words, element};
use crate::ui::state::Bench;
use leptos::prelude::{Get, RwSignal, Set};
use wasm_bindgen::JsCast;

/// A section of the ticket; its id is its address within the page.
pub fn section(id: &'static str, title: &'static str) -> Element {
    let heading = format!("{id}-title");
    element("section")
        .may_wait()
        .class("part")
        .attribute("id", id)
        .attribute("aria-labelledby", heading.clone())
        .child(
            element("h2")
                .class("part__title")
                .attribute("id", heading)
                .text(title),
        )
}

/// A button that calls back when touched.
pub fn button(class: &'static str, words: impl Into<Words>, touch: impl Fn() + 'static) -> Element {
    element("button")
        .class(class)
        .attribute("type", "button")
        .text(words)
        .on_touch(touch)
}

/// A paragraph.
pub fn paragraph(class: &'static str, words: impl Into<Words>) -> Element {
    element("p").class(class).text(words)
}

/// A fact in a list of facts.
pub fn fact(label: &'static str, words: impl Into<Words>) -> Element {
    element("div")
        .class("facts__fact")
        .child(element("dt").class("facts__label").text(label))
        .child(element("dd").class("facts__words").text(words))
}

/// A figure; how it was got opens at a touch.
pub fn figure(label: String, value: String, how: String) -> Element {
    let line = element("summary")
        .class("figure__line")
        .child(element("span").class("figure__label").text(label))
        .text(" ")
        .child(element("strong").class("figure__value").text(value));
    element("details")
        .class("figure")
        .child(line)
        .child(paragraph("figure__how", how))
}

/// A place that opens at a touch and is not printed.
pub fn folded(words: &'static str) -> Element {
    fold("figure no-print", words)
}

fn fold(class: &'static str, words: &'static str) -> Element {
    let line = element("summary")
        .class("figure__line")
        .child(element("span").class("figure__label").text(words));
    element("details").class(class).child(line)
}

/// A place of a class that opens at a touch and tells whether it is open, so that what is costly is drawn only then.
pub fn folded_while(class: &'static str, words: &'static str, open: RwSignal<bool>) -> Element {
    fold(class, words).on("toggle", move |event| open.set(is_open(event)))
}

/// What tells whether a place that opens is open, to be called with its `toggle` event.
pub fn is_open(event: &web_sys::Event) -> bool {
    let details = event
        .current_target()
        .and_then(|it| it.dyn_into::<web_sys::Element>().ok());
    details.is_some_and(|details| details.has_attribute("open"))
}

/// A choice from a list that opens: what the options are called, which is chosen, counted from 0.
pub fn select(
    id: String,
    label: &'static str,
    options: Vec<&'static str>,
    now: impl Fn() -> usize + 'static,
    choose: impl Fn(usize) + 'static,
) -> Element {
    let options = options.into_iter().enumerate().map(|(at, words)| {
        element("option")
            .attribute("value", at.to_string())
            .text(words)
    });
    let select = element("select")
        .class("input")
        .attribute("id", id.clone())
        .children(options)
        .value_of(move || now().to_string())
        .on_value("change", move |chosen| {
            if let Ok(at) = chosen.parse() {
                choose(at);
            }
        });
    let label = element("label")
        .class("label")
        .attribute("for", id)
        .text(label);
    element("div").class("field").child(label).child(select)
}

/// A tick: its words, whether it is set, and what a touch does.
pub fn tick(
    words: impl Into<Words>,
    is_set: impl Fn() -> bool + 'static,
    touch: impl Fn() + 'static,
) -> Element {
    let field = element("input")
        .class("choice__button")
        .attribute("type", "checkbox")
        .chosen_while(is_set)
        .on("change", move |_| touch());
    element("label")
        .class("choice__option")
        .child(field)
        .child(element("span").text(words))
}

/// A field of text: its id, the keypad that it asks for, its label, what stands in it, what is wrong with it, and what
/// to do with what is typed.
pub fn text_field(
    id: String,
    keypad: &'static str,
    label: impl Fn() -> String + 'static,
    value: impl Fn() -> String + 'static,
    trouble: impl Fn() -> Option<String> + Clone + 'static,
    typed: impl Fn(String) + 'static,
) -> Element {
    hinted_field(id, keypad, label, None, value, trouble, typed)
}

/// A field of text with a hint, which is read out with it.
pub fn hinted_field(
    id: String,
    keypad: &'static str,
    label: impl Fn() -> String + 'static,
    hint: Option<&'static str>,
    value: impl Fn() -> String + 'static,
    trouble: impl Fn() -> Option<String> + Clone + 'static,
    typed: impl Fn(String) + 'static,
) -> Element {
    let (hinted, said) = (format!("{id}-hint"), format!("{id}-trouble"));
    let described = match hint {
        Some(_) => format!("{hinted} {said}"),
        None => said.clone(),
    };
    let invalid = trouble.clone();
    let class = if keypad == "text" {
        "input"
    } else {
        "input input--number"
    };
    let input = element("input")
        .class(class)
        .attribute("id", id.clone())
        .attribute("type", "text")
        .attribute("inputmode", keypad)
        .attribute("autocomplete", "off")
        .attribute("aria-describedby", described)
        .attribute_of("aria-invalid", move || invalid().map(|_| "true".to_owned()))
        .value_of(value)
        .on_value("input", typed);
    let label = element("label")
        .class("label")
        .attribute("for", id)
        .text_of(label);
    let hint = hint.map(|words| paragraph("hint", words).attribute("id", hinted));
    let trouble = element("p")
        .class("trouble")
        .attribute("id", said)
        .text_of(move || trouble().unwrap_or_default());
    element("div")
        .class("field")
        .child(label)
        .children(hint)
        .child(input)
        .child(trouble)
}

/// A field that seeks an ingredient by a few letters: its id, its label, an example, what is asked, and below it what the
/// list of what is found is called, its items, and what is said where there are none.
pub fn seek_field(
    id: String,
    label: &'static str,
    example: &'static str,
    asked: RwSignal<String>,
    list: &'static str,
    items: impl Fn() -> Vec<Element> + 'static,
    none: impl Fn() -> String + 'static,
) -> Element {
    let input = element("input")
        .class("input")
        .attribute("id", id.clone())
        .attribute("type", "search")
        .attribute("autocomplete", "off")
        .attribute("placeholder", example)
        .value_of(move || asked.get())
        .on_value("input", move |typed| asked.set(typed));
    element("div").class("field").children([
        element("label")
            .class("label")
            .attribute("for", id)
            .text(label),
        input,
        element("ul")
            .class("offers")
            .attribute("aria-label", list)
            .children_of(items),
        paragraph("hint", "")
            .attribute("role", "status")
            .text_of(none),
    ])
}

/// The head of a table, in one row: each column's class and name.
pub fn table_head(columns: [(&'static str, &'static str); 3]) -> Element {
    let columns = columns.map(|(class, name)| {
        element("th")
            .attribute("scope", "col")
            .class(class)
            .text(name)
    });
    element("thead").child(element("tr").children(columns))
}

/// Links to the rows of lines.
pub fn line_links(bench: Bench, lines: &[usize]) -> Element {
    element("ul").class("lines").children(
        lines
            .iter()
            .map(|&line| element("li").child(line_link(bench, line))),
    )
}

/// A link to the row of a line, which it opens.
pub fn line_link(bench: Bench, line: usize) -> Element {
    element("a")
        .class("lines__link")
        .attribute("href", format!("#/line/{line}"))
        // The address may be there already, and then only the touch opens the row.
        .on_touch(move || bench.open_line(line))
        .text(format!("Line {line}"))
}

/// One of several choices of a name, of which one holds.
pub fn radio(
    name: &'static str,
    words: impl Into<Words>,
    chosen: impl Fn() -> bool + 'static,
    choose: impl Fn() + 'static,
) -> Element {
    let radio = element("input")
        .class("choice__button")
        .attribute("type", "radio")
        .attribute("name", name)
        .chosen_while(chosen)
        .on("change", move |_| choose());
    element("label")
        .class("choice__option")
        .child(radio)
        .child(element("span").text(words))
}
