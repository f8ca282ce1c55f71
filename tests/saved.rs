//! Records that are kept: what was written loads, what is damaged or newer is refused with a reason.

use batterwright::baking::balance::Kind;
use batterwright::baking::ingredient::own::{OwnEntry, OwnField, OwnRecord, OwnWord};
use batterwright::baking::ingredient::{Allergen, PieceSize, Region};
use batterwright::baking::leaven::{Per, Tang, WishEntry};
use batterwright::baking::oven::scale::{OvenKind, OvenScale};
use batterwright::baking::pan::{AmountEntry, HowMuch, PanEntry, Shape};
use batterwright::baking::recipe::Correction;
use batterwright::baking::saved::{
    BinRecord, KeptRecipe, Record, SavedTrouble, VersionOf, families, from_text, to_text,
};
use batterwright::baking::trial::{OutcomeField, Picture, Said, Scale, Score, Trial, Weight};
use batterwright::baking::worksheet::{
    BatterCup, Choices, CupHabit, EggSize, Inputs, LengthUnit, LineWords, PutIn, Settings,
    TimedBake,
};
use proptest::prelude::*;
use serde_json::{Value, json};

fn kept() -> KeptRecipe {
    KeptRecipe {
        changed: 1_764_057_600_000,
        inputs: Inputs {
            text: "Cake\n2 cups flour \u{1f370}\n".into(),
            corrections: vec![Correction {
                text: "2 cups flour \u{1f370}".into(),
                grams: Some(250.0),
                ..Correction::default()
            }],
            choices: Choices {
                kind: None,
                swaps: Default::default(),
                oven: Default::default(),
                leavening: WishEntry::default(),
                region: None,
                own_pan: None,
                shelf: vec![PanEntry {
                    shape: Shape::Loaf,
                    length: "nine".into(),
                    ..PanEntry::default()
                }],
                amount: AmountEntry::default(),
                ..Choices::default()
            },
        },
        version: None,
    }
}

/// A version of it, made when there was less sugar in it.
fn version() -> KeptRecipe {
    let original = kept().inputs;
    KeptRecipe {
        version: Some(VersionOf {
            name: "the sweet one \u{1f36f}".into(),
            of: "k3-x".into(),
            original: original.clone(),
        }),
        inputs: Inputs {
            text: original.text + "100 g sugar",
            ..original
        },
        ..kept()
    }
}

/// A version with two pans on the shelf, made from one with a pan: what version 2 of the record brought.
fn version_of_today() -> KeptRecipe {
    let mut kept = version();
    let choices = &mut kept.inputs.choices;
    choices.shelf.push(PanEntry {
        shape: Shape::Jar,
        count: "4".into(),
        fill_line: "3".into(),
        lining: "thin".into(),
        ..PanEntry::default()
    });
    choices.amount = AmountEntry {
        how: HowMuch::Eggs,
        text: "three".into(),
    };
    choices.batter.cup_grams = "200".into();
    choices.batter.cup = BatterCup::Metric;
    kept
}

/// An invented packet and an invented word.
fn larder() -> OwnRecord {
    let mut entry = OwnEntry {
        name: "hazel block".into(),
        also_called: "nut block".into(),
        like: Some("margarine".into()),
        allergens: vec![Allergen::TreeNuts],
        plant_based: Some(true),
        weighings: vec![Default::default()],
        ..OwnEntry::default()
    };
    for (field, text) in [
        (OwnField::Fat, "70"),
        (OwnField::Protein, "a trace"),
        (OwnField::Weighing(0, 1), "218"),
    ] {
        text.clone_into(entry.field(field).expect("a field that is there"));
    }
    let mut record = OwnRecord::default();
    let key = record.add(entry);
    record.words = vec![
        OwnWord {
            words: "plant block".into(),
            key: Some(key),
            amount: None,
        },
        OwnWord {
            words: "for the stall".into(),
            key: None,
            amount: None,
        },
    ];
    record
}

