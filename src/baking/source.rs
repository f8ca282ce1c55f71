//! Where a figure is from, and how far to trust it. Every reference stands once, in `sources.csv`.

use super::packed;
use std::sync::OnceLock;

/// A published or named source of figures.
#[derive(Debug, PartialEq, Eq)]
pub struct Source {
    /// The name used in the tables.
    pub key: &'static str,
    /// The reference in full.
    pub citation: &'static str,
}

/// How a figure came to stand in a table.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize,
)]
#[serde(rename_all = "snake_case")]
pub enum Confidence {
    /// Read in the source named.
    Published,
    /// Worked out from published figures.
    Derived,
    /// Common practice, no source.
    Practice,
    /// From memory; the source named is where it is likely to stand.
    Memory,
    /// The baker's own, from a packet or a scale. No row of the tables has it.
    Own,
}

impl Confidence {
    /// In words, for the page.
    pub fn words(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::Derived => "worked out from published figures",
            Self::Practice => "common practice, no source",
            Self::Memory => "from memory",
            Self::Own => "your own",
        }
    }
}

/// A source and how far a figure taken from it can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cited {
    /// The source.
    pub source: &'static Source,
    /// How the figure came to stand in the table.
    pub confidence: Confidence,
}

impl Cited {
    /// A source and its trust, in words; once, where the source is named for nothing but that.
    pub fn words(self) -> String {
        let citation = self.source.citation;
        match (self.source.key, self.confidence) {
            ("practice", Confidence::Practice)
            | ("memory", Confidence::Memory)
            | ("derivation", Confidence::Derived)
            | ("own", Confidence::Own) => citation.to_owned(),
            (_, confidence) => format!("{citation} ({})", confidence.words()),
        }
    }
}

/// Every source, in the order of their keys.
pub fn all() -> &'static [Source] {
    static SOURCES: OnceLock<Vec<Source>> = OnceLock::new();
    SOURCES.get_or_init(|| {
        packed::rows(0)
            .map(|mut cells| Source {
                key: cells.text(),
                citation: cells.text(),
            })
            .collect()
    })
}

include!(concat!(env!("OUT_DIR"), "/confidences.rs"));

/// A packed cell: a source's place and a confidence's, apart by a blank.
pub(super) fn cited(cell: &str) -> Cited {
    let [place, confidence] = packed::figures(cell);
    let confidence = CONFIDENCES.get(confidence as usize).copied();
    Cited {
        source: at(place as usize),
        confidence: confidence.unwrap_or(Confidence::Memory),
    }
}

/// The source at a place of the packed table.
pub(super) fn at(place: usize) -> &'static Source {
    let all = all();
    &all[place.min(all.len() - 1)]
}

/// The source of that key.
pub fn by_key(key: &str) -> Option<&'static Source> {
    all().iter().find(|source| source.key == key)
}
