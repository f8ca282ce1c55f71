//! Long lists: more than a screen shows is drawn at once, the rest from frame to frame.

use crate::ui::device;
use leptos::prelude::*;

/// How much of a long list is drawn.
#[derive(Clone, Copy)]
pub struct BySlices {
    first: usize,
    slice: usize,
    /// How many rows are drawn.
    drawn: RwSignal<usize>,
    /// Whether more are being drawn.
    is_growing: StoredValue<bool>,
}

impl BySlices {
    /// So many rows at first, and so many more with each frame.
    pub fn new(first: usize, slice: usize) -> Self {
        Self {
            first,
            slice,
            drawn: RwSignal::new(first),
            is_growing: StoredValue::new(false),
        }
    }

    /// Of the keys of all rows those that are drawn by now, followed.
    pub fn of(self, keys: Memo<Vec<usize>>) -> Vec<usize> {
        let drawn = self.drawn.get();
        if drawn < keys.with(Vec::len) {
            self.grow();
        }
        keys.with(|keys| keys.iter().take(drawn).copied().collect())
    }

    /// Begins with the first rows again.
    pub fn begin_again(self) {
        self.drawn.set(self.first);
    }

    fn grow(self) {
        if self.is_growing.get_value() {
            return;
        }
        self.is_growing.set_value(true);
        device::after_frame(move || {
            // The page may be left by then.
            self.is_growing
                .try_update_value(|is_growing| *is_growing = false);
            self.drawn.try_update(|drawn| *drawn += self.slice);
        });
    }
}
