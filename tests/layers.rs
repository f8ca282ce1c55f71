//! The wall: the trade knows no browser, clock, store or signal, and nothing downstream is known upstream.

use std::fs;
use std::path::{Path, PathBuf};

fn sources(folder: &Path) -> Vec<(PathBuf, String)> {
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).expect("a folder of sources") {
        let path = entry.expect("an entry of that folder").path();
        if path.is_dir() {
            files.extend(sources(&path));
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            let text = fs::read_to_string(&path).expect("a source file is text");
            // A comment may point anywhere; only code binds.
            let text = text
                .lines()
                .filter(|line| !line.trim_start().starts_with("//"))
                .collect::<Vec<_>>()
                .join("\n");
            files.push((path, text));
        }
    }
    files
}

fn baking() -> Vec<(PathBuf, String)> {
    sources(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src/baking"))
}

/// No file of the trade names what only a browser or an operating system has.
#[test]
fn the_trade_has_no_browser_in_it() {
    const OUTSIDE: &[&str] = &[
        "leptos",
        "web_sys",
        "wasm_bindgen",
        "js_sys",
        "gloo",
        "std::time",
        "std::fs",
        "std::env",
        "std::net",
        "std::thread",
        "crate::ui",
    ];
    for (path, text) in baking() {
        for word in OUTSIDE {
            assert!(!text.contains(word), "{} names {word}", path.display());
        }
    }
}

/// Stages in the order of the flow; a stage may use the ones before it and none after.
#[test]
fn a_value_goes_one_way() {
    // What each stage may not know. The worksheet's unit of length is the one word that pans and figures share with it.
    const FLOW: &[(&str, &[&str])] = &[
        (
            "quantity",
            &[
                "recipe",
                "formula",
                "balance",
                "chemistry",
                "pan",
                "finding",
            ],
        ),
        (
            "ingredient",
            &[
                "recipe",
                "formula",
                "balance",
                "chemistry",
                "pan",
                "finding",
                "worksheet",
            ],
        ),
        (
            "recipe",
            &[
                "formula",
                "balance",
                "chemistry",
                "pan",
                "finding",
                "worksheet",
            ],
        ),
        (
            "formula",
            &["balance", "chemistry", "pan", "finding", "worksheet"],
        ),
        ("balance", &["chemistry", "pan", "finding", "worksheet"]),
        ("chemistry", &["pan", "finding", "worksheet"]),
        (
            "oven",
            &[
                "finding",
                "leaven",
                "substitute",
                "worksheet",
                "saved",
                "demo",
            ],
        ),
        ("pan", &["chemistry", "finding"]),
        (
            "finding",
            &[
                "diagnosis",
                "leaven",
                "substitute",
                "worksheet",
                "saved",
                "demo",
            ],
        ),
        (
            "diagnosis",
            &[
                "leaven",
                "substitute",
                "worksheet",
                "saved",
                "demo",
                "trial",
            ],
        ),
        ("leaven", &["substitute", "worksheet", "saved", "demo"]),
        ("substitute", &["worksheet", "saved", "demo", "carry"]),
        ("worksheet", &["saved", "demo", "carry", "trial"]),
        ("trial", &["saved", "demo", "carry"]),
        ("saved", &["carry"]),
    ];
    for (path, text) in baking() {
        let Some((_, later)) = FLOW.iter().find(|(stage, _)| {
            path.to_string_lossy()
                .contains(&format!("/baking/{stage}/"))
        }) else {
            continue;
        };
        for stage in *later {
            let used = text.contains(&format!("baking::{stage}"))
                || text.contains(&format!("super::super::{stage}"));
            assert!(
                !used,
                "{} knows of {stage}, which comes after it",
                path.display()
            );
        }
    }
}

/// The air comes before all chemistry: it knows nothing but quantities, and chemistry nothing of the oven but the air.
#[test]
fn the_air_comes_first() {
    let air = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/baking/oven/air.rs");
    let text = fs::read_to_string(&air).expect("a source file is text");
    let used = text.matches("crate::baking::").count();
    assert_eq!(used, text.matches("crate::baking::quantity").count());
    assert!(!text.contains("super::"));
    for (path, text) in baking() {
        if path.to_string_lossy().contains("/baking/chemistry/") {
            let of_oven = text.matches("baking::oven").count();
            assert_eq!(
                of_oven,
                text.matches("baking::oven::air").count(),
                "{}",
                path.display()
            );
        }
    }
}

/// The solver of programmes is told all it needs in figures.
#[test]
fn a_programme_knows_nothing_of_baking() {
    const SOLVER: &[&str] = &["programme.rs", "scaled.rs", "shares.rs"];
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/baking/substitute");
    let solver = sources(&folder).into_iter().filter(|(path, _)| {
        let name = path.file_name().unwrap_or_default();
        SOLVER.iter().any(|file| name == *file)
    });
    let solver: Vec<_> = solver.collect();
    assert_eq!(solver.len(), SOLVER.len());
    for (path, text) in solver {
        for word in ["crate::", "super::super"] {
            assert!(!text.contains(word), "{} names {word}", path.display());
        }
    }
}

/// Statistics are told all they need in figures.
#[test]
fn statistics_know_nothing_of_baking() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/baking/statistics");
    let files = sources(&folder);
    assert!(!files.is_empty());
    for (path, text) in files {
        for word in ["crate::", "super::super"] {
            assert!(!text.contains(word), "{} names {word}", path.display());
        }
    }
}
