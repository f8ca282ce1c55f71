//! Recipes in linked data: schema.org's Recipe, wherever it stands in what a page gives.
//!
//! `serde_json` refuses what is nested deeper than 128, so that a walk over what it has read is bounded.

use super::duration;
use super::sheet::{Line, Sheet, is_list_name};
use super::visible::{value_line, value_lines};
use serde_json::{Map, Value};

type Object = Map<String, Value>;

/// Every recipe in it, in order.
pub fn recipes(value: &Value) -> Vec<Sheet> {
    let mut sheets = Vec::new();
    collect(value, &mut sheets);
    sheets
}

fn collect(value: &Value, sheets: &mut Vec<Sheet>) {
    match value {
        Value::Array(items) => {
            for item in items {
                collect(item, sheets);
            }
        }
        Value::Object(object) => {
            if is_recipe(object) {
                sheets.push(sheet(object));
            }
            for (_, inside) in object {
                collect(inside, sheets);
            }
        }
        _ => {}
    }
}

/// The last part of a name: "Recipe" of "http://schema.org/Recipe" and of "schema:Recipe".
pub fn last_part(name: &str) -> &str {
    name.trim_end_matches('/')
        .rsplit(['/', '#', ':'])
        .next()
        .unwrap_or(name)
}

fn is_recipe(object: &Object) -> bool {
    let is_one = |value: &Value| {
        value
            .as_str()
            .is_some_and(|name| last_part(name.trim()) == "Recipe")
    };
    match object.get("@type") {
        Some(Value::Array(types)) => types.iter().any(is_one),
        Some(value) => is_one(value),
        None => false,
    }
}

/// A property under its plain name or its full one.
fn get<'a>(object: &'a Object, name: &str) -> Option<&'a Value> {
    object.get(name).or_else(|| {
        object
            .iter()
            .find(|(key, _)| last_part(key) == name)
            .map(|(_, value)| value)
    })
}

fn sheet(object: &Object) -> Sheet {
    let mut sheet = Sheet {
        name: get(object, "name").map(words).unwrap_or_default(),
        ..Sheet::default()
    };
    if let Some(makes) = get(object, "recipeYield").or_else(|| get(object, "yield")) {
        sheet.set_makes(&words(makes));
    }
    for (name, label) in [
        ("prepTime", "Prep: "),
        ("cookTime", "Bake: "),
        ("totalTime", "Total: "),
    ] {
        let time = get(object, name).map(words).unwrap_or_default();
        sheet.times.extend(time_line(label, &time));
    }
    for name in ["recipeIngredient", "ingredients"] {
        if sheet.ingredients.is_empty()
            && let Some(value) = get(object, name)
        {
            add(value, &mut sheet.ingredients);
        }
    }
    if let Some(value) = get(object, "recipeInstructions") {
        add(value, &mut sheet.steps);
    }
    if let Some(value) = get(object, "tool") {
        let mut tools = Vec::new();
        add(value, &mut tools);
        sheet.tools = tools.iter().map(|line| line.words().to_owned()).collect();
    }
    sheet
}

/// A time as a line; what is not written as a length of time is taken as it stands.
pub fn time_line(label: &str, time: &str) -> Option<String> {
    let words = match duration::words(time) {
        Some(words) => words,
        None if time.is_empty() || duration::is_one(time) => return None,
        None => time.to_owned(),
    };
    Some([label, &words].concat())
}

/// The lines of a list, however it is given: one text, texts, or objects with texts in them.
fn add(value: &Value, out: &mut Vec<Line>) {
    match value {
        Value::Null | Value::Bool(_) => {}
        Value::Number(_) => out.push(Line::Entry(words(value))),
        Value::String(text) => out.extend(value_lines(text).into_iter().map(Line::Entry)),
        Value::Array(items) => {
            for item in items {
                add(item, out);
            }
        }
        Value::Object(object) => {
            for name in ["@value", "@list", "@set", "item"] {
                if let Some(inside) = object.get(name) {
                    return add(inside, out);
                }
            }
            if !add_group(object, out) {
                add_item(object, out);
            }
        }
    }
}

/// A group with its name and what it lists; false where it lists nothing.
fn add_group(object: &Object, out: &mut Vec<Line>) -> bool {
    let Some(items) = get(object, "itemListElement").or_else(|| get(object, "steps")) else {
        return false;
    };
    let before = out.len();
    let name = get(object, "name").map(words).unwrap_or_default();
    if !name.is_empty() && !is_list_name(&name) {
        out.push(Line::Heading(name));
    }
    let listed = out.len();
    add(items, out);
    if out.len() == listed {
        out.truncate(before);
        return false;
    }
    true
}

/// One step or one ingredient that is an object.
fn add_item(object: &Object, out: &mut Vec<Line>) {
    let name = get(object, "name").map(words).unwrap_or_default();
    let before = out.len();
    if let Some(text) = get(object, "text").or_else(|| get(object, "description")) {
        add(text, out);
    }
    match out.get_mut(before) {
        Some(Line::Entry(first)) => {
            if says_more(&name, first) {
                *first = [name.trim_end_matches([':', '.']), ": ", first].concat();
            }
        }
        _ => {
            let amount = ["requiredQuantity", "amount", "quantity"]
                .iter()
                .find_map(|key| get(object, key))
                .map(words)
                .unwrap_or_default();
            let entry = [amount.as_str(), " ", &name].concat();
            if !entry.trim().is_empty() {
                out.push(Line::Entry(entry.trim().to_owned()));
            }
        }
    }
}

