//! Laws of any programme. Half of the drawn ones have whole figures, so that much costs the same.

use batterwright::baking::substitute::programme::{Programme, Row, Unknown, solve};
use proptest::num;
use proptest::prelude::*;

/// A figure between two ends, whole or not.
fn between(low: f64, high: f64, whole: bool) -> impl Strategy<Value = f64> {
    (low..high).prop_map(move |figure| if whole { figure.round() } else { figure })
}

fn unknown(whole: bool) -> impl Strategy<Value = Unknown> {
    let amount = || between(0.0, 9.0, whole);
    let scale = if whole {
        Just(1.0).boxed()
    } else {
        (0.05..100.0).boxed()
    };
    (
        amount(),
        amount(),
        amount(),
        between(0.0, 3.0, whole),
        scale,
    )
        .prop_map(|(start, one, other, price, scale)| Unknown {
            start: start * scale,
            least: one.min(other) * scale,
            most: one.max(other) * scale,
            price: price / scale,
        })
}

fn row(unknowns: &[Unknown], whole: bool) -> impl Strategy<Value = Row> + use<> {
    let start: Vec<f64> = unknowns.iter().map(|unknown| unknown.start).collect();
    let one = prop_oneof![Just(0.0), between(-1.0, 2.0, whole)];
    (
        prop::collection::vec(one, start.len()),
        between(-4.0, 4.0, whole),
        between(0.0, 2.0, whole),
        between(0.0, 4.0, whole),
        prop::option::of(between(0.0, 9.0, whole)),
        prop::option::of(between(0.0, 9.0, whole)),
    )
        .prop_map(move |(per_unit, off, free, price, below, above)| {
            let brought = per_unit.iter().zip(&start);
            let now: f64 = brought.map(|(one, amount)| one * amount).sum();
            Row {
                per_unit,
                target: now + off,
                free,
                price,
                low: below.map_or(f64::NEG_INFINITY, |below| now - below),
                high: above.map_or(f64::INFINITY, |above| now + above),
            }
        })
}

/// Up to nine unknowns and eight rows.
fn programme() -> impl Strategy<Value = Programme> {
    any::<bool>().prop_flat_map(|whole| {
        prop::collection::vec(unknown(whole), 1..10).prop_flat_map(move |unknowns| {
            let rows = prop::collection::vec(row(&unknowns, whole), 0..9);
            (Just(unknowns), rows).prop_map(|(unknowns, rows)| Programme { unknowns, rows })
        })
    })
}

fn sum(row: &Row, amounts: &[f64]) -> f64 {
    let brought = row.per_unit.iter().zip(amounts);
    brought.map(|(one, amount)| one * amount).sum()
}

fn cost(programme: &Programme, amounts: &[f64]) -> f64 {
    let moved = (programme.unknowns.iter().zip(amounts))
        .map(|(unknown, amount)| unknown.price * (amount - unknown.start).abs());
    let lost = (programme.rows.iter())
        .map(|row| row.price * ((sum(row, amounts) - row.target).abs() - row.free).max(0.0));
    moved.chain(lost).sum()
}

fn holds(programme: &Programme, amounts: &[f64], within: f64) -> bool {
    programme.rows.iter().all(|row| {
        let sum = sum(row, amounts);
        row.low - within <= sum && sum <= row.high + within
    })
}

fn bounded(programme: &Programme, amounts: &[f64]) -> bool {
    (programme.unknowns.iter().zip(amounts))
        .all(|(unknown, amount)| (unknown.least..=unknown.most).contains(amount))
}

fn alike(one: &[f64], other: &[f64]) -> bool {
    let near = |(one, other): (&f64, &f64)| (one - other).abs() <= 1e-6 * one.abs().max(1.0);
    one.len() == other.len() && one.iter().zip(other).all(near)
}

/// Any figure at all, among them those that break sums.
fn anything() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => -10.0..10.0,
        1 => num::f64::ANY,
        1 => prop_oneof![Just(0.0), Just(1e12), Just(-1e12), Just(1e-12), Just(1e-300), Just(f64::INFINITY)],
        1 => (-12.0..12.0).prop_map(|power| 10f64.powf(power)),
    ]
}

