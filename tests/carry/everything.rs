//! The one file: what it looks like, that it comes back whole, and each way in which it is refused.

use super::some::{PICTURE, any_everything, bake, carried, larder, version};
use batterwright::baking::carry::{Everything, read, write};
use batterwright::baking::trial::Picture;
use batterwright::baking::worksheet::Settings;
use proptest::prelude::*;
use std::collections::BTreeMap;

fn small() -> Everything {
    Everything {
        taken_out: "2026-11-28T11:30:00.000Z".into(),
        recipes: vec![
            version("k4", "k3", "Plum cake\n3 eggs", "Plum cake"),
            carried("k3", "Plum cake\n2 eggs\n", 5),
        ],
        settings: Some(Settings {
            height: "1600 m".into(),
            ..Settings::default()
        }),
        larder: Some(larder(&["hazel block"])),
        trials: vec![bake("k3", 1_764_345_600_000_123, "Plum cake\n2 eggs\n", 8)],
        pictures: [(PICTURE.into(), "/9j/4AAQSkZJRg==".into())].into(),
    }
}

/// By hand. It says what it is first, its recipes stand in the order of their names, and a text line by line.
const SMALL: &str = include_str!("everything-2.json");
/// The same as version 1 had it, without bakes; for good.
const FIRST: &str = include_str!("everything-1.json");

#[test]
fn the_file_can_be_read_by_a_person() {
    assert_eq!(write(&small()).as_deref(), Ok(SMALL));
    let mut sorted = small();
    sorted.recipes.reverse();
    assert_eq!(read(SMALL), Ok(sorted.clone()));
    let first = Everything {
        trials: Vec::new(),
        pictures: BTreeMap::new(),
        ..sorted
    };
    assert_eq!(read(FIRST), Ok(first));
}

/// A JPEG of so many thousand letters of base64.
fn picture(thousands: usize) -> String {
    "/9j/".to_owned() + &"A".repeat(thousands * 1000 - 4)
}

fn key(number: usize) -> String {
    format!("picture-{number:024x}")
}

/// Ten bakes a hundred, each with two pictures, of which one is that of the bake before.
fn with_pictures(bakes: usize) -> (Everything, BTreeMap<String, String>) {
    let mut everything = small();
    everything.pictures.clear();
    everything.trials = (1..=bakes)
        .map(|number| {
            let mut carried = bake("k3", number as u64, "Plum cake", 1);
            carried.trial.pictures = [number, number - 1]
                .map(|number| Picture {
                    key: key(number),
                    words: String::new(),
                })
                .into();
            carried
        })
        .collect();
    let packed = (0..=bakes).map(|number| (key(number), picture(52)));
    (everything, packed.collect())
}

#[test]
fn the_pictures_of_the_latest_bakes_come_first_and_as_many_as_fit() {
    let (mut few, packed) = with_pictures(3);
    assert_eq!(few.picture_keys(), [key(3), key(2), key(1), key(0)]);
    assert_eq!(few.add_pictures(packed.clone()), Ok(0));
    assert_eq!(few.pictures, packed);
    // 500 pictures of 52,000 letters are 26 MB: 20 MB have room for some 384 of them.
    let (mut many, packed) = with_pictures(499);
    let left_out = many.add_pictures(packed).expect("within the limits");
    assert!((116..=130).contains(&left_out), "{left_out}");
    assert!(many.pictures.contains_key(&key(499)) && !many.pictures.contains_key(&key(1)));
    let file = write(&many).expect("a file");
    assert!(
        (19_900_000..=20_000_000).contains(&file.len()),
        "{}",
        file.len()
    );
    assert!(read(&file).is_ok());
    // What is not here, and what is none, is left out and counted.
    let (mut none, mut packed) = with_pictures(1);
    packed.remove(&key(0));
    packed.insert(key(1), "no picture".into());
    assert_eq!(none.add_pictures(packed), Ok(2));
    assert!(none.pictures.is_empty());
}

/// A mark of byte order before it, and a past version of a record within it.
#[test]
fn an_editors_mark_and_a_past_record_do_no_harm() {
    let past = include_str!("../saved/recipe-1.json");
    let file = format!(
        "\u{feff}{{\"format\":\"batterwright everything\",\"version\":1,\"recipes\":[{{\"id\":\"a\",\"record\":{past}}}]}}"
    );
    let found = read(&file).expect("a file with a past record");
    assert_eq!(
        found.recipes[0].recipe.inputs.choices.shelf[0].length,
        "nine"
    );
    assert_eq!((found.settings, found.larder), (None, None));
}

