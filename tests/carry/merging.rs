//! What a file brings against what is here: each standing, each choice, and nothing lost.

use super::some::{any_everything, any_recipe, carried, larder, naming, recipe, version};
use batterwright::baking::carry::{
    Carried, Everything, Here, Standing, Taken, WhenBoth, Writes, merge, preview,
};
use batterwright::baking::worksheet::Settings;
use proptest::prelude::*;

/// One recipe of each standing, in the order of [`STANDINGS`].
fn file() -> Everything {
    Everything {
        recipes: vec![
            carried("new", "Plum cake", 5),
            carried("same", "Pear cake", 5),
            carried("theirs", "Fig cake, theirs", 9),
            carried("ours", "Date cake, theirs", 5),
            carried("moment", "Lime cake, theirs", 5),
            carried("binned", "Rye cake", 5),
            carried("damaged", "Oat cake", 5),
        ],
        settings: Some(Settings {
            height: "1600 m".into(),
            ..Settings::default()
        }),
        ..Everything::default()
    }
}

const STANDINGS: [Standing; 7] = [
    Standing::New,
    Standing::Same,
    Standing::TheirsNewer,
    Standing::OursNewer,
    Standing::SameMoment,
    Standing::InBin,
    Standing::Unreadable,
];

fn here() -> Here {
    Here {
        recipes: vec![
            // The same recipe, changed at another time and under another name.
            ("other".into(), Some(recipe("Pear cake", 1))),
            ("theirs".into(), Some(recipe("Fig cake", 5))),
            ("ours".into(), Some(recipe("Date cake", 9))),
            ("moment".into(), Some(recipe("Lime cake", 5))),
            ("damaged".into(), None),
        ],
        bin: vec!["binned".into()],
        ..Here::default()
    }
}

fn merged(taken: &Taken) -> Writes {
    let mut given = 0;
    merge(&file(), &here(), taken, || {
        given += 1;
        format!("fresh-{given}")
    })
}

fn names(writes: &Writes) -> Vec<&str> {
    let names = writes.recipes.iter().map(|carried| carried.id.as_str());
    names.collect()
}

fn all(choice: WhenBoth) -> Taken {
    Taken {
        all: choice,
        ..Taken::default()
    }
}

#[test]
fn each_recipe_says_how_it_stands() {
    let shown = preview(&file(), &here());
    let standings: Vec<_> = shown.rows.iter().map(|row| row.standing).collect();
    assert_eq!(standings, STANDINGS);
    assert_eq!(shown.rows[2].title, "Fig cake, theirs");
    assert_eq!((shown.rows[2].changed, shown.rows[2].here), (9, Some(5)));
    assert_eq!((shown.settings_differ, shown.larder), (Some(true), None));
}

#[test]
fn kept_both_ways_nothing_here_is_touched() {
    let writes = merged(&all(WhenBoth::KeepBoth));
    assert_eq!(
        names(&writes),
        ["new", "fresh-1", "fresh-2", "fresh-3", "binned", "fresh-4"]
    );
    assert_eq!(writes.replaced, Vec::<String>::new());
    assert_eq!(writes.out_of_bin, ["binned"]);
    assert_eq!(
        (writes.new, writes.doubled, writes.same, writes.skipped),
        (1, 4, 1, 0)
    );
    assert_eq!((writes.settings, writes.larder), (None, None));
}

/// Of two from one moment neither is newer, and what cannot be read may be: both stay.
#[test]
fn the_newer_takes_the_place_of_the_older_which_goes_to_the_bin() {
    let writes = merged(&all(WhenBoth::Newer));
    assert_eq!(
        names(&writes),
        ["new", "theirs", "fresh-1", "binned", "fresh-2"]
    );
    assert_eq!(writes.replaced, ["theirs"]);
    assert_eq!(
        (writes.new, writes.doubled, writes.same, writes.skipped),
        (1, 2, 1, 1)
    );
}

#[test]
fn skipped_they_stay_out_and_what_is_new_comes() {
    let writes = merged(&all(WhenBoth::Skip));
    assert_eq!(names(&writes), ["new"]);
    assert_eq!(
        (writes.new, writes.doubled, writes.same, writes.skipped),
        (1, 0, 1, 5)
    );
}

