//! Reading, checked against readings that were written by hand before the reader saw the lines:
//! single lines in `read/lines.tsv`, whole recipes in the other files of `read/`.

use batterwright::baking::ingredient::{Filling, Form, Larder, Piece, PieceSize, Region};
use batterwright::baking::quantity::Mass;
use batterwright::baking::recipe::{
    Amount, Aside, Correction, Level, Reading, Role, Section, Unit, VolumeUnit, read,
};
use std::collections::BTreeMap;
use std::path::Path;

/// The country of a word in a data file.
fn region(word: &str) -> Region {
    match word {
        "us" => Region::Us,
        "uk" => Region::Uk,
        "au" => Region::Au,
        "nz" => Region::Nz,
        "ca" => Region::Ca,
        other => panic!("no region {other:?}"),
    }
}

/// The unit of a word in a data file.
fn unit(word: &str) -> Unit {
    let volume = match word {
        "cup" => Some(VolumeUnit::Cup),
        "tbsp" => Some(VolumeUnit::Tablespoon),
        "dsp" => Some(VolumeUnit::Dessertspoon),
        "tsp" => Some(VolumeUnit::Teaspoon),
        "floz" => Some(VolumeUnit::FluidOunce),
        "gill" => Some(VolumeUnit::Gill),
        "pt" => Some(VolumeUnit::Pint),
        "qt" => Some(VolumeUnit::Quart),
        "gal" => Some(VolumeUnit::Gallon),
        "ml" => Some(VolumeUnit::Millilitre),
        "cl" => Some(VolumeUnit::Centilitre),
        "dl" => Some(VolumeUnit::Decilitre),
        "l" => Some(VolumeUnit::Litre),
        "pinch" => Some(VolumeUnit::Pinch),
        "dash" => Some(VolumeUnit::Dash),
        "drop" => Some(VolumeUnit::Drop),
        _ => None,
    };
    let piece = match word {
        "each" => Some(Piece::Each),
        "stick" => Some(Piece::Stick),
        "slice" => Some(Piece::Slice),
        "stalk" => Some(Piece::Stalk),
        "square" => Some(Piece::Square),
        "bar" => Some(Piece::Bar),
        "packet" => Some(Piece::Packet),
        "can" => Some(Piece::Can),
        "block" => Some(Piece::Block),
        "pot" => Some(Piece::Pot),
        "knob" => Some(Piece::Knob),
        "handful" => Some(Piece::Handful),
        "inch" => Some(Piece::Inch),
        "pod" => Some(Piece::Pod),
        "sprig" => Some(Piece::Sprig),
        _ => None,
    };
    match word {
        "g" => Unit::Mass(Mass::GRAM),
        "kg" => Unit::Mass(Mass::grams(1000.0)),
        "oz" => Unit::Mass(Mass::OUNCE),
        "lb" => Unit::Mass(Mass::POUND),
        "taste" => Unit::ToTaste,
        _ => volume
            .map(Unit::Volume)
            .or(piece.map(Unit::Piece))
            .unwrap_or_else(|| panic!("no unit {word:?}")),
    }
}

/// The amounts of a cell: "1 cup; 125 g", "2-3 tbsp".
fn amounts(cell: &str) -> Vec<Amount> {
    let number = |text: &str| {
        text.parse::<f64>()
            .unwrap_or_else(|_| panic!("no number {text:?}"))
    };
    cell.split(';')
        .map(str::trim)
        .filter(|part| !part.is_empty())
        .map(|part| {
            let (count, word) = part
                .split_once(' ')
                .unwrap_or_else(|| panic!("no unit in {part:?}"));
            let (low, high) = count.split_once('-').unwrap_or((count, count));
            Amount {
                low: number(low),
                high: number(high),
                unit: unit(word),
            }
        })
        .collect()
}

/// Whether two lists of amounts say the same. A pinch, dash or drop may be a volume or a piece.
fn same_amounts(one: &[Amount], two: &[Amount]) -> bool {
    let plain = |unit: Unit| match unit {
        Unit::Piece(Piece::Pinch) => Unit::Volume(VolumeUnit::Pinch),
        Unit::Piece(Piece::Dash) => Unit::Volume(VolumeUnit::Dash),
        Unit::Piece(Piece::Drop) => Unit::Volume(VolumeUnit::Drop),
        unit => unit,
    };
    let near = |one: f64, two: f64| (one - two).abs() <= 1e-5 * two.abs().max(1.0);
    one.len() == two.len()
        && one.iter().zip(two).all(|(one, two)| {
            near(one.low, two.low) && near(one.high, two.high) && plain(one.unit) == plain(two.unit)
        })
}

