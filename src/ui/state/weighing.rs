//! What is under way at the bench: what is in the bowls, and the timers. Each change is kept at once, for a phone locks
//! its screen without asking.

use super::Bench;
use crate::baking::timer::{Timer, Timers};
use crate::baking::worksheet::{
    Difference, WeighIn, WeighInSheet, WeighRow, difference, weigh_in_sheet, worksheet_again,
};
use crate::ui::{device, storage};
use leptos::prelude::*;
use std::time::Duration;

/// How often the clock is looked at while a timer runs: a second is never skipped.
const TICK: Duration = Duration::from_millis(250);

/// What the bench has besides the recipe.
#[derive(Clone, Copy)]
pub struct Kitchen {
    /// The weigh-in of the open recipe.
    weigh_in: RwSignal<WeighIn>,
    /// The recipe that it is of.
    of: StoredValue<String>,
    timers: RwSignal<Timers>,
    /// The clock, as it was last looked at.
    now: RwSignal<u64>,
    /// What was just taken away and can be put back.
    undo: RwSignal<Option<Undo>>,
    /// Why what is under way is not being kept, if it is not.
    unkept: RwSignal<Option<String>>,
}

/// What was done, and what stood there before.
#[derive(Clone, Debug, PartialEq)]
pub struct Undo {
    /// In words: "Flour is not weighed".
    pub what: String,
    before: Before,
}

#[derive(Clone, Debug, PartialEq)]
enum Before {
    WeighIn(WeighIn),
    Timer(Timer),
}

impl Kitchen {
    /// As it was when the page was last open.
    pub fn start() -> Self {
        Self {
            weigh_in: RwSignal::new(WeighIn::default()),
            of: StoredValue::new(String::new()),
            timers: RwSignal::new(storage::load_timers().unwrap_or_default()),
            now: RwSignal::new(clock()),
            undo: RwSignal::new(None),
            unkept: RwSignal::new(None),
        }
    }
}

/// Sets a signal where that is news.
pub(super) fn take<T: PartialEq + Send + Sync + 'static>(signal: RwSignal<T>, theirs: T) {
    if signal.with_untracked(|ours| *ours != theirs) {
        signal.set(theirs);
    }
}

fn clock() -> u64 {
    device::now() as u64
}

impl Bench {
    /// Takes up the weigh-in of the open recipe where it was left.
    pub fn take_up_weigh_in(self) {
        let id = self.open_id();
        if self.kitchen.of.with_value(|of| *of != id) {
            let kept = storage::load_weigh_in(&id).unwrap_or_default();
            self.kitchen.weigh_in.set(kept);
            self.kitchen.of.set_value(id);
            self.kitchen.undo.set(None);
        }
    }

    /// The open recipe goes on under another name: what is in its bowls goes with it.
    pub(super) fn carry_weigh_in(self, from: &str, to: &str) {
        if let Some(weigh_in) = storage::load_weigh_in(from) {
            // Where that is refused, what is open says so at its next change.
            let _ = storage::keep_weigh_in(to, &weigh_in);
        }
        if self.kitchen.of.with_value(|of| of == from) {
            self.kitchen.of.set_value(to.to_owned());
        }
    }

    /// The open recipe at the scale, followed.
    pub fn weigh_in_sheet(self) -> WeighInSheet {
        let (settings, own) = (self.settings(), self.larder.get());
        self.kitchen.weigh_in.with(|weigh_in| {
            self.inputs(|inputs| weigh_in_sheet(inputs, &settings, &own, weigh_in))
        })
    }

    /// The open recipe at the scale, as it is now.
    pub fn sheet_at_scale(self, weigh_in: &WeighIn) -> WeighInSheet {
        let own = self.larder.get_untracked();
        self.inputs_now(|inputs| weigh_in_sheet(inputs, &self.settings_now(), &own, weigh_in))
    }

    /// A piece of the weigh-in, followed.
    pub fn weigh_in<R>(self, read: impl FnOnce(&WeighIn) -> R) -> R {
        self.kitchen.weigh_in.with(read)
    }