#[test]
fn one_recipe_may_be_chosen_otherwise() {
    let mut taken = all(WhenBoth::Skip);
    taken.settings = true;
    for (id, choice) in [
        ("new", WhenBoth::Skip),
        ("theirs", WhenBoth::Newer),
        ("ours", WhenBoth::KeepBoth),
        ("binned", WhenBoth::KeepBoth),
    ] {
        taken.single.insert(id.into(), choice);
    }
    let writes = merged(&taken);
    assert_eq!(names(&writes), ["theirs", "fresh-1", "binned"]);
    assert_eq!((writes.new, writes.doubled, writes.skipped), (0, 1, 3));
    assert_eq!(
        writes.settings.map(|settings| settings.height),
        Some("1600 m".into())
    );
}

/// By hand, of the file above.
#[test]
fn what_comes_is_said_in_words() {
    let mut taken = all(WhenBoth::Newer);
    taken.settings = true;
    let said = "Comes in: 1 new recipe, 1 recipe that rests in the bin here, 2 recipes beside the ones here, 1 recipe in the place of an older one, which goes to the bin and the file's settings. Here already, the same: 1 recipe. Left out: 1 recipe.";
    assert_eq!(merged(&taken).sentence(), said);
    assert_eq!(Writes::default().sentence(), "Nothing comes in.");
    assert_eq!(file().sentence(), "7 recipes and settings");
}

/// A version stays with the recipe that it came with, whatever that is called here.
#[test]
fn a_version_follows_its_original_to_its_new_name() {
    let file = Everything {
        recipes: vec![
            version("v", "a", "Plum cake, dark", "Plum cake"),
            carried("a", "Plum cake, theirs", 5),
        ],
        ..Everything::default()
    };
    let here = Here {
        recipes: vec![("a".into(), Some(recipe("Plum cake, ours", 5)))],
        ..Here::default()
    };
    let writes = merge(&file, &here, &Taken::default(), || "fresh".into());
    assert_eq!(names(&writes), ["v", "fresh"]);
    let of = writes.recipes[0]
        .recipe
        .version
        .as_ref()
        .map(|version| version.of.as_str());
    assert_eq!(of, Some("fresh"));
}

fn key(carried: &Carried) -> Option<&str> {
    carried.recipe.inputs.corrections[0].ingredient.as_deref()
}

/// Their own/1 is the hazel block, ours the oat cream: the recipe means the hazel block afterwards too.
#[test]
fn a_recipe_means_the_same_own_ingredient_here() {
    let mut recipes = vec![
        naming("a", "own/1"),
        naming("b", "flour"),
        naming("c", "own/9"),
    ];
    recipes[0].recipe.inputs.choices.swaps.missing = vec!["own/1".into()];
    recipes[0].recipe.inputs.choices.swaps.lines = vec![Default::default()];
    recipes[0].recipe.inputs.choices.swaps.lines[0].to = "water+own/1".into();
    let file = Everything {
        recipes,
        larder: Some(larder(&["hazel block", "fig paste"])),
        ..Everything::default()
    };
    let here = Here {
        larder: larder(&["oat cream"]),
        ..Here::default()
    };
    for whole in [false, true] {
        let taken = Taken {
            larder: whole,
            ..Taken::default()
        };
        let writes = merge(&file, &here, &taken, || "fresh".into());
        let ours = writes.larder.as_ref().expect("the hazel block comes along");
        let hazel = ours
            .entries
            .iter()
            .find(|entry| entry.name == "hazel block");
        let hazel = hazel.map(|entry| entry.key.as_str());
        assert_ne!(hazel, Some("own/1"));
        assert_eq!(key(&writes.recipes[0]), hazel);
        let swaps = &writes.recipes[0].recipe.inputs.choices.swaps;
        assert_eq!(swaps.missing.first().map(String::as_str), hazel);
        assert_eq!(
            swaps.lines[0].to,
            format!("water+{}", hazel.unwrap_or_default())
        );
        assert_eq!(key(&writes.recipes[1]), Some("flour"));
        // It means nothing in the file, and must not come to mean something here.
        assert_eq!(key(&writes.recipes[2]), Some("own/0"));
        assert_eq!(ours.entries.len(), if whole { 3 } else { 2 });

        // The same file again brings nothing.
        let mut after = Here {
            larder: ours.clone(),
            ..Here::default()
        };
        for carried in &writes.recipes {
            after
                .recipes
                .push((carried.id.clone(), Some(carried.recipe.clone())));
        }
        let standings: Vec<_> = preview(&file, &after)
            .rows
            .iter()
            .map(|row| row.standing)
            .collect();
        assert_eq!(standings, [Standing::Same; 3]);
    }
}

