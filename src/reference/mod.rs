//! The reference table: what a die of each colour drops, what current each drive class stands for, and what is known of
//! drivers, each with its source and how far to trust it.
//!
//! A [`Table`] is a value that is passed along, never a global, so that a table made from somebody's own bench readings
//! can take the place of the built-in one.

mod class;
mod diode;
pub mod driver;
pub mod lamp;
mod table;

pub use class::ClassRow;
pub use diode::{Die, DiodeRow};
pub use table::{ClassId, Table, TableError, diodes_as_csv};
