//! The shelf: which recipes are kept, without reading all of them, and which records cannot be read.

use super::store::{self, Glance, Refusal};
use super::{BIN, INDEX, LARDER, RECIPE, SETTINGS, TRIAL, kitchen, trials};
use crate::baking::ingredient::own::OwnRecord;
use crate::baking::saved::{
    self, HEAD, KeptRecipe, Listed, Record, SavedTrouble, ShelfIndex, mark,
};
use crate::baking::worksheet::Settings;
use std::cell::RefCell;
use std::collections::HashMap;
use std::sync::Arc;

/// A record that cannot be read, left as it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetAside {
    /// The key it stands under.
    pub key: String,
    /// Why it cannot be read, in a sentence.
    pub reason: String,
}

impl SetAside {
    /// A record with what is wrong with it.
    pub(super) fn of(key: String, trouble: &SavedTrouble) -> Self {
        Self {
            reason: trouble.to_string(),
            key,
        }
    }
}

/// The recipes that are kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shelf {
    /// Recipes, the last changed first.
    pub recipes: Vec<Arc<Listed>>,
    /// Those that cannot be read.
    pub aside: Vec<SetAside>,
}

thread_local! {
    /// What was seen of each recipe last, by its record's name.
    static SEEN: RefCell<Option<HashMap<String, Arc<Listed>>>> = const { RefCell::new(None) };
    /// The marks of bakes that could be read, by key.
    static SOUND: RefCell<HashMap<String, u32>> = RefCell::new(HashMap::new());
}

/// So many letters of a bake's record tell one state of it from another: what it is held against stands first.
const HEAD_OF_TRIAL: u32 = 192;

/// The recipes that are kept, and those that had to be set aside. Only records that have changed since they were last
/// listed are read.
pub fn shelf() -> Result<Shelf, Refusal> {
    let mut shelf = Shelf::default();
    let glance = Glance::new()?;
    let mut seen = SEEN.take().unwrap_or_else(listed_before);
    let known = seen.len();
    let mut is_new = false;
    for key in store::keys()? {
        let Some(id) = key.strip_prefix(RECIPE) else {
            continue;
        };
        let Some((length, head)) = glance.at(&key, HEAD)? else {
            continue;
        };
        let mark = mark(&head, length);
        if let Some(listed) = seen.remove(id).filter(|listed| listed.mark == mark) {
            shelf.recipes.push(listed);
            continue;
        }
        match saved::from_text::<KeptRecipe>(&store::read(&key)?.unwrap_or_default()) {
            Ok(recipe) => {
                is_new = true;
                shelf.recipes.push(Arc::new(Listed::of(id, mark, &recipe)));
            }
            Err(trouble) => shelf.aside.push(SetAside::of(key, &trouble)),
        }
    }
    if is_new || known != shelf.recipes.len() {
        list(&shelf.recipes);
    }
    let by_id = |listed: &Arc<Listed>| (listed.id.clone(), listed.clone());
    SEEN.set(Some(shelf.recipes.iter().map(by_id).collect()));
    shelf
        .recipes
        .sort_by_key(|listed| std::cmp::Reverse(listed.changed));
    Ok(shelf)
}

/// The list as it was seen or kept last, in any order: a hint, for which no record is read and nothing is written.
pub fn shelf_before() -> Vec<Arc<Listed>> {
    let seen = SEEN.with_borrow(|seen| Some(seen.as_ref()?.values().cloned().collect()));
    seen.unwrap_or_else(|| listed_before().into_values().collect())
}

/// What else of ours cannot be read, apart from what is in the bin.
pub fn others_aside() -> Result<Vec<SetAside>, Refusal> {
    let glance = Glance::new()?;
    let mut aside = Vec::new();
    for key in store::keys()? {
        let is_listed = key.starts_with(RECIPE) || key.starts_with(BIN);
        if key.starts_with(store::OURS) && !is_listed {
            aside.extend(trouble_at(&glance, &key)?);
        }
    }
    Ok(aside)
}

/// Has a recipe's record looked at again: its entry said that it can be read, and it cannot.
pub fn doubt(id: &str) {
    let mut seen = SEEN.take().unwrap_or_else(listed_before);
    seen.remove(id);
    SEEN.set(Some(seen));
}

/// The list as it was kept; empty where there is none that can be read.
fn listed_before() -> HashMap<String, Arc<Listed>> {
    let kept = store::read(INDEX).ok().flatten();
    let index = kept.and_then(|text| saved::from_text::<ShelfIndex>(&text).ok());
    let entries = index.unwrap_or_default().entries;
    entries
        .into_iter()
        .map(|listed| (listed.id.clone(), Arc::new(listed)))
        .collect()
}

/// Keeps the list. Where that is refused it is made anew the next time.
fn list(recipes: &[Arc<Listed>]) {
    let index = ShelfIndex {
        entries: recipes.iter().map(|listed| (**listed).clone()).collect(),
    };
    if let Ok(text) = saved::to_text(&index) {
        let _ = store::write(INDEX, &text);
    }
}

/// What is wrong with a record that is neither a recipe nor in the bin, if anything.
fn trouble_at(glance: &Glance, key: &str) -> Result<Option<SetAside>, Refusal> {
    if key.starts_with(TRIAL) {
        return trouble_of_trial(glance, key);
    }
    let trouble = store::read(key)?.and_then(|text| {
        if key.starts_with(SETTINGS) {
            trouble::<Settings>(&text)
        } else if key.starts_with(LARDER) {
            trouble::<OwnRecord>(&text)
        } else {
            kitchen::trouble_at(key, &text)
        }
    });
    Ok(trouble.map(|trouble| SetAside::of(key.to_owned(), &trouble)))
}

/// The same of a bake, of which there may be hundreds: each state of it is read once.
fn trouble_of_trial(glance: &Glance, key: &str) -> Result<Option<SetAside>, Refusal> {
    let Some((length, head)) = glance.at(key, HEAD_OF_TRIAL)? else {
        return Ok(None);
    };
    let mark = mark(&head, length);
    if SOUND.with_borrow(|sound| sound.get(key) == Some(&mark)) {
        return Ok(None);
    }
    let text = store::read(key)?.unwrap_or_default();
    let trouble = trials::trouble_at(key, &text);
    if trouble.is_none() {
        SOUND.with_borrow_mut(|sound| sound.insert(key.to_owned(), mark));
    }
    Ok(trouble.map(|trouble| SetAside::of(key.to_owned(), &trouble)))
}

fn trouble<R: Record>(text: &str) -> Option<SavedTrouble> {
    saved::from_text::<R>(text).err()
}
