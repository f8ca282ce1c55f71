//! How much a record may hold, in one place. A kitchen's recipes stay far below all of it; what is made to fill a
//! device, or to keep it busy, does not.

use serde_json::Value;

/// The most that a kind of record may hold. Lengths are in bytes of UTF-8.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// The whole record, as it is written.
    pub whole: usize,
    /// A recipe's own text, a line of it that something is said of, or a record in the bin.
    pub text: usize,
    /// Any other text: a name, a figure as typed.
    pub field: usize,
    /// The things of a list: corrections, pans, own ingredients.
    pub list: usize,
}

/// What a text is called that may be as long as a recipe is.
const LONG: &str = "text";

impl Limits {
    /// What a recipe, the settings or the larder may hold. A version holds two texts.
    pub const RECORD: Self = Self {
        whole: 2_500_000,
        text: 1_000_000,
        field: 20_000,
        list: 2_000,
    };

    /// What the bin may hold: any text that a browser's store has room for, for it may be one that was damaged.
    pub const BIN: Self = Self {
        whole: 20_000_000,
        text: 10_000_000,
        ..Self::RECORD
    };

    /// Whether a record's text is short enough to be looked at.
    ///
    /// # Errors
    /// A sentence's middle.
    pub fn check_length(&self, text: &str) -> Result<(), String> {
        if text.len() > self.whole {
            return Err(too_long("it", text.len(), self.whole));
        }
        Ok(())
    }

    /// Whether all that a record holds keeps within the limits.
    ///
    /// # Errors
    /// A sentence's middle that names the first place that does not.
    pub fn check(&self, body: &Value) -> Result<(), String> {
        // To name every place on the way takes longer than to read the record.
        if self.holds(body, "") {
            return Ok(());
        }
        self.check_at(body, "", &mut String::from("its "))
    }

    fn holds(&self, value: &Value, name: &str) -> bool {
        match value {
            Value::String(text) => text.len() <= self.most(name),
            Value::Array(items) => {
                items.len() <= self.list && items.iter().all(|item| self.holds(item, name))
            }
            Value::Object(fields) => fields.iter().all(|(name, value)| self.holds(value, name)),
            Value::Null | Value::Bool(_) | Value::Number(_) => true,
        }
    }

    /// How long a text of that name may be.
    fn most(&self, name: &str) -> usize {
        if name == LONG { self.text } else { self.field }
    }

    fn check_at(&self, value: &Value, name: &str, place: &mut String) -> Result<(), String> {
        match value {
            Value::String(text) => {
                let most = self.most(name);
                if text.len() > most {
                    return Err(too_long(place, text.len(), most));
                }
            }
            Value::Array(items) => {
                if items.len() > self.list {
                    return Err(format!(
                        "{place} has {} items, and {} are the most",
                        items.len(),
                        self.list
                    ));
                }
                for (at, item) in items.iter().enumerate() {
                    self.check_below(item, name, &format!("[{at}]"), place)?;
                }
            }
            Value::Object(fields) => {
                for (name, value) in fields {
                    let dot = if place.ends_with(' ') { "" } else { "." };
                    self.check_below(value, name, &format!("{dot}{name}"), place)?;
                }
            }
            Value::Null | Value::Bool(_) | Value::Number(_) => {}
        }
        Ok(())
    }

    fn check_below(
        &self,
        value: &Value,
        name: &str,
        step: &str,
        place: &mut String,
    ) -> Result<(), String> {
        let above = place.len();
        place.push_str(step);
        self.check_at(value, name, place)?;
        place.truncate(above);
        Ok(())
    }
}

fn too_long(what: &str, found: usize, most: usize) -> String {
    // Rounded up: what is too long by a letter is not said to be as long as it may be.
    format!(
        "{what} is {} kB long, and {} kB is the most",
        found.div_ceil(1000),
        most / 1000
    )
}
