//! The trade's rules of balance: how the classes of a formula stand to one another, by the way that a cake is mixed.

use super::class::ratio;
use super::{Class, Count, Kind, Stands};
use crate::baking::estimate::Estimate;
use crate::baking::quantity::{Mass, Share, show};

/// A rule of a kind: one sum of classes against another.
#[derive(Debug, PartialEq)]
pub struct Rule {
    /// What stands to what: "egg to fat".
    pub words: &'static str,
    over: &'static [Part],
    under: &'static [Part],
    /// The least ratio; `None` where the rule sets none.
    pub low: Option<f64>,
    /// The most.
    pub high: Option<f64>,
    /// Whose rule it is, and how far to trust it.
    pub source: &'static str,
}

/// A rule with a formula's own ratio.
#[derive(Clone, Debug, PartialEq)]
pub struct Ruled {
    /// The rule.
    pub rule: &'static Rule,
    /// The ratio, as a fraction, with its spread.
    pub ratio: Estimate<Share>,
    /// The lines of both its sides, flour left out.
    pub lines: Vec<usize>,
}

impl Rule {
    /// Its limits in words: "100 % or more".
    pub fn limits(&self) -> String {
        let percent = |limit: f64| show::percent(Share::fraction(limit));
        match (self.low, self.high) {
            (Some(low), Some(high)) => format!("{} to {}", percent(low), percent(high)),
            (Some(low), None) => format!("{} or more", percent(low)),
            (None, Some(high)) => format!("{} or less", percent(high)),
            (None, None) => String::new(),
        }
    }
}

impl Ruled {
    /// Where the ratio stands to the rule's limits.
    pub fn stands(&self) -> Stands {
        Stands::of(
            &self.ratio,
            Share::fraction(self.rule.low.unwrap_or(0.0)),
            Share::fraction(self.rule.high.unwrap_or(f64::INFINITY)),
        )
    }
}

/// What a rule adds up.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Part {
    Flour,
    Of(Class),
}

const FLOUR: &[Part] = &[Part::Flour];
const SUGAR: &[Part] = &[Part::Of(Class::Sugar)];
const FAT: &[Part] = &[Part::Of(Class::Fat)];
const EGG: &[Part] = &[Part::Of(Class::Egg)];
const MOIST: &[Part] = &[Part::Of(Class::Egg), Part::Of(Class::Liquid)];

const TEXTBOOKS: &str = "Rules of balance of Gisslen and Sultan.";

const EGG_TO_FAT: Rule = Rule {
    words: "egg to fat",
    over: EGG,
    under: FAT,
    low: Some(1.0),
    high: None,
    source: TEXTBOOKS,
};

const MOIST_TO_SUGAR: Rule = Rule {
    words: "egg and liquid to sugar",
    over: MOIST,
    under: SUGAR,
    low: Some(1.0),
    high: None,
    source: TEXTBOOKS,
};

const FIRM_TO_TENDER: Rule = Rule {
    words: "flour and egg to sugar and fat",
    over: &[Part::Flour, Part::Of(Class::Egg)],
    under: &[Part::Of(Class::Sugar), Part::Of(Class::Fat)],
    low: Some(0.85),
    high: Some(1.15),
    source: "Textbook balance of what makes firm and what makes tender, from memory.",
};

const CREAMED: &[Rule] = &[
    Rule {
        words: "sugar to flour",
        over: SUGAR,
        under: FLOUR,
        low: None,
        high: Some(1.0),
        source: TEXTBOOKS,
    },
    EGG_TO_FAT,
    MOIST_TO_SUGAR,
    FIRM_TO_TENDER,
];

/// Flours without gluten are given more egg, so that firm and tender don't weigh alike.
const GLUTEN_FREE: &[Rule] = &[EGG_TO_FAT, MOIST_TO_SUGAR];

