//! What is kept on this device, through local storage: one record a recipe, one a bake that was written down, one for the
//! settings, one for the baker's own ingredients, one for each thing in the bin.
//!
//! A record that cannot be read is left where it is and listed as set aside; it is never written over. Nor is a record
//! that another window has written since this one last saw it. Storage that is full or forbidden is a sentence for the
//! page, never an end of it.

mod bin;
mod carrying;
mod kitchen;
mod room;
mod shelf;
mod single;
mod store;
mod trials;

pub use bin::{
    Resting, clear_out, contents, in_bin, put_back, remove_for_good, resting, stand_again,
    throw_away,
};
pub use carrying::{Brought, all_recipes, all_trials, binned, bring_in, undo_bringing};
pub use kitchen::{
    is_timers_key, keep_timers, keep_weigh_in, load_timers, load_weigh_in, weigh_in_of_key,
};
pub use room::{Effort, hold_reserve, room};
pub use shelf::{SetAside, Shelf, doubt, others_aside, shelf, shelf_before};
pub use single::{Single, changed_elsewhere, keep, load, trouble};
pub use store::Refusal;
pub use trials::{
    KeptTrial, Stray, Trials, bakes_of_recipes, fresh_number, keep_trial, key_of_trial,
    move_trials, peek_trials, put_recipe_of, read_trial_ahead, remove_trial, standing_of_trial,
    strays, trial_of_key, trials_of, trials_unread,
};

use super::device;
use crate::baking::saved::{self, KeptRecipe, Record, SavedTrouble, VersionOf};
use crate::baking::worksheet::Inputs;
use std::cell::RefCell;
use std::collections::HashMap;

const RECIPE: &str = "batterwright/recipe/";
/// Then a recipe's name, a stroke, and the number of a bake of it.
const TRIAL: &str = "batterwright/trial/";
const BIN: &str = "batterwright/bin/";
const SETTINGS: &str = "batterwright/settings";
const LARDER: &str = "batterwright/larder";
const OPEN: &str = "batterwright/open";
/// The list of the shelf: a help, made anew from the records where it is missing.
const INDEX: &str = "batterwright/shelf";
/// Letters of no meaning, given up when nothing else fits any more.
const RESERVE: &str = "batterwright/reserve";
/// How many letters the store has refused to hold.
const LIMIT: &str = "batterwright/limit";

/// What this window last saw of a record.
struct Seen {
    text: String,
    /// Whether it wrote that itself.
    is_ours: bool,
}

thread_local! {
    /// By key. Another text under that key is another window's work.
    static SEEN: RefCell<HashMap<String, Seen>> = RefCell::new(HashMap::new());
}

/// Why a recipe, or a trial, was not kept.
#[derive(Clone, Debug, PartialEq)]
pub enum NotKept<R = KeptRecipe> {
    /// A sentence's middle.
    Refused(String),
    /// Another window has kept something else under its name, which this one has not seen.
    Otherwise(Box<R>),
}

impl<R> NotKept<R> {
    /// Why, as a sentence's middle.
    pub fn reason(self) -> String {
        match self {
            Self::Refused(reason) => reason,
            Self::Otherwise(_) => "another window has changed it".into(),
        }
    }
}

impl<R> From<Refusal> for NotKept<R> {
    fn from(refusal: Refusal) -> Self {
        Self::Refused(refusal.to_string())
    }
}

/// What came of keeping a record.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Written {
    /// Its record was gone, and stands there anew.
    pub again: bool,
    /// What it took.
    pub effort: Effort,
}

/// Where a record stands towards what this window last saw of it.
#[derive(Clone, Debug, PartialEq)]
pub enum Standing<R = KeptRecipe> {
    /// As it was seen, or never seen and not there.
    AsSeen,
    /// Gone.
    Gone,
    /// Written anew by another window; `true` where what stood there before was ours.
    Changed(Box<R>, bool),
    /// Not to be read by this page.
    Unreadable,
    /// The store does not tell.
    Untold(Refusal),
}

/// The key that a recipe's record stands under.
pub fn key_of(id: &str) -> String {
    format!("{RECIPE}{id}")
}

fn see(key: String, text: String, is_ours: bool) {
    SEEN.with_borrow_mut(|seen| seen.insert(key, Seen { text, is_ours }));
}

/// How a recipe's record stands now.
pub fn standing(id: &str) -> Standing {
    standing_at(&key_of(id))
}

/// How the record under a key stands now.
fn standing_at<R: Record>(key: &str) -> Standing<R> {
    let there = match store::read(key) {
        Ok(there) => there,
        Err(refusal) => return Standing::Untold(refusal),
    };
    SEEN.with_borrow(|seen| match (there, seen.get(key)) {
        (None, None) => Standing::AsSeen,
        (None, Some(_)) => Standing::Gone,
        (Some(there), Some(seen)) if there == seen.text => Standing::AsSeen,
        (Some(there), seen) => match saved::from_text(&there) {
            Ok(theirs) => {
                Standing::Changed(Box::new(theirs), seen.is_some_and(|seen| seen.is_ours))
            }
            Err(_) => Standing::Unreadable,
        },
    })
}

/// Whether a text is what this window last saw under a key.
pub fn was_seen(key: &str, text: Option<&str>) -> bool {
    SEEN.with_borrow(|seen| seen.get(key).map(|seen| seen.text.as_str()) == text)
}

