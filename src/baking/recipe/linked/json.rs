//! JSON as pages hold it: taken out of its wrappers, and mended where the fault is a simple one.

use crate::baking::recipe::tidy::entities;
use serde_json::Value;

/// Whether a text that stands alone is meant as JSON. A recipe may begin with a brace or a box to tick too.
pub fn looks_so(text: &str) -> bool {
    /// No name of a field is longer.
    const LONGEST_NAME: usize = 100;
    let text = match text.strip_prefix('[') {
        Some(inside) => inside.trim_start(),
        None => text,
    };
    let Some(name) = text
        .strip_prefix('{')
        .and_then(|inside| inside.trim_start().strip_prefix('"'))
    else {
        return false;
    };
    name.bytes()
        .take(LONGEST_NAME)
        .position(|byte| byte == b'"')
        .is_some_and(|end| name[end + 1..].trim_start().starts_with(':'))
}

/// Reads JSON, as it is or mended.
///
/// # Errors
/// What is wrong with it, as part of a sentence.
pub fn read(text: &str) -> Result<Value, String> {
    let text = unwrapped(text);
    let error = match serde_json::from_str(text) {
        Ok(value) => return Ok(value),
        Err(error) => error,
    };
    let inside = text.trim_start_matches(['{', '[', ' ', '\t', '\r', '\n']);
    let mended = if inside.starts_with("&quot;") {
        mended(&entities(text))
    } else {
        mended(text)
    };
    serde_json::from_str(&mended).map_err(|_| reason(&error))
}

/// The text without the comments and sections that older pages put around a script.
fn unwrapped(text: &str) -> &str {
    let mut text = text.trim();
    loop {
        let before = text.len();
        for mark in ["\u{feff}", "<!--", "<![CDATA[", "//", "/*", "*/"] {
            text = text.strip_prefix(mark).unwrap_or(text).trim_start();
        }
        for mark in ["-->", "]]>", "//", "/*", "*/", ";"] {
            text = text.strip_suffix(mark).unwrap_or(text).trim_end();
        }
        if text.len() == before {
            return text;
        }
    }
}

/// The text with line breaks and bare quotes inside strings escaped, and commas that part nothing taken out.
fn mended(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 64);
    let mut is_string = false;
    let mut signs = text.char_indices();
    while let Some((at, sign)) = signs.next() {
        if !is_string {
            is_string = sign == '"';
            if sign != ',' || !parts_nothing(&text[at + 1..]) {
                out.push(sign);
            }
            continue;
        }
        match sign {
            '\\' => match signs.next() {
                Some((_, next)) if "\"\\/bfnrtu".contains(next) => {
                    out.push('\\');
                    out.push(next);
                }
                Some((_, next)) => plain(&mut out, next),
                None => {}
            },
            '"' if ends_string(&text[at + 1..]) => {
                is_string = false;
                out.push('"');
            }
            // Two strings with a blank between: a comma was forgotten.
            '"' if lacks_comma(&text[at + 1..]) => {
                is_string = false;
                out.push_str("\",");
            }
            '"' => out.push_str("\\\""),
            _ => plain(&mut out, sign),
        }
    }
    out
}

/// A sign inside a string, escaped where JSON will not have it bare.
fn plain(out: &mut String, sign: char) {
    match sign {
        '\n' => out.push_str("\\n"),
        '\0'..='\u{1f}' => out.push(' '),
        _ => out.push(sign),
    }
}

/// Whether a quote ends its string: only then does one of JSON's own marks follow.
fn ends_string(rest: &str) -> bool {
    let rest = rest.trim_start();
    rest.is_empty() || rest.starts_with([',', ':', '}', ']'])
}

/// Whether another string follows after a blank.
fn lacks_comma(rest: &str) -> bool {
    rest.starts_with([' ', '\n', '\r', '\t']) && rest.trim_start().starts_with('"')
}

/// Whether nothing follows a comma that it could part from what stands before.
fn parts_nothing(rest: &str) -> bool {
    let rest = rest.trim_start();
    rest.is_empty() || rest.starts_with([',', '}', ']'])
}

fn reason(error: &serde_json::Error) -> String {
    if error.is_eof() {
        return "it is cut off".to_owned();
    }
    let mut out = "it is damaged at line ".to_owned();
    out.push_str(&error.line().to_string());
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn simple_faults_are_mended() {
        let cake = json!({"a": "b"});
        for text in [
            r#"{"a":"b"}"#,
            r#"{"a":"b"};"#,
            r#"{"a":"b",}"#,
            "<!-- {\"a\":\"b\"} -->",
            "//<![CDATA[\n{\"a\":\"b\"}\n//]]>",
            "/*<![CDATA[*/{\"a\":\"b\"}/*]]>*/",
            "\u{feff}{\"a\":\"b\",,}",
            "{&quot;a&quot;: &quot;b&quot;}",
        ] {
            assert_eq!(read(text), Ok(cake.clone()), "{text}");
        }
        assert_eq!(read("{\"a\":\"b\nc\td\"}"), Ok(json!({"a": "b\nc d"})));
        assert_eq!(
            read(r#"{"a":"a 9" tin","b":1}"#),
            Ok(json!({"a": "a 9\" tin", "b": 1}))
        );
        assert_eq!(read(r#"{"a":"baker\'s"}"#), Ok(json!({"a": "baker's"})));
        assert_eq!(read(r#"["1 egg" "salt"]"#), Ok(json!(["1 egg", "salt"])));
        assert_eq!(read(r#"["a, ]b",]"#), Ok(json!(["a, ]b"])));
    }

    #[test]
    fn other_faults_are_named() {
        for (text, reason) in [
            ("{\"a\":", "it is cut off"),
            ("", "it is cut off"),
            ("{\"a\":\n b}", "it is damaged at line 2"),
            ("{\"a\":1} {}", "it is damaged at line 1"),
        ] {
            assert_eq!(read(text), Err(reason.to_owned()), "{text}");
        }
        assert!(read(&"[".repeat(100_000)).is_err());
    }

    #[test]
    fn a_recipe_that_begins_with_a_brace_is_no_json() {
        for (text, is_json) in [
            ("{\"a\": 1}", true),
            ("{ \"a\" :", true),
            ("[ {\"a\": 1}]", true),
            ("[ ] 2 cups", false),
            ("{cake}", false),
            ("{\"cake\"}", false),
            ("[\"2 cups\"]", false),
            ("", false),
        ] {
            assert_eq!(looks_so(text), is_json, "{text}");
        }
    }
}
