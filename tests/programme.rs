//! The least change that keeps what is to be kept: against another solver, by hand, and by its laws.

#[path = "programme/laws.rs"]
mod laws;
#[path = "reference/programmes.rs"]
mod reference;

use batterwright::baking::substitute::programme::{Programme, Row, Solved, Unknown, solve};
use reference::programmes;

/// Start, least, most and price.
fn unknown(figures: &[f64]) -> Unknown {
    let [start, least, most, price] = figures[..] else {
        panic!("four figures, not {figures:?}");
    };
    Unknown {
        start,
        least,
        most,
        price,
    }
}

/// A row with no limits.
fn row(per_unit: &[f64], target: f64, free: f64, price: f64) -> Row {
    Row {
        per_unit: per_unit.to_vec(),
        target,
        free,
        price,
        low: f64::NEG_INFINITY,
        high: f64::INFINITY,
    }
}

fn solved(unknowns: &[[f64; 4]], rows: Vec<Row>) -> Solved {
    let unknowns = unknowns.iter().map(|it| unknown(it)).collect();
    solve(&Programme { unknowns, rows }).expect("a programme that can be solved")
}

#[track_caller]
fn close(found: &[f64], wanted: &[f64]) {
    let near = found
        .iter()
        .zip(wanted)
        .all(|(one, other)| (one - other).abs() <= 1e-6);
    assert!(
        near && found.len() == wanted.len(),
        "{found:?}, not {wanted:?}"
    );
}

/// Two hundred programmes shaped like cakes, solved by HiGHS: the same cost, the same verdict, limits missed by as
/// little.
#[test]
fn another_solver_finds_the_same() {
    let all = programmes();
    let (mut dearest, mut furthest) = ((0.0, 0), (0.0, 0));
    for (index, given) in all.iter().enumerate() {
        let found = solve(&given.programme).expect("an answer");
        let worse = |off: f64, than: (f64, usize)| if off > than.0 { (off, index) } else { than };
        if let Some(cost) = given.cost {
            assert_eq!(found.missed, [], "programme {index} has limits that hold");
            dearest = worse((found.cost - cost).abs() / cost.max(1.0), dearest);
        } else {
            assert_ne!(found.missed, [], "programme {index} clashes");
            let missed = found.missed.iter();
            let missed: f64 = missed.map(|(at, by)| by.abs() / given.sizes[*at]).sum();
            furthest = worse((missed - given.missed).abs() / given.missed, furthest);
        }
    }
    println!(
        "{} programmes; cost off by {:.1e} at worst (programme {}), missed limits by {:.1e} (programme {})",
        all.len(),
        dearest.0,
        dearest.1,
        furthest.0,
        furthest.1
    );
    assert!(all.len() == 200 && dearest.0 < 1e-4 && furthest.0 < 1e-4);
}

/// A comes down from 100 to 0; B, which brings half as much, may rise. The sum a + b/2 stands at 100 and is worth 3 a
/// unit, B costs 1 a gram. A gram more of B saves half a unit, 1.5, and costs 1: so B rises by 200, until the sum is
/// whole. 100 for A, 200 for B.
#[test]
fn what_leaves_is_made_up_for_where_that_is_cheaper() {
    let found = solved(
        &[[100.0, 0.0, 0.0, 1.0], [0.0, 0.0, 500.0, 1.0]],
        vec![row(&[1.0, 0.5], 100.0, 0.0, 3.0)],
    );
    close(&found.amounts, &[0.0, 200.0]);
    close(&[found.cost], &[300.0]);
}

/// The same at 1.5 a unit: a gram of B saves 0.75 and costs 1, so nothing moves but A. 100 for A, 150 for the sum.
#[test]
fn what_leaves_is_let_go_where_that_is_cheaper() {
    let found = solved(
        &[[100.0, 0.0, 0.0, 1.0], [0.0, 0.0, 500.0, 1.0]],
        vec![row(&[1.0, 0.5], 100.0, 0.0, 1.5)],
    );
    close(&found.amounts, &[0.0, 0.0]);
    close(&[found.cost], &[250.0]);
}