/// A bake with all that can be said of one.
fn trial() -> Trial {
    let mut plan = Inputs::of_text("Cake\n2 cups flour\n1 tsp baking soda");
    plan.corrections = vec![Correction {
        text: "2 cups flour".into(),
        grams: Some(250.0),
        ..Correction::default()
    }];
    plan.choices.own_pan = Some(PanEntry {
        shape: Shape::Loaf,
        length: "nine".into(),
        ..PanEntry::default()
    });
    let said = |field, typed: &str| Said {
        field,
        typed: typed.into(),
    };
    let picture = |key: &str, words: &str| Picture {
        key: key.into(),
        words: words.into(),
    };
    Trial {
        changed: 1_764_435_600_000,
        baked: 1_764_432_000_000,
        name: "less sugar \u{1f370}".into(),
        against: Some("1764345600000123".into()),
        plan,
        weighed: vec![PutIn {
            line: LineWords {
                text: "2 cups flour".into(),
                ..LineWords::default()
            },
            name: "Flour".into(),
            grams: 130.5,
        }],
        times: Some(0.5),
        weights: vec![
            Weight {
                ingredient: "wheat_flour".into(),
                name: "Flour".into(),
                grams: Some(261.0),
                beside: String::new(),
            },
            Weight {
                ingredient: "moon dust".into(),
                name: "moon dust".into(),
                grams: None,
                beside: "the icing".into(),
            },
        ],
        method: 0xdead_beef,
        said: vec![
            said(OutcomeField::Waited, "20"),
            said(OutcomeField::CrumbPh, "7.3"),
            said(OutcomeField::HeightCentre, "6 cm"),
        ],
        scores: vec![
            Score {
                scale: Scale::Grain,
                points: 2,
            },
            Score {
                scale: Scale::Flavour,
                points: 5,
            },
        ],
        seen: vec!["dense_below".into()],
        notes: "Dense below,\nso more soda.".into(),
        pictures: vec![
            picture("picture-0123456789abcdef01234567", "the cut face"),
            picture("picture-fedcba9876543210fedcba98", ""),
        ],
    }
}

#[test]
fn what_was_written_loads_again() {
    let text = to_text(&kept()).expect("a finite record");
    assert_eq!(from_text::<KeptRecipe>(&text), Ok(kept()));
    let text = to_text(&version()).expect("a finite record");
    assert_eq!(from_text::<KeptRecipe>(&text), Ok(version()));
    let settings = Settings {
        scale: batterwright::baking::worksheet::ScaleStep::Two,
        region: Region::Uk,
        cup_habit: CupHabit::Spooned,
        eggs: EggSize(PieceSize::Medium),
        lengths: LengthUnit::Centimetres,
        height: "about 1600 m \u{26f0}".into(),
        oven: OvenKind::Fan,
        oven_scale: Some(OvenScale::Gas),
        oven_off: "-25 F".into(),
        fan_cooler: "half".into(),
    };
    let text = to_text(&settings).expect("a finite record");
    assert_eq!(from_text::<Settings>(&text), Ok(settings));
    let text = to_text(&larder()).expect("a finite record");
    assert_eq!(from_text::<OwnRecord>(&text), Ok(larder()));
}

/// A record from before the leavening could be worked out has the usual wish; one with a wish keeps it.
#[test]
fn a_wish_of_leavening_is_kept_with_its_recipe() {
    let first = from_text::<KeptRecipe>(include_str!("saved/recipe-1.json")).expect("a record");
    assert_eq!(first.inputs.choices.leavening, WishEntry::default());
    let mut kept = kept();
    kept.inputs.choices.leavening.tang = Tang::Tangy;
    kept.inputs.choices.leavening.cupboard.powder = false;
    kept.inputs.choices.leavening.sodium = "much".into();
    kept.inputs.choices.leavening.sodium_per = Per::Serving;
    let text = to_text(&kept).expect("a finite record");
    assert_eq!(from_text::<KeptRecipe>(&text), Ok(kept));
}

/// A recipe that was made for a height keeps it as typed; one from before that is for the sea.
#[test]
fn the_height_that_a_recipe_is_for_is_kept_with_it() {
    let first = from_text::<KeptRecipe>(include_str!("saved/recipe-1.json")).expect("a record");
    assert_eq!(first.inputs.choices.made_for, "");
    let mut kept = kept();
    kept.inputs.choices.made_for = "up high, 1600 m".into();
    let text = to_text(&kept).expect("a finite record");
    assert_eq!(from_text::<KeptRecipe>(&text), Ok(kept));
}

