//! The bin: what was removed rests there for 30 days. The bakes of a recipe that rests there stay in their place meanwhile:
//! they come back with it, and go for good with it.

use super::kitchen::forget_weigh_ins;
use super::room::{Effort, write_making_room};
use super::store::{self, Refusal};
use super::{BIN, RECIPE, SetAside, trials};
use crate::baking::saved::{self, BinRecord};
use crate::ui::device;

/// What a key of the bin begins with where a bake of its own rests.
const BIN_TRIAL: &str = "batterwright/bin/bake-";

/// A record in the bin.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Resting {
    /// The key it stands under.
    pub key: String,
    /// What rests.
    pub record: BinRecord,
}

/// How many recipes are in the bin, and how many bakes by themselves; ones that cannot be read are counted too.
pub fn in_bin() -> Result<[usize; 2], Refusal> {
    let mut many = [0; 2];
    for key in store::keys()? {
        if key.starts_with(BIN) {
            many[usize::from(key.starts_with(BIN_TRIAL))] += 1;
        }
    }
    Ok(many)
}

/// Everything in the bin that can be read, the last removed first.
pub fn resting() -> Result<Vec<Resting>, Refusal> {
    contents().map(|(resting, _)| resting)
}

/// Everything in the bin: what can be read, the last removed first, and what cannot.
pub fn contents() -> Result<(Vec<Resting>, Vec<SetAside>), Refusal> {
    let (mut resting, mut aside) = (Vec::new(), Vec::new());
    for key in store::keys()? {
        if !key.starts_with(BIN) {
            continue;
        }
        let Some(text) = store::read(&key)? else {
            continue;
        };
        match saved::from_text::<BinRecord>(&text) {
            Ok(record) => resting.push(Resting { key, record }),
            Err(trouble) => aside.push(SetAside::of(key, &trouble)),
        }
    }
    resting.sort_by(|one, other| {
        let newest_first = other.record.removed.cmp(&one.record.removed);
        newest_first.then_with(|| other.key.cmp(&one.key))
    });
    Ok((resting, aside))
}

/// Takes what has rested for its time out of the bin, with the bakes of recipes that go so, and weigh-ins of recipes that
/// are neither kept nor in the bin.
pub fn clear_out() -> Result<(), Refusal> {
    let now = device::now() as u64;
    let (over, staying): (Vec<Resting>, Vec<Resting>) = resting()?
        .into_iter()
        .partition(|resting| resting.record.is_over(now));
    for resting in over {
        remove_for_good(&resting.key)?;
    }
    forget_weigh_ins(|id| staying.iter().any(|resting| resting.record.id == id))
}

/// What stands under a key, as it goes into the bin now.
fn record_of(key: &str, title: String) -> Result<Option<BinRecord>, Refusal> {
    let text = store::read(key)?;
    Ok(text.map(|text| BinRecord {
        id: key.strip_prefix(RECIPE).unwrap_or(key).to_owned(),
        title,
        removed: device::now() as u64,
        text,
    }))
}

/// Puts what stands under a key into the bin too, since it is about to be written over.
pub fn copy_into_bin(key: &str, title: String) -> Result<Effort, Refusal> {
    match record_of(key, title)? {
        None => Ok(Effort::default()),
        Some(record) => {
            let written = saved::to_text(&record).map_err(|_| Refusal::Full)?;
            write_making_room(&fresh_key(&record), &written)
        }
    }
}

/// Takes a record off its place and puts it into the bin; `None` where nothing stands there.
pub fn throw_away(key: &str, title: String) -> Result<Option<(Resting, Effort)>, Refusal> {
    let Some(record) = record_of(key, title)? else {
        return Ok(None);
    };
    let in_bin = fresh_key(&record);
    let effort = go_into_bin(key, &in_bin, &record)?;
    let resting = Resting {
        key: in_bin,
        record,
    };
    Ok(Some((resting, effort)))
}

fn go_into_bin(key: &str, in_bin: &str, record: &BinRecord) -> Result<Effort, Refusal> {
    let written = saved::to_text(record).map_err(|_| Refusal::Full)?;
    match store::write(in_bin, &written) {
        Ok(()) => {
            // What cannot be taken away stays where it was, and stands there alone.
            if let Err(refusal) = store::remove(key) {
                let _ = store::remove(in_bin);
                return Err(refusal);
            }
            Ok(Effort::default())
        }
        Err(Refusal::Full) => {
            make_way(key, &record.text)?;
            let made = write_making_room(in_bin, &written);
            made.or_else(|refusal| store::write(key, &record.text).and(Err(refusal)))
        }
        Err(refusal) => Err(refusal),
    }
}

