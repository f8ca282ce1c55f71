//! The bin: what was removed rests there for 30 days.

use super::kitchen::forget_weigh_ins;
use super::room::{Effort, write_making_room};
use super::store::{self, Refusal};
use super::{BIN, RECIPE, SetAside};
use crate::baking::saved::{self, BinRecord};
use crate::ui::device;

/// A record in the bin.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Resting {
    /// The key it stands under.
    pub key: String,
    /// What rests.
    pub record: BinRecord,
}

/// How many records are in the bin; ones that cannot be read are counted too.
pub fn in_bin() -> Result<usize, Refusal> {
    let keys = store::keys()?;
    Ok(keys.iter().filter(|key| key.starts_with(BIN)).count())
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

/// Takes what has rested for its time out of the bin, and weigh-ins of recipes that are neither kept nor in the bin.
pub fn clear_out() -> Result<(), Refusal> {
    let now = device::now() as u64;
    let (over, staying): (Vec<Resting>, Vec<Resting>) = resting()?
        .into_iter()
        .partition(|resting| resting.record.is_over(now));
    for resting in over {
        store::remove(&resting.key)?;
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
            write_making_room(&fresh_key(), &written)
        }
    }
}

/// Takes a record off its place and puts it into the bin; `None` where nothing stands there.
pub fn throw_away(key: &str, title: String) -> Result<Option<(Resting, Effort)>, Refusal> {
    let Some(record) = record_of(key, title)? else {
        return Ok(None);
    };
    let in_bin = fresh_key();
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

/// Puts a record back where it came from, or beside that where something stands there again; gives the key.
pub fn put_back(resting: &Resting) -> Result<String, Refusal> {
    let BinRecord { id, text, .. } = &resting.record;
    let mut key = match id.starts_with(store::OURS) {
        true => id.clone(),
        false => format!("{RECIPE}{id}"),
    };
    if store::read(&key)?.is_some() {
        key = format!("{RECIPE}{}", device::fresh_id());
    }
    if store::write(&key, text) == Err(Refusal::Full) {
        let written = saved::to_text(&resting.record).map_err(|_| Refusal::Full)?;
        make_way(&resting.key, &written)?;
        let back = store::write(&key, text);
        return match back {
            Ok(()) => Ok(key),
            Err(refusal) => store::write(&resting.key, &written).and(Err(refusal)),
        };
    }
    store::remove(&resting.key)?;
    Ok(key)
}

/// Removes what stands under a key for good, and gives it.
pub fn remove_for_good(key: &str) -> Result<String, Refusal> {
    let text = store::read(key)?.unwrap_or_default();
    store::remove(key)?;
    Ok(text)
}

/// Puts what was removed for good back under its key.
pub fn stand_again(key: &str, text: &str) -> Result<(), Refusal> {
    store::write(key, text)
}

/// Puts a record into the bin as it stood there.
pub fn rest(record: &BinRecord) -> Result<(), Refusal> {
    let text = saved::to_text(record).map_err(|_| Refusal::Full)?;
    store::write(&fresh_key(), &text)
}

fn fresh_key() -> String {
    format!("{BIN}{}", device::fresh_id())
}