/// A record from before a kind could be said has none; one that says it keeps it under its name in the tables.
#[test]
fn a_kind_that_is_said_is_kept_with_its_recipe() {
    let first = from_text::<KeptRecipe>(include_str!("saved/recipe-1.json")).expect("a record");
    assert_eq!(first.inputs.choices.kind, None);
    let mut kept = kept();
    kept.inputs.choices.kind = Some(Kind::PlantOil);
    let text = to_text(&kept).expect("a finite record");
    assert!(text.contains("plant_oil"), "{text}");
    assert_eq!(from_text::<KeptRecipe>(&text), Ok(kept));
}

/// One file for each version that was ever written, kept as it was written.
#[test]
fn every_past_version_still_loads() {
    let first = include_str!("saved/recipe-1.json");
    assert_eq!(from_text::<KeptRecipe>(first), Ok(kept()));
    let first = include_str!("saved/recipe-1-version.json");
    assert_eq!(from_text::<KeptRecipe>(first), Ok(version()));
    let second = include_str!("saved/recipe-2.json");
    assert_eq!(from_text::<KeptRecipe>(second), Ok(version_of_today()));
    let first = include_str!("saved/settings-1.json");
    let before_heights = Settings {
        region: Region::Uk,
        cup_habit: CupHabit::Spooned,
        eggs: EggSize(PieceSize::Medium),
        lengths: LengthUnit::Centimetres,
        ..Settings::default()
    };
    assert_eq!(from_text::<Settings>(first), Ok(before_heights));
    let first = include_str!("saved/larder-1.json");
    assert_eq!(from_text::<OwnRecord>(first), Ok(larder()));
    let first = include_str!("saved/trial-1.json");
    assert_eq!(from_text::<Trial>(first), Ok(trial()));
}

/// The page that wrote it reads it again, to the letter; what is usual is not in it.
#[test]
fn a_bake_is_written_short() {
    let text = to_text(&trial()).expect("a finite record");
    assert_eq!(text, include_str!("saved/trial-1.json").trim_end());
    let bare = to_text(&Trial::default()).expect("a finite record");
    assert_eq!(
        bare,
        r#"{"format":"batterwright trial","version":1,"body":{}}"#
    );
}

