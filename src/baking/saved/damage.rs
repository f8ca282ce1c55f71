//! Where a record is damaged: in its letters, or in what stands at one of its places.

use super::{Record, quoted, usual};
use serde_json::{Map, Value};

/// What is wrong with a text that is no JSON, and where, in a baker's words.
pub fn of_text(error: &serde_json::Error) -> String {
    if error.is_eof() {
        return "it ends too early, so it is cut off".into();
    }
    let (line, letter) = (error.line(), error.column());
    if error.to_string().starts_with("recursion limit") {
        return format!("it is nested too deep at line {line}, letter {letter}");
    }
    format!("it is damaged at line {line}, letter {letter}")
}

/// What of a body keeps it from being read, with its place: what stands there by itself, and all else as usual, cannot
/// be read either.
pub fn of_body<R: Record>(body: &Value) -> String {
    let mut steps = Vec::new();
    let mut found = body;
    while let Some((step, below)) = children(found)
        .into_iter()
        .find(|(step, below)| !stands::<R>(&steps, step, below))
    {
        let fits = match below {
            Value::Array(_) => stands::<R>(&steps, &step, &Value::Array(Vec::new())),
            _ => stands::<R>(&steps, &step, &Value::Object(Map::new())),
        };
        steps.push(step);
        found = below;
        if !fits {
            break;
        }
    }
    let place = match steps.is_empty() {
        true => "body".to_owned(),
        false => written(&steps),
    };
    let has_fields = found.is_object();
    match found {
        Value::Object(_) if steps.is_empty() => {
            let lacking = usual::<R>();
            let lacking = fields(&lacking).find(|(name, _)| found.get(name.as_str()).is_none());
            let lacking = lacking.map_or("something", |(name, _)| name.as_str());
            format!("its {place} lacks {lacking}")
        }
        _ if has_fields && has_parts::<R>(&steps) => {
            format!("its {place} lacks a field, or has one that it cannot have")
        }
        _ if has_fields => format!("its {place} has fields, which it cannot have"),
        found => format!("its {place} is {}, which it cannot be", kind(found)),
    }
}

/// What a value is, in words.
pub fn kind(value: &Value) -> String {
    match value {
        Value::Null => "empty".into(),
        Value::Bool(true) => "\"true\"".into(),
        Value::Bool(false) => "\"false\"".into(),
        Value::Number(number) => format!("the number {number}"),
        Value::String(text) => format!("the text {}", quoted(text)),
        Value::Array(_) => "a list".into(),
        Value::Object(_) => "a group of fields".into(),
    }
}

/// One step down into a value.
#[derive(Clone, Copy)]
enum Step<'a> {
    Field(&'a str),
    Item(usize),
}

fn fields(value: &Value) -> impl Iterator<Item = (&String, &Value)> {
    value.as_object().into_iter().flat_map(Map::iter)
}

fn children(value: &Value) -> Vec<(Step<'_>, &Value)> {
    match value {
        Value::Array(items) => items
            .iter()
            .enumerate()
            .map(|(at, item)| (Step::Item(at), item))
            .collect(),
        value => fields(value)
            .map(|(name, value)| (Step::Field(name), value))
            .collect(),
    }
}

/// Whether what stands at a place is made of fields: nothing else can be read there either.
fn has_parts<R: Record>(steps: &[Step]) -> bool {
    let Some((step, above)) = steps.split_last() else {
        return true;
    };
    let others = [
        Value::Null,
        Value::from(false),
        Value::from(1),
        Value::from(""),
        Value::Array(Vec::new()),
    ];
    !others.iter().any(|other| stands::<R>(above, step, other))
}

/// Whether a value can be read at its place in a record that is as usual everywhere else.
fn stands<R: Record>(above: &[Step], step: &Step, value: &Value) -> bool {
    let mut body = usual::<R>();
    let mut at = &mut body;
    for step in above.iter().chain([step]) {
        at = match step {
            Step::Field(name) => {
                if !at.is_object() {
                    *at = Value::Object(Map::new());
                }
                &mut at[*name]
            }
            Step::Item(_) => {
                *at = Value::Array(vec![Value::Null]);
                &mut at[0]
            }
        };
    }
    *at = value.clone();
    serde_json::from_value::<R>(body).is_ok()
}

/// A place as programs write it: `inputs.corrections[3].amount`, counted from 0.
fn written(steps: &[Step]) -> String {
    let mut place = String::new();
    for step in steps {
        match step {
            Step::Field(name) => {
                if !place.is_empty() {
                    place.push('.');
                }
                place.push_str(name);
            }
            Step::Item(at) => place.push_str(&format!("[{at}]")),
        }
    }
    place
}