/// Milk 200 g gives way to cream. Water: 0.9 milk + 0.6 cream + 1 water, 180 before, free within 6. Fat: 0.04 milk +
/// 0.3 cream, 8 before, at most 36, worth nothing. Cream must be 100 at least, water costs 1 a gram, a unit of water
/// outside 2. With 100 of cream the water stands at 60, so 114 of water bring it to 174, the edge of what is free: each
/// saves 2 and costs 1. More cream costs 2 a gram and saves 1.2. Fat stands at 30, under its limit.
/// 200 x 0.5 for the milk + 100 x 2 for the cream + 114 = 414.
#[test]
fn only_what_is_outside_the_free_width_is_mended() {
    let mut fat = row(&[0.04, 0.3, 0.0], 8.0, 0.0, 0.0);
    fat.high = 36.0;
    let found = solved(
        &[
            [200.0, 0.0, 0.0, 0.5],
            [0.0, 100.0, 400.0, 2.0],
            [0.0, 0.0, 400.0, 1.0],
        ],
        vec![row(&[0.9, 0.6, 1.0], 180.0, 6.0, 2.0), fat],
    );
    close(&found.amounts, &[0.0, 100.0, 114.0]);
    close(&[found.cost], &[414.0]);
}

/// x + y is to be 10 and x - y is to be 4 by limits that hold: x = 7, y = 3, from 0 and 0 at 1 and 2 a unit: 13.
#[test]
fn limits_hold_whatever_they_cost() {
    let held = |per_unit: [f64; 2], at: f64| Row {
        low: at,
        high: at,
        ..row(&per_unit, at, 0.0, 0.0)
    };
    let found = solved(
        &[[0.0, 0.0, 50.0, 1.0], [0.0, 0.0, 50.0, 2.0]],
        vec![held([1.0, 1.0], 10.0), held([1.0, -1.0], 4.0)],
    );
    close(&found.amounts, &[7.0, 3.0]);
    close(&[found.cost], &[13.0]);
    assert_eq!(found.missed, []);
}

/// x may be 10 at most, and its row asks for 12 at least: missed by 2. The other row, y at least 5, holds.
#[test]
fn a_limit_out_of_reach_is_missed_by_what_is_lacking() {
    let mut first = row(&[1.0, 0.0], 12.0, 0.0, 0.0);
    first.low = 12.0;
    let mut second = row(&[0.0, 1.0], 5.0, 0.0, 0.0);
    second.low = 5.0;
    let found = solved(
        &[[4.0, 0.0, 10.0, 1.0], [4.0, 0.0, 10.0, 1.0]],
        vec![first, second],
    );
    close(&found.amounts, &[10.0, 5.0]);
    let [(0, by)] = found.missed[..] else {
        panic!("one limit is missed, not {:?}", found.missed);
    };
    close(&[by], &[-2.0]);
}

/// Three rows: x at least 8, y at least 8, x + y at most 10. Whatever x and y up to 8 are, what is missed is 6 in all:
/// (8 - x) + (8 - y) + (x + y - 10). From 8 and 8 nothing needs to move, and one row misses all of it.
#[test]
fn a_clash_is_left_in_few_rows() {
    let limited = |per_unit: [f64; 2], low: f64, high: f64| Row {
        low,
        high,
        ..row(&per_unit, 8.0, 0.0, 0.0)
    };
    let none = f64::INFINITY;
    let found = solved(
        &[[8.0, 0.0, 20.0, 1.0], [8.0, 0.0, 20.0, 1.0]],
        vec![
            limited([1.0, 0.0], 8.0, none),
            limited([0.0, 1.0], 8.0, none),
            limited([1.0, 1.0], -none, 10.0),
        ],
    );
    close(&found.amounts, &[8.0, 8.0]);
    let [(2, by)] = found.missed[..] else {
        panic!("the sum misses all of it, not {:?}", found.missed);
    };
    close(&[by], &[6.0]);
}

