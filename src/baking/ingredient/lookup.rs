//! Looking up: the words of a name to the ingredient that they mean.
//!
//! Goes in: words as people write them ("2%" and hyphens may be among them), and the country whose
//! words they are. Comes out: a match, and as sentences whatever is unsure about it. English puts
//! the thing last ("almond milk yogurt" is a yogurt), so a name must end where a known name ends;
//! what stands before it must describe without changing, or the match is doubted.

mod index;
mod matched;
mod several;
mod spelling;
mod words;

pub use matched::Match;

use super::{Ingredient, Larder, all};
use index::{Index, index};
use several::{both, one_of};

/// A longer name than this is not looked at whole.
const MOST_WORDS: usize = 16;

/// What a name was found to mean.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// The ingredient, or several, or none.
    pub matched: Match,
    /// The words that name it, in the plain form of the tables; the rest only describes.
    pub named_by: Vec<String>,
    /// What is unsure, as sentences.
    pub doubts: Vec<String>,
    /// Other ingredients that the words also name ("salt and pepper").
    pub also: Vec<&'static Ingredient>,
}

impl Found {
    fn nothing() -> Self {
        Self {
            matched: Match::Unknown,
            named_by: Vec::new(),
            doubts: Vec::new(),
            also: Vec::new(),
        }
    }

    /// Whether the tables hold it.
    pub fn is_known(&self) -> bool {
        self.matched != Match::Unknown
    }

    /// Whether it is known and nothing about it is unsure.
    pub fn is_sure(&self) -> bool {
        self.is_known() && self.doubts.is_empty() && self.also.is_empty()
    }
}

