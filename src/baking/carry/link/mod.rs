//! One recipe in the part of an address that is sent to no server: its inputs as JSON, deflated with words of recipes
//! known to both sides, as base64url, behind a letter that says how it was made.

mod base64url;
mod squeeze;

use super::keys::take_own_out;
use crate::baking::saved::{self, Envelope, KeptRecipe, Record, SavedTrouble};
use crate::baking::worksheet::Inputs;
use serde_json::json;
use squeeze::Fault;

/// What a recipe's fragment begins with; the rest is what [`write`] gives.
pub const FRAGMENT: &str = "#/given/";

/// How a link is made. What a letter stands for never changes: a link lies in messages for years.
struct Way {
    letter: char,
    /// The version of a recipe's record that it holds.
    record: u32,
    /// What both sides know.
    known: &'static str,
}

/// Every way there ever was; the last is the one that is written. A new version of the record wants a new letter.
const WAYS: [Way; 1] = [Way {
    letter: 'a',
    record: 2,
    known: include_str!("words_a.txt"),
}];

/// The longest link, in letters: no messenger takes more.
const LONGEST: usize = 16_000;
/// The longest recipe in a link, in bytes of JSON.
const LARGEST: usize = 64_000;

/// A recipe as the end of a link.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Link {
    /// What stands behind [`FRAGMENT`].
    pub text: String,
    /// How many sayings of the baker name own ingredients, which stay behind.
    pub left_out: usize,
}

/// The link of a recipe: its text, corrections and choices.
///
/// # Errors
/// A sentence where it is too long for one.
pub fn write(inputs: &Inputs) -> Result<Link, String> {
    let [.., way] = &WAYS;
    let mut inputs = inputs.clone();
    let left_out = take_own_out(&mut inputs);
    let envelope = saved::to_value(&KeptRecipe {
        inputs,
        ..KeptRecipe::default()
    })?;
    let Envelope { body, .. } = envelope;
    let text = body
        .get("inputs")
        .map(ToString::to_string)
        .unwrap_or_default();
    let most = LONGEST / 4 * 3;
    let bytes = match text.len() {
        0..=LARGEST => squeeze::squeeze(&text, way.known, most),
        _ => None,
    };
    let bytes =
        bytes.ok_or("This recipe is too long for a link. Take it out as text or as a file.")?;
    Ok(Link {
        text: format!("{}{}", way.letter, base64url::encode(&bytes)),
        left_out,
    })
}

/// The recipe of a link, from what stands behind [`FRAGMENT`].
///
/// # Errors
/// A sentence that says why it cannot be read.
pub fn read(link: &str) -> Result<Inputs, String> {
    if link.len() > LONGEST + 1 {
        return Err(format!(
            "This link cannot be opened: it is {} letters long, and {LONGEST} are the most.",
            link.len()
        ));
    }
    let mut letters = link.chars();
    let way =
        match letters.next() {
            None => return Err(CUT_OFF.into()),
            Some(letter) => WAYS.iter().find(|way| way.letter == letter).ok_or(
                if letter.is_ascii_lowercase() {
                    NEWER
                } else {
                    DAMAGED
                },
            )?,
        };
    let bytes = base64url::decode(letters.as_str()).ok_or(DAMAGED)?;
    let text = squeeze::spread(&bytes, way.known, LARGEST).map_err(|fault| match fault {
        Fault::CutOff => CUT_OFF,
        Fault::Damaged => DAMAGED,
    })?;
    let inputs = saved::json(&text).map_err(cannot)?;
    let record = json!({
        "format": KeptRecipe::FORMAT,
        "version": way.record,
        "body": { "changed": 0, "inputs": inputs },
    });
    let recipe = saved::from_value::<KeptRecipe>(record)
        .map_err(|trouble: SavedTrouble| cannot(trouble.reason()))?;
    let mut inputs = recipe.inputs;
    // Whoever made it may name what means another ingredient here.
    take_own_out(&mut inputs);
    Ok(inputs)
}

const CUT_OFF: &str = "This link cannot be opened: its end is missing. Some messengers cut long links off; ask for the recipe as text or as a file.";
const DAMAGED: &str = "This link cannot be opened: it is damaged, so that some of its letters are not the ones that were sent.";
const NEWER: &str = "This link cannot be opened: a newer version of this page made it. Reload this page to get the newest, then open the link again.";

fn cannot(reason: String) -> String {
    format!("This link cannot be opened: {reason}.")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A record of another meaning in an old letter would be misread.
    #[test]
    fn the_last_letter_holds_todays_record() {
        assert_eq!(WAYS.last().map(|way| way.record), Some(KeptRecipe::VERSION));
    }
}
