//! Bakes that were written down: those of the open recipe and of all its versions.

use super::Bench;
use super::bakes::{QUIET, work_out};
use super::trials_kept::TrialsKept;
use super::weighing::take;
use crate::baking::diagnosis::Seen;
use crate::baking::finding::Remedy;
use crate::baking::ingredient::Own;
use crate::baking::oven::forecast::{Answer, forecast};
use crate::baking::oven::slices::{Slices, pause};
use crate::baking::saved::{Listed, families};
use crate::baking::trial::{
    Changes, Measured, Taught, Trial, TrialSheet, VersionNode, changes, trial_sheet,
    version_changes,
};
use crate::baking::worksheet::{
    DiagnosisSheet, Inputs, Looks, Settings, WeighIn, WeighRow, at_heat_read, diagnosis,
    is_baked_otherwise, kind_of, weigh_in_sheet, worksheet_again,
};
use crate::ui::device;
use crate::ui::storage::{self, KeptTrial, Refusal, Trials};
use leptos::prelude::*;
use std::collections::HashMap;
use std::sync::Arc;
use std::time::Duration;

/// What the page knows of trials.
#[derive(Clone, Copy)]
pub struct Notebook {
    /// The trials of the open recipe's family, the earliest first.
    pub(super) all: RwSignal<Vec<KeptTrial>>,
    /// The family: the open recipe, what it was made from, and what was made from it.
    pub(super) family: RwSignal<Vec<VersionNode>>,
    /// How they are kept.
    pub(super) kept: TrialsKept,
    /// What versions changed, as it was told last.
    told: StoredValue<Told>,
}

/// What versions changed of what they were made from, by the names of their records and the marks of these: to read two
/// recipes for each takes too long to be done whenever the page is looked at.
#[derive(Default)]
struct Told {
    /// What it was reckoned by: the settings, and the edition of the larder.
    by: Option<(Settings, u64)>,
    changes: HashMap<String, (u32, Changes)>,
}

/// Trials, and the family that they are of.
type Read = (Result<Trials, Refusal>, Vec<VersionNode>);

/// What is asked of why a trial failed.
#[derive(Clone, PartialEq)]
pub struct AskedDiagnosis {
    /// The recipe as it was baked.
    baked: Inputs,
    /// The first bake of the same recipe that it goes back to, as that was baked.
    control: Option<Inputs>,
    /// What was seen and measured.
    seen: Seen,
}

impl AskedDiagnosis {
    /// The recipe as it was baked, of the kind that is meant: a fault makes a cake look like another, so it is that of the bake
    /// that the others go back to.
    fn as_meant(&self, settings: &Settings, own: &Own) -> Inputs {
        let mut baked = self.baked.clone();
        if let (None, Some(control)) = (baked.choices.kind, &self.control) {
            baked.choices.kind = kind_of(control, settings, own);
        }
        baked
    }
}

impl Notebook {
    /// Nothing is read yet.
    pub fn start() -> Self {
        Self {
            all: RwSignal::new(Vec::new()),
            family: RwSignal::new(Vec::new()),
            kept: TrialsKept::start(),
            told: StoredValue::default(),
        }
    }
}

/// Places on the shelf of a recipe, of what it was made from, and of what was made from it; none where it is not kept.
fn family_of(shelf: &[Arc<Listed>], open: &str) -> Vec<usize> {
    let known: Vec<(&str, Option<&str>)> = shelf
        .iter()
        .map(|it| (it.id.as_str(), it.version.as_ref().map(|it| it.of.as_str())))
        .collect();
    let ours = families(&known)
        .into_iter()
        .find(|family| family.iter().any(|&at| shelf[at].id == open));
    ours.unwrap_or_default()
}

/// How long after a recipe was opened its trials are read ahead.
const AHEAD_AFTER: Duration = Duration::from_secs(1);

impl Bench {
    /// Has the trials of whichever recipe is open read in short stretches a while later, so that their page need not: hundreds
    /// take several frames.
    pub(super) fn read_trials_ahead(self) {
        let begin = move || {
            let open = self.open_id();
            let shelf = storage::shelf_before();
            let family = family_of(&shelf, &open);
            let is_ours = |id: &str| id == open || family.iter().any(|&at| shelf[at].id == id);
            let keys = storage::trials_unread(is_ours);
            let read = async {
                for key in keys {
                    storage::read_trial_ahead(key);
                    pause().await;
                }
            };
            work_out(Slices::of(read), || true, |()| {});
        };
        Effect::new(move |_| {
            // Whether another is open.
            self.outside.track();
            set_timeout(begin, AHEAD_AFTER);
        });
    }

