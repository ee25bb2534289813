//! The parser of a record, which goes on where it stopped for want of bytes.

use super::batch::BLOCK;
use super::record::Span;
use csv_core::{ReadRecordResult, Reader, ReaderBuilder};

/// How much of its buffers a parser keeps after a giant record, in bytes.
const KEPT: usize = 4 * BLOCK;

/// csv-core, and how far it has come with the record that starts at the start of what it is fed.
pub(super) struct Parser {
    core: Reader,
    /// The byte between fields.
    pub(super) delimiter: u8,
    /// Bytes of the record that it has seen.
    pub(super) seen: usize,
    /// The record was ended by the end of the input, so that no line end is among the bytes seen.
    pub(super) finished: bool,
    /// The text of the record, longer than what is used of it.
    text: Vec<u8>,
    used: usize,
    /// Where its fields end in the text, longer than what is used of it.
    ends: Vec<usize>,
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
            text: Vec::new(),
            used: 0,
            ends: Vec::new(),
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
        (self.seen, self.used, self.fields) = (0, 0, 0);
        self.finished = false;
        if self.text.len() > KEPT {
            self.text = Vec::new();
        }
        if self.ends.len() > KEPT / size_of::<usize>() {
            self.ends = Vec::new();
        }
    }

    /// Parses on to the end of the record that starts at the start of `input`, or as far as there is input; says whether
    /// the record is complete. If so, the byte that ended it has been seen too.
    pub(super) fn feed(&mut self, input: &[u8]) -> bool {
        while self.seen < input.len() {
            match self.step(&input[self.seen..]) {
                ReadRecordResult::Record => return true,
                ReadRecordResult::InputEmpty | ReadRecordResult::End => return false,
                ReadRecordResult::OutputFull => grow(&mut self.text, BLOCK),
                ReadRecordResult::OutputEndsFull => grow(&mut self.ends, 64),
            }
        }
        false
    }

    /// Ends the record for want of further input.
    pub(super) fn finish(&mut self) {
        while self.step(&[]) == ReadRecordResult::OutputEndsFull {
            grow(&mut self.ends, 64);
        }
        self.finished = true;
        self.reset();
    }

    fn step(&mut self, input: &[u8]) -> ReadRecordResult {
        let (text, ends) = (&mut self.text[self.used..], &mut self.ends[self.fields..]);
        let (result, seen, used, fields) = self.core.read_record(input, text, ends);
        self.seen += seen;
        self.used += used;
        self.fields += fields;
        result
    }

    /// The text of the record: its fields one after another, and what there is of one that has not ended.
    pub(super) fn bytes(&self) -> &[u8] {
        &self.text[..self.used]
    }

    /// Where the fields that have ended stand in [`bytes`](Self::bytes).
    pub(super) fn spans(&self) -> impl Iterator<Item = Span> {
        let ends = &self.ends[..self.fields];
        let starts = std::iter::once(0).chain(ends.iter().copied());
        starts.zip(ends).map(|(start, end)| Span { start, end: *end })
    }
}

fn grow<T: Clone + Default>(buffer: &mut Vec<T>, least: usize) {
    buffer.resize(buffer.len() + (buffer.len() / 2).max(least), T::default());
}
