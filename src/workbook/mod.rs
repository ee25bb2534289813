//! Rows of a workbook's sheet, as text; knows nothing of lights.
//!
//! A cell is read as the text that it would have in a CSV, so that a catalogue means the same in both: see the `text` module
//! for numbers, dates and errors. A sheet is read row by row on a thread of its own and never held whole. What is held
//! is the workbook's table of texts, which many cells share; its size has a limit.
//!
//! A workbook comes from anybody. Before a row is read, every part of it is unpacked once and checked: its sum, its size, and
//! that no piece of it is longer than [`LONGEST_PIECE`], for the parser holds a piece whole. Should the parser
//! panic all the same, that is an error of the file and ends nothing else.

mod book;
mod error;
mod followed;
mod gathering;
mod kind;
mod package;
mod pieces;
mod place;
mod rows;
mod text;

pub use book::{Sheet, Workbook};
pub use error::WorkbookError;
pub use kind::{Kind, MAGIC_LEN};
pub use package::{LONGEST_PIECE, MOST_BESIDE_SHEETS};
pub use place::{cell_name, row_name};
pub use rows::{LONGEST_ROW, Row, Rows};
pub use text::NEVER_CALCULATED;
