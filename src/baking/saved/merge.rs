//! Two windows have changed the same record since both read it: what comes of both.

use super::Record;
use crate::baking::ingredient::own::OwnRecord;
use crate::baking::worksheet::Settings;
use serde_json::{Map, Value};

/// Keys of own ingredients that had to become others: before and after.
pub type Moved = Vec<(String, String)>;

/// A record of which there is one, and which several windows may change.
pub trait Merge: Record + Clone + Default + PartialEq {
    /// Our changes since `base` carried over to what stands there now, and keys that had to move.
    fn merge_changes(base: &Self, ours: &Self, theirs: Self) -> (Self, Moved);
}

/// Field by field: one that we have changed is as we have it, all others are as they stand there.
impl Merge for Settings {
    fn merge_changes(base: &Self, ours: &Self, theirs: Self) -> (Self, Moved) {
        let [before, now, mut there] = [base, ours, &theirs].map(fields);
        for (name, value) in now {
            if before.get(&name) != Some(&value) {
                there.insert(name, value);
            }
        }
        let merged = serde_json::from_value(Value::Object(there));
        (merged.unwrap_or_else(|_| ours.clone()), Moved::new())
    }
}

fn fields(settings: &Settings) -> Map<String, Value> {
    match serde_json::to_value(settings) {
        Ok(Value::Object(fields)) => fields,
        _ => Map::new(),
    }
}

/// Ingredient by ingredient and word by word.
impl Merge for OwnRecord {
    fn merge_changes(base: &Self, ours: &Self, theirs: Self) -> (Self, Moved) {
        theirs.with_changes(base, ours)
    }
}
