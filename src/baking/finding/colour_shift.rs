//! Colours that turn with the crumb's pH.

use super::leavening::LIKELY;
use super::{Facts, Finding, Severity};
use crate::baking::balance::{Kind, is_alkalised, is_berry};
use crate::baking::ingredient::{Group, Ingredient};
use crate::baking::quantity::show;

/// What turns, above what pH, to what; and how that is said.
struct Colour {
    is: fn(&Ingredient) -> bool,
    name: &'static str,
    above: f64,
    turn: &'static str,
    to: &'static str,
}

const COLOURS: [Colour; 7] = [
    Colour {
        is: is_berry,
        name: "Berries",
        above: 7.2,
        turn: "turn",
        to: "blue-green",
    },
    Colour {
        is: |it| it.key.starts_with("sunflower_seed"),
        name: "Sunflower seeds",
        above: 8.0,
        turn: "turn",
        to: "green",
    },
    Colour {
        is: |it| it.key == "carrot",
        name: "Carrots",
        above: 8.0,
        turn: "turn",
        to: "green in spots",
    },
    Colour {
        is: |it| matches!(it.key, "walnuts" | "ground_walnuts"),
        name: "Walnuts",
        above: 7.5,
        turn: "turn",
        to: "blue-violet",
    },
    Colour {
        is: |it| it.key == "turmeric",
        name: "Turmeric",
        above: 8.0,
        turn: "turns",
        to: "orange-red",
    },
    Colour {
        is: |it| matches!(it.key, "beetroot" | "raw_beetroot"),
        name: "Beetroot",
        above: 8.0,
        turn: "turns",
        to: "brown",
    },
    Colour {
        is: |it| it.group == Group::Cocoa && !is_alkalised(it),
        name: "Cocoa",
        above: 8.0,
        turn: "turns",
        to: "red-brown",
    },
];

/// Below this share of the flour a colour is not seen; turmeric is seen at any: our own limit.
const SEEN: f64 = 1.0;

impl Colour {
    /// Whether there is enough of it to be seen.
    fn is_seen(&self, facts: &Facts) -> bool {
        let percent = facts.percent_of(|line| (self.is)(line.ingredient));
        percent >= SEEN || (percent > 0.0 && self.name == "Turmeric")
    }
}

/// How likely one of the colours so named has turned, and which is there; none of them there has a chance of nothing.
/// `None` where no pH is known.
pub(in crate::baking) fn chance_turned(
    facts: &Facts,
    names: &[&str],
) -> Option<(f64, Option<&'static str>)> {
    let there = COLOURS
        .iter()
        .filter(|colour| names.contains(&colour.name) && colour.is_seen(facts));
    let Some(colour) = there.min_by(|a, b| a.above.total_cmp(&b.above)) else {
        return Some((0.0, None));
    };
    Some((
        1.0 - facts.bowl?.chance_below(colour.above),
        Some(colour.name),
    ))
}

/// Checks each colour against its own limit.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let Some(bowl) = facts.bowl else {
        return Vec::new();
    };
    COLOURS
        .iter()
        .filter(|colour| colour.is_seen(facts))
        // Devil's food is red-brown by intent.
        .filter(|colour| {
            colour.name != "Cocoa" || !matches!(facts.kind, Kind::DevilsFood | Kind::DarkChocolate)
        })
        .filter(|colour| 1.0 - bowl.chance_below(colour.above) >= LIKELY)
        .map(|colour| Finding {
            name: "colour_shift",
            severity: if colour.name == "Cocoa" {
                Severity::Note
            } else {
                Severity::Look
            },
            title: format!("{} will turn {}", colour.name, colour.to),
            sentence: format!(
                "{} {} {} above pH {}; this crumb is reckoned at {}. It is safe to eat. Less soda keeps the colour.",
                colour.name,
                colour.turn,
                colour.to,
                show::ph(colour.above),
                show::ph(bowl.ph.mean.value())
            ),
            why: "Plant pigments change with alkali: anthocyanins, chlorogenic acid, curcumin. Specks of unmixed soda do the same in a good crumb.",
            limit: format!(
                "Above pH {}: McGee, On food and cooking, and textbooks, from memory.",
                show::ph(colour.above)
            ),
            lines: facts.lines_of(|line| (colour.is)(line.ingredient)),
            remedies: Vec::new(),
        })
        .collect()
}
