//! One ingredient: which, what comes in its place, and how much of it goes.

use super::{Chosen, LINE, Weighed, change};
use crate::baking::worksheet::{LinePart, SwapLine};
use crate::ui::device;
use crate::ui::dom::{Element, Words, element};
use crate::ui::parts::common::{paragraph, seek_field, select, text_field};
use crate::ui::parts::mend::found;
use crate::ui::state::Bench;
use leptos::prelude::*;

const MUCH: &str = "instead-much";
/// How many offers are shown before the rest is asked for.
const OFFERS: usize = 8;

/// The choice for one line after the other.
pub fn one(bench: Bench, lines: Memo<Vec<Weighed>>, chosen: Memo<Vec<Chosen>>) -> Element {
    // Another weight leaves the offers alone.
    let wanted = Memo::new(move |_| {
        let place = bench.instead.get()?;
        lines.with(|lines| {
            let line = lines.iter().find(|line| line.place == place)?;
            Some((line.place, line.key))
        })
    });
    element("div")
        .class("instead__step no-print")
        .child(which(bench, lines))
        .child(
            element("div")
                .class("instead__line")
                .children_of(move || match wanted.get() {
                    Some((place, own)) => form(bench, place, own, chosen),
                    None => Vec::new(),
                }),
        )
}

fn which(bench: Bench, lines: Memo<Vec<Weighed>>) -> Element {
    let options = move || {
        let option =
            |value: String, words: String| element("option").attribute("value", value).text(words);
        let none = option(String::new(), "Choose a line of the recipe".to_owned());
        let lines = lines.with(|lines| {
            let lines = lines.iter();
            lines
                .map(|line| option(address(line.place), line.words.clone()))
                .collect::<Vec<_>>()
        });
        std::iter::once(none).chain(lines).collect()
    };
    let now = move || {
        lines.track();
        bench.instead.get().map(address).unwrap_or_default()
    };
    let select = element("select")
        .class("input")
        .attribute("id", LINE)
        .children_of(options)
        .value_of(now)
        .on_value("change", move |value| bench.instead.set(place(&value)));
    element("div")
        .class("field")
        .child(
            element("label")
                .class("label")
                .attribute("for", LINE)
                .text("Which ingredient?"),
        )
        .child(select)
}

/// A place as the value of an option.
fn address((line, part): LinePart) -> String {
    format!("{line}/{part}")
}

fn place(address: &str) -> Option<LinePart> {
    let (line, part) = address.split_once('/')?;
    Some((line.parse().ok()?, part.parse().ok()?))
}

fn form(
    bench: Bench,
    place: LinePart,
    own: &'static str,
    chosen: Memo<Vec<Chosen>>,
) -> Vec<Element> {
    let swap = Memo::new(move |_| {
        chosen.with(|chosen| {
            let chosen = chosen.iter().find(|chosen| chosen.place == Some(place));
            chosen.map(|chosen| chosen.swap.clone())
        })
    });
    vec![
        offers(bench, place, swap),
        search(bench, place, own, swap),
        much(bench, place, swap),
    ]
}

/// What the trade and the baker's own larder offer.
fn offers(bench: Bench, place: LinePart, swap: Memo<Option<SwapLine>>) -> Element {
    let offers = bench.swap_offers(place);
    let many = offers.len();
    if many == 0 {
        return paragraph(
            "hint",
            "No swap of the trade is known for this. Choose any other ingredient below.",
        );
    }
    let all = RwSignal::new(many <= OFFERS + 2);
    let items = offers.into_iter().enumerate().map(|(at, offer)| {
        let beside = (!offer.beside.is_empty())
            .then(|| element("span").class("instead__beside").text(offer.beside));
        let choose = choice(bench, place, offer.to.clone(), offer.name, swap).children(beside);
        // One that is chosen is never out of sight.
        let is_chosen = move || swap.with(|swap| swap.as_ref().is_some_and(|it| it.to == offer.to));
        element("li")
            .child(choose)
            .hidden_while(move || at >= OFFERS && !all.get() && !is_chosen())
    });
    let list = element("ul")
        .class("offers")
        .attribute("aria-label", "What may come in its place")
        .children(items);
    let more = crate::ui::parts::button(
        "button button--plain",
        format!("Show all {many}"),
        move || {
            all.set(true);
        },
    )
    .hidden_while(move || all.get());
    element("div")
        .child(paragraph("label", "What comes in its place?"))
        .child(list)
        .child(more)
}

