//! Rows of a table -> facts: which column is which, what its cells say, and what is wrong with them.
//!
//! A row that cannot be read becomes a [`Fault`](crate::facts::Fault), never a guess and never a lost row.

mod columns;
mod complete;
mod numbers;
mod row;
mod together;

pub use columns::{Columns, Field, HeaderError};
pub use complete::complete;
pub use numbers::{amount, printed, quantity};
