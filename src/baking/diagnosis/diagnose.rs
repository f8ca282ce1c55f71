//! The causes of what was seen, each with the evidence that made its chance.

use super::figures::{Reading, reading};
use super::odds::{OTHER, OTHERWISE, chances, shows};
use super::table::{Cause, Sign, causes, sign};
use super::{Known, Seen};
use crate::baking::source::Source;

/// What a diagnosis comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Diagnosis {
    /// The signs that were told, each once, in the order of the tables.
    pub signs: Vec<&'static Sign>,
    /// Keys that are no sign.
    pub unknown: Vec<String>,
    /// Every cause, the likeliest first.
    pub ranked: Vec<Ranked>,
    /// The chance of something that is not among them.
    pub other: f64,
}

/// A cause with its chance.
#[derive(Clone, Debug, PartialEq)]
pub struct Ranked {
    /// The cause.
    pub cause: &'static Cause,
    /// From 0 to 1.
    pub chance: f64,
    /// What the signs and the figure made of it.
    pub evidence: Evidence,
}

/// The evidence for and against a cause.
#[derive(Clone, Debug, PartialEq)]
pub struct Evidence {
    /// Each sign.
    pub signs: Vec<SignEvidence>,
    /// The figure; `None` where none is known.
    pub figure: Option<Reading>,
}

/// What a sign says of a cause.
#[derive(Clone, Debug, PartialEq)]
pub struct SignEvidence {
    /// The sign.
    pub sign: &'static Sign,
    /// The tables that name the cause for it.
    pub sources: &'static [&'static Source],
    /// What it multiplies the odds against something else by.
    pub factor: f64,
}

impl Evidence {
    /// All factors together.
    pub fn factor(&self) -> f64 {
        let figure = self.figure.as_ref().map_or(1.0, Reading::factor);
        let signs = self.signs.iter().map(|sign| sign.factor);
        signs.product::<f64>() * figure
    }

    /// Whether a table names the cause for any of the signs.
    pub fn is_named(&self) -> bool {
        self.signs.iter().any(|sign| !sign.sources.is_empty())
    }
}

impl Ranked {
    /// Whether a figure speaks so clearly against it that it is ruled out.
    pub fn is_ruled_out(&self) -> bool {
        let figure = self.evidence.figure.as_ref();
        figure.is_some_and(|reading| reading.factor() <= RULED_OUT)
    }
}

/// A figure that makes a cause five times less likely rules it out (our own limit).
const RULED_OUT: f64 = 0.2;

/// Weighs every cause; without signs each has its prior, and nothing is to be built on that.
pub fn diagnose(known: &Known, seen: &Seen) -> Diagnosis {
    let mut signs: Vec<&'static Sign> = Vec::new();
    let mut unknown = Vec::new();
    let told = seen.signs.iter().map(String::as_str);
    for key in told.chain(seen.measured.shape()) {
        match sign(key) {
            Some(sign) if signs.iter().any(|other| other.key == sign.key) => {}
            Some(sign) => signs.push(sign),
            None => unknown.push(key.to_owned()),
        }
    }
    signs.sort_by_key(|sign| sign.key);
    let mut ranked: Vec<Ranked> = causes()
        .iter()
        .enumerate()
        .map(|(place, cause)| Ranked {
            cause,
            chance: 0.0,
            evidence: Evidence {
                signs: signs.iter().map(|sign| evidence(sign, place)).collect(),
                figure: reading(cause.figure, known),
            },
        })
        .collect();
    let weights: Vec<f64> = ranked
        .iter()
        .map(|ranked| ranked.cause.prior * ranked.evidence.factor())
        .collect();
    let (chances, other) = chances(&weights, OTHER);
    for (ranked, chance) in ranked.iter_mut().zip(chances) {
        ranked.chance = chance;
    }
    ranked.sort_by(|a, b| b.chance.total_cmp(&a.chance));
    Diagnosis {
        signs,
        unknown,
        ranked,
        other,
    }
}

fn evidence(sign: &'static Sign, cause: usize) -> SignEvidence {
    let sources = sign.sources(cause);
    SignEvidence {
        sign,
        sources,
        factor: shows(sources.len(), sign.tables) / OTHERWISE,
    }
}
