//! Chance for the laws: lines and pages as people have them, damaged, since text made of nothing but chance seldom
//! gets deep into the reader.

use crate::real::real_lines;
use proptest::prelude::*;
use proptest::sample::Index;

/// One thing that goes wrong with a text.
#[derive(Clone, Debug)]
pub enum Damage {
    Lost(Index),
    Twice(Index),
    Swapped(Index, Index),
    Put(Index, &'static str),
    Moved(Index, Index, Index),
    /// Cut off behind a byte, wherever that is in a letter.
    Cut(Index),
    /// Cut off before a byte.
    Begun(Index),
}

/// What gets into a text: signs that mean something to a reader of lines, of figures, of pages and of linked data.
const PUT: &[&str] = &[
    "0",
    "1",
    "9",
    "1/2",
    "/",
    "½",
    "⅞",
    "⁄",
    ",",
    ".",
    ";",
    ":",
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    "-",
    "–",
    "+",
    "&",
    "%",
    "\"",
    "'",
    "\\",
    "\\u",
    "\\ud83c",
    "<",
    ">",
    "</",
    "<!--",
    "&#",
    "&#x10ffff;",
    "&amp;",
    "=",
    "|",
    "\t",
    "\n",
    "\r\n",
    " ",
    "\u{a0}",
    "\u{202e}",
    "\u{301}",
    "é",
    "ﬁ",
    "１",
    "🥚",
    "x",
    "×",
    "°",
    "or ",
    "and ",
    "plus ",
    "less ",
    "to ",
    "each ",
    "of ",
    "e9",
    "e999",
    "99999999999999999999",
    "-1",
    "1:1",
    "--2d.",
    "http://a",
    "[a](http://b)",
];

fn damage() -> impl Strategy<Value = Damage> {
    let at = any::<Index>;
    prop_oneof![
        3 => at().prop_map(Damage::Lost),
        3 => at().prop_map(Damage::Twice),
        3 => (at(), at()).prop_map(|(one, two)| Damage::Swapped(one, two)),
        6 => (at(), prop::sample::select(PUT)).prop_map(|(at, put)| Damage::Put(at, put)),
        2 => (at(), at(), at()).prop_map(|(from, until, to)| Damage::Moved(from, until, to)),
        1 => at().prop_map(Damage::Cut),
        1 => at().prop_map(Damage::Begun),
    ]
}

/// A text with damage done to it. Half a letter becomes the sign that a browser puts in its place.
fn damaged(text: &str, damages: &[Damage]) -> String {
    let mut bytes = text.as_bytes().to_vec();
    for damage in damages {
        if bytes.is_empty() {
            break;
        }
        let length = bytes.len();
        match damage {
            Damage::Lost(at) => {
                bytes.remove(at.index(length));
            }
            Damage::Twice(at) => bytes.insert(at.index(length), bytes[at.index(length)]),
            Damage::Swapped(one, two) => bytes.swap(one.index(length), two.index(length)),
            Damage::Put(at, put) => {
                let at = at.index(length);
                bytes.splice(at..at, put.bytes());
            }
            Damage::Moved(from, until, to) => {
                let (from, until) = (from.index(length), until.index(length));
                let moved: Vec<u8> = bytes.drain(from.min(until)..from.max(until)).collect();
                let to = to.index(bytes.len() + 1);
                bytes.splice(to..to, moved);
            }
            Damage::Cut(at) => bytes.truncate(at.index(length)),
            Damage::Begun(at) => {
                bytes.drain(..at.index(length));
            }
        }
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

/// One of these texts, with a little damage.
pub fn damaged_one(texts: Vec<String>) -> impl Strategy<Value = String> {
    (
        prop::sample::select(texts),
        prop::collection::vec(damage(), 0..6),
    )
        .prop_map(|(text, damages)| damaged(&text, &damages))
}

/// A few real lines under one another, some with damage.
pub fn damaged_lines() -> impl Strategy<Value = String> {
    prop::collection::vec(damaged_one(real_lines()), 1..5).prop_map(|lines| lines.join("\n"))
}
