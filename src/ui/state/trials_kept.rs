//! Keeping trials: written at once, never over what another window wrote unseen, and what is said about it.

use super::Bench;
use super::weighing::take;
use crate::baking::quantity::show;
use crate::baking::trial::VersionNode;
use crate::ui::device;
use crate::ui::storage::{self, KeptTrial, NotKept, Refusal, Resting, Standing, Trials, Written};
use leptos::prelude::*;
use std::collections::BTreeSet;
use std::time::Duration;

const PARTED: &str = "Two windows have changed this bake, each without having seen the other's work. Both are kept: what \
    stands in this window has become a copy, which is open now.";
const GONE: &str = "The record of a bake was taken away, here or in another window. It still stands in this window: \
    change it, and it is kept again.";
const AGAIN: &str = "The record of this bake was taken away, here or in another window. It is kept again since it goes on here.";

/// How trials are kept.
#[derive(Clone, Copy)]
pub struct TrialsKept {
    /// Those that this window alone holds, of whatever recipe: they could not be kept, or were taken away.
    pub held: StoredValue<Vec<KeptTrial>>,
    /// The one that was just removed, and where it rests; nowhere, if it was only held.
    removed: RwSignal<Option<(KeptTrial, Option<Resting>)>>,
    /// Why what is written is not being kept, if it is not.
    unkept: RwSignal<Option<String>>,
    /// Why they cannot be read, if they cannot.
    unread: RwSignal<Option<String>>,
    /// How many records cannot be read.
    unreadable: RwSignal<usize>,
    /// What came of another window's work.
    said: RwSignal<Option<String>>,
    /// The keys of those that another window has changed and that are to be read.
    changed: StoredValue<BTreeSet<String>>,
    /// Whether that is on its way.
    is_reading: StoredValue<bool>,
}

/// A window that brings hundreds of bakes in is followed in few steps.
const GATHERED: Duration = Duration::from_millis(30);

impl TrialsKept {
    /// Nothing is said yet.
    pub fn start() -> Self {
        Self {
            held: StoredValue::new(Vec::new()),
            removed: RwSignal::new(None),
            unkept: RwSignal::new(None),
            unread: RwSignal::new(None),
            unreadable: RwSignal::new(0),
            said: RwSignal::new(None),
            changed: StoredValue::new(BTreeSet::new()),
            is_reading: StoredValue::new(false),
        }
    }
}

impl Bench {
    /// Takes what was found of trials in the place of what this window had.
    pub(super) fn take_found(self, found: Trials) {
        let kept = self.notebook.kept;
        kept.changed.set_value(BTreeSet::new());
        if !found.gone.is_empty() {
            let is_gone = |it: &&KeptTrial| found.gone.contains(&it.id);
            let gone = found.all.iter().filter(is_gone).cloned();
            kept.held.update_value(|held| held.extend(gone));
            kept.said.set(Some(GONE.into()));
        }
        take(kept.unread, None);
        take(kept.unreadable, found.unreadable);
        take(self.notebook.all, found.all);
    }

    /// Says that the store does not tell what is kept. What this window has stays.
    pub(super) fn say_unread_trials(self, refusal: Refusal) {
        take(self.notebook.kept.unread, Some(refusal.to_string()));
    }

    /// What is to be said of how trials are kept, in sentences, followed.
    pub fn trials_said(self) -> Vec<String> {
        let kept = self.notebook.kept;
        let unkept = kept.unkept.get().map(|why| {
            format!(
                "What you write down is not being kept: {why}. It holds while this page is open."
            )
        });
        let unread = kept.unread.get().map(|why| {
            format!("The bakes that are kept cannot be listed: {why}. They are left as they are.")
        });
        let unreadable = match kept.unreadable.get() {
            0 => None,
            1 => Some(
                "The record of one bake cannot be read. It is untouched: find it on the shelf."
                    .into(),
            ),
            many => Some(format!(
                "The records of {} bakes cannot be read. They are untouched: find them on the shelf.",
                show::count(many)
            )),
        };
        [unkept, unread, unreadable].into_iter().flatten().collect()
    }

    /// What came of another window's work, in a sentence, followed.
    pub fn trials_news(self) -> Option<String> {
        self.notebook.kept.said.get()
    }

    /// That was read.
    pub fn close_trials_news(self) {
        self.notebook.kept.said.set(None);
    }

    /// Keeps a trial as it is now; with it goes what this window alone holds.
    pub(super) fn keep_trial(self, trial: &KeptTrial) {
        if self.try_keep_trial(trial) {
            self.keep_held_trials();
        }
    }

    fn keep_held_trials(self) {
        for trial in self.notebook.kept.held.get_value() {
            self.try_keep_trial(&trial);
        }
    }

    fn try_keep_trial(self, trial: &KeptTrial) -> bool {
        let kept = self.notebook.kept;
        match storage::keep_trial(trial) {
            Ok(Written { again, effort }) => {
                self.keeping.note(effort);
                self.hold_no_more(trial.id);
                if again {
                    kept.said.set(Some(AGAIN.into()));
                }
                true
            }
            Err(NotKept::Otherwise(_)) => {
                self.part_trials(trial);
                false
            }
            Err(why) => {
                self.hold_trial(trial, why.reason());
                false
            }
        }
    }

    fn hold_trial(self, trial: &KeptTrial, why: String) {
        self.notebook.kept.held.update_value(|held| {
            held.retain(|it| it.id != trial.id);
            held.push(trial.clone());
        });
        take(self.notebook.kept.unkept, Some(why));
    }

    fn hold_no_more(self, id: u64) {
        let kept = self.notebook.kept;
        kept.held.update_value(|held| held.retain(|it| it.id != id));
        if kept.held.with_value(Vec::is_empty) {
            take(kept.unkept, None);
        }
    }

