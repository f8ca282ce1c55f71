//! Keeping what is open: written at once, never over what another window wrote unseen, and what is said about it.

use super::{Bench, Open};
use crate::baking::ingredient::own::OwnRecord;
use crate::baking::saved::{BinRecord, KeptRecipe, Moved, VersionOf};
use crate::baking::worksheet::Settings;
use crate::ui::storage::{self, Effort, NotKept, Standing, Written};
use crate::ui::{device, history::Step};
use leptos::prelude::*;

/// The step of the history that another window's work makes.
const ELSEWHERE: &str = "what another window changed";

/// Two windows have changed the same recipe, each without having seen the other's work. Both are kept: what stands in
/// this window has become a copy, which is open now.
#[derive(Clone, Debug, PartialEq)]
pub struct Clash {
    /// The name of the record that both were.
    pub id: String,
    /// When the other one was changed, in milliseconds since 1970.
    pub theirs: u64,
    /// When ours was.
    pub ours: u64,
    /// What ours was a version of before it became a copy.
    version: Option<VersionOf>,
}

/// What the browser says of keeping what is kept here.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Promise {
    /// Not asked yet.
    #[default]
    Unasked,
    /// It does not tell.
    Untold,
    /// It may clear it when the device runs short of space.
    NotGiven,
    /// As before, and it was asked for it.
    Refused,
    /// Only the person clears it.
    Given,
}

/// What is to be said about keeping, besides that something is not kept.
#[derive(Clone, Copy)]
pub struct Keeping {
    /// Another window has changed the open recipe too.
    pub clash: RwSignal<Option<Clash>>,
    /// The record of the open recipe was taken away, and what came of it.
    pub gone: RwSignal<Option<&'static str>>,
    /// Whether the reserve is being used up.
    pub reserve_used: RwSignal<bool>,
    /// What had to leave the bin for the open recipe.
    pub left_bin: RwSignal<Vec<BinRecord>>,
    /// How much room is left, where it is little.
    pub short: RwSignal<Option<String>>,
    /// What the browser says of keeping it.
    pub promise: RwSignal<Promise>,
}

impl Keeping {
    pub(super) fn new() -> Self {
        Self {
            clash: RwSignal::new(None),
            gone: RwSignal::new(None),
            reserve_used: RwSignal::new(false),
            left_bin: RwSignal::new(Vec::new()),
            short: RwSignal::new(None),
            promise: RwSignal::new(Promise::default()),
        }
    }

    /// Notes what it took to keep something.
    pub fn note(self, effort: Effort) {
        if effort.of_reserve {
            self.reserve_used.set(true);
        }
        if !effort.of_bin.is_empty() {
            self.left_bin.update(|left| left.extend(effort.of_bin));
        }
    }

    /// Holds the reserve, and says so where there is no room for it.
    pub fn hold_reserve(self) {
        let is_held = storage::hold_reserve();
        if is_held && self.reserve_used.get_untracked() {
            self.reserve_used.set(false);
        }
    }

    /// Learns whether the browser has promised to keep what is kept here, without asking it for that.
    pub fn learn_promise(self) {
        device::is_kept_firmly(move |given| self.hear(given, Promise::NotGiven));
    }

    /// Asks the browser for that promise.
    pub fn ask_promise(self) {
        device::keep_firmly(move |given| self.hear(given, Promise::Refused));
    }

    fn hear(self, given: Option<bool>, no: Promise) {
        let heard = match given {
            None => Promise::Untold,
            Some(true) => Promise::Given,
            Some(false) => no,
        };
        let before = self.promise.get_untracked();
        // That it was asked and refused is not forgotten over hearing that it is not given.
        if !(heard == Promise::NotGiven && before == Promise::Refused) {
            self.promise.set(heard);
        }
    }

    /// Looks how much room is left once the page stands still, and says so where it is little.
    fn look_at_room(self) {
        device::after_frame(move || {
            storage::hold_reserve();
            if let Ok(room) = storage::room()
                && room.is_short()
            {
                self.short.set(Some(room.sentence()));
            }
        });
    }
}

impl Bench {
    /// Keeps the open recipe as it is now.
    pub(super) fn keep(self) {
        let Open { id, own } = self.open.get_value();
        let kept = self.version.with_untracked(|version| {
            self.inputs
                .with_untracked(|inputs| storage::keep_recipe(&id, inputs, version.as_ref()))
        });
        let kept = match kept {
            Ok(Written { again, effort }) => {
                if again {
                    self.is_kept_again(&id);
                }
                Ok(effort)
            }
            Err(NotKept::Otherwise(theirs)) => self.part_ways(id.clone(), &theirs),
            Err(not_kept) => Err(not_kept.reason()),
        };
        let trouble = match kept {
            Ok(effort) => {
                self.keeping.note(effort);
                if !own {
                    self.is_new(&id);
                }
                None
            }
            Err(reason) => Some(reason),
        };
        if self.unkept.with_untracked(|before| *before != trouble) {
            self.unkept.set(trouble);
        }
    }

