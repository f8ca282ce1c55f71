//! The table of names, made ready once for looking up.

use super::Match;
use super::{MOST_WORDS, spelling, words};
use crate::baking::ingredient::{Ingredient, Larder, Region, aliases, all};
use std::collections::{HashMap, HashSet};
use std::hash::{BuildHasherDefault, Hasher};
use std::sync::OnceLock;

/// Letters to a number, by Fowler, Noll and Vo's rule. What is kept under it comes from the tables, so nobody can
/// choose words that all fall together; the standard library's guard against that costs more than the rest of a look.
#[derive(Default)]
pub struct Letters(u64);

impl Hasher for Letters {
    fn finish(&self) -> u64 {
        self.0
    }

    fn write(&mut self, bytes: &[u8]) {
        for byte in bytes {
            self.0 = (self.0 ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }
}

/// Places in the table of names, by words.
type Places = HashMap<String, Vec<usize>, BuildHasherDefault<Letters>>;
/// Words.
type Words = HashSet<String, BuildHasherDefault<Letters>>;

/// The table of names, made ready for looking up.
pub struct Index {
    /// Places in the table of names, by the name's plain words.
    pub names: Places,
    /// The same with the blanks taken out: "butter milk" is "buttermilk".
    pub squeezed: Places,
    /// Every word of every name.
    pub vocabulary: Words,
    /// The same words, for slips of spelling.
    pub spellings: spelling::Spellings,
    /// Words that describe and change nothing.
    pub describing: Words,
}

impl Index {
    pub fn new() -> Self {
        let mut index = Self {
            names: Places::default(),
            squeezed: Places::default(),
            vocabulary: Words::default(),
            spellings: spelling::Spellings::default(),
            describing: words::DESCRIBING
                .iter()
                .map(|word| words::plain_word(word))
                .collect(),
        };
        for (place, alias) in aliases().iter().enumerate() {
            let plain = words::plain(alias.name, MOST_WORDS);
            index
                .squeezed
                .entry(plain.concat())
                .or_default()
                .push(place);
            index.names.entry(plain.join(" ")).or_default().push(place);
            for word in plain {
                if index.vocabulary.insert(word.clone()) {
                    index.spellings.add(word);
                }
            }
        }
        index
    }

    /// The ingredient whose name is exactly these words.
    pub fn whole(&self, plain: &[String], larder: Larder<'_>) -> Option<Match> {
        if plain.is_empty() {
            return None;
        }
        if let Some(meaning) = larder.own.meaning(plain) {
            return meaning.map(Match::Known);
        }
        let found = self
            .names
            .get(&plain.join(" "))
            .or_else(|| self.squeezed.get(&plain.concat()))?;
        let aliases = aliases();
        let in_region = |wanted: Option<Region>| -> Vec<&'static Ingredient> {
            let mut several: Vec<&'static Ingredient> = Vec::new();
            for place in found
                .iter()
                .filter(|place| aliases[**place].region == wanted && !aliases[**place].is_second)
            {
                let ingredient = &all()[aliases[*place].index];
                if several.iter().all(|known| known.key != ingredient.key) {
                    several.push(ingredient);
                }
            }
            several
        };
        let mut several = in_region(Some(larder.region));
        if several.is_empty() {
            several = in_region(None);
        }
        if several.is_empty() {
            several = found
                .iter()
                .map(|place| &all()[aliases[*place].index])
                .collect();
            several.dedup_by_key(|ingredient| ingredient.key);
        }
        // Second meanings are offered after the first.
        for place in found.iter().filter(|place| aliases[**place].is_second) {
            let ingredient = &all()[aliases[*place].index];
            if several.iter().all(|known| known.key != ingredient.key) {
                several.push(ingredient);
            }
        }
        match several.as_slice() {
            [] => None,
            [one] => Some(Match::Known(one)),
            _ => Some(Match::OneOf(several)),
        }
    }

    /// Whether a word describes and changes nothing.
    pub fn is_describing(&self, word: &str) -> bool {
        self.describing.contains(word)
            || words::looks_describing(word) && !self.vocabulary.contains(word)
    }

    /// The words with those taken out that only describe.
    pub fn undescribed(&self, plain: &[String]) -> Vec<String> {
        plain
            .iter()
            .enumerate()
            .filter(|(place, word)| {
                let is_full_fat = word.as_str() == "fat"
                    && *place > 0
                    && matches!(plain[place - 1].as_str(), "full" | "whole");
                !is_full_fat && !self.is_describing(word)
            })
            .map(|(_, word)| word.clone())
            .collect()
    }
}

/// The index, made once.
pub fn index() -> &'static Index {
    static INDEX: OnceLock<Index> = OnceLock::new();
    INDEX.get_or_init(Index::new)
}
