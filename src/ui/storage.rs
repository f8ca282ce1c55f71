//! What is kept on this device, through local storage: one record a recipe, one for the
//! settings, one for the baker's own ingredients.
//!
//! A record that cannot be read is left where it is and listed as set aside; it is never written
//! over. Storage that is full or forbidden is a sentence for the page, never an end of it.

mod kitchen;

pub use kitchen::{
    is_timers_key, keep_timers, keep_weigh_in, load_timers, load_weigh_in, weigh_in_of_key,
};

use super::device;
use crate::baking::ingredient::own::OwnRecord;
use crate::baking::saved::{self, KeptRecipe, Record, SavedTrouble, VersionOf};
use crate::baking::worksheet::{Inputs, Settings};
use gloo_storage::{LocalStorage, Storage as _};
use std::cell::RefCell;

const RECIPE: &str = "batterwright/recipe/";
const SETTINGS: &str = "batterwright/settings";
const LARDER: &str = "batterwright/larder";
const OPEN: &str = "batterwright/open";

/// A recipe on the shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct Kept {
    /// Its record's name.
    pub id: String,
    /// Its first line with words on it.
    pub title: String,
    /// When it was last changed, milliseconds since 1970.
    pub changed: f64,
    /// What it is a version of.
    pub version: Option<KeptVersion>,
}

/// What a recipe on the shelf is a version of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptVersion {
    /// The version's own name.
    pub name: String,
    /// The name of the record that it was made from.
    pub of: String,
    /// What that was called.
    pub from: String,
}

/// A record that cannot be read, left as it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetAside {
    /// The key it stands under.
    pub key: String,
    /// Why it cannot be read, in a sentence.
    pub reason: String,
    /// What stands there.
    pub text: String,
}

/// Everything that is kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shelf {
    /// Recipes, the last changed first.
    pub recipes: Vec<Kept>,
    /// Records that cannot be read.
    pub aside: Vec<SetAside>,
}

thread_local! {
    /// What we last read or wrote, by key: another text under that key is another window's work.
    static OURS: RefCell<Option<(String, String)>> = const { RefCell::new(None) };
}

/// The store, or why there is none.
fn store() -> Result<web_sys::Storage, String> {
    // gloo-storage takes it for granted that the store is there, so that is asked first.
    match web_sys::window()
        .and_then(|window| window.local_storage().ok())
        .flatten()
    {
        Some(_) => Ok(LocalStorage::raw()),
        None => Err("this browser does not let the page keep anything".into()),
    }
}

fn read(key: &str) -> Option<String> {
    store().ok()?.get_item(key).ok().flatten()
}

fn write(key: &str, text: &str) -> Result<(), String> {
    store()?.set_item(key, text).map_err(|error| {
        let name = js_sys::Reflect::get(&error, &"name".into())
            .ok()
            .and_then(|name| name.as_string())
            .unwrap_or_default();
        if name.contains("Quota") || name.contains("QUOTA") {
            "the space that this browser gives the page is full".to_owned()
        } else {
            "this browser does not let the page keep anything".to_owned()
        }
    })
}

/// Keeps a recipe under its name.
///
/// # Errors
/// A sentence's middle that says why it is not being kept.
pub fn keep_recipe(id: &str, inputs: &Inputs, version: Option<&VersionOf>) -> Result<(), String> {
    let key = format!("{RECIPE}{id}");
    let there = read(&key);
    let ours = OURS.with_borrow(|ours| matches!((ours, &there), (Some((at, text)), Some(there)) if *at == key && text == there));
    if !ours && there.is_some_and(|text| saved::from_text::<KeptRecipe>(&text).is_err()) {
        return Err("another window has put a record here that this page cannot read".into());
    }
    let record = KeptRecipe {
        changed: device::now() as u64,
        inputs: inputs.clone(),
        version: version.cloned(),
    };
    let text = saved::to_text(&record).map_err(|error| error.to_string())?;
    write(&key, &text)?;
    OURS.set(Some((key, text)));
    Ok(())
}

/// The recipe of that name; `None` where there is none.
pub fn load_recipe(id: &str) -> Option<Result<KeptRecipe, SavedTrouble>> {
    let key = format!("{RECIPE}{id}");
    let text = read(&key)?;
    let recipe = saved::from_text::<KeptRecipe>(&text);
    if recipe.is_ok() {
        OURS.set(Some((key, text)));
    }
    Some(recipe)
}

/// What a recipe holds that is only looked at and stays as it is; `None` where there is none that can be read.
pub fn peek(id: &str) -> Option<Inputs> {
    let recipe = saved::from_text::<KeptRecipe>(&read(&format!("{RECIPE}{id}"))?);
    recipe.ok().map(|recipe| recipe.inputs)
}

/// The name of the recipe that a key of the store belongs to.
pub fn recipe_of_key(key: &str) -> Option<&str> {
    key.strip_prefix(RECIPE)
}

