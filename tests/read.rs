//! Reading, checked against readings that were written by hand before the reader saw the lines:
//! single lines in the tables of `read/`, whole recipes in its text files.
//!
//! `public_domain.tsv` holds lines of thirteen cookery books printed before 1930, named in `public_domain.md`;
//! `own.tsv` and `lines.tsv` hold invented ones.

#[path = "read/hand.rs"]
mod hand;

use batterwright::baking::ingredient::{Larder, Region};
use batterwright::baking::quantity::Mass;
use batterwright::baking::recipe::{Correction, Role, Section, read};
use hand::{differences, silently_wrong};
use std::collections::BTreeMap;
use std::path::Path;

/// Rows of a file, with how many are right and what is said of the others.
#[derive(Default)]
struct Tally {
    kinds: BTreeMap<String, (usize, usize)>,
    lines: usize,
    right: usize,
    said: usize,
    sure: usize,
    offers: usize,
    silent: Vec<String>,
    faults: Vec<String>,
}

/// Reads every line of a file and holds it against the reading beside it.
fn tally(text: &str) -> Tally {
    let mut tally = Tally::default();
    for hand in hand::rows(text) {
        let recipe = read(
            &format!("Ingredients\n{}", hand.line),
            Larder::of(hand.region),
            &[],
        );
        let role = &recipe.lines[1].role;
        let faults = differences(role, &hand);
        let kind = tally.kinds.entry(hand.kind.to_owned()).or_default();
        kind.1 += 1;
        kind.0 += usize::from(faults.reading.is_empty());
        tally.lines += 1;
        tally.right += usize::from(faults.reading.is_empty());
        tally.said += usize::from(faults.said.is_empty());
        tally.sure += usize::from(faults.sure.is_empty());
        tally.offers += usize::from(faults.offers.is_empty());
        let wrong = silently_wrong(role, &hand);
        if wrong > MOST_WRONG {
            tally.silent.push(format!("{:?}: {wrong:.2}", hand.line));
        }
        let words = faults.words();
        if !words.is_empty() {
            tally
                .faults
                .push(format!("{}: {:?}: {words}", hand.kind, hand.line));
        }
    }
    tally
}

/// How far a weight may lie from the right one without a word of doubt.
const MOST_WRONG: f64 = 0.15;

/// The part of lines whose ingredient, amount and unit must be right.
const ENOUGH: f64 = 0.98;

#[test]
fn lines_are_read_as_their_readers_would() {
    let files = [
        ("lines.tsv", include_str!("read/lines.tsv")),
        ("own.tsv", include_str!("read/own.tsv")),
        ("public_domain.tsv", include_str!("read/public_domain.tsv")),
    ];
    let mut all = (0, 0);
    for (name, text) in files {
        let tally = tally(text);
        println!("{name}");
        for (kind, (right, all)) in &tally.kinds {
            println!("{kind:>12}: {right} of {all}");
        }
        let Tally {
            lines,
            right,
            said,
            sure,
            offers,
            ..
        } = tally;
        println!(
            "  of {lines} lines: ingredient, amount and unit {right}, state {said}, sureness {sure}, offers {offers}"
        );
        for fault in &tally.faults {
            println!("    {fault}");
        }
        assert!(
            tally.silent.is_empty(),
            "{name}: weights wrong without a word:\n{}",
            tally.silent.join("\n")
        );
        all.0 += right;
        all.1 += lines;
    }
    let share = all.0 as f64 / all.1 as f64;
    println!("{:.1} % of {} lines right", 100.0 * share, all.1);
    assert!(share >= ENOUGH, "{:.1} % of lines right", 100.0 * share);
}

/// The role of a line in the words of the recipe files.
fn role_word(role: &Role) -> String {
    match role {
        Role::Blank => "blank".to_owned(),
        Role::Title => "title".to_owned(),
        Role::Heading(Section::Batter) => "heading batter".to_owned(),
        Role::Heading(Section::Beside) => "heading beside".to_owned(),
        Role::Heading(Section::Method) => "heading method".to_owned(),
        Role::Heading(Section::Notes) => "heading notes".to_owned(),
        Role::Method => "method".to_owned(),
        Role::Note => "note".to_owned(),
        Role::Unread(_) => "unread".to_owned(),
        Role::Ingredient(reading) => {
            let key = reading
                .ingredient
                .taken()
                .map_or("-", |ingredient| ingredient.key);
            let place = if reading.aside.is_some() {
                " aside"
            } else if reading.section == Section::Beside {
                " beside"
            } else {
                ""
            };
            format!("{key}{place}")
        }
    }
}

