//! Causes that need something to be there: where it is not, they are ruled out; where it is, only some are told more of.

use super::{By, Reading};
use crate::baking::balance::Kind;
use crate::baking::finding::{Facts, chance_above, chance_turned};
use crate::baking::ingredient::{Allergen, Group};
use crate::baking::quantity::{Share, show};

/// Nothing is said where it is there, nor where a line is unread or without a weight and may be it.
fn absent(facts: &Facts, is_there: bool, by: By, words: &str) -> Option<Reading> {
    let holes = facts.formula.holes().next().is_some() || !facts.unread.is_empty();
    let is_empty = facts.formula.batter().next().is_none();
    match is_there || holes || is_empty {
        true => None,
        false => Reading::new(0.0, by, words.to_owned()),
    }
}

/// Whether there is gluten to overwork.
pub fn gluten(facts: &Facts) -> Option<Reading> {
    let has = |allergen| {
        let mut lines = facts.formula.batter();
        lines.any(|line| line.ingredient.allergens.contains(&allergen))
    };
    let is_there = has(Allergen::Wheat) || has(Allergen::Gluten);
    absent(
        facts,
        is_there,
        By::Reckoned,
        "Nothing in it brings gluten.",
    )
}

/// Whether such a cake is beaten or creamed.
pub fn air(facts: &Facts) -> Option<Reading> {
    let is_beaten = facts.kind.leans_on_air() || facts.kind.is_creamed();
    let words = format!("{} are stirred.", show::sentence(facts.kind.words()));
    absent(facts, is_beaten, By::Usual, &words)
}

/// Whether there is fruit, or what else may sink.
pub fn fruit(facts: &Facts) -> Option<Reading> {
    let mut lines = facts.formula.batter();
    let is_there = lines.any(|line| {
        matches!(
            line.ingredient.group,
            Group::Fruit
                | Group::DriedFruit
                | Group::Vegetable
                | Group::Nut
                | Group::Chocolate
                | Group::Jam
        )
    });
    absent(
        facts,
        is_there,
        By::Reckoned,
        "There is no fruit, nut or chocolate in it.",
    )
}

/// Whether there is soda or powder.
pub fn leavened(facts: &Facts) -> Option<Reading> {
    absent(
        facts,
        facts.is_leavened(),
        By::Reckoned,
        "There is no soda or powder in it.",
    )
}

/// From so much of it on aluminium may be tasted, per cent of flour, and how well that is known (common practice, no source).
const TASTED: [f64; 2] = [5.5, 0.8];

/// Powder with aluminium; of a powder whose kind is not said nothing is known.
pub fn aluminium(facts: &Facts) -> Option<Reading> {
    let percent = |named: &str| facts.percent_of(|line| line.ingredient.key == named);
    if percent("baking_powder") > 0.0 {
        return None;
    }
    let known = percent("baking_powder_aluminium");
    if known <= 0.0 {
        return absent(
            facts,
            false,
            By::Reckoned,
            "No powder with aluminium is in it.",
        );
    }
    Reading::new(
        chance_above(known, TASTED[1], TASTED[0]),
        By::Reckoned,
        format!(
            "Powder with aluminium is {} of the flour; some taste it from {} % on.",
            show::percent(Share::percent(known)),
            show::plain(TASTED[0])
        ),
    )
}

/// Baker's ammonia where it stays.
pub fn ammonia(facts: &Facts) -> Option<Reading> {
    match (facts.ammonia().is_empty(), facts.kind) {
        (true, _) => absent(
            facts,
            false,
            By::Reckoned,
            "There is no baker's ammonia in it.",
        ),
        (false, Kind::Cookie) => None,
        (false, kind) => Reading::new(
            1.0,
            By::Reckoned,
            format!(
                "There is baker's ammonia in it, and {} stay moist.",
                kind.words()
            ),
        ),
    }
}

/// Seeds and carrots that turn green.
pub fn seed_colour(facts: &Facts) -> Option<Reading> {
    colour(
        facts,
        &["Sunflower seeds", "Carrots"],
        "There are no sunflower seeds and no carrots in it.",
    )
}

/// Berries, walnuts and beetroot that turn.
pub fn berry_colour(facts: &Facts) -> Option<Reading> {
    colour(
        facts,
        &["Berries", "Walnuts", "Beetroot"],
        "There are no berries, walnuts or beetroot in it.",
    )
}

fn colour(facts: &Facts, names: &[&str], none: &str) -> Option<Reading> {
    let (chance, there) = chance_turned(facts, names)?;
    let Some(name) = there else {
        return absent(facts, false, By::Reckoned, none);
    };
    let ph = facts.bowl?.ph.mean.value();
    Reading::new(
        chance,
        By::Reckoned,
        format!(
            "{name} are in it, and its crumb is reckoned at pH {}.",
            show::ph(ph)
        ),
    )
}
