//! What was made of lines of a text before, so that a letter makes its own line alone anew.

use std::collections::HashMap;
use std::sync::Arc;

/// Beyond twice a text's lines and this many more, wordings that are gone are forgotten.
const SPARE: usize = 64;

/// Something made of a line by its words alone, kept by those words.
#[derive(Debug)]
pub struct Seen<T> {
    kept: HashMap<String, (u32, Arc<T>)>,
    /// How often a text was looked at; a wording has the number of the last text that it stood in.
    round: u32,
}

impl<T> Default for Seen<T> {
    fn default() -> Self {
        Self {
            kept: HashMap::new(),
            round: 0,
        }
    }
}

impl<T> Seen<T> {
    /// What is made of each of these lines, in their order. Each wording is made once, however often it stands in a
    /// long paste, and not at all if it stood in a text shortly before.
    pub fn of<'a>(
        &mut self,
        lines: impl Iterator<Item = &'a str>,
        make: impl Fn(&str) -> T,
    ) -> Vec<Arc<T>> {
        self.round = self.round.wrapping_add(1);
        let round = self.round;
        let all: Vec<Arc<T>> = lines
            .map(|line| match self.kept.get_mut(line) {
                Some((last, made)) => {
                    *last = round;
                    made.clone()
                }
                None => {
                    let made = Arc::new(make(line));
                    self.kept.insert(line.to_owned(), (round, made.clone()));
                    made
                }
            })
            .collect();
        if self.kept.len() > 2 * all.len() + SPARE {
            self.kept.retain(|_, (last, _)| *last == round);
        }
        all
    }

    /// Forgets everything.
    pub fn clear(&mut self) {
        self.kept.clear();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::cell::Cell;

    #[test]
    fn a_wording_is_made_once_and_forgotten_when_it_is_gone() {
        let made = Cell::new(0);
        let mut seen = Seen::default();
        let mut lengths = |lines: &[String]| {
            let all = seen.of(lines.iter().map(String::as_str), |line| {
                made.set(made.get() + 1);
                line.len()
            });
            (
                all.iter().map(|it| **it).collect::<Vec<_>>(),
                made.get(),
                seen.kept.len(),
            )
        };
        let few = ["salt".to_owned(), "water".to_owned(), "salt".to_owned()];
        assert_eq!(lengths(&few), (vec![4, 5, 4], 2, 2));
        assert_eq!(lengths(&few), (vec![4, 5, 4], 2, 2));
        let many: Vec<String> = (0..100).map(|at| format!("{at} g flour")).collect();
        assert_eq!(lengths(&many).1, 102);
        assert_eq!(lengths(&few), (vec![4, 5, 4], 102, 2));
    }
}