    /// What stands in this window becomes a copy under a number of its own, beside what another window wrote.
    fn part_trials(self, ours: &KeptTrial) {
        let mut copy = ours.clone();
        copy.id = storage::fresh_number();
        copy.trial.name = format!(
            "{}, copy from {}",
            ours.called(),
            device::time_shown(device::now())
        );
        self.hold_no_more(ours.id);
        self.try_keep_trial(&copy);
        let (from, to) = (ours.id, copy.id);
        self.notebook.all.update(|all| all.push(copy));
        // Theirs takes its place.
        self.take_up_trials();
        self.notebook.kept.said.set(Some(PARTED.into()));
        if device::hash() == format!("#/trials/{from}") {
            device::go(&format!("#/trials/{to}"));
        }
    }

    /// Follows what another window has done to a trial's record, which it took for `before`.
    pub fn follow_other_trial(self, recipe: &str, id: u64, before: Option<&str>) {
        // Of a version that another window has made nothing is known here before it is looked for.
        if !self.is_of_family(recipe) && (before.is_some() || !self.is_looked_at()) {
            return;
        }
        let key = storage::key_of_trial(recipe, id);
        let changed = self.notebook.kept.changed;
        // Since the first of several changes, nothing was written under that key here: it would not have been let.
        if !changed.with_value(|changed| changed.contains(&key)) {
            let ours = self.trials_now(|all| all.iter().find(|kept| kept.id == id).cloned());
            if let Some(ours) = ours
                && let Standing::Changed(theirs, true) = storage::standing_of_trial(&key)
                && ours.key() == key
                && !storage::was_seen(&key, before)
                && ours.trial != *theirs
            {
                // Ours was written over by a window that had not seen it.
                return self.part_trials(&ours);
            }
        }
        self.read_soon(key);
    }

    /// Follows what another window has done to a recipe's record, as far as the tree of versions shows it.
    pub fn follow_other_version(self, id: &str, before: Option<&str>) {
        let is_shown = device::hash().starts_with("#/trials") && self.is_looked_at();
        if is_shown && (before.is_none() || self.is_of_family(id)) {
            self.read_soon(storage::key_of(id));
        }
    }

    /// Has all trials read in a moment, since what stands under a key has changed.
    fn read_soon(self, key: String) {
        let TrialsKept {
            changed,
            is_reading,
            ..
        } = self.notebook.kept;
        changed.update_value(|changed| {
            changed.insert(key);
        });
        if is_reading.get_value() {
            return;
        }
        is_reading.set_value(true);
        let read = move || {
            is_reading.set_value(false);
            if !changed.with_value(BTreeSet::is_empty) {
                self.take_up_trials();
            }
        };
        set_timeout(read, GATHERED);
    }

    fn is_of_family(self, recipe: &str) -> bool {
        let is_it = |it: &VersionNode| it.id == recipe;
        let family = self.notebook.family;
        family.with_untracked(|family| family.iter().any(is_it))
    }

    /// Whether the trials of the open recipe were looked at.
    fn is_looked_at(self) -> bool {
        self.is_of_family(&self.open_id())
    }

    /// Catches up with other windows where trials are looked at.
    pub(super) fn catch_up_trials(self) {
        if self.is_looked_at() {
            self.take_up_trials();
        }
    }

    /// All was cleared: what this window has of trials is kept again.
    pub(super) fn keep_trials_again(self) {
        self.catch_up_trials();
        self.keep_held_trials();
    }

    /// The open recipe goes on under another name: bakes that were written down under this one go with it.
    pub(super) fn carry_trials(self, from: &str, to: &str) {
        // Where that is refused they stay, and the shelf tells of bakes without a recipe.
        let _ = storage::move_trials(from, to);
        self.notebook.kept.held.update_value(|held| {
            for trial in held.iter_mut().filter(|it| it.recipe == from) {
                trial.recipe = to.to_owned();
            }
        });
        self.catch_up_trials();
    }

    /// Puts a trial into the bin; it can be put back.
    pub fn remove_trial(self, id: u64) {
        let Some(trial) = self.trials_now(|all| all.iter().find(|kept| kept.id == id).cloned())
        else {
            return;
        };
        let kept = self.notebook.kept;
        let resting = match storage::remove_trial(&trial) {
            Ok(removed) => removed.map(|(resting, effort)| {
                self.keeping.note(effort);
                resting
            }),
            Err(refusal) => {
                let said = format!("The bake stays where it is: {refusal}.");
                return kept.said.set(Some(said));
            }
        };
        self.hold_no_more(id);
        kept.said.set(None);
        self.notebook
            .all
            .update(|all| all.retain(|kept| kept.id != id));
        kept.removed.set(Some((trial, resting)));
    }

    /// What the trial is called that was just removed, followed.
    pub fn removed_trial(self) -> Option<String> {
        let removed = self.notebook.kept.removed;
        removed.with(|removed| removed.as_ref().map(|(trial, _)| trial.called()))
    }

    /// Puts it back.
    pub fn put_trial_back(self) {
        let kept = self.notebook.kept;
        match kept.removed.try_update(Option::take).flatten() {
            Some((trial, Some(resting))) => match storage::put_back(&resting) {
                Ok(_) => self.take_up_trials(),
                Err(refusal) => {
                    kept.said
                        .set(Some(format!("The bake stays in the bin: {refusal}.")));
                    kept.removed.set(Some((trial, Some(resting))));
                }
            },
            Some((trial, None)) => {
                self.keep_trial(&trial);
                self.notebook.all.update(|all| {
                    all.push(trial);
                    all.sort_by_key(|kept| kept.id);
                });
            }
            None => {}
        }
    }
}
