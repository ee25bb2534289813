//! What is known about one light: plain types that every inner room shares.
//!
//! Nothing here computes a draw or judges a claim. Absent is `None`, never zero: a listing that gives no claim is not a
//! listing that claims nothing.

mod class;
mod colour;
mod fault;
mod listing;
mod note;
mod read;
mod tally;

pub use class::{Package, StatedClass};
pub use colour::{Colour, ColourWord};
pub use fault::Fault;
pub use listing::{Admitted, LampKind, Listing, MeterReading, Replaced, Stated, Supply, Tolerance};
pub use note::Note;
pub use read::{ColourCount, Left, LeftWhy, Read, Span, Taken};
pub use tally::{Count, Group, Tally};