/// What is wrong with a bake is named with its place, and what is too much with how much that is.
#[test]
fn a_damaged_bake_is_refused_with_a_reason() {
    let read = |body: &str| {
        let text = format!(r#"{{"format":"batterwright trial","version":1,"body":{body}}}"#);
        from_text::<Trial>(&text).map_err(|trouble| trouble.reason())
    };
    for (body, said) in [
        ("7", "its body is the number 7, which it cannot be"),
        (
            r#"{"baked":-1}"#,
            "its baked is the number -1, which it cannot be",
        ),
        (
            r#"{"pictures":[{},{"words":7}]}"#,
            "its pictures[1].words is the number 7, which it cannot be",
        ),
        (
            r#"{"weighed":[{"line":7}]}"#,
            "its weighed[0].line is the number 7, which it cannot be",
        ),
        (
            r#"{"scores":[{"scale":"grain","points":300}]}"#,
            "its scores[0] lacks a field, or has one that it cannot have",
        ),
        (
            r#"{"plan":{"corrections":[{"milligrams":"much"}]}}"#,
            "its plan.corrections[0].milligrams is the text \"much\", which it cannot be",
        ),
        (
            r#"{"seen":"low"}"#,
            "its seen is the text \"low\", which it cannot be",
        ),
    ] {
        assert_eq!(read(body), Err(said.to_owned()), "{body}");
    }
    let long = format!(r#"{{"notes":"{}"}}"#, "n".repeat(20_001));
    let said = "its notes is 21 kB long, and 20 kB is the most";
    assert_eq!(read(&long), Err(said.to_owned()));
    let many = format!(r#"{{"seen":[{}]}}"#, vec!["\"low\""; 2001].join(","));
    let said = "its seen has 2001 items, and 2000 are the most";
    assert_eq!(read(&many), Err(said.to_owned()));
    let mut wordy = trial();
    wordy.notes = "n".repeat(20_001);
    assert!(to_text(&wordy).is_err());
    let newer = r#"{"format":"batterwright trial","version":2,"body":{"notes":7}}"#;
    assert_eq!(
        from_text::<Trial>(newer),
        Err(SavedTrouble::Newer {
            version: 2,
            known: 1
        })
    );
}

#[test]
fn a_newer_record_is_named_as_newer() {
    let text = r#"{"format":"batterwright recipe","version":99,"body":{}}"#;
    assert_eq!(
        from_text::<KeptRecipe>(text),
        Err(SavedTrouble::Newer {
            version: 99,
            known: 2
        })
    );
}

#[test]
fn a_damaged_record_is_refused_with_a_reason() {
    let whole = to_text(&kept()).expect("a finite record");
    let cut = &whole[..whole.len() / 2];
    for text in [
        "",
        "null",
        "[]",
        "{}",
        "not json",
        cut,
        r#"{"format":"batterwright recipe","version":1,"body":7}"#,
        r#"{"format":"batterwright recipe","version":0,"body":{}}"#,
        r#"{"format":"something else","version":1,"body":{}}"#,
    ] {
        let found = from_text::<KeptRecipe>(text);
        assert!(
            matches!(found, Err(SavedTrouble::Corrupt(ref reason)) if !reason.is_empty()),
            "{text}: {found:?}"
        );
    }
}

/// The reason names the place; what is right beside it is not blamed.
#[test]
fn a_wrong_field_is_named_with_its_place() {
    for (body, said) in [
        (r#"7"#, "its body is the number 7, which it cannot be"),
        (r#"{"inputs":{}}"#, "its body lacks changed"),
        (r#"{"changed":1}"#, "its body lacks inputs"),
        (
            r#"{"changed":-1,"inputs":{}}"#,
            "its changed is the number -1, which it cannot be",
        ),
        (
            r#"{"changed":1,"inputs":{"text":["Cake"]}}"#,
            "its inputs.text is a list, which it cannot be",
        ),
        (
            r#"{"changed":1,"inputs":{"corrections":[{},{"milligrams":"much"}]}}"#,
            "its inputs.corrections[1].milligrams is the text \"much\", which it cannot be",
        ),
        (
            r#"{"changed":1,"inputs":{"choices":{"shelf":[{},{},{"shape":"teapot"}]}}}"#,
            "its inputs.choices.shelf[2].shape is the text \"teapot\", which it cannot be",
        ),
        (
            r#"{"changed":1,"inputs":{},"version":{"original":{"corrections":[7]}}}"#,
            "its version.original.corrections[0] is the number 7, which it cannot be",
        ),
        (
            r#"{"changed":1,"inputs":{"text":{}}}"#,
            "its inputs.text has fields, which it cannot have",
        ),
        (
            r#"{"changed":1,"inputs":{"text":7,"corrections":[{"amount":true}]}}"#,
            "its inputs.corrections[0].amount is \"true\", which it cannot be",
        ),
        (
            "{\"changed\":1,\"inputs\":{\"choices\":{\"region\":\"\u{202e}\\n0123456789012345678901234567890123456789\"}}}",
            "its inputs.choices.region is the text \"\u{fffd}\u{fffd}01234567890123456789012345678901234567\u{2026}\", which it cannot be",
        ),
    ] {
        let text = format!(r#"{{"format":"batterwright recipe","version":2,"body":{body}}}"#);
        let found = from_text::<KeptRecipe>(&text);
        assert_eq!(found, Err(SavedTrouble::Corrupt(said.into())), "{text}");
    }
    for (text, said) in [
        ("{\n\"format\": oven", "it is damaged at line 2, letter 11"),
        ("{\"format\":", "it ends too early, so it is cut off"),
        ("{}", "it does not say that it is a batterwright recipe"),
    ] {
        let found = from_text::<KeptRecipe>(text);
        assert_eq!(found, Err(SavedTrouble::Corrupt(said.into())), "{text}");
    }
    let deep = "[".repeat(100_000);
    let said = "it is nested too deep at line 1, letter 128".to_owned();
    assert_eq!(
        from_text::<KeptRecipe>(&deep),
        Err(SavedTrouble::Corrupt(said))
    );
}

/// What has another shape than the baker's own is refused, never half read.
#[test]
fn a_damaged_larder_is_refused_with_a_reason() {
    for body in [
        "7",
        r#"{"entries":7}"#,
        r#"{"entries":[7]}"#,
        r#"{"entries":[{"name":7}]}"#,
        r#"{"entries":[{"label":"100"}]}"#,
        r#"{"entries":[{"allergens":["patience"]}]}"#,
        r#"{"entries":[{"weighings":[{"figures":[118]}]}]}"#,
        r#"{"words":["plant block"]}"#,
        r#"{"given":-1}"#,
    ] {
        let text = format!(r#"{{"format":"batterwright larder","version":1,"body":{body}}}"#);
        let found = from_text::<OwnRecord>(&text);
        assert!(
            matches!(found, Err(SavedTrouble::Corrupt(ref reason)) if reason.contains("its ")),
            "{text}: {found:?}"
        );
    }
    let text =
        r#"{"format":"batterwright larder","version":1,"body":{"entries":[{"key":"own/1"}]}}"#;
    let found = from_text::<OwnRecord>(text).map(|record| record.entries[0].label.per.clone());
    assert_eq!(found, Ok("100".into()));
}

/// A recipe that is no version is written as it always was, so that a page of yesterday reads it too.
#[test]
fn a_recipe_by_itself_is_written_without_a_version() {
    let text = to_text(&kept()).expect("a finite record");
    assert!(!text.contains("\"version\":null"), "{text}");
    assert_eq!(text.matches("\"version\"").count(), 1, "{text}");
}

/// By hand: b and d are versions of a, c is one of b; e's original is gone; f and g are versions of one another.
#[test]
fn versions_stand_behind_what_they_were_made_from() {
    let records = [
        ("d", Some("a")),
        ("e", Some("gone")),
        ("c", Some("b")),
        ("a", None),
        ("f", Some("g")),
        ("b", Some("a")),
        ("g", Some("f")),
        ("h", Some("h")),
    ];
    let by_hand = vec![vec![3, 0, 2, 5], vec![1], vec![4], vec![6], vec![7]];
    assert_eq!(families(&records), by_hand);
    assert!(families(&[]).is_empty());
}

/// The one pan that version 1 knew stands on the shelf, in a recipe and in what it was made from; none stands for none.
#[test]
fn the_other_pan_of_a_past_record_stands_on_the_shelf() {
    let first =
        from_text::<KeptRecipe>(include_str!("saved/recipe-1-version.json")).expect("a record");
    let original = first.version.expect("what it was made from").original;
    for choices in [&first.inputs.choices, &original.choices] {
        assert_eq!(choices.shelf.len(), 1);
        assert_eq!(choices.shelf[0].length, "nine");
        assert_eq!(choices.amount, AmountEntry::default());
    }
    let none = r#"{"format":"batterwright recipe","version":1,"body":{"changed":0,"inputs":{"choices":{"other_pan":null}}}}"#;
    let none = from_text::<KeptRecipe>(none).expect("a record");
    assert!(none.inputs.choices.shelf.is_empty());
}

/// A field that a past record lacks takes its usual value; what is there is kept.
#[test]
fn missing_fields_take_their_usual_value() {
    let text = r#"{"format":"batterwright recipe","version":1,"body":{"changed":0,"inputs":{"text":"1 egg"}}}"#;
    assert_eq!(
        from_text::<KeptRecipe>(text).map(|kept| kept.inputs),
        Ok(Inputs::of_text("1 egg"))
    );
}

/// By hand: only what was typed or chosen is written. A pan that is there at all stays, and so does each item of a list.
#[test]
fn what_is_usual_is_not_written() {
    let mut kept = KeptRecipe {
        changed: 1_764_057_600_000,
        inputs: Inputs::of_text("Cake\n2 cups flour"),
        version: None,
    };
    let plain = r#"{"format":"batterwright recipe","version":2,"body":{"changed":1764057600000,"inputs":{"text":"Cake\n2 cups flour"}}}"#;
    assert_eq!(to_text(&kept).as_deref(), Ok(plain));
    kept.inputs.corrections.push(Correction {
        text: "2 cups flour".into(),
        grams: Some(250.0),
        ..Correction::default()
    });
    let choices = &mut kept.inputs.choices;
    choices.own_pan = Some(PanEntry::default());
    choices.shelf = vec![
        PanEntry::default(),
        PanEntry {
            count: String::new(),
            ..PanEntry::default()
        },
    ];
    choices.oven.bakes = vec![TimedBake {
        pan: Some(PanEntry::default()),
        ..TimedBake::default()
    }];
    let chosen = concat!(
        r#"{"format":"batterwright recipe","version":2,"body":{"changed":1764057600000,"inputs":{"#,
        r#""choices":{"oven":{"bakes":[{"pan":{}}]},"own_pan":{},"shelf":[{},{"count":""}]},"#,
        r#""corrections":[{"milligrams":250000,"text":"2 cups flour"}],"text":"Cake\n2 cups flour"}}}"#
    );
    assert_eq!(to_text(&kept).as_deref(), Ok(chosen));
    assert_eq!(from_text(chosen), Ok(kept));
}

/// Every field of a recipe, each by itself away from its usual value, comes back.
#[test]
fn every_field_comes_back_when_it_alone_is_unusual() {
    let mut full = version_of_today();
    full.inputs.choices.own_pan = Some(PanEntry::default());
    full.inputs.choices.swaps.lines = vec![Default::default()];
    full.inputs.choices.swaps.held = vec![Default::default()];
    full.inputs.choices.swaps.missing = vec!["butter".into()];
    full.inputs.choices.mixing.cold = vec![Default::default()];
    full.inputs.choices.oven.bakes = vec![TimedBake {
        pan: Some(PanEntry::default()),
        ..TimedBake::default()
    }];
    assert!(each_change_comes_back(&full) > 150);
    assert!(each_change_comes_back(&Settings::default()) >= 3);
    assert!(each_change_comes_back(&larder()) > 20);
}

/// Changes each text, number and yes or no of a record in turn; gives how many changes there were.
fn each_change_comes_back<R: Record + PartialEq + std::fmt::Debug>(record: &R) -> usize {
    let whole = serde_json::to_value(record).expect("a finite record");
    let mut places = Vec::new();
    leaves(&whole, String::new(), &mut places);
    let mut tried = 0;
    for place in &places {
        for other in [json!(""), json!("x"), json!(7), json!(true), json!(false)] {
            let mut changed = whole.clone();
            *changed.pointer_mut(place).expect("a place of the record") = other;
            // One word of a closed list for another, or text for a number, is no record.
            let Ok(changed) = serde_json::from_value::<R>(changed) else {
                continue;
            };
            let text = to_text(&changed).expect("a finite record");
            assert_eq!(from_text::<R>(&text).as_ref(), Ok(&changed), "{place}");
            tried += 1;
        }
    }
    tried
}

/// The pointers to all that holds nothing further.
fn leaves(value: &Value, place: String, places: &mut Vec<String>) {
    match value {
        Value::Object(fields) => {
            for (name, value) in fields {
                leaves(value, format!("{place}/{name}"), places);
            }
        }
        Value::Array(items) => {
            for (at, item) in items.iter().enumerate() {
                leaves(item, format!("{place}/{at}"), places);
            }
        }
        _ => places.push(place),
    }
}

/// What was removed stands in the bin to the letter, damaged as it may be, and for 30 days of 24 hours.
#[test]
fn what_was_removed_is_kept_to_the_letter_for_thirty_days() {
    let removed = BinRecord {
        id: "k3-x".into(),
        title: "Plum cake".into(),
        removed: 1_764_057_600_000,
        text: "{\"format\":\"batterwright recipe\",\"vers\u{1}\"\u{1f370}".into(),
    };
    let text = to_text(&removed).expect("a finite record");
    assert_eq!(from_text::<BinRecord>(&text), Ok(removed.clone()));
    // 30 * 24 * 3,600,000 is 2,592,000,000.
    assert!(!removed.is_over(1_764_057_600_000 + 2_591_999_999));
    assert!(removed.is_over(1_764_057_600_000 + 2_592_000_000));
    assert!(!removed.is_over(0) && removed.is_over(u64::MAX));
}

/// On both sides of each limit: a million letters of text, 20,000 of a field, 2,000 corrections.
#[test]
fn a_record_beyond_a_limit_is_neither_written_nor_read() {
    type Filled = fn(&mut KeptRecipe, usize);
    let with = |change: Filled, size: usize| {
        let mut kept = KeptRecipe::default();
        change(&mut kept, size);
        kept
    };
    let cases: [(Filled, usize, &str); 4] = [
        (
            |kept, size| kept.inputs.text = "a".repeat(size),
            1_000_000,
            "its inputs.text is 1001 kB long, and 1000 kB is the most",
        ),
        (
            |kept, size| kept.inputs.choices.made_for = "a".repeat(size),
            20_000,
            "its inputs.choices.made_for is 21 kB long, and 20 kB is the most",
        ),
        (
            |kept, size| kept.inputs.corrections = vec![Correction::default(); size],
            2_000,
            "its inputs.corrections has 2001 items, and 2000 are the most",
        ),
        (
            |kept, size| {
                kept.inputs.corrections = vec![
                    Correction::default(),
                    Correction {
                        amount: Some("a".repeat(size)),
                        ..Correction::default()
                    },
                ];
            },
            20_000,
            "its inputs.corrections[1].amount is 21 kB long, and 20 kB is the most",
        ),
    ];
    for (change, most, said) in cases {
        let fits = with(change, most);
        let text = to_text(&fits).expect("as much as may be");
        assert_eq!(from_text::<KeptRecipe>(&text), Ok(fits));
        let beyond = with(change, most + 1);
        assert_eq!(to_text(&beyond), Err(said.to_owned()));
        let body = serde_json::to_string(&beyond).expect("a finite record");
        let text = format!(r#"{{"format":"batterwright recipe","version":2,"body":{body}}}"#);
        let found = from_text::<KeptRecipe>(&text);
        assert_eq!(found, Err(SavedTrouble::TooMuch(said.to_owned())));
    }
    let long = " ".repeat(2_500_001);
    let found = from_text::<KeptRecipe>(&long);
    let said = "it is 2501 kB long, and 2500 kB is the most".to_owned();
    assert_eq!(found, Err(SavedTrouble::TooMuch(said)));
}

/// One line of a kept text.
fn any_text() -> impl Strategy<Value = String> {
    "(\\PC{0,12}\n){0,4}"
}

proptest! {
    /// Whatever is typed as a version's name, text and original comes back to the letter.
    #[test]
    fn any_version_comes_back(name in "\\PC{0,20}", of in "[a-z0-9-]{0,12}", text in any_text(), original in any_text()) {
        let record = KeptRecipe {
            changed: 7,
            inputs: Inputs::of_text(text),
            version: Some(VersionOf { name, of, original: Inputs::of_text(original) }),
        };
        let written = to_text(&record).expect("a finite record");
        prop_assert_eq!(from_text::<KeptRecipe>(&written), Ok(record));
    }

    /// However records point at one another, each stands on the shelf once.
    #[test]
    fn every_record_stands_on_the_shelf_once(of in prop::collection::vec(prop::option::of(0_usize..12), 0..12)) {
        let names: Vec<String> = (0..12).map(|at| at.to_string()).collect();
        let records: Vec<(&str, Option<&str>)> = of
            .iter()
            .enumerate()
            .map(|(at, of)| (names[at].as_str(), of.map(|of| names[of].as_str())))
            .collect();
        let mut places: Vec<usize> = families(&records).concat();
        places.sort_unstable();
        prop_assert_eq!(places, (0..of.len()).collect::<Vec<_>>());
    }
}
