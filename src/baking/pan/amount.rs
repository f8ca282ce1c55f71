//! How much of a recipe is baked: as it is chosen, as it is typed, as a factor.

use super::read::plain_number;
use serde::{Deserialize, Serialize};

/// How the amount is told.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HowMuch {
    /// As much as fills the pans as full as the recipe fills its own.
    #[default]
    AsFull,
    /// The recipe as it is.
    Recipe,
    /// Half of it.
    Half,
    /// A number of times.
    Times,
    /// A number of eggs.
    Eggs,
}

/// How much is baked, as typed. What is typed stays where another way is chosen.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct AmountEntry {
    /// How it is told.
    pub how: HowMuch,
    /// How many times, or how many eggs.
    pub text: String,
}

/// How much is baked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Wanted {
    /// As much as fills the pans as full as the recipe fills its own.
    AsFull,
    /// So many times the recipe.
    Times(f64),
    /// So many eggs.
    Eggs(f64),
}

/// The smallest part of a recipe and the largest multiple that a bench may want.
const TIMES: std::ops::RangeInclusive<f64> = 0.02..=100.0;
/// The same in eggs.
const EGGS: std::ops::RangeInclusive<f64> = 0.1..=1000.0;

impl HowMuch {
    /// Every way, in the order offered.
    pub const ALL: [Self; 5] = [
        Self::AsFull,
        Self::Recipe,
        Self::Half,
        Self::Times,
        Self::Eggs,
    ];

    /// What it is called.
    pub fn words(self) -> &'static str {
        match self {
            Self::AsFull => "As full as the recipe's own pan",
            Self::Recipe => "The recipe as it is",
            Self::Half => "Half the recipe",
            Self::Times => "So many times the recipe",
            Self::Eggs => "By a number of eggs",
        }
    }

    /// Whether it takes a figure.
    pub fn is_typed(self) -> bool {
        matches!(self, Self::Times | Self::Eggs)
    }
}

impl AmountEntry {
    /// So many eggs.
    pub fn eggs(count: u32) -> Self {
        Self {
            how: HowMuch::Eggs,
            text: count.to_string(),
        }
    }

    /// The amount that is meant.
    ///
    /// # Errors
    /// A sentence where a figure is wanted and what is typed is none, or none that a bench may want.
    pub fn read(&self) -> Result<Wanted, String> {
        let typed = self.text.trim();
        let figure = |range: std::ops::RangeInclusive<f64>, wanted: &str| {
            let found = plain_number(typed).filter(|figure| range.contains(figure));
            found.ok_or_else(|| match typed {
                "" => format!("Nothing is written here: write {wanted}."),
                _ => format!("\"{typed}\" does not fit: write {wanted}."),
            })
        };
        match self.how {
            HowMuch::AsFull => Ok(Wanted::AsFull),
            HowMuch::Recipe => Ok(Wanted::Times(1.0)),
            HowMuch::Half => Ok(Wanted::Times(0.5)),
            HowMuch::Times => figure(
                TIMES,
                "how many times the recipe, from 0.02 to 100, such as 1.5 or 2/3",
            )
            .map(Wanted::Times),
            HowMuch::Eggs => {
                figure(EGGS, "how many eggs, from 0.1 to 1,000, such as 3").map(Wanted::Eggs)
            }
        }
    }
}
