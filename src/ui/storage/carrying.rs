//! Everything that is kept, to be taken out; and what is brought in, whole or not at all.

use super::single::{Single, place_at};
use super::store::{self, Refusal};
use super::trials::{self, key_of_trial, trial_of_key};
use super::{RECIPE, bin, key_of};
use crate::baking::carry::Writes;
use crate::baking::ingredient::own::OwnRecord;
use crate::baking::saved::{self, BinRecord, KeptRecipe, first_words};
use crate::baking::trial::Trial;
use crate::baking::worksheet::Settings;
use crate::ui::device;

/// Where it is tried whether there is room, before anything is written.
const ATTEMPT: &str = "batterwright/attempt";

/// What was written, and what stood there before.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Brought(Vec<Change>);

/// One key with what stood there, and what stands there.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Change {
    key: String,
    before: Option<String>,
    after: String,
}

/// Every recipe by the name of its record; `None` for one that cannot be read.
pub fn all_recipes() -> Result<Vec<(String, Option<KeptRecipe>)>, Refusal> {
    let mut recipes = Vec::new();
    for key in store::keys()? {
        if let Some(id) = key.strip_prefix(RECIPE)
            && let Some(text) = store::read(&key)?
        {
            recipes.push((id.to_owned(), saved::from_text(&text).ok()));
        }
    }
    Ok(recipes)
}

/// Every bake by its recipe and number; `None` for one that cannot be read.
pub fn all_trials() -> Result<Vec<(String, u64, Option<Trial>)>, Refusal> {
    let mut trials = Vec::new();
    for key in store::keys()? {
        if let Some((recipe, id)) = trial_of_key(&key)
            && let Some(text) = store::read(&key)?
        {
            trials.push((recipe.to_owned(), id, saved::from_text(&text).ok()));
        }
    }
    Ok(trials)
}

/// The names that recipes in the bin had.
pub fn binned() -> Result<Vec<String>, Refusal> {
    let resting = bin::resting()?.into_iter();
    Ok(resting.map(|resting| resting.record.id).collect())
}

/// Writes all of it, or nothing; what it takes the place of goes to the bin.
///
/// # Errors
/// A sentence's middle; then all stands as it stood.
pub fn bring_in(writes: &Writes) -> Result<Brought, String> {
    let changes = changes(writes)?;
    let said = |refusal: Refusal| refusal.to_string();
    is_there_room(&changes).map_err(said)?;
    for (at, change) in changes.iter().enumerate() {
        if let Err(refusal) = store::write(&change.key, &change.after) {
            // What stood there fitted, so it fits again.
            let _ = put_back(&changes[..at]);
            return Err(said(refusal));
        }
    }
    Ok(Brought(changes))
}

/// Takes out again what was brought in. What has been changed since stays; how many that are.
pub fn undo_bringing(brought: &Brought) -> Result<usize, Refusal> {
    let mut ours = Vec::new();
    for change in &brought.0 {
        if store::read(&change.key)?.as_ref() == Some(&change.after) {
            ours.push(change.clone());
        }
    }
    put_back(&ours)?;
    Ok(brought.0.len() - ours.len())
}

/// The last first: so the store never holds more than it did.
fn put_back(changes: &[Change]) -> Result<(), Refusal> {
    changes
        .iter()
        .rev()
        .try_for_each(|change| match &change.before {
            Some(before) => store::write(&change.key, before),
            None => store::remove(&change.key),
        })
}

fn changes(writes: &Writes) -> Result<Vec<Change>, String> {
    let read = |key: &str| store::read(key).map_err(|refusal| refusal.to_string());
    let mut changes = Vec::new();
    for id in &writes.replaced {
        let text = read(&key_of(id))?.unwrap_or_default();
        let title =
            saved::from_text::<KeptRecipe>(&text).map(|recipe| first_words(&recipe.inputs.text));
        changes.push(into_bin(id.clone(), title.unwrap_or_default(), text)?);
    }
    for (recipe, id) in &writes.replaced_trials {
        let key = key_of_trial(recipe, *id);
        let text = read(&key)?.unwrap_or_default();
        let title = saved::from_text::<Trial>(&text).map(|trial| trials::title_of(&trial));
        changes.push(into_bin(key, title.unwrap_or_default(), text)?);
    }
    for carried in &writes.recipes {
        let key = key_of(&carried.id);
        changes.push(Change {
            before: read(&key)?,
            after: saved::to_text(&carried.recipe)?,
            key,
        });
    }
    for carried in &writes.trials {
        let key = key_of_trial(&carried.recipe, carried.id);
        changes.push(Change {
            before: read(&key)?,
            after: saved::to_text(&carried.trial)?,
            key,
        });
    }
    changes.extend(single::<Settings>(writes.settings.as_ref())?);
    changes.extend(single::<OwnRecord>(writes.larder.as_ref())?);
    Ok(changes)
}

/// A record that goes into the bin, since another takes its place.
fn into_bin(id: String, title: String, text: String) -> Result<Change, String> {
    let record = BinRecord {
        id,
        title,
        removed: device::now() as u64,
        text,
    };
    Ok(Change {
        key: bin::fresh_key(&record),
        before: None,
        after: saved::to_text(&record)?,
    })
}

fn single<R: Single>(record: Option<&R>) -> Result<Option<Change>, String> {
    let Some(record) = record else {
        return Ok(None);
    };
    let place = place_at::<R>(R::KEY).map_err(|refusal| refusal.to_string())?;
    // The usual one stands for none: a record that is gone tells other windows nothing.
    let before = saved::to_text(&place.record.unwrap_or_default())?;
    Ok(Some(Change {
        key: place.key,
        before: Some(before),
        after: saved::to_text(record)?,
    }))
}

/// Whether all that is added finds room, tried with as many blanks in its place.
fn is_there_room(changes: &[Change]) -> Result<(), Refusal> {
    let letters = |text: &str| text.encode_utf16().count();
    let mut added = 0;
    let mut freed = 0;
    for Change { key, before, after } in changes {
        added += letters(after) + before.as_ref().map_or(letters(key), |_| 0);
        freed += before.as_deref().map_or(0, letters);
    }
    let tried = store::write(ATTEMPT, &" ".repeat(added.saturating_sub(freed)));
    store::remove(ATTEMPT)?;
    tried
}
