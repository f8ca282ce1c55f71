//! All that a baker has taught us: own ingredients, and words of recipes that mean one of the larder.

use super::OwnEntry;
use serde::Serialize;
use std::collections::HashSet;

/// What stands before the number of a key.
const KEY: &str = "own/";

/// Words of a line that the baker taught us.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct OwnWord {
    /// The words as they stood in the line.
    pub words: String,
    /// The key of the ingredient that they mean, own or of the tables; `None` where they name no ingredient.
    pub key: Option<String>,
    /// How much these words of a whole line stand for, as typed: "2 cups". They then mean no ingredient by themselves.
    pub amount: Option<String>,
}

/// What words mean to the baker.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Meaning {
    /// The ingredient of this key.
    Ingredient(String),
    /// No ingredient.
    NoIngredient,
    /// So much of the ingredient in the line.
    Amount(String),
}

impl OwnWord {
    /// What the words mean.
    pub fn meaning(&self) -> Meaning {
        match (&self.amount, &self.key) {
            (Some(amount), _) => Meaning::Amount(amount.clone()),
            (None, Some(key)) => Meaning::Ingredient(key.clone()),
            (None, None) => Meaning::NoIngredient,
        }
    }

    /// Whether it tells the same of the same words as another: what they name, or how much.
    pub(super) fn is_like(&self, other: &Self) -> bool {
        self.words == other.words && self.amount.is_some() == other.amount.is_some()
    }
}

/// No baker gives so many numbers; behind the last that there is, none would be left.
const MOST_GIVEN: u32 = 1_000_000;

/// Everything of a baker's own, as it is kept.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct OwnRecord {
    /// Own ingredients, in the order in which they were made.
    pub entries: Vec<OwnEntry>,
    /// Taught words.
    pub words: Vec<OwnWord>,
    /// The highest number ever given as a key, so that none is given again.
    pub given: u32,
}

/// What came in with a file.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Merged {
    /// Ingredients that came in.
    pub entries: usize,
    /// Of these, the ones that got a new number, since another ingredient had theirs.
    pub renumbered: usize,
    /// Taught words that came in.
    pub words: usize,
    /// Ingredients and words that were here already, just so.
    pub there: usize,
    /// Words that were taught otherwise here, which stays.
    pub otherwise: usize,
}

impl OwnRecord {
    /// Whether nothing is in it.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty() && self.words.is_empty()
    }

    /// What words name to the baker, or how much they stand for.
    pub fn meaning(&self, words: &str, is_amount: bool) -> Option<Meaning> {
        let taught = self
            .words
            .iter()
            .find(|taught| taught.words == words && taught.amount.is_some() == is_amount);
        taught.map(OwnWord::meaning)
    }

    /// Gives words a meaning.
    pub fn teach(&mut self, words: &str, meaning: Meaning) {
        let (key, amount) = match meaning {
            Meaning::Ingredient(key) => (Some(key), None),
            Meaning::NoIngredient => (None, None),
            Meaning::Amount(amount) => (None, Some(amount)),
        };
        self.forget(words, amount.is_some());
        self.words.push(OwnWord {
            words: words.to_owned(),
            key,
            amount,
        });
    }

    /// Takes what words name from them, or how much they stand for.
    pub fn forget(&mut self, words: &str, is_amount: bool) {
        self.words
            .retain(|taught| taught.words != words || taught.amount.is_some() != is_amount);
    }

    /// The entry of that key.
    pub fn entry(&self, key: &str) -> Option<&OwnEntry> {
        self.entries.iter().find(|entry| entry.key == key)
    }

    /// The entry of that number.
    pub fn numbered(&self, wanted: u32) -> Option<&OwnEntry> {
        let mut entries = self.entries.iter();
        entries.find(|entry| number(&entry.key) == Some(wanted))
    }

    /// The entry of that number, to be changed.
    pub fn numbered_mut(&mut self, wanted: u32) -> Option<&mut OwnEntry> {
        let mut entries = self.entries.iter_mut();
        entries.find(|entry| number(&entry.key) == Some(wanted))
    }

    /// Adds an entry under a fresh key, which is given back.
    pub fn add(&mut self, entry: OwnEntry) -> String {
        self.given = self.given().saturating_add(1);
        let key = format!("{KEY}{}", self.given);
        self.entries.push(OwnEntry {
            key: key.clone(),
            ..entry
        });
        key
    }

    /// Whether a key means an ingredient here, or may come to mean one.
    pub fn may_mean(&self, key: &str) -> bool {
        self.entry(key).is_some() || number(key).is_some_and(|number| number > self.given())
    }

    /// Whether every entry's number is its alone, and there are more to give.
    pub(super) fn numbers_hold(&self) -> bool {
        let mut keys = HashSet::new();
        let mut numbered = self.entries.iter().filter(|entry| !entry.key.is_empty());
        self.given() <= MOST_GIVEN && numbered.all(|entry| keys.insert(&entry.key))
    }

    /// The highest number given so far, by the count and by the entries, should the two differ.
    fn given(&self) -> u32 {
        let numbers = self.entries.iter().filter_map(|entry| number(&entry.key));
        numbers.fold(self.given, u32::max)
    }

    /// Takes in what another record holds. An entry that is here already is skipped, under whatever key; one whose key
    /// another has gets a fresh one, and the words that mean it follow. Words that are taught here stay as they are.
    pub fn merge(&mut self, other: Self) -> Merged {
        self.merge_moving(other).0
    }

    /// As [`OwnRecord::merge`]; also the keys of theirs that are another here, each with that one.
    pub fn merge_moving(&mut self, other: Self) -> (Merged, Vec<(String, String)>) {
        let mut merged = Merged::default();
        let mut moved: Vec<(String, String)> = Vec::new();
        let before = self.given();
        // Fresh keys lie behind all of theirs, so that one that moves takes no other's place.
        self.given = before.max(other.given());
        for entry in other.entries {
            let theirs = entry.key.clone();
            let same = |ours: &&OwnEntry| {
                **ours
                    == OwnEntry {
                        key: ours.key.clone(),
                        ..entry.clone()
                    }
            };
            let here = if let Some(ours) = self.entries.iter().find(same) {
                merged.there += 1;
                ours.key.clone()
            } else {
                merged.entries += 1;
                match number(&theirs) {
                    // A lower number was given here once, and words may still mean what had it.
                    Some(number) if number > before && self.entry(&theirs).is_none() => {
                        self.entries.push(entry);
                        theirs.clone()
                    }
                    _ => {
                        merged.renumbered += 1;
                        self.add(entry)
                    }
                }
            };
            if here != theirs {
                moved.push((theirs, here));
            }
        }
        for mut word in other.words {
            if let Some((_, here)) = moved
                .iter()
                .find(|(theirs, _)| Some(theirs) == word.key.as_ref())
            {
                word.key = Some(here.clone());
            }
            match self.words.iter().find(|ours| ours.is_like(&word)) {
                Some(ours) if ours.meaning() == word.meaning() => merged.there += 1,
                Some(_) => merged.otherwise += 1,
                None => {
                    merged.words += 1;
                    self.words.push(word);
                }
            }
        }
        (merged, moved)
    }
}

