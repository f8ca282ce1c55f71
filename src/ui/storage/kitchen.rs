//! What is under way at the bench: a weigh-in for each recipe, and the timers.

use super::RECIPE;
use super::single::place_at;
use super::store::{self, Refusal, write};
use crate::baking::saved::{self, Record, SavedTrouble};
use crate::baking::timer::Timers;
use crate::baking::worksheet::WeighIn;

const WEIGH_IN: &str = "batterwright/weigh-in/";
const TIMERS: &str = "batterwright/timers";

/// The weigh-in of a recipe; `None` where none is kept, or none can be read.
pub fn load_weigh_in(id: &str) -> Option<WeighIn> {
    load(&format!("{WEIGH_IN}{id}"))
}

/// Keeps the weigh-in of a recipe.
///
/// # Errors
/// A sentence's middle that says why it is not being kept.
pub fn keep_weigh_in(id: &str, weigh_in: &WeighIn) -> Result<(), String> {
    keep(&format!("{WEIGH_IN}{id}"), weigh_in)
}

/// The name of the recipe whose weigh-in stands under a key of the store.
pub fn weigh_in_of_key(key: &str) -> Option<&str> {
    // A number stands behind the name where a damaged record was left in its place.
    key.strip_prefix(WEIGH_IN)?.split('/').next()
}

/// Takes away the weigh-ins of recipes that are no longer kept, but for those that are still wanted.
pub(super) fn forget_weigh_ins(is_wanted: impl Fn(&str) -> bool) -> Result<(), Refusal> {
    for key in store::keys()? {
        let Some(id) = weigh_in_of_key(&key).filter(|id| !is_wanted(id)) else {
            continue;
        };
        let text = store::read(&key)?.unwrap_or_default();
        // One that cannot be read is set aside, and stays.
        let is_ours = saved::from_text::<WeighIn>(&text).is_ok();
        if is_ours && store::read(&format!("{RECIPE}{id}"))?.is_none() {
            store::remove(&key)?;
        }
    }
    Ok(())
}

/// The timers; `None` where none are kept, or none can be read.
pub fn load_timers() -> Option<Timers> {
    load(TIMERS)
}

/// Keeps the timers.
///
/// # Errors
/// As for [`keep_weigh_in`].
pub fn keep_timers(timers: &Timers) -> Result<(), String> {
    keep(TIMERS, timers)
}

/// Whether a key of the store is that of the timers.
pub fn is_timers_key(key: &str) -> bool {
    key.starts_with(TIMERS)
}

/// What is wrong with a record of the bench; `None` where nothing is, or it is of something else.
pub(super) fn trouble_at(key: &str, text: &str) -> Option<SavedTrouble> {
    if key.starts_with(WEIGH_IN) {
        saved::from_text::<WeighIn>(text).err()
    } else if is_timers_key(key) {
        saved::from_text::<Timers>(text).err()
    } else {
        None
    }
}

/// A damaged record stays where it is, and another is begun beside it.
fn load<R: Record>(base: &str) -> Option<R> {
    place_at::<R>(base).ok()?.record
}

fn keep<R: Record>(base: &str, record: &R) -> Result<(), String> {
    let place = place_at::<R>(base).map_err(|refusal| refusal.to_string())?;
    let text = saved::to_text(record)?;
    write(&place.key, &text).map_err(|refusal| refusal.to_string())
}
