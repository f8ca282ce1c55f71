//! Bakes that were written down, one record each, under the name of their recipe.
//!
//! They stand there for as long as their recipe is kept or rests in the bin, and go with it for good. One whose recipe is
//! gone by any other way stays, and can bring its recipe back: it holds it as it was planned.

use super::bin::{self, Resting};
use super::room::{Effort, write_making_room};
use super::store::{self, Refusal};
use super::{NotKept, RECIPE, SEEN, Standing, TRIAL, Written, key_of, see, standing_at};
use crate::baking::saved::{self, KeptRecipe, SavedTrouble, first_words};
use crate::baking::trial::Trial;
use crate::ui::device;
use std::cell::RefCell;
use std::collections::{BTreeMap, HashMap};

/// A bake as it is kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct KeptTrial {
    /// Its number: the moment when it was written down, and three digits of chance. Larger ones are later.
    pub id: u64,
    /// The name of its recipe's record.
    pub recipe: String,
    /// What was written.
    pub trial: Trial,
}

impl KeptTrial {
    /// The name of its record.
    pub fn name(&self) -> String {
        self.id.to_string()
    }

    /// The key that its record stands under.
    pub fn key(&self) -> String {
        key_of_trial(&self.recipe, self.id)
    }

    /// What it is called: its name, or its day.
    pub fn called(&self) -> String {
        called(&self.trial)
    }
}

fn called(trial: &Trial) -> String {
    match trial.name.trim() {
        "" => format!("Bake of {}", device::moment_shown(trial.baked as f64)),
        name => name.to_owned(),
    }
}

/// What it is called away from its recipe.
pub(super) fn title_of(trial: &Trial) -> String {
    format!("{}, {}", called(trial), first_words(&trial.plan.text))
}

/// The trials of some recipes, as they stand.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Trials {
    /// Those that can be read, and those that this window alone holds; the earliest first.
    pub all: Vec<KeptTrial>,
    /// How many cannot be read.
    pub unreadable: usize,
    /// Numbers of those whose records were taken away, into no bin.
    pub gone: Vec<u64>,
}

/// Bakes of a recipe that is neither kept nor in the bin.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stray {
    /// The name of the recipe's record.
    pub recipe: String,
    /// The recipe's title, as the last of them has it.
    pub title: String,
    /// How many there are.
    pub bakes: usize,
}

thread_local! {
    /// Records that were read before anybody asked, by key: the text that stood there, and what it says.
    static AHEAD: RefCell<HashMap<String, (String, Trial)>> = RefCell::default();
}

/// The keys of the trials of some recipes that were not read yet; none where the store does not tell.
pub fn trials_unread(is_wanted: impl Fn(&str) -> bool) -> Vec<String> {
    let is_unread = |key: &String| {
        trial_of_key(key).is_some_and(|(recipe, _)| is_wanted(recipe))
            && !SEEN.with_borrow(|seen| seen.contains_key(key))
            && !AHEAD.with_borrow(|ahead| ahead.contains_key(key))
    };
    let mut keys = store::keys().unwrap_or_default();
    keys.retain(is_unread);
    keys
}

/// Reads a trial ahead of being asked for it, so that [`trials_of`] need not. Nothing is told of it before.
pub fn read_trial_ahead(key: String) {
    if let Ok(Some(text)) = store::read(&key)
        && let Ok(trial) = saved::from_text::<Trial>(&text)
    {
        AHEAD.with_borrow_mut(|ahead| ahead.insert(key, (text, trial)));
    }
}

/// What a text under a key says, from what was read ahead where that is still so.
fn read_of(key: &str, text: &str) -> Result<Trial, SavedTrouble> {
    match AHEAD.with_borrow_mut(|ahead| ahead.remove(key)) {
        Some((before, trial)) if before == text => Ok(trial),
        _ => saved::from_text(text),
    }
}

/// A number that no trial has yet, unless two are written down in the same thousandth of a second.
pub fn fresh_number() -> u64 {
    device::now() as u64 * 1000 + (js_sys::Math::random() * 1000.0) as u64
}