const HIGH_RATIO: &[Rule] = &[
    Rule {
        words: "sugar to flour",
        over: SUGAR,
        under: FLOUR,
        low: Some(1.1),
        high: Some(1.6),
        source: TEXTBOOKS,
    },
    EGG_TO_FAT,
    MOIST_TO_SUGAR,
    FIRM_TO_TENDER,
];

/// Cocoa is bitter and takes up water: sugar may go to 180 % beside it.
const HIGH_RATIO_COCOA: &[Rule] = &[
    Rule {
        words: "sugar to flour",
        over: SUGAR,
        under: FLOUR,
        low: Some(1.1),
        high: Some(1.8),
        source: TEXTBOOKS,
    },
    EGG_TO_FAT,
    MOIST_TO_SUGAR,
    FIRM_TO_TENDER,
];

const ANGEL: &[Rule] = &[
    Rule {
        words: "egg white to sugar",
        over: EGG,
        under: SUGAR,
        low: Some(0.9),
        high: Some(1.1),
        source: "Formulas in the manner of AACC method 10-15, from memory.",
    },
    Rule {
        words: "flour to sugar",
        over: FLOUR,
        under: SUGAR,
        low: Some(0.3),
        high: Some(0.4),
        source: "Formulas in the manner of AACC method 10-15, from memory.",
    },
];

const GENOISE: &[Rule] = &[Rule {
    words: "egg to sugar",
    over: EGG,
    under: SUGAR,
    low: Some(1.2),
    high: None,
    source: "Common practice, no source.",
}];

const OIL: &[Rule] = &[Rule {
    words: "all water to sugar",
    over: &[Part::Of(Class::Water)],
    under: SUGAR,
    low: Some(0.9),
    high: None,
    source: "Common practice, no source.",
}];

/// The rules of a kind; none where the trade has none.
fn rules_of(kind: Kind) -> &'static [Rule] {
    match kind {
        Kind::Pound | Kind::Victoria | Kind::YellowLayer | Kind::WhiteLayer | Kind::FruitCake => {
            CREAMED
        }
        Kind::GlutenFree => GLUTEN_FREE,
        Kind::HighRatioYellow | Kind::HighRatioWhite => HIGH_RATIO,
        Kind::DevilsFood => HIGH_RATIO_COCOA,
        Kind::AngelFood => ANGEL,
        Kind::Genoise => GENOISE,
        Kind::Oil | Kind::PlantOil | Kind::Pumpkin => OIL,
        _ => &[],
    }
}

/// The rules of a kind with a formula's ratios; a rule that would divide by nothing is left out.
pub fn rules(kind: Kind, counts: &[Count], flour: Estimate<Mass>) -> Vec<Ruled> {
    let sum = |parts: &[Part]| -> Estimate<Mass> {
        let parts: Vec<Estimate<Mass>> = parts
            .iter()
            .map(|part| weight(*part, counts, flour))
            .collect();
        Estimate::sum(&parts)
    };
    rules_of(kind)
        .iter()
        .filter_map(|rule| {
            Some(Ruled {
                rule,
                ratio: ratio(&sum(rule.over), &sum(rule.under))?,
                lines: lines(rule, counts),
            })
        })
        .collect()
}

fn weight(part: Part, counts: &[Count], flour: Estimate<Mass>) -> Estimate<Mass> {
    match part {
        Part::Flour => flour,
        Part::Of(class) => counts
            .iter()
            .find(|count| count.class == class)
            .map_or(Estimate::exact(Mass::ZERO), |count| count.grams),
    }
}

fn lines(rule: &Rule, counts: &[Count]) -> Vec<usize> {
    let mut lines: Vec<usize> = rule
        .over
        .iter()
        .chain(rule.under)
        .flat_map(|part| counts.iter().filter(|count| Part::Of(count.class) == *part))
        .flat_map(|count| count.lines.clone())
        .collect();
    lines.sort_unstable();
    lines.dedup();
    lines
}
