//! The bin: what was removed in the last 30 days.

use super::aside::{set_aside, shown};
use super::undo::{Gone, Undo};
use super::{Page, words};
use crate::baking::quantity::show;
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::parts::{button, is_open, paragraph};
use crate::ui::storage::{self, Resting};
use leptos::prelude::*;

/// The bin, which opens at a touch; hidden while nothing is in it.
pub fn bin(page: Page, later: RwSignal<bool>) -> Element {
    let open = RwSignal::new(false);
    let asking = RwSignal::new(false);
    let many = Memo::new(move |_| {
        page.changes.track();
        match later.get() {
            true => storage::in_bin().unwrap_or_default(),
            false => [0; 2],
        }
    });
    let title = move || {
        let [recipes, bakes] = many.get();
        let count = |many, what: &str| match many {
            0 => None,
            1 => Some(format!("1 {what}")),
            many => Some(format!("{} {what}s", show::count(many))),
        };
        let parts = [count(recipes, "recipe"), count(bakes, "bake")];
        format!(
            "Bin: {}",
            parts.into_iter().flatten().collect::<Vec<_>>().join(", ")
        )
    };
    let line = element("summary")
        .class("figure__line")
        .child(element("span").class("figure__label").text_of(title));
    let inside = element("div").children_of(move || {
        page.changes.track();
        match open.get() {
            true => contents(page, asking),
            false => Vec::new(),
        }
    });
    element("details")
        .class("figure")
        .attribute("id", "/bin")
        .child(line)
        .child(inside)
        .on("toggle", move |event| open.set(is_open(event)))
        .hidden_while(move || many.get() == [0; 2])
}

fn contents(page: Page, asking: RwSignal<bool>) -> Vec<Element> {
    let (resting, aside) = match storage::contents() {
        Ok(contents) => contents,
        Err(refusal) => {
            return vec![paragraph(
                "trouble",
                format!("The bin cannot be listed: {refusal}. It is left as it is."),
            )];
        }
    };
    let named = |it: &Resting| (it.key.clone(), it.record.title.clone());
    let unreadable = aside.iter().map(|it| (it.key.clone(), it.key.clone()));
    let all: Vec<Named> = resting.iter().map(named).chain(unreadable).collect();
    let now = device::now() as u64;
    let bakes = storage::bakes_of_recipes().unwrap_or_default();
    let items = resting.into_iter().map(|it| {
        let bakes = bakes.get(&it.record.id).copied().unwrap_or(0);
        item(page, it, now, bakes)
    });
    let aside = aside.into_iter().map(|it| {
        let key = it.key.clone();
        let remove = remove(page, (key.clone(), shown(&key)));
        set_aside(&it, remove)
    });
    vec![
        paragraph(
            "hint",
            "What you remove rests here for 30 days, then it goes for good.",
        ),
        element("ul").class("shelf").children(items.chain(aside)),
        empty(page, asking, all),
    ]
}

/// A key of the bin, and what stands there is called.
type Named = (String, String);

fn item(page: Page, resting: Resting, now: u64, bakes: usize) -> Element {
    let title = resting.record.title.clone();
    let left = match resting.record.days_left(now) {
        1 => "1 day left".to_owned(),
        days => format!("{days} days left"),
    };
    let removed = device::date_shown(resting.record.removed as f64);
    let bakes = match bakes {
        0 => String::new(),
        1 => " · with 1 bake".to_owned(),
        many => format!(" · with {} bakes", show::count(many)),
    };
    let remove = remove(page, (resting.key.clone(), title.clone()));
    let put_back = button("button", "Put back", move || {
        match storage::put_back(&resting) {
            Ok(_) => page.done(None),
            Err(refusal) => page.refused("It could not be put back", refusal),
        }
    });
    element("li")
        .class("shelf__item shelf__item--bin")
        .child(words(
            title.clone(),
            format!("{left} · removed {removed}{bakes}"),
        ))
        .child(put_back.attribute("aria-label", format!("Put back {title}")))
        .child(remove)
}

fn remove(page: Page, named: Named) -> Element {
    let label = format!("Remove for good: {}", named.1);
    button("button button--plain", "Remove for good", move || {
        for_good(page, vec![named.clone()]);
    })
    .attribute("aria-label", label)
}

/// Empties the bin, once that was asked.
fn empty(page: Page, asking: RwSignal<bool>, all: Vec<Named>) -> Element {
    let many = all.len();
    element("div").class("shelf__choices").children_of(move || {
        let all = all.clone();
        if !asking.get() {
            let ask = button("button button--plain", "Empty the bin", move || {
                asking.set(true);
                device::focus("bin-empty");
            });
            return vec![ask];
        }
        let question = match many {
            1 => "Remove what is in the bin for good?".to_owned(),
            _ => format!("Remove all {many} for good?"),
        };
        let yes = button("button", "Yes, empty it", move || {
            asking.set(false);
            for_good(page, all.clone());
        });
        let no = button("button button--plain", "No", move || asking.set(false));
        vec![
            paragraph("", question),
            yes.attribute("id", "bin-empty"),
            no,
        ]
    })
}

/// Removes records for good; while the page is open they can still be put back into the bin.
fn for_good(page: Page, all: Vec<Named>) {
    let mut gone = Vec::new();
    let mut refused = None;
    for (key, title) in all {
        match storage::remove_for_good(&key) {
            Ok(texts) => gone.push(Gone { title, texts }),
            Err(refusal) => refused = Some(refusal),
        }
    }
    if !gone.is_empty() {
        page.done(Some(Undo::ForGood(gone)));
    }
    if let Some(refusal) = refused {
        page.trouble
            .set(Some(format!("Not all of it could be removed: {refusal}.")));
    }
}