/// Each file with the sentence that refuses it.
#[test]
fn a_wrong_file_is_refused_whole_with_the_reason_and_the_place() {
    let with = |recipes: &str| {
        format!("{{\"format\":\"batterwright everything\",\"version\":1,\"recipes\":[{recipes}]}}")
    };
    const NO_JPEG: &str =
        "pictures: \"picture-0123456789abcdef01234567\" is no JPEG of 40 kB at most, in base64";
    let second = |rest: &str| {
        format!("{{\"format\":\"batterwright everything\",\"version\":2,\"recipes\":[],{rest}}}")
    };
    let trials = |rows: &str| second(&format!("\"trials\":[{rows}]"));
    let pictures = |rows: &str| second(&format!("\"pictures\":{rows}"));
    let trial = |id: &str, body: &str| {
        format!(
            "{{\"recipe\":\"a\",\"id\":{id},\"record\":{{\"format\":\"batterwright trial\",\"version\":1,\"body\":{body}}}}}"
        )
    };
    let row = |id: &str, body: &str| {
        format!(
            "{{\"id\":{id},\"record\":{{\"format\":\"batterwright recipe\",\"version\":2,\"body\":{body}}}}}"
        )
    };
    let good = row(
        "\"a\"",
        r#"{"changed":1,"inputs":{"text":"Plum cake\nfor two"}}"#,
    );
    let bad = |id: &str, body: &str| with(&format!("{good},{}", row(id, body)));
    let plum = |rest: &str| {
        bad(
            "\"b\"",
            &format!("{{\"changed\":1,\"inputs\":{{\"text\":[\"Plum cake\",\"2 eggs\"],{rest}}}}}"),
        )
    };
    let cases: Vec<(String, &str)> = vec![
        (String::new(), "it ends too early, so it is cut off"),
        (SMALL[..SMALL.len() / 2].into(), "it ends too early, so it is cut off"),
        // The second line is `  "format": ...`; its letter 4 is the f.
        (SMALL.replacen("\"format\"", "format", 1), "it is damaged at line 2, letter 3"),
        ("[1, 2]".into(), "it does not say that it is \"batterwright everything\""),
        (
            r#"{"format":"batterwright larder","version":1,"body":{}}"#.into(),
            "its format is \"batterwright larder\", not \"batterwright everything\"",
        ),
        (
            r#"{"format":"batterwright everything","version":3}"#.into(),
            "a newer version of this page wrote it (file version 3; this page reads up to 2)",
        ),
        (r#"{"format":"batterwright everything","version":0}"#.into(), "no version 0 was ever written"),
        (r#"{"format":"batterwright everything","version":"1"}"#.into(), "it names no version"),
        (r#"{"format":"batterwright everything","version":1}"#.into(), "it has no list of recipes"),
        (
            r#"{"format":"batterwright everything","version":1,"recipes":"none"}"#.into(),
            "its recipes is the text \"none\", which it cannot be",
        ),
        (
            r#"{"format":"batterwright everything","version":1,"recipes":[],"taken_out":7}"#.into(),
            "its taken_out is the number 7, which it cannot be",
        ),
        (
            r#"{"format":"batterwright everything","version":1,"recipes":[],"settings":{"format":"batterwright settings","version":1,"body":{"region":"moon"}}}"#.into(),
            "settings: its region is the text \"moon\", which it cannot be",
        ),
        (
            r#"{"format":"batterwright everything","version":1,"recipes":[],"larder":{"format":"batterwright larder","version":9,"body":{}}}"#.into(),
            "larder: it was written by a newer version of this page (record version 9; this page reads up to 1)",
        ),
        (
            r#"{"format":"batterwright everything","version":1,"recipes":[],"larder":{"format":"batterwright larder","version":1,"body":{"entries":[{"key":"own/1"},{"key":"own/1"}]}}}"#.into(),
            "larder: its entries is a list, which it cannot be",
        ),
        (with("7"), "recipe 1 of 1: its id is empty, not a text"),
        (with(&row("7", "{}")), "recipe 1 of 1: its id is the number 7, not a text"),
        (
            bad("\"../b\"", "{}"),
            "recipe 2 of 2: its id \"../b\" is no name of a record",
        ),
        (with(&format!("{good},{good}")), "recipe 2 of 2, \"Plum cake\" has the same id as recipe 1: \"a\""),
        (
            plum(r#""corrections":[{},{},{},{"milligrams":"much"}]"#),
            "recipe 2 of 2, \"Plum cake\": its inputs.corrections[3].milligrams is the text \"much\", which it cannot be",
        ),
        (
            plum(r#""corrections":[{"milligrams":-5}]"#),
            "recipe 2 of 2, \"Plum cake\": its inputs.corrections[0].milligrams is the number -5, which it cannot be",
        ),
        (
            plum(r#""choices":{"own_pan":{"length":9}}"#),
            "recipe 2 of 2, \"Plum cake\": its inputs.choices.own_pan.length is the number 9, which it cannot be",
        ),
        (
            bad("\"b\"", r#"{"changed":1,"inputs":{"text":["Plum cake",7]}}"#),
            "recipe 2 of 2: its inputs.text is a list, which it cannot be",
        ),
        (
            "{\"format\":".to_owned() + &"{\"a\":".repeat(200_000),
            "it is nested too deep at line 1, letter 641",
        ),
        (
            bad("\"b\"", &format!("{{\"changed\":1,\"inputs\":{{\"text\":\"Plum\\n{}\"}}}}", "a".repeat(1_000_000))),
            "recipe 2 of 2, \"Plum\": its inputs.text is 1001 kB long, and 1000 kB is the most",
        ),
        (" ".repeat(20_000_001), "it is 20001 kB long, and 20000 kB is the most"),
        (with(&vec!["0"; 5001].join(",")), "it holds 5001 recipes, and 5000 are the most"),
        (trials(&vec!["0"; 20_001].join(",")), "it holds 20001 trials, and 20000 are the most"),
        (trials("7"), "trial 1 of 1: its recipe is empty, not a text"),
        (trials(r#"{"recipe":"a b"}"#), "trial 1 of 1: its recipe \"a b\" is no name of a record"),
        (trials(r#"{"recipe":"a","id":"1"}"#), "trial 1 of 1: its id is the text \"1\", not a number"),
        (trials(r#"{"recipe":"a","id":-1}"#), "trial 1 of 1: its id is the number -1, not a number"),
        (
            trials(r#"{"recipe":"a","id":1}"#),
            "trial 1 of 1: it does not say that it is a batterwright trial",
        ),
        (trials(&trial("1", r#"{"notes":7}"#)), "trial 1 of 1: its notes is the number 7, which it cannot be"),
        (
            trials(&trial("1", r#"{"said":[{"field":"moon","typed":"x"}]}"#)),
            "trial 1 of 1: its said[0] lacks a field, or has one that it cannot have",
        ),
        (
            trials(&format!("{0},{0}", trial("5", "{}"))),
            "trial 2 of 2: another one has the same recipe and id: 5",
        ),
        (
            r#"{"format":"batterwright everything","version":2,"recipes":[],"trials":{}}"#.into(),
            "its trials is a group of fields, which it cannot be",
        ),
        (pictures("[]"), "its pictures is a list, which it cannot be"),
        (pictures(r#"{"picture-1":"/9j/"}"#), "pictures: \"picture-1\" is no key of a picture"),
        (
            pictures(r#"{"picture-0123456789ABCDEF01234567":"/9j/"}"#),
            "pictures: \"picture-0123456789ABCDEF01234567\" is no key of a picture",
        ),
        (pictures(&format!("{{\"{PICTURE}\":7}}")), NO_JPEG),
        // A PNG; what is no base64; an odd length; markup behind; one letter too many.
        (pictures(&format!("{{\"{PICTURE}\":\"iVBORw0KGgo=\"}}")), NO_JPEG),
        (pictures(&format!("{{\"{PICTURE}\":\"/9j/<svg\"}}")), NO_JPEG),
        (pictures(&format!("{{\"{PICTURE}\":\"/9j/A\"}}")), NO_JPEG),
        (pictures(&format!("{{\"{PICTURE}\":\"/9j/A===\"}}")), NO_JPEG),
        (pictures(&format!("{{\"{PICTURE}\":\"/9j/{}\"}}", "A".repeat(53_336))), NO_JPEG),
    ];
    // Beyond what a number can be, and what is none: both begin at the same letter, the one where it ends is named.
    for (number, ends) in [("NaN", 1), ("1e999", 5)] {
        let file = plum(&format!("\"corrections\":[{{\"milligrams\":{number}}}]"));
        let letter = file.find(number).expect("it is in there") + ends;
        let said =
            format!("This file cannot be brought in: it is damaged at line 1, letter {letter}.");
        assert_eq!(read(&file), Err(said));
    }
    for (file, reason) in cases {
        let said = format!("This file cannot be brought in: {reason}.");
        let shown = &file[..file.len().min(300)];
        assert_eq!(read(&file), Err(said), "{shown}");
    }
}

/// What would turn a sentence around or break it up does not stand in it.
#[test]
fn a_hostile_title_does_no_harm_to_the_sentence() {
    let title = "\u{202e}ekac mulP\u{1b}[31m<script>alert(1)</script> and so on for ever";
    let body = serde_json::json!({"changed": 1, "inputs": {"text": title, "corrections": 7}});
    let file = serde_json::json!({"format": "batterwright everything", "version": 1, "recipes": [
        {"id": "a", "record": {"format": "batterwright recipe", "version": 2, "body": body}}
    ]});
    let said = read(&file.to_string()).expect_err("corrections are a list");
    assert!(
        said.contains("\"\u{fffd}ekac mulP\u{fffd}[31m<script>alert(1)</script>\u{2026}\""),
        "{said}"
    );
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Out and in again is the same, and the same file again.
    #[test]
    fn out_and_in_again_is_the_same(everything in any_everything()) {
        let file = write(&everything).expect("within the limits");
        let back = read(&file);
        prop_assert_eq!(back.as_ref(), Ok(&everything));
        prop_assert_eq!(write(&everything), Ok(file));
    }

    /// A file that was cut off anywhere is refused, for the last sign of it closes it.
    #[test]
    fn a_file_cut_off_anywhere_is_refused(everything in any_everything(), share in 0.0_f64..1.0) {
        let file = write(&everything).expect("within the limits");
        let mut at = (share * (file.len() - 1) as f64) as usize;
        while !file.is_char_boundary(at) {
            at -= 1;
        }
        let said = read(&file[..at]).expect_err("it is cut off");
        prop_assert!(said.contains("cut off"), "{said}");
    }
}
