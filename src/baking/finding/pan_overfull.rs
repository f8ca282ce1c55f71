//! A batter that has no room to rise.

use super::{Facts, Finding, Severity};
use crate::baking::pan::Origin;
use crate::baking::quantity::{Share, show};

/// Above this a batter runs over as it rises, below the other it bakes to a biscuit: fills of 1/3 to 3/4 of
/// the depth are usual for everything but angel food and rich fruit cake (textbook charts, from memory).
const FULL: f64 = 0.80;
const SHALLOW: f64 = 0.25;

/// Checks the fill of the pan that is going to be used.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let Some(fill) = facts.fit.other_fill.or(facts.fit.own_fill) else {
        return Vec::new();
    };
    let share = fill.share.mean.to_fraction();
    // A depth that nobody named is a guess, and a fault is not built on a guess.
    let guessed = facts.fit.other_fill.is_none()
        && matches!(facts.fit.origin, Origin::Named { depth: false, .. });
    let at = format!(
        "The batter stands at {} of the pan's {}depth",
        show::percent(fill.share.mean),
        if guessed { "usual " } else { "" },
    );
    let (severity, title, sentence) = if share > 1.0 {
        (
            if guessed {
                Severity::Look
            } else {
                Severity::Fault
            },
            "More batter than the pan holds",
            format!(
                "{at}: it runs over before it rises. Take more pans, or a smaller part of the recipe."
            ),
        )
    } else if share > FULL {
        (
            Severity::Look,
            "Pan too full",
            format!(
                "{at}; most cakes want two thirds and no more than {}. Bake the rest in cups.",
                show::percent(Share::fraction(FULL))
            ),
        )
    } else if share < SHALLOW {
        (
            Severity::Look,
            "Shallow in the pan",
            format!(
                "{at}: it bakes fast and dry. Look long before the time, or take a smaller pan."
            ),
        )
    } else {
        return Vec::new();
    };
    vec![Finding {
        name: "pan_overfull",
        severity,
        title: title.into(),
        sentence: if guessed {
            format!(
                "{sentence} The text does not say how deep the pan is: measure yours and write it in."
            )
        } else {
            sentence
        },
        why: "Batter needs room to rise, and a depth that lets the middle set before the edge dries.",
        limit: "Fill from 25 to 80 % of the depth: textbook charts, from memory.".into(),
        lines: Vec::new(),
        remedies: Vec::new(),
    }]
}