/// Takes a recipe off the shelf and gives its record, so that it can be put back.
pub fn remove_recipe(id: &str) -> Option<String> {
    let key = format!("{RECIPE}{id}");
    let text = read(&key)?;
    store().ok()?.remove_item(&key).ok()?;
    Some(text)
}

/// Puts a record that was removed back under its name.
///
/// # Errors
/// As for [`keep_recipe`].
pub fn put_recipe_back(id: &str, text: &str) -> Result<(), String> {
    write(&format!("{RECIPE}{id}"), text)
}

/// Everything that is kept, and what had to be set aside.
pub fn shelf() -> Shelf {
    let mut shelf = Shelf::default();
    let Ok(store) = store() else { return shelf };
    let keys = (0..store.length().unwrap_or(0)).filter_map(|index| store.key(index).ok().flatten());
    for key in keys.collect::<Vec<_>>() {
        let Some(text) = read(&key) else { continue };
        let trouble = if let Some(id) = key.strip_prefix(RECIPE) {
            match saved::from_text::<KeptRecipe>(&text) {
                Ok(recipe) => {
                    shelf.recipes.push(kept(id, recipe));
                    continue;
                }
                Err(trouble) => trouble,
            }
        } else {
            let trouble = if key.starts_with(SETTINGS) {
                saved::from_text::<Settings>(&text).err()
            } else if key.starts_with(LARDER) {
                saved::from_text::<OwnRecord>(&text).err()
            } else {
                None
            };
            let Some(trouble) = trouble else { continue };
            trouble
        };
        shelf.aside.push(SetAside {
            key,
            reason: trouble.to_string(),
            text,
        });
    }
    shelf
        .recipes
        .sort_by(|one, other| other.changed.total_cmp(&one.changed));
    shelf.aside.sort_by(|one, other| one.key.cmp(&other.key));
    shelf
}

fn kept(id: &str, recipe: KeptRecipe) -> Kept {
    Kept {
        id: id.to_owned(),
        title: first_words(&recipe.inputs.text),
        changed: recipe.changed as f64,
        version: recipe.version.map(|version| KeptVersion {
            from: first_words(&version.original.text),
            name: version.called().to_owned(),
            of: version.of,
        }),
    }
}

/// What a text is called where there is room for one line: its first one with words on it.
pub fn first_words(text: &str) -> String {
    let line = text
        .lines()
        .map(str::trim)
        .find(|line| !line.is_empty())
        .unwrap_or("Blank recipe");
    line.chars().take(80).collect()
}

/// The settings, or the usual ones where none can be read.
pub fn load_settings() -> Settings {
    place(SETTINGS).1.unwrap_or_default()
}

/// Why the settings that were kept cannot be used, where none have been set anew since.
pub fn settings_trouble() -> Option<SavedTrouble> {
    trouble::<Settings>(SETTINGS)
}

/// Keeps the settings.
///
/// # Errors
/// As for [`keep_recipe`].
pub fn keep_settings(settings: &Settings) -> Result<(), String> {
    keep(SETTINGS, settings)
}

/// The baker's own ingredients and words; none where none can be read.
pub fn load_own() -> OwnRecord {
    place(LARDER).1.unwrap_or_default()
}

/// Why the own ingredients that were kept cannot be used, where none have been kept anew since.
pub fn own_trouble() -> Option<SavedTrouble> {
    trouble::<OwnRecord>(LARDER)
}

/// Keeps the baker's own ingredients and words.
///
/// # Errors
/// As for [`keep_recipe`].
pub fn keep_own(own: &OwnRecord) -> Result<(), String> {
    keep(LARDER, own)
}

/// Whether a key of the store is that of own ingredients.
pub fn is_own_key(key: &str) -> bool {
    key.starts_with(LARDER)
}

/// Keeps the one record of its kind.
fn keep<R: Record>(base: &str, record: &R) -> Result<(), String> {
    let text = saved::to_text(record).map_err(|error| error.to_string())?;
    write(&place::<R>(base).0, &text)
}

fn trouble<R: Record>(base: &str) -> Option<SavedTrouble> {
    let (_, usable) = place::<R>(base);
    let first = read(base).map(|text| saved::from_text::<R>(&text));
    match (usable, first) {
        (None, Some(Err(trouble))) => Some(trouble),
        _ => None,
    }
}

/// The first key that holds a record we can read, or else the first free one: a damaged record stays where it is.
fn place<R: Record>(base: &str) -> (String, Option<R>) {
    let mut key = base.to_owned();
    let mut number = 1_u32;
    loop {
        match read(&key).map(|text| saved::from_text::<R>(&text)) {
            None => return (key, None),
            Some(Ok(record)) => return (key, Some(record)),
            Some(Err(_)) => {
                number += 1;
                key = format!("{base}/{number}");
            }
        }
    }
}

/// What was open when the page was last used.
pub fn last_open() -> Option<String> {
    read(OPEN)
}

/// Remembers what is open.
pub fn set_last_open(name: &str) {
    // A convenience: where it cannot be kept, the banner for the recipe itself says so.
    let _ = write(OPEN, name);
}
