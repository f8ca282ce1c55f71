//! Kitchen timers. Each knows the moment when it rings, so that a locked screen, a reload or a closed page loses no second.

use serde::{Deserialize, Serialize};

/// The timers of the bench, in the order in which they were started.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Timers {
    /// Them.
    pub timers: Vec<Timer>,
}

/// One timer. Moments are in milliseconds since 1970, by the clock of the device.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Timer {
    /// Tells it from the others.
    pub id: u32,
    /// What it is for: "Bake".
    pub name: String,
    /// The recipe that it is for; empty where there is none.
    pub recipe: String,
    /// When it rings; of no account while it is stopped.
    pub rings: u64,
    /// What was left when it was stopped, in milliseconds; `None` while it runs.
    pub left: Option<u64>,
}

/// How many timers a bench keeps in mind.
pub const MOST: usize = 20;
/// The longest that a timer is set to, minutes.
pub const LONGEST: f64 = 48.0 * 60.0;
const MINUTE: f64 = 60_000.0;

impl Timer {
    /// Milliseconds until it rings; less than 0 is how long ago it rang.
    pub fn left_at(&self, now: u64) -> i64 {
        let left = match self.left {
            Some(left) => i128::from(left),
            None => i128::from(self.rings) - i128::from(now),
        };
        // A damaged record may hold any moment.
        left.clamp(i128::from(i64::MIN), i128::from(i64::MAX)) as i64
    }

    /// Whether it has rung, and nobody has put it away yet.
    pub fn is_due(&self, now: u64) -> bool {
        self.left.is_none() && self.left_at(now) <= 0
    }

    /// Whether it runs: neither stopped nor due.
    pub fn is_running(&self, now: u64) -> bool {
        self.left.is_none() && self.left_at(now) > 0
    }

    /// What is left of it as a clock shows it: "4:09", "1:04:09"; for one that has rung, how long ago: "2 min ago".
    pub fn shown(&self, now: u64) -> String {
        let left = self.left_at(now);
        if self.is_due(now) {
            return match left.unsigned_abs() / 60_000 {
                0 => "now".to_owned(),
                minutes if minutes < 120 => format!("{minutes} min ago"),
                minutes => format!("{} h ago", minutes / 60),
            };
        }
        // A second that has begun counts, so that 0:00 is the moment itself.
        let seconds = left.max(0).unsigned_abs().div_ceil(1000);
        let (hours, minutes, seconds) = (seconds / 3600, seconds / 60 % 60, seconds % 60);
        match hours {
            0 => format!("{minutes}:{seconds:02}"),
            hours => format!("{hours}:{minutes:02}:{seconds:02}"),
        }
    }

    /// Stops it, or lets a stopped one go on.
    pub fn turn(&mut self, now: u64) {
        match self.left {
            Some(left) => {
                self.rings = now.saturating_add(left);
                self.left = None;
            }
            None => self.left = Some(self.left_at(now).max(0).unsigned_abs()),
        }
    }

    /// Adds minutes; to one that has rung, from now on.
    pub fn add(&mut self, minutes: f64, now: u64) {
        let more = milliseconds(minutes);
        match &mut self.left {
            Some(left) => *left = left.saturating_add(more),
            None => self.rings = self.rings.max(now).saturating_add(more),
        }
    }
}

impl Timers {
    /// Starts a timer of so many minutes. False where there are too many, or it is no time to wait for.
    pub fn start(&mut self, name: &str, recipe: &str, minutes: f64, now: u64) -> bool {
        let is_time = minutes > 0.0 && minutes <= LONGEST;
        if !is_time || self.timers.len() >= MOST {
            return false;
        }
        let id = self.timers.iter().map(|timer| timer.id).max();
        self.timers.push(Timer {
            id: id.map_or(0, |id| id.wrapping_add(1)),
            name: name.trim().to_owned(),
            recipe: recipe.to_owned(),
            rings: now.saturating_add(milliseconds(minutes)),
            left: None,
        });
        true
    }

    /// The timer of that number.
    pub fn get_mut(&mut self, id: u32) -> Option<&mut Timer> {
        self.timers.iter_mut().find(|timer| timer.id == id)
    }

    /// Puts a timer away and gives it, so that it can be put back.
    pub fn put_away(&mut self, id: u32) -> Option<Timer> {
        let at = self.timers.iter().position(|timer| timer.id == id)?;
        Some(self.timers.remove(at))
    }

    /// Those that have rung.
    pub fn due(&self, now: u64) -> impl Iterator<Item = &Timer> {
        self.timers.iter().filter(move |timer| timer.is_due(now))
    }

    /// Whether any still runs.
    pub fn is_any_running(&self, now: u64) -> bool {
        self.timers.iter().any(|timer| timer.is_running(now))
    }
}

fn milliseconds(minutes: f64) -> u64 {
    (minutes * MINUTE).round().max(0.0) as u64
}
