//! Room: how much is used, and how some is made when a record does not fit.

use super::store::{self, Glance, Refusal};
use super::{BIN, INDEX, LIMIT, RECIPE, RESERVE, TRIAL, bin};
use crate::baking::saved::{BinRecord, Room};

/// Held back for the last letters of the open recipe: its record is written over, so that it takes only what is added.
const RESERVED: usize = 20_000;

/// What it took to get a record into the store.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Effort {
    /// The reserve was given up for it.
    pub of_reserve: bool,
    /// These went out of the bin for it, the oldest first.
    pub of_bin: Vec<BinRecord>,
}

/// Writes, and where the store is full makes room: by the list of the shelf, which can be made anew, then by the reserve,
/// then by what has rested in the bin longest.
pub fn write_making_room(key: &str, text: &str) -> Result<Effort, Refusal> {
    let mut effort = Effort::default();
    if let Some(done) = tried(key, text) {
        return done.map(|()| effort);
    }
    let there = store::read(key)?.map_or(0, |text| letters(&text));
    let refused = (room()?.used() + letters(text)).saturating_sub(there);
    let done = made_room(key, text, &mut effort);
    if done.is_ok() {
        // A help for the gauge; where it finds no room the usual limit stands.
        let _ = store::write(LIMIT, &refused.to_string());
    }
    done.map(|()| effort)
}

fn made_room(key: &str, text: &str, effort: &mut Effort) -> Result<(), Refusal> {
    for (help, is_reserve) in [(INDEX, false), (RESERVE, true)] {
        if store::read(help)?.is_none() {
            continue;
        }
        store::remove(help)?;
        effort.of_reserve |= is_reserve;
        if let Some(done) = tried(key, text) {
            return done;
        }
    }
    for resting in bin::resting()?.into_iter().rev() {
        // A store that does not even let a record become shorter is not full but closed: nothing is gained by giving
        // more away.
        store::write(&resting.key, "")?;
        store::remove(&resting.key)?;
        effort.of_bin.push(resting.record);
        if let Some(done) = tried(key, text) {
            return done.and_then(|()| follow_out(&effort.of_bin));
        }
    }
    // None of it was of use, so it goes back where it was.
    for record in effort.of_bin.drain(..) {
        bin::rest(&record)?;
    }
    Err(Refusal::Full)
}

/// What went out of the bin for good takes its bakes with it.
fn follow_out(gone: &[BinRecord]) -> Result<(), Refusal> {
    gone.iter()
        .try_for_each(|record| bin::remove_bakes_of(&record.id).map(drop))
}

/// `None` where the store is full.
fn tried(key: &str, text: &str) -> Option<Result<(), Refusal>> {
    match store::write(key, text) {
        Err(Refusal::Full) => None,
        done => Some(done),
    }
}

/// Holds the reserve back again where there is room for it; whether it is held.
pub fn hold_reserve() -> bool {
    matches!(store::read(RESERVE), Ok(Some(text)) if text.len() == RESERVED)
        || store::write(RESERVE, &" ".repeat(RESERVED)).is_ok()
}

/// What is kept and what is known of the limit.
pub fn room() -> Result<Room, Refusal> {
    let glance = Glance::new()?;
    let mut room = Room::default();
    for key in store::keys()? {
        let letters = letters(&key) + glance.length(&key)?;
        let of = if key.starts_with(RECIPE) {
            room.recipes += 1;
            &mut room.of_recipes
        } else if key.starts_with(TRIAL) {
            &mut room.of_trials
        } else if key.starts_with(BIN) {
            &mut room.of_bin
        } else if key.starts_with(store::OURS) {
            &mut room.of_rest
        } else {
            &mut room.of_others
        };
        *of += letters;
    }
    room.refused = store::read(LIMIT)?.and_then(|noted| noted.parse().ok());
    Ok(room)
}

/// How long a text is as browsers count it: in units of UTF-16.
fn letters(text: &str) -> usize {
    text.encode_utf16().count()
}
