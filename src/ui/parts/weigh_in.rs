//! The formula at the scale: bowl after bowl, one large touch for each weight.

use super::common::{button, paragraph, text_field};
use crate::baking::worksheet::{
    BowlSheet, Call, Difference, FigureChange, WeighInSheet, WeighRow, grams_typed,
};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;
use leptos::prelude::*;

/// A row by its bowl and its place in it.
type At = (usize, usize);

/// What the bowls are made of, besides what is in them: drawn anew only when that changes, so that the focus stays.
#[derive(Clone, PartialEq)]
struct Drawn {
    bowls: Vec<(String, Vec<usize>, usize)>,
}

/// The bowls.
pub fn weigh_in(bench: Bench, sheet: Memo<WeighInSheet>) -> Element {
    let drawn = Memo::new(move |_| {
        sheet.with(|sheet| Drawn {
            bowls: sheet
                .bowls
                .iter()
                .map(|bowl| (bowl.title.clone(), bowl.lines.clone(), bowl.rows.len()))
                .collect(),
        })
    });
    // The row whose other weight is being typed.
    let open = RwSignal::new(None::<At>);
    element("div")
        .class("bowls")
        .children_of(move || {
            let Drawn { bowls } = drawn.get();
            if bowls.is_empty() {
                return vec![paragraph(
                    "hint",
                    "Nothing of this recipe has a weight yet: paste its ingredients on the ticket, or mend the lines that are marked there.",
                )];
            }
            bowls
                .into_iter()
                .enumerate()
                .map(|(at, (title, lines, rows))| bowl(bench, sheet, open, at, title, &lines, rows))
                .collect()
        })
}

fn bowl(
    bench: Bench,
    sheet: Memo<WeighInSheet>,
    open: RwSignal<Option<At>>,
    at: usize,
    title: String,
    lines: &[usize],
    rows: usize,
) -> Element {
    let id = format!("bowl-{at}");
    let of = move |read: fn(&BowlSheet) -> String| {
        sheet.with(|sheet| sheet.bowls.get(at).map(read).unwrap_or_default())
    };
    let said = method_words(sheet, lines);
    let rows = (0..rows).map(|row| self::row(bench, sheet, open, (at, row)));
    element("section")
        .class("bowl")
        .attribute("aria-labelledby", id.clone())
        .child(
            element("h2")
                .class("part__title bowl__title")
                .attribute("id", id)
                .text(title),
        )
        .children(said.map(|words| paragraph("bowl__method", words).attribute("dir", "auto")))
        .child(element("ol").class("bowl__rows").children(rows))
        .child(
            element("p")
                .class("bowl__so-far")
                .text_of(move || of(|bowl| bowl.so_far.clone())),
        )
}

/// What the method says of a bowl.
fn method_words(sheet: Memo<WeighInSheet>, lines: &[usize]) -> Option<String> {
    let words: Vec<String> = sheet.with_untracked(|sheet| {
        let method = sheet.method.iter();
        method
            .filter(|step| lines.contains(&step.line))
            .map(|step| step.text.clone())
            .collect()
    });
    (!words.is_empty()).then(|| words.join(" "))
}

/// A piece of a row, followed.
fn of<R: Default>(
    sheet: Memo<WeighInSheet>,
    (bowl, row): At,
    read: impl FnOnce(&WeighRow) -> R,
) -> R {
    sheet.with(|sheet| {
        let row = sheet.bowls.get(bowl).and_then(|bowl| bowl.rows.get(row));
        row.map(read).unwrap_or_default()
    })
}

/// The row as it is now.
fn now(sheet: Memo<WeighInSheet>, (bowl, row): At) -> Option<WeighRow> {
    sheet.with_untracked(|sheet| sheet.bowls.get(bowl)?.rows.get(row).cloned())
}

