//! Records of which there is one: the settings, and the baker's own ingredients and words.

use super::store::{self, Refusal};
use super::{LARDER, SETTINGS};
use crate::baking::ingredient::own::OwnRecord;
use crate::baking::saved::{self, Merge, Moved, Record, SavedTrouble};
use crate::baking::worksheet::Settings;
use std::cell::RefCell;
use std::thread::LocalKey;

/// What this window last read or wrote; `None` where it did neither yet.
type Seen<R> = LocalKey<RefCell<Option<R>>>;

thread_local! {
    static SETTINGS_SEEN: RefCell<Option<Settings>> = const { RefCell::new(None) };
    static LARDER_SEEN: RefCell<Option<OwnRecord>> = const { RefCell::new(None) };
}

/// A record where it stands, or would: a damaged one stays where it is, and the next key is taken.
pub(super) struct Place<R> {
    pub(super) key: String,
    pub(super) record: Option<R>,
    /// Why the first record cannot be used.
    trouble: Option<SavedTrouble>,
}

/// A record of which there is one.
pub trait Single: Merge + Send + Sync + 'static {
    /// Its key, and the beginning of the ones after it.
    const KEY: &'static str;
    /// What this window last saw of it.
    fn seen() -> &'static Seen<Self>;
}

impl Single for Settings {
    const KEY: &'static str = SETTINGS;
    fn seen() -> &'static Seen<Self> {
        &SETTINGS_SEEN
    }
}

impl Single for OwnRecord {
    const KEY: &'static str = LARDER;
    fn seen() -> &'static Seen<Self> {
        &LARDER_SEEN
    }
}

/// The record, or the usual one where none can be read.
pub fn load<R: Single>() -> R {
    let record = place::<R>().ok().and_then(|place| place.record);
    R::seen().set(record.clone());
    record.unwrap_or_default()
}

/// The record with what another window has kept of it since this one saw it last; `None` where none has.
pub fn changed_elsewhere<R: Single>(ours: &R) -> Option<R> {
    let theirs = place::<R>().ok()?.record?;
    let base = R::seen().take();
    R::seen().set(Some(theirs.clone()));
    let is_new = base.as_ref() != Some(&theirs);
    is_new.then(|| R::merge_changes(&base.unwrap_or_default(), ours, theirs).0)
}

/// Why the record that was kept cannot be used, in a sentence, where none has been kept anew since.
pub fn trouble<R: Single>() -> Option<String> {
    let place = place::<R>().ok()?;
    match place.record {
        None => place.trouble.map(|trouble| trouble.to_string()),
        Some(_) => None,
    }
}

/// Keeps the record, with what another window has changed of it since; gives what is kept, and keys that moved for it.
pub fn keep<R: Single>(ours: &R) -> Result<(R, Moved), String> {
    let place = place::<R>().map_err(|refusal| refusal.to_string())?;
    let base = R::seen().take();
    let (merged, moved) = match place.record {
        Some(theirs) if base.as_ref() != Some(&theirs) => {
            R::merge_changes(&base.clone().unwrap_or_default(), ours, theirs)
        }
        _ => (ours.clone(), Moved::new()),
    };
    let written = saved::to_text(&merged)
        .and_then(|text| store::write(&place.key, &text).map_err(|refusal| refusal.to_string()));
    R::seen().set(match written {
        Ok(()) => Some(merged.clone()),
        Err(_) => base,
    });
    written.map(|()| (merged, moved))
}

fn place<R: Single>() -> Result<Place<R>, Refusal> {
    place_at(R::KEY)
}

/// The first key, of those that begin so, that holds a record we can read, or else the first free one.
pub(super) fn place_at<R: Record>(base: &str) -> Result<Place<R>, Refusal> {
    let mut place = Place {
        key: base.to_owned(),
        record: None,
        trouble: None,
    };
    let mut number = 1_u32;
    loop {
        match store::read(&place.key)?.map(|text| saved::from_text::<R>(&text)) {
            None => return Ok(place),
            Some(Ok(record)) => {
                place.record = Some(record);
                return Ok(place);
            }
            Some(Err(trouble)) => {
                place.trouble.get_or_insert(trouble);
                number += 1;
                place.key = format!("{base}/{number}");
            }
        }
    }
}
