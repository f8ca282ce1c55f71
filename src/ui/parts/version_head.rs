//! Below the recipe's name: that it is a version, and of what.

use crate::baking::saved::first_words;
use crate::ui::dom::{Element, element};
use crate::ui::state::Bench;

/// The line that says so; it is not there for a recipe that stands by itself.
pub fn version_head(bench: Bench) -> Element {
    let said = move || {
        let name = bench.version(|version| version.called().to_owned())?;
        let from = bench.version(|version| first_words(&version.original.text))?;
        Some((name, from))
    };
    let words = move || {
        let Some((name, from)) = said() else {
            return Vec::new();
        };
        let link = element("a")
            .class("lines__link no-print")
            .attribute("href", "#/differs")
            .text("See what differs");
        vec![
            element("strong").attribute("dir", "auto").text(name),
            element("span").text(", made from "),
            element("span").attribute("dir", "auto").text(from),
            element("span").text(". "),
            link,
        ]
    };
    element("p")
        .class("version-head")
        .children_of(words)
        .hidden_while(move || bench.version(|_| ()).is_none())
}
