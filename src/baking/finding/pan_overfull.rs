//! A batter that has no room to rise, or so much that it dries.

use super::{Facts, Finding, Severity};
use crate::baking::pan::{Fill, Origin, batter_of};
use crate::baking::quantity::{LengthUnit, Share, show};

/// Above this a batter runs over as it rises, below the other it bakes to a biscuit: fills of 1/3 to 3/4 of
/// the depth are usual for everything but angel food and rich fruit cake (textbook charts, from memory).
const FULL: f64 = 0.80;
pub(in crate::baking) const SHALLOW: f64 = 0.25;
/// The crumb that is expected, against what the pan holds at the brim: 0.85 to 1.10 is wanted (worked out from specific
/// volumes of baked cakes, from memory); a crumb that fills less than half of it is a thin layer in a deep pan.
pub(in crate::baking) const BAKED_OVER: f64 = 1.10;
pub(in crate::baking) const BAKED_SHALLOW: f64 = 0.5;

/// Checks the fill of the pans that are going to be used; the worst of them is told.
pub fn check(facts: &Facts) -> Vec<Finding> {
    let (used, guessed, full) = (used(facts), is_guessed(facts), full(facts));
    let judged = used.iter().filter_map(|fill| {
        let named =
            (used.len() > 1).then(|| fill.pan.one().label(fill.pan.unit(LengthUnit::Centimetres)));
        judged(fill, full, guessed, named)
    });
    let worst = judged.min_by(|one, other| {
        let order = |judged: &Judged| (judged.severity, -judged.off);
        let (one, other) = (order(one), order(other));
        one.0.cmp(&other.0).then(one.1.total_cmp(&other.1))
    });
    worst
        .map(|worst| worst.finding(full, guessed))
        .into_iter()
        .collect()
}

/// The pans that are going to be used.
pub(in crate::baking) fn used(facts: &Facts) -> Vec<Fill> {
    match &facts.fit.split {
        Some(split) => split.parts.iter().map(|part| part.fill).collect(),
        None => facts.fit.own_fill.into_iter().collect(),
    }
}

/// Whether nobody named the depth: a fault is not built on a guess.
pub(in crate::baking) fn is_guessed(facts: &Facts) -> bool {
    let fit = facts.fit;
    fit.shelf.is_empty() && matches!(fit.origin, Origin::Named { depth: false, .. })
}

/// The highest share of the depth: that of most cakes, or the kind's own where that is more.
pub(in crate::baking) fn full(facts: &Facts) -> f64 {
    let usual = batter_of(facts.kind).fill;
    usual.map_or(FULL, |fill| fill.high.to_fraction().max(FULL))
}

/// What is wrong with one pan's fill.
struct Judged {
    severity: Severity,
    title: &'static str,
    sentence: String,
    /// How far off it is, so that the worst can be told.
    off: f64,
    by_crumb: bool,
}

fn judged(fill: &Fill, full: f64, guessed: bool, named: Option<String>) -> Option<Judged> {
    let share = fill.share.mean.to_fraction();
    let of = named.map_or(String::new(), |label| format!(" in the {label}"));
    let at = format!(
        "The batter{of} stands at {} of the pan's {}depth",
        show::percent(fill.share.mean),
        if guessed { "usual " } else { "" },
    );
    let look = |title, sentence, off, by_crumb| {
        Some(Judged {
            severity: Severity::Look,
            title,
            sentence,
            off,
            by_crumb,
        })
    };
    if share > 1.0 {
        let sentence = format!(
            "{at}: it runs over before it rises. Take more pans, or a smaller part of the recipe."
        );
        return Some(Judged {
            severity: if guessed {
                Severity::Look
            } else {
                Severity::Fault
            },
            title: "More batter than the pan holds",
            sentence,
            off: share,
            by_crumb: false,
        });
    }
    if let Some(line) = fill
        .pan
        .fill_line
        .filter(|line| fill.depth.mean > *line * 1.001)
    {
        let sentence = format!(
            "{at}, above its fill line at {}. Take out what is above it.",
            show::percent(Share::fraction(line / fill.pan.depth))
        );
        return look("Above the fill line", sentence, share, false);
    }
    if let Some(baked) = fill.baked {
        let of_brim = baked.of_brim.mean.to_fraction();
        let expected = format!(
            "{at}, and the crumb is expected to come to {} of what the pan holds at the brim",
            show::percent_with_range(&baked.of_brim),
        );
        return if of_brim > BAKED_OVER {
            let sentence = format!("{expected}: it may run over. Bake the rest in cups.");
            look("May run over", sentence, of_brim, true)
        } else if of_brim < BAKED_SHALLOW {
            let sentence = format!(
                "{expected}: it bakes fast and dry. Look long before the time, or take a smaller pan."
            );
            look("Shallow in the pan", sentence, 1.0 - of_brim, true)
        } else {
            None
        };
    }
    if share > full {
        let sentence = format!(
            "{at}; most cakes want two thirds and no more than {}. Bake the rest in cups.",
            show::percent(Share::fraction(full))
        );
        look("Pan too full", sentence, share, false)
    } else if share < SHALLOW {
        let sentence = format!(
            "{at}: it bakes fast and dry. Look long before the time, or take a smaller pan."
        );
        look("Shallow in the pan", sentence, 1.0 - share, false)
    } else {
        None
    }
}

impl Judged {
    fn finding(self, full: f64, guessed: bool) -> Finding {
        let limit = match self.by_crumb {
            true => format!(
                "Baked volume from {} to {} of the brim: worked out from specific volumes of baked cakes, from memory.",
                show::percent(Share::fraction(BAKED_SHALLOW)),
                show::percent(Share::fraction(BAKED_OVER)),
            ),
            false => format!(
                "Fill from {} to {} of the depth: textbook charts, from memory.",
                show::percent(Share::fraction(SHALLOW)),
                show::percent(Share::fraction(full)),
            ),
        };
        Finding {
            name: "pan_overfull",
            severity: self.severity,
            title: self.title.into(),
            sentence: if guessed {
                format!(
                    "{} The text does not say how deep the pan is: measure yours and write it in.",
                    self.sentence
                )
            } else {
                self.sentence
            },
            why: "Batter needs room to rise, and a depth that lets the middle set before the edge dries.",
            limit,
            lines: Vec::new(),
            remedies: Vec::new(),
        }
    }
}
