//! What a file holds and what of it comes in, in words.

use super::{Everything, Writes};
use crate::baking::ingredient::own::Merged;
use crate::baking::quantity::show;

impl Everything {
    /// "12 recipes, 30 bakes, settings, 3 own ingredients and 2 taught words".
    pub fn sentence(&self) -> String {
        let mut parts = vec![count(self.recipes.len(), "recipe", "recipes")];
        parts.extend(counts([
            (self.trials.len(), "bake", "bakes"),
            (self.pictures.len(), "picture", "pictures"),
        ]));
        parts.extend(self.settings.as_ref().map(|_| "settings".to_owned()));
        if let Some(larder) = &self.larder {
            parts.extend(of_larder(larder.entries.len(), larder.words.len()));
        }
        show::listed(&parts)
    }
}

/// What of a larder would come: "3 own ingredients and 2 taught words".
pub fn larder_words(came: &Merged) -> String {
    let parts: Vec<String> = of_larder(came.entries, came.words).collect();
    show::listed(&parts)
}

impl Writes {
    /// What is to be written, in sentences: what comes, what stands here already, what does not come.
    pub fn sentence(&self) -> String {
        self.said("Comes in")
    }

    /// The same once it is written.
    pub fn sentence_after(&self) -> String {
        self.said("Came in")
    }

    fn said(&self, comes: &str) -> String {
        let parts = counts([
            (self.new, "new recipe", "new recipes"),
            (
                self.out_of_bin.len(),
                "recipe that rests in the bin here",
                "recipes that rest in the bin here",
            ),
            (
                self.doubled,
                "recipe beside the one here",
                "recipes beside the ones here",
            ),
            (
                self.replaced.len(),
                "recipe in the place of an older one, which goes to the bin",
                "recipes in the place of older ones, which go to the bin",
            ),
            (self.new_trials(), "bake", "bakes"),
            (
                self.doubled_trials,
                "bake beside the one here",
                "bakes beside the ones here",
            ),
            (
                self.replaced_trials.len(),
                "bake in the place of an older one, which goes to the bin",
                "bakes in the place of older ones, which go to the bin",
            ),
        ]);
        let settings = self
            .settings
            .as_ref()
            .map(|_| "the file's settings".to_owned());
        let larder = of_larder(self.larder_came.entries, self.larder_came.words);
        let parts: Vec<String> = parts.chain(settings).chain(larder).collect();
        let mut said = match parts.is_empty() {
            true => "Nothing comes in.".to_owned(),
            false => format!("{comes}: {}.", show::listed(&parts)),
        };
        for (recipes, bakes, what) in [
            (self.same, self.same_trials, "Here already, the same"),
            (self.skipped, self.skipped_trials, "Left out"),
        ] {
            let parts = counts([(recipes, "recipe", "recipes"), (bakes, "bake", "bakes")]);
            let parts: Vec<String> = parts.collect();
            if !parts.is_empty() {
                said.push_str(&format!(" {what}: {}.", show::listed(&parts)));
            }
        }
        said
    }
}

fn of_larder(entries: usize, words: usize) -> impl Iterator<Item = String> {
    counts([
        (entries, "own ingredient", "own ingredients"),
        (words, "taught word", "taught words"),
    ])
}

/// Each that there is any of, with its number.
fn counts<const MANY: usize>(
    all: [(usize, &'static str, &'static str); MANY],
) -> impl Iterator<Item = String> {
    let some = all.into_iter().filter(|(many, ..)| *many > 0);
    some.map(|(many, one, more)| count(many, one, more))
}

fn count(many: usize, one: &str, more: &str) -> String {
    format!("{many} {}", if many == 1 { one } else { more })
}
