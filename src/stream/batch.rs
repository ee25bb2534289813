//! Some thousand records in flat buffers, recycled from batch to batch.

use super::record::Span;
use super::{Record, RecordFault};
use encoding_rs::WINDOWS_1252;

/// How much text a batch holds before it is handed on, in bytes.
///
/// Small, because a row of output may be twenty times as long as its row of input, and several batches are under way.
pub(super) const BLOCK: usize = 128 * 1024;

/// How much of its buffers a batch keeps for the next round, after a giant record.
const KEPT: usize = 4 * BLOCK;

/// Where a record stands in the input.
#[derive(Debug, Clone, Copy)]
pub(super) struct Place {
    /// The line, from 1.
    pub(super) line: u64,
    /// Offset in bytes, from 0.
    pub(super) byte: u64,
}

/// Where a record ends in the buffers of its batch; it starts where the one before it ends.
#[derive(Debug)]
struct Row {
    /// End of its raw row, behind which one byte stands for its line end.
    raw_end: usize,
    spans_end: usize,
    /// End of its text, which for a record whose fields stand in its raw row as they are is empty.
    text_end: usize,
    in_raw: bool,
    place: Place,
    fault: Option<RecordFault>,
}

/// Where a record starts in the buffers of its batch.
#[derive(Debug, Clone, Copy, Default)]
struct Start {
    raw: usize,
    spans: usize,
    text: usize,
}

