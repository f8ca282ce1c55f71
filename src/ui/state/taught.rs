//! What the baker mends once is remembered for the same words in every recipe, and can be taken back with the mend.

use super::Bench;
use crate::baking::recipe::plain_line;
use crate::ui::history::Taught;

impl Bench {
    /// Says which ingredient a row is: for this recipe, and for its words from now on.
    pub fn call(self, row: usize, key: &str, name: &str) {
        let place = self.place(row);
        let words = self.words(row);
        let taught = (!words.is_empty()).then(|| self.teach(words, Some(Some(key.to_owned()))));
        let what = match &taught {
            Some(taught) => format!(
                "line {} is {name}; remembered for \"{}\"",
                place.0, taught.words
            ),
            None => format!("line {} is {name}", place.0),
        };
        self.change_taught(what, taught, |inputs| {
            inputs.name(place, Some(key.to_owned()));
        });
    }

    /// Says that a row is no ingredient: for this recipe, and for the same line from now on.
    pub fn dismiss(self, row: usize) {
        let (line, _) = self.place(row);
        let words = self.sheet(|sheet| sheet.lines.get(row).map(|line| plain_line(&line.text)));
        let taught = words
            .filter(|words| !words.is_empty())
            .map(|words| self.teach(words, Some(None)));
        let what = format!("line {line} is not an ingredient; remembered for its words");
        self.change_taught(what, taught, |inputs| {
            inputs.call_ingredient(line, Some(false));
        });
    }

    /// Takes back what was said of a row, here and for its words.
    pub fn unsay(self, row: usize) {
        let place = self.place(row);
        let taught = self
            .sheet(|sheet| sheet.lines.get(row).is_some_and(|line| line.taught))
            .then(|| self.teach(self.words(row), None));
        self.change_taught(
            format!("what line {} was mended to", place.0),
            taught,
            |inputs| inputs.uncorrect(place),
        );
    }

    /// Says that a line that was kept as a note is an ingredient, or takes back that it is none.
    pub fn call_ingredient(self, line: usize, text: &str, corrected: bool) {
        let words = plain_line(text);
        let is_dismissed =
            self.own_now(|own| own.meaning(&words).is_some_and(|meaning| meaning.is_none()));
        let taught = is_dismissed.then(|| self.teach(words, None));
        let what = if corrected {
            format!("what line {line} was mended to")
        } else {
            format!("line {line} is an ingredient")
        };
        self.change_taught(what, taught, |inputs| {
            if corrected {
                inputs.uncorrect((line, 0));
            } else {
                inputs.call_ingredient(line, Some(true));
            }
        });
    }

    /// The words that were read as a row's name.
    fn words(self, row: usize) -> String {
        self.sheet(|sheet| sheet.lines.get(row).map(|line| line.words.clone()))
            .unwrap_or_default()
    }

    /// Gives words a meaning, or none, and says what they meant before.
    pub(super) fn teach(self, words: String, after: Option<Option<String>>) -> Taught {
        let mut before = None;
        self.change_own(|own| before = own.teach(&words, after.clone()));
        Taught {
            words,
            before,
            after,
        }
    }
}
