//! What a file would bring, against what is kept here.

use super::{Carried, Everything, Taken, keys, merge};
use crate::baking::ingredient::own::{Merged, OwnRecord};
use crate::baking::saved::{KeptRecipe, first_words};
use crate::baking::trial::Trial;
use crate::baking::worksheet::Settings;
use std::cmp::Ordering;

/// What is kept on this device.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Here {
    /// Recipes by the names of their records; `None` for a record that cannot be read and is not to be touched.
    pub recipes: Vec<(String, Option<KeptRecipe>)>,
    /// Names of the records in the bin.
    pub bin: Vec<String>,
    /// Bakes by their recipes and numbers; `None` for a record that cannot be read and is not to be touched.
    pub trials: Vec<(String, u64, Option<Trial>)>,
    /// The settings.
    pub settings: Settings,
    /// Own ingredients and taught words.
    pub larder: OwnRecord,
}

/// How a recipe of a file stands to what is kept here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// There is none of it here.
    New,
    /// The same is here already, under this name or another.
    Same,
    /// Another is here under its name, and the file's was changed last.
    TheirsNewer,
    /// Another is here under its name, and was changed last.
    OursNewer,
    /// Another is here under its name, changed at the same moment.
    SameMoment,
    /// It was removed here, and is in the bin.
    InBin,
    /// A record that cannot be read stands here under its name.
    Unreadable,
}

/// A recipe of a file, and how it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// The name of its record.
    pub id: String,
    /// Its first line with words on it.
    pub title: String,
    /// When it was last changed, in milliseconds since 1970.
    pub changed: u64,
    /// When the one that is here under its name was.
    pub here: Option<u64>,
    /// How it stands.
    pub standing: Standing,
    /// How many bakes of it the file brings.
    pub bakes: usize,
}

/// What a file would bring.
#[derive(Clone, Debug, PartialEq)]
pub struct Preview {
    /// Its recipes, in its order.
    pub rows: Vec<Row>,
    /// How many of its bakes are here too, and differ.
    pub double_trials: usize,
    /// Whether its settings differ from those here; `None` where it brings none.
    pub settings_differ: Option<bool>,
    /// What of its larder would come in; `None` where it brings none.
    pub larder: Option<Merged>,
}

impl Standing {
    /// In words on the page.
    pub fn words(self) -> &'static str {
        match self {
            Self::New => "New here",
            Self::Same => "Here already, the same",
            Self::TheirsNewer => "Differs; the file's is newer",
            Self::OursNewer => "Differs; the one here is newer",
            Self::SameMoment => "Differs; both of the same moment",
            Self::InBin => "Removed here, in the bin",
            Self::Unreadable => "The one here cannot be read",
        }
    }

    /// Whether another recipe stands here under its name, so that there is something to choose.
    pub fn is_double(self) -> bool {
        matches!(
            self,
            Self::TheirsNewer | Self::OursNewer | Self::SameMoment | Self::Unreadable
        )
    }
}

/// What a file would bring, against what is kept here. Nothing is changed.
pub fn preview(everything: &Everything, here: &Here) -> Preview {
    let (as_here, trials) = keys::as_here(everything, here);
    let bakes = |id: &str| trials.iter().filter(|it| it.recipe == id).count();
    let rows = as_here.iter().map(|carried| Row {
        id: carried.id.clone(),
        title: first_words(&carried.recipe.inputs.text),
        changed: carried.recipe.changed,
        here: here.recipe(&carried.id).flatten().map(|kept| kept.changed),
        standing: standing(carried, here),
        bakes: bakes(&carried.id),
    });
    Preview {
        rows: rows.collect(),
        double_trials: merge(everything, here, &Taken::default(), String::new).doubled_trials,
        settings_differ: everything
            .settings
            .as_ref()
            .map(|settings| *settings != here.settings),
        larder: everything
            .larder
            .as_ref()
            .map(|larder| here.larder.clone().merge(larder.clone())),
    }
}

impl Here {
    /// The recipe of that name: `None` where there is none, `Some(None)` where it cannot be read.
    pub(super) fn recipe(&self, id: &str) -> Option<Option<&KeptRecipe>> {
        let (_, kept) = self.recipes.iter().find(|(name, _)| name == id)?;
        Some(kept.as_ref())
    }
}

pub(super) fn standing(carried: &Carried, here: &Here) -> Standing {
    let theirs = &carried.recipe;
    if same_here(carried, here).is_some() {
        return Standing::Same;
    }
    match here.recipe(&carried.id) {
        Some(None) => Standing::Unreadable,
        Some(Some(ours)) => match theirs.changed.cmp(&ours.changed) {
            Ordering::Greater => Standing::TheirsNewer,
            Ordering::Less => Standing::OursNewer,
            Ordering::Equal => Standing::SameMoment,
        },
        None if here.bin.contains(&carried.id) => Standing::InBin,
        None => Standing::New,
    }
}

/// The name under which the same recipe is here, its own where that is one.
pub(super) fn same_here<'a>(carried: &Carried, here: &'a Here) -> Option<&'a str> {
    let is_same = |kept: &&(String, Option<KeptRecipe>)| {
        let ours = kept.1.as_ref();
        ours.is_some_and(|ours| is_same(ours, &carried.recipe))
    };
    let mut same = here.recipes.iter().filter(is_same);
    let own = same.clone().find(|(name, _)| *name == carried.id);
    own.or_else(|| same.next()).map(|(name, _)| name.as_str())
}

/// Whether two records hold the same recipe, whenever it was changed and whatever the records are called.
fn is_same(one: &KeptRecipe, other: &KeptRecipe) -> bool {
    let made = |recipe: &KeptRecipe| {
        let version = recipe.version.as_ref()?;
        Some((version.name.clone(), version.original.clone()))
    };
    one.inputs == other.inputs && made(one) == made(other)
}
