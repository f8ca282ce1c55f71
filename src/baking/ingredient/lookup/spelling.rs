//! Slips of spelling: words that are one or two letters away from a known one.

use crate::baking::text::letters;

/// A known word with what tells quickly that another is not near.
struct Entry {
    word: String,
    letters: u32,
}

impl Entry {
    /// Makes a known word ready.
    fn new(word: String) -> Self {
        let letters = letters(&word);
        Self { word, letters }
    }
}

/// Known words by their length.
#[derive(Default)]
pub struct Spellings(Vec<Vec<Entry>>);

impl Spellings {
    /// Adds a known word.
    pub fn add(&mut self, word: String) {
        if self.0.len() <= word.len() {
            self.0.resize_with(word.len() + 1, Vec::new);
        }
        self.0[word.len()].push(Entry::new(word));
    }

    /// The words of a length from `least` to `most`.
    fn of_length(&self, least: usize, most: usize) -> impl Iterator<Item = &Entry> {
        self.0.iter().take(most + 1).skip(least).flatten()
    }
}

/// The known words nearest to this one: one slip away for words of five letters and more, two for eight and more.
pub fn near<'a>(word: &str, known: &'a Spellings) -> Vec<&'a str> {
    let length = word.len();
    let allowed = match length {
        0..5 => return Vec::new(),
        5..8 => 1,
        8..40 => 2,
        _ => return Vec::new(),
    };
    let own = letters(word);
    let mut best = allowed;
    let mut found = Vec::new();
    for entry in known.of_length(length - allowed, length + allowed) {
        if entry.word.len() < 4
            || entry.word.len().abs_diff(length) > best
            || (entry.letters ^ own).count_ones() as usize > 2 * best
        {
            continue;
        }
        let distance = slips(word.as_bytes(), entry.word.as_bytes());
        if distance < best {
            best = distance;
            found.clear();
        }
        if distance <= best {
            found.push(entry.word.as_str());
        }
    }
    found
}

/// How many letters were dropped, added, changed or swapped with their neighbour.
pub fn slips(one: &[u8], two: &[u8]) -> usize {
    let width = two.len() + 1;
    let mut before_last = vec![0; width];
    let mut last: Vec<usize> = (0..width).collect();
    let mut current = vec![0; width];
    for (row, letter) in one.iter().enumerate() {
        current[0] = row + 1;
        for (column, other) in two.iter().enumerate() {
            let changed = last[column] + usize::from(letter != other);
            let mut least = changed.min(last[column + 1] + 1).min(current[column] + 1);
            if row > 0 && column > 0 && *letter == two[column - 1] && one[row - 1] == *other {
                least = least.min(before_last[column - 1] + 1);
            }
            current[column + 1] = least;
        }
        std::mem::swap(&mut before_last, &mut last);
        std::mem::swap(&mut last, &mut current);
    }
    last[two.len()]
}

#[cfg(test)]
mod tests {
    use super::{Spellings, near, slips};

    #[test]
    fn slips_are_counted_as_a_typist_makes_them() {
        assert_eq!(slips(b"cinammon", b"cinnamon"), 2);
        assert_eq!(slips(b"surgar", b"sugar"), 1);
        assert_eq!(slips(b"vanlila", b"vanilla"), 1);
        assert_eq!(slips(b"almnod", b"almond"), 1);
        assert_eq!(slips(b"flour", b"flour"), 0);
    }

    #[test]
    fn short_words_are_left_alone() {
        let mut known = Spellings::default();
        known.add("salt".to_owned());
        known.add("sugar".to_owned());
        assert!(near("malt", &known).is_empty());
        assert_eq!(near("suger", &known), ["sugar"]);
    }
}
