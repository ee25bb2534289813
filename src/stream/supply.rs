//! Where batches come from.

use super::{Batch, Notice, RecordReader};
use std::io::{self, Read};

/// Gives batches of records, in the order of the input.
pub trait Supply {
    /// Fills `batch` with the next records, at least one; `false` at the end of the input.
    ///
    /// # Errors
    ///
    /// What the input gives. Records before the failure have been handed on by then.
    fn read_batch(&mut self, batch: &mut Batch) -> io::Result<bool>;

    /// What had to be guessed so far.
    fn notices(&self) -> Vec<Notice>;
}

impl<R: Read> Supply for RecordReader<R> {
    fn read_batch(&mut self, batch: &mut Batch) -> io::Result<bool> {
        Self::read_batch(self, batch)
    }

    fn notices(&self) -> Vec<Notice> {
        Self::notices(self)
    }
}
