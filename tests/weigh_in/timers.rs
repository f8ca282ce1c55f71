//! Timers: moments reckoned by hand.

use batterwright::baking::timer::{Timer, Timers};

/// Some moment, in milliseconds.
const NOON: u64 = 1_764_331_200_000;
const MINUTE: u64 = 60_000;

fn one(minutes: f64) -> (Timers, u32) {
    let mut timers = Timers::default();
    assert!(timers.start("Bake", "Plum cake", minutes, NOON));
    let id = timers.timers[0].id;
    (timers, id)
}

#[test]
fn a_timer_rings_at_its_moment_however_long_nobody_looked() {
    let (timers, _) = one(35.0);
    let shown = |now: u64| timers.timers[0].shown(now);
    assert_eq!(shown(NOON), "35:00");
    // A second that has begun counts.
    assert_eq!(shown(NOON + 1), "35:00");
    assert_eq!(shown(NOON + 1000), "34:59");
    assert!(!timers.timers[0].is_due(NOON + 35 * MINUTE - 1));
    assert_eq!(shown(NOON + 35 * MINUTE - 1), "0:01");
    assert!(timers.timers[0].is_due(NOON + 35 * MINUTE));
    assert_eq!(shown(NOON + 35 * MINUTE), "now");
    assert_eq!(shown(NOON + 38 * MINUTE), "3 min ago");
    assert_eq!(shown(NOON + 35 * MINUTE + 3 * 3_600_000), "3 h ago");
    assert_eq!(one(95.0).0.timers[0].shown(NOON), "1:35:00");
}

#[test]
fn one_that_is_held_keeps_what_is_left() {
    let (mut timers, id) = one(10.0);
    let timer = timers.get_mut(id).expect("it");
    timer.turn(NOON + 4 * MINUTE);
    assert_eq!(timer.shown(NOON + 60 * MINUTE), "6:00");
    assert!(!timer.is_due(NOON + 60 * MINUTE));
    timer.turn(NOON + 60 * MINUTE);
    assert_eq!(timer.rings, NOON + 66 * MINUTE);
}

#[test]
fn minutes_more_count_from_now_once_it_has_rung() {
    let (mut timers, id) = one(10.0);
    let timer = timers.get_mut(id).expect("it");
    timer.add(1.0, NOON + 2 * MINUTE);
    assert_eq!(timer.rings, NOON + 11 * MINUTE);
    timer.add(5.0, NOON + 20 * MINUTE);
    assert_eq!(timer.rings, NOON + 25 * MINUTE);
    timer.turn(NOON + 20 * MINUTE);
    timer.add(5.0, NOON + 21 * MINUTE);
    assert_eq!(timer.left, Some(10 * MINUTE));
}

#[test]
fn what_is_no_time_to_wait_for_starts_nothing() {
    let mut timers = Timers::default();
    for minutes in [0.0, -1.0, f64::NAN, f64::INFINITY, 48.0 * 60.0 + 1.0] {
        assert!(!timers.start("Bake", "", minutes, NOON), "{minutes}");
    }
    for _ in 0..20 {
        assert!(timers.start("Bake", "", 1.0, NOON));
    }
    assert!(!timers.start("One too many", "", 1.0, NOON));
    let ids: std::collections::BTreeSet<u32> = timers.timers.iter().map(|timer| timer.id).collect();
    assert_eq!(ids.len(), 20);
}

#[test]
fn one_that_was_put_away_is_given_back() {
    let (mut timers, id) = one(10.0);
    assert!(timers.is_any_running(NOON));
    assert_eq!(
        timers.put_away(id).map(|timer| timer.name).as_deref(),
        Some("Bake")
    );
    assert_eq!(timers.put_away(id), None);
    assert!(!timers.is_any_running(NOON));
}

#[test]
fn a_damaged_record_shows_something_and_breaks_nothing() {
    for (rings, left) in [
        (u64::MAX, None),
        (0, None),
        (0, Some(u64::MAX)),
        (u64::MAX, Some(0)),
    ] {
        let mut timer = Timer {
            rings,
            left,
            ..Timer::default()
        };
        for now in [0, NOON, u64::MAX] {
            assert!(!timer.shown(now).is_empty());
            timer.add(5.0, now);
            timer.turn(now);
        }
    }
}
