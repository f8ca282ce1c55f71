//! Everything taken out into one file, and a file brought in: looked at first, then written whole or not at all.

use crate::baking::carry::{
    self, Everything, Here, Preview, Row, Standing, Taken, WhenBoth, merge, preview,
};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::parts::{button, paragraph, radio, select, tick};
use crate::ui::pictures;
use crate::ui::state::Bench;
use crate::ui::storage::Brought;
use leptos::prelude::*;
use std::sync::Arc;

/// As many recipes as are listed one by one. The choice for all holds for the others.
const LISTED: usize = 200;
const MAIN: &str = "carry-said";

/// A file that was chosen, against what is kept here.
#[derive(Clone)]
struct Chosen {
    file: Arc<Everything>,
    here: Arc<Here>,
    preview: Arc<Preview>,
}

/// What the parts of the page share.
#[derive(Clone, Copy)]
struct Page {
    bench: Bench,
    /// The file that is looked at.
    chosen: RwSignal<Option<Chosen>>,
    /// What is taken of it.
    taken: RwSignal<Taken>,
    /// Why something could not be done.
    trouble: RwSignal<Option<String>>,
    /// What was done.
    said: RwSignal<String>,
    /// The way back.
    brought: RwSignal<Option<Brought>>,
    /// Whether pictures are taken out too.
    with_pictures: RwSignal<bool>,
}

/// The page.
pub fn carry(bench: Bench) -> Element {
    document().set_title("Out and in · Batterwright");
    let page = Page {
        bench,
        chosen: RwSignal::new(None),
        taken: RwSignal::new(Taken::default()),
        trouble: RwSignal::new(None),
        said: RwSignal::new(String::new()),
        brought: RwSignal::new(None),
        with_pictures: RwSignal::new(false),
    };
    let trouble = move || {
        let said = page.trouble.get();
        said.map(|said| paragraph("trouble", said))
            .into_iter()
            .collect()
    };
    let field = element("input")
        .class("input")
        .attribute("id", "carry-file")
        .attribute("type", "file")
        .attribute("accept", ".json,application/json")
        .on("change", move |event| {
            device::read_file(event, move |text| page.look_at(text));
        });
    let field = element("div")
        .class("field")
        .child(
            element("label")
                .class("label")
                .attribute("for", "carry-file")
                .text("File that was taken out here or on another device"),
        )
        .child(field);
    let undo = button("button", "Take it out again", move || page.undo())
        .hidden_while(move || page.brought.with(Option::is_none));
    element("div").class("sheet").children([
        element("h1").class("sheet__title").text("Out and in"),
        element("p").child(element("a").attribute("href", "#/shelf").text("Back to the shelf")),
        element("div").attribute("role", "alert").children_of(trouble),
        head("Take everything out"),
        paragraph("", "One file with all recipes, bakes that were written down, settings, own ingredients and taught words. It is plain JSON that a person can read. What rests in the bin is not in it."),
        tick(
            "With the pictures of bakes",
            move || page.with_pictures.get(),
            move || page.with_pictures.update(|with| *with = !*with),
        ),
        button("button button--strong", "Take everything out", move || page.take_out()),
        head("Bring a file in"),
        paragraph("", "You see first what it holds. Nothing here is written over unless you choose the newer, and what that takes the place of goes to the bin."),
        field,
        element("div").class("carry").children_of(move || {
            page.chosen.get().map(|chosen| looked_at(page, chosen)).unwrap_or_default()
        }),
        paragraph("", "")
            .attribute("id", MAIN)
            .attribute("tabindex", "-1")
            .attribute("role", "status")
            .text_of(move || page.said.get()),
        undo,
    ])
}

fn head(words: &'static str) -> Element {
    element("h2").class("part__title").text(words)
}

impl Page {
    fn say(self, words: String) {
        self.trouble.set(None);
        self.said.set(words);
    }

    fn refuse(self, words: String) {
        self.said.set(String::new());
        self.trouble.set(Some(words));
    }

    fn take_out(self) {
        match self.bench.everything() {
            Err(refusal) => self.refuse(format!("Nothing was taken out: {refusal}.")),
            Ok((all, unread)) if self.with_pictures.get_untracked() => {
                pictures::pack(&all.picture_keys(), {
                    let mut all = all.clone();
                    move |packed| {
                        let left_out = all.add_pictures(packed).unwrap_or_default();
                        self.hand_out(&all, unread, left_out);
                    }
                });
            }
            Ok((all, unread)) => self.hand_out(&all, unread, all.picture_keys().len()),
        }
    }

