//! The larder: every ingredient that a name can mean, in one country's words, the baker's own among them.
//!
//! Reading and looking up are handed a [`Larder`]; what is the baker's own goes before the tables.

use super::lookup::words_of;
use super::own::OwnRecord;
use super::{Ingredient, Region, by_key};
use std::collections::HashMap;
use std::sync::atomic::{AtomicU64, Ordering};

/// What words can mean: the tables read in a country's words, and what is the baker's own.
#[derive(Clone, Copy, Debug)]
pub struct Larder<'a> {
    /// Whose words, cups, spoons and eggs.
    pub region: Region,
    /// What the baker added.
    pub own: &'a Own,
}

/// What the baker added: ingredients of their own, and what words of theirs mean.
#[derive(Debug, Default)]
pub struct Own {
    ingredients: Vec<&'static Ingredient>,
    /// By the plain words of a name, blanks between; `None` for words that are no ingredient.
    meanings: HashMap<String, Option<&'static Ingredient>>,
    edition: u64,
}

/// Nothing of the baker's own.
static NONE: std::sync::LazyLock<Own> = std::sync::LazyLock::new(Own::default);

impl Larder<'static> {
    /// The tables alone.
    pub fn of(region: Region) -> Self {
        Self { region, own: &NONE }
    }
}

impl Larder<'_> {
    /// The ingredient of that key, own or from the tables.
    pub fn by_key(&self, key: &str) -> Option<&'static Ingredient> {
        let own = self.own.ingredients.iter().find(|own| own.key == key);
        own.copied().or_else(|| by_key(key))
    }
}

impl Own {
    /// Puts together ingredients with their names, and what other words mean. Words go before names;
    /// of the same words the last counts.
    pub fn new<'n>(
        ingredients: impl IntoIterator<Item = (&'static Ingredient, Vec<String>)>,
        words: impl IntoIterator<Item = (&'n str, Option<&'n str>)>,
    ) -> Self {
        static EDITIONS: AtomicU64 = AtomicU64::new(1);
        let mut own = Self {
            edition: EDITIONS.fetch_add(1, Ordering::Relaxed),
            ..Self::default()
        };
        for (ingredient, names) in ingredients {
            own.ingredients.push(ingredient);
            for name in names.iter().map(String::as_str).chain([ingredient.name]) {
                own.mean(name, Some(ingredient));
            }
        }
        for (words, key) in words {
            let meaning = key.map(|key| {
                let known = own.ingredients.iter().find(|known| known.key == key);
                known.copied().or_else(|| by_key(key))
            });
            // A key that is gone leaves the words to the tables.
            match meaning {
                None => own.mean(words, None),
                Some(Some(ingredient)) => own.mean(words, Some(ingredient)),
                Some(None) => {}
            }
        }
        own
    }

    /// What a baker's record holds. An entry without a name means nothing yet.
    pub fn of(record: &OwnRecord) -> Self {
        let ingredients = record
            .entries
            .iter()
            .filter(|entry| !entry.name.trim().is_empty())
            .map(|entry| {
                let also = entry
                    .also_called
                    .split(',')
                    .map(|name| name.trim().to_owned());
                (entry.ingredient(), also.collect())
            });
        let words = record
            .words
            .iter()
            .map(|word| (word.words.as_str(), word.key.as_deref()));
        Self::new(ingredients, words)
    }

    fn mean(&mut self, words: &str, ingredient: Option<&'static Ingredient>) {
        let plain = words_of(words).join(" ");
        if !plain.is_empty() {
            self.meanings.insert(plain, ingredient);
        }
    }

    /// The baker's own ingredients.
    pub fn ingredients(&self) -> &[&'static Ingredient] {
        &self.ingredients
    }

    /// What exactly these plain words mean to the baker: an ingredient, or none (`Some(None)`).
    pub fn meaning(&self, plain: &[String]) -> Option<Option<&'static Ingredient>> {
        if self.meanings.is_empty() || plain.is_empty() {
            return None;
        }
        self.meanings.get(&plain.join(" ")).copied()
    }

    /// The same of words as they are written. They are not even brought to plain form where nothing was taught:
    /// every line of a paste asks.
    pub fn meaning_of(&self, words: &str) -> Option<Option<&'static Ingredient>> {
        if self.meanings.is_empty() {
            return None;
        }
        self.meaning(&words_of(words))
    }

    /// Tells one state of the baker's larder from another, for what is kept of earlier readings.
    pub fn edition(&self) -> u64 {
        self.edition
    }
}