    /// What the bowls hold against what was planned, followed: what the misses do to the cake.
    pub fn weighed_difference(self, sheet: &WeighInSheet) -> Difference {
        let (settings, own) = (self.settings(), self.larder.get());
        let weighed = self.inputs(|inputs| inputs.as_weighed(&sheet.misses, sheet.times));
        let looks = self.looks;
        let after =
            looks.try_update_value(|looks| worksheet_again(looks, &weighed, &settings, &own));
        self.sheet(|before| match &after {
            Some(after) => difference(before, after, ""),
            None => difference(before, before, ""),
        })
    }

    /// Says how much of a row is in the bowl, g.
    pub fn put_in(self, row: &WeighRow, grams: f64) {
        let what = format!("{} is in", row.name);
        self.change_weigh_in(what, |weigh_in| {
            weigh_in.put(row.words.clone(), &row.name, grams);
        });
        self.kitchen.undo.set(None);
    }

    /// Takes back that a row is in.
    pub fn take_out(self, row: &WeighRow) {
        self.change_weigh_in(format!("{} is not weighed", row.name), |weigh_in| {
            weigh_in.take_out(&row.words);
        });
    }

    /// Weighs everything so much larger that what is in of a row is just right.
    pub fn grow_to(self, row: &WeighRow) {
        let Some(grams) = row.grams_in else { return };
        let growth = self.kitchen.weigh_in.with_untracked(WeighIn::growth);
        let planned = row.exact / growth;
        self.change_weigh_in("Everything is weighed to suit it".into(), |weigh_in| {
            weigh_in.grow(grams, planned);
        });
    }

    /// Weighs everything as planned again.
    pub fn grow_no_more(self) {
        self.change_weigh_in("The amounts are as planned".into(), |weigh_in| {
            weigh_in.grown = None;
        });
    }

    /// Says whether the scale is zeroed at each weight.
    pub fn turn_zeroed(self) {
        self.change_weigh_in(String::new(), |weigh_in| weigh_in.zeroed = !weigh_in.zeroed);
        self.kitchen.undo.set(None);
    }

    /// Says that a line of the method is done, or that it is not.
    pub fn turn_step(self, line: usize) {
        let Some(words) = self.inputs_now(|inputs| inputs.line_words((line, 0))) else {
            return;
        };
        self.change_weigh_in(String::new(), |weigh_in| weigh_in.turn_step(words));
        self.kitchen.undo.set(None);
    }

    /// Empties the bowls: the next weigh-in begins.
    pub fn start_anew(self) {
        self.change_weigh_in("The weigh-in starts anew".into(), |weigh_in| {
            *weigh_in = WeighIn {
                zeroed: weigh_in.zeroed,
                ..WeighIn::default()
            };
        });
    }

    fn change_weigh_in(self, what: String, change: impl FnOnce(&mut WeighIn)) {
        self.take_up_weigh_in();
        self.catch_up_kitchen();
        // What is weighed belongs to a recipe that is kept: a demo becomes one of the baker's own.
        self.keep_open();
        let before = self.kitchen.weigh_in.get_untracked();
        let mut after = before.clone();
        if after.began == 0 {
            after.began = clock();
        }
        change(&mut after);
        if after != before {
            self.kitchen.undo.set(Some(Undo {
                what,
                before: Before::WeighIn(before),
            }));
            self.kitchen.weigh_in.set(after);
            self.keep_weigh_in();
        }
    }

    fn keep_weigh_in(self) {
        let id = self.kitchen.of.get_value();
        let kept = self
            .kitchen
            .weigh_in
            .with_untracked(|weigh_in| storage::keep_weigh_in(&id, weigh_in));
        self.kitchen.unkept.set(kept.err());
    }

    /// What was just done at the bench and can be taken back, followed.
    pub fn bench_undo(self) -> Option<String> {
        self.kitchen
            .undo
            .with(|undo| undo.as_ref().map(|undo| undo.what.clone()))
    }

