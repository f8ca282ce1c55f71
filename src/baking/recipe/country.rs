//! Country: from a recipe's words, whose cups and spoons it means.
//!
//! Goes in: the text and the baker's own country. Comes out: a [`Guess`] with the signs it rests on. Every sign has a
//! weight for each country, counts once however often it stands, and the sums are compared. Where they lie close
//! together the baker's own country goes first, then the one with more recipes.

mod measures;
mod signs;

use super::seen::Seen;
use crate::baking::ingredient::Region;
use crate::baking::text::lower_letter;
use measures::{Measures, Ways};
use signs::SIGNS;
use std::sync::{Arc, OnceLock};

/// Whose cups, spoons and words a recipe uses, as far as its words tell.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Guess {
    /// The country taken.
    pub region: Region,
    /// How sure it is.
    pub certainty: Certainty,
    /// The strongest signs for it, at most three, each with its line, counted from 1.
    pub because: Vec<(usize, String)>,
}

/// How sure a guess is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Certainty {
    /// It leads every other country by far.
    Clear,
    /// It leads, or lies close to the lead and is the likelier for other reasons.
    Likely,
    /// The words tell nothing; the baker's own country is kept.
    Nothing,
}

/// The countries in the order of the weights.
const REGIONS: [Region; 5] = [Region::Us, Region::Uk, Region::Au, Region::Nz, Region::Ca];
/// The places of the countries by how many recipes in English come from each.
const MORE_COMMON: [usize; 5] = [0, 1, 4, 2, 3];
/// A sum below it tells nothing: one word that is usual in one country is enough, a hint is not.
const LEAST: i32 = 3;
/// A lead from which a guess is clear: more than one word can give.
const CLEAR: i32 = 4;

/// A sign that was seen.
struct Sign {
    line: usize,
    words: &'static str,
    weights: [i32; 5],
}

/// What one line tells, by its words alone.
#[derive(Debug)]
pub struct LineTold {
    /// The rows of signs that stand in it.
    rows: Vec<usize>,
    ways: Ways,
}

/// Guesses whose cups, spoons and words a recipe uses.
pub fn guess(text: &str, home: Region) -> Guess {
    guess_again(&mut Seen::default(), text, home)
}

/// The same with what was seen of the text's lines before: that spares work and changes nothing.
pub fn guess_again(told: &mut Seen<LineTold>, text: &str, home: Region) -> Guess {
    let signs = signs(&told.of(text.lines(), LineTold::of));
    let mut sums = [0; 5];
    for sign in &signs {
        for (sum, weight) in sums.iter_mut().zip(sign.weights) {
            *sum += weight;
        }
    }
    let best = sums.into_iter().max().unwrap_or(0);
    if best < LEAST {
        return Guess {
            region: home,
            certainty: Certainty::Nothing,
            because: Vec::new(),
        };
    }
    // Hints add up by chance, so that more of them must lie further apart.
    let near = best - 1 - best / 8;
    let place = MORE_COMMON
        .into_iter()
        .filter(|place| sums[*place] >= near)
        .min_by_key(|place| REGIONS[*place] != home)
        .unwrap_or(0);
    let next = (0..5)
        .filter(|other| *other != place)
        .map(|other| sums[other])
        .max()
        .unwrap_or(0);
    Guess {
        region: REGIONS[place],
        certainty: if sums[place] - next >= CLEAR {
            Certainty::Clear
        } else {
            Certainty::Likely
        },
        because: strongest(signs, place),
    }
}

/// The signs that set a country most apart from the others.
fn strongest(mut signs: Vec<Sign>, place: usize) -> Vec<(usize, String)> {
    let lift = |sign: &Sign| sign.weights[place] * 5 - sign.weights.iter().sum::<i32>();
    signs.retain(|sign| lift(sign) > 0);
    signs.sort_by_key(|sign| (-lift(sign), sign.line));
    signs
        .into_iter()
        .take(3)
        .map(|sign| (sign.line, sign.words.to_owned()))
        .collect()
}

/// The rows of signs, each with its weights as digits, and where those of each first letter stand: most words are
/// looked for among a few rows only.
struct Rows {
    rows: Vec<(&'static str, &'static str)>,
    places: [(usize, usize); 128],
}