    /// Reads the trials of the open recipe's family, as they stand now.
    pub fn take_up_trials(self) {
        self.take_trials(self.read_trials());
    }

    /// The same for a page that is being drawn: what the page before it followed is still there, so nothing may move until
    /// it is gone. It is read then too: what was read now would be old if another window wrote in between.
    pub fn take_up_trials_soon(self) {
        set_timeout(move || self.take_up_trials(), Duration::ZERO);
    }

    fn take_trials(self, (found, family): Read) {
        match found {
            Ok(found) => self.take_found(found),
            Err(refusal) => self.say_unread_trials(refusal),
        }
        take(self.notebook.family, family);
    }

    fn read_trials(self) -> Read {
        let family = self.read_family();
        let is_ours = |id: &str| family.iter().any(|it| it.id == id);
        let found = self.trials_now(|before| {
            let held = self.notebook.kept.held;
            held.with_value(|held| storage::trials_of(is_ours, before, held))
        });
        (found, family)
    }

    fn read_family(self) -> Vec<VersionNode> {
        let open = self.open_id();
        let before = self.notebook.family.get_untracked();
        let shelf = match storage::shelf() {
            Ok(shelf) => shelf.recipes,
            // The store does not tell: what was known of the family still holds.
            Err(_) if before.iter().any(|it| it.id == open) => return before,
            Err(_) => Vec::new(),
        };
        let mut family: Vec<VersionNode> = family_of(&shelf, &open)
            .into_iter()
            .map(|at| VersionNode {
                id: shelf[at].id.clone(),
                name: match &shelf[at].version {
                    Some(version) => version.name.clone(),
                    None => shelf[at].title.clone(),
                },
                of: shelf[at].version.as_ref().map(|it| it.of.clone()),
                changes: self.version_changes(&shelf[at]),
            })
            .collect();
        if family.is_empty() {
            // A demo, or a recipe that could not be kept.
            let title = self.sheet(|sheet| sheet.title.clone());
            family.push(VersionNode {
                id: open,
                name: title.unwrap_or_else(|| "Untitled recipe".into()),
                ..VersionNode::default()
            });
        }
        family
    }

    /// What a version of the shelf changed of what it was made from.
    fn version_changes(self, listed: &Listed) -> Option<Changes> {
        listed.version.as_ref()?;
        let told = self.notebook.told;
        let (settings, own) = (self.settings_now(), self.larder.get_untracked());
        let known = told.try_update_value(|told| {
            let by = Some((settings.clone(), own.edition()));
            if told.by != by {
                *told = Told {
                    by,
                    ..Told::default()
                };
            }
            let (mark, changes) = told.changes.get(&listed.id)?;
            (*mark == listed.mark).then(|| changes.clone())
        });
        if let Some(known) = known.flatten() {
            return Some(known);
        }
        let kept = storage::peek_kept(&listed.id)?;
        let original = kept.version?.original;
        let changes = version_changes(&original, &kept.inputs, &settings, &own);
        told.update_value(|told| {
            let known = (listed.mark, changes.clone());
            told.changes.insert(listed.id.clone(), known);
        });
        Some(changes)
    }

    /// Whether the trials of the open recipe have been looked at yet, followed.
    pub fn knows_trials(self) -> bool {
        let open = self.open_id();
        self.family(|family| family.iter().any(|it| it.id == open))
    }

    /// The trials of the family, followed.
    pub fn trials<R>(self, read: impl FnOnce(&[KeptTrial]) -> R) -> R {
        self.notebook.all.with(|all| read(all))
    }

    /// The trials as they are now.
    pub fn trials_now<R>(self, read: impl FnOnce(&[KeptTrial]) -> R) -> R {
        self.notebook.all.with_untracked(|all| read(all))
    }

    /// The recipe with its versions, followed.
    pub fn family<R>(self, read: impl FnOnce(&[VersionNode]) -> R) -> R {
        self.notebook.family.with(|family| read(family))
    }

