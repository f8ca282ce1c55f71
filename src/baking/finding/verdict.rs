//! A verdict: one word, one sentence, and how sure.

use serde::Serialize;

/// A judgement in one word and one sentence.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Verdict {
    /// Which.
    pub kind: VerdictKind,
    /// In a word or two: "Short of soda".
    pub title: String,
    /// In a sentence, with figures.
    pub sentence: String,
    /// How sure: "Sure", "Likely", "Too close to call".
    pub sure: String,
    /// Whether it is worth a note and no alarm: soda to spare that is meant, a low crumb on weak evidence.
    pub mild: bool,
}

/// The kinds of verdict.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum VerdictKind {
    /// More acid than the soda answers, or too little gas.
    Short,
    /// They agree.
    Agreed,
    /// More soda than the acid takes, or too much gas.
    Spare,
    /// The spread covers both sides of a limit.
    TooClose,
    /// Something needed is not known.
    CannotTell,
}
