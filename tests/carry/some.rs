//! Recipes and larders for the tests of this folder, all invented.

use batterwright::baking::carry::{Carried, CarriedTrial, Everything};
use batterwright::baking::ingredient::own::{OwnEntry, OwnRecord, OwnWord};
use batterwright::baking::pan::{PanEntry, Shape};
use batterwright::baking::recipe::Correction;
use batterwright::baking::saved::{KeptRecipe, VersionOf};
use batterwright::baking::trial::{OutcomeField, Picture, Trial, Weight};
use batterwright::baking::worksheet::{Inputs, Settings};
use proptest::prelude::*;

pub fn recipe(text: &str, changed: u64) -> KeptRecipe {
    KeptRecipe {
        changed,
        inputs: Inputs::of_text(text),
        version: None,
    }
}

pub fn carried(id: &str, text: &str, changed: u64) -> Carried {
    Carried {
        id: id.into(),
        recipe: recipe(text, changed),
    }
}

/// A version of the recipe of that name.
pub fn version(id: &str, of: &str, text: &str, original: &str) -> Carried {
    let mut carried = carried(id, text, 7);
    carried.recipe.version = Some(VersionOf {
        name: "darker".into(),
        of: of.into(),
        original: Inputs::of_text(original),
    });
    carried
}

/// A recipe whose first line is said to be the ingredient of that key.
pub fn naming(id: &str, key: &str) -> Carried {
    let mut carried = carried(id, "100 g plant block\n200 g flour", 7);
    carried.recipe.inputs.corrections = vec![Correction {
        text: "100 g plant block".into(),
        ingredient: Some(key.into()),
        ..Correction::default()
    }];
    carried
}

/// The key of a picture.
pub const PICTURE: &str = "picture-0123456789abcdef01234567";

/// A bake of that recipe, called "less sugar", with a crumb that was measured, and a picture.
pub fn bake(of: &str, id: u64, plan: &str, changed: u64) -> CarriedTrial {
    let mut trial = Trial {
        changed,
        baked: id,
        name: "less sugar".into(),
        plan: Inputs::of_text(plan),
        pictures: vec![Picture {
            key: PICTURE.into(),
            words: "the cut face".into(),
        }],
        ..Trial::default()
    };
    trial.say(OutcomeField::CrumbPh, "7.3".into());
    CarriedTrial {
        recipe: of.into(),
        id,
        trial,
    }
}

/// Any bake of any of these recipes, or of another.
fn any_trial() -> impl Strategy<Value = Trial> {
    let said = prop::collection::btree_map(0..OutcomeField::CAME.len(), "\\PC{1,9}", 0..4);
    let weight = ("\\PC{0,9}", prop::option::of(0_u32..9_000_000));
    (
        any_inputs(),
        any::<[u64; 2]>(),
        said,
        prop::collection::vec(weight, 0..3),
        prop::option::of("[0-9]{1,20}"),
        prop::collection::vec("\\PC{0,9}", 0..3),
    )
        .prop_map(|(plan, [changed, baked], said, weights, against, words)| {
            let mut trial = Trial {
                changed,
                baked,
                against,
                plan,
                notes: words.join("\n"),
                name: words.first().cloned().unwrap_or_default(),
                seen: words.clone(),
                times: (words.len() > 1).then_some(0.5),
                ..Trial::default()
            };
            for (field, typed) in said {
                trial.say(OutcomeField::CAME[field], typed);
            }
            for (name, milligrams) in weights {
                trial.weights.push(Weight {
                    ingredient: name.clone(),
                    name,
                    grams: milligrams.map(|milligrams| f64::from(milligrams) / 1000.0),
                    beside: String::new(),
                });
            }
            for words in words {
                let key = PICTURE.into();
                trial.pictures.push(Picture { key, words });
            }
            trial
        })
}

/// A larder of ingredients with those names, numbered from 1.
pub fn larder(names: &[&str]) -> OwnRecord {
    let mut record = OwnRecord::default();
    for name in names {
        record.add(OwnEntry {
            name: (*name).into(),
            ..OwnEntry::default()
        });
    }
    record
}

/// Any recipe as it may be kept.
pub fn any_recipe() -> impl Strategy<Value = KeptRecipe> {
    (
        any_inputs(),
        any::<u64>(),
        prop::option::of((any_inputs(), "\\PC{0,9}", "[a-z0-9-]{1,9}")),
    )
        .prop_map(|(inputs, changed, version)| KeptRecipe {
            changed,
            inputs,
            version: version.map(|(original, name, of)| VersionOf { name, of, original }),
        })
}

/// Any text, with corrections and a pan; line ends of every kind, and what is no letter.
pub fn any_inputs() -> impl Strategy<Value = Inputs> {
    let line = prop_oneof![
        "\\PC{0,12}",
        Just("2 cups flour".to_owned()),
        Just("\u{202e}\u{0}\r".to_owned())
    ];
    let text = prop::collection::vec(line, 0..5).prop_map(|lines| lines.join("\n"));
    let correction = (
        "\\PC{0,9}",
        prop::option::of("[a-z/0-9]{0,9}"),
        prop::option::of(0_u32..9_000_000),
    );
    let pan = prop::option::of(("[0-9]{0,3}", "\\PC{0,5}"));
    (text, prop::collection::vec(correction, 0..3), pan).prop_map(|(text, corrections, pan)| {
        let mut inputs = Inputs::of_text(text);
        inputs.corrections = corrections
            .into_iter()
            .map(|(text, ingredient, milligrams)| Correction {
                text,
                ingredient,
                grams: milligrams.map(|milligrams| f64::from(milligrams) / 1000.0),
                ..Correction::default()
            })
            .collect();
        inputs.choices.own_pan = pan.map(|(length, depth)| PanEntry {
            shape: Shape::Loaf,
            length,
            depth,
            ..PanEntry::default()
        });
        inputs
    })
}

/// Anything that may be kept on a device.
pub fn any_everything() -> impl Strategy<Value = Everything> {
    let recipes = prop::collection::btree_map("[a-z0-9-]{1,9}", any_recipe(), 0..6);
    let names = prop::option::of(prop::collection::btree_set("[a-z]{1,9}", 0..3));
    let trials = prop::collection::btree_map(("[a-c]", any::<u64>()), any_trial(), 0..4);
    let rest = (any::<bool>(), "\\PC{0,9}");
    (recipes, names, rest, trials).prop_map(|(recipes, names, (settings, height), trials)| {
        Everything {
            taken_out: "2026-11-28T11:30:00.000Z".into(),
            recipes: recipes
                .into_iter()
                .map(|(id, recipe)| Carried { id, recipe })
                .collect(),
            settings: settings.then(|| Settings {
                height,
                ..Settings::default()
            }),
            larder: names.map(|names| {
                let names: Vec<&str> = names.iter().map(String::as_str).collect();
                let mut larder = larder(&names);
                larder.words.push(OwnWord {
                    words: "plant block".into(),
                    key: Some("own/1".into()),
                    amount: None,
                });
                larder
            }),
            pictures: trials
                .keys()
                .map(|(_, id)| (format!("picture-{id:024x}"), "/9j/4AAQ".to_owned()))
                .collect(),
            trials: trials
                .into_iter()
                .map(|((recipe, id), trial)| CarriedTrial { recipe, id, trial })
                .collect(),
        }
    })
}