/// What a line says besides, in the words of the data files.
fn besides(reading: &Reading) -> String {
    let form = reading.form.map(|form| match form {
        Form::Melted => "melted",
        Form::Packed => "packed",
        Form::Loose => "loose",
        Form::Chopped => "chopped",
        Form::Sliced => "sliced",
        Form::Cubed => "cubed",
        Form::Slivered => "slivered",
        Form::Whole => "whole",
        Form::Halved => "halved",
        Form::Mashed => "mashed",
        Form::Pureed => "pureed",
        Form::Grated => "grated",
        Form::Ground => "ground",
        Form::Whipped => "whipped",
        Form::Crushed => "crushed",
        Form::Chips => "chips",
    });
    let filling = reading.filling.map(|filling| match filling {
        Filling::Dipped => "dipped",
        Filling::Spooned => "spooned",
        Filling::Sifted => "sifted",
    });
    let size = reading.size.map(|size| match size {
        PieceSize::Small => "small",
        PieceSize::Medium => "medium",
        PieceSize::Large => "large",
        PieceSize::ExtraLarge => "extra_large",
        PieceSize::Jumbo => "jumbo",
    });
    let level = match reading.level {
        Level::Level => None,
        Level::Scant => Some("scant"),
        Level::Generous => Some("generous"),
        Level::Rounded => Some("rounded"),
        Level::Heaped => Some("heaped"),
    };
    let aside = reading.aside.map(|aside| match aside {
        Aside::Optional => "optional",
        Aside::ToServe => "to_serve",
        Aside::ForThePan => "for_the_pan",
    });
    let said = [
        ("form", form),
        ("filling", filling),
        ("size", size),
        ("level", level),
        ("aside", aside),
    ];
    said.iter()
        .filter_map(|(name, value)| value.map(|value| format!("{name}={value}")))
        .collect::<Vec<_>>()
        .join(",")
}

/// Where a reading differs from what is written; empty where it does not.
fn difference(role: &Role, key: &str, wanted: &[Amount], said: &str, sure: &str) -> String {
    let reading = match (role, sure) {
        (Role::Unread(_), "unread") => return String::new(),
        (_, "unread") => return format!("should be unread: {role:?}"),
        (Role::Ingredient(reading), _) => reading,
        (other, _) => return format!("no ingredient line: {other:?}"),
    };
    let mut faults = Vec::new();
    let found = reading
        .ingredient
        .taken()
        .map_or("-", |ingredient| ingredient.key);
    if found != key {
        faults.push(format!("ingredient {found}"));
    }
    if !same_amounts(&reading.amounts, wanted) {
        faults.push(format!("amounts {:?}", reading.amounts));
    }
    if besides(reading) != said {
        faults.push(format!("says {:?}", besides(reading)));
    }
    match sure {
        "sure" if !reading.doubts.is_empty() => faults.push(format!("doubts {:?}", reading.doubts)),
        "doubt" if reading.doubts.is_empty() => faults.push("no doubt".to_owned()),
        _ => {}
    }
    faults.join("; ")
}

#[test]
fn lines_are_read_as_their_readers_would() {
    let mut tally: BTreeMap<&str, (usize, usize)> = BTreeMap::new();
    let mut faults = Vec::new();
    for row in include_str!("read/lines.tsv")
        .lines()
        .filter(|row| !row.starts_with('#') && !row.is_empty())
    {
        let cells: Vec<&str> = row.split('\t').collect();
        let [kind, country, line, key, wanted, said, sure] = cells[..] else {
            panic!("{} cells: {row}", cells.len())
        };
        let line = line.replace("\\t", "\t");
        let recipe = read(
            &format!("Ingredients\n{line}"),
            Larder::of(region(country)),
            &[],
        );
        let fault = difference(&recipe.lines[1].role, key, &amounts(wanted), said, sure);
        let count = tally.entry(kind).or_default();
        count.1 += 1;
        if fault.is_empty() {
            count.0 += 1;
        } else {
            faults.push(format!("{kind}: {line:?}: {fault}"));
        }
    }
    for (kind, (right, all)) in &tally {
        println!("{kind:>9}: {right} of {all}");
    }
    assert!(
        faults.is_empty(),
        "{} lines differ:\n{}",
        faults.len(),
        faults.join("\n")
    );
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
        Role::Method(_) => "method".to_owned(),
        Role::Note(_) => "note".to_owned(),
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
    let Role::Note(note) = &recipe.lines[1].role else {
        panic!("{:?}", recipe.lines[1].role)
    };
    assert_eq!(note.makes.as_deref(), Some("12 slices"));
    let Role::Method(step) = &recipe.lines[5].role else {
        panic!("{:?}", recipe.lines[5].role)
    };
    assert_eq!((step.ovens.len(), step.pans.len()), (1, 1));
    assert!((step.ovens[0].to_fahrenheit() - 350.0).abs() < 1e-9);
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
    for grams in [f64::NAN, -1.0, 0.0, 1e9] {
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
