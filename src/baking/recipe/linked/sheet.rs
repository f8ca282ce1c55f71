//! A recipe as a page describes it, on its way to plain text.

/// A line of a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Line {
    /// The name of the group that follows.
    Heading(String),
    /// One ingredient or one step.
    Entry(String),
}

impl Line {
    /// Its words.
    pub fn words(&self) -> &str {
        match self {
            Self::Heading(words) | Self::Entry(words) => words,
        }
    }

    /// Whether it counts: "For the frosting:" among ingredients is a group's name.
    fn counts(&self) -> bool {
        matches!(self, Self::Entry(words) if !words.ends_with(':'))
    }
}

/// What of a recipe is kept.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sheet {
    /// Its name; empty where none is given.
    pub name: String,
    /// How many it makes, as a line.
    pub makes: String,
    /// Times, each as a line.
    pub times: Vec<String>,
    /// Tools, each as a line.
    pub tools: Vec<String>,
    /// Ingredients and the names of their groups.
    pub ingredients: Vec<Line>,
    /// Steps and the names of their groups.
    pub steps: Vec<Line>,
}

impl Sheet {
    /// The rank of a recipe with both lists.
    pub const WHOLE: u8 = 3;
    /// The lowest rank of a recipe that lists ingredients.
    pub const LISTED: u8 = 2;

    /// How full it is: ingredients say more than steps.
    pub fn rank(&self) -> u8 {
        u8::from(!self.ingredients.is_empty()) * 2 + u8::from(!self.steps.is_empty())
    }

    /// "11 ingredients, 6 steps".
    pub fn counts(&self) -> String {
        let mut out = String::new();
        count(&mut out, &self.ingredients, "ingredient");
        out.push_str(", ");
        count(&mut out, &self.steps, "step");
        out
    }

    /// The recipe as a person would write it.
    pub fn text(&self) -> String {
        let mut out = String::new();
        line(&mut out, &self.name);
        line(&mut out, &self.makes);
        for time in &self.times {
            line(&mut out, time);
        }
        list(&mut out, "Ingredients", &self.ingredients);
        list(&mut out, "Method", &self.steps);
        // Last, as lines under it are no ingredients and no steps.
        if !self.tools.is_empty() {
            head(&mut out, "Equipment");
            for tool in &self.tools {
                line(&mut out, tool);
            }
        }
        out
    }

    /// Takes how many it makes: a bare figure becomes a line with a meaning of its own.
    pub fn set_makes(&mut self, makes: &str) {
        if self.makes.is_empty() && !makes.is_empty() {
            if makes.starts_with(|first: char| first.is_ascii_digit())
                || makes.starts_with("about ")
            {
                self.makes.push_str("Makes ");
            }
            self.makes.push_str(makes);
        }
    }
}

/// Whether a heading only says which of the two lists follows.
pub fn is_list_name(words: &str) -> bool {
    const NAMES: &[&str] = &[
        "directions",
        "how to make it",
        "ingredients",
        "instructions",
        "method",
        "preparation",
        "steps",
    ];
    let words = words.trim_end_matches(':');
    NAMES.iter().any(|name| words.eq_ignore_ascii_case(name))
}

fn count(out: &mut String, lines: &[Line], noun: &str) {
    let count = lines.iter().filter(|line| line.counts()).count();
    match count {
        0 => out.push_str("no"),
        _ => out.push_str(&count.to_string()),
    }
    out.push(' ');
    out.push_str(noun);
    if count != 1 {
        out.push('s');
    }
}

fn line(out: &mut String, words: &str) {
    if !words.is_empty() {
        out.push_str(words);
        out.push('\n');
    }
}

/// A heading with a blank line before it.
fn head(out: &mut String, words: &str) {
    if !out.is_empty() {
        out.push('\n');
    }
    line(out, words);
}

fn list(out: &mut String, name: &str, lines: &[Line]) {
    if lines.is_empty() {
        return;
    }
    head(out, name);
    for (at, entry) in lines.iter().enumerate() {
        if matches!(entry, Line::Heading(_)) && at > 0 {
            out.push('\n');
        }
        line(out, entry.words());
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_recipe_is_written_as_a_person_would() {
        let entry = |words: &str| Line::Entry(words.to_owned());
        let mut sheet = Sheet {
            name: "Quay buns".to_owned(),
            times: vec!["Bake: 35 minutes".to_owned()],
            tools: vec!["A tin".to_owned()],
            ingredients: vec![
                entry("1 egg"),
                Line::Heading("Glaze".to_owned()),
                entry("1 tbsp milk"),
            ],
            steps: vec![entry("Mix.")],
            ..Sheet::default()
        };
        sheet.set_makes("12");
        sheet.set_makes("twenty");
        assert_eq!(
            sheet.text(),
            "Quay buns\nMakes 12\nBake: 35 minutes\n\nIngredients\n1 egg\n\nGlaze\n1 tbsp milk\n\nMethod\nMix.\n\nEquipment\nA tin\n"
        );
        assert_eq!(sheet.counts(), "2 ingredients, 1 step");
        assert_eq!(sheet.rank(), Sheet::WHOLE);
    }

    #[test]
    fn a_group_s_name_is_no_ingredient() {
        let sheet = Sheet {
            ingredients: vec![
                Line::Entry("For the glaze:".to_owned()),
                Line::Entry("1 egg".to_owned()),
            ],
            ..Sheet::default()
        };
        assert_eq!(sheet.counts(), "1 ingredient, no steps");
        assert!(is_list_name("Ingredients:") && !is_list_name("Glaze"));
    }
}