/// The ingredient that a name means where the whole of it is a known name, nothing taken off.
pub fn exact(name: &str, larder: Larder<'_>) -> Option<&'static Ingredient> {
    let index = index();
    index
        .whole(&words::plain(name, MOST_WORDS), larder)
        .and_then(|matched| matched.taken())
}

/// The ingredient whose name is written just as the page shows it, commas and brackets and all: "butter, whipped,
/// salted". None of them may be missing, since chocolate milk is no "chocolate, milk".
pub fn shown(name: &str, larder: Larder<'_>) -> Option<Found> {
    let ingredient = match larder.own.meaning_of(name) {
        Some(meaning) => meaning?,
        None => all()
            .iter()
            .find(|known| known.name.eq_ignore_ascii_case(name))?,
    };
    Some(sure(Match::Known(ingredient), &words_of(name)))
}

/// The words of a name in the plain form of the tables.
pub fn words_of(name: &str) -> Vec<String> {
    words::plain(name, MOST_WORDS)
}

/// How many letters were dropped, added, changed or swapped with their neighbour between two words.
pub fn slips(one: &str, two: &str) -> usize {
    spelling::slips(one.as_bytes(), two.as_bytes())
}

/// One word in the plain form of the tables.
pub fn plain_word(word: &str) -> String {
    words::plain_word(word)
}

/// Whether the words only describe and name nothing: "large, ripe".
pub fn only_describes(name: &str) -> bool {
    let index = index();
    words::plain(name, MOST_WORDS)
        .iter()
        .all(|word| index.is_describing(word))
}

/// The ingredient that a name means, with all that is unsure about it.
pub fn search(name: &str, larder: Larder<'_>) -> Found {
    let index = index();
    let plain = words::plain(name, MOST_WORDS);
    let mut found = parts(index, &plain, larder).unwrap_or_else(Found::nothing);
    if let Some(ingredient) = found.matched.taken() {
        found.doubts.extend(words::diet_doubt(&plain, ingredient));
    }
    if let Match::OneOf(several) = &found.matched
        && !plain.iter().any(|word| words::is_or(word))
        && let [first, others @ ..] = several.as_slice()
    {
        let others: Vec<&str> = others.iter().map(|other| other.name).collect();
        found.doubts.push(format!(
            "The words may mean {} or {}; the first is taken.",
            first.name,
            others.join(" or ")
        ));
    }
    found
}

/// The whole, or else its parts: one of several ("butter or margarine"), several ("salt and
/// pepper"), or what stands before "in", "with" and the like.
fn parts(index: &Index, plain: &[String], larder: Larder<'_>) -> Option<Found> {
    if plain.is_empty() {
        return None;
    }
    if let Some(matched) = index.whole(plain, larder) {
        return Some(sure(matched, plain));
    }
    if let Some(at) = plain.iter().position(|word| words::is_or(word)) {
        return one_of(index, &plain[..at], &plain[at + 1..], larder);
    }
    if let Some(at) = plain
        .iter()
        .position(|word| words::cuts(word))
        .filter(|at| *at > 0)
    {
        if let Some(of) = plain.iter().position(|word| word == "of")
            && let Some(found) = turned(index, plain, of, larder)
        {
            return Some(found);
        }
        return parts(index, &plain[..at], larder);
    }
    // "Candied orange and lemon peel, sliced" is one name, words that only describe aside.
    let bare = index.undescribed(plain);
    if bare.len() < plain.len()
        && bare.iter().any(|word| word == "and")
        && let Some(matched) = index.whole(&bare, larder)
    {
        return Some(sure(matched, &bare));
    }
    if let Some(at) = plain.iter().position(|word| word == "and")
        && at > 0
        && !only_describe(index, &plain[..at])
        && !only_describe(index, &plain[at + 1..])
    {
        return both(index, &plain[..at], &plain[at + 1..], larder);
    }
    let found = phrase(index, plain, larder);
    if found.as_ref().is_some_and(|found| found.doubts.is_empty()) {
        return found;
    }
    // A slip mended wholly is better than a word left over.
    let mended = misspelt(index, plain, larder);
    if mended
        .as_ref()
        .is_some_and(|mended| mended.doubts.len() == 1)
        || found.is_none()
    {
        mended
    } else {
        found
    }
}

/// Whether words name nothing: "large and ripe", "chopped and toasted".
fn only_describe(index: &Index, words: &[String]) -> bool {
    words.iter().all(|word| index.is_describing(word))
}

/// "Juice of lemon" is lemon juice.
fn turned(index: &Index, plain: &[String], of: usize, larder: Larder<'_>) -> Option<Found> {
    let mut words: Vec<String> = plain[of + 1..].to_vec();
    words.extend_from_slice(&plain[..of]);
    if words.len() == plain.len() || words.iter().any(|word| words::cuts(word)) {
        return None;
    }
    phrase(index, &words, larder)
}

/// A match that nothing is unsure about.
fn sure(matched: Match, named_by: &[String]) -> Found {
    Found {
        matched,
        named_by: named_by.to_vec(),
        ..Found::nothing()
    }
}

/// One name: the longest known name at its end, describing words aside.
fn phrase(index: &Index, plain: &[String], larder: Larder<'_>) -> Option<Found> {
    if let Some(found) = ending(index, plain, larder) {
        return Some(found);
    }
    // "Sugar, brown": the thing first, its kind after.
    for first in 1..plain.len() {
        let mut turned = plain[first..].to_vec();
        turned.extend_from_slice(&plain[..first]);
        let matched = index
            .whole(&turned, larder)
            .or_else(|| index.whole(&index.undescribed(&turned), larder));
        if let Some(matched) = matched {
            return Some(sure(matched, &turned));
        }
    }
    None
}

/// The best known name that ends where the words end, or before words that only describe: the one
/// that leaves the fewest words unexplained, and of these the longest.
fn ending(index: &Index, plain: &[String], larder: Larder<'_>) -> Option<Found> {
    let mut end = plain.len();
    while end > 0 {
        let mut best: Option<(Found, usize)> = None;
        for start in 0..end {
            let window = &plain[start..end];
            let shorter = index.undescribed(window);
            let is_shorter = shorter.len() < window.len();
            for words in [Some(window), is_shorter.then_some(shorter.as_slice())]
                .into_iter()
                .flatten()
            {
                if best
                    .as_ref()
                    .is_some_and(|(found, left)| found.named_by.len() >= words.len() && *left == 0)
                {
                    continue;
                }
                let Some(matched) = index.whole(words, larder) else {
                    continue;
                };
                let mut found = sure(matched, words);
                let left = unexplained(index, &plain[..start], &found.matched);
                let is_better = best.as_ref().is_none_or(|(known, fewest)| {
                    left.len() < *fewest
                        || left.len() == *fewest && words.len() > known.named_by.len()
                });
                if is_better {
                    if let (false, Some(ingredient)) = (left.is_empty(), found.matched.taken()) {
                        found.doubts.push(format!(
                            "Taken for {}; what \"{}\" makes of it is not known.",
                            ingredient.name,
                            left.join(" ")
                        ));
                    }
                    best = Some((found, left.len()));
                }
            }
        }
        if let Some((found, _)) = best {
            return Some(found);
        }
        // "Chia seeds mixed": what was done with it stands last and names nothing.
        let is_done = matches!(plain[end - 1].as_str(), "mixed" | "combined" | "blended");
        if !is_done && !index.is_describing(&plain[end - 1]) {
            break;
        }
        end -= 1;
    }
    None
}

/// The words before a name that neither describe nor stand in the ingredient's own name.
fn unexplained<'a>(index: &Index, before: &'a [String], matched: &Match) -> Vec<&'a str> {
    let own = matched
        .taken()
        .map(|ingredient| words::plain(ingredient.name, MOST_WORDS))
        .unwrap_or_default();
    before
        .iter()
        .map(String::as_str)
        .filter(|word| {
            !index.is_describing(word)
                && !is_harmless(word, matched)
                && !own.iter().any(|known| known == word)
        })
        .collect()
}