/// Whether a step's name says what its text does not: most names are its number or its first words.
fn says_more(name: &str, text: &str) -> bool {
    let start = name.trim_end_matches(['.', ':', '…', ' ']);
    let is_number = start
        .strip_prefix("Step")
        .or_else(|| start.strip_prefix("step"))
        .unwrap_or(start)
        .trim()
        .bytes()
        .all(|byte| byte.is_ascii_digit());
    let is_start = text
        .get(..start.len())
        .is_some_and(|first| first.eq_ignore_ascii_case(start));
    !is_number && !is_start
}

/// A value as one line: of several ways to say it the longest, which says most.
fn words(value: &Value) -> String {
    match value {
        Value::String(text) => value_line(text),
        Value::Number(number) => number.to_string().trim_end_matches(".0").to_owned(),
        Value::Array(items) => {
            let mut longest = String::new();
            for item in items {
                let item = words(item);
                if item.len() > longest.len() {
                    longest = item;
                }
            }
            longest
        }
        Value::Object(object) => {
            let mut out = String::new();
            for name in ["@value", "value", "unitText", "name"] {
                let part = get(object, name).map(words).unwrap_or_default();
                if !part.is_empty() {
                    if !out.is_empty() {
                        out.push(' ');
                    }
                    out.push_str(&part);
                }
            }
            out
        }
        Value::Null | Value::Bool(_) => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn steps(value: Value) -> Vec<String> {
        let mut out = Vec::new();
        add(&value, &mut out);
        out.iter()
            .map(|line| match line {
                Line::Heading(words) => format!("# {words}"),
                Line::Entry(words) => words.clone(),
            })
            .collect()
    }

    #[test]
    fn steps_are_taken_in_every_form() {
        assert_eq!(steps(json!("Mix.\nBake.")), ["Mix.", "Bake."]);
        assert_eq!(
            steps(json!("<ol><li>Mix.</li><li>Bake.</li></ol>")),
            ["Mix.", "Bake."]
        );
        assert_eq!(
            steps(
                json!([{"@type": "HowToStep", "text": "Mix."}, {"@type": "HowToStep", "name": "Bake."}])
            ),
            ["Mix.", "Bake."]
        );
        assert_eq!(
            steps(json!([{"name": "Glaze", "itemListElement": [{"text": "Stir."}, "Pour."]}])),
            ["# Glaze", "Stir.", "Pour."]
        );
        assert_eq!(
            steps(json!({"name": "Method", "itemListElement": ["Mix."]})),
            ["Mix."]
        );
        assert_eq!(
            steps(json!({"text": "Mix.", "itemListElement": []})),
            ["Mix."]
        );
        assert_eq!(
            steps(json!({"@list": [{"item": {"text": "Mix."}}]})),
            ["Mix."]
        );
        assert_eq!(steps(json!([null, true, {}, ""])), [""; 0]);
    }

    #[test]
    fn a_step_s_name_is_kept_where_it_says_more() {
        for (name, expected) in [
            ("Step 3", "Grease the tin."),
            ("3", "Grease the tin."),
            ("Grease the…", "Grease the tin."),
            (
                "Heat the oven to 180°C.",
                "Heat the oven to 180°C: Grease the tin.",
            ),
        ] {
            assert_eq!(
                steps(json!({"name": name, "text": "Grease the tin."})),
                [expected],
                "{name}"
            );
        }
    }

    #[test]
    fn ingredients_that_are_objects_keep_their_amounts() {
        assert_eq!(
            steps(
                json!([{"name": "flour", "requiredQuantity": {"value": 2, "unitText": "cups"}}, {"name": "salt"}])
            ),
            ["2 cups flour", "salt"]
        );
    }

    #[test]
    fn a_recipe_is_found_wherever_it_stands() {
        let recipe = json!({"@type": ["Thing", "http://schema.org/Recipe"], "name": "Buns"});
        for value in [
            recipe.clone(),
            json!([{"@type": "WebSite"}, recipe]),
            json!({"@graph": [{"@type": "WebPage", "mainEntity": recipe}]}),
            json!({"@type": "Article", "hasPart": [recipe]}),
            json!({"@type": "ItemList", "itemListElement": [{"@type": "ListItem", "item": recipe}]}),
        ] {
            let names: Vec<String> = recipes(&value)
                .into_iter()
                .map(|sheet| sheet.name)
                .collect();
            assert_eq!(names, ["Buns"], "{value}");
        }
        assert!(recipes(&json!({"@type": "RecipeBook", "name": "Recipe"})).is_empty());
    }

    #[test]
    fn how_many_it_makes_is_written_in_words() {
        for (makes, expected) in [
            (json!(12), "Makes 12"),
            (json!("12 buns"), "Makes 12 buns"),
            (json!("Serves 8"), "Serves 8"),
            (json!(["12", "12 buns"]), "Makes 12 buns"),
            (json!({"value": 12.0, "unitText": "buns"}), "Makes 12 buns"),
            (json!(null), ""),
        ] {
            let value = json!({"@type": "Recipe", "schema:recipeYield": makes});
            assert_eq!(recipes(&value)[0].makes, expected, "{value}");
        }
    }
}