/// Whether what is to be kept stands there anew; where it may not be written over what stands there, why.
fn is_again<R>(
    standing: Standing<R>,
    is_same: impl FnOnce(&R) -> bool,
) -> Result<bool, NotKept<R>> {
    match standing {
        Standing::AsSeen => Ok(false),
        Standing::Gone => Ok(true),
        Standing::Changed(theirs, _) if is_same(&theirs) => Ok(false),
        Standing::Changed(theirs, _) => Err(NotKept::Otherwise(theirs)),
        Standing::Unreadable => Err(NotKept::Refused(
            "another window has put a record here that this page cannot read".into(),
        )),
        // It may hold what must not be written over.
        Standing::Untold(refusal) => Err(refusal.into()),
    }
}

/// Keeps a recipe under its name.
///
/// # Errors
/// Why it is not being kept; then what stands there stays.
pub fn keep_recipe(
    id: &str,
    inputs: &Inputs,
    version: Option<&VersionOf>,
) -> Result<Written, NotKept> {
    let again = is_again(standing(id), |theirs| {
        theirs.inputs == *inputs && theirs.version.as_ref() == version
    })?;
    let effort = write_recipe(id, inputs, version)?;
    Ok(Written { again, effort })
}

/// Writes a recipe under its name, whatever stands there.
pub fn write_recipe(
    id: &str,
    inputs: &Inputs,
    version: Option<&VersionOf>,
) -> Result<Effort, NotKept> {
    let record = KeptRecipe {
        changed: device::now() as u64,
        inputs: inputs.clone(),
        version: version.cloned(),
    };
    let text = saved::to_text(&record).map_err(NotKept::Refused)?;
    let key = key_of(id);
    let effort = room::write_making_room(&key, &text)?;
    see(key, text, true);
    Ok(effort)
}

/// The recipe of that name; `None` where there is none.
pub fn load_recipe(id: &str) -> Result<Option<Result<KeptRecipe, SavedTrouble>>, Refusal> {
    let key = key_of(id);
    let Some(text) = store::read(&key)? else {
        return Ok(None);
    };
    let recipe = saved::from_text::<KeptRecipe>(&text);
    match recipe {
        Ok(_) => see(key, text, false),
        Err(_) => doubt(id),
    }
    Ok(Some(recipe))
}

/// What a recipe holds that is only looked at and stays as it is; `None` where there is none that can be read.
pub fn peek(id: &str) -> Option<Inputs> {
    peek_kept(id).map(|recipe| recipe.inputs)
}

/// A whole record that is only looked at; `None` as for [`peek`].
pub fn peek_kept(id: &str) -> Option<KeptRecipe> {
    let text = store::read(&key_of(id)).ok()??;
    saved::from_text::<KeptRecipe>(&text).ok()
}

/// What stands under a key, to the letter.
pub fn text_at(key: &str) -> Option<String> {
    store::read(key).ok().flatten()
}

/// Takes a recipe off the shelf and into the bin; `None` where there is none of that name.
///
/// # Errors
/// Where the store refuses; then it stays on the shelf.
pub fn remove_recipe(id: &str, title: String) -> Result<Option<(Resting, Effort)>, Refusal> {
    let key = key_of(id);
    let removed = throw_away(&key, title)?;
    SEEN.with_borrow_mut(|seen| seen.remove(&key));
    Ok(removed)
}

/// Puts a recipe's record into the bin too, since it is about to be written over.
///
/// # Errors
/// Where the store refuses.
pub fn copy_recipe_into_bin(id: &str, title: String) -> Result<Effort, Refusal> {
    bin::copy_into_bin(&key_of(id), title)
}

/// Whether a recipe of that name was put into the bin.
pub fn is_in_bin(id: &str) -> bool {
    let resting = resting().unwrap_or_default();
    resting.iter().any(|resting| resting.record.id == id)
}

/// Whether this recipe is the first one that is kept.
pub fn is_first(id: &str) -> bool {
    is_alone(id, &[RECIPE])
}

/// Whether nothing of the baker's is kept but this recipe. What the page keeps for itself does not count.
pub fn is_all_that_is_kept(id: &str) -> bool {
    is_alone(id, &[RECIPE, BIN, SETTINGS, LARDER, TRIAL])
}

fn is_alone(id: &str, among: &[&str]) -> bool {
    let own = key_of(id);
    let is_among = |key: &String| among.iter().any(|beginning| key.starts_with(beginning));
    let is_other = |key: &String| *key != own && is_among(key);
    store::keys().is_ok_and(|keys| !keys.iter().any(is_other))
}

/// Takes a recipe's record away: what it held stands under another name.
pub fn forget_recipe(id: &str) -> Result<(), Refusal> {
    let key = key_of(id);
    store::remove(&key)?;
    SEEN.with_borrow_mut(|seen| seen.remove(&key));
    Ok(())
}

/// What a key of the store belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Of<'a> {
    /// The recipe of that name.
    Recipe(&'a str),
    /// The trial of that number, of the recipe of that name.
    Trial(&'a str, u64),
    /// The settings.
    Settings,
    /// The baker's own ingredients and words.
    Larder,
    /// Anything else.
    Other,
}

/// What a key of the store belongs to.
pub fn of_key(key: &str) -> Of<'_> {
    match key.strip_prefix(RECIPE) {
        Some(id) => Of::Recipe(id),
        None if key.starts_with(SETTINGS) => Of::Settings,
        None if key.starts_with(LARDER) => Of::Larder,
        None => match trial_of_key(key) {
            Some((recipe, id)) => Of::Trial(recipe, id),
            None => Of::Other,
        },
    }
}

/// What was open when the page was last used.
///
/// # Errors
/// Where the store does not tell.
pub fn last_open() -> Result<Option<String>, Refusal> {
    store::read(OPEN)
}

/// Remembers what is open.
pub fn set_last_open(name: &str) {
    // A convenience: where it cannot be kept, the banner for the recipe itself says so.
    let _ = store::write(OPEN, name);
}
