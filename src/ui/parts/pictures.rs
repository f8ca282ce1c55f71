//! The pictures of a bake: added, told in words, removed.

use super::common::{button, paragraph, text_field};
use crate::baking::quantity::show;
use crate::baking::trial::{MOST_PICTURES, Picture};
use crate::ui::device;
use crate::ui::dom::{Element, element};
use crate::ui::pictures::{self, Sight};
use crate::ui::state::Bench;
use leptos::prelude::*;
use wasm_bindgen::JsValue;

const FIELD: &str = "trial-pictures";
const PUT_BACK: &str = "trial-picture-put-back";

/// A picture that was just taken off, and the place that it had.
type Removed = (usize, Picture);

/// What the pictures of one bake share.
#[derive(Clone, Copy)]
struct Pictures {
    bench: Bench,
    /// The trial.
    id: u64,
    /// How many are still being shrunk.
    coming: RwSignal<usize>,
    trouble: RwSignal<Option<String>>,
    removed: RwSignal<Option<Removed>>,
}

/// The pictures of the trial of that number, and a field that adds more.
pub fn pictures(bench: Bench, id: u64) -> Element {
    let all = Pictures {
        bench,
        id,
        coming: RwSignal::new(0),
        trouble: RwSignal::new(None),
        removed: RwSignal::new(None),
    };
    // Words that are typed below a picture are no reason to draw it again.
    let keys = Memo::new(move |_| {
        all.read(|list| list.iter().map(|it| it.key.clone()).collect::<Vec<_>>())
    });
    let rows = move || {
        let keys = keys.get().into_iter().enumerate();
        keys.map(|(at, key)| all.row(at, key)).collect()
    };
    element("div").class("pictures").children([
        element("ul")
            .class("pictures__list")
            .attribute("aria-label", "Pictures")
            .children_of(rows),
        element("div")
            .class("pictures__done")
            .attribute("role", "status")
            .children_of(move || all.said()),
        all.field(),
    ])
}

impl Pictures {
    fn read<R: Default>(self, read: impl FnOnce(&[Picture]) -> R) -> R {
        self.bench.trials(|all| {
            let kept = all.iter().find(|kept| kept.id == self.id);
            kept.map(|kept| read(&kept.trial.pictures))
                .unwrap_or_default()
        })
    }

    fn change(self, change: impl FnOnce(&mut Vec<Picture>)) {
        self.bench
            .change_trial(self.id, |trial| change(&mut trial.pictures));
    }

    fn row(self, at: usize, key: String) -> Element {
        let sight = pictures::sight(&key);
        let place = format!("Picture {} of this bake", at + 1);
        let words =
            move || self.read(|list| list.get(at).map(|it| it.words.clone()).unwrap_or_default());
        let alt = {
            let place = place.clone();
            move || match words().trim() {
                "" => place.clone(),
                words => words.to_owned(),
            }
        };
        let address = move || match sight.get() {
            Sight::At(address) => Some(address),
            _ => None,
        };
        let shown = element("img")
            .class("picture__shown")
            .attribute_of("src", address)
            .attribute_of("alt", move || Some(alt()))
            .hidden_while(move || address().is_none());
        let missing = paragraph(
            "hint",
            "This picture is not on this device. Its place in the list stays until you remove it.",
        )
        .hidden_while(move || sight.get() != Sight::Missing);
        let tell = text_field(
            format!("trial-picture-{at}"),
            "text",
            move || format!("What picture {} shows", at + 1),
            words,
            || None,
            move |typed| {
                self.change(|list| {
                    if let Some(picture) = list.get_mut(at) {
                        picture.words = typed;
                    }
                });
            },
        );
        let remove = button("button button--plain", "Remove", move || self.remove(at))
            .attribute("aria-label", format!("Remove {place}"));
        element("li")
            .class("picture")
            .children([shown, missing, tell, remove])
    }

    fn remove(self, at: usize) {
        let mut gone = None;
        self.change(|list| {
            if at < list.len() {
                gone = Some((at, list.remove(at)));
            }
        });
        self.trouble.set(None);
        self.removed.set(gone);
        device::focus(PUT_BACK);
    }

    fn put_back(self) {
        if let Some((at, picture)) = self.removed.try_update(Option::take).flatten() {
            self.change(|list| list.insert(at.min(list.len()), picture));
            device::focus(FIELD);
        }
    }

    /// What was done last, with its way back; or what is still to come.
    fn said(self) -> Vec<Element> {
        let coming = match self.coming.get() {
            0 => None,
            1 => Some("A picture is being shrunk.".to_owned()),
            many => Some(format!("{} pictures are being shrunk.", show::count(many))),
        };
        let mut said: Vec<Element> = coming
            .map(|words| paragraph("hint", words))
            .into_iter()
            .collect();
        if self.removed.with(Option::is_some) {
            said.push(paragraph("", "The picture is removed."));
            said.push(
                button("button", "Put it back", move || self.put_back()).attribute("id", PUT_BACK),
            );
        }
        said
    }

    fn field(self) -> Element {
        let hinted = format!("{FIELD}-hint");
        let said = format!("{FIELD}-trouble");
        let input = element("input")
            .class("input")
            .attribute("id", FIELD)
            .attribute("type", "file")
            .attribute("accept", "image/*")
            .attribute("multiple", "")
            .attribute("aria-describedby", format!("{hinted} {said}"))
            .on("change", move |event| self.add(device::chosen_files(event)));
        element("div").class("field no-print").children([
            element("label")
                .class("label")
                .attribute("for", FIELD)
                .text("Add pictures"),
            paragraph(
                "hint",
                "Kept on this device alone, shrunk to 40 kB at most. What a camera writes into a picture, such as the place, is left out.",
            )
            .attribute("id", hinted),
            input,
            paragraph("trouble", "")
                .attribute("id", said)
                .attribute("role", "alert")
                .text_of(move || self.trouble.get().unwrap_or_default()),
        ])
    }

    fn add(self, files: Vec<JsValue>) {
        self.trouble.set(None);
        self.removed.set(None);
        for file in files {
            self.coming.update(|many| *many += 1);
            pictures::take(&file, move |taken| {
                // The page may be left by then; the picture comes into the trial all the same.
                self.coming
                    .try_update(|many| *many = many.saturating_sub(1));
                if let Some(why) = self.came(taken) {
                    self.trouble.try_set(Some(why));
                }
            });
        }
    }

    /// Lists what was kept; a sentence where it is not listed.
    fn came(self, taken: Result<String, String>) -> Option<String> {
        let key = match taken {
            Ok(key) => key,
            Err(why) => return Some(why),
        };
        let mut why = None;
        self.change(|list| {
            if list.iter().any(|it| it.key == key) {
                why = Some("That picture is here already.".to_owned());
            } else if list.len() >= MOST_PICTURES {
                why = Some(format!(
                    "A bake has {MOST_PICTURES} pictures at most: remove one of them first."
                ));
            } else {
                list.push(Picture {
                    key,
                    words: String::new(),
                });
            }
        });
        why
    }
}