    /// Hands the file out, and says what is in it and what is not.
    fn hand_out(self, all: &Everything, unread: usize, left_out: usize) {
        let text = match carry::write(all) {
            Ok(text) => text,
            Err(reason) => return self.refuse(format!("Nothing was taken out: {reason}")),
        };
        let day = all.taken_out.get(..10).unwrap_or_default();
        device::download(&format!("batterwright-{day}.json"), &text);
        let unread = match unread {
            0 => String::new(),
            1 => " 1 record that cannot be read is not in it: the shelf shows it.".into(),
            many => {
                format!(" {many} records that cannot be read are not in it: the shelf shows them.")
            }
        };
        let pictures = match (left_out, self.with_pictures.get_untracked()) {
            (0, _) => String::new(),
            (1, false) => " 1 picture is not in it.".into(),
            (many, false) => format!(" {many} pictures are not in it."),
            (1, true) => {
                " 1 picture is not in it: it is not on this device, or has no room in the file."
                    .into()
            }
            (many, true) => format!(
                " {many} pictures are not in it: they are not on this device, or have no room in the file."
            ),
        };
        self.say(format!("Taken out: {}.{unread}{pictures}", all.sentence()));
    }

    /// Keeps the pictures of a file that came in, and says how many are new.
    fn bring_pictures(self, file: &Everything) {
        if file.pictures.is_empty() {
            return;
        }
        pictures::unpack(&file.pictures, move |came| {
            let said = match came {
                Ok(0) => " Its pictures were here already.".to_owned(),
                Ok(1) => " 1 picture came in.".to_owned(),
                Ok(many) => format!(" {many} pictures came in."),
                Err(why) => format!(" Its pictures did not come in. {why}"),
            };
            // The page may be left by then.
            self.said.try_update(|before| before.push_str(&said));
        });
    }

    /// Looks at a file that was chosen; nothing is written.
    fn look_at(self, text: Result<String, &'static str>) {
        self.chosen.set(None);
        self.brought.set(None);
        let read = text
            .map_err(str::to_owned)
            .and_then(|text| carry::read(&text))
            .and_then(|file| {
                let here = self.bench.here();
                here.map(|here| (file, here)).map_err(|refusal| {
                    format!("It cannot be held against what is kept here: {refusal}.")
                })
            });
        match read {
            Err(reason) => self.refuse(format!("{reason} Nothing was changed.")),
            Ok((file, here)) => {
                self.say(String::new());
                self.taken.set(Taken {
                    larder: true,
                    ..Taken::default()
                });
                self.chosen.set(Some(Chosen {
                    preview: Arc::new(preview(&file, &here)),
                    file: Arc::new(file),
                    here: Arc::new(here),
                }));
                device::show("carry-file-title".into(), true);
            }
        }
    }

    fn bring_in(self, file: &Everything) {
        match self.bench.bring_in(file, &self.taken.get_untracked()) {
            Ok((said, brought)) => {
                self.chosen.set(None);
                self.say(format!("Done. {said}"));
                self.brought.set(Some(brought));
                self.bring_pictures(file);
                device::focus(MAIN);
            }
            Err(reason) => self.refuse(format!(
                "Nothing was brought in: {reason}. All stands as it stood."
            )),
        }
    }

    fn undo(self) {
        let Some(brought) = self.brought.get_untracked() else {
            return;
        };
        match self.bench.undo_bringing(&brought) {
            Ok(stays) => {
                self.brought.set(None);
                let stays = match stays {
                    0 => String::new(),
                    1 => " 1 record was changed since, and stays.".into(),
                    many => format!(" {many} records were changed since, and stay."),
                };
                self.say(format!(
                    "All stands as it stood before the file came in.{stays}"
                ));
                device::focus(MAIN);
            }
            Err(refusal) => self.refuse(format!("It could not be taken out again: {refusal}.")),
        }
    }
}

/// What a file holds, what there is to choose, and what would be written.
fn looked_at(page: Page, chosen: Chosen) -> Vec<Element> {
    let Chosen {
        file,
        here,
        preview,
    } = chosen;
    let taken_out = match file.taken_out.as_str() {
        "" => String::new(),
        moment => format!("Taken out {}. ", moment.get(..10).unwrap_or(moment)),
    };
    let holds = format!("{taken_out}It holds {}.", file.sentence());
    let would = {
        let file = file.clone();
        move || {
            page.taken
                .with(|taken| merge(&file, &here, taken, || "new".to_owned()))
        }
    };
    let would = Memo::new(move |_| would());
    let has_pictures = !file.pictures.is_empty();
    let touch = button("button button--strong", "Bring it in", move || {
        page.bring_in(&file)
    })
    .hidden_while(move || !has_pictures && would.with(carry::Writes::is_empty));
    let leave = button("button button--plain", "Leave it", move || {
        page.chosen.set(None);
        page.say("Nothing was brought in.".into());
        device::focus(MAIN);
    });
    let mut parts = vec![
        element("h3")
            .class("part__title")
            .attribute("id", "carry-file-title")
            .attribute("tabindex", "-1")
            .text("What the file holds"),
        paragraph("", holds),
    ];
    parts.extend(for_all(page, &preview));
    parts.extend(settings(page, &preview));
    parts.extend(larder(page, &preview));
    parts.extend(list(page, &preview));
    parts.push(
        paragraph("carry__would", "")
            .attribute("role", "status")
            .text_of(move || would.with(carry::Writes::sentence)),
    );
    parts.push(
        element("div")
            .class("share__buttons")
            .child(touch)
            .child(leave),
    );
    parts
}

fn choice(legend: &'static str, options: impl IntoIterator<Item = Element>) -> Element {
    element("fieldset")
        .class("choice")
        .child(element("legend").class("choice__legend").text(legend))
        .children(options)
}