/// A button that chooses; touched again, it takes the choice back.
fn choice(
    bench: Bench,
    place: LinePart,
    to: String,
    name: impl Into<Words>,
    swap: Memo<Option<SwapLine>>,
) -> Element {
    let key = to.clone();
    let is_chosen = move || swap.with(|swap| swap.as_ref().is_some_and(|it| it.to == key));
    let pressed = is_chosen.clone();
    crate::ui::parts::button("button button--offer instead__offer", name, move || {
        let to = if is_chosen() { "" } else { &to };
        choose(bench, place, to);
    })
    .attribute_of("aria-pressed", move || Some(pressed().to_string()))
}

/// Chooses what comes; how much of the original goes stays as it was said.
fn choose(bench: Bench, place: LinePart, to: &str) {
    change(bench, |inputs| {
        let percent = inputs.swap_of(place).and_then(|swap| swap.percent);
        inputs.swap(place, to, percent);
    });
}

/// Any other ingredient, by a few letters.
fn search(
    bench: Bench,
    place: LinePart,
    own: &'static str,
    swap: Memo<Option<SwapLine>>,
) -> Element {
    let asked = RwSignal::new(String::new());
    let hits = Memo::new(move |_| {
        let mut hits = asked.with(|asked| match asked.trim().is_empty() {
            true => Vec::new(),
            false => found(bench, asked),
        });
        hits.retain(|hit| hit.key != own);
        hits
    });
    let items = move || {
        let hits = hits.get().into_iter();
        hits.map(|hit| {
            let choose = choice(bench, place, hit.key, hit.name, swap).on_touch(move || {
                asked.set(String::new());
                device::focus(MUCH);
            });
            element("li").child(choose)
        })
        .collect()
    };
    let none = move || {
        match hits.with(Vec::is_empty) && asked.with(|it| !it.trim().is_empty()) {
        true => "The larder holds no other ingredient of that name. Try a shorter word, or add it to the larder as your own.".to_owned(),
        false => String::new(),
    }
    };
    seek_field(
        "instead-other".into(),
        "Or any other ingredient",
        "Write a name, such as oat milk",
        asked,
        "Ingredients found",
        items,
        none,
    )
}

/// How much of the original goes.
fn much(bench: Bench, place: LinePart, swap: Memo<Option<SwapLine>>) -> Element {
    // A part stays a part while "100" is on the way to being typed.
    let by_part = RwSignal::new(false);
    let typed = RwSignal::new(None::<String>);
    let percent = move || swap.with(|swap| swap.as_ref().and_then(|swap| swap.percent));
    let now = move || match percent() {
        _ if by_part.get() => 2,
        None => 0,
        Some(100) => 1,
        Some(_) => 2,
    };
    let set = move |percent: Option<u8>| {
        change(bench, |inputs| {
            if let Some(to) = inputs.swap_of(place).map(|swap| swap.to.clone()) {
                inputs.swap(place, &to, percent);
            }
        });
    };
    let choose = move |at: usize| {
        by_part.set(at == 2);
        typed.set(None);
        set([None, Some(100), Some(HALF)][at.min(2)]);
    };
    let how = select(
        MUCH.into(),
        "How much of it goes?",
        vec!["As much as practice replaces", "All of it", "A part of it"],
        now,
        choose,
    );
    let value = move || {
        let there = percent().map_or_else(String::new, |percent| percent.to_string());
        typed.get().unwrap_or(there)
    };
    let trouble = move || typed.with(|typed| read_percent(typed.as_deref()?).err());
    let field = text_field(
        "instead-percent".into(),
        "numeric",
        || "Per cent of it that goes".to_owned(),
        value,
        trouble,
        move |written| {
            if let Ok(percent) = read_percent(&written) {
                by_part.set(true);
                set(Some(percent));
            }
            typed.set(Some(written));
        },
    )
    .hidden_while(move || now() != 2);
    element("div")
        .class("instead__much")
        .child(how)
        .child(field)
        .hidden_while(move || swap.with(Option::is_none))
}

/// Where a part of it is asked for, it starts here, per cent.
const HALF: u8 = 50;

/// Reads a share as it is typed.
///
/// # Errors
/// A sentence where it is no whole number from 1 to 100.
fn read_percent(typed: &str) -> Result<u8, String> {
    let number = typed.trim().trim_end_matches('%').trim_end();
    match number.parse() {
        Ok(percent @ 1..=100) => Ok(percent),
        _ => Err("Write a whole number from 1 to 100.".into()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_share_is_a_whole_number_of_per_cent() {
        assert_eq!(read_percent(" 25 % "), Ok(25));
        assert_eq!(read_percent("100"), Ok(100));
        for wrong in ["", "0", "101", "half", "12.5", "-3"] {
            assert!(read_percent(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn a_place_is_read_back_from_its_option() {
        assert_eq!(place(&address((12, 3))), Some((12, 3)));
        assert_eq!(place(""), None);
    }
}
