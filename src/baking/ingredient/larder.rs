//! The larder: every ingredient that a name can mean, in one country's words, the baker's own among them.
//!
//! Reading and looking up are handed a [`Larder`]; what is the baker's own goes before the tables.

use super::lookup::words_of;
use super::own::{Meaning, OwnRecord};
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
    /// How much a whole line stands for, as typed, by its plain words.
    amounts: HashMap<String, String>,
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
    /// What a baker's record holds. An entry without a name means nothing yet; taught words go before names.
    pub fn of(record: &OwnRecord) -> Self {
        static EDITIONS: AtomicU64 = AtomicU64::new(1);
        let mut own = Self {
            edition: EDITIONS.fetch_add(1, Ordering::Relaxed),
            ..Self::default()
        };
        for entry in record
            .entries
            .iter()
            .filter(|entry| !entry.name.trim().is_empty())
        {
            let ingredient = entry.ingredient();
            own.ingredients.push(ingredient);
            for name in entry.names() {
                own.mean(name, Some(ingredient));
            }
        }
        for word in &record.words {
            match word.meaning() {
                Meaning::NoIngredient => own.mean(&word.words, None),
                Meaning::Ingredient(key) => {
                    let known = own.ingredients.iter().find(|known| known.key == key);
                    // A key that is gone leaves the words to the tables.
                    if let Some(ingredient) = known.copied().or_else(|| by_key(&key)) {
                        own.mean(&word.words, Some(ingredient));
                    }
                }
                Meaning::Amount(amount) => {
                    own.amounts.insert(word.words.clone(), amount);
                }
            }
        }
        own
    }

    fn mean(&mut self, words: &str, ingredient: Option<&'static Ingredient>) {
        let plain = words_of(words).join(" ");
        if !plain.is_empty() {
            self.meanings.insert(plain, ingredient);
        }
    }

    /// Whether the baker added nothing.
    pub fn is_empty(&self) -> bool {
        self.meanings.is_empty() && self.amounts.is_empty()
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

    /// How much these plain words of a whole line stand for, as typed.
    pub fn amount(&self, plain: &[String]) -> Option<&str> {
        if self.amounts.is_empty() {
            return None;
        }
        self.amounts.get(&plain.join(" ")).map(String::as_str)
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