/// What happens to recipes and bakes that are here too; `None` where there is none.
fn for_all(page: Page, preview: &Preview) -> Option<Element> {
    let is_any = preview
        .rows
        .iter()
        .any(|row| row.standing.is_double() || row.standing == Standing::InBin)
        || preview.double_trials > 0;
    let options = WhenBoth::ALL.map(|when| {
        radio(
            "carry-all",
            when.words(),
            move || page.taken.with(|taken| taken.all == when),
            move || page.taken.update(|taken| taken.all = when),
        )
    });
    is_any.then(|| {
        choice(
            "What is here too and differs, or is in the bin here",
            options,
        )
    })
}

fn settings(page: Page, preview: &Preview) -> Option<Element> {
    let options =
        [(false, "Keep the settings here"), (true, "Take the file's")].map(|(theirs, words)| {
            radio(
                "carry-settings",
                words,
                move || page.taken.with(|taken| taken.settings == theirs),
                move || page.taken.update(|taken| taken.settings = theirs),
            )
        });
    (preview.settings_differ == Some(true)).then(|| choice("Settings, which differ", options))
}

fn larder(page: Page, preview: &Preview) -> Option<Element> {
    let came = preview
        .larder
        .filter(|came| came.entries + came.words > 0)?;
    let options = [
        (
            true,
            format!("Take them in: {}", carry::larder_words(&came)),
        ),
        (false, "Leave them, but for what a recipe names".to_owned()),
    ]
    .map(|(take, words)| {
        radio(
            "carry-larder",
            words,
            move || page.taken.with(|taken| taken.larder == take),
            move || page.taken.update(|taken| taken.larder = take),
        )
    });
    Some(choice("Own ingredients and taught words", options))
}

/// The recipes that are not here already, each with a choice of its own.
fn list(page: Page, preview: &Preview) -> Option<Element> {
    let mut rows: Vec<&Row> = preview
        .rows
        .iter()
        .filter(|row| row.standing != Standing::Same)
        .collect();
    if rows.is_empty() {
        return None;
    }
    // First what there is to decide.
    rows.sort_by_key(|row| !row.standing.is_double());
    let more = rows.len().saturating_sub(LISTED);
    let items = rows
        .into_iter()
        .take(LISTED)
        .enumerate()
        .map(|(at, row)| item(page, at, row));
    let list = element("ul").class("shelf").children(items);
    let rest = match more {
        0 => None,
        more => Some(paragraph(
            "hint",
            format!("And {more} more, for which the choice for all holds."),
        )),
    };
    Some(element("div").child(list).children(rest))
}

fn item(page: Page, at: usize, row: &Row) -> Element {
    let changed = |moment: u64| device::date_shown(moment as f64);
    let bakes = match row.bakes {
        0 => String::new(),
        1 => ". With 1 bake".to_owned(),
        many => format!(". With {many} bakes"),
    };
    let beside = match row.here {
        Some(here) => format!(
            "{}. The file's: {}; here: {}{bakes}",
            row.standing.words(),
            changed(row.changed),
            changed(here)
        ),
        None => format!(
            "{}. Changed {}{bakes}",
            row.standing.words(),
            changed(row.changed)
        ),
    };
    // What only comes or not has no newer one.
    let ways: &'static [(&'static str, Option<WhenBoth>)] = match row.standing.is_double() {
        true => &[
            ("As chosen for all", None),
            ("Keep both", Some(WhenBoth::KeepBoth)),
            ("Keep the newer", Some(WhenBoth::Newer)),
            ("Skip the file's", Some(WhenBoth::Skip)),
        ],
        false if row.standing == Standing::InBin => &[
            ("As chosen for all", None),
            ("Bring it in", Some(WhenBoth::KeepBoth)),
            ("Skip it", Some(WhenBoth::Skip)),
        ],
        false => &[("Bring it in", None), ("Skip it", Some(WhenBoth::Skip))],
    };
    let id = row.id.clone();
    let now = move || {
        page.taken.with(|taken| {
            let single = taken.single.get(&id).copied();
            ways.iter().position(|(_, way)| *way == single).unwrap_or(0)
        })
    };
    let id = row.id.clone();
    let choose = move |chosen: usize| {
        let way = ways.get(chosen).and_then(|(_, way)| *way);
        page.taken.update(|taken| match way {
            None => drop(taken.single.remove(&id)),
            Some(way) => drop(taken.single.insert(id.clone(), way)),
        });
    };
    let words = ways.iter().map(|(words, _)| *words).collect();
    let field = format!("carry-{at}");
    let title = element("p")
        .class("shelf__words")
        .child(
            element("span")
                .class("shelf__title shelf__title--words")
                .attribute("dir", "auto")
                .text(row.title.clone()),
        )
        .child(element("span").class("shelf__beside").text(beside));
    let group = element("div")
        .class("shelf__item carry__item")
        .attribute("role", "group")
        .attribute("aria-label", row.title.clone())
        .child(title)
        .child(select(field, "What happens to it", words, now, choose));
    element("li").child(group)
}
