//! What is kept between visits: versioned records as JSON text, and how each past version loads.
//!
//! A record says its format and version first. A corrupt or newer record is never guessed at and
//! never overwritten: reading it gives a [`SavedTrouble`], and the caller sets the text aside.

mod bin;
mod family;
mod index;
mod limits;
mod merge;
mod room;

pub use bin::BinRecord;
pub use family::families;
pub use index::{HEAD, Listed, ListedVersion, ShelfIndex, first_words, mark};
pub use limits::Limits;
pub use merge::{Merge, Moved};
pub use room::Room;

use super::ingredient::own::OwnRecord;
use super::worksheet::{Inputs, Settings};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// A kind of record that is kept.
pub trait Record: Serialize + DeserializeOwned {
    /// The name that stands in the record's `format` field.
    const FORMAT: &'static str;
    /// The version written today.
    const VERSION: u32;
    /// How much it may hold.
    const LIMITS: Limits = Limits::RECORD;

    /// Turns the body of a past version into today's; `None` where that version never was.
    fn upgrade(version: u32, body: Value) -> Option<Value> {
        (version == Self::VERSION).then_some(body)
    }
}

/// One recipe as kept.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct KeptRecipe {
    /// When it was last changed, in milliseconds since 1970 by the clock of the device.
    pub changed: u64,
    /// The baker's inputs, whole.
    pub inputs: Inputs,
    /// What it is a version of; `None` for a recipe that stands by itself.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub version: Option<VersionOf>,
}

/// What a version was made from.
///
/// The whole original is kept in it, as it was on that day: the one on the shelf may be changed or
/// removed afterwards, and what differs can still be told, and the original be put back. The price is
/// that a version takes twice the room.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct VersionOf {
    /// The version's own name, as typed.
    pub name: String,
    /// The name of the record that it was made from.
    pub of: String,
    /// What stood there when it was made.
    pub original: Inputs,
}

impl VersionOf {
    /// What it is called: its name, where it has one.
    pub fn called(&self) -> &str {
        match self.name.trim() {
            "" => "Unnamed version",
            name => name,
        }
    }
}

impl Record for KeptRecipe {
    const FORMAT: &'static str = "batterwright recipe";
    const VERSION: u32 = 2;

    fn upgrade(version: u32, mut body: Value) -> Option<Value> {
        if version == 1 {
            for inputs in ["/inputs", "/version/original"] {
                if let Some(choices) = body.pointer_mut(&format!("{inputs}/choices")) {
                    shelve_other_pan(choices);
                }
            }
        }
        (1..=Self::VERSION).contains(&version).then_some(body)
    }
}

/// Version 1 knew one pan beside the recipe's own.
fn shelve_other_pan(choices: &mut Value) {
    let Some(choices) = choices.as_object_mut() else {
        return;
    };
    if let Some(pan) = choices.remove("other_pan").filter(|pan| !pan.is_null()) {
        choices.insert("shelf".into(), Value::Array(vec![pan]));
    }
}

impl Record for Settings {
    const FORMAT: &'static str = "batterwright settings";
    const VERSION: u32 = 1;
}

impl Record for OwnRecord {
    const FORMAT: &'static str = "batterwright larder";
    const VERSION: u32 = 1;
}

/// A record as it is written: what it is first, then what it holds.
#[derive(Serialize)]
struct Envelope {
    format: &'static str,
    version: u32,
    body: Value,
}

/// Why a kept record cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SavedTrouble {
    /// It is not what this program writes; the reason, and where.
    Corrupt(String),
    /// It holds more than a record may; what, and how much that is.
    TooMuch(String),
    /// A newer version of this program wrote it.
    Newer {
        /// The version it was written in.
        version: u64,
        /// The newest version that can be read here.
        known: u32,
    },
}

impl std::fmt::Display for SavedTrouble {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Corrupt(reason) | Self::TooMuch(reason) => {
                write!(out, "It cannot be read: {reason}.")
            }
            Self::Newer { version, known } => write!(
                out,
                "It was written by a newer version of this page (record version {version}; this page reads up to {known})."
            ),
        }
    }
}

/// The record as JSON text.
///
/// # Errors
/// A sentence's middle where it holds more than a record may; also where a number in it is not finite, which no record
/// of ours holds.
pub fn to_text<R: Record>(record: &R) -> Result<String, String> {
    let body = serde_json::to_value(record).map_err(|error| error.to_string())?;
    R::LIMITS.check(&body)?;
    let text = serde_json::to_string(&Envelope {
        format: R::FORMAT,
        version: R::VERSION,
        body,
    })
    .map_err(|error| error.to_string())?;
    R::LIMITS.check_length(&text)?;
    Ok(text)
}

/// The record that a JSON text holds, brought up to today's version.
///
/// # Errors
/// [`SavedTrouble`] where the text is damaged, of another format, or newer than this program.
pub fn from_text<R: Record>(text: &str) -> Result<R, SavedTrouble> {
    let corrupt = |reason: String| SavedTrouble::Corrupt(reason);
    R::LIMITS
        .check_length(text)
        .map_err(SavedTrouble::TooMuch)?;
    let mut envelope: Value =
        serde_json::from_str(text).map_err(|error| corrupt(damage(&error)))?;
    let format = envelope
        .get("format")
        .and_then(Value::as_str)
        .unwrap_or("none");
    if format != R::FORMAT {
        return Err(corrupt(format!(
            "its format is \"{format}\", not \"{}\"",
            R::FORMAT
        )));
    }
    let Some(version) = envelope.get("version").and_then(Value::as_u64) else {
        return Err(corrupt("it names no version".into()));
    };
    if version > u64::from(R::VERSION) {
        return Err(SavedTrouble::Newer {
            version,
            known: R::VERSION,
        });
    }
    let body = envelope
        .get_mut("body")
        .map(Value::take)
        .unwrap_or(Value::Null);
    R::LIMITS.check(&body).map_err(SavedTrouble::TooMuch)?;
    let Some(body) = u32::try_from(version)
        .ok()
        .and_then(|version| R::upgrade(version, body))
    else {
        return Err(corrupt(format!("no version {version} was ever written")));
    };
    serde_json::from_value(body)
        .map_err(|error| corrupt(format!("it does not hold what it should ({error})")))
}

/// What is wrong with a text that is no JSON, and where, in a baker's words.
fn damage(error: &serde_json::Error) -> String {
    if error.is_eof() {
        return "it ends too early, so it is cut off".into();
    }
    format!(
        "it is damaged at line {}, letter {}",
        error.line(),
        error.column()
    )
}
