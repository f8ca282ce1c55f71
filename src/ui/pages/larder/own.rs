//! The baker's own ingredients and taught words: a list of each, and files out and in.

use super::{back, begin, head, listed, title};
use crate::baking::ingredient::by_key;
use crate::baking::ingredient::own::{Meaning, OwnEntry, OwnRecord, OwnWord};
use crate::baking::quantity::show;
use crate::baking::saved;
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::parts::{button, paragraph};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// The button that puts back what was removed: the focus goes there, since what was touched is gone.
const PUT_BACK: &str = "larder-put-back";

/// What was removed a moment ago, and where it stood.
#[derive(Clone)]
enum Gone {
    Entry(usize, Box<OwnEntry>),
    Word(usize, OwnWord),
}

/// What was removed while the page is open, the last one last: each can be put back.
type AllGone = StoredValue<Vec<Gone>>;

/// The page of the baker's own.
pub fn own(bench: Bench, sheet: Element) -> Element {
    let gone = AllGone::new(Vec::new());
    let entries = move || {
        bench.own(|own| {
            let entries = own.entries.iter().enumerate();
            entries
                .map(|(at, entry)| listed_entry(bench, gone, at, entry))
                .collect::<Vec<_>>()
        })
    };
    let words = move || {
        bench.own(|own| {
            let words = own.words.iter().enumerate();
            words
                .map(|(at, word)| listed_word(bench, gone, at, word, own))
                .collect::<Vec<_>>()
        })
    };
    let bar = move || {
        bench
            .own(|_| gone.with_value(|all| all.last().cloned()))
            .map(|it| gone_bar(bench, gone, it))
            .into_iter()
            .collect()
    };
    let none = |words: &'static str, none: fn(&OwnRecord) -> bool| {
        paragraph("hint", words).hidden_while(move || !bench.own(none))
    };
    let said = RwSignal::new(String::new());
    let download = button("button", "Download them", move || {
        if let Ok(text) = bench.own_now(saved::to_text) {
            device::download("larder.json", &text);
        }
    });
    let field = element("input")
        .class("input")
        .attribute("id", "larder-file")
        .attribute("type", "file")
        .attribute("accept", ".json,application/json")
        .on("change", move |event| {
            device::read_file(event, move |text| said.set(take_in(bench, text)));
        });
    let label = element("label")
        .class("label")
        .attribute("for", "larder-file")
        .text("Take in a file that was downloaded here or on another device");
    sheet.children([
        back("#/larder", "Back to the larder"),
        title("Your own ingredients and words"),
        element("p").text("Figures of your packets and your scale. They are kept on this device, in this browser, and nowhere else."),
        begin(bench),
        element("div").attribute("role", "status").children_of(bar),
        head("Your ingredients"),
        none("None yet.", |own| own.entries.is_empty()),
        element("ul").class("shelf").children_of(entries),
        head("Words that you taught"),
        none(
            "None yet. Words of a recipe that you match to an ingredient by hand can be kept here.",
            |own| own.words.is_empty(),
        ),
        element("ul").class("shelf").children_of(words),
        head("Out and in"),
        download,
        element("div").class("field").child(label).child(field),
        paragraph("", "").attribute("role", "status").text_of(move || said.get()),
    ])
}

/// Takes a file in, and says what came of it.
fn take_in(bench: Bench, text: Result<String, &'static str>) -> String {
    let read = text.map(|text| saved::from_text::<OwnRecord>(&text));
    match read {
        Err(why) => format!("{why} Nothing has changed."),
        Ok(Err(trouble)) => format!("Nothing came in. {trouble}"),
        Ok(Ok(record)) => {
            let mut sentence = String::new();
            bench.change_own(|own| sentence = own.merge(record).sentence());
            sentence
        }
    }
}

fn listed_entry(bench: Bench, gone: AllGone, at: usize, entry: &OwnEntry) -> Element {
    let name = show::sentence(&entry.shown_name());
    let like = entry
        .like()
        .map(|like| format!("like {}", like.name))
        .unwrap_or_default();
    let beside = match entry.troubles().len() {
        0 => like,
        1 => "1 field to look at".into(),
        many => format!("{many} fields to look at"),
    };
    let link = listed(format!("#/larder/{}", entry.key), name.clone(), beside);
    let key = entry.key.clone();
    let remove = button("button button--plain", "Remove", move || {
        bench.change_own(|own| {
            if own.entries.get(at).is_some_and(|entry| entry.key == key) {
                let entry = Box::new(own.entries.remove(at));
                gone.update_value(|all| all.push(Gone::Entry(at, entry)));
            }
        });
        device::focus(PUT_BACK);
    })
    .attribute("aria-label", format!("Remove {name}"));
    element("li").class("shelf__item").child(link).child(remove)
}

fn listed_word(bench: Bench, gone: AllGone, at: usize, word: &OwnWord, own: &OwnRecord) -> Element {
    let means = match word.meaning() {
        Meaning::NoIngredient => "is no ingredient".to_owned(),
        Meaning::Amount(amount) => format!("is {amount}"),
        Meaning::Ingredient(key) => match (own.entry(&key), by_key(&key)) {
            (Some(entry), _) => format!("means {}", entry.shown_name()),
            (None, Some(known)) => format!("means {}", known.name),
            (None, None) => "means an ingredient that is not here any more".to_owned(),
        },
    };
    let words = element("p")
        .class("shelf__words")
        .child(
            element("span")
                .attribute("dir", "auto")
                .text(format!("\"{}\"", word.words)),
        )
        .child(element("span").class("shelf__beside").text(means));
    let same = word.clone();
    let forget = button("button button--plain", "Forget", move || {
        bench.change_own(|own| {
            if own.words.get(at) == Some(&same) {
                let word = Gone::Word(at, own.words.remove(at));
                gone.update_value(|all| all.push(word));
            }
        });
        device::focus(PUT_BACK);
    })
    .attribute("aria-label", format!("Forget {}", word.words));
    element("li")
        .class("shelf__item")
        .child(words)
        .child(forget)
}

fn gone_bar(bench: Bench, gone: AllGone, it: Gone) -> Element {
    let words = match &it {
        Gone::Entry(_, entry) => format!("Removed: {}", entry.shown_name()),
        Gone::Word(_, word) => format!("Forgotten: {}", word.words),
    };
    let put_back = button("button", "Put it back", move || {
        gone.update_value(|all| drop(all.pop()));
        bench.change_own(|own| match it.clone() {
            Gone::Entry(at, entry) => own.entries.insert(at.min(own.entries.len()), *entry),
            Gone::Word(at, word) => own.words.insert(at.min(own.words.len()), word),
        });
        device::focus("main");
    })
    .attribute("id", PUT_BACK);
    element("div")
        .class("done")
        .child(element("p").class("done__words").text(words))
        .child(put_back)
}