/// The key that a trial's record stands under.
pub fn key_of_trial(recipe: &str, id: u64) -> String {
    format!("{TRIAL}{recipe}/{id}")
}

/// The recipe and the number of the trial that stands under a key of the store.
pub fn trial_of_key(key: &str) -> Option<(&str, u64)> {
    let (recipe, id) = key.strip_prefix(TRIAL)?.rsplit_once('/')?;
    Some((recipe, id.parse().ok()?))
}

/// The trials of these recipes. Of what this window had `before`, what has not changed since is not read again, and what
/// it alone holds is left as it is.
///
/// # Errors
/// Where the store does not tell.
pub fn trials_of(
    is_wanted: impl Fn(&str) -> bool,
    before: &[KeptTrial],
    held: &[KeptTrial],
) -> Result<Trials, Refusal> {
    let is_held = |id: u64| held.iter().any(|kept| kept.id == id);
    let before = before.iter().filter(|kept| !is_held(kept.id)).chain(held);
    let wanted = before.filter(|kept| is_wanted(&kept.recipe));
    let mut known: BTreeMap<String, &KeptTrial> = wanted.map(|kept| (kept.key(), kept)).collect();
    let mut found = Trials::default();
    for key in store::keys()? {
        let Some((recipe, id)) = trial_of_key(&key).filter(|(recipe, _)| is_wanted(recipe)) else {
            continue;
        };
        if is_held(id) && known.contains_key(&key) {
            continue;
        }
        let Some(text) = store::read(&key)? else {
            continue;
        };
        let is_seen = super::was_seen(&key, Some(&text));
        if let Some(kept) = known.remove(&key).filter(|_| is_seen) {
            found.all.push(kept.clone());
            continue;
        }
        match read_of(&key, &text) {
            Ok(trial) => {
                found.all.push(KeptTrial {
                    id,
                    recipe: recipe.to_owned(),
                    trial,
                });
                see(key, text, false);
            }
            Err(_) => found.unreadable += 1,
        }
    }
    let binned = match known.is_empty() {
        true => Vec::new(),
        false => bin::resting()?,
    };
    for (key, kept) in known {
        let is_held = is_held(kept.id);
        // Another window has moved it to another recipe of the family.
        if found.all.iter().any(|it| it.id == kept.id) {
            continue;
        }
        if !is_held && binned.iter().any(|resting| resting.record.id == key) {
            SEEN.with_borrow_mut(|seen| seen.remove(&key));
            continue;
        }
        if !is_held {
            found.gone.push(kept.id);
        }
        found.all.push(kept.clone());
    }
    found.all.sort_by_key(|kept| kept.id);
    Ok(found)
}

/// How a trial's record stands now.
pub fn standing_of_trial(key: &str) -> Standing<Trial> {
    standing_at(key)
}

/// Keeps a trial.
///
/// # Errors
/// Why it is not being kept; then what stands there stays.
pub fn keep_trial(kept: &KeptTrial) -> Result<Written, NotKept<Trial>> {
    let key = kept.key();
    let again = super::is_again(standing_at::<Trial>(&key), |theirs| {
        let ours = Trial {
            changed: theirs.changed,
            ..kept.trial.clone()
        };
        ours == *theirs
    })?;
    let text = saved::to_text(&kept.trial).map_err(NotKept::Refused)?;
    let effort = write_making_room(&key, &text)?;
    see(key, text, true);
    Ok(Written { again, effort })
}

/// Takes a trial off its place and puts it into the bin; `None` where it does not stand there any more.
///
/// # Errors
/// Where the store refuses; then it stays.
pub fn remove_trial(kept: &KeptTrial) -> Result<Option<(Resting, Effort)>, Refusal> {
    let key = kept.key();
    let removed = bin::throw_away(&key, title_of(&kept.trial))?;
    SEEN.with_borrow_mut(|seen| seen.remove(&key));
    Ok(removed)
}