/// The same milk on two lines, 100 and 50: 30 less are wanted by a limit, and each gives a fifth. At a floor of 90
/// for the first, it gives 10 and the second the other 20. Of 6 and 9, where the second may be 8 at most, a row wants 12
/// of the 14 left: the 2 are shared as 6 to 9, whatever the second was brought down to.
#[test]
fn lines_that_are_alike_share_the_change() {
    let mut both = row(&[1.0, 1.0], 150.0, 0.0, 0.0);
    both.high = 120.0;
    let lines = |floor: f64| [[100.0, floor, 300.0, 1.0], [50.0, 0.0, 300.0, 1.0]];
    close(
        &solved(&lines(0.0), vec![both.clone()]).amounts,
        &[80.0, 40.0],
    );
    close(&solved(&lines(90.0), vec![both]).amounts, &[90.0, 30.0]);
    let found = solved(
        &[[6.0, 1.0, 8.0, 1.0], [9.0, 3.0, 8.0, 1.0]],
        vec![row(&[1.0, 1.0], 12.0, 0.0, 3.0)],
    );
    close(&found.amounts, &[5.2, 6.8]);
}

/// Butter 80 g becomes oil and back: what the way there changes, the way back undoes. Fat 0.8 b + o stays at 64 and
/// water 0.2 b + w at 16, by rows worth more than all else; there 64 of oil and 16 of water come, back they go.
#[test]
fn there_and_back_is_where_it_began() {
    let rows = vec![
        row(&[0.8, 1.0, 0.0], 64.0, 0.0, 100.0),
        row(&[0.2, 0.0, 1.0], 16.0, 0.0, 100.0),
    ];
    let there = solved(
        &[
            [80.0, 0.0, 0.0, 1.0],
            [0.0, 0.0, 300.0, 1.0],
            [0.0, 0.0, 300.0, 1.0],
        ],
        rows.clone(),
    );
    close(&there.amounts, &[0.0, 64.0, 16.0]);
    let back = solved(
        &[
            [0.0, 80.0, 80.0, 1.0],
            [64.0, 0.0, 300.0, 1.0],
            [16.0, 0.0, 300.0, 1.0],
        ],
        rows,
    );
    close(&back.amounts, &[80.0, 0.0, 0.0]);
}

/// Every kind of bad input that `solve` names, and nothing else, has no answer.
#[test]
fn bad_input_has_no_answer() {
    let good = Programme {
        unknowns: vec![unknown(&[1.0, 0.0, 2.0, 1.0])],
        rows: vec![row(&[1.0], 1.0, 0.0, 1.0)],
    };
    assert!(solve(&good).is_some());
    let empty = solve(&Programme::default()).expect("nothing asked is nothing done");
    assert!(empty.amounts.is_empty() && empty.cost == 0.0 && empty.missed.is_empty());
    let bad: [fn(&mut Programme); 12] = [
        |it| it.unknowns[0].start = f64::NAN,
        |it| it.unknowns[0].least = 3.0,
        |it| it.unknowns[0].most = f64::INFINITY,
        |it| it.unknowns[0].price = -1.0,
        |it| it.rows[0].target = f64::NAN,
        |it| it.rows[0].free = -1.0,
        |it| it.rows[0].price = f64::INFINITY,
        |it| it.rows[0].low = f64::INFINITY,
        |it| it.rows[0].high = f64::NAN,
        |it| (it.rows[0].low, it.rows[0].high) = (2.0, 1.0),
        |it| it.rows[0].per_unit = vec![],
        |it| it.rows[0].per_unit = vec![2e12],
    ];
    for (index, spoil) in bad.into_iter().enumerate() {
        let mut programme = good.clone();
        spoil(&mut programme);
        assert_eq!(solve(&programme), None, "bad input {index}");
    }
}
