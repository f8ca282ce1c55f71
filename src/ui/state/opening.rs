//! Opening recipes: kept ones, demos, a blank one, and the one that was open last.

use super::{Bench, Open};
use crate::baking::demo::DEMOS;
use crate::baking::saved::VersionOf;
use crate::baking::worksheet::Inputs;
use crate::ui::device;
use crate::ui::history::History;
use crate::ui::storage::{self, Refusal};
use leptos::prelude::*;

impl Bench {
    /// Opens a kept recipe. One that cannot be read stays where it is.
    pub fn open_kept(self, id: &str) {
        match storage::load_recipe(id) {
            Ok(Some(Ok(recipe))) => {
                self.show(id.to_owned(), true, recipe.inputs, recipe.version);
                storage::set_last_open(id);
            }
            Ok(Some(Err(trouble))) => {
                self.aside.set(Some(format!("A recipe that was kept here was set aside. {trouble} It is untouched: find it on the shelf.")));
            }
            Ok(None) => {}
            Err(refusal) => self.say_unread(refusal),
        }
    }

    fn say_unread(self, refusal: Refusal) {
        let said = format!(
            "What is kept on this device cannot be reached: {refusal}. It is left as it is; load the page again to try once more."
        );
        self.aside.set(Some(said));
    }

    /// Opens a demo; it becomes a recipe of the baker's own with the first change.
    pub fn open_demo(self, key: &str) {
        if let Some(demo) = DEMOS.iter().find(|demo| demo.key == key) {
            self.show(device::fresh_id(), false, Inputs::of_text(demo.text), None);
            storage::set_last_open(&format!("demo:{key}"));
        }
    }

    /// Opens a blank recipe.
    pub fn open_blank(self) {
        self.show(device::fresh_id(), false, Inputs::default(), None);
        self.editing.set(true);
    }

    pub(super) fn open_last(self) {
        let last = storage::last_open().unwrap_or_else(|refusal| {
            // A browser that keeps nothing is said when there is something to keep.
            if refusal == Refusal::Unread {
                self.say_unread(refusal);
            }
            None
        });
        let last = last.unwrap_or_default();
        match last.strip_prefix("demo:") {
            Some(demo) => self.open_demo(demo),
            None => self.open_kept(&last),
        }
        if self.inputs.with_untracked(|inputs| inputs.text.is_empty())
            && !self.open.with_value(|open| open.own)
        {
            let shelf = storage::shelf().unwrap_or_default();
            match shelf.recipes.first() {
                Some(kept) => self.open_kept(&kept.id),
                None => self.open_demo(DEMOS.first().map_or("", |demo| demo.key)),
            }
        }
    }

    pub(super) fn show(self, id: String, own: bool, inputs: Inputs, version: Option<VersionOf>) {
        self.flush();
        // What could not be kept has no other place than this page, so the way back to it stays open.
        let lost = self.unkept.with_untracked(Option::is_some)
            && self
                .inputs
                .with_untracked(|inputs| !inputs.text.trim().is_empty());
        let before = self.inputs.get_untracked();
        self.open.set_value(Open { id, own });
        self.version.set(version);
        self.settle_came();
        self.unkept.set(None);
        self.keeping.clash.set(None);
        self.keeping.gone.set(None);
        if lost {
            let what = "another recipe was opened; the one before could not be kept";
            self.remember(what.into(), before, false, None);
            self.done.set(Some(what.into()));
        } else {
            self.history.set(History::default());
            self.done.set(None);
        }
        self.row.set(None);
        self.instead.set(None);
        // What was chosen is shown with what comes of it.
        self.instead_open.set(inputs.choices.swaps.is_any());
        self.editing.set(inputs.text.trim().is_empty());
        self.inputs.set(inputs);
        self.reckon();
        self.outside.update(|count| *count += 1);
    }
}
