//! Bakes of a file against those that are here: by recipe and number and by when they were changed, and none is lost.

use super::merging::after;
use super::some::{any_everything, bake, carried, larder, naming, recipe};
use batterwright::baking::carry::{
    Carried, CarriedTrial, Everything, Here, Taken, WhenBoth, Writes, merge, preview,
};
use batterwright::baking::trial::{Trial, Weight};
use proptest::prelude::*;

const PLUM: &str = "Plum cake";

fn called(mut carried: CarriedTrial, name: &str) -> CarriedTrial {
    carried.trial.name = name.into();
    carried
}

/// Bakes of one recipe in every standing: new, the same, changed later there, later here, and at the same moment.
fn file() -> Everything {
    Everything {
        recipes: vec![carried("plum", PLUM, 5)],
        trials: vec![
            bake("plum", 1, PLUM, 5),
            bake("plum", 2, PLUM, 5),
            called(bake("plum", 3, PLUM, 9), "theirs"),
            called(bake("plum", 4, PLUM, 5), "theirs"),
            called(bake("plum", 5, PLUM, 5), "theirs"),
            called(bake("plum", 6, PLUM, 5), "theirs"),
        ],
        ..Everything::default()
    }
}

fn kept(carried: CarriedTrial) -> (String, u64, Option<Trial>) {
    (carried.recipe, carried.id, Some(carried.trial))
}

fn here() -> Here {
    Here {
        recipes: vec![("plum".into(), Some(recipe(PLUM, 5)))],
        trials: vec![
            // The same, changed at another moment.
            kept(bake("plum", 2, PLUM, 1)),
            kept(called(bake("plum", 3, PLUM, 5), "ours")),
            kept(called(bake("plum", 4, PLUM, 9), "ours")),
            kept(called(bake("plum", 5, PLUM, 5), "ours")),
            ("plum".into(), 6, None),
        ],
        ..Here::default()
    }
}

fn merged(file: &Everything, here: &Here, all: WhenBoth) -> Writes {
    let taken = Taken {
        all,
        ..Taken::default()
    };
    let mut given = 0;
    merge(file, here, &taken, || {
        given += 1;
        format!("fresh-{given}")
    })
}

fn places(writes: &Writes) -> Vec<(&str, u64)> {
    let places = writes.trials.iter().map(|it| (it.recipe.as_str(), it.id));
    places.collect()
}

#[test]
fn kept_both_ways_a_bake_stands_beside_the_one_here() {
    let writes = merged(&file(), &here(), WhenBoth::KeepBoth);
    // Bakes 3 to 6 get the next free numbers: 1 to 6 are taken here or in the file.
    assert_eq!(
        places(&writes),
        [
            ("plum", 1),
            ("plum", 7),
            ("plum", 8),
            ("plum", 9),
            ("plum", 10)
        ]
    );
    assert_eq!((writes.new_trials(), writes.doubled_trials), (1, 4));
    assert_eq!((writes.same_trials, writes.skipped_trials), (1, 0));
    assert!(writes.replaced_trials.is_empty() && writes.recipes.is_empty());
    assert_eq!(
        writes.sentence(),
        "Comes in: 1 bake and 4 bakes beside the ones here. Here already, the same: 1 recipe and 1 bake."
    );
}

#[test]
fn the_newer_takes_the_place_and_the_older_goes_to_the_bin() {
    let writes = merged(&file(), &here(), WhenBoth::Newer);
    // Of two from one moment, and beside one that cannot be read, both stay.
    assert_eq!(
        places(&writes),
        [("plum", 1), ("plum", 3), ("plum", 7), ("plum", 8)]
    );
    assert_eq!(writes.replaced_trials, [("plum".to_owned(), 3)]);
    assert_eq!((writes.doubled_trials, writes.skipped_trials), (2, 1));
}

