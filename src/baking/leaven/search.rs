//! The least of a function over amounts on the scale's grid, found by steps that are halved.

use super::shelf::Amounts;

/// The least and the most of each.
type Bounds<'a> = (&'a Amounts, &'a Amounts);

/// How many steps one amount may go while another goes one: soda weighs a third of the powder that does its work.
const TURNS: std::ops::RangeInclusive<i64> = -3..=3;

/// The amounts with the least cost that steps down from `start` lead to. A step changes one amount, or trades one
/// for another; the trades let it walk along a valley. Steps begin at `stride` and end at a tenth of a gram.
pub fn descend(
    start: Amounts,
    bounds: Bounds,
    stride: u32,
    cost: &impl Fn(&Amounts) -> f64,
) -> Amounts {
    let (mut best, mut least) = (start, cost(&start));
    let mut step = stride.max(1);
    while step > 0 {
        let found = neighbours(&best, bounds, step)
            .map(|amounts| (cost(&amounts), amounts))
            .min_by(|one, other| one.0.total_cmp(&other.0));
        match found {
            Some((lower, amounts)) if lower < least => (best, least) = (amounts, lower),
            _ => step /= 2,
        }
    }
    best
}

/// The amounts a few steps away in one or two of them, within their bounds.
fn neighbours(
    amounts: &Amounts,
    (least, most): Bounds,
    step: u32,
) -> impl Iterator<Item = Amounts> {
    let pairs = (0..amounts.len())
        .flat_map(|first| (first + 1..amounts.len()).map(move |second| (first, second)));
    let turns = TURNS.flat_map(|one| TURNS.map(move |other| (one, other)));
    pairs.flat_map(move |(first, second)| {
        turns.clone().map(move |(one, other)| {
            let mut next = *amounts;
            for (at, turn) in [(first, one), (second, other)] {
                let to = i64::from(next[at]) + turn * i64::from(step);
                next[at] = to.clamp(i64::from(least[at]), i64::from(most[at])) as u32;
            }
            next
        })
    })
}

/// The amounts that are a tenth of a gram away in one of them.
pub fn nearest(amounts: &Amounts, (least, most): Bounds) -> Vec<Amounts> {
    let mut found = Vec::new();
    for at in 0..amounts.len() {
        for to in [amounts[at].checked_sub(1), Some(amounts[at] + 1)] {
            if let Some(to) = to.filter(|to| (least[at]..=most[at]).contains(to)) {
                let mut next = *amounts;
                next[at] = to;
                found.push(next);
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A narrow slanting valley whose lowest point is known: 2 a + b = 90 and a = 31 meet at b = 28.
    #[test]
    fn it_walks_along_a_valley() {
        let cost = |amounts: &Amounts| {
            let [a, b, c, _] = amounts.map(f64::from);
            (2.0 * a + b - 90.0).powi(2) + 0.01 * (a - 31.0).powi(2) + c
        };
        let found = descend([0, 90, 5, 0], (&[0; 4], &[100, 100, 100, 0]), 25, &cost);
        assert_eq!(found, [31, 28, 0, 0]);
    }

    #[test]
    fn it_stays_within_its_bounds() {
        let cost = |amounts: &Amounts| -f64::from(amounts[0]) + f64::from(amounts[1]);
        assert_eq!(
            descend([0, 3, 0, 0], (&[0; 4], &[7, 9, 0, 0]), 64, &cost),
            [7, 0, 0, 0]
        );
    }
}
