//! Linear least squares with the standard uncertainties of its coefficients.
//!
//! Orthogonalisation of the columns (modified Gram-Schmidt, carried on to the right-hand side), which does not square
//! the condition number as the normal equations do: Bjorck, Solving linear least squares problems by Gram-Schmidt
//! orthogonalization, BIT 7 (1967) 1-21 (from memory). Uncertainties by GUM H.3: the residual variance with N - p degrees of
//! freedom times the inverse of X'X.

use super::number;

/// A column that keeps less than this share of its length once the earlier columns are taken out of it depends on them.
const DEPENDENT: f64 = 1e-10;

/// The solution of one system.
#[derive(Debug, Clone, PartialEq)]
pub struct LeastSquares {
    /// The coefficient of each column.
    pub coefficients: Vec<f64>,
    /// Sum of the squared residuals.
    pub ssr: f64,
    /// The diagonal of the inverse of X'X.
    inverse_diagonal: Vec<f64>,
    observations: usize,
}

impl LeastSquares {
    /// Standard deviation of a single observation, sqrt(SSR/(N - p)); absent if there are no more observations than
    /// coefficients.
    #[must_use]
    pub fn scatter(&self) -> Option<f64> {
        let freedom = self.observations.checked_sub(self.coefficients.len())?;
        (freedom > 0).then(|| (self.ssr / number(freedom)).sqrt())
    }

    /// Standard uncertainty of a coefficient (type A); absent where the scatter is, or if there is no such coefficient.
    #[must_use]
    pub fn u(&self, coefficient: usize) -> Option<f64> {
        Some(self.scatter()? * self.inverse_diagonal.get(coefficient)?.sqrt())
    }
}

/// The coefficients b that make the sum of squares of `y - sum_j b_j * columns_j` least.
///
/// `None` if the columns are not as long as `y`, are more than it is long, or depend on one another.
#[must_use]
pub fn least_squares(columns: &[Vec<f64>], y: &[f64]) -> Option<LeastSquares> {
    let p = columns.len();
    if p > y.len() || columns.iter().any(|column| column.len() != y.len()) {
        return None;
    }
    // `rest` ends as the columns made orthogonal, `r` as the triangle with X = Q R.
    let mut rest = columns.to_vec();
    let mut residual = y.to_vec();
    let mut r = vec![vec![0.0; p]; p];
    let mut projected = vec![0.0; p];
    for j in 0..p {
        let (done, later) = rest.split_at_mut(j + 1);
        let unit = &mut done[j];
        let length = dot(unit, unit).sqrt();
        let least = DEPENDENT * dot(&columns[j], &columns[j]).sqrt();
        if length.is_nan() || length <= least {
            return None;
        }
        for x in unit.iter_mut() {
            *x /= length;
        }
        r[j][j] = length;
        for (column, entry) in later.iter_mut().zip(&mut r[j][j + 1..]) {
            *entry = take_out(unit, column);
        }
        projected[j] = take_out(unit, &mut residual);
    }
    let coefficients = back_substitute(&r, &projected);
    let mut inverse_diagonal = vec![0.0; p];
    for k in 0..p {
        let unit: Vec<f64> = (0..p).map(|i| if i == k { 1.0 } else { 0.0 }).collect();
        for (sum, entry) in inverse_diagonal.iter_mut().zip(back_substitute(&r, &unit)) {
            *sum += entry * entry;
        }
    }
    Some(LeastSquares {
        coefficients,
        ssr: dot(&residual, &residual),
        inverse_diagonal,
        observations: y.len(),
    })
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}

/// Takes the part along `unit` out of `column` and returns its length.
fn take_out(unit: &[f64], column: &mut [f64]) -> f64 {
    let part = dot(unit, column);
    for (x, q) in column.iter_mut().zip(unit) {
        *x -= part * q;
    }
    part
}

/// Solves R b = z for an upper triangle R.
fn back_substitute(r: &[Vec<f64>], z: &[f64]) -> Vec<f64> {
    let mut b = z.to_vec();
    for j in (0..b.len()).rev() {
        let known = dot(&r[j][j + 1..], &b[j + 1..]);
        b[j] = (b[j] - known) / r[j][j];
    }
    b
}
