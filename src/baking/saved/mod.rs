//! What is kept between visits: versioned records as JSON text, and how each past version loads.
//!
//! A record says its format and version first. A corrupt or newer record is never guessed at and
//! never overwritten: reading it gives a [`SavedTrouble`], and the caller sets the text aside.

mod bin;
mod compact;
mod damage;
mod family;
mod index;
mod limits;
mod merge;
mod room;
mod words;

pub use bin::BinRecord;
pub(super) use damage::kind;
pub use family::families;
pub use index::{HEAD, Listed, ListedVersion, ShelfIndex, mark};
pub use limits::Limits;
pub use merge::{Merge, Moved};
pub use room::Room;
pub use words::{first_words, quoted};

use super::ingredient::own::{OwnEntry, OwnRecord};
use super::pan::PanEntry;
use super::recipe::Correction;
use super::timer::{Timer, Timers};
use super::trial::{Picture, Trial, Weight};
use super::worksheet::{
    CrumbTold, Inputs, LineWords, PutIn, Settings, SwapLine, TimedBake, WeighIn,
};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// A kind of record that is kept.
pub trait Record: Default + Serialize + DeserializeOwned {
    /// The name that stands in the record's `format` field.
    const FORMAT: &'static str;
    /// The version written today.
    const VERSION: u32;
    /// How much it may hold.
    const LIMITS: Limits = Limits::RECORD;
    /// Whether its first fields may be lacking too, each for its usual value.
    const MAY_LACK: bool = false;

    /// Turns the body of a past version into today's; `None` where that version never was.
    fn upgrade(version: u32, body: Value) -> Option<Value> {
        (version == Self::VERSION).then_some(body)
    }

    /// What an item of the list of that name is by default, or the field of that name where it is there at all; null
    /// where neither has a default, and all of it is written.
    fn usual_item(_name: &str) -> Value {
        Value::Null
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

    fn usual_item(name: &str) -> Value {
        match name {
            "corrections" => usual::<Correction>(),
            "own_pan" | "shelf" | "pan" => usual::<PanEntry>(),
            "bakes" => usual::<TimedBake>(),
            "crumbs" => usual::<CrumbTold>(),
            "lines" => usual::<SwapLine>(),
            "held" | "cold" => usual::<LineWords>(),
            "version" => usual::<VersionOf>(),
            _ => Value::Null,
        }
    }
}

fn usual<T: Default + Serialize>() -> Value {
    value_of(&T::default()).unwrap_or_default()
}

/// A value as JSON, by way of its text: a second kind of writing for every type came to 1 kB more on the page.
fn value_of<T: Serialize>(value: &T) -> serde_json::Result<Value> {
    serde_json::from_str(&serde_json::to_string(value)?)
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
    const MAY_LACK: bool = true;
}

impl Record for WeighIn {
    const FORMAT: &'static str = "batterwright weigh-in";
    const VERSION: u32 = 1;

    fn usual_item(name: &str) -> Value {
        match name {
            "put_in" => usual::<PutIn>(),
            "steps" => usual::<LineWords>(),
            _ => Value::Null,
        }
    }
}

impl Record for Trial {
    const FORMAT: &'static str = "batterwright trial";
    const VERSION: u32 = 1;
    const MAY_LACK: bool = true;

    fn usual_item(name: &str) -> Value {
        match name {
            "weighed" => usual::<PutIn>(),
            "weights" => usual::<Weight>(),
            "pictures" => usual::<Picture>(),
            _ => KeptRecipe::usual_item(name),
        }
    }
}

impl Record for Timers {
    const FORMAT: &'static str = "batterwright timers";
    const VERSION: u32 = 1;

    fn usual_item(name: &str) -> Value {
        match name {
            "timers" => usual::<Timer>(),
            _ => Value::Null,
        }
    }
}

impl Record for OwnRecord {
    const FORMAT: &'static str = "batterwright larder";
    const VERSION: u32 = 1;
    const MAY_LACK: bool = true;