fn row(bench: Bench, sheet: Memo<WeighInSheet>, open: RwSignal<Option<At>>, at: At) -> Element {
    let is_in = Memo::new(move |_| of(sheet, at, |row| row.is_in));
    let is_next = Memo::new(move |_| sheet.with(next) == Some(at));
    let touch = move || {
        let Some(row) = now(sheet, at) else { return };
        if row.is_in {
            bench.take_out(&row);
        } else {
            bench.put_in(&row, row.target);
        }
    };
    let tick = element("span")
        .class("weight__tick")
        .attribute("aria-hidden", "true");
    let name = element("span")
        .class("weight__name")
        .text_of(move || of(sheet, at, |row| row.name.clone()));
    let target = element("span")
        .class("weight__target")
        .text_of(move || of(sheet, at, |row| row.target_shown.clone()));
    let beside = element("span").class("weight__counted").text_of(move || {
        of(sheet, at, |row| match &row.miss {
            Some(miss) => format!(
                "{}: {}",
                row.in_shown.as_deref().unwrap_or_default(),
                miss.words
            ),
            None => row.counted.clone().unwrap_or_default(),
        })
    });
    let total = element("span").class("weight__total").text_of(move || {
        of(sheet, at, |row| {
            let total = row.total_shown.as_ref();
            total.map_or_else(String::new, |total| format!("in all {total}"))
        })
    });
    let button = element("button")
        .class("weight__button")
        .attribute("id", button_id(at))
        .attribute("type", "button")
        .attribute_of("aria-pressed", move || Some(is_in.get().to_string()))
        .on_touch(touch)
        .children([tick, name, target, beside, total]);
    let ingredient = untrack(|| of(sheet, at, |row| row.name.clone()));
    let is_open = Memo::new(move |_| open.get() == Some(at));
    let other = element("button")
        .class("weight__other")
        .attribute("type", "button")
        .attribute("aria-label", format!("Another weight of {ingredient}"))
        .attribute_of("aria-expanded", move || Some(is_open.get().to_string()))
        .on_touch(move || {
            open.update(|open| *open = (*open != Some(at)).then_some(at));
            if is_open.get_untracked() {
                device::focus(field_id(at));
            }
        })
        .text("±");
    element("li")
        .attribute_of("class", move || {
            let is_off = of(sheet, at, |row| row.miss.is_some());
            let state = match (is_in.get(), is_next.get()) {
                (true, _) if is_off => "weight weight--in weight--off",
                (true, _) => "weight weight--in",
                (false, true) => "weight weight--next",
                (false, false) => "weight",
            };
            Some(state.to_owned())
        })
        .attribute_of("aria-current", move || {
            is_next.get().then(|| "step".to_owned())
        })
        .child(button)
        .child(other)
        .child(beneath(bench, sheet, open, at, is_next))
}

fn button_id((bowl, row): At) -> String {
    format!("weight-{bowl}-{row}")
}

fn field_id((bowl, row): At) -> String {
    format!("other-{bowl}-{row}")
}

/// The first row that is not in.
fn next(sheet: &WeighInSheet) -> Option<At> {
    let bowls = sheet.bowls.iter().enumerate();
    let mut rows = bowls.flat_map(|(bowl, it)| {
        let rows = it.rows.iter().enumerate();
        rows.map(move |(row, it)| ((bowl, row), it))
    });
    rows.find(|(_, row)| !row.is_in).map(|(at, _)| at)
}

/// What stands below a row's button: what to mind of the row that is next or open, and another weight.
fn beneath(
    bench: Bench,
    sheet: Memo<WeighInSheet>,
    open: RwSignal<Option<At>>,
    at: At,
    is_next: Memo<bool>,
) -> Element {
    let is_open = Memo::new(move |_| open.get() == Some(at));
    let notes = Memo::new(move |_| match is_next.get() || is_open.get() {
        true => of(sheet, at, notes),
        false => Vec::new(),
    });
    let notes = element("div").children_of(move || {
        let notes = notes.get().into_iter();
        notes.map(|note| paragraph("hint", note)).collect()
    });
    let grow = Memo::new(move |_| {
        of(sheet, at, |row| {
            let miss = row.miss.as_ref();
            miss.and_then(|miss| miss.grow.clone())
        })
    });
    let grown = element("div").children_of(move || {
        let grow = grow.get().map(|times| {
            let words = format!("Weigh everything {times}, to suit it");
            button("button", words, move || {
                if let Some(row) = now(sheet, at) {
                    bench.grow_to(&row);
                }
            })
        });
        grow.into_iter().collect()
    });
    let form = element("div").children_of(move || {
        let form = is_open.get().then(|| another(bench, sheet, open, at));
        form.into_iter().collect()
    });
    element("div")
        .class("weight__beneath")
        .children([notes, grown, form])
}

