//! Linear least squares by Householder reflections (Golub 1965; Golub and Van Loan, Matrix Computations, 5.2 and 5.3).

use super::all_plain;

/// A column of which less than this part is left beside the columns before it is a sum of them.
const DEPENDENT: f64 = 1e-9;

/// The coefficients with the least sum of squares.
#[derive(Clone, Debug, PartialEq)]
pub struct LeastSquares {
    /// One for each term.
    pub coefficients: Vec<f64>,
    /// The inverse of the sums of products of the terms: times the variance it is the covariance of the coefficients.
    pub inverse: Vec<Vec<f64>>,
    /// The sum of squares that is left.
    pub residual: f64,
    /// Observations less terms.
    pub degrees: usize,
}

impl LeastSquares {
    /// The value of the fit for these terms.
    pub fn value(&self, terms: &[f64]) -> f64 {
        dot(terms, &self.coefficients)
    }

    /// The variance of that value against the variance of one observation.
    pub fn leverage(&self, terms: &[f64]) -> f64 {
        let products = self.inverse.iter().map(|row| dot(row, terms));
        let sum: f64 = terms.iter().zip(products).map(|(a, b)| a * b).sum();
        sum.max(0.0)
    }
}

/// Fits `outcomes`, one for each of `rows`, by the terms in the columns of the rows.
///
/// `None` where the terms cannot be told apart, where there are fewer observations than terms, where rows are not all
/// of one length, and where a number is not finite.
pub fn least_squares(rows: &[Vec<f64>], outcomes: &[f64]) -> Option<LeastSquares> {
    let terms = rows.first()?.len();
    let sound = rows.len() == outcomes.len()
        && rows.len() >= terms
        && rows.iter().all(|row| row.len() == terms)
        && all_plain(rows.iter().flatten().chain(outcomes).copied());
    if !sound {
        return None;
    }
    let mut columns: Vec<Vec<f64>> = (0..terms)
        .map(|term| rows.iter().map(|row| row[term]).collect())
        .collect();
    let mut left = outcomes.to_vec();
    for term in 0..terms {
        reflect(&mut columns, &mut left, term)?;
    }
    let inverse = inverse_of_triangle(&columns);
    let products = |row: &Vec<f64>| inverse.iter().map(|other| dot(row, other)).collect();
    Some(LeastSquares {
        coefficients: inverse.iter().map(|row| dot(row, &left)).collect(),
        inverse: inverse.iter().map(products).collect(),
        residual: left[terms..].iter().map(|it| it * it).sum(),
        degrees: rows.len() - terms,
    })
}

/// Turns a column, those after it and the outcomes so that the column is 0 below its own place.
fn reflect(columns: &mut [Vec<f64>], outcomes: &mut [f64], term: usize) -> Option<()> {
    let (whole, below) = (length(&columns[term]), length(&columns[term][term..]));
    if below <= DEPENDENT * whole {
        return None;
    }
    let mut mirror = columns[term][term..].to_vec();
    mirror[0] += below.copysign(mirror[0]);
    let size = dot(&mirror, &mirror);
    let turn = |column: &mut [f64]| {
        let share = 2.0 * dot(&mirror, column) / size;
        for (entry, normal) in column.iter_mut().zip(&mirror) {
            *entry -= share * normal;
        }
    };
    for column in &mut columns[term..] {
        turn(&mut column[term..]);
    }
    turn(&mut outcomes[term..]);
    Some(())
}

/// The inverse of the upper triangle that the turned columns hold, row by row.
fn inverse_of_triangle(columns: &[Vec<f64>]) -> Vec<Vec<f64>> {
    let size = columns.len();
    let solved: Vec<Vec<f64>> = (0..size).map(|unit| back(columns, unit)).collect();
    (0..size)
        .map(|row| solved.iter().map(|column| column[row]).collect())
        .collect()
}

/// What the triangle turns into 1 at one place and 0 at all others.
fn back(columns: &[Vec<f64>], unit: usize) -> Vec<f64> {
    let mut rest = vec![0.0; columns.len()];
    rest[unit] = 1.0;
    for place in (0..=unit).rev() {
        rest[place] /= columns[place][place];
        for before in 0..place {
            rest[before] -= columns[place][before] * rest[place];
        }
    }
    rest
}

fn dot(one: &[f64], other: &[f64]) -> f64 {
    one.iter().zip(other).map(|(a, b)| a * b).sum()
}

fn length(column: &[f64]) -> f64 {
    dot(column, column).sqrt()
}