/// Has the trials of one recipe go on under another. What cannot be moved stays where it is.
pub fn move_trials(from: &str, to: &str) -> Result<(), Refusal> {
    for key in keys_of(from)? {
        let Some((_, id)) = trial_of_key(&key) else {
            continue;
        };
        let text = store::read(&key)?.unwrap_or_default();
        let moved = key_of_trial(to, id);
        write_making_room(&moved, &text)?;
        see(moved, text, true);
        store::remove(&key)?;
        SEEN.with_borrow_mut(|seen| seen.remove(&key));
    }
    Ok(())
}

/// The keys of all that is kept of a recipe's bakes, readable or not.
pub(super) fn keys_of(recipe: &str) -> Result<Vec<String>, Refusal> {
    let beginning = format!("{TRIAL}{recipe}/");
    let mut keys = store::keys()?;
    keys.retain(|key| key.starts_with(&beginning) && trial_of_key(key).is_some());
    Ok(keys)
}

/// How many bakes there are of each recipe that has any.
pub fn bakes_of_recipes() -> Result<BTreeMap<String, usize>, Refusal> {
    let mut bakes = BTreeMap::new();
    for key in store::keys()? {
        if let Some((recipe, _)) = trial_of_key(&key) {
            *bakes.entry(recipe.to_owned()).or_default() += 1;
        }
    }
    Ok(bakes)
}

/// Bakes whose recipe is neither kept nor in the bin.
pub fn strays() -> Result<Vec<Stray>, Refusal> {
    let mut bakes = bakes_of_recipes()?;
    if bakes.is_empty() {
        return Ok(Vec::new());
    }
    for key in store::keys()? {
        if let Some(recipe) = key.strip_prefix(RECIPE) {
            bakes.remove(recipe);
        }
    }
    for resting in bin::resting()? {
        bakes.remove(&resting.record.id);
    }
    let mut strays = Vec::new();
    for (recipe, bakes) in bakes {
        if let Some(trial) = last_of(&recipe)? {
            let title = first_words(&trial.plan.text);
            strays.push(Stray {
                recipe,
                title,
                bakes,
            });
        }
    }
    Ok(strays)
}

/// The last bake of a recipe that can be read.
fn last_of(recipe: &str) -> Result<Option<Trial>, Refusal> {
    let mut keys = keys_of(recipe)?;
    keys.sort_by_key(|key| trial_of_key(key).map(|(_, id)| id));
    for key in keys.iter().rev() {
        let text = store::read(key)?.unwrap_or_default();
        if let Ok(trial) = saved::from_text::<Trial>(&text) {
            return Ok(Some(trial));
        }
    }
    Ok(None)
}

/// Sees to it that the recipe of a bake is kept: out of the bin, or else as its last bake was planned.
///
/// # Errors
/// Where the store refuses.
pub fn put_recipe_of(recipe: &str) -> Result<(), Refusal> {
    let key = key_of(recipe);
    if store::read(&key)?.is_some() {
        return Ok(());
    }
    let resting = bin::resting()?;
    if let Some(resting) = resting.iter().find(|it| it.record.id == recipe) {
        return bin::put_back(resting).map(drop);
    }
    let Some(trial) = last_of(recipe)? else {
        return Ok(());
    };
    let record = KeptRecipe {
        changed: device::now() as u64,
        inputs: trial.plan,
        version: None,
    };
    let text = saved::to_text(&record).map_err(|_| Refusal::Full)?;
    write_making_room(&key, &text).map(drop)
}

/// What is wrong with a trial's record; `None` where nothing is, or it is of something else.
pub(super) fn trouble_at(key: &str, text: &str) -> Option<SavedTrouble> {
    key.starts_with(TRIAL)
        .then(|| saved::from_text::<Trial>(text).err())?
}

/// Every trial of every recipe that can be read, only looked at; the earliest first.
pub fn peek_trials() -> Vec<KeptTrial> {
    let keys = store::keys().unwrap_or_default();
    let kept = keys.iter().filter_map(|key| {
        let (recipe, id) = trial_of_key(key)?;
        let text = store::read(key).ok()??;
        Some(KeptTrial {
            id,
            recipe: recipe.to_owned(),
            trial: saved::from_text(&text).ok()?,
        })
    });
    let mut kept: Vec<KeptTrial> = kept.collect();
    kept.sort_by_key(|kept| kept.id);
    kept
}
