//! Laws of any formula and any signs.

use crate::bench::{inputs, seen, sheet};
use batterwright::baking::diagnosis::odds::{chances, factor, shows};
use batterwright::baking::diagnosis::{Measured, Seen, causes, signs};
use batterwright::baking::quantity::{Length, Mass, Ph, Temperature};
use batterwright::baking::worksheet::{DiagnosisSheet, Inputs};
use proptest::prelude::*;

fn any_signs() -> impl Strategy<Value = Vec<String>> {
    let keys: Vec<&'static str> = signs().iter().map(|sign| sign.key).collect();
    let key = prop_oneof![
        9 => prop::sample::select(keys).prop_map(str::to_owned),
        1 => "[a-z_ <&]{0,8}",
    ];
    prop::collection::vec(key, 0..8)
}

fn any_measured() -> impl Strategy<Value = Measured> {
    let any = || {
        prop::option::of(
            prop_oneof![8 => -50.0..400.0_f64, 1 => Just(f64::NAN), 1 => Just(f64::INFINITY)],
        )
    };
    (any(), any(), any(), any(), any(), any(), any()).prop_map(
        |(ph, core, minutes, waited, mass, height, edge)| Measured {
            crumb_ph: ph.map(|ph| Ph::of(ph / 20.0)),
            core: core.map(Temperature::celsius),
            oven: minutes.map(Temperature::celsius),
            bake_minutes: minutes,
            waited_minutes: waited,
            mass_in: mass.map(Mass::grams),
            mass_out: height.map(Mass::grams),
            height_centre: height.map(Length::millimetres),
            height_edge: edge.map(Length::millimetres),
        },
    )
}

fn any_text() -> impl Strategy<Value = String> {
    prop_oneof![
        "\\PC{0,60}",
        Just(String::new()),
        (0..900_u32, 0..900_u32, 0..900_u32, 0..90_u32).prop_map(|(flour, sugar, milk, soda)| format!(
            "Layer cake\n{flour} g plain flour\n{sugar} g sugar\n{milk} g milk\n2 eggs\n{soda} g baking soda\nBake at 180 C."
        )),
    ]
}

#[track_caller]
fn holds_together(found: &DiagnosisSheet, is_told: bool) {
    assert!(!found.said.is_empty());
    assert!(is_told || found.causes.is_empty());
    let sum: f64 = found.causes.iter().map(|cause| cause.chance).sum();
    assert!(sum <= 1.0 + 1e-9, "{sum}");
    let mut last = 1.0;
    for cause in &found.causes {
        assert!(cause.chance.is_finite() && (0.0..=last).contains(&cause.chance));
        last = cause.chance;
        for (words, factor) in &cause.evidence {
            assert!(!words.contains("NaN") && !words.contains("inf"), "{words}");
            assert!(
                !factor.contains("NaN") && !factor.contains("inf"),
                "{factor}"
            );
        }
    }
    for (_, words) in &found.ruled_out {
        assert!(!words.contains("NaN") && !words.contains("inf"), "{words}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    /// Any text, any signs, any measurement: a sheet whose chances are chances.
    #[test]
    fn anything_gives_a_sheet(text in any_text(), signs in any_signs(), measured in any_measured()) {
        let known = signs.iter().any(|key| batterwright::baking::diagnosis::sign(key).is_some());
        let shape = measured.shape().is_some();
        holds_together(&sheet(&Inputs::of_text(text), &Seen { signs, measured }), known || shape);
    }

    /// The order in which signs are told, and telling one twice, changes nothing.
    #[test]
    fn the_order_of_signs_does_not_matter(signs in any_signs()) {
        let cake = inputs("yellow_layer", "");
        let told = |signs: Vec<String>| sheet(&cake, &Seen { signs, measured: Measured::default() });
        let mut turned = signs.clone();
        turned.reverse();
        turned.extend(signs.clone());
        prop_assert_eq!(told(signs).causes, told(turned).causes);
    }

    /// Chances sum to 1 with something else, whatever the weights.
    #[test]
    fn chances_sum_to_one(weights in prop::collection::vec(prop_oneof![0.0..1e12_f64, Just(f64::NAN), Just(f64::INFINITY)], 0..60), other in -1.0..1e9_f64) {
        let (found, other) = chances(&weights, other);
        let sum = found.iter().sum::<f64>() + other;
        prop_assert!((sum - 1.0).abs() < 1e-9, "{}", sum);
        prop_assert!(found.iter().all(|chance| (0.0..=1.0).contains(chance)));
    }

    /// More tables never speak less for a cause, and a figure further past its limit neither.
    #[test]
    fn more_evidence_never_speaks_less(named in 0..12_usize, more in 0..12_usize, a in 0.0..=1.0_f64, b in 0.0..=1.0_f64) {
        let tables = 12;
        prop_assert!(shows(named.max(more), tables) >= shows(named.min(more), tables));
        prop_assert!(shows(tables, tables) < 1.0);
        prop_assert!(factor(a.max(b), 0.9) >= factor(a.min(b), 0.9));
    }
}

/// A sign that tables name for one cause and not for another never lowers the first against the second: for every pair of
/// signs and all causes shown.
#[test]
fn a_sign_that_speaks_for_a_cause_never_lowers_it() {
    let cake = inputs("yellow_layer", "");
    for first in signs() {
        let before = sheet(&cake, &seen(first.key, ""));
        for second in signs().iter().filter(|second| second.key != first.key) {
            let after = sheet(&cake, &seen(&format!("{},{}", first.key, second.key), ""));
            let chance = |sheet: &DiagnosisSheet, key: &str| {
                let found = sheet.causes.iter().find(|cause| cause.key == key);
                found.map(|cause| cause.chance)
            };
            let names = |key: &str| {
                let place = causes().iter().position(|cause| cause.key == key);
                place.is_some_and(|place| !second.sources(place).is_empty())
            };
            let keys = || before.causes.iter().map(|cause| cause.key);
            for (one, other) in keys().flat_map(|one| keys().map(move |other| (one, other))) {
                if !names(one) || names(other) {
                    continue;
                }
                let (Some(a), Some(b)) = (chance(&before, one), chance(&before, other)) else {
                    continue;
                };
                if let (Some(c), Some(d)) = (chance(&after, one), chance(&after, other)) {
                    assert!(
                        c / d >= a / b - 1e-9,
                        "{} then {}: {one} against {other}",
                        first.key,
                        second.key
                    );
                }
            }
        }
    }
}