/// Records read together: their raw rows one after another in one buffer, and in another the fields of those that cannot be
/// shown as parts of the raw row.
#[derive(Debug, Default)]
pub struct Batch {
    rows: Vec<Row>,
    /// Every field, within the raw row or the text of its record.
    pub(super) spans: Vec<Span>,
    /// The raw rows while the batch is filled, and after that if they are not UTF-8 throughout.
    raw: Vec<u8>,
    /// The raw rows of a sealed batch that are UTF-8.
    raw_text: String,
    /// The fields of records that have quotes to be taken away or had to be decoded.
    text: String,
    guessed: Option<Guessed>,
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
        let start = self.start(index);
        let raws = if self.raw.is_empty() { self.raw_text.as_bytes() } else { &self.raw };
        let text = if row.in_raw {
            self.raw_text.get(start.raw..row.raw_end)?
        } else {
            self.text.get(start.text..row.text_end)?
        };
        Some(Record {
            text,
            spans: &self.spans[start.spans..row.spans_end],
            raw: &raws[start.raw..row.raw_end],
            line: row.place.line,
            byte: row.place.byte,
            fault: row.fault,
        })
    }

    /// The records in the order of the input.
    pub fn iter(&self) -> impl Iterator<Item = Record<'_>> {
        (0..self.len()).filter_map(|index| self.get(index))
    }

    #[inline]
    fn start(&self, index: usize) -> Start {
        let before = index.checked_sub(1).and_then(|before| self.rows.get(before));
        before.map_or_else(Start::default, |row| Start {
            raw: row.raw_end + 1,
            spans: row.spans_end,
            text: row.text_end,
        })
    }

    /// Empties the batch and makes it ready to be filled.
    pub(super) fn open(&mut self) {
        if self.raw.capacity() == 0 {
            self.raw = std::mem::take(&mut self.raw_text).into_bytes();
        }
        self.raw_text.clear();
        self.raw.clear();
        self.text.clear();
        self.spans.clear();
        self.rows.clear();
        self.raw.shrink_to(KEPT);
        self.text.shrink_to(KEPT);
        self.spans.shrink_to(KEPT / size_of::<Span>());
        self.guessed = None;
    }

    /// Whether enough is in it to be handed on.
    pub(super) fn is_full(&self) -> bool {
        self.raw.len() >= BLOCK
    }

    /// Takes the spans behind those of the last record as the fields of `line`, a raw row with the byte that ended it, and
    /// says how many there are.
    #[inline]
    pub(super) fn push_plain(&mut self, line: &[u8], place: Place) -> usize {
        let fields = self.spans.len() - self.rows.last().map_or(0, |row| row.spans_end);
        self.raw.extend_from_slice(line);
        self.end_row(self.raw.len() - 1, true, place, None);
        fields
    }

    /// Takes a record whose fields are the `spans` of `bytes`; one with a field that is not UTF-8 is decoded whole as
    /// Windows-1252.
    pub(super) fn push(
        &mut self,
        raw: &[u8],
        bytes: &[u8],
        spans: impl Iterator<Item = Span>,
        place: Place,
        fault: Option<RecordFault>,
    ) {
        let first = self.spans.len();
        self.spans.extend(spans);
        let spans = &mut self.spans[first..];
        // Behind the last field there may be some of one that has not ended.
        let bytes = &bytes[..spans.last().map_or(0, |span| span.end)];
        if let Some(valid) = whole_fields(bytes, spans) {
            self.text.push_str(valid);
        } else {
            decode(bytes, spans, &mut self.text);
            self.guessed = Some(Guessed::one_more(self.guessed, place));
        }
        self.raw.extend_from_slice(raw);
        self.raw.push(b'\n');
        self.end_row(self.raw.len() - 1, false, place, fault);
    }

    fn end_row(&mut self, raw_end: usize, in_raw: bool, place: Place, fault: Option<RecordFault>) {
        let (spans_end, text_end) = (self.spans.len(), self.text.len());
        self.rows.push(Row { raw_end, spans_end, text_end, in_raw, place, fault });
    }

    /// Ends the filling: checks that the raw rows are UTF-8, and reads each plain record that is not as Windows-1252.
    pub(super) fn seal(&mut self, end_byte: u64) -> Option<Guessed> {
        self.end_byte = end_byte;
        match String::from_utf8(std::mem::take(&mut self.raw)) {
            Ok(raw) => self.raw_text = raw,
            Err(wrong) => {
                self.raw = wrong.into_bytes();
                self.take_out();
            }
        }
        self.guessed
    }

    /// Gives every record a text of its own, since the raw rows are none.
    fn take_out(&mut self) {
        let before = std::mem::take(&mut self.text);
        let mut start = Start::default();
        for row in &mut self.rows {
            let raw = &self.raw[start.raw..row.raw_end];
            if !row.in_raw {
                self.text.push_str(&before[start.text..row.text_end]);
            } else if let Ok(valid) = std::str::from_utf8(raw) {
                self.text.push_str(valid);
            } else {
                decode(raw, &mut self.spans[start.spans..row.spans_end], &mut self.text);
                self.guessed = Some(Guessed::one_more(self.guessed, row.place));
            }
            start = Start { raw: row.raw_end + 1, spans: row.spans_end, text: row.text_end };
            row.text_end = self.text.len();
            row.in_raw = false;
        }
    }
}

impl Guessed {
    fn one_more(before: Option<Self>, place: Place) -> Self {
        before.map_or(Self { first_line: place.line, records: 1 }, |before| Self {
            first_line: before.first_line.min(place.line),
            records: before.records + 1,
        })
    }
}

/// Appends the fields to `text`, read as Windows-1252, and puts the spans where they stand now.
fn decode(bytes: &[u8], spans: &mut [Span], text: &mut String) {
    let begun = text.len();
    for span in spans {
        let start = text.len() - begun;
        text.push_str(&WINDOWS_1252.decode_without_bom_handling(&bytes[span.start..span.end]).0);
        *span = Span { start, end: text.len() - begun };
    }
}

/// The bytes as text if every field is UTF-8 by itself: halves of a character may meet where two fields do.
fn whole_fields<'a>(bytes: &'a [u8], spans: &[Span]) -> Option<&'a str> {
    let text = std::str::from_utf8(bytes).ok()?;
    spans.iter().all(|span| text.is_char_boundary(span.end)).then_some(text)
}