/// What a device would hold afterwards.
pub fn after(here: &Here, writes: &Writes) -> Here {
    let mut after = here.clone();
    for carried in &writes.recipes {
        after.recipes.retain(|(id, _)| *id != carried.id);
        after
            .recipes
            .push((carried.id.clone(), Some(carried.recipe.clone())));
    }
    for carried in &writes.trials {
        let place = (&carried.recipe, carried.id);
        after
            .trials
            .retain(|(recipe, id, _)| (recipe, *id) != place);
        let trial = Some(carried.trial.clone());
        after
            .trials
            .push((carried.recipe.clone(), carried.id, trial));
    }
    if let Some(settings) = &writes.settings {
        after.settings = settings.clone();
    }
    if let Some(larder) = &writes.larder {
        after.larder = larder.clone();
    }
    after
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Brought into an empty device, everything is there; brought in again, nothing changes.
    #[test]
    fn an_empty_device_holds_it_all_afterwards(file in any_everything(), choice in 0..3_usize) {
        let taken = Taken { all: WhenBoth::ALL[choice], settings: true, larder: true, ..Taken::default() };
        let writes = merge(&file, &Here::default(), &taken, || unreachable!("no name is taken"));
        // Two recipes that are the same come as two, for nothing here is the same.
        prop_assert_eq!(writes.recipes.len(), file.recipes.len());
        let there = after(&Here::default(), &writes);
        let again = merge(&file, &there, &taken, || unreachable!("all are here"));
        prop_assert!(again.is_empty(), "{again:?}");
        prop_assert_eq!(again.same, file.recipes.len());
        prop_assert_eq!(again.same_trials, file.trials.len());
    }

    /// Whatever is chosen: no recipe here is lost but what is named as replaced, and what cannot be read is never written to.
    #[test]
    fn nothing_here_is_lost(
        file in any_everything(),
        ours in prop::collection::btree_map("[a-z0-9-]{1,9}", prop::option::of(any_recipe()), 0..4),
        doubles in prop::collection::vec(prop::option::of(any_recipe()), 0..6),
        all in 0..3_usize,
        single in prop::collection::vec(prop::option::of(0..3_usize), 0..6),
    ) {
        let mut here = Here::default();
        here.recipes.extend(ours);
        for (carried, double) in file.recipes.iter().zip(doubles) {
            here.recipes.retain(|(id, _)| *id != carried.id);
            here.recipes.push((carried.id.clone(), double));
        }
        let mut taken = Taken { all: WhenBoth::ALL[all], ..Taken::default() };
        for (carried, choice) in file.recipes.iter().zip(single) {
            taken.single.extend(choice.map(|choice| (carried.id.clone(), WhenBoth::ALL[choice])));
        }
        let mut given = 0;
        let writes = merge(&file, &here, &taken, || { given += 1; format!("fresh_{given}") });
        prop_assert_eq!(writes.recipes.len() + writes.same + writes.skipped, file.recipes.len());
        let there = after(&here, &writes);
        for (id, kept) in &here.recipes {
            let stays = there.recipes.iter().any(|(other, now)| other == id && now == kept);
            prop_assert!(stays || (kept.is_some() && writes.replaced.contains(id)), "{id}");
        }
        let mut ids: Vec<_> = writes.recipes.iter().map(|carried| &carried.id).collect();
        ids.sort();
        ids.dedup();
        prop_assert_eq!(ids.len(), writes.recipes.len());
    }
}
