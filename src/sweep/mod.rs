//! Your own bench: readings of single dice on a bench supply become rows of a reference table.
//!
//! Text to [`Curve`]s ([`read`]), a curve to the parameters of the forward-voltage equation ([`fit`], by
//! [`least_squares`]), and from a [`Fit`] a row for the table ([`rows`]), a summary to print ([`summary`]) and a picture
//! ([`svg`]). Nothing here reads a file or prints.

mod cell;
mod curve;
mod fit;
mod least_squares;
mod read;
mod row;
mod summary;
mod svg;
mod warning;

pub use curve::{Curve, Point};
pub use fit::{Fit, Origin, Parameter, fit};
pub use least_squares::{LeastSquares, least_squares};
pub use read::read;
pub use row::{BIN_HALF_WIDTH, rows};
pub use summary::summary;
pub use svg::svg;
pub use warning::Warning;

/// A number of things as a factor; more than u32 holds never occurs in a text that fits into memory as readings.
fn number(count: usize) -> f64 {
    f64::from(u32::try_from(count).unwrap_or(u32::MAX))
}
