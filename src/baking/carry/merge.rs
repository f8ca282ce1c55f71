//! What of a file is to be written here, by the baker's choice.

use super::preview::{Here, Standing, same_here, standing};
use super::{Carried, CarriedTrial, Everything, keys};
use crate::baking::ingredient::own::{Merged, OwnRecord};
use crate::baking::worksheet::Settings;
use std::collections::{BTreeMap, HashMap};

/// What happens to a recipe that stands here and in the file, and differs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum WhenBoth {
    /// Both stay; the file's gets a name of its own.
    #[default]
    KeepBoth,
    /// The one that was changed last stays. Of two from one moment, and beside one that cannot be read, both stay.
    Newer,
    /// The one here stays as it is, and the file's does not come.
    Skip,
}

impl WhenBoth {
    /// Every one, in the order offered.
    pub const ALL: [Self; 3] = [Self::KeepBoth, Self::Newer, Self::Skip];

    /// In words on the page.
    pub fn words(self) -> &'static str {
        match self {
            Self::KeepBoth => "Keep both",
            Self::Newer => "Keep the newer",
            Self::Skip => "Skip the file's",
        }
    }
}

/// What is taken from a file.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Taken {
    /// For every recipe that is here too.
    pub all: WhenBoth,
    /// For single recipes, by the names of their records. One that is new or in the bin comes unless it is skipped here,
    /// or, in the bin, skipped with all.
    pub single: BTreeMap<String, WhenBoth>,
    /// Whether the file's settings take the place of those here.
    pub settings: bool,
    /// Whether the file's own ingredients and words come; what recipes name comes with them in any case.
    pub larder: bool,
}

/// What is to be written, whole or not at all.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Writes {
    /// Records, by their names.
    pub recipes: Vec<Carried>,
    /// Names of records among these that take the place of one here, which goes to the bin first.
    pub replaced: Vec<String>,
    /// Names of records among these that come back out of the bin.
    pub out_of_bin: Vec<String>,
    /// Of the recipes, how many were new.
    pub new: usize,
    /// Of the recipes, how many got a name of their own.
    pub doubled: usize,
    /// Recipes of the file that were here already, just so.
    pub same: usize,
    /// Recipes of the file that do not come.
    pub skipped: usize,
    /// Bakes.
    pub trials: Vec<CarriedTrial>,
    /// Bakes here whose place one of these takes, by recipe and number; they go to the bin first.
    pub replaced_trials: Vec<(String, u64)>,
    /// Of the bakes, how many got a number of their own beside one here.
    pub doubled_trials: usize,
    /// Bakes of the file that were here already, just so.
    pub same_trials: usize,
    /// Bakes of the file that do not come.
    pub skipped_trials: usize,
    /// The settings, where they change.
    pub settings: Option<Settings>,
    /// The larder, where it changes.
    pub larder: Option<OwnRecord>,
    /// What comes into the larder.
    pub larder_came: Merged,
}

/// What is to be written. `fresh` gives a name that no record has.
pub fn merge(
    everything: &Everything,
    here: &Here,
    taken: &Taken,
    mut fresh: impl FnMut() -> String,
) -> Writes {
    let mut writes = Writes::default();
    // Names of theirs that are another here.
    let mut renamed: HashMap<String, String> = HashMap::new();
    // Where the bakes of theirs go; nowhere if they are skipped.
    let mut places: HashMap<&str, Option<String>> = HashMap::new();
    let (as_here, trials) = keys::as_here(everything, here);
    for (carried, as_here) in everything.recipes.iter().zip(&as_here) {
        let stands = standing(as_here, here);
        let place = writes.take(carried, stands, taken, &mut |id: &str| {
            let name = fresh();
            renamed.insert(id.to_owned(), name.clone());
            name
        });
        let same = same_here(as_here, here).map(str::to_owned);
        places.insert(&carried.id, same.or(place));
    }
    writes.take_trials(everything, &trials, here, taken, &places);
    for carried in &mut writes.recipes {
        if let Some(version) = &mut carried.recipe.version
            && let Some(of) = renamed.get(&version.of)
        {
            version.of.clone_from(of);
        }
    }
    writes.take_larder(everything, here, taken);
    writes.settings = everything
        .settings
        .as_ref()
        .filter(|settings| taken.settings && **settings != here.settings)
        .cloned();
    writes
}

impl Writes {
    /// Whether nothing is to be written.
    pub fn is_empty(&self) -> bool {
        self.recipes.is_empty()
            && self.trials.is_empty()
            && self.settings.is_none()
            && self.larder.is_none()
    }

    /// Takes a recipe, and gives the name under which its bakes stand here; `None` where nothing of it comes.
    fn take(
        &mut self,
        carried: &Carried,
        stands: Standing,
        taken: &Taken,
        fresh: &mut dyn FnMut(&str) -> String,
    ) -> Option<String> {
        let single = taken.single.get(&carried.id).copied();
        let choice = single.unwrap_or(taken.all);
        let own_name = match (stands, choice) {
            (Standing::Same, _) => {
                self.same += 1;
                return None;
            }
            (Standing::New, _) if single != Some(WhenBoth::Skip) => {
                self.new += 1;
                true
            }
            (_, WhenBoth::Skip) => {
                self.skipped += 1;
                return None;
            }
            (Standing::OursNewer, WhenBoth::Newer) => {
                self.skipped += 1;
                return Some(carried.id.clone());
            }
            (Standing::InBin, _) => {
                self.out_of_bin.push(carried.id.clone());
                true
            }
            (Standing::TheirsNewer, WhenBoth::Newer) => {
                self.replaced.push(carried.id.clone());
                true
            }
            _ => {
                self.doubled += 1;
                false
            }
        };
        let id = match own_name {
            true => carried.id.clone(),
            false => fresh(&carried.id),
        };
        self.recipes.push(Carried {
            id: id.clone(),
            recipe: carried.recipe.clone(),
        });
        Some(id)
    }

    /// Takes in the larder, or only those of its ingredients that recipes and bakes name: a key means another ingredient here
    /// than there, so the recipes' keys follow.
    fn take_larder(&mut self, everything: &Everything, here: &Here, taken: &Taken) {
        let named = keys::named(&self.recipes, &self.trials);
        let mut theirs = everything.larder.clone().unwrap_or_default();
        if !taken.larder {
            theirs.words.clear();
            theirs.entries.retain(|entry| named.contains(&entry.key));
        }
        let mut ours = here.larder.clone();
        self.larder_came = keys::settle(
            &mut self.recipes,
            &mut self.trials,
            &named,
            theirs,
            &mut ours,
        );
        let came = self.larder_came.entries + self.larder_came.words;
        self.larder = (came > 0).then_some(ours);
    }
}