/// A recipe that is the same here needs no choice, and its bakes follow the one for all.
#[test]
fn skipped_only_what_is_new_comes() {
    let writes = merged(&file(), &here(), WhenBoth::Skip);
    assert_eq!(places(&writes), [("plum", 1)]);
    assert_eq!((writes.same_trials, writes.skipped_trials), (1, 4));
    let mut taken = Taken {
        all: WhenBoth::Skip,
        ..Taken::default()
    };
    taken.single.insert("plum".into(), WhenBoth::Newer);
    let writes = merge(&file(), &here(), &taken, || {
        unreachable!("no recipe is doubled")
    });
    assert_eq!(writes.replaced_trials, [("plum".to_owned(), 3)]);
}

#[test]
fn bakes_go_where_their_recipe_goes() {
    let mut file = file();
    file.trials.truncate(1);
    let other = |id: &str, text: &str, changed: u64| Here {
        recipes: vec![(id.into(), Some(recipe(text, changed)))],
        ..Here::default()
    };
    // The same recipe is here under another name.
    let writes = merged(&file, &other("other", PLUM, 1), WhenBoth::KeepBoth);
    assert_eq!(places(&writes), [("other", 1)]);
    // It comes under a name of its own.
    let differs = other("plum", "Plum cake with rye", 9);
    let writes = merged(&file, &differs, WhenBoth::KeepBoth);
    assert_eq!(writes.recipes[0].id, "fresh-1");
    assert_eq!(places(&writes), [("fresh-1", 1)]);
    // The newer one is here: the recipe does not come, what was baked by it does.
    let writes = merged(&file, &differs, WhenBoth::Newer);
    assert_eq!(
        (writes.recipes.len(), places(&writes)),
        (0, vec![("plum", 1)])
    );
    // Skipped, nothing of it comes.
    let writes = merged(&file, &differs, WhenBoth::Skip);
    assert!(writes.is_empty());
    assert_eq!(
        writes.sentence(),
        "Nothing comes in. Left out: 1 recipe and 1 bake."
    );
    // Its recipe is not in the file.
    file.recipes.clear();
    let writes = merged(&file, &Here::default(), WhenBoth::KeepBoth);
    assert_eq!(places(&writes), [("plum", 1)]);
    assert!(!writes.is_empty());
}

/// A recipe that comes under another name stands beside the first: their bakes keep apart, and twice is once.
#[test]
fn a_number_that_is_taken_in_the_family_is_not_given_twice() {
    let mut file = file();
    file.recipes[0].recipe.inputs.text = "Plum cake with rye".into();
    file.trials.truncate(1);
    let mut here = here();
    here.trials = vec![kept(bake("plum", 1, PLUM, 5))];
    let writes = merged(&file, &here, WhenBoth::KeepBoth);
    assert_eq!(places(&writes), [("fresh-1", 2)]);
    let again = merged(&file, &after(&here, &writes), WhenBoth::KeepBoth);
    assert!(again.is_empty(), "{again:?}");
    assert_eq!((again.same, again.same_trials), (1, 1));
}

/// Two recipes of the file that are one here: their bakes of the same number both come.
#[test]
fn two_recipes_that_are_one_here_lose_no_bake() {
    let file = Everything {
        recipes: vec![carried("a", PLUM, 5), carried("b", PLUM, 5)],
        trials: vec![
            called(bake("a", 1, PLUM, 5), "one"),
            called(bake("b", 1, PLUM, 5), "other"),
        ],
        ..Everything::default()
    };
    let here = Here {
        recipes: vec![("x".into(), Some(recipe(PLUM, 5)))],
        ..Here::default()
    };
    let writes = merged(&file, &here, WhenBoth::KeepBoth);
    assert_eq!(places(&writes), [("x", 1), ("x", 2)]);
}

#[test]
fn what_is_held_against_a_bake_follows_its_number() {
    let mut file = file();
    let against = |carried: &mut CarriedTrial, id: &str| carried.trial.against = Some(id.into());
    against(&mut file.trials[0], "3");
    against(&mut file.trials[2], "2");
    against(&mut file.trials[3], "no number");
    let writes = merged(&file, &here(), WhenBoth::KeepBoth);
    let against: Vec<_> = writes
        .trials
        .iter()
        .take(3)
        .map(|it| it.trial.against.as_deref())
        .collect();
    // Bake 3 of the file is 7 here.
    assert_eq!(against, [Some("7"), Some("2"), Some("no number")]);
}

