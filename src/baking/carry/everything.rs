//! Everything that is kept, as one file of JSON that a person can read.

use super::pictures;
use crate::baking::ingredient::own::OwnRecord;
use crate::baking::saved::{self, Envelope, KeptRecipe, Record, first_words, kind, quoted};
use crate::baking::trial::Trial;
use crate::baking::worksheet::Settings;
use serde::Serialize;
use serde_json::Value;
use std::collections::{BTreeMap, HashMap, HashSet};

const FORMAT: &str = "batterwright everything";
/// Version 1 had no bakes and no pictures.
const VERSION: u64 = 2;

/// The largest file that is looked at, in bytes: twice what a browser gives a page to keep.
pub(super) const LARGEST: usize = 20_000_000;
/// The most recipes that a file may hold.
const MOST_RECIPES: usize = 5_000;
/// The most bakes that a file may hold.
const MOST_TRIALS: usize = 20_000;
/// The longest name of a record, in letters.
const LONGEST_ID: usize = 64;

/// All that is kept on a device.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Everything {
    /// When it was taken out, as ISO 8601 writes it; only shown.
    pub taken_out: String,
    /// The recipes, by the names of their records.
    pub recipes: Vec<Carried>,
    /// The settings, where any were kept.
    pub settings: Option<Settings>,
    /// Own ingredients and taught words, where any were kept.
    pub larder: Option<OwnRecord>,
    /// Bakes that were written down.
    pub trials: Vec<CarriedTrial>,
    /// Pictures of these by their keys, each a JPEG in base64; of some bakes, or of none.
    pub pictures: BTreeMap<String, String>,
}

/// A bake with its place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CarriedTrial {
    /// The name of its recipe's record.
    pub recipe: String,
    /// Its number, one of its own among those of a recipe. Larger ones are later.
    pub id: u64,
    /// The bake.
    pub trial: Trial,
}

/// A recipe with the name of its record.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Carried {
    /// The name.
    pub id: String,
    /// The recipe.
    pub recipe: KeptRecipe,
}

/// The file as it is written: what it is first.
#[derive(Serialize)]
struct File<'a> {
    format: &'static str,
    version: u64,
    taken_out: &'a str,
    settings: Option<Envelope>,
    larder: Option<Envelope>,
    recipes: Vec<Row<'a>>,
    trials: Vec<TrialRow<'a>>,
    pictures: &'a BTreeMap<String, String>,
}

#[derive(Serialize)]
struct TrialRow<'a> {
    recipe: &'a str,
    id: u64,
    record: Envelope,
}

#[derive(Serialize)]
struct Row<'a> {
    id: &'a str,
    record: Envelope,
}

/// The file. The same things give the same file, in whatever order they come.
///
/// # Errors
/// A sentence where a record holds more than one may, which no kept one does.
pub fn write(everything: &Everything) -> Result<String, String> {
    let mut recipes: Vec<&Carried> = everything.recipes.iter().collect();
    recipes.sort_by(|one, other| one.id.cmp(&other.id));
    let mut trials: Vec<&CarriedTrial> = everything.trials.iter().collect();
    trials.sort_by_key(|carried| (&carried.recipe, carried.id));
    let recipes = recipes.into_iter().map(|carried| {
        let record = spread_record(&carried.recipe)?;
        let id = carried.id.as_str();
        Ok(Row { id, record })
    });
    let trials = trials.into_iter().map(|carried| {
        Ok(TrialRow {
            recipe: &carried.recipe,
            id: carried.id,
            record: spread_record(&carried.trial)?,
        })
    });
    let file = File {
        format: FORMAT,
        version: VERSION,
        taken_out: &everything.taken_out,
        settings: optional(everything.settings.as_ref())?,
        larder: optional(everything.larder.as_ref())?,
        recipes: recipes.collect::<Result<_, String>>()?,
        trials: trials.collect::<Result<_, String>>()?,
        pictures: &everything.pictures,
    };
    serde_json::to_string_pretty(&file)
        .map_err(|error| format!("This could not be written: {error}."))
}

