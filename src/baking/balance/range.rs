//! What formulas of a kind hold of each class: ranges against the flour, from `ranges.csv`.
//!
//! The table's rows are of textbooks and the trade, each with its source. Where a kind stands for several formulas, its
//! row runs from the least of them to the most, and its typical figure is their mean. The ranges of water are worked
//! out: the water of the typical formula, its ends moved by those of egg, liquid and butter, as independent errors add.

use super::{Class, Kind};
use crate::baking::estimate::Estimate;
use crate::baking::packed::{self, Cells};
use crate::baking::quantity::Share;
use crate::baking::source::{self, Cited};
use std::sync::OnceLock;

include!(concat!(env!("OUT_DIR"), "/kinds.rs"));

/// What formulas of a kind hold of a class.
#[derive(Debug, PartialEq)]
pub struct Range {
    kind: Kind,
    class: Class,
    /// The least, against the flour.
    pub low: Share,
    /// The usual.
    pub typical: Share,
    /// The most.
    pub high: Share,
    /// Where they are from.
    pub cited: Cited,
    /// A word of explanation, empty where there is none.
    pub note: &'static str,
}

impl Range {
    /// Whether it is a range of that class.
    pub fn is_of(&self, class: Class) -> bool {
        self.class == class
    }
}

/// Where a figure with its spread stands to a range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stands {
    /// All of its spread lies below.
    Below,
    /// All of it lies within.
    Within,
    /// All of it lies above.
    Above,
    /// It reaches over an end.
    TooClose,
}

/// Rounding that is no difference, as a share of flour.
const ROUNDING: f64 = 1e-6;

impl Stands {
    /// Where a figure stands to two ends.
    pub fn of(figure: &Estimate<Share>, low: Share, high: Share) -> Self {
        let [low, high] = [low, high].map(Share::to_fraction);
        let (least, most) = (figure.low.to_fraction(), figure.high.to_fraction());
        if most < low - ROUNDING {
            Self::Below
        } else if least > high + ROUNDING {
            Self::Above
        } else if least >= low - ROUNDING && most <= high + ROUNDING {
            Self::Within
        } else {
            Self::TooClose
        }
    }

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Below => "below",
            Self::Within => "within",
            Self::Above => "above",
            Self::TooClose => "too close to call",
        }
    }
}

/// What formulas of a kind hold of a class; `None` where no formula of that kind is known, or none with that class.
pub fn range(kind: Kind, class: Class) -> Option<&'static Range> {
    all()
        .iter()
        .find(|range| (range.kind, range.class) == (kind, class))
}

fn all() -> &'static [Range] {
    static RANGES: OnceLock<Vec<Range>> = OnceLock::new();
    RANGES.get_or_init(|| packed::rows(5).map(unpacked).collect())
}

fn unpacked(mut cells: Cells) -> Range {
    let kind = cells.choice(KINDS).unwrap_or(Kind::Plain);
    let class = cells.choice(CLASSES).unwrap_or(Class::Water);
    let [low, typical, high] = cells.figures().map(Share::percent);
    Range {
        kind,
        class,
        low,
        typical,
        high,
        cited: source::cited(cells.text()),
        note: cells.text(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Figures of the textbooks' formulas, typed by hand.
    #[test]
    fn ranges_are_those_of_the_textbooks() {
        for (kind, class, low, typical, high) in [
            (Kind::Pound, Class::Sugar, 90.0, 100.0, 110.0),
            (Kind::HighRatioWhite, Class::Sugar, 110.0, 125.0, 160.0),
            (Kind::HighRatioYellow, Class::Liquid, 90.0, 100.0, 110.0),
            (Kind::Genoise, Class::Egg, 130.0, 150.0, 200.0),
            (Kind::AngelFood, Class::Egg, 250.0, 267.0, 300.0),
            (Kind::Chiffon, Class::Fat, 40.0, 50.0, 55.0),
            (Kind::DevilsFood, Class::Cocoa, 12.0, 17.0, 25.0),
            // 2 to 3 % of soda, and no powder, at 30 % of a powder.
            (Kind::PlantOil, Class::Leavening, 6.7, 8.3, 10.0),
            // Egg from 90 to 110 % brings 7.6 % of water less or more, butter 20 % less 3.6 %, milk 10 % more 8.8 %.
            (Kind::Pound, Class::Water, 96.0, 105.0, 116.0),
        ] {
            let range = range(kind, class).unwrap_or_else(|| panic!("{kind:?} {class:?}"));
            for (found, by_hand) in [
                (range.low, low),
                (range.typical, typical),
                (range.high, high),
            ] {
                assert!(
                    (found.to_percent() - by_hand).abs() < 1e-9,
                    "{kind:?} {class:?}: {found:?}"
                );
            }
        }
        assert_eq!(range(Kind::Cookie, Class::Sugar), None);
        assert_eq!(range(Kind::AngelFood, Class::Cocoa), None);
    }

    #[test]
    fn a_spread_over_an_end_is_too_close_to_call() {
        let figure = |low, mean, high| {
            let [low, mean, high] = [low, mean, high].map(Share::percent);
            Estimate::between(low, mean, high)
        };
        let stands = |low, mean, high| {
            Stands::of(
                &figure(low, mean, high),
                Share::percent(90.0),
                Share::percent(110.0),
            )
        };
        assert_eq!(stands(90.0, 100.0, 110.0), Stands::Within);
        assert_eq!(stands(89.0, 100.0, 109.0), Stands::TooClose);
        assert_eq!(stands(100.0, 109.0, 111.0), Stands::TooClose);
        assert_eq!(stands(70.0, 80.0, 89.9), Stands::Below);
        assert_eq!(stands(110.1, 120.0, 130.0), Stands::Above);
    }
}
