//! The parser of a record, which goes on where it stopped for want of bytes.

use super::batch::Batch;
use csv_core::{ReadRecordResult, Reader, ReaderBuilder};

/// csv-core, and how far it has come with the record that starts at the start of what it is fed.
pub(super) struct Parser {
    core: Reader,
    /// The byte between fields.
    pub(super) delimiter: u8,
    /// Bytes of the record that it has seen.
    pub(super) seen: usize,
    /// Bytes of text that it has written for the record.
    pub(super) bytes: usize,
    /// The record was ended by the end of the input, so that no line end is among the bytes seen.
    pub(super) finished: bool,
    /// Fields that it has ended.
    pub(super) fields: usize,
}

impl Parser {
    pub(super) fn new(delimiter: u8) -> Self {
        let mut parser = Self {
            core: ReaderBuilder::new().delimiter(delimiter).build(),
            delimiter,
            seen: 0,
            finished: false,
            bytes: 0,
            fields: 0,
        };
        parser.reset();
        parser
    }

    /// Back to the start of a record. Not by a clone of a fresh reader: a cloned `csv_core::Reader` (0.1.13) has lost
    /// which of its states end a record.
    fn reset(&mut self) {
        self.core.reset();
        // csv-core drops a byte order mark at its first reading: ours is dropped already, and a second one is text. An empty
        // line is skipped, but it counts as a reading.
        self.core.read_record(b"\n", &mut [0; 1], &mut [0; 1]);
    }

    /// Forgets the record that was begun.
    pub(super) fn restart(&mut self) {
        if self.seen > 0 {
            self.reset();
        }
        self.next();
    }

    /// Makes ready for the next record, after one that was complete.
    pub(super) fn next(&mut self) {
        (self.seen, self.bytes, self.fields) = (0, 0, 0);
        self.finished = false;
    }

    /// Parses on to the end of the record that starts at the start of `input`, or as far as there is input; says whether
    /// the record is complete. If so, the byte that ended it has been seen too.
    #[inline]
    pub(super) fn feed(&mut self, input: &[u8], batch: &mut Batch) -> bool {
        while self.seen < input.len() {
            match self.step(&input[self.seen..], batch) {
                ReadRecordResult::Record => return true,
                ReadRecordResult::InputEmpty | ReadRecordResult::End => return false,
                ReadRecordResult::OutputFull => batch.grow_bytes(),
                ReadRecordResult::OutputEndsFull => batch.grow_ends(),
            }
        }
        false
    }

    /// Ends the record for want of further input.
    pub(super) fn finish(&mut self, batch: &mut Batch) {
        while self.step(&[], batch) == ReadRecordResult::OutputEndsFull {
            batch.grow_ends();
        }
        self.finished = true;
        self.reset();
    }

    #[inline]
    fn step(&mut self, input: &[u8], batch: &mut Batch) -> ReadRecordResult {
        let bytes = &mut batch.bytes[batch.bytes_used + self.bytes..];
        let ends = &mut batch.ends[batch.ends_used + self.fields..];
        let (result, seen, bytes, fields) = self.core.read_record(input, bytes, ends);
        self.seen += seen;
        self.bytes += bytes;
        self.fields += fields;
        result
    }
}
