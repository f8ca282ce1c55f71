//! Reading the record of a baker's own back, field by field. What a field lacks takes its usual value.
//!
//! By hand: derived reading of so many fields of text comes to some 20 kB, more than the rest of this folder.

use super::{Label, OwnEntry, OwnField, OwnRecord, OwnWord, Weighing};
use crate::baking::ingredient::Allergen;
use serde::de::{DeserializeOwned, Error};
use serde::{Deserialize, Deserializer};
use serde_json::Value;

/// What is wrong, in a baker's words.
type Read<T> = Result<T, String>;

impl<'de> Deserialize<'de> for OwnRecord {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        record(Value::deserialize(from)?).map_err(D::Error::custom)
    }
}

fn record(mut from: Value) -> Read<OwnRecord> {
    fields(&from, "record")?;
    Ok(OwnRecord {
        entries: list(&mut from, "entries")?
            .into_iter()
            .map(entry)
            .collect::<Read<_>>()?,
        words: list(&mut from, "words")?
            .into_iter()
            .map(word)
            .collect::<Read<_>>()?,
        given: one(&mut from, "given")?.unwrap_or(0),
    })
}

fn word(mut from: Value) -> Read<OwnWord> {
    fields(&from, "words")?;
    Ok(OwnWord {
        words: words(&mut from, "words")?.unwrap_or_default(),
        key: words(&mut from, "key")?,
    })
}

fn entry(mut from: Value) -> Read<OwnEntry> {
    fields(&from, "entries")?;
    let mut entry = OwnEntry {
        key: words(&mut from, "key")?.unwrap_or_default(),
        also_called: words(&mut from, "also_called")?.unwrap_or_default(),
        like: words(&mut from, "like")?,
        note: words(&mut from, "note")?.unwrap_or_default(),
        plant_based: one(&mut from, "plant_based")?,
        flour: one(&mut from, "flour")?.unwrap_or(false),
        ..OwnEntry::default()
    };
    for allergen in list(&mut from, "allergens")? {
        let allergen: Option<Allergen> = known(allergen, "allergens")?;
        entry.allergens.extend(allergen);
    }
    for weighing in list(&mut from, "weighings")? {
        entry.weighings.push(weighed(weighing)?);
    }
    let mut label = take(&mut from, "label");
    if !label.is_null() {
        fields(&label, "label")?;
    }
    entry.label = Label {
        style: one(&mut label, "style")?.unwrap_or_default(),
        ..Label::default()
    };
    for (field, name) in [
        (OwnField::Name, "name"),
        (OwnField::Piece, "piece"),
        (OwnField::Ph, "ph"),
    ] {
        typed(&mut entry, field, &mut from, name)?;
    }
    for (field, name) in [
        (OwnField::Per, "per"),
        (OwnField::Fat, "fat"),
        (OwnField::Carbohydrate, "carbohydrate"),
        (OwnField::Sugars, "sugars"),
        (OwnField::Fibre, "fibre"),
        (OwnField::Protein, "protein"),
        (OwnField::Salt, "salt"),
        (OwnField::Sodium, "sodium"),
        (OwnField::Water, "water"),
        (OwnField::Alcohol, "alcohol"),
    ] {
        typed(&mut entry, field, &mut label, name)?;
    }
    Ok(entry)
}

fn weighed(mut from: Value) -> Read<Weighing> {
    fields(&from, "weighings")?;
    let figures = list(&mut from, "figures")?
        .into_iter()
        .map(|figure| text(figure, "figures").map(Option::unwrap_or_default))
        .collect::<Read<_>>()?;
    Ok(Weighing {
        measure: one(&mut from, "measure")?.unwrap_or_default(),
        region: one(&mut from, "region")?.unwrap_or_default(),
        form: one(&mut from, "form")?,
        filling: one(&mut from, "filling")?,
        figures,
    })
}

/// Puts the text of a field where it was typed.
fn typed(entry: &mut OwnEntry, field: OwnField, from: &mut Value, name: &str) -> Read<()> {
    if let (Some(text), Some(place)) = (words(from, name)?, entry.field(field)) {
        *place = text;
    }
    Ok(())
}

/// Refuses what has no fields where some are looked for.
fn fields(from: &Value, name: &str) -> Read<()> {
    match from.is_object() {
        true => Ok(()),
        false => Err(format!("its {name} has no fields")),
    }
}

/// The value of that name; null where there is none.
fn take(from: &mut Value, name: &str) -> Value {
    from.get_mut(name).map(Value::take).unwrap_or_default()
}

fn words(from: &mut Value, name: &str) -> Read<Option<String>> {
    text(take(from, name), name)
}

fn text(from: Value, name: &str) -> Read<Option<String>> {
    match from {
        Value::Null => Ok(None),
        Value::String(text) => Ok(Some(text)),
        _ => Err(format!("its {name} is no text")),
    }
}

fn list(from: &mut Value, name: &str) -> Read<Vec<Value>> {
    match take(from, name) {
        Value::Null => Ok(Vec::new()),
        Value::Array(items) => Ok(items),
        _ => Err(format!("its {name} is no list")),
    }
}

fn one<T: DeserializeOwned>(from: &mut Value, name: &str) -> Read<Option<T>> {
    known(take(from, name), name)
}

/// One of the words of a closed list, a number, yes or no.
fn known<T: DeserializeOwned>(from: Value, name: &str) -> Read<Option<T>> {
    if from.is_null() {
        return Ok(None);
    }
    match serde_json::from_value(from) {
        Ok(value) => Ok(Some(value)),
        Err(_) => Err(format!("its {name} is nothing that this page knows")),
    }
}
