//! Sound formulas, changed as a row says, and what was seen and measured of them.

use batterwright::baking::balance::Kind;
use batterwright::baking::diagnosis::{Measured, Seen};
use batterwright::baking::ingredient::{Larder, Region};
use batterwright::baking::quantity::{Length, Mass, Ph, Temperature};
use batterwright::baking::worksheet::{Choices, DiagnosisSheet, Inputs, Settings, diagnosis};
use std::fs;
use std::path::Path;

/// The rows of a table of this folder, header and comments left out.
pub fn rows(name: &str) -> Vec<Vec<String>> {
    read(name)
        .lines()
        .filter(|line| !line.starts_with('#') && !line.is_empty())
        .skip(1)
        .map(|line| line.split('\t').map(str::to_owned).collect())
        .collect()
}

fn read(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests/diagnosis")
        .join(name);
    fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// A sound formula with its changes, of the kind that its baker says.
pub fn inputs(sound: &str, changes: &str) -> Inputs {
    let text = read(&format!("sound/{sound}.txt"));
    let (head, text) = text.split_once('\n').expect("a line with the kind");
    let kind = head.strip_prefix("# kind: ").expect("the kind");
    let kind: Kind = serde_json::from_value(kind.trim().into()).expect("a kind of cake");
    let mut text = text.to_owned();
    for change in changes.split("; ").filter(|change| !change.is_empty()) {
        let (old, new) = change.split_once("=>").expect("old => new");
        let old = old.trim();
        assert_eq!(text.matches(old).count(), 1, "{old} in {sound}");
        text = text.replace(old, &new.trim().replace(" AND ", "\n"));
    }
    Inputs {
        choices: Choices {
            kind: Some(kind),
            region: Some(Region::Uk),
            ..Choices::default()
        },
        ..Inputs::of_text(text)
    }
}

/// What was seen and measured.
pub fn seen(signs: &str, said: &str) -> Seen {
    let mut measured = Measured::default();
    for said in said.split(';').filter(|said| !said.is_empty()) {
        let (key, value) = said.split_once('=').expect("a key and a value");
        let value: f64 = value.parse().expect("a figure");
        match key {
            "crumb_ph" => measured.crumb_ph = Some(Ph::of(value)),
            "core" => measured.core = Some(Temperature::celsius(value)),
            "oven" => measured.oven = Some(Temperature::celsius(value)),
            "bake_minutes" => measured.bake_minutes = Some(value),
            "waited" => measured.waited_minutes = Some(value),
            "mass_in" => measured.mass_in = Some(Mass::grams(value)),
            "mass_out" => measured.mass_out = Some(Mass::grams(value)),
            "height_centre" => measured.height_centre = Some(Length::millimetres(value)),
            "height_edge" => measured.height_edge = Some(Length::millimetres(value)),
            other => panic!("{other} is never said"),
        }
    }
    Seen {
        signs: signs
            .split(',')
            .filter(|sign| !sign.is_empty())
            .map(str::to_owned)
            .collect(),
        measured,
    }
}

/// Those of a British baker.
pub fn settings() -> Settings {
    Settings {
        region: Region::Uk,
        ..Settings::default()
    }
}

/// The sheet of a formula.
pub fn sheet(inputs: &Inputs, seen: &Seen) -> DiagnosisSheet {
    diagnosis(inputs, &settings(), Larder::of(Region::Uk).own, seen, None)
}
