//! Which of several factors the observations can tell apart: the rank of the design.
//!
//! Factors whose amounts always changed together have no effects of their own that could be seen, only a joint one.
//! Any such group is a shortest sum of columns that comes to nothing, found by elimination with the largest pivot (Golub
//! and Van Loan, Matrix Computations, 3.4).

use super::all_plain;

/// What can be said of each factor.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Apart {
    /// Factors whose effect can be told from all others', by their places.
    pub told: Vec<usize>,
    /// Groups of factors whose effects cannot be told from one another's.
    pub mixed: Vec<Vec<usize>>,
    /// Factors that never changed.
    pub still: Vec<usize>,
}

/// Less than this part of a column's size is rounding.
const ROUNDING: f64 = 1e-9;

/// Looks at the amounts of all factors: one row for each observation, one column for each factor. `None` where rows
/// are not all of one length or a number is not finite.
pub fn apart(rows: &[Vec<f64>]) -> Option<Apart> {
    let factors = rows.first().map_or(0, Vec::len);
    let sound = rows.iter().all(|row| row.len() == factors);
    if !(sound && all_plain(rows.iter().flatten().copied())) {
        return None;
    }
    let (mut columns, mut still) = (Vec::new(), Vec::new());
    for factor in 0..factors {
        match scaled(rows.iter().map(|row| row[factor]).collect()) {
            Some(column) => columns.push((factor, column)),
            None => still.push(factor),
        }
    }
    let mut groups: Vec<Vec<usize>> = columns.iter().map(|(factor, _)| vec![*factor]).collect();
    for sum in sums_to_nothing(columns) {
        join(&mut groups, &sum);
    }
    groups.sort();
    let (told, mixed): (Vec<_>, Vec<_>) = groups.into_iter().partition(|group| group.len() == 1);
    Some(Apart {
        told: told.into_iter().flatten().collect(),
        mixed,
        still,
    })
}

/// A column less its mean, at length 1; `None` where it does not change.
fn scaled(mut column: Vec<f64>) -> Option<Vec<f64>> {
    let largest = column.iter().fold(0.0, |most: f64, it| most.max(it.abs()));
    let mean = column.iter().sum::<f64>() / column.len() as f64;
    column.iter_mut().for_each(|it| *it -= mean);
    let length = column.iter().map(|it| it * it).sum::<f64>().sqrt();
    column.iter_mut().for_each(|it| *it /= length);
    (length > ROUNDING * largest).then_some(column)
}

/// Each column that is a sum of columns before it, with those that it is a sum of, by their factors.
fn sums_to_nothing(mut columns: Vec<(usize, Vec<f64>)>) -> Vec<Vec<usize>> {
    let rows = columns.first().map_or(0, |(_, column)| column.len());
    // The columns that stand by themselves so far: each is 0 but in a row of its own.
    let mut alone: Vec<(usize, usize)> = Vec::new();
    let mut found = Vec::new();
    for place in 0..columns.len() {
        let (factor, column) = columns[place].clone();
        let free = (0..rows).filter(|row| alone.iter().all(|(_, taken)| taken != row));
        let largest = free.max_by(|a, b| f64::total_cmp(&column[*a].abs(), &column[*b].abs()));
        match largest.filter(|row| column[*row].abs() > ROUNDING) {
            Some(row) => {
                clear(&mut columns, &column, row);
                alone.push((factor, row));
            }
            None => {
                let parts = alone
                    .iter()
                    .filter(|(_, row)| column[*row].abs() > ROUNDING);
                found.push(parts.map(|(part, _)| *part).chain([factor]).collect());
            }
        }
    }
    found
}

/// Adds multiples of a row to all others so that `column` becomes 0 but in that row.
fn clear(columns: &mut [(usize, Vec<f64>)], column: &[f64], row: usize) {
    for (_, other) in columns {
        let share = other[row] / column[row];
        for (place, entry) in other.iter_mut().enumerate() {
            if place != row {
                *entry -= share * column[place];
            }
        }
    }
}

/// Makes one group of all groups that have a member in common with `sum`.
fn join(groups: &mut Vec<Vec<usize>>, sum: &[usize]) {
    let (touched, rest): (Vec<_>, Vec<_>) = std::mem::take(groups)
        .into_iter()
        .partition(|group| group.iter().any(|member| sum.contains(member)));
    *groups = rest;
    let mut joined: Vec<usize> = touched.into_iter().flatten().collect();
    joined.sort_unstable();
    groups.push(joined);
}
