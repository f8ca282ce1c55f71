//! A record without what equals its usual value: nine tenths of a recipe's choices are never made.
//!
//! What a field lacks takes its usual value when a record is read, so that leaving it out changes no meaning, and a page
//! of yesterday reads it too.

use super::{Record, usual};
use serde_json::{Map, Value};

/// Takes out what has its usual value, below the first fields, which always stand.
pub(super) fn compact<R: Record>(body: &mut Value) {
    let usual = usual::<R>();
    for (name, value) in fields(body) {
        prune::<R>(value, usual.get(name).unwrap_or(&Value::Null), name);
    }
}

/// `usual` is what stands there by default; `name` that of the field, or of the list for one of its items.
fn prune<R: Record>(value: &mut Value, usual: &Value, name: &str) {
    match value {
        Value::Array(items) => {
            let usual = R::usual_item(name);
            for item in items {
                prune::<R>(item, &usual, name);
            }
        }
        Value::Object(fields) => {
            // One that is nothing by default stays, empty or not: that it is there says something.
            let item = usual.is_null().then(|| R::usual_item(name));
            let usual = item.as_ref().unwrap_or(usual);
            fields.retain(|name, value| usual.get(name) != Some(value));
            for (name, value) in fields {
                prune::<R>(value, usual.get(name).unwrap_or(&Value::Null), name);
            }
        }
        _ => {}
    }
}

fn fields(value: &mut Value) -> impl Iterator<Item = (&String, &mut Value)> {
    value.as_object_mut().into_iter().flat_map(Map::iter_mut)
}