fn spread_record<R: Record>(record: &R) -> Result<Envelope, String> {
    let mut record = saved::to_value(record)?;
    spread(&mut record.body);
    Ok(record)
}

fn optional<R: Record>(record: Option<&R>) -> Result<Option<Envelope>, String> {
    record.map(saved::to_value).transpose()
}

/// What a file holds.
///
/// # Errors
/// A sentence with the reason and the place; nothing of such a file is used.
pub fn read(text: &str) -> Result<Everything, String> {
    read_file(text).map_err(|reason| format!("This file cannot be brought in: {reason}."))
}

fn read_file(text: &str) -> Result<Everything, String> {
    if text.len() > LARGEST {
        return Err(format!(
            "it is {} kB long, and {} kB is the most",
            text.len().div_ceil(1000),
            LARGEST / 1000
        ));
    }
    // Some editors put a mark of byte order before a text.
    let mut file = saved::json(text.trim_start_matches('\u{feff}'))?;
    check_kind(&file)?;
    let rows = rows(&mut file, "recipes", MOST_RECIPES)?;
    let rows = rows.ok_or("it has no list of recipes")?;
    let trial_rows = self::rows(&mut file, "trials", MOST_TRIALS)?.unwrap_or_default();
    let pictures = pictures::read(take(&mut file, "pictures"))?;
    let taken_out = match take(&mut file, "taken_out") {
        Value::String(text) if text.len() <= LONGEST_ID => text,
        Value::Null => String::new(),
        other => {
            return Err(format!(
                "its taken_out is {}, which it cannot be",
                kind(&other)
            ));
        }
    };
    let larder = one(&mut file, "larder")?;
    Ok(Everything {
        taken_out,
        recipes: recipes(rows)?,
        settings: one(&mut file, "settings")?,
        larder,
        trials: trials(trial_rows)?,
        pictures,
    })
}

/// The list of that name; `None` where there is none.
fn rows(file: &mut Value, name: &str, most: usize) -> Result<Option<Vec<Value>>, String> {
    match take(file, name) {
        Value::Array(rows) if rows.len() > most => Err(format!(
            "it holds {} {name}, and {most} are the most",
            rows.len()
        )),
        Value::Array(rows) => Ok(Some(rows)),
        Value::Null => Ok(None),
        other => Err(format!(
            "its {name} is {}, which it cannot be",
            kind(&other)
        )),
    }
}

/// Whether it is a file of ours, and no newer one.
fn check_kind(file: &Value) -> Result<(), String> {
    match file.get("format").and_then(Value::as_str) {
        Some(FORMAT) => {}
        Some(format) => {
            return Err(format!(
                "its format is {}, not \"{FORMAT}\"",
                quoted(format)
            ));
        }
        None => return Err(format!("it does not say that it is \"{FORMAT}\"")),
    }
    match file.get("version").and_then(Value::as_u64) {
        Some(1..=VERSION) => Ok(()),
        Some(version) if version > VERSION => Err(format!(
            "a newer version of this page wrote it (file version {version}; this page reads up to {VERSION})"
        )),
        Some(version) => Err(format!("no version {version} was ever written")),
        None => Err("it names no version".into()),
    }
}

fn recipes(rows: Vec<Value>) -> Result<Vec<Carried>, String> {
    let count = rows.len();
    let mut places: HashMap<String, usize> = HashMap::new();
    let mut recipes = Vec::with_capacity(count);
    for (at, mut row) in rows.into_iter().enumerate() {
        let record = record(&mut row);
        let place = place(at, count, &record);
        let id = name(&mut row, "id").map_err(|reason| format!("{place}: {reason}"))?;
        if let Some(before) = places.insert(id.clone(), at) {
            return Err(format!(
                "{place} has the same id as recipe {}: \"{id}\"",
                before + 1
            ));
        }
        let recipe = saved::from_value(record)
            .map_err(|trouble| format!("{place}: {}", trouble.reason()))?;
        recipes.push(Carried { id, recipe });
    }
    Ok(recipes)
}

