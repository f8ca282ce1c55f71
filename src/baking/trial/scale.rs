//! Short scales that a cake is scored by.
//!
//! What is scored follows the AACC's approved method for cakes (10-90.01: volume, contour, cells and grain, texture, colour,
//! flavour; from memory), with sourness and sweetness beside it. That method gives points of a hundred by a trained
//! panel; the five steps and their words are our own, for one baker and a slice. On most scales the middle is what a cake
//! is usually wanted to be; what one wants is the baker's to say.

use serde::{Deserialize, Serialize};

/// One thing that is scored, from 1 to 5.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Scale {
    /// How far it rose.
    Volume,
    /// The shape of its top.
    Contour,
    /// The size and evenness of its cells.
    Grain,
    /// How it gives to the teeth.
    Texture,
    /// How wet it is in the mouth.
    Moistness,
    /// The colour of its crust.
    Crust,
    /// The colour of its crumb.
    Crumb,
    /// How sour it tastes.
    Sourness,
    /// How sweet it tastes.
    Sweetness,
    /// How well it tastes.
    Flavour,
}

impl Scale {
    /// Every scale, in the order in which a cake is looked at, cut and eaten.
    pub const ALL: [Self; 10] = [
        Self::Volume,
        Self::Contour,
        Self::Crust,
        Self::Grain,
        Self::Crumb,
        Self::Texture,
        Self::Moistness,
        Self::Sweetness,
        Self::Sourness,
        Self::Flavour,
    ];

    /// What is scored.
    pub fn words(self) -> &'static str {
        match self {
            Self::Volume => "Volume",
            Self::Contour => "Contour of the top",
            Self::Grain => "Grain",
            Self::Texture => "Texture",
            Self::Moistness => "Moistness",
            Self::Crust => "Crust colour",
            Self::Crumb => "Crumb colour",
            Self::Sourness => "Sourness",
            Self::Sweetness => "Sweetness",
            Self::Flavour => "Flavour",
        }
    }

    /// What each step is called, from 1 to 5.
    pub fn steps(self) -> [&'static str; 5] {
        match self {
            Self::Volume => ["very low", "low", "good", "high", "very high"],
            Self::Contour => ["sunken", "dipped", "level", "domed", "peaked"],
            Self::Grain => ["very coarse", "coarse", "even", "fine", "tight"],
            Self::Texture => ["rubbery", "firm", "tender", "very tender", "falls apart"],
            Self::Moistness => ["dry", "a little dry", "moist", "very moist", "wet, pasty"],
            Self::Crust => ["pale", "light", "golden", "dark", "burnt"],
            Self::Crumb => ["grey or dull", "pale", "clean", "deep", "tinted"],
            Self::Sourness => ["none", "faint", "balanced", "sour", "too sour"],
            Self::Sweetness => ["none", "faint", "balanced", "sweet", "too sweet"],
            Self::Flavour => ["poor", "plain", "fair", "good", "very good"],
        }
    }
}