/// What is to be minded of a row.
fn notes(row: &WeighRow) -> Vec<String> {
    let range = row.range.as_ref().map(|range| {
        format!(
            "Measured as \"{}\" it would weigh {range}, nine times in ten.",
            row.written
        )
    });
    row.notes.iter().cloned().chain(range).collect()
}

/// The field of another weight.
fn another(bench: Bench, sheet: Memo<WeighInSheet>, open: RwSignal<Option<At>>, at: At) -> Element {
    let typed = RwSignal::new(String::new());
    let trouble = RwSignal::new(None::<String>);
    let before = move || match now(sheet, at) {
        Some(row) if !bench.weigh_in(|weigh_in| weigh_in.zeroed) => row.before,
        _ => 0.0,
    };
    let take = move || {
        let Some(row) = now(sheet, at) else { return };
        match grams_typed(&typed.get_untracked(), untrack(before)) {
            Ok(Some(grams)) => {
                bench.put_in(&row, grams);
                open.set(None);
                device::focus(button_id(at));
            }
            Ok(None) => trouble.set(Some("Type what the scale shows, in grams.".to_owned())),
            Err(sentence) => trouble.set(Some(sentence)),
        }
    };
    let label = move || match before() > 0.0 {
        true => "What the scale shows now, with all that is in the bowl, in grams",
        false => "How much of it went in, in grams",
    };
    element("form")
        .class("weight__form")
        .on("submit", move |event| {
            event.prevent_default();
            take();
        })
        .child(text_field(
            field_id(at),
            "decimal",
            move || label().to_owned(),
            move || typed.get(),
            move || trouble.get(),
            move |text| {
                typed.set(text);
                trouble.set(None);
            },
        ))
        .child(
            element("button")
                .class("button button--strong")
                .attribute("type", "submit")
                .text("That is in"),
        )
}

/// What the misses do to the cake; nothing where there are none.
pub fn misses(bench: Bench, sheet: Memo<WeighInSheet>) -> Element {
    let found = Memo::new(move |_| {
        let sheet = sheet.get();
        (!sheet.misses.is_empty()).then(|| bench.weighed_difference(&sheet))
    });
    element("div")
        .class("misses")
        .attribute("role", "status")
        .children_of(move || found.get().map_or_else(Vec::new, |found| effect(&found)))
}

/// How many lines of what changes are said.
const MOST: usize = 12;

fn effect(found: &Difference) -> Vec<Element> {
    let weights = found.ingredients.iter().map(|it| {
        let percent = it
            .after
            .as_ref()
            .and_then(|after| after.percent_shown.clone());
        let before = it
            .before
            .as_ref()
            .and_then(|before| before.percent_shown.clone());
        match (before, percent) {
            (Some(before), Some(after)) => {
                format!("{}: {after} of flour, planned {before}", it.name)
            }
            _ => format!("{}: {}", it.name, it.change_shown),
        }
    });
    // A change that is no larger than the spread is no news at the bench; the pH and the gas are looked for all the same.
    let is_news = |it: &&FigureChange| {
        let is_sure = matches!(it.call, Call::More | Call::Less);
        it.differs() && (is_sure || it.label.contains("pH") || it.label.contains("Gas"))
    };
    let figures = found.figures.iter().filter(is_news).map(|it| {
        format!(
            "{}: {}, planned {} ({})",
            it.label,
            it.after.shown,
            it.before.shown,
            it.words()
        )
    });
    let findings = found
        .findings_come
        .iter()
        .map(|it| format!("{}: {}", it.title, it.sentence));
    let gone = found
        .findings_gone
        .iter()
        .map(|it| format!("No longer so: {}", it.title));
    let lines: Vec<String> = findings.chain(gone).chain(weights).chain(figures).collect();
    let rest = lines.len().saturating_sub(MOST);
    let mut said = vec![
        element("h2")
            .class("part__title")
            .text("As it lies in the bowls"),
        paragraph(
            "hint",
            "What the weights that are off do to the cake, if they stay so:",
        ),
        element("ul").class("plain-list misses__list").children(
            lines
                .into_iter()
                .take(MOST)
                .map(|words| element("li").text(words)),
        ),
    ];
    if rest > 0 {
        said.push(paragraph("hint", format!("And {rest} smaller changes.")));
    }
    said
}
