//! What the baker mends once is remembered for the same words in every recipe, and can be taken back with the mend.

use super::Bench;
use crate::baking::ingredient::own::Meaning;
use crate::baking::recipe::plain_line;
use crate::baking::worksheet::Offer;
use crate::ui::history::Taught;

impl Bench {
    /// Says which ingredient a row is: for this recipe, and for its words from now on where their reading was unsure.
    /// A reading that was sure is changed for this recipe alone, for a swap is no mend.
    pub fn call(self, row: usize, offer: &Offer) {
        let place = self.place(row);
        let words = self.words(row);
        let is_unsure = self.sheet(|sheet| {
            let line = sheet.lines.get(row);
            line.is_some_and(|line| line.flagged || line.ingredient.is_none())
        });
        let taught = (is_unsure && !offer.instead && !words.is_empty())
            .then(|| self.teach(words, false, Some(Meaning::Ingredient(offer.key.clone()))));
        let what = match &taught {
            Some(taught) => format!(
                "line {} is {}; remembered for \"{}\"",
                place.0, offer.name, taught.words
            ),
            None => format!("line {} is {}", place.0, offer.name),
        };
        self.change_taught(what, false, taught, |inputs| {
            inputs.name(place, Some(offer.key.clone()));
        });
    }

    /// The words of a row whose ingredient was said for this recipe alone; `None` where nothing is to be remembered.
    pub fn unremembered(self, row: usize) -> Option<String> {
        let words = self.words(row);
        let key = self.named(row)?;
        let known = self.own_now(|own| own.meaning(&words, false));
        (!words.is_empty() && known != Some(Meaning::Ingredient(key))).then_some(words)
    }

    /// Remembers for its words what was said of a row.
    pub fn remember_name(self, row: usize) {
        let (Some(words), Some(key)) = (self.unremembered(row), self.named(row)) else {
            return;
        };
        let what = format!("what \"{words}\" means in every recipe");
        let taught = self.teach(words, false, Some(Meaning::Ingredient(key)));
        self.change_taught(what, false, Some(taught), |_| {});
    }

    /// The key that was said for a row of this recipe.
    fn named(self, row: usize) -> Option<String> {
        let place = self.place(row);
        self.inputs_now(|inputs| inputs.correction(place)?.ingredient.clone())
    }

    /// Says that a row is no ingredient: for this recipe, and for the same line from now on.
    pub fn dismiss(self, row: usize) {
        let (line, _) = self.place(row);
        let taught = self
            .line_words(row)
            .map(|words| self.teach(words, false, Some(Meaning::NoIngredient)));
        let what = format!("line {line} is not an ingredient; remembered for its words");
        self.change_taught(what, false, taught, |inputs| {
            inputs.call_ingredient(line, Some(false));
        });
    }

    /// Says how much of it a row is, as typed: for this recipe, and for the same line from now on.
    pub fn measure(self, row: usize, typed: &str) {
        let place = self.place(row);
        let amount = (!typed.trim().is_empty()).then(|| typed.to_owned());
        let line = self.line_words(row).filter(|_| place.1 == 0);
        let taught = line.map(|words| self.teach(words, true, amount.clone().map(Meaning::Amount)));
        let what = format!("the amount of line {}", place.0);
        self.change_taught(what, true, taught, |inputs| inputs.measure(place, amount));
    }

    /// Takes back what was said of a row, here and for its words.
    pub fn unsay(self, row: usize) {
        let place = self.place(row);
        let is_taught = self.sheet(|sheet| sheet.lines.get(row).is_some_and(|line| line.taught));
        let line = self.line_words(row).unwrap_or_default();
        let has_amount = self.own_now(|own| own.meaning(&line, true).is_some());
        let taught = match (is_taught, has_amount) {
            (_, true) => Some(self.teach(line, true, None)),
            (true, false) => Some(self.teach(self.words(row), false, None)),
            (false, false) => None,
        };
        let what = format!("what line {} was mended to", place.0);
        self.change_taught(what, false, taught, |inputs| inputs.uncorrect(place));
    }

    /// Says that a line that was kept as a note is an ingredient, or takes back that it is none.
    pub fn call_ingredient(self, line: usize, text: &str, corrected: bool) {
        let words = plain_line(text);
        let is_dismissed =
            self.own_now(|own| own.meaning(&words, false) == Some(Meaning::NoIngredient));
        let taught = is_dismissed.then(|| self.teach(words, false, None));
        let what = if corrected {
            format!("what line {line} was mended to")
        } else {
            format!("line {line} is an ingredient")
        };
        self.change_taught(what, false, taught, |inputs| {
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

    /// The whole line of a row in plain words; `None` where there are none.
    fn line_words(self, row: usize) -> Option<String> {
        let words = self.sheet(|sheet| sheet.lines.get(row).map(|line| plain_line(&line.text)));
        words.filter(|words| !words.is_empty())
    }

    /// Gives words a meaning, or takes it from them, and says what they meant before.
    pub(super) fn teach(self, words: String, is_amount: bool, after: Option<Meaning>) -> Taught {
        let before = self.own_now(|own| own.meaning(&words, is_amount));
        self.change_own(|own| match after.clone() {
            Some(meaning) => own.teach(&words, meaning),
            None => own.forget(&words, is_amount),
        });
        Taught {
            words,
            before,
            after,
        }
    }
}