impl Merged {
    /// What came in, as a sentence.
    pub fn sentence(&self) -> String {
        let came = match (self.entries, self.words) {
            (0, 0) => "Nothing new came in".to_owned(),
            (entries, 0) => format!("{} came in", ingredients(entries)),
            (0, words) => format!("{} came in", taught(words)),
            (entries, words) => format!("{} and {} came in", ingredients(entries), taught(words)),
        };
        let mut said = vec![came];
        if self.renumbered > 0 {
            said.push(format!(
                "{} got a new number, for another has the old one",
                self.renumbered
            ));
        }
        if self.there > 0 {
            said.push(format!("{} were here already", self.there));
        }
        if self.otherwise > 0 {
            said.push(format!(
                "{} are taught otherwise here, which stays",
                taught(self.otherwise)
            ));
        }
        said.join("; ") + "."
    }
}

fn ingredients(count: usize) -> String {
    match count {
        1 => "1 ingredient".into(),
        count => format!("{count} ingredients"),
    }
}

fn taught(count: usize) -> String {
    match count {
        1 => "1 taught word".into(),
        count => format!("{count} taught words"),
    }
}

/// Whether a key is one of an own ingredient, here or elsewhere.
pub fn is_own_key(key: &str) -> bool {
    key.starts_with(KEY)
}

fn number(key: &str) -> Option<u32> {
    key.strip_prefix(KEY)?.parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn named(name: &str) -> OwnEntry {
        OwnEntry {
            name: name.into(),
            ..OwnEntry::default()
        }
    }

    fn word(words: &str, key: &str) -> OwnWord {
        OwnWord {
            words: words.into(),
            key: Some(key.into()),
            amount: None,
        }
    }

    #[test]
    fn a_key_is_never_given_twice() {
        let mut record = OwnRecord::default();
        assert_eq!(record.add(named("hazel block")), "own/1");
        assert_eq!(record.add(named("plum spread")), "own/2");
        record.entries.pop();
        assert_eq!(record.add(named("rye malt")), "own/3");
    }

    #[test]
    fn a_record_merged_twice_adds_nothing_the_second_time() {
        let mut ours = OwnRecord::default();
        ours.add(named("hazel block"));
        let mut theirs = OwnRecord::default();
        theirs.add(named("plum spread"));
        theirs.add(named("rye malt"));
        theirs.words = vec![
            word("plum stuff", "own/1"),
            word("malt", "own/2"),
            word("ap", "plain_flour"),
        ];
        let first = ours.merge(theirs.clone());
        assert_eq!(
            first,
            Merged {
                entries: 2,
                renumbered: 1,
                words: 3,
                ..Merged::default()
            }
        );
        let keys: Vec<_> = ours
            .entries
            .iter()
            .map(|entry| entry.key.as_str())
            .collect();
        assert_eq!(keys, ["own/1", "own/3", "own/2"]);
        let plum = ours
            .entries
            .iter()
            .find(|entry| entry.name == "plum spread");
        assert_eq!(ours.words[0].key.as_ref(), plum.map(|entry| &entry.key));
        let malt = ours.entries.iter().find(|entry| entry.name == "rye malt");
        assert_eq!(ours.words[1].key.as_ref(), malt.map(|entry| &entry.key));
        assert_eq!(ours.words[2].key.as_deref(), Some("plain_flour"));

        let before = ours.clone();
        let second = ours.merge(theirs);
        assert_eq!(
            second,
            Merged {
                there: 5,
                ..Merged::default()
            }
        );
        assert_eq!(ours, before);
        assert_eq!(
            second.sentence(),
            "Nothing new came in; 5 were here already."
        );
    }

    #[test]
    fn words_taught_here_stay() {
        let mut ours = OwnRecord {
            words: vec![word("plant block", "butter")],
            ..OwnRecord::default()
        };
        let merged = ours.merge(OwnRecord {
            words: vec![word("plant block", "margarine")],
            ..OwnRecord::default()
        });
        assert_eq!(merged.otherwise, 1);
        assert_eq!(ours.words[0].key.as_deref(), Some("butter"));
    }
}