/// Takes a record away for a moment: in a full store what it comes to does not stand beside it. A store that does not even
/// take what it holds already would not take it back either.
fn make_way(key: &str, text: &str) -> Result<(), Refusal> {
    store::write(key, text)?;
    store::remove(key)
}

/// Puts a record back where it came from, or beside that where something stands there again; gives the key. A bake brings
/// its recipe back with it.
pub fn put_back(resting: &Resting) -> Result<String, Refusal> {
    let BinRecord { id, text, .. } = &resting.record;
    let mut key = match id.starts_with(store::OURS) {
        true => id.clone(),
        false => format!("{RECIPE}{id}"),
    };
    if store::read(&key)?.is_some() {
        key = match trials::trial_of_key(&key) {
            Some((recipe, _)) => trials::key_of_trial(recipe, trials::fresh_number()),
            None => format!("{RECIPE}{}", device::fresh_id()),
        };
    }
    stand_back(resting, &key, text)?;
    if let Some((recipe, _)) = trials::trial_of_key(&key) {
        // Where that is refused the shelf tells of a bake without a recipe.
        let _ = trials::put_recipe_of(recipe);
    }
    Ok(key)
}

fn stand_back(resting: &Resting, key: &str, text: &str) -> Result<(), Refusal> {
    if store::write(key, text) == Err(Refusal::Full) {
        let written = saved::to_text(&resting.record).map_err(|_| Refusal::Full)?;
        make_way(&resting.key, &written)?;
        let back = store::write(key, text);
        return back.or_else(|refusal| store::write(&resting.key, &written).and(Err(refusal)));
    }
    store::remove(&resting.key)
}

/// Removes what stands under a key for good, with the bakes of a recipe that is nowhere else then. Gives the keys with what
/// stood there.
pub fn remove_for_good(key: &str) -> Result<Vec<(String, String)>, Refusal> {
    let text = store::read(key)?.unwrap_or_default();
    store::remove(key)?;
    let id = match key.strip_prefix(RECIPE) {
        Some(id) => Some(id.to_owned()),
        None if key.starts_with(BIN) => saved::from_text::<BinRecord>(&text)
            .ok()
            .map(|record| record.id),
        None => None,
    };
    let mut gone = vec![(key.to_owned(), text)];
    if let Some(id) = id {
        // Where that is refused they stay, and the shelf tells of bakes without a recipe.
        gone.extend(remove_bakes_of(&id).unwrap_or_default());
    }
    Ok(gone)
}

/// Removes the bakes of a recipe for good where it is neither kept nor in the bin.
pub(super) fn remove_bakes_of(id: &str) -> Result<Vec<(String, String)>, Refusal> {
    let keys = trials::keys_of(id)?;
    let is_somewhere = || -> Result<bool, Refusal> {
        Ok(store::read(&format!("{RECIPE}{id}"))?.is_some()
            || resting()?.iter().any(|resting| resting.record.id == id))
    };
    if keys.is_empty() || is_somewhere()? {
        return Ok(Vec::new());
    }
    let mut gone = Vec::new();
    for key in keys {
        let Ok(Some(text)) = store::read(&key) else {
            continue;
        };
        // One that cannot be read is set aside, and stays.
        if trials::trouble_at(&key, &text).is_none() && store::remove(&key).is_ok() {
            gone.push((key, text));
        }
    }
    Ok(gone)
}

/// Puts what was removed for good back under its key.
pub fn stand_again(key: &str, text: &str) -> Result<(), Refusal> {
    store::write(key, text)
}

/// Puts a record into the bin as it stood there.
pub fn rest(record: &BinRecord) -> Result<(), Refusal> {
    let text = saved::to_text(record).map_err(|_| Refusal::Full)?;
    store::write(&fresh_key(record), &text)
}

pub(super) fn fresh_key(record: &BinRecord) -> String {
    let beginning = match trials::trial_of_key(&record.id) {
        Some(_) => BIN_TRIAL,
        None => BIN,
    };
    format!("{beginning}{}", device::fresh_id())
}
