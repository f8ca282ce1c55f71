//! A recipe as linked data: schema.org's Recipe in JSON-LD, which our reader of pages reads back alike.

use super::as_text::{as_text, figure};
use crate::baking::ingredient::{Larder, Own};
use crate::baking::recipe::linked::is_list_name;
use crate::baking::recipe::{Looks, read};
use crate::baking::worksheet::{Inputs, Settings, SheetLine, Status, worksheet_again};
use serde_json::{Map, Value, json};

/// More words than a line of a list has.
const SENTENCE: usize = 8;
/// As many words as say how many it makes: "Makes 2 dozen cakes".
const YIELD: usize = 4;

/// The recipe as JSON-LD, ready for a file or for a page's `script` element: no `<` stands in it.
pub fn linked_data(inputs: &Inputs, settings: &Settings, own: &Own) -> String {
    let text = as_text(inputs, settings, own);
    let sheet = worksheet_again(
        &mut Looks::default(),
        &Inputs::of_text(text.as_str()),
        settings,
        own,
    );
    let mut recipe = Map::new();
    recipe.insert("@context".into(), "https://schema.org".into());
    recipe.insert("@type".into(), "Recipe".into());
    let title = sheet.title.as_deref().unwrap_or("Recipe");
    recipe.insert("name".into(), title.into());
    let larder = Larder {
        region: sheet.country.region,
        own,
    };
    let recipe_read = read(&text, larder, &[]);
    let makes = recipe_read
        .lines
        .iter()
        .find_map(|line| line.mentions.makes.clone());
    recipe.extend(makes.map(|makes| ("recipeYield".into(), makes.into())));
    // One length of time is all that the format holds; a range stays in the steps.
    let baked = recipe_read.baked().filter(|baked| baked.low == baked.high);
    recipe.extend(baked.map(|baked| ("cookTime".into(), duration(baked.high).into())));
    let mut lists = Lists::of(&sheet.lines);
    // "Serves 8" alone is said already.
    lists.about.retain(|(line, words)| {
        recipe_read.lines[line - 1].mentions.makes.is_none()
            || words.split_whitespace().count() > YIELD
    });
    let filled = |list: Vec<Value>| (!list.is_empty()).then_some(Value::Array(list));
    for (name, list) in [
        ("recipeIngredient", filled(lists.ingredients)),
        ("recipeInstructions", filled(lists.steps)),
    ] {
        recipe.extend(list.map(|list| (name.to_owned(), list)));
    }
    if !lists.about.is_empty() {
        let about: Vec<&str> = lists
            .about
            .iter()
            .map(|(_, words)| words.as_str())
            .collect();
        recipe.insert("description".into(), about.join("\n").into());
    }
    let text = serde_json::to_string_pretty(&Value::Object(recipe)).unwrap_or_default();
    // Within a page's script nothing but that sign can end it. Outside of texts JSON has none of it.
    text.replace('<', "\\u003c")
}

/// Minutes as ISO 8601 writes a length of time: "PT1H30M".
fn duration(minutes: f64) -> String {
    let minutes = minutes.round() as u64;
    match (minutes / 60, minutes % 60) {
        (0, minutes) => format!("PT{minutes}M"),
        (hours, 0) => format!("PT{hours}H"),
        (hours, minutes) => format!("PT{hours}H{minutes}M"),
    }
}

/// The lines of a recipe, shared out.
#[derive(Default)]
struct Lists {
    /// What stands before all ingredients, with its lines.
    about: Vec<(usize, String)>,
    ingredients: Vec<Value>,
    steps: Vec<Value>,
}

impl Lists {
    fn of(lines: &[SheetLine]) -> Self {
        let mut lists = Self::default();
        let mut heading: Option<&str> = None;
        for (at, line) in lines.iter().enumerate() {
            let words = line.text.trim();
            match line.status {
                Status::Blank | Status::Title => {}
                Status::Heading => heading = Some(words.trim_end_matches(':')),
                Status::Weighed | Status::NotWeighed if is_sentence(words) => {
                    lists.ingredients.extend(part(line));
                    let is_last = lines.get(at + 1).is_none_or(|next| next.line != line.line);
                    if is_last {
                        lists.step(words, heading.take());
                    }
                }
                Status::Weighed | Status::NotWeighed | Status::NotRead => {
                    if line.part == 0 {
                        lists.ingredient(words, heading.take());
                    }
                }
                Status::Note if lists.ingredients.is_empty() => {
                    lists.about.push((line.line, words.to_owned()));
                }
                Status::Note | Status::Method => lists.step(words, heading.take()),
            }
        }
        lists
    }

    fn ingredient(&mut self, words: &str, heading: Option<&str>) {
        if let Some(heading) = heading.filter(|words| !is_list_name(words)) {
            // A text that ends so is the name of a group.
            self.ingredients.push(format!("{heading}:").into());
        }
        self.ingredients.push(words.into());
    }

    fn step(&mut self, words: &str, heading: Option<&str>) {
        let step = json!({ "@type": "HowToStep", "text": words });
        if let Some(heading) = heading.filter(|words| !is_list_name(words)) {
            self.steps.push(
                json!({ "@type": "HowToSection", "name": heading, "itemListElement": [step] }),
            );
            return;
        }
        let section = self.steps.last_mut();
        match section.and_then(|section| section.get_mut("itemListElement")?.as_array_mut()) {
            Some(steps) => steps.push(step),
            None => self.steps.push(step),
        }
    }
}

/// An ingredient that a sentence names, as a line of its own.
fn part(line: &SheetLine) -> Option<Value> {
    let name = line.name?;
    Some(
        match line.grams {
            Some(grams) => format!("{} g {name}", figure(grams.mean)),
            None => name.to_owned(),
        }
        .into(),
    )
}

/// Whether a line is a sentence that names its ingredients on the way.
fn is_sentence(words: &str) -> bool {
    words.ends_with('.') && words.split_whitespace().count() > SENTENCE
}