    /// Takes that back.
    pub fn take_bench_back(self) {
        match self.kitchen.undo.try_update(Option::take).flatten() {
            Some(Undo {
                before: Before::WeighIn(before),
                ..
            }) => {
                self.kitchen.weigh_in.set(before);
                self.keep_weigh_in();
            }
            Some(Undo {
                before: Before::Timer(timer),
                ..
            }) => self.change_timers(|timers| timers.timers.push(timer)),
            None => {}
        }
    }

    /// Why what is under way at the bench is not being kept, followed.
    pub fn bench_unkept(self) -> Option<String> {
        self.kitchen.unkept.get()
    }

    /// A piece of the timers, followed.
    pub fn timers<R>(self, read: impl FnOnce(&Timers) -> R) -> R {
        self.kitchen.timers.with(read)
    }

    /// The clock, in milliseconds since 1970; it moves while a timer runs.
    pub fn clock(self) -> u64 {
        self.kitchen.now.get()
    }

    /// Starts a timer. False where it is no time to wait for, or there are too many.
    pub fn start_timer(self, name: &str, minutes: f64) -> bool {
        let recipe = self.sheet(|sheet| sheet.title.clone()).unwrap_or_default();
        self.kitchen.now.set(clock());
        let mut is_started = false;
        self.change_timers(|timers| is_started = timers.start(name, &recipe, minutes, clock()));
        is_started
    }

    /// Changes a timer.
    pub fn change_timer(self, id: u32, change: impl FnOnce(&mut Timer, u64)) {
        self.change_timers(|timers| {
            if let Some(timer) = timers.get_mut(id) {
                change(timer, clock());
            }
        });
    }

    /// Puts a timer away.
    pub fn put_timer_away(self, id: u32) {
        let mut gone = None;
        self.change_timers(|timers| gone = timers.put_away(id));
        if let Some(timer) = gone {
            self.kitchen.undo.set(Some(Undo {
                what: format!("The timer \"{}\" is gone", timer.name),
                before: Before::Timer(timer),
            }));
        }
    }

    fn change_timers(self, change: impl FnOnce(&mut Timers)) {
        self.catch_up_kitchen();
        self.kitchen.now.set(clock());
        self.kitchen.timers.update(change);
        let kept = self.kitchen.timers.with_untracked(storage::keep_timers);
        self.kitchen.unkept.set(kept.err());
    }

    /// Another window has changed what is under way.
    pub fn follow_other_kitchen(self, key: &str) {
        let is_ours = |id| self.kitchen.of.with_value(|of| of == id);
        if storage::is_timers_key(key) || storage::weigh_in_of_key(key).is_some_and(is_ours) {
            self.catch_up_kitchen();
        }
    }

    /// Takes what is kept in the place of what this window has: another one may have gone on with it. What could not be
    /// kept, or was cleared, has no other place than this window, and stays.
    pub fn catch_up_kitchen(self) {
        if self.kitchen.unkept.with_untracked(Option::is_some) {
            return;
        }
        let id = self.kitchen.of.get_value();
        if let Some(theirs) = storage::load_weigh_in(&id) {
            take(self.kitchen.weigh_in, theirs);
        }
        if let Some(theirs) = storage::load_timers() {
            take(self.kitchen.timers, theirs);
        }
    }

    /// Looks at the clock while there are timers, and sounds the alarm while one has rung.
    pub(super) fn follow_clock(self) {
        let Kitchen { timers, now, .. } = self.kitchen;
        let is_any = Memo::new(move |_| timers.with(|timers| !timers.timers.is_empty()));
        Effect::new(move |before: Option<Option<IntervalHandle>>| {
            if let Some(Some(running)) = before {
                running.clear();
            }
            let tick = move || now.set(clock());
            is_any
                .get()
                .then(|| set_interval_with_handle(tick, TICK).ok())
                .flatten()
        });
        let rings =
            Memo::new(move |_| timers.with(|timers| timers.due(now.get()).next().is_some()));
        Effect::new(move |_| {
            device::tell(if rings.get() {
                "batterwright:ring"
            } else {
                "batterwright:quiet"
            });
        });
    }
}
