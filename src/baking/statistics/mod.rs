//! What few observations say and what they cannot: least squares with its scatter, and the designs that serve it.
//!
//! Knows nothing of baking. An observation is an amount of one factor (or of two) and one outcome, both plain numbers
//! in any unit. Methods are those of the NIST/SEMATECH e-Handbook of Statistical Methods, chapters 1, 4 and 5, unless
//! a function says otherwise.
//!
//! Matrices are nalgebra's, some 10 kB compressed in the module; the distributions are puruspe's, 1 kB (statrs' came to
//! 4.6 kB).

pub mod apart;
pub mod best;
pub mod curve;
pub mod design;
pub mod effects;
pub mod least_squares;
pub mod scatter;
pub mod student;
pub mod surface;
pub mod turning;

/// Why nothing can be said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cannot {
    /// There is no observation.
    Nothing,
    /// There is one observation only.
    Single,
    /// Every observation has the same amount.
    SameAmount,
    /// A number is not finite, or so large that sums of squares of it are not.
    NotFinite,
    /// The terms asked for cannot all be told apart by these amounts.
    NotApart,
}

/// The largest number taken: beyond it fourth powers, which least squares sums, lose all that is small.
const LARGEST: f64 = 1e60;

/// Whether each number can be reckoned with.
fn all_plain(mut numbers: impl Iterator<Item = f64>) -> bool {
    numbers.all(|number| number.abs() <= LARGEST)
}