    /// Writes down a bake of the open recipe, as its weigh-in stands, and gives its number.
    pub fn write_trial_down(self) -> u64 {
        self.take_up_weigh_in();
        self.catch_up_kitchen();
        // A bake belongs to a recipe that is kept: a demo becomes one of the baker's own.
        self.keep_open();
        self.flush();
        self.take_up_trials();
        let now = device::now();
        let own = self.larder.get_untracked();
        let weigh_in = untrack(|| self.weigh_in(WeighIn::clone));
        let trial = self.inputs_now(|inputs| {
            Trial::of(inputs, &self.settings_now(), &own, &weigh_in, now as u64)
        });
        let recipe = self.open_id();
        let id = storage::fresh_number();
        let against = self.trials_now(|all| self.held_against(all, &recipe));
        let kept = KeptTrial {
            id,
            recipe,
            trial: Trial {
                against: against.map(|id| id.to_string()),
                ..trial
            },
        };
        self.keep_trial(&kept);
        self.notebook.all.update(|all| all.push(kept));
        id
    }

    /// What a new bake of a recipe is held against: its last one, else the last one of what it was made from.
    fn held_against(self, all: &[KeptTrial], recipe: &str) -> Option<u64> {
        let last = |recipe: &str| all.iter().rfind(|kept| kept.recipe == recipe);
        let found = last(recipe).or_else(|| {
            let of = self
                .version
                .with_untracked(|it| Some(it.as_ref()?.of.clone()))?;
            last(&of)
        });
        found.map(|kept| kept.id)
    }

    /// Changes a trial, and keeps it.
    pub fn change_trial(self, id: u64, change: impl FnOnce(&mut Trial)) {
        let mut changed = None;
        self.notebook.all.update(|all| {
            if let Some(kept) = all.iter_mut().find(|kept| kept.id == id) {
                change(&mut kept.trial);
                kept.trial.changed = device::now() as u64;
                changed = Some(kept.clone());
            }
        });
        if let Some(kept) = changed {
            self.keep_trial(&kept);
        }
    }

    /// Changes what went in, and reckons the weights anew.
    pub fn change_weighed(self, id: u64, change: impl FnOnce(&mut Trial)) {
        let (settings, own) = (self.settings_now(), self.larder.get_untracked());
        self.change_trial(id, |trial| {
            change(trial);
            trial.weigh(&settings, &own);
        });
    }

    /// What of a trial there is to reckon with, followed; `None` where there is none of that number.
    pub fn reckoned_trial(self, id: u64) -> Option<Trial> {
        self.trials(|all| {
            let kept = all.iter().find(|kept| kept.id == id)?;
            Some(kept.trial.reckoned())
        })
    }

    /// A trial as it is shown, with the recipe as it stands, followed.
    pub fn trial_sheet(self, id: u64, trial: &Trial) -> TrialSheet {
        let (settings, own) = (self.settings(), self.larder.get());
        self.inputs(|now| trial_sheet(&id.to_string(), trial, now, &settings, &own))
    }

    /// What a trial was planned to weigh, row by row, in the order of its bowls, as it is now.
    pub fn trial_rows(self, id: u64) -> Vec<WeighRow> {
        let kept = self.trials_now(|all| all.iter().find(|kept| kept.id == id).cloned());
        let Some(KeptTrial { trial, .. }) = kept else {
            return Vec::new();
        };
        let (settings, own) = (self.settings_now(), self.larder.get_untracked());
        let sheet = |weigh_in| weigh_in_sheet(&trial.plan, &settings, &own, &weigh_in);
        let planned = sheet(WeighIn::default());
        let grown = trial.times() / planned.times;
        let sheet = match grown == 1.0 {
            true => planned,
            false => sheet(WeighIn {
                grown: Some(grown),
                ..WeighIn::default()
            }),
        };
        sheet.bowls.into_iter().flat_map(|bowl| bowl.rows).collect()
    }

    /// What changed from the trial that a trial is held against, followed; `None` for one that is held against none.
    pub fn trial_changes(self, id: u64) -> Option<Changes> {
        self.trials(|all| {
            let kept = all.iter().find(|kept| kept.id == id)?;
            let against: u64 = kept.trial.against.as_deref()?.parse().ok()?;
            let other = all
                .iter()
                .find(|other| other.id == against && other.id != id)?;
            Some(changes(&other.trial, &kept.trial))
        })
    }