/// A number of an own ingredient means another one here than there.
#[test]
fn bakes_name_own_ingredients_as_they_are_named_here() {
    let named = naming("plum", "own/1");
    let mut baked = bake("plum", 1, "", 5);
    baked.trial.plan = named.recipe.inputs.clone();
    baked.trial.weights = vec![Weight {
        ingredient: "own/1".into(),
        ..Weight::default()
    }];
    let file = Everything {
        recipes: vec![named],
        trials: vec![baked],
        larder: Some(larder(&["hazel block"])),
        ..Everything::default()
    };
    let here = Here {
        larder: larder(&["oat block"]),
        ..Here::default()
    };
    // What a bake names comes with it, though the larder as a whole is left.
    let writes = merged(&file, &here, WhenBoth::KeepBoth);
    let ours = writes.larder.clone().expect("an ingredient comes");
    assert_eq!(ours.entries[1].name, "hazel block");
    let trial = &writes.trials[0].trial;
    let key = trial.plan.corrections[0].ingredient.as_deref();
    assert_eq!(key, Some(ours.entries[1].key.as_str()));
    assert_eq!(trial.weights[0].ingredient, ours.entries[1].key);
    // So it is known as the same again.
    let again = merged(&file, &after(&here, &writes), WhenBoth::KeepBoth);
    assert!(again.is_empty(), "{again:?}");
}

#[test]
fn a_recipe_says_how_many_bakes_it_brings() {
    let mut file = file();
    file.recipes.push(Carried::default());
    let shown = preview(&file, &Here::default());
    let bakes: Vec<_> = shown.rows.iter().map(|row| row.bakes).collect();
    assert_eq!(bakes, [6, 0]);
    assert_eq!(file.sentence(), "2 recipes and 6 bakes");
    assert_eq!(shown.double_trials, 0);
    // Bakes 3 to 6 stand here otherwise.
    assert_eq!(preview(&file, &here()).double_trials, 4);
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever is chosen: no bake here is lost but what is named as replaced, what cannot be read is never written to, no
    /// two are written to one place, and none of the file's goes uncounted.
    #[test]
    fn no_bake_here_is_lost(
        file in any_everything(),
        other in any_everything(),
        unread in prop::collection::vec(any::<bool>(), 4),
        all in 0..3_usize,
    ) {
        let mut here = Here::default();
        for (carried, unread) in other.trials.iter().zip(&unread) {
            here.trials.push((carried.recipe.clone(), carried.id, (!unread).then(|| carried.trial.clone())));
        }
        // Some of the file's are here too, and differ or not.
        for (carried, unread) in file.trials.iter().zip(&unread) {
            let trial = Trial { changed: 3, seen: vec!["low".into(); usize::from(*unread)], ..carried.trial.clone() };
            let place = (carried.recipe.clone(), carried.id);
            here.trials.retain(|(recipe, id, _)| (recipe, id) != (&place.0, &place.1));
            here.trials.push((place.0, place.1, Some(trial)));
        }
        let writes = merged(&file, &here, WhenBoth::ALL[all]);
        let counted = writes.trials.len() + writes.same_trials + writes.skipped_trials;
        prop_assert_eq!(counted, file.trials.len());
        let there = after(&here, &writes);
        for (recipe, id, trial) in &here.trials {
            let stays = there.trials.iter().any(|it| it == &(recipe.clone(), *id, trial.clone()));
            let is_replaced = trial.is_some() && writes.replaced_trials.contains(&(recipe.clone(), *id));
            prop_assert!(stays || is_replaced, "{recipe} {id}");
        }
        let mut written = places(&writes);
        written.sort();
        written.dedup();
        prop_assert_eq!(written.len(), writes.trials.len());
    }
}
