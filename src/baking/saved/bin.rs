//! What was removed, and until when it can be put back.

use super::{Limits, Record};
use serde::{Deserialize, Serialize};

/// A day, in milliseconds.
const DAY: u64 = 24 * 60 * 60 * 1000;
/// How long a removed record stays in the bin, in milliseconds: 30 days.
const KEPT_FOR: u64 = 30 * DAY;

/// A record that was removed, as it stood.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct BinRecord {
    /// The name that its record had.
    pub id: String,
    /// What it was called.
    pub title: String,
    /// When it was removed, in milliseconds since 1970 by the clock of the device.
    pub removed: u64,
    /// The record's text to the letter; it may be one that cannot be read.
    pub text: String,
}

impl BinRecord {
    /// Whether its time in the bin is over. A clock that was set back keeps it.
    pub fn is_over(&self, now: u64) -> bool {
        now.saturating_sub(self.removed) >= KEPT_FOR
    }

    /// How many days it still stays there, a day that has begun counted whole.
    pub fn days_left(&self, now: u64) -> u64 {
        KEPT_FOR
            .saturating_sub(now.saturating_sub(self.removed))
            .div_ceil(DAY)
    }
}

impl Record for BinRecord {
    const FORMAT: &'static str = "batterwright bin";
    const VERSION: u32 = 1;
    const LIMITS: Limits = Limits::BIN;
}