    /// Goes by what a trial teaches, or no longer.
    pub fn turn_lesson(self, taught: &Taught, is_taken: bool) {
        let what = match (taught, is_taken) {
            (Taught::Crumb(_), true) => "the crumb of a trial moves the buffers",
            (Taught::Crumb(_), false) => "the crumb of a trial moves nothing any more",
            (Taught::Bake(_), true) => "the time of a trial anchors the oven",
            (Taught::Bake(_), false) => "the time of a trial anchors nothing any more",
        };
        self.change(what.into(), false, |inputs: &mut Inputs| match is_taken {
            true => inputs.learn(taught),
            false => inputs.unlearn(taught),
        });
    }

    /// Makes a version of a trial's recipe as it was baked, with what mends it, and opens it.
    ///
    /// # Errors
    /// A sentence's middle that says why it could not be kept.
    pub fn trial_as_version(
        self,
        id: u64,
        name: &str,
        remedy: Option<&Remedy>,
    ) -> Result<(), String> {
        let found = self.trials_now(|all| {
            let kept = all.iter().find(|kept| kept.id == id)?;
            Some((kept.recipe.clone(), kept.trial.as_baked()))
        });
        let (recipe, baked) = found.ok_or("the trial is gone")?;
        // Another version may be open than the one that was baked.
        if recipe != self.open_id() {
            self.open_kept(&recipe);
        }
        let version = remedy.map_or_else(|| baked.clone(), |remedy| baked.with_remedy(remedy));
        self.keep_version(name, version)
    }

    /// What is asked of why a trial failed, followed; `None` where there is none of that number.
    pub fn asked_diagnosis(self, id: u64, found: &Measured) -> Option<AskedDiagnosis> {
        self.trials(|all| {
            let of = |id: u64| all.iter().find(|kept| kept.id == id);
            let kept = of(id)?;
            let mut first = kept;
            // A circle ends.
            for _ in 0..all.len() {
                let against = first.trial.against.as_deref();
                match against.and_then(|id| of(id.parse().ok()?)) {
                    // A version may be another kind of cake, and be meant so.
                    Some(other) if other.recipe == kept.recipe => first = other,
                    _ => break,
                }
            }
            Some(AskedDiagnosis {
                baked: kept.trial.as_baked(),
                control: (first.id != id).then(|| first.trial.as_baked()),
                seen: kept.trial.evidence(found),
            })
        })
    }

    /// Why a trial failed by what was seen on it, by settings and larder, followed; `minutes` are what heat flow reckons for it.
    pub fn trial_diagnosis(
        self,
        asked: &AskedDiagnosis,
        minutes: Option<[f64; 3]>,
    ) -> DiagnosisSheet {
        let (settings, own) = (self.settings(), self.larder.get());
        let baked = asked.as_meant(&settings, &own);
        diagnosis(&baked, &settings, &own, &asked.seen, minutes)
    }

    /// Works out how long a bake takes by heat flow, early, usual and late, where it stood in another pan or oven than its recipe
    /// says and was timed: the recipe's own time tells little of it.
    pub fn follow_time_of(
        self,
        asked: Memo<Option<AskedDiagnosis>>,
        minutes: RwSignal<Option<[f64; 3]>>,
    ) {
        let round = StoredValue::new(0_u32);
        Effect::new(move |_| {
            round.update_value(|round| *round += 1);
            let now = round.get_value();
            let is_current = move || round.try_get_value() == Some(now);
            if minutes.get_untracked().is_some() {
                minutes.set(None);
            }
            let wanted = asked.get().filter(|asked| {
                let is_timed = asked.seen.measured.bake_minutes.is_some();
                is_timed
                    && !asked.seen.signs.is_empty()
                    && is_baked_otherwise(&asked.baked, &asked.seen.measured)
            });
            let Some(asked) = wanted else { return };
            let begin = move || {
                if !is_current() {
                    return;
                }
                let (settings, own) = (self.settings_now(), self.larder.get_untracked());
                let baked = asked.as_meant(&settings, &own);
                let baked = at_heat_read(baked, &asked.seen.measured, &settings);
                let sheet = worksheet_again(&mut Looks::default(), &baked, &settings, &own);
                let Some(ask) = sheet.oven.ask else { return };
                let show = move |found: Answer| {
                    // What was baked in stands last.
                    let last = found.bakes.into_iter().next_back().flatten();
                    minutes.set(last.map(|found| found.minutes));
                };
                work_out(Slices::of(forecast(ask)), is_current, show);
            };
            set_timeout(begin, QUIET);
        });
    }
}
