//! Some thousand records in flat buffers, recycled from batch to batch.

use super::{Record, RecordFault};
use encoding_rs::WINDOWS_1252;

/// How much text a batch holds before it is handed on, in bytes.
///
/// Small, because a row of output may be twenty times as long as its row of input, and several batches are under way.
pub(super) const BLOCK: usize = 128 * 1024;

/// How much of its buffers a batch keeps for the next round, after a giant record.
const KEPT: usize = 4 * BLOCK;

/// Where a record ends in the buffers of its batch; it starts where the one before it ends.
#[derive(Debug)]
struct Row {
    text_end: usize,
    ends_end: usize,
    raw_end: usize,
    line: u64,
    byte: u64,
    fault: Option<RecordFault>,
}

/// Records read together: their fields one after another in one buffer, their raw rows in another.
#[derive(Debug, Default)]
pub struct Batch {
    /// The fields of a sealed batch.
    text: String,
    /// The fields of a batch that is being filled; longer than what is used of it, for the parser writes into it.
    pub(super) bytes: Vec<u8>,
    pub(super) bytes_used: usize,
    /// Field ends, each relative to the start of its record; longer than what is used of it.
    pub(super) ends: Vec<usize>,
    pub(super) ends_used: usize,
    rows: Vec<Row>,
    raw: Vec<u8>,
    end_byte: u64,
}

/// Records of a batch that were not UTF-8.
#[derive(Debug, Clone, Copy)]
pub(super) struct Guessed {
    pub(super) first_line: u64,
    pub(super) records: u64,
}

impl Batch {
    /// How many records the batch holds.
    #[must_use]
    pub fn len(&self) -> usize {
        self.rows.len()
    }

    /// Whether it holds none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }

    /// How far into the input the reader had come with this batch, in bytes.
    #[must_use]
    pub fn end_byte(&self) -> u64 {
        self.end_byte
    }

    /// The record at `index`, from 0.
    #[must_use]
    #[inline]
    pub fn get(&self, index: usize) -> Option<Record<'_>> {
        let row = self.rows.get(index)?;
        let (text_start, ends_start, raw_start) = self.start(index);
        Some(Record {
            text: self.text.get(text_start..row.text_end)?,
            ends: &self.ends[ends_start..row.ends_end],
            raw: &self.raw[raw_start..row.raw_end],
            line: row.line,
            byte: row.byte,
            fault: row.fault,
        })
    }

    /// The records in the order of the input.
    pub fn iter(&self) -> impl Iterator<Item = Record<'_>> {
        (0..self.len()).filter_map(|index| self.get(index))
    }

    fn start(&self, index: usize) -> (usize, usize, usize) {
        match index.checked_sub(1).and_then(|before| self.rows.get(before)) {
            Some(row) => (row.text_end, row.ends_end, row.raw_end),
            None => (0, 0, 0),
        }
    }

    /// Empties the batch and makes it ready to be filled.
    pub(super) fn open(&mut self) {
        if self.bytes.is_empty() {
            // Not cleared: what it holds is overwritten, and clearing would mean to zero it again.
            self.bytes = std::mem::take(&mut self.text).into_bytes();
        }
        shorten(&mut self.bytes, KEPT);
        shorten(&mut self.raw, KEPT);
        shorten(&mut self.ends, KEPT / 8);
        self.bytes.resize(self.bytes.capacity().max(BLOCK), 0);
        if self.ends.is_empty() {
            self.ends.resize(4096, 0);
        }
        self.raw.clear();
        self.rows.clear();
        self.bytes_used = 0;
        self.ends_used = 0;
    }

    /// Whether enough is in it to be handed on.
    pub(super) fn is_full(&self) -> bool {
        self.raw.len() >= BLOCK
    }

    pub(super) fn grow_bytes(&mut self) {
        self.bytes.resize(self.bytes.len() + (self.bytes.len() / 2).max(BLOCK), 0);
    }

    pub(super) fn grow_ends(&mut self) {
        self.ends.resize(self.ends.len() + (self.ends.len() / 2).max(4096), 0);
    }

    /// Takes what the parser has written behind the last record as a record.
    pub(super) fn push(&mut self, parsed: Parsed, raw: &[u8], fault: Option<RecordFault>) {
        self.bytes_used += parsed.bytes;
        self.ends_used += parsed.fields;
        self.raw.extend_from_slice(raw);
        self.rows.push(Row {
            text_end: self.bytes_used,
            ends_end: self.ends_used,
            raw_end: self.raw.len(),
            line: parsed.line,
            byte: parsed.byte,
            fault,
        });
    }

    /// Ends the filling: checks that the fields are UTF-8, and reads each record that is not as Windows-1252.
    pub(super) fn seal(&mut self, end_byte: u64) -> Option<Guessed> {
        self.end_byte = end_byte;
        let mut bytes = std::mem::take(&mut self.bytes);
        bytes.truncate(self.bytes_used);
        match String::from_utf8(bytes) {
            Ok(text) if text.is_ascii() || self.cuts_characters_nowhere(&text) => {
                self.text = text;
                None
            }
            Ok(text) => Some(self.decode(text.as_bytes())),
            Err(wrong) => Some(self.decode(wrong.as_bytes())),
        }
    }

    /// Whether every field is UTF-8 by itself: halves of a character may meet where two fields do.
    fn cuts_characters_nowhere(&self, text: &str) -> bool {
        (0..self.rows.len()).all(|index| {
            let (text_start, ends_start, _) = self.start(index);
            let ends = &self.ends[ends_start..self.rows[index].ends_end];
            ends.iter().all(|end| text.is_char_boundary(text_start + end))
        })
    }

    /// Rebuilds the text: a record with a field that is not UTF-8 is decoded whole as Windows-1252.
    fn decode(&mut self, bytes: &[u8]) -> Guessed {
        let mut text = String::with_capacity(bytes.len() + bytes.len() / 4);
        let mut guessed = Guessed { first_line: 0, records: 0 };
        let (mut text_start, mut ends_start) = (0, 0);
        for row in &mut self.rows {
            let record = &bytes[text_start..row.text_end];
            let ends = &mut self.ends[ends_start..row.ends_end];
            let begun = text.len();
            if let Some(valid) = whole_fields(record, ends) {
                text.push_str(valid);
            } else {
                if guessed.records == 0 {
                    guessed.first_line = row.line;
                }
                guessed.records += 1;
                let mut field_start = 0;
                for end in ends {
                    let field = &record[field_start..*end];
                    field_start = *end;
                    text.push_str(&WINDOWS_1252.decode_without_bom_handling(field).0);
                    *end = text.len() - begun;
                }
            }
            (text_start, ends_start) = (row.text_end, row.ends_end);
            row.text_end = text.len();
        }
        self.text = text;
        guessed
    }
}

/// What the parser wrote for one record, and where the record started.
#[derive(Debug, Clone, Copy)]
pub(super) struct Parsed {
    pub(super) bytes: usize,
    pub(super) fields: usize,
    pub(super) line: u64,
    pub(super) byte: u64,
}

fn whole_fields<'a>(record: &'a [u8], ends: &[usize]) -> Option<&'a str> {
    let text = std::str::from_utf8(record).ok()?;
    ends.iter().all(|end| text.is_char_boundary(*end)).then_some(text)
}

fn shorten<T>(buffer: &mut Vec<T>, kept: usize) {
    if buffer.capacity() > kept {
        buffer.truncate(kept);
        buffer.shrink_to(kept);
    }
}