fn trials(rows: Vec<Value>) -> Result<Vec<CarriedTrial>, String> {
    let count = rows.len();
    let mut numbers: HashSet<(String, u64)> = HashSet::new();
    let mut trials = Vec::with_capacity(count);
    for (at, mut row) in rows.into_iter().enumerate() {
        let wrong = |reason: &str| format!("trial {} of {count}: {reason}", at + 1);
        let record = record(&mut row);
        let recipe = name(&mut row, "recipe").map_err(|reason| wrong(&reason))?;
        let id = take(&mut row, "id");
        let id = id
            .as_u64()
            .ok_or_else(|| wrong(&format!("its id is {}, not a number", kind(&id))))?;
        if !numbers.insert((recipe.clone(), id)) {
            return Err(wrong(&format!(
                "another one has the same recipe and id: {id}"
            )));
        }
        let trial = saved::from_value(record).map_err(|trouble| wrong(&trouble.reason()))?;
        trials.push(CarriedTrial { recipe, id, trial });
    }
    Ok(trials)
}

/// The record of a row, its texts put together again.
fn record(row: &mut Value) -> Value {
    let mut record = take(row, "record");
    if let Some(body) = record.get_mut("body") {
        gather(body);
    }
    record
}

/// The name of a record that stands in a field of a row.
fn name(row: &mut Value, field: &str) -> Result<String, String> {
    match take(row, field) {
        Value::String(id) if is_id(&id) => Ok(id),
        Value::String(id) => Err(format!(
            "its {field} {} is no name of a record",
            quoted(&id)
        )),
        other => Err(format!("its {field} is {}, not a text", kind(&other))),
    }
}

/// "recipe 12 of 40, "Plum cake""; without the title where there is none to read.
fn place(at: usize, count: usize, record: &Value) -> String {
    let text = record.pointer("/body/inputs/text").and_then(Value::as_str);
    let title = text.map_or(String::new(), |text| {
        format!(", {}", quoted(&first_words(text)))
    });
    format!("recipe {} of {count}{title}", at + 1)
}

/// Names go into addresses and the keys of a store: letters, figures and lines, as they are given here.
fn is_id(id: &str) -> bool {
    (1..=LONGEST_ID).contains(&id.len())
        && id
            .bytes()
            .all(|byte| byte.is_ascii_alphanumeric() || byte == b'-' || byte == b'_')
}

/// The one record of its kind; `None` where the file has none.
fn one<R: Record>(file: &mut Value, name: &str) -> Result<Option<R>, String> {
    match take(file, name) {
        Value::Null => Ok(None),
        record => saved::from_value(record)
            .map(Some)
            .map_err(|trouble| format!("{name}: {}", trouble.reason())),
    }
}

/// The value of that name; null where there is none.
fn take(from: &mut Value, name: &str) -> Value {
    from.get_mut(name).map(Value::take).unwrap_or_default()
}

/// Where a text of several lines stands.
const TEXT: &str = "text";

/// Writes a text of several lines as a list of them, for whoever reads the file.
fn spread(value: &mut Value) {
    each_text(value, &|text| {
        if let Value::String(whole) = text
            && whole.contains('\n')
        {
            *text = whole.split('\n').map(Value::from).collect();
        }
    });
}

/// Puts the lines of such a list together again; what is no list of texts stays as it is, and is refused as that.
fn gather(value: &mut Value) {
    each_text(value, &|text| {
        let lines: Option<Vec<&str>> = text
            .as_array()
            .and_then(|lines| lines.iter().map(Value::as_str).collect());
        if let Some(lines) = lines {
            *text = lines.join("\n").into();
        }
    });
}

fn each_text(value: &mut Value, change: &impl Fn(&mut Value)) {
    match value {
        Value::Object(fields) => {
            for (name, value) in fields {
                if name == TEXT {
                    change(value);
                } else {
                    each_text(value, change);
                }
            }
        }
        Value::Array(items) => items.iter_mut().for_each(|item| each_text(item, change)),
        _ => {}
    }
}
