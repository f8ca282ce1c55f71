//! Bakes that were written down, one record each, under the name of their recipe.

use super::room::{Effort, write_making_room};
use super::store::{self, Refusal};
use crate::baking::saved::{self, SavedTrouble};
use crate::baking::trial::Trial;

/// The key of a trial is this, its recipe's name, a stroke, its number.
const TRIAL: &str = "batterwright/trial/";

/// A bake as it is kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct KeptTrial {
    /// Its number: the moment when it was written down, and three digits of chance. Larger ones are later.
    pub id: u64,
    /// The name of its recipe's record.
    pub recipe: String,
    /// What was written.
    pub trial: Trial,
}

impl KeptTrial {
    /// The name of its record.
    pub fn name(&self) -> String {
        self.id.to_string()
    }

    fn key(&self) -> String {
        format!("{TRIAL}{}/{}", self.recipe, self.id)
    }
}

/// The recipe and the number of the trial that stands under a key of the store.
pub fn trial_of_key(key: &str) -> Option<(&str, u64)> {
    let (recipe, id) = key.strip_prefix(TRIAL)?.rsplit_once('/')?;
    Some((recipe, id.parse().ok()?))
}

/// The trials of these recipes that can be read, the earliest first.
///
/// # Errors
/// Where the store does not tell.
pub fn trials_of(is_wanted: impl Fn(&str) -> bool) -> Result<Vec<KeptTrial>, Refusal> {
    let mut found = Vec::new();
    for key in store::keys()? {
        let Some((recipe, id)) = trial_of_key(&key).filter(|(recipe, _)| is_wanted(recipe)) else {
            continue;
        };
        let text = store::read(&key)?.unwrap_or_default();
        if let Ok(trial) = saved::from_text::<Trial>(&text) {
            found.push(KeptTrial {
                id,
                recipe: recipe.to_owned(),
                trial,
            });
        }
    }
    found.sort_by_key(|kept| kept.id);
    Ok(found)
}

/// Keeps a trial.
///
/// # Errors
/// A sentence's middle that says why it is not being kept.
pub fn keep_trial(kept: &KeptTrial) -> Result<Effort, String> {
    let text = saved::to_text(&kept.trial)?;
    write_making_room(&kept.key(), &text).map_err(|refusal| refusal.to_string())
}

/// Takes a trial away.
///
/// # Errors
/// As for [`keep_trial`].
pub fn remove_trial(kept: &KeptTrial) -> Result<(), String> {
    store::remove(&kept.key()).map_err(|refusal| refusal.to_string())
}

/// What is wrong with a trial's record; `None` where nothing is, or it is of something else.
pub(super) fn trouble_at(key: &str, text: &str) -> Option<SavedTrouble> {
    key.starts_with(TRIAL)
        .then(|| saved::from_text::<Trial>(text).err())?
}
