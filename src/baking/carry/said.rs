//! What a file holds and what of it comes in, in words.

use super::{Everything, Writes};
use crate::baking::quantity::show;

impl Everything {
    /// "12 recipes, settings, 3 own ingredients and 2 taught words".
    pub fn sentence(&self) -> String {
        let mut parts = vec![count(self.recipes.len(), "recipe", "recipes")];
        parts.extend(self.settings.as_ref().map(|_| "settings".to_owned()));
        if let Some(larder) = &self.larder {
            parts.push(count(
                larder.entries.len(),
                "own ingredient",
                "own ingredients",
            ));
            parts.push(count(larder.words.len(), "taught word", "taught words"));
        }
        show::listed(&parts)
    }
}

impl Writes {
    /// What is to be written, in sentences: what comes, what stands here already, what does not come.
    pub fn sentence(&self) -> String {
        let came = &self.larder_came;
        let parts = [
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
            (
                usize::from(self.settings.is_some()),
                "set of settings",
                "sets of settings",
            ),
            (came.entries, "own ingredient", "own ingredients"),
            (came.words, "taught word", "taught words"),
        ];
        let parts: Vec<String> = parts
            .into_iter()
            .filter(|(many, ..)| *many > 0)
            .map(|(many, one, more)| count(many, one, more))
            .collect();
        let mut said = match parts.is_empty() {
            true => "Nothing comes in.".to_owned(),
            false => format!("Comes in: {}.", show::listed(&parts)),
        };
        for (many, what) in [
            (self.same, "Here already, the same"),
            (self.skipped, "Does not come"),
        ] {
            if many > 0 {
                said.push_str(&format!(" {what}: {}.", count(many, "recipe", "recipes")));
            }
        }
        said
    }
}

fn count(many: usize, one: &str, more: &str) -> String {
    format!("{many} {}", if many == 1 { one } else { more })
}