impl Rows {
    fn all() -> &'static Self {
        static ALL: OnceLock<Rows> = OnceLock::new();
        ALL.get_or_init(Self::new)
    }

    fn new() -> Self {
        let rows: Vec<(&str, &str)> = SIGNS
            .lines()
            .filter_map(|row| row.rsplit_once(' '))
            .collect();
        let mut places = [(0, 0); 128];
        for (at, (words, _)) in rows.iter().enumerate() {
            if let Some(place) = words
                .bytes()
                .next()
                .and_then(|letter| places.get_mut(usize::from(letter)))
            {
                *place = (if place.1 == 0 { at } else { place.0 }, at + 1);
            }
        }
        Self { rows, places }
    }
}

/// Every sign of the lines, once, with the first line that has it.
fn signs(lines: &[Arc<LineTold>]) -> Vec<Sign> {
    let rows = &Rows::all().rows;
    let mut first = vec![0; rows.len()];
    let mut measures = Measures::default();
    for (at, told) in lines.iter().enumerate() {
        for row in &told.rows {
            if first[*row] == 0 {
                first[*row] = at + 1;
            }
        }
        measures.add(told.ways, at + 1);
    }
    let ways = measures.counted().map(|(line, way)| Sign {
        line,
        words: way.words,
        weights: way.weights,
    });
    let words = rows.iter().zip(first).filter(|(_, line)| *line > 0);
    let words = words.map(|((words, digits), line)| {
        let mut weights = [0; 5];
        for (weight, digit) in weights.iter_mut().zip(digits.bytes()) {
            *weight = i32::from(digit) - i32::from(b'0');
        }
        Sign {
            line,
            words,
            weights,
        }
    });
    ways.chain(words).collect()
}

impl LineTold {
    fn of(line: &str) -> Self {
        let Rows { rows, places } = Rows::all();
        let mut plain = String::new();
        write_plain(line, &mut plain);
        let mut seen = Vec::new();
        let mut rest = plain.as_str();
        while !rest.is_empty() {
            let row = longest(rows, places, rest);
            seen.extend(row);
            let length = row.map_or(0, |row| rows[row].0.len());
            let next = rest[length..].find(' ');
            rest = next.map_or("", |blank| &rest[length + blank + 1..]);
        }
        let words: Vec<&str> = plain.split(' ').collect();
        Self {
            rows: seen,
            ways: Ways::of(&words),
        }
    }
}

/// The longest row of words that stands at the front; its last word may be in the plural.
fn longest(rows: &[(&str, &str)], places: &[(usize, usize); 128], rest: &str) -> Option<usize> {
    let (from, to) = *places.get(usize::from(*rest.as_bytes().first()?))?;
    let rows = rows.get(from..to).filter(|rows| !rows.is_empty())?;
    let word = rest.split(' ').next().unwrap_or(rest);
    let stem = word
        .strip_suffix('s')
        .filter(|stem| !stem.is_empty())
        .unwrap_or(word);
    let start = rows.partition_point(|(words, _)| *words < stem);
    // A longer row comes after the shorter one that it begins with.
    rows[start..]
        .iter()
        .take_while(|(words, _)| words.starts_with(stem))
        .enumerate()
        .filter(|(_, (words, _))| stands(words, rest))
        .last()
        .map(|(at, _)| from + start + at)
}

fn stands(words: &str, rest: &str) -> bool {
    rest.strip_prefix(words).is_some_and(|after| {
        let after = after.strip_prefix('s').unwrap_or(after);
        after.is_empty() || after.starts_with(' ')
    })
}

/// What a run of signs is.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Run {
    Gap,
    Letters,
    Digits,
    Mark,
}

/// A line's words and numbers in lower case, one blank between; figures part from letters ("180C" is "180 c").
fn write_plain(line: &str, out: &mut String) {
    let mut last = Run::Gap;
    for sign in line.chars() {
        let sign = match lower_letter(sign) {
            // An apostrophe joins: "confectioner's" and "confectioners'" are one word.
            '\'' | '\u{2019}' => continue,
            'à' | 'â' | 'ä' => 'a',
            'ç' => 'c',
            'è' | 'é' | 'ê' => 'e',
            'î' => 'i',
            'ñ' => 'n',
            'û' | 'ü' => 'u',
            '×' => 'x',
            'º' | '˚' => '°',
            other => other,
        };
        let run = match sign {
            'a'..='z' => Run::Letters,
            '0'..='9' => Run::Digits,
            '°' | '%' | '¼'..='¾' | '⅐'..='⅞' => Run::Mark,
            _ if sign.is_alphabetic() => Run::Letters,
            _ => Run::Gap,
        };
        if run != Run::Gap {
            if !out.is_empty() && (run != last || run == Run::Mark) {
                out.push(' ');
            }
            out.push(sign);
        }
        last = run;
    }
}

#[cfg(test)]
mod tests;