    /// The open recipe has become one of the baker's own.
    fn is_new(self, id: &str) {
        storage::set_last_open(id);
        self.open.update_value(|open| open.own = true);
        if storage::is_first(id) {
            self.keeping.ask_promise();
        }
        self.keeping.look_at_room();
    }

    /// The record was gone and stands there anew. Where all was cleared, so does the rest of what this window holds.
    fn is_kept_again(self, id: &str) {
        let said = if storage::is_in_bin(id) {
            "This recipe was removed in another window. It is kept again since it goes on here; what was removed rests in the bin."
        } else if storage::is_all_that_is_kept(id) {
            if self.settings_now() != Settings::default() {
                self.set(|_| {});
            }
            if !self.own_now(OwnRecord::is_empty) {
                self.change_own(|_| {});
            }
            self.keep_trials_again();
            "Everything that was kept here has been cleared, here or in another window. What stands in this window is kept \
             again: this recipe, your settings, your own ingredients, bakes that were looked at. Other recipes are gone."
        } else {
            "The record of this recipe was taken away, here or in another window. It is kept again since it goes on here."
        };
        self.keeping.gone.set(Some(said));
    }

    /// What stands in this window becomes a copy under a name of its own, beside what another window wrote.
    fn part_ways(self, id: String, theirs: &KeptRecipe) -> Result<Effort, String> {
        let before = self.version.get_untracked();
        let now = device::now();
        let made = format!("copy from {}", device::time_shown(now));
        let copy = match &before {
            None => VersionOf {
                name: format!("A {made}"),
                of: id.clone(),
                original: theirs.inputs.clone(),
            },
            Some(version) => VersionOf {
                name: format!("{}, {made}", version.called()),
                ..version.clone()
            },
        };
        let name = device::fresh_id();
        let written = self
            .inputs
            .with_untracked(|inputs| storage::write_recipe(&name, inputs, Some(&copy)));
        let effort = written.map_err(NotKept::reason)?;
        storage::set_last_open(&name);
        self.carry_weigh_in(&id, &name);
        self.open.set_value(Open {
            id: name,
            own: true,
        });
        self.version.set(Some(copy));
        self.keeping.clash.set(Some(Clash {
            id,
            theirs: theirs.changed,
            ours: now as u64,
            version: before,
        }));
        Ok(effort)
    }

    /// Of two that part ways, the one of this window stays; the other goes into the bin.
    pub fn stay_with_ours(self) {
        self.flush();
        let Some(clash) = self.keeping.clash.get_untracked() else {
            return;
        };
        let ours = self.inputs.get_untracked();
        let title = storage::peek(&clash.id).as_ref().map(super::title_of);
        let title = title.unwrap_or_default();
        let binned = storage::copy_recipe_into_bin(&clash.id, title).map_err(NotKept::from);
        let written = binned.and_then(|effort| {
            self.keeping.note(effort);
            storage::write_recipe(&clash.id, &ours, clash.version.as_ref())
        });
        match written {
            Ok(effort) => self.keeping.note(effort),
            Err(not_kept) => return self.say_aside(not_kept.reason()),
        }
        // What the copy held stands under its old name now.
        let _ = storage::forget_recipe(&self.open_id());
        let copy = self.open_id();
        self.carry_weigh_in(&copy, &clash.id);
        storage::set_last_open(&clash.id);
        self.open.set_value(Open {
            id: clash.id.clone(),
            own: true,
        });
        self.carry_trials(&copy, &clash.id);
        self.version.set(clash.version);
        self.keeping.clash.set(None);
    }

    /// Of two that part ways, the one of the other window stays; ours goes into the bin.
    pub fn stay_with_theirs(self) {
        self.flush();
        let Some(clash) = self.keeping.clash.get_untracked() else {
            return;
        };
        if storage::peek(&clash.id).is_none() {
            return self.say_aside("the other one is not there any more".into());
        }
        let title = self.inputs.with_untracked(super::title_of);
        match storage::remove_recipe(&self.open_id(), title) {
            Ok(removed) => {
                self.keeping
                    .note(removed.map(|(_, effort)| effort).unwrap_or_default());
                self.open_kept(&clash.id);
            }
            Err(refusal) => self.say_aside(refusal.to_string()),
        }
    }

