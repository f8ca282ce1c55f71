//! What a shelf shows of each recipe, kept beside the recipes so that it opens without reading them all.
//!
//! It is a help and never the truth: an entry holds for one state of its record only, which its mark tells, and a list
//! that is missing, damaged or full of old marks is made anew from the records.

use super::{KeptRecipe, Limits, Record, first_words};
use serde::{Deserialize, Serialize};

/// So many letters of a record tell one state of it from another: format, version and when it was changed stand there.
pub const HEAD: u32 = 96;
/// So many letters of a title are shown.
const TITLE: usize = 80;
/// Between two fields of an entry. No field has it in it.
const BETWEEN: char = '\t';

/// A recipe as a shelf shows it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Listed {
    /// The name of its record.
    pub id: String,
    /// The mark of the record's text that this was made from; see [`mark`].
    pub mark: u32,
    /// Its first line with words on it.
    pub title: String,
    /// When it was last changed, in milliseconds since 1970.
    pub changed: u64,
    /// What it is a version of.
    pub version: Option<ListedVersion>,
}

/// What a recipe on a shelf is a version of.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ListedVersion {
    /// The version's own name.
    pub name: String,
    /// The name of the record that it was made from.
    pub of: String,
    /// What that was called.
    pub from: String,
}

/// Every recipe of a shelf.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ShelfIndex {
    /// In no order.
    pub entries: Vec<Listed>,
}

/// A number that tells one state of a record from its others: of its first [`HEAD`] letters and its whole length
/// (32-bit FNV-1a).
pub fn mark(head: &str, length: u32) -> u32 {
    let bytes = head.bytes().chain(length.to_le_bytes());
    bytes.fold(0x811c_9dc5, |mark, byte| {
        (mark ^ u32::from(byte)).wrapping_mul(0x0100_0193)
    })
}

/// The start of a name, on one line.
fn plain(name: &str) -> String {
    let on_a_line = |letter: char| if letter.is_control() { ' ' } else { letter };
    name.chars().take(TITLE).map(on_a_line).collect()
}

impl Listed {
    /// What the shelf shows of a record that was read.
    pub fn of(id: &str, mark: u32, recipe: &KeptRecipe) -> Self {
        Self {
            id: id.to_owned(),
            mark,
            title: plain(&first_words(&recipe.inputs.text)),
            changed: recipe.changed,
            version: recipe.version.as_ref().map(|version| ListedVersion {
                name: plain(version.called()),
                of: version.of.clone(),
                from: plain(&first_words(&version.original.text)),
            }),
        }
    }

    /// Its title, with the version's name behind it.
    pub fn called(&self) -> String {
        match &self.version {
            Some(version) => format!("{}, {}", self.title, version.name),
            None => self.title.clone(),
        }
    }

    /// The entry as a line; `None` where a name does not fit into one.
    fn line(&self) -> Option<String> {
        let mut fields = vec![
            self.id.clone(),
            self.mark.to_string(),
            self.changed.to_string(),
            self.title.clone(),
        ];
        if let Some(ListedVersion { name, of, from }) = self.version.clone() {
            fields.extend([name, of, from]);
        }
        let fits = |field: &String| !field.contains(char::is_control);
        fields
            .iter()
            .all(fits)
            .then(|| fields.join(&BETWEEN.to_string()))
    }

    fn of_line(line: &str) -> Option<Self> {
        let mut fields = line.split(BETWEEN);
        let mut next = || fields.next().map(str::to_owned);
        Some(Self {
            id: next()?,
            mark: next()?.parse().ok()?,
            changed: next()?.parse().ok()?,
            title: next()?,
            version: match (next(), next(), next()) {
                (Some(name), Some(of), Some(from)) => Some(ListedVersion { name, of, from }),
                _ => None,
            },
        })
    }
}

/// The index as it is written: a line a recipe. As fields of their own, 2,000 of them take ten times as long to read.
#[derive(Serialize, Deserialize)]
struct Lines {
    text: String,
}

impl Serialize for ShelfIndex {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let lines: Vec<String> = self.entries.iter().filter_map(Listed::line).collect();
        let text = lines.join("\n");
        Lines { text }.serialize(to)
    }
}

impl<'de> Deserialize<'de> for ShelfIndex {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let Lines { text } = Lines::deserialize(from)?;
        // A line that cannot be read is a recipe that is looked at again.
        let entries = text.lines().filter_map(Listed::of_line).collect();
        Ok(Self { entries })
    }
}

impl Record for ShelfIndex {
    const FORMAT: &'static str = "batterwright shelf";
    const VERSION: u32 = 1;
    const LIMITS: Limits = Limits::BIN;
}
