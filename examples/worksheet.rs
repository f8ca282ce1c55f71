//! Prints the worksheet of a recipe as JSON, so that anyone can try the trade from a shell:
//!
//! ```text
//! cargo run --no-default-features --example worksheet < recipe.txt
//! ```
//!
//! The recipe is read from standard input as UTF-8; bytes that are not are replaced, never refused.

use batterwright::baking::oven::forecast::{Answer, forecast};
use batterwright::baking::oven::slices::Slices;
use batterwright::baking::worksheet::{
    BakeSheet, Inputs, Settings, Worksheet, bake_sheet, worksheet,
};
use serde::Serialize;
use std::io::{Read, Write};

/// The worksheet, and how long it bakes.
#[derive(Serialize)]
struct Sheet {
    #[serde(flatten)]
    sheet: Worksheet,
    bakes: Vec<BakeSheet>,
}

fn main() -> std::io::Result<()> {
    let mut bytes = Vec::new();
    std::io::stdin().read_to_end(&mut bytes)?;
    let text = String::from_utf8_lossy(&bytes);
    let sheet = worksheet(&Inputs::of_text(text), &Settings::default());
    let found = match sheet.oven.ask.clone() {
        Some(ask) => Slices::of(forecast(ask)).at_once(),
        None => Answer::default(),
    };
    let bakes = bake_sheet(&sheet.oven, &found);
    let sheet = Sheet { sheet, bakes };
    let mut out = std::io::stdout().lock();
    serde_json::to_writer_pretty(&mut out, &sheet)?;
    writeln!(out)
}