    fn say_aside(self, reason: String) {
        let said = format!("Both stay as they are: {reason}.");
        self.aside.set(Some(said));
    }

    /// Follows what another window has done to a recipe's record, which it took for `before`.
    pub fn follow_other_window(self, id: &str, before: Option<&str>) {
        self.follow_other_version(id, before);
        if id != self.open_id() {
            return self.follow_original(id);
        }
        // What waits here is compared with what stands there as it is written.
        if self.waiting.with_value(Option::is_some) {
            return self.flush();
        }
        if let Standing::Changed(theirs, true) = storage::standing(id)
            && !storage::was_seen(&storage::key_of(id), before)
            && self.inputs.with_untracked(|ours| *ours != theirs.inputs)
        {
            // Ours was written over by a window that had not seen it.
            let parted = self.part_ways(id.to_owned(), &theirs);
            self.unkept.set(parted.err());
            return;
        }
        self.follow_record(id);
    }

    /// Catches up with other windows: a page that slept has not heard of what they did.
    pub fn catch_up(self) {
        self.flush();
        let id = self.open_id();
        let before = self.inputs.get_untracked();
        self.follow_record(&id);
        if self.inputs.with_untracked(|now| *now != before) {
            self.done.set(Some(ELSEWHERE.into()));
        }
        self.follow_other::<Settings>(self.settings);
        self.follow_other::<OwnRecord>(self.own);
        self.catch_up_kitchen();
        self.catch_up_trials();
    }

    fn follow_record(self, id: &str) {
        match storage::standing(id) {
            // It may have been gone for a moment.
            Standing::AsSeen => self.keeping.gone.set(None),
            Standing::Unreadable | Standing::Untold(_) => {}
            Standing::Gone => self.keeping.gone.set(Some(
                "The record of this recipe was taken away, here or in another window. It still stands in this window: change \
                 it, and it is kept again.",
            )),
            Standing::Changed(..) => self.adopt(id),
        }
    }

    /// Takes what another window wrote; what stood here can be taken back to.
    fn adopt(self, id: &str) {
        let Ok(Some(Ok(recipe))) = storage::load_recipe(id) else {
            return;
        };
        self.keeping.gone.set(None);
        if self.version.with_untracked(|ours| *ours != recipe.version) {
            self.version.set(recipe.version);
        }
        let before = self.inputs.get_untracked();
        if recipe.inputs != before {
            self.history.update(|history| {
                history.remember(Step {
                    what: ELSEWHERE.into(),
                    inputs: before,
                    typed: true,
                    taught: None,
                })
            });
            self.inputs.set(recipe.inputs);
            self.reckon();
            self.outside.update(|count| *count += 1);
        }
    }

    /// Follows what another window has kept of a record of which there is one. What was cleared stays as it is here.
    fn follow_other<R: storage::Single>(self, ours: RwSignal<R>) {
        if let Some(both) = ours.with_untracked(storage::changed_elsewhere)
            && ours.with_untracked(|ours| *ours != both)
        {
            ours.set(both);
        }
    }

    /// Follows what another window has kept of the settings.
    pub fn follow_other_settings(self) {
        self.follow_other(self.settings);
    }

    /// Follows what another window has kept of own ingredients and words.
    pub fn follow_other_larder(self) {
        self.follow_other(self.own);
    }

    /// Changes what holds for every recipe, and keeps it.
    pub fn set(self, change: impl FnOnce(&mut Settings)) {
        self.settings.update(change);
        match storage::keep(&self.settings.get_untracked()) {
            Ok((kept, _)) => {
                if self.settings.with_untracked(|now| *now != kept) {
                    self.settings.set(kept);
                }
                self.settings_unkept.set(None);
            }
            Err(reason) => self.settings_unkept.set(Some(reason)),
        }
    }

    /// Changes the baker's own ingredients and words, and keeps them; gives keys that moved for another window's work.
    pub fn change_own(self, change: impl FnOnce(&mut OwnRecord)) -> Moved {
        self.own.update(change);
        match self.own.with_untracked(storage::keep) {
            Ok((kept, moved)) => {
                if self.own.with_untracked(|now| *now != kept) {
                    self.own.set(kept);
                }
                self.own_unkept.set(None);
                // The form of an ingredient that got another number goes with it.
                let open = device::hash();
                if let Some((_, key)) = moved
                    .iter()
                    .find(|(from, _)| open == format!("#/larder/{from}"))
                {
                    device::go(&format!("#/larder/{key}"));
                }
                moved
            }
            Err(reason) => {
                self.own_unkept.set(Some(reason));
                Moved::new()
            }
        }
    }
}
