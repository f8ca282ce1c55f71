//! Closed lists of words and what each of them means.
//!
//! Every word of a line is asked of some of these lists. A `match` on words would compare it with one after another, and
//! its code would be several kilobytes of the module; as rows of words the lists compress well, and a look at the few words
//! with the same ends and length is enough.

use std::sync::OnceLock;

/// Rows of words, apart by blanks, and what they mean.
pub struct Lexicon<T: 'static> {
    rows: &'static [(&'static str, T)],
    index: OnceLock<Index>,
}

impl<T: 'static> Lexicon<T> {
    /// A list of fewer than 256 rows.
    pub const fn new(rows: &'static [(&'static str, T)]) -> Self {
        Self {
            rows,
            index: OnceLock::new(),
        }
    }

    /// What a word in lower case means, in the order of the rows.
    pub fn all<'a>(&'a self, word: &'a str) -> impl Iterator<Item = &'static T> + 'a {
        let index = self
            .index
            .get_or_init(|| Index::of(&mut self.rows.iter().map(|row| row.0)));
        let rows = self.rows;
        index.rows(word).map(|row| &rows[row].1)
    }

    /// The first thing that a word in lower case means.
    pub fn find(&self, word: &str) -> Option<&'static T> {
        self.all(word).next()
    }

    /// Whether the list has this word in lower case.
    pub fn has(&self, word: &str) -> bool {
        self.find(word).is_some()
    }
}

/// Words with their rows, told apart by their ends and length.
struct Index(Vec<Vec<(&'static str, u8)>>);

/// A power of two, so that words are spread by their lowest bits.
const PLACES: usize = 64;

impl Index {
    fn of(rows: &mut dyn Iterator<Item = &'static str>) -> Self {
        let mut index = Self(vec![Vec::new(); PLACES]);
        for (row, words) in (0..=u8::MAX).zip(rows) {
            for word in words.split(' ') {
                index.0[Self::place(word)].push((word, row));
            }
        }
        index
    }

    fn place(word: &str) -> usize {
        let ends = match word.as_bytes() {
            [first, .., last] => usize::from(*first) + usize::from(*last) * 7,
            _ => 0,
        };
        (ends + word.len() * 3) % PLACES
    }

    fn rows<'a>(&'a self, word: &'a str) -> impl Iterator<Item = usize> + 'a {
        self.0[Self::place(word)]
            .iter()
            .filter(move |known| known.0 == word)
            .map(|known| known.1.into())
    }
}

#[cfg(test)]
mod tests {
    use super::Lexicon;

    #[test]
    fn words_mean_what_their_rows_say() {
        static LIST: Lexicon<u32> =
            Lexicon::new(&[("cup cups", 1), ("can", 2), ("purée", 3), ("can tin", 4)]);
        for (word, meanings) in [
            ("cup", vec![1]),
            ("cups", vec![1]),
            ("cu", vec![]),
            ("can", vec![2, 4]),
            ("tin", vec![4]),
            ("purée", vec![3]),
            ("", vec![]),
            ("é", vec![]),
        ] {
            assert_eq!(
                LIST.all(word).copied().collect::<Vec<_>>(),
                meanings,
                "{word}"
            );
            assert_eq!(LIST.find(word), meanings.first(), "{word}");
            assert_eq!(LIST.has(word), !meanings.is_empty(), "{word}");
        }
    }
}