    fn usual_item(name: &str) -> Value {
        match name {
            "entries" => usual::<OwnEntry>(),
            _ => Value::Null,
        }
    }
}

/// A record as it is written: what it is first, then what it holds.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Envelope {
    format: &'static str,
    version: u32,
    pub(super) body: Value,
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

impl SavedTrouble {
    /// The reason as a sentence's middle.
    pub fn reason(&self) -> String {
        match self {
            Self::Corrupt(reason) | Self::TooMuch(reason) => reason.clone(),
            Self::Newer { version, known } => format!(
                "it was written by a newer version of this page (record version {version}; this page reads up to {known})"
            ),
        }
    }
}

impl std::fmt::Display for SavedTrouble {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Corrupt(reason) | Self::TooMuch(reason) => {
                write!(out, "It cannot be read: {reason}.")
            }
            Self::Newer { .. } => write!(out, "I{}.", &self.reason()[1..]),
        }
    }
}

/// The record as JSON text.
///
/// # Errors
/// As for [`to_value`].
pub fn to_text<R: Record>(record: &R) -> Result<String, String> {
    let text = serde_json::to_string(&to_value(record)?).map_err(|error| error.to_string())?;
    R::LIMITS.check_length(&text)?;
    Ok(text)
}

/// The record with what it is, as JSON.
///
/// # Errors
/// A sentence's middle where it holds more than a record may; also where a number in it is not finite, which no record
/// of ours holds.
pub fn to_value<R: Record>(record: &R) -> Result<Envelope, String> {
    let mut body = value_of(record).map_err(|error| error.to_string())?;
    R::LIMITS.check(&body)?;
    compact::compact::<R>(&mut body);
    Ok(Envelope {
        format: R::FORMAT,
        version: R::VERSION,
        body,
    })
}

/// The record that a JSON text holds, brought up to today's version.
///
/// # Errors
/// [`SavedTrouble`] where the text is damaged, of another format, newer than this program, or beyond its limits.
pub fn from_text<R: Record>(text: &str) -> Result<R, SavedTrouble> {
    R::LIMITS
        .check_length(text)
        .map_err(SavedTrouble::TooMuch)?;
    // What is wrong with a record is looked for in its text once more: a second body for every sound one takes time.
    read_value(json(text).map_err(SavedTrouble::Corrupt)?, &|| {
        json(text).unwrap_or_default()
    })
}

/// Any JSON, or what is wrong with it and where, as a sentence's middle.
pub(super) fn json(text: &str) -> Result<Value, String> {
    serde_json::from_str(text).map_err(|error| damage::of_text(&error))
}

/// As [`from_text`], of what was read as JSON.
///
/// # Errors
/// As for [`from_text`].
pub fn from_value<R: Record>(envelope: Value) -> Result<R, SavedTrouble> {
    read_value(envelope.clone(), &|| envelope.clone())
}

/// What an envelope holds; `again` gives the same envelope where something is wrong.
fn read_value<R: Record>(
    mut envelope: Value,
    again: &dyn Fn() -> Value,
) -> Result<R, SavedTrouble> {
    let corrupt = |reason: String| SavedTrouble::Corrupt(reason);
    let version = version::<R>(&envelope)?;
    let body = body_of(&mut envelope);
    R::LIMITS.check(&body).map_err(SavedTrouble::TooMuch)?;
    let Some(body) = R::upgrade(version, body) else {
        return Err(corrupt(format!("no version {version} was ever written")));
    };
    serde_json::from_value(body).map_err(|_| {
        let body = R::upgrade(version, body_of(&mut again())).unwrap_or_default();
        corrupt(damage::of_body::<R>(&body))
    })
}

fn body_of(envelope: &mut Value) -> Value {
    envelope
        .get_mut("body")
        .map(Value::take)
        .unwrap_or_default()
}

/// The version that it says it has, which is one that may be known here.
fn version<R: Record>(envelope: &Value) -> Result<u32, SavedTrouble> {
    let format = envelope.get("format").and_then(Value::as_str);
    let Some(format) = format else {
        return Err(SavedTrouble::Corrupt(format!(
            "it does not say that it is a {}",
            R::FORMAT
        )));
    };
    if format != R::FORMAT {
        return Err(SavedTrouble::Corrupt(format!(
            "its format is {}, not \"{}\"",
            quoted(format),
            R::FORMAT
        )));
    }
    let Some(version) = envelope.get("version").and_then(Value::as_u64) else {
        return Err(SavedTrouble::Corrupt("it names no version".into()));
    };
    match u32::try_from(version) {
        Ok(version) if version <= R::VERSION => Ok(version),
        _ => Err(SavedTrouble::Newer {
            version,
            known: R::VERSION,
        }),
    }
}
