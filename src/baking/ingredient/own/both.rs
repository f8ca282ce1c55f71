//! Changes of two windows to the same larder, brought together.

use super::{OwnEntry, OwnRecord, OwnWord};

impl OwnRecord {
    /// This record with the changes that `ours` has over `base`, from which both come; and keys of ours that had to
    /// become others.
    ///
    /// Nothing written is lost: an ingredient that both have changed stays in both states, one under a fresh key; what
    /// one has changed and the other removed stays. Words that both have taught mean what ours say.
    pub fn with_changes(mut self, base: &Self, ours: &Self) -> (Self, Vec<(String, String)>) {
        let mut moved = Vec::new();
        self.given = self.given.max(ours.given);
        for entry in &ours.entries {
            let before = base.entry(&entry.key);
            if before != Some(entry)
                && let Some(key) = self.take_change(before, entry)
            {
                moved.push((entry.key.clone(), key));
            }
        }
        self.entries.retain(|theirs| {
            let is_removed = ours.entry(&theirs.key).is_none();
            !(is_removed && base.entry(&theirs.key) == Some(theirs))
        });
        self.take_words(base, ours, &moved);
        (self, moved)
    }

    /// Puts in an entry that was `before`; gives the key that it got, where that is another than it had.
    fn take_change(&mut self, before: Option<&OwnEntry>, entry: &OwnEntry) -> Option<String> {
        let there = self.entries.iter_mut().find(|it| it.key == entry.key);
        match there {
            None => self.entries.push(entry.clone()),
            Some(theirs) if theirs == entry => {}
            Some(theirs) if Some(&*theirs) == before => *theirs = entry.clone(),
            Some(_) => return Some(self.add(entry.clone())),
        }
        None
    }

    fn take_words(&mut self, base: &Self, ours: &Self, moved: &[(String, String)]) {
        let same = |one: &OwnWord, other: &OwnWord| one.is_like(other);
        for word in &ours.words {
            if base.words.contains(word) {
                continue;
            }
            let mut word = word.clone();
            let key = moved
                .iter()
                .find(|(from, _)| Some(from) == word.key.as_ref());
            if let Some((_, key)) = key {
                word.key = Some(key.clone());
            }
            self.words.retain(|theirs| !same(theirs, &word));
            self.words.push(word);
        }
        self.words.retain(|theirs| {
            let is_forgotten = !ours.words.iter().any(|word| same(word, theirs));
            !(is_forgotten && base.words.contains(theirs))
        });
    }
}
