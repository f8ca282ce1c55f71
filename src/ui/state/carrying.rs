//! Recipes that leave the page, and those that come by an address.

use super::Bench;
use crate::baking::carry::link::{self, Link};
use crate::baking::carry::{
    Carried, CarriedTrial, Everything, Here, Shared, Taken, as_text, linked_data, merge, shared,
};
use crate::baking::worksheet::Inputs;
use crate::ui::device;
use crate::ui::storage::{self, Brought, Refusal};
use leptos::prelude::*;

/// What came by an address, as the page says it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Came {
    /// The open recipe came by a link, and is not kept yet.
    Unkept,
    /// Nothing was opened; the sentence says why.
    Refused(String),
}

impl Bench {
    /// The open recipe as a link's end.
    pub fn link(self) -> Result<Link, String> {
        self.inputs_now(link::write)
    }

    /// The open recipe as text with its weights.
    pub fn as_text(self) -> String {
        let own = self.larder.get_untracked();
        self.inputs_now(|inputs| as_text(inputs, &self.settings_now(), &own))
    }

    /// The open recipe as linked data.
    pub fn as_linked_data(self) -> String {
        let own = self.larder.get_untracked();
        self.inputs_now(|inputs| linked_data(inputs, &self.settings_now(), &own))
    }

    /// Everything that is kept, and how many records cannot be read and are not in it.
    pub fn everything(self) -> Result<(Everything, usize), Refusal> {
        self.flush();
        let all = storage::all_recipes()?;
        let many = all.len();
        let recipes: Vec<Carried> = all
            .into_iter()
            .filter_map(|(id, recipe)| recipe.map(|recipe| Carried { id, recipe }))
            .collect();
        // What rests in the bin is not in it, and its bakes neither.
        let binned = storage::binned()?;
        let rests = |recipe: &str| {
            binned.iter().any(|id| id == recipe) && !recipes.iter().any(|it| it.id == recipe)
        };
        let mut unread = many - recipes.len();
        let mut trials = Vec::new();
        for (recipe, id, trial) in storage::all_trials()? {
            match trial {
                None => unread += 1,
                Some(_) if rests(&recipe) => {}
                Some(trial) => trials.push(CarriedTrial { recipe, id, trial }),
            }
        }
        let everything = Everything {
            taken_out: device::moment(),
            recipes,
            settings: Some(self.settings_now()),
            larder: Some(self.own.get_untracked()),
            trials,
            ..Everything::default()
        };
        Ok((everything, unread))
    }

    /// What a file is held against.
    pub fn here(self) -> Result<Here, Refusal> {
        self.flush();
        Ok(Here {
            recipes: storage::all_recipes()?,
            bin: storage::binned()?,
            trials: storage::all_trials()?,
            settings: self.settings_now(),
            larder: self.own.get_untracked(),
        })
    }

    /// Brings in what is taken of a file, whole or not at all; what came, in words, and the way back.
    pub fn bring_in(self, file: &Everything, taken: &Taken) -> Result<(String, Brought), String> {
        // As things are now: another window may have kept something since the file was looked at.
        let here = self.here().map_err(|refusal| refusal.to_string())?;
        let writes = merge(file, &here, taken, device::fresh_id);
        let brought = storage::bring_in(&writes)?;
        self.catch_up();
        Ok((writes.sentence_after(), brought))
    }

    /// Takes out again what was brought in; how much stays since it was changed.
    pub fn undo_bringing(self, brought: &Brought) -> Result<usize, Refusal> {
        self.flush();
        let stays = storage::undo_bringing(brought)?;
        self.catch_up();
        Ok(stays)
    }

    /// Opens the recipe that the address holds, as one that is not kept, and takes it out of the address.
    pub fn open_given(self) {
        let hash = device::hash();
        let given = hash.strip_prefix(link::FRAGMENT).unwrap_or_default();
        self.open_came(link::read(given));
        device::tidy_address("#/");
    }

    /// Takes what another program shared out of the address and into the reader.
    pub fn open_shared(self) {
        let [title, text, url] = device::query(["title", "text", "url"]);
        let Some(shared) = shared(&title, &text, &url) else {
            return;
        };
        match shared {
            Ok(Shared::Text(text)) => {
                self.open_blank();
                // Kept right away: there is no way back to it in the program that it is from.
                self.open_text("the program that shared it", text);
            }
            Ok(Shared::Recipe(inputs)) => self.open_came(Ok(*inputs)),
            Err(reason) => self.came.set(Some(Came::Refused(reason))),
        }
        device::tidy_address("#/");
    }

    /// Keeps the open recipe that came by a link.
    pub fn keep_given(self) {
        self.take(self.inputs.get_untracked());
        self.flush();
    }

    fn open_came(self, inputs: Result<Inputs, String>) {
        match inputs {
            Ok(inputs) => {
                self.show(device::fresh_id(), false, inputs, None);
                self.came.set(Some(Came::Unkept));
            }
            Err(reason) => self.came.set(Some(Came::Refused(reason))),
        }
    }

    /// Nothing is to be said of what came any more: it is kept, or another is open.
    pub(super) fn settle_came(self) {
        if self.came.with_untracked(Option::is_some) {
            self.came.set(None);
        }
    }
}