/// Words that change nothing in one family, though they do in another.
fn is_harmless(word: &str, matched: &Match) -> bool {
    use super::Group;
    let Some(ingredient) = matched.taken() else {
        return false;
    };
    match word {
        "white" => matches!(ingredient.group, Group::Sugar | Group::Flour),
        "brown" => ingredient.group == Group::Egg,
        "red" | "green" | "yellow" | "purple" | "sweet" | "tart" | "sour" => {
            matches!(ingredient.group, Group::Fruit | Group::Vegetable)
        }
        "salted" | "roasted" => matches!(ingredient.group, Group::Nut | Group::Seed),
        "dark" | "black" => matches!(ingredient.group, Group::Spice | Group::Flavour),
        "sweetened" => ingredient.group == Group::DriedFruit,
        "dried" => matches!(
            ingredient.group,
            Group::DriedFruit | Group::Spice | Group::Leavener
        ),
        _ => false,
    }
}

/// A slip of spelling, where only one known name is near.
fn misspelt(index: &Index, plain: &[String], larder: Larder<'_>) -> Option<Found> {
    let mut candidates: Vec<Vec<String>> = vec![plain.to_vec()];
    let mut slips = Vec::new();
    for (place, word) in plain.iter().enumerate() {
        if index.vocabulary.contains(word) || index.is_describing(word) {
            continue;
        }
        let near = spelling::near(word, &index.spellings);
        if near.is_empty() || near.len() * candidates.len() > 12 {
            continue;
        }
        slips.push(word.as_str());
        candidates = candidates
            .iter()
            .flat_map(|candidate| {
                near.iter().map(move |right| {
                    let mut mended = candidate.clone();
                    mended[place] = (*right).to_owned();
                    mended
                })
            })
            .collect();
    }
    if slips.is_empty() {
        return None;
    }
    let mut found: Option<Found> = None;
    for candidate in &candidates {
        let Some(other) = phrase(index, candidate, larder) else {
            continue;
        };
        match &mut found {
            None => found = Some(other),
            Some(first) => {
                let mut several = members(&first.matched);
                for ingredient in members(&other.matched) {
                    if several.iter().all(|known| known.key != ingredient.key) {
                        several.push(ingredient);
                    }
                }
                if several.len() > 1 {
                    first.matched = Match::OneOf(several);
                }
            }
        }
    }
    let mut found = found?;
    let taken = found.matched.taken()?;
    found.doubts.insert(
        0,
        format!(
            "\"{}\" is taken as a slip for {}.",
            slips.join(" "),
            taken.name
        ),
    );
    Some(found)
}

/// All that a match holds.
fn members(matched: &Match) -> Vec<&'static Ingredient> {
    match matched {
        Match::Known(ingredient) => vec![ingredient],
        Match::OneOf(ingredients) => ingredients.clone(),
        Match::Unknown => Vec::new(),
    }
}

/// The first letter made large.
fn capital(text: &str) -> String {
    crate::baking::quantity::show::sentence(text)
}

#[cfg(test)]
mod tests {
    use super::search;
    use crate::baking::ingredient::{Larder, Region};

    #[track_caller]
    fn finds(name: &str, key: &str) {
        let found = search(name, Larder::of(Region::Us));
        assert_eq!(
            found.matched.taken().map(|ingredient| ingredient.key),
            (!key.is_empty()).then_some(key),
            "{name}: {:?}",
            found.doubts
        );
    }

    #[test]
    fn names_with_words_around_them() {
        finds("All-Purpose Flour", "plain_flour");
        finds("large free-range eggs", "egg");
        finds("sifted unbleached all purpose flour", "plain_flour");
        finds("flour, all-purpose", "plain_flour");
        finds("bicarbonate of soda", "baking_soda");
        finds("granulated suger", "sugar");
        finds("eggs lightly beaten", "egg");
        finds("chocolate cake", "");
        finds("", "");
    }

    #[test]
    fn a_word_that_may_change_the_thing_is_doubted() {
        assert!(
            search("zanzibar flour", Larder::of(Region::Us))
                .doubts
                .len()
                == 1
        );
        assert!(search("organic flour", Larder::of(Region::Us)).is_sure());
    }
}
