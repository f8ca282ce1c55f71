//! The water of a batter against an independent solver, against measured buffers, and against the laws of charges.
//!
//! `tests/reference/bowls.tsv` holds what PHREEQC says of some hundred bowls with the same constants; that tests the
//! arithmetic. What tests the constants are the measured buffers.

mod reference;

use batterwright::baking::chemistry::solution::{
    ACIDS, ALL, Acid, Answer, Buffer, CARBONIC, CONSTANTS, Carbon, DAVIES, DAVIES_LIMIT, Doubts,
    HENRY, Solution, WATER,
};
use proptest::num;
use proptest::prelude::*;
use reference::{BOWLS, NAMES, rows};

const CASES: &str = include_str!("reference/cases.tsv");

/// The rows of a comma-separated table in which only the last but one cell may be quoted.
fn cells(table: &'static str) -> impl Iterator<Item = Vec<&'static str>> {
    table.lines().skip(1).map(|line| line.split(',').collect())
}

/// The tables that the solver's database is written from say what the program says: name, mass, pKa, enthalpy and
/// heat capacity of every step, unknown ones as 0.
#[test]
fn both_programs_have_the_same_constants() {
    let mut written: Vec<(&str, Vec<[f64; 4]>)> = Vec::new();
    for row in cells(include_str!("reference/acids.csv")) {
        let number = |cell: &str| {
            if cell.is_empty() {
                Ok(0.0)
            } else {
                cell.parse()
            }
        };
        let step = [row[1], row[3], row[4], row[5]].map(|cell| number(cell).expect("a number"));
        match written.last_mut() {
            Some((name, steps)) if *name == row[0] => steps.push(step),
            _ => written.push((row[0], vec![step])),
        }
        assert_eq!(
            written.last().map(|(_, steps)| steps.len().to_string()),
            Some(row[2].to_owned())
        );
    }
    let names = NAMES.into_iter().chain(["carbonic"]);
    let ours: Vec<(&str, Vec<[f64; 4]>)> = names
        .zip(CONSTANTS.iter().chain([&CARBONIC]))
        .map(|(name, constants)| {
            let mass = constants.molar_mass;
            let steps = constants.steps.iter();
            (name, steps.map(|[a, b, c]| [mass, *a, *b, *c]).collect())
        })
        .collect();
    assert_eq!(written, ours);
    for (name, acid) in NAMES.iter().zip(ALL) {
        assert_eq!(*name, format!("{acid:?}").to_lowercase());
    }
    let water: Vec<(String, f64)> = cells(include_str!("reference/water.csv"))
        .map(|row| (row[0].to_owned(), row[1].parse().expect("a number")))
        .collect();
    let ours: Vec<(String, f64)> = ["one", "t", "per_t", "log10_t", "t2"]
        .iter()
        .zip(WATER)
        .map(|(name, value)| (format!("water_{name}"), value))
        .chain(
            ["one", "per_t", "per_t2", "per_t3"]
                .iter()
                .zip(HENRY)
                .map(|(name, value)| (format!("henry_{name}"), value)),
        )
        .chain(DAVIES.map(|[celsius, value]| (format!("davies_{celsius}"), value)))
        .collect();
    assert_eq!(water, ours);
}

/// Solutions worked out beforehand by another solver, each within its own tolerance; where a pH was measured, that
/// too, to 0.03: saturated cream of tartar, citrate, phosphate and carbonate buffers, NIST SP 260-53 (from memory).
#[test]
fn solutions_land_where_another_solver_and_the_electrode_put_them() {
    let rows = rows(CASES);
    assert_eq!(rows.len(), 34);
    let mut measured = 0;
    for row in &rows {
        let found = row.solution.solve();
        let (expected, tolerance) = (row.answer(0).expect("a pH"), row.answer(1).expect("one"));
        assert!(
            (found.ph - expected).abs() <= tolerance,
            "{} {}: found {:.4}, expected {expected}",
            row.id,
            row.answers[3],
            found.ph
        );
        if let Some(electrode) = row.answer(2) {
            measured += 1;
            println!("{}: {:.3}, measured {electrode}", row.answers[3], found.ph);
            assert!((found.ph - electrode).abs() <= 0.03, "{}", row.answers[3]);
        }
    }
    assert_eq!(measured, 4);
}

/// The worst of several differences, and whose it is.
#[derive(Default)]
struct Worst(f64, &'static str);

impl Worst {
    fn see(&mut self, difference: f64, id: &'static str) {
        if difference.abs() > self.0.abs() || difference.is_nan() {
            *self = Self(difference, id);
        }
    }
}

/// PHREEQC with the same constants: 0.01 pH, and half a hundredth of the carbon dioxide.
#[test]
fn bowls_land_where_phreeqc_puts_them() {
    let rows = rows(BOWLS);
    assert!(rows.len() >= 300, "{} bowls", rows.len());
    println!("mol/kg of ions: bowls; worst pH, CO2 %, carbon %; phreeqc.dat: pH, CO2 %");
    let mut all = [Worst::default(), Worst::default(), Worst::default()];
    let bands = [0.0, 0.1, 0.5, 1.0, 2.0, f64::INFINITY];
    for band in bands.windows(2) {
        let mut worst: [Worst; 5] = Default::default();
        let mut count = 0;
        for row in &rows {
            let ionic = row.answer(3).expect("an ionic strength");
            if !(ionic >= band[0] && ionic < band[1]) {
                continue;
            }
            count += 1;
            let found = row.solution.solve();
            let of = |place: usize| row.answer(place).expect("a number");
            let share = |found: f64, expected: f64| {
                if row.solution.carbon == Carbon::None {
                    0.0
                } else {
                    100.0 * (found / expected - 1.0)
                }
            };
            let differences = [
                found.ph - of(0),
                share(found.carbon.dioxide, of(1)),
                share(found.carbon.total(), of(2)),
                of(5) - of(0),
                share(of(6), of(1)),
            ];
            for (worst, difference) in worst.iter_mut().zip(differences) {
                worst.see(difference, row.id);
            }
            for (worst, difference) in all.iter_mut().zip(differences) {
                worst.see(difference, row.id);
            }
        }
        let shown: Vec<String> = worst
            .iter()
            .map(|Worst(difference, id)| format!("{difference:+.4} ({id})"))
            .collect();
        println!("{} to {}: {count}; {}", band[0], band[1], shown.join(", "));
    }
    let [ph, dioxide, carbon] = all;
    assert!(ph.0.abs() <= 0.01, "pH: {:+.4} in {}", ph.0, ph.1);
    assert!(
        dioxide.0.abs() <= 0.5,
        "CO2: {:+.3} % in {}",
        dioxide.0,
        dioxide.1
    );
    assert!(
        carbon.0.abs() <= 0.5,
        "carbon: {:+.3} % in {}",
        carbon.0,
        carbon.1
    );
}

// Laws.

/// An amount that is often none and else anything from a millionth of a mole to one.
fn amount() -> impl Strategy<Value = f64> {
    prop_oneof![Just(0.0), (-6.0..0.0).prop_map(|log: f64| 10_f64.powf(log))]
}

fn carbon() -> impl Strategy<Value = Carbon> {
    prop_oneof![
        Just(Carbon::None),
        (0.0..2.0).prop_map(|pressure_atm| Carbon::Open { pressure_atm }),
        (0.0..1.0).prop_map(|total| Carbon::Closed { total }),
        (0.0..1.0, 0.0..2.0).prop_map(|(total, pressure_atm)| Carbon::Venting {
            total,
            pressure_atm
        }),
    ]
}

prop_compose! {
    fn buffer()(own in 2.0..10.0, slopes in prop::array::uniform3(0.0..100.0)) -> Buffer {
        Buffer::around(own, slopes)
    }
}

prop_compose! {
    fn solution()(
        // Few acids at a time, as in a bowl.
        acids in prop::collection::vec((0..ACIDS, amount()), 0..5),
        strong in prop_oneof![Just(0.0), -0.1..1.0],
        salt in prop_oneof![Just(0.0), 0.0..0.5],
        buffer in prop_oneof![Just(Buffer::default()), buffer()],
        carbon in carbon(),
        celsius in 0.0..100.0,
    ) -> Solution {
        let mut solution = Solution { strong, salt, buffer, carbon, celsius, ..Solution::default() };
        for (place, amount) in acids {
            solution.acids[place] += amount;
        }
        solution
    }
}

fn finite(answer: &Answer) -> bool {
    [
        answer.ph,
        answer.ionic_strength,
        answer.water_activity,
        answer.carbon.total(),
        answer.gas,
        answer.pressure_atm,
        answer.residual,
    ]
    .iter()
    .all(|figure| figure.is_finite())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    /// More of any acid never raises pH.
    #[test]
    fn acid_never_raises_ph(solution in solution(), place in 0..ACIDS, more in amount()) {
        let mut sourer = solution;
        sourer.acids[place] += more;
        prop_assert!(sourer.solve().ph <= solution.solve().ph + 1e-8);
    }

    /// More base never lowers pH, nor does soda where gas can leave; where it cannot, soda pulls a bowl towards its
    /// own pH of about 8, which is still upwards for any batter.
    #[test]
    fn soda_never_lowers_ph(mut solution in solution(), more in amount()) {
        let before = solution.solve();
        solution.strong += more;
        prop_assert!(solution.solve().ph >= before.ph - 1e-8);
        if let Carbon::Closed { total } | Carbon::Venting { total, .. } = &mut solution.carbon {
            *total += more;
            if before.ph < 7.5 {
                prop_assert!(solution.solve().ph >= before.ph - 1e-8);
            }
        }
    }

    /// More carbon dioxide never raises pH.
    #[test]
    fn carbon_dioxide_never_raises_ph(mut solution in solution(), low in 0.0..1.0, more in 0.0..1.0) {
        solution.carbon = Carbon::Open { pressure_atm: low };
        let before = solution.solve().ph;
        solution.carbon = Carbon::Open { pressure_atm: low + more };
        prop_assert!(solution.solve().ph <= before + 1e-8);
    }

    /// Charges balance, every figure is a number, and nothing had to be set right.
    #[test]
    fn charges_balance(solution in solution()) {
        let answer = solution.solve();
        prop_assert!(finite(&answer), "{answer:?}");
        prop_assert!(answer.residual.abs() < 1e-9, "{answer:?}");
        let doubts = Doubts { crowded: answer.doubts.crowded, ..Doubts::default() };
        prop_assert_eq!(answer.doubts, doubts);
        prop_assert_eq!(answer.doubts.crowded, answer.ionic_strength > DAVIES_LIMIT);
    }

    /// Ten times the bowl in ten times the water is the same water.
    #[test]
    fn the_size_of_the_bowl_is_of_no_account(solution in solution(), times in 1e-3..1e3) {
        let mut larger = solution;
        larger.acids = larger.acids.map(|amount| amount * times);
        larger.strong *= times;
        larger.salt *= times;
        larger.buffer = larger.buffer.times(times);
        if let Carbon::Closed { total } | Carbon::Venting { total, .. } = &mut larger.carbon {
            *total *= times;
        }
        let found = larger.in_water(times).map(|larger| larger.solve());
        let expected = solution.solve();
        prop_assert!(found.is_some_and(|found| (found.ph - expected.ph).abs() < 1e-7
            && (found.carbon.total() - expected.carbon.total()).abs() < 1e-7));
    }

    /// In whatever order buffers come together.
    #[test]
    fn order_is_of_no_account(mut solution in solution(), buffers in prop::collection::vec(buffer(), 1..6)) {
        let add = |sum: Buffer, one: &Buffer| sum + *one;
        solution.buffer = buffers.iter().fold(Buffer::default(), add);
        let forwards = solution.solve().ph;
        solution.buffer = buffers.iter().rev().fold(Buffer::default(), add);
        prop_assert!((solution.solve().ph - forwards).abs() < 1e-7);
    }

    /// What leaves and what stays are what was there; gas leaves only down to its pressure.
    #[test]
    fn carbon_is_kept_or_leaves(mut solution in solution(), total in 0.0..1.0, pressure_atm in 0.0..2.0) {
        solution.carbon = Carbon::Venting { total, pressure_atm };
        let answer = solution.solve();
        prop_assert!((answer.carbon.total() + answer.gas - total).abs() < 1e-9, "{answer:?}");
        prop_assert!(answer.pressure_atm <= pressure_atm + 1e-9, "{answer:?}");
        prop_assert!(answer.gas == 0.0 || answer.pressure_atm >= pressure_atm - 1e-9, "{answer:?}");
    }

    /// Any number at all, and what is none: an answer in figures.
    #[test]
    fn anything_gets_an_answer(
        acids in prop::array::uniform17(prop_oneof![Just(0.0), num::f64::ANY]),
        others in prop::array::uniform10(num::f64::ANY),
        kind in 0..4,
    ) {
        let [strong, salt, celsius, total, pressure_atm, own, a, b, c, water] = others;
        let solution = Solution {
            acids,
            strong,
            salt,
            celsius,
            buffer: Buffer::around(own, [a, b, c]),
            carbon: match kind {
                0 => Carbon::None,
                1 => Carbon::Open { pressure_atm },
                2 => Carbon::Closed { total },
                _ => Carbon::Venting { total, pressure_atm },
            },
        };
        for solution in [Some(solution), solution.in_water(water)].into_iter().flatten() {
            let answer = solution.solve();
            prop_assert!(finite(&answer), "{answer:?}");
        }
    }
}

/// No water, no pH.
#[test]
fn without_water_there_is_no_solution() {
    for water in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert_eq!(Solution::default().in_water(water), None);
    }
}

/// What has to be set right is said.
#[test]
fn doubts_are_said() {
    fn of(strong: f64, salt: f64, celsius: f64) -> Doubts {
        let solution = Solution {
            strong,
            salt,
            celsius,
            ..Solution::default()
        };
        solution.solve().doubts
    }
    assert_eq!(of(0.0, 0.0, 25.0), Doubts::default());
    assert!(of(f64::NAN, 0.0, 25.0).not_an_amount);
    assert!(of(0.0, -1.0, 25.0).not_an_amount);
    assert!(of(1e9, 0.0, 25.0).too_much);
    assert!(of(0.0, 0.6, 25.0).crowded);
    assert!(of(0.0, 0.0, f64::NAN).temperature);
    assert!(of(0.0, 0.0, 101.0).temperature);
}

/// Pure water by its definition: pH 13.995 / 2 at 25 C; 12.32 / 2 at 95 C.
#[test]
fn water_is_neutral() {
    for (celsius, half) in [(25.0, 6.997), (95.0, 6.16)] {
        let water = Solution {
            celsius,
            ..Solution::default()
        };
        assert!((water.solve().ph - half).abs() < 1e-3);
    }
}

/// 0.3 mol of soda on 0.1 mol of citric acid, all of it shut in, would press with seven atmospheres; at one it keeps
/// 0.059 mol and lets go of the rest (PHREEQC with the same constants: 0.05945 at pH 6.140).
#[test]
fn a_bowl_of_soda_and_acid_lets_go_of_its_gas() {
    let mut solution = Solution {
        strong: 0.3,
        ..Solution::default()
    };
    solution.acids[Acid::Citric as usize] = 0.1;
    solution.carbon = Carbon::Closed { total: 0.3 };
    let shut = solution.solve();
    assert!(
        (shut.pressure_atm - 7.6).abs() < 0.1,
        "{}",
        shut.pressure_atm
    );
    solution.carbon = Carbon::Venting {
        total: 0.3,
        pressure_atm: 1.0,
    };
    let open = solution.solve();
    assert!((open.ph - 6.140).abs() < 0.003);
    assert!((open.gas - (0.3 - 0.05945)).abs() < 3e-4, "{}", open.gas);
}

/// A buffer of 10 meq per unit around pH 6.2 that is given 4 meq of base stands at 6.6.
#[test]
fn a_buffer_line_answers_base() {
    let solution = Solution {
        strong: 0.004,
        buffer: Buffer::around(6.2, [10.0; 3]),
        ..Solution::default()
    };
    assert!((solution.solve().ph - 6.6).abs() < 1e-3);
}
