//! How long a cake is baked, as its method says.
//!
//! Goes in: the tokens of a line of running text. Comes out: every length of time that belongs to baking and none that
//! belongs to beating, resting, cooling or looking. What a time belongs to is told by the nearest verb before it in its
//! sentence.

use super::Recipe;
use super::bake_sentence::{Sentence, sentence_start};
use super::time_span::time_span;
use super::token::{Token, tokens};
use crate::baking::text::lower;

/// A time of baking named in the text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BakeTime {
    /// The shortest, minutes.
    pub low: f64,
    /// The longest, minutes; equal to `low` where one time is given.
    pub high: f64,
    /// How it is said.
    pub words: BakeWords,
}

/// How a time of baking is said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BakeWords {
    /// "Bake for 30 minutes".
    Step,
    /// "Bake for another 10 minutes": on top of what was named before.
    Further,
    /// "Baking time: 30 minutes", a fact beside the method.
    Fact,
}

/// How long a whole recipe bakes.
#[derive(Clone, Debug, PartialEq)]
pub struct Baked {
    /// The shortest, minutes.
    pub low: f64,
    /// The longest, minutes.
    pub high: f64,
    /// The lines that say so.
    pub lines: Vec<usize>,
}

impl Recipe {
    /// How long it bakes: the first time that its method names and what comes on top of it, else a fact beside the method;
    /// `None` where nothing tells. Another time behind those is another choice or another batch.
    pub fn baked(&self) -> Option<Baked> {
        let all = || {
            self.lines.iter().flat_map(|line| {
                let times = line.mentions.bakes.iter();
                times.map(|time| (line.number, time))
            })
        };
        let mut steps = all().filter(|(_, time)| time.words != BakeWords::Fact);
        let (number, first) = steps.next().or_else(|| all().next())?;
        let mut baked = Baked {
            low: first.low,
            high: first.high,
            lines: vec![number],
        };
        for (number, time) in steps.take_while(|(_, time)| time.words == BakeWords::Further) {
            baked.low += time.low;
            baked.high += time.high;
            baked.lines.push(number);
        }
        baked.lines.dedup();
        Some(baked)
    }
}

/// A time of baking as it is typed into a field, minutes from and to: "35", "35 to 40", "1 h 10 min"; `None` where it is none.
pub fn minutes_typed(typed: &str) -> Option<[f64; 2]> {
    let words = lower(typed.trim());
    let has_unit = words.contains(|letter: char| letter.is_alphabetic() && !"to".contains(letter));
    let said = format!("bake for {words}{}", if has_unit { "" } else { " minutes" });
    match bakes(&tokens(&said, &said))[..] {
        [time] if time.low > 0.0 => Some([time.low, time.high]),
        _ => None,
    }
}

/// The longest that is believed, minutes: a rich fruit cake takes some 5 hours.
const LONGEST: f64 = 600.0;

/// The times of baking in a line, in the order written.
pub fn bakes(tokens: &[Token]) -> Vec<BakeTime> {
    let mut found: Vec<BakeTime> = Vec::new();
    let (mut at, mut last_end) = (0, 0_usize);
    while at < tokens.len() {
        let Some(time) = time_span(tokens, at) else {
            at += 1;
            continue;
        };
        let start = sentence_start(tokens, at);
        let sentence = Sentence {
            before: &tokens[start..at],
            after: &tokens[time.next..],
            past: last_end.saturating_sub(start),
        };
        if (1.0..=LONGEST).contains(&time.low)
            && time.high <= LONGEST
            && let Some(words) = sentence.words(!found.is_empty(), time.is_further)
        {
            found.push(BakeTime {
                low: time.low,
                high: time.high.max(time.low),
                words,
            });
            last_end = time.next;
        }
        at = time.next;
    }
    found
}
