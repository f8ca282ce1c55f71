//! Prints the worksheet of a recipe as JSON, so that anyone can try the trade from a shell:
//!
//! ```text
//! cargo run --no-default-features --example worksheet < recipe.txt
//! ```
//!
//! The recipe is read from standard input as UTF-8; bytes that are not are replaced, never refused.

use batterwright::baking::worksheet::{Inputs, Settings, worksheet};
use std::io::{Read, Write};

fn main() -> std::io::Result<()> {
    let mut bytes = Vec::new();
    std::io::stdin().read_to_end(&mut bytes)?;
    let text = String::from_utf8_lossy(&bytes);
    let sheet = worksheet(&Inputs::of_text(text), &Settings::default());
    let mut out = std::io::stdout().lock();
    serde_json::to_writer_pretty(&mut out, &sheet)?;
    writeln!(out)
}