fn garbage() -> impl Strategy<Value = Programme> {
    let unknown =
        (anything(), anything(), anything(), anything()).prop_map(|(start, one, other, price)| {
            Unknown {
                start,
                least: one.min(other),
                most: one.max(other),
                price: price.abs(),
            }
        });
    let row = (
        prop::collection::vec(anything(), 4),
        (anything(), anything(), anything()),
        (anything(), anything()),
    )
        .prop_map(|(per_unit, (target, free, price), (one, other))| Row {
            per_unit,
            target,
            free: free.abs(),
            price: price.abs(),
            low: one.min(other),
            high: one.max(other),
        });
    (
        prop::collection::vec(unknown, 4),
        prop::collection::vec(row, 0..5),
    )
        .prop_map(|(unknowns, rows)| Programme { unknowns, rows })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    /// The answer keeps its bounds, holds its limits unless it says otherwise, and says what it costs.
    #[test]
    fn an_answer_keeps_its_word(programme in programme()) {
        let found = solve(&programme).expect("an answer");
        prop_assert!(bounded(&programme, &found.amounts));
        prop_assert_eq!(found.missed.is_empty(), holds(&programme, &found.amounts, 1e-4));
        prop_assert!((found.cost - cost(&programme, &found.amounts)).abs() <= 1e-9 * found.cost.max(1.0));
        for (index, by) in found.missed {
            let (row, sum) = (&programme.rows[index], sum(&programme.rows[index], &found.amounts));
            let over = if by > 0.0 { sum - row.high } else { sum - row.low };
            prop_assert!((over - by).abs() < 1e-9 * by.abs().max(1.0));
        }
    }

    /// No other amounts within the limits cost less, nor any on the way to them.
    #[test]
    fn nothing_else_costs_less(programme in programme(), places in prop::collection::vec(0.0..=1.0, 10), way in 0.001..1.0) {
        let found = solve(&programme).expect("an answer");
        let other: Vec<f64> = (programme.unknowns.iter().zip(&found.amounts).zip(places))
            .map(|((unknown, amount), place)| {
                let there = unknown.least + place * (unknown.most - unknown.least);
                amount + way * (there - amount)
            })
            .collect();
        if found.missed.is_empty() && holds(&programme, &other, 0.0) {
            prop_assert!(cost(&programme, &other) >= found.cost * (1.0 - 1e-4) - 1e-6);
        }
    }

    /// A cake of another size: the same answer, of that size.
    #[test]
    fn a_larger_cake_changes_alike(programme in programme(), factor in 0.01..100.0) {
        let mut larger = programme.clone();
        for it in &mut larger.unknowns {
            for figure in [&mut it.start, &mut it.least, &mut it.most] {
                *figure *= factor;
            }
        }
        for it in &mut larger.rows {
            for figure in [&mut it.target, &mut it.free, &mut it.low, &mut it.high] {
                *figure *= factor;
            }
        }
        let (one, other) = (solve(&programme).expect("an answer"), solve(&larger).expect("an answer"));
        let back: Vec<f64> = other.amounts.iter().map(|amount| amount / factor).collect();
        prop_assert!(alike(&one.amounts, &back), "{:?} {:?}", one, back);
        prop_assert_eq!(one.missed.len(), other.missed.len());
    }

    /// The mirrored question has the mirrored answer.
    #[test]
    fn there_and_back(programme in programme()) {
        let start: Vec<f64> = programme.unknowns.iter().map(|it| it.start).collect();
        let mut mirrored = programme.clone();
        for it in &mut mirrored.unknowns {
            (it.least, it.most) = (2.0 * it.start - it.most, 2.0 * it.start - it.least);
        }
        for it in &mut mirrored.rows {
            let twice = 2.0 * sum(it, &start);
            it.target = twice - it.target;
            (it.low, it.high) = (twice - it.high, twice - it.low);
        }
        let (one, other) = (solve(&programme).expect("an answer"), solve(&mirrored).expect("an answer"));
        let back: Vec<f64> = start.iter().zip(&other.amounts).map(|(start, amount)| 2.0 * start - amount).collect();
        prop_assert!(alike(&one.amounts, &back), "{:?} {:?}", one, back);
    }

    /// Asked again from its own answer, with everything kept that was reached, nothing moves.
    #[test]
    fn what_is_best_stays(programme in programme()) {
        let found = solve(&programme).expect("an answer");
        let mut again = programme.clone();
        for (it, amount) in again.unknowns.iter_mut().zip(&found.amounts) {
            it.start = *amount;
        }
        let after = solve(&again).expect("an answer");
        if found.missed.is_empty() && programme.unknowns.iter().all(|it| it.price > 0.0) {
            let moved: f64 = (again.unknowns.iter().zip(&after.amounts))
                .map(|(it, amount)| it.price * (it.start - amount).abs()).sum();
            // What two moves are worth apart is below the part by which prices are told apart.
            prop_assert!(moved <= 1e-4 * found.cost.max(1.0), "{:?} {:?}", found, after);
        }
    }

    /// Wider limits never cost more.
    #[test]
    fn a_wider_limit_costs_no_more(programme in programme(), by in 0.0..5.0, which in any::<prop::sample::Index>()) {
        let found = solve(&programme).expect("an answer");
        if found.missed.is_empty() && !programme.rows.is_empty() {
            let mut wider = programme.clone();
            let index = which.index(wider.rows.len());
            wider.rows[index].low -= by;
            wider.rows[index].high += by;
            let after = solve(&wider).expect("an answer");
            prop_assert_eq!(&after.missed, &[]);
            prop_assert!(after.cost <= found.cost * (1.0 + 1e-4) + 1e-6);
        }
    }

    /// Whatever is asked, an answer is made of numbers within their bounds, and there is one unless the input is bad.
    #[test]
    fn nothing_breaks_it(programme in garbage()) {
        if let Some(found) = solve(&programme) {
            prop_assert!(bounded(&programme, &found.amounts));
            prop_assert!(found.cost.is_finite() && found.missed.iter().all(|(_, by)| by.is_finite()));
        }
    }
}
