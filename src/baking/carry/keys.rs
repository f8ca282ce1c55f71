//! Own ingredients are known by numbers, and the same number means another elsewhere: recipes that come follow theirs.

use super::preview::Here;
use super::{Carried, CarriedTrial, Everything};
use crate::baking::ingredient::own::{Merged, OwnRecord, is_own_key};
use crate::baking::saved::KeptRecipe;
use crate::baking::worksheet::Inputs;
use std::collections::{HashMap, HashSet};

/// The key of an own ingredient that is none: numbers are given from 1.
const NO_ONE: &str = "own/0";

/// A file's recipes and bakes with the keys that they would have here, if all of it came.
pub fn as_here(everything: &Everything, here: &Here) -> (Vec<Carried>, Vec<CarriedTrial>) {
    let mut recipes = everything.recipes.clone();
    let mut trials = everything.trials.clone();
    let named = named(&recipes, &trials);
    let theirs = everything.larder.clone().unwrap_or_default();
    let ours = &mut here.larder.clone();
    settle(&mut recipes, &mut trials, &named, theirs, ours);
    (recipes, trials)
}

/// Takes their larder into ours, and has recipes and bakes name each ingredient by its key here.
pub fn settle(
    recipes: &mut [Carried],
    trials: &mut [CarriedTrial],
    named: &HashSet<String>,
    theirs: OwnRecord,
    ours: &mut OwnRecord,
) -> Merged {
    // One that was given here and is gone means no other here, now or later.
    let nowhere = named
        .iter()
        .filter(|key| theirs.entry(key).is_none() && ours.may_mean(key));
    let mut moved: HashMap<String, String> = nowhere
        .map(|key| (key.clone(), NO_ONE.to_owned()))
        .collect();
    let (came, moves) = ours.merge_moving(theirs);
    moved.extend(moves);
    each_key_of(recipes, trials, &mut |key| {
        if let Some(here) = moved.get(key) {
            here.clone_into(key);
        }
    });
    came
}

/// The own ingredients that recipes and bakes name by their keys.
pub fn named(recipes: &[Carried], trials: &[CarriedTrial]) -> HashSet<String> {
    let mut keys = HashSet::new();
    each_key_of(&mut recipes.to_vec(), &mut trials.to_vec(), &mut |key| {
        keys.insert(key.clone());
    });
    keys
}

fn each_key_of(
    recipes: &mut [Carried],
    trials: &mut [CarriedTrial],
    change: &mut dyn FnMut(&mut String),
) {
    for carried in recipes {
        each_inputs(&mut carried.recipe, &mut |inputs| each_key(inputs, change));
    }
    for CarriedTrial { trial, .. } in trials {
        each_key(&mut trial.plan, change);
        for weight in &mut trial.weights {
            if is_own_key(&weight.ingredient) {
                change(&mut weight.ingredient);
            }
        }
    }
}

/// The recipe's inputs, and those that it was made from.
fn each_inputs(recipe: &mut KeptRecipe, change: &mut dyn FnMut(&mut Inputs)) {
    change(&mut recipe.inputs);
    if let Some(version) = &mut recipe.version {
        change(&mut version.original);
    }
}

/// Every key of an own ingredient that inputs name.
pub fn each_key(inputs: &mut Inputs, change: &mut dyn FnMut(&mut String)) {
    let mut change = |key: &mut String| {
        if is_own_key(key) {
            change(key);
        }
    };
    for correction in &mut inputs.corrections {
        correction.ingredient.iter_mut().for_each(&mut change);
    }
    let swaps = &mut inputs.choices.swaps;
    swaps.missing.iter_mut().for_each(&mut change);
    for line in &mut swaps.lines {
        if line.to.split('+').any(is_own_key) {
            let mut keys: Vec<String> = line.to.split('+').map(str::to_owned).collect();
            keys.iter_mut().for_each(&mut change);
            line.to = keys.join("+");
        }
    }
}

/// Takes out all that names an own ingredient, which means another elsewhere; gives how much that was. What else was
/// said of a line stays.
pub fn take_own_out(inputs: &mut Inputs) -> usize {
    let mut count = 0;
    let mut is_own = |key: &str| {
        let is_own = key.split('+').any(is_own_key);
        count += usize::from(is_own);
        is_own
    };
    for correction in &mut inputs.corrections {
        correction.ingredient.take_if(|key| is_own(key));
    }
    inputs
        .corrections
        .retain(|correction| !correction.is_empty());
    let swaps = &mut inputs.choices.swaps;
    swaps.missing.retain(|key| !is_own(key));
    swaps.lines.retain(|line| !is_own(&line.to));
    count
}
