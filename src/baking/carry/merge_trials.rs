//! What of a file's bakes is to be written here. A bake is known by its recipe and its number: it comes where its recipe
//! comes or is here already, and never in the place of one that was changed later.

use super::{CarriedTrial, Everything, Here, Taken, WhenBoth, Writes};
use crate::baking::trial::Trial;
use std::cmp::Ordering;
use std::collections::{BTreeMap, BTreeSet, HashMap};

impl Writes {
    /// Takes the bakes. `as_here` are the same as the file's, naming own ingredients as they are named here; `places` tells
    /// where those of each recipe go.
    pub(super) fn take_trials(
        &mut self,
        everything: &Everything,
        as_here: &[CarriedTrial],
        here: &Here,
        taken: &Taken,
        places: &HashMap<&str, Option<String>>,
    ) {
        let mut numbers: BTreeSet<u64> = here.trials.iter().map(|(_, id, _)| *id).collect();
        numbers.extend(everything.trials.iter().map(|carried| carried.id));
        let mut written: BTreeSet<(&str, u64)> = BTreeSet::new();
        // Numbers of theirs that are others here.
        let mut renumbered: BTreeMap<(String, u64), u64> = BTreeMap::new();
        for (carried, as_here) in everything.trials.iter().zip(as_here) {
            let place = match places.get(carried.recipe.as_str()) {
                Some(Some(place)) => place,
                Some(None) => {
                    self.skipped_trials += 1;
                    continue;
                }
                // A bake whose recipe is not in the file.
                None => &carried.recipe,
            };
            let choice = taken.single.get(&carried.recipe).unwrap_or(&taken.all);
            let mut id = carried.id;
            let fate = match fate(as_here, place, here, *choice) {
                // Two recipes of the file are one here.
                Fate::Comes | Fate::Replaces if written.contains(&(place.as_str(), id)) => {
                    Fate::Beside
                }
                fate => fate,
            };
            match fate {
                Fate::Comes => {}
                Fate::Same => {
                    self.same_trials += 1;
                    continue;
                }
                Fate::Skipped => {
                    self.skipped_trials += 1;
                    continue;
                }
                Fate::Replaces => self.replaced_trials.push((place.clone(), id)),
                Fate::Beside => {
                    // The next free number: it stands right behind the one here.
                    while !numbers.insert(id) {
                        id = id.wrapping_add(1);
                    }
                    renumbered.insert((place.clone(), carried.id), id);
                    self.doubled_trials += 1;
                }
            }
            written.insert((place, id));
            self.trials.push(CarriedTrial {
                recipe: place.clone(),
                id,
                trial: carried.trial.clone(),
            });
        }
        for CarriedTrial { recipe, trial, .. } in &mut self.trials {
            let against = trial.against.as_ref().and_then(|it| it.parse().ok());
            let moved = against.and_then(|id| renumbered.get(&(recipe.clone(), id)));
            if let Some(id) = moved {
                trial.against = Some(id.to_string());
            }
        }
    }

    /// How many of the bakes are new here.
    pub fn new_trials(&self) -> usize {
        self.trials.len() - self.replaced_trials.len() - self.doubled_trials
    }
}

/// What becomes of a bake.
enum Fate {
    Comes,
    Same,
    Skipped,
    Replaces,
    Beside,
}

fn fate(theirs: &CarriedTrial, place: &str, here: &Here, choice: WhenBoth) -> Fate {
    let of_recipe = here.trials.iter().filter(|(recipe, ..)| recipe == place);
    let is_same = |kept: &Option<Trial>| {
        kept.as_ref()
            .is_some_and(|ours| holds_the_same(ours, &theirs.trial))
    };
    if of_recipe.clone().any(|(_, _, kept)| is_same(kept)) {
        return Fate::Same;
    }
    let Some((_, _, ours)) = of_recipe.clone().find(|(_, id, _)| *id == theirs.id) else {
        // A recipe that got another name: its bakes stand in one list with those of the first.
        let is_taken = here.trials.iter().any(|(_, id, _)| *id == theirs.id);
        return if is_taken { Fate::Beside } else { Fate::Comes };
    };
    let newer = ours
        .as_ref()
        .map(|ours| theirs.trial.changed.cmp(&ours.changed));
    match (choice, newer) {
        (WhenBoth::Skip, _) | (WhenBoth::Newer, Some(Ordering::Less)) => Fate::Skipped,
        (WhenBoth::Newer, Some(Ordering::Greater)) => Fate::Replaces,
        // Both stay where they are from one moment too, and beside one that cannot be read.
        _ => Fate::Beside,
    }
}

/// Whether two records hold the same bake, whenever it was changed and whatever it is held against.
fn holds_the_same(one: &Trial, other: &Trial) -> bool {
    let plain = |trial: &Trial| {
        let mut trial = trial.clone();
        trial.changed = 0;
        trial.against = None;
        trial
    };
    plain(one) == plain(other)
}
