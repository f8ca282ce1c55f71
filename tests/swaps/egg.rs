//! What an egg does, and what its replacers do.

use batterwright::baking::balance::Kind;
use batterwright::baking::ingredient::{all, by_key};
use batterwright::baking::substitute::egg::{EggWork, given, wanted};
use batterwright::baking::substitute::swap::swaps_from;

const EGGS: [&str; 3] = ["egg", "egg_white", "egg_yolk"];

fn work(key: &str) -> EggWork {
    let ingredient = by_key(key).unwrap_or_else(|| panic!("no ingredient {key}"));
    let row = given(ingredient).unwrap_or_else(|| panic!("no row {key}"));
    row.work
}

#[test]
fn every_swap_for_egg_says_what_it_does() {
    let mut named: Vec<&str> = EGGS
        .iter()
        .filter_map(|key| by_key(key))
        .flat_map(swaps_from)
        .map(|swap| swap.brings[0].ingredient.key)
        .chain(EGGS)
        .collect();
    named.sort_unstable();
    named.dedup();
    let rows: Vec<&str> = all()
        .iter()
        .filter(|ingredient| given(ingredient).is_some())
        .map(|ingredient| ingredient.key)
        .collect();
    assert_eq!(named, rows);
}

#[test]
fn foams_want_the_most_and_scones_the_least() {
    let wanted = |kind| {
        wanted(kind)
            .map(|row| row.work)
            .expect("every kind has a row")
    };
    for kind in [Kind::AngelFood, Kind::Sponge, Kind::Genoise, Kind::Chiffon] {
        assert_eq!((wanted(kind).binding, wanted(kind).leavening), (3, 3));
    }
    assert_eq!(
        wanted(Kind::WhiteLayer).emulsifying,
        0,
        "white holds no fat"
    );
    assert!(wanted(Kind::Pound).emulsifying > wanted(Kind::Sponge).emulsifying);
    assert!(wanted(Kind::Biscuit).binding < wanted(Kind::Plain).binding);
}

#[test]
fn what_whips_and_what_sets() {
    // Aquafaba whips as white does, and sinks as it bakes.
    assert_eq!(work("aquafaba").leavening, work("egg_white").leavening);
    assert!(work("aquafaba").binding < work("egg_white").binding);
    // Gels bind and hold no air; purees moisten and hardly bind.
    for gel in ["flaxseed", "chia_seeds", "psyllium_husk"] {
        assert_eq!(work(gel).leavening, 0, "{gel}");
        assert!(work(gel).binding >= 2, "{gel}");
    }
    for puree in ["apple_sauce", "banana", "pumpkin_puree"] {
        assert_eq!(
            (work(puree).binding, work(puree).leavening),
            (1, 0),
            "{puree}"
        );
    }
    // Yolk emulsifies, white does not.
    assert_eq!(
        (work("egg_yolk").emulsifying, work("egg_white").emulsifying),
        (3, 0)
    );
}

/// A replacer that holds no air is not meant for a cake that stands on air.
#[test]
fn nothing_without_lift_is_meant_for_foams() {
    for swap in EGGS
        .iter()
        .filter_map(|key| by_key(key))
        .flat_map(swaps_from)
    {
        let main = swap.brings[0].ingredient;
        if work(main.key).leavening > 1 {
            continue;
        }
        for kind in &swap.kinds {
            assert!(!kind.is_foam(), "{} for {}", main.key, swap.from.key);
        }
    }
}
