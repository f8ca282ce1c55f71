//! Every length of time that a method names, whatever it is for: what a timer is set to.

use super::bake_sentence::sentence_start;
use super::method;
use super::time_span::time_span;
use super::token::{Token, tokens};
use super::{Recipe, tidy};
use crate::baking::lexicon::Lexicon;

/// A length of time in the method.
#[derive(Clone, Debug, PartialEq)]
pub struct StepTime {
    /// The line that names it.
    pub line: usize,
    /// The shortest, minutes.
    pub low: f64,
    /// The longest, minutes; equal to `low` where one time is given.
    pub high: f64,
    /// What is done for so long: "Bake", "Cool".
    pub deed: &'static str,
}

/// The longest that a timer in a kitchen is set to, minutes.
const LONGEST: f64 = 24.0 * 60.0;

static DEEDS: Lexicon<&str> = Lexicon::new(&[
    ("bake bakes baked baking", "Bake"),
    ("beat beating", "Beat"),
    ("blend whizz process pulse", "Blend"),
    ("boil", "Boil"),
    ("chill refrigerate fridge", "Chill"),
    ("cook cooks", "Cook"),
    ("cool cooled cooling rack", "Cool"),
    ("cream", "Cream"),
    ("fold", "Fold"),
    ("freeze", "Freeze"),
    ("fry", "Fry"),
    ("heat warm", "Heat"),
    ("infuse steep", "Steep"),
    ("knead", "Knead"),
    ("leave let allow", "Leave"),
    ("macerate", "Macerate"),
    ("melt", "Melt"),
    ("microwave", "Microwave"),
    ("mix combine", "Mix"),
    ("preheat", "Heat the oven"),
    ("proof prove", "Prove"),
    ("rest", "Rest"),
    ("rise", "Rise"),
    ("roast", "Roast"),
    ("set", "Set"),
    ("simmer", "Simmer"),
    ("soak", "Soak"),
    ("stand sit aside", "Stand"),
    ("steam", "Steam"),
    ("stir", "Stir"),
    ("toast", "Toast"),
    ("whip", "Whip"),
    ("whisk", "Whisk"),
]);

/// The lengths of time that a recipe's method names, in its order.
pub fn step_times(recipe: &Recipe) -> Vec<StepTime> {
    method::lines(&recipe.lines)
        .flat_map(|line| in_line(line.number, &line.text))
        .collect()
}

fn in_line(line: usize, text: &str) -> Vec<StepTime> {
    let tidied = tidy::tidy(text);
    let lower = tidied.to_ascii_lowercase();
    let tokens = tokens(&tidied, &lower);
    let (mut found, mut at, mut last) = (Vec::new(), 0, 0);
    while at < tokens.len() {
        let Some(time) = time_span(&tokens, at) else {
            at += 1;
            continue;
        };
        let start = sentence_start(&tokens, at).max(last);
        if time.low > 0.0 && time.high <= LONGEST && !is_repeated(&tokens[start..at]) {
            let before = (start..at).rev().find_map(|place| {
                // "A stand mixer" is no standing.
                let is_thing = tokens[place + 1].is_any(&["mixer", "blender", "processor"]);
                deed(&tokens[place]).filter(|_| !is_thing)
            });
            // "5 minutes of beating", "30 minutes in the oven".
            let behind = || tokens[time.next..].iter().take(4).find_map(deed);
            found.push(StepTime {
                line,
                low: time.low,
                high: time.high.max(time.low),
                deed: before.or_else(behind).unwrap_or("Wait"),
            });
        }
        (at, last) = (time.next, time.next);
    }
    found
}

fn deed(token: &Token) -> Option<&'static str> {
    DEEDS.find(token.lower).copied()
}

/// "Every 10 minutes" is no time to wait for once.
fn is_repeated(before: &[Token]) -> bool {
    before
        .last()
        .is_some_and(|token| token.is_any(&["every", "each"]))
}
