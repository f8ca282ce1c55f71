//! Reading the record of a baker's own back, field by field. What a field lacks takes its usual value.
//!
//! By hand, and with the first trouble noted instead of turned back at: derived reading of so many fields of text is
//! 22 kB more, 4 kB compressed.

use super::{Label, OwnEntry, OwnField, OwnRecord, OwnWord, Weighing};
use crate::baking::ingredient::Allergen;
use serde::de::{DeserializeOwned, Error};
use serde::{Deserialize, Deserializer};
use serde_json::Value;

impl<'de> Deserialize<'de> for OwnRecord {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let mut reading = Reading::default();
        let record = reading.record(Value::deserialize(from)?);
        match reading.trouble {
            None => Ok(record),
            Some(trouble) => Err(D::Error::custom(trouble)),
        }
    }
}

/// What was found wrong first, in a baker's words.
#[derive(Default)]
struct Reading {
    trouble: Option<String>,
}

impl Reading {
    fn record(&mut self, mut from: Value) -> OwnRecord {
        self.has_fields(&from, "record");
        let mut record = OwnRecord {
            given: self.one(&mut from, "given").unwrap_or(0),
            ..OwnRecord::default()
        };
        for mut from in self.list(&mut from, "entries") {
            record.entries.push(self.entry(&mut from));
        }
        if !record.numbers_hold() {
            self.wrong("entries", "are numbered twice, or higher than anyone gives");
        }
        for mut from in self.list(&mut from, "words") {
            self.has_fields(&from, "words");
            record.words.push(OwnWord {
                words: self.text(&mut from, "words").unwrap_or_default(),
                key: self.text(&mut from, "key"),
                amount: self.text(&mut from, "amount"),
            });
        }
        record
    }

    fn entry(&mut self, from: &mut Value) -> OwnEntry {
        self.has_fields(from, "entries");
        let mut label = take(from, "label");
        if !label.is_null() {
            self.has_fields(&label, "label");
        }
        let mut entry = OwnEntry {
            key: self.text(from, "key").unwrap_or_default(),
            also_called: self.text(from, "also_called").unwrap_or_default(),
            like: self.text(from, "like"),
            note: self.text(from, "note").unwrap_or_default(),
            plant_based: self.one(from, "plant_based"),
            flour: self.one(from, "flour").unwrap_or(false),
            label: Label {
                style: self.one(&mut label, "style").unwrap_or_default(),
                ..Label::default()
            },
            ..OwnEntry::default()
        };
        for allergen in self.list(from, "allergens") {
            let allergen: Option<Allergen> = self.known(allergen, "allergens");
            entry.allergens.extend(allergen);
        }
        for mut weighing in self.list(from, "weighings") {
            entry.weighings.push(self.weighing(&mut weighing));
        }
        for (field, name) in [
            (OwnField::Name, "name"),
            (OwnField::Piece, "piece"),
            (OwnField::Ph, "ph"),
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
            // Figures of the packet stand within the label.
            let beside = matches!(field, OwnField::Name | OwnField::Piece | OwnField::Ph);
            let text = self.text(if beside { from } else { &mut label }, name);
            if let (Some(text), Some(place)) = (text, entry.field(field)) {
                *place = text;
            }
        }
        entry
    }

    fn weighing(&mut self, from: &mut Value) -> Weighing {
        self.has_fields(from, "weighings");
        let mut figures = Vec::new();
        for figure in self.list(from, "figures") {
            figures.push(self.words(figure, "figures").unwrap_or_default());
        }
        Weighing {
            measure: self.one(from, "measure").unwrap_or_default(),
            region: self.one(from, "region").unwrap_or_default(),
            form: self.one(from, "form"),
            filling: self.one(from, "filling"),
            figures,
        }
    }

    #[inline(never)]
    fn wrong(&mut self, name: &str, how: &str) {
        self.trouble
            .get_or_insert_with(|| format!("its {name} {how}"));
    }

    #[inline(never)]
    fn has_fields(&mut self, from: &Value, name: &str) {
        if !from.is_object() {
            self.wrong(name, "has no fields");
        }
    }

    #[inline(never)]
    fn text(&mut self, from: &mut Value, name: &str) -> Option<String> {
        self.words(take(from, name), name)
    }

    fn words(&mut self, from: Value, name: &str) -> Option<String> {
        match from {
            Value::String(text) => return Some(text),
            Value::Null => {}
            _ => self.wrong(name, "is no text"),
        }
        None
    }

    #[inline(never)]
    fn list(&mut self, from: &mut Value, name: &str) -> Vec<Value> {
        match take(from, name) {
            Value::Array(items) => return items,
            Value::Null => {}
            _ => self.wrong(name, "is no list"),
        }
        Vec::new()
    }

    fn one<T: DeserializeOwned>(&mut self, from: &mut Value, name: &str) -> Option<T> {
        self.known(take(from, name), name)
    }

    /// One of the words of a closed list, a number, yes or no.
    fn known<T: DeserializeOwned>(&mut self, from: Value, name: &str) -> Option<T> {
        if from.is_null() {
            return None;
        }
        let value = serde_json::from_value(from).ok();
        if value.is_none() {
            self.wrong(name, "is nothing that this page knows");
        }
        value
    }
}

/// The value of that name; null where there is none.
#[inline(never)]
fn take(from: &mut Value, name: &str) -> Value {
    from.get_mut(name).map(Value::take).unwrap_or_default()
}