#[test]
fn whole_recipes_are_read_as_written_beside_them() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/read");
    let mut files: Vec<_> = std::fs::read_dir(&folder)
        .expect("the folder of recipes is part of the project")
        .filter_map(|entry| entry.ok().map(|entry| entry.path()))
        .filter(|path| path.extension().is_some_and(|ending| ending == "txt"))
        .collect();
    files.sort();
    assert!(!files.is_empty());
    let mut faults = Vec::new();
    let (mut right, mut all) = (0, 0);
    for file in files {
        let text = std::fs::read_to_string(&file).expect("a recipe file is UTF-8 text");
        let (roles, lines): (Vec<&str>, Vec<&str>) = text
            .lines()
            .map(|line| {
                line.split_once('>')
                    .unwrap_or_else(|| panic!("no role in {line:?} of {}", file.display()))
            })
            .unzip();
        let pasted: String = lines
            .iter()
            .map(|line| format!("{}\n", line.strip_prefix(' ').unwrap_or(line)))
            .collect();
        let recipe = read(&pasted, Larder::of(Region::Us), &[]);
        for (line, role) in recipe.lines.iter().zip(roles) {
            all += 1;
            if role_word(&line.role) == role.trim() {
                right += 1;
            } else {
                faults.push(format!(
                    "{}:{}: {:?} is {}, not {}",
                    file.display(),
                    line.number,
                    line.text,
                    role_word(&line.role),
                    role.trim()
                ));
            }
        }
    }
    println!("  recipes: {right} of {all} lines");
    assert!(
        faults.is_empty(),
        "{} lines differ:\n{}",
        faults.len(),
        faults.join("\n")
    );
}

#[test]
fn pans_ovens_and_yields_are_picked_out() {
    let recipe = read(
        "Plain cake\nMakes 12 slices\nIngredients\n2 cups flour\nMethod\nHeat the oven to 350°F. Grease a 9x13-inch pan.",
        Larder::of(Region::Us),
        &[],
    );
    let note = &recipe.lines[1].mentions;
    assert_eq!(note.makes.as_deref(), Some("12 slices"));
    let step = &recipe.lines[5].mentions;
    assert_eq!((step.ovens.len(), step.pans.len()), (1, 1));
    assert!((step.ovens[0].temperature.to_fahrenheit() - 350.0).abs() < 1e-9);
}

#[test]
fn corrections_go_before_the_reading() {
    let text = "Ingredients\n2 cups flour\n2 cups flour\n1 cup milk\nWith love";
    let correct = |correction: Correction| read(text, Larder::of(Region::Us), &[correction]);
    let base = Correction {
        text: "2 cups flour".into(),
        occurrence: 1,
        ..Correction::default()
    };
    let recipe = correct(Correction {
        ingredient: Some("bread_flour".into()),
        ..base.clone()
    });
    assert_eq!(role_word(&recipe.lines[1].role), "plain_flour");
    assert_eq!(role_word(&recipe.lines[2].role), "bread_flour");
    let recipe = correct(Correction {
        is_ingredient: Some(false),
        ..base.clone()
    });
    assert_eq!(role_word(&recipe.lines[2].role), "note");
    let recipe = correct(Correction {
        grams: Some(260.0),
        ..base.clone()
    });
    let Role::Ingredient(reading) = &recipe.lines[2].role else {
        panic!()
    };
    assert_eq!(reading.own_weight, Some(Mass::grams(260.0)));
    // A mend may leave a leavener out: none of it is a weight.
    let recipe = correct(Correction {
        grams: Some(0.0),
        ..base.clone()
    });
    let Role::Ingredient(reading) = &recipe.lines[2].role else {
        panic!()
    };
    assert_eq!(
        (reading.own_weight, reading.doubts.len()),
        (Some(Mass::ZERO), 0)
    );
    for grams in [f64::NAN, -1.0, 1e9] {
        let recipe = correct(Correction {
            grams: Some(grams),
            ..base.clone()
        });
        let Role::Ingredient(reading) = &recipe.lines[2].role else {
            panic!()
        };
        assert_eq!(
            (reading.own_weight, reading.doubts.len()),
            (None, 1),
            "{grams}"
        );
    }
    let recipe = read(
        text,
        Larder::of(Region::Us),
        &[Correction {
            text: "With love".into(),
            is_ingredient: Some(true),
            ..Correction::default()
        }],
    );
    assert!(matches!(recipe.lines[4].role, Role::Ingredient(_)));
}
