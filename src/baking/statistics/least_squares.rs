//! Linear least squares by Householder reflections (Golub 1965; Golub and Van Loan, Matrix Computations, 5.2 and 5.3).

use super::all_plain;
use nalgebra::{DMatrix, DVector};

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
    let design = DMatrix::from_fn(rows.len(), terms, |row, term| rows[row][term]);
    let lengths: Vec<f64> = design.column_iter().map(|column| column.norm()).collect();
    let turned = design.qr();
    let triangle = turned.r();
    let is_apart = |term: usize| triangle[(term, term)].abs() > DEPENDENT * lengths[term];
    if !(0..terms).all(is_apart) {
        return None;
    }
    let mut left = DVector::from_column_slice(outcomes);
    turned.q_tr_mul(&mut left);
    let mut inverse = DMatrix::identity(terms, terms);
    triangle.solve_upper_triangular_mut(&mut inverse);
    let coefficients = &inverse * left.rows(0, terms);
    let products = &inverse * inverse.transpose();
    Some(LeastSquares {
        coefficients: coefficients.iter().copied().collect(),
        inverse: (0..terms)
            .map(|row| products.row(row).iter().copied().collect())
            .collect(),
        residual: left.rows(terms, rows.len() - terms).norm_squared(),
        degrees: rows.len() - terms,
    })
}

fn dot(one: &[f64], other: &[f64]) -> f64 {
    one.iter().zip(other).map(|(a, b)| a * b).sum()
}
