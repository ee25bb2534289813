//! From bytes to batches of records, losing no line.

use super::batch::Batch;
use super::delimiter::{LOOKED_AT, detect};
use super::parser::Parser;
use super::plain::Splitter;
use super::quoting::{Follower, Reached};
use super::text::{Text, lines_ended};
use super::{Encoding, Notice, ReadOptions, RecordFault};
use memchr::memchr2;
use std::io::{self, Read};

/// The most fields that a record may have: as many columns as the largest spreadsheets hold (common practice, no source).
const MOST_FIELDS: usize = 16_384;

/// Reads records of comma-, semicolon- or tab-separated text from any input, in memory bounded by the record limit.
///
/// **Encoding.** UTF-8 and UTF-16 by their byte order mark; without one UTF-16 if zero bytes alternate with others in the
/// first four bytes (a [`Notice`] says so), else UTF-8. A record with a field that is not UTF-8 is read whole as
/// Windows-1252, wherever in the input it stands, and counted in a notice: no row is lost, and the answer depends on nothing
/// but the row.
///
/// **Lines.** LF, CR and CRLF end a line. Empty lines are skipped; they are counted in line numbers.
///
/// **Quotes.** As in RFC 4180; besides, a quote in a field that does not start with one is text (`24" panel`), and so is
/// what follows the closing quote on the same line. A quoted field may run over lines, but it is not believed if
///
/// - it does not close before the end of the input or within the record limit,
/// - it closes in the middle of text: the quote there was an inch mark, or opened a field of its own, or
/// - the record then has another number of fields than the first record had.
///
/// Then the line on which the record began is given as one record with [`RecordFault::UnclosedQuote`], and reading goes on at the
/// line after it, where up to the line that showed the fault a quote may not run over lines again (so that hostile input takes
/// time in proportion to its length). A line over the limit is given as [`RecordFault::TooLong`]; the rest of it is skipped.
///
/// Every line that is not empty is thus part of exactly one record.
pub struct RecordReader<R> {
    text: Text<R>,
    limit: usize,
    batch_rows: usize,
    delimiter: Option<u8>,
    splitter: Splitter,
    parser: Parser,
    /// How far the quotes of a doubtful record have been followed.
    follower: Follower,
    /// Records that start before this offset may not span lines.
    one_line_until: u64,
    /// Up to this offset the text has been looked at in vain, and the parser is fed line by line.
    cautious_until: u64,
    /// How many fields the first record had.
    width: Option<usize>,
    windows_1252: Option<(u64, u64)>,
}

/// What a step of the reader came to.
enum Step {
    Record,
    /// No further without more input.
    Hungry,
    End,
}

impl<R: Read> RecordReader<R> {
    /// A reader at the start of `input`, which needs no buffer of its own.
    pub fn new(input: R, options: ReadOptions) -> Self {
        Self {
            text: Text::new(input),
            limit: options.record_limit.max(1),
            batch_rows: options.batch_rows.max(1),
            delimiter: options.delimiter,
            splitter: Splitter::new(options.delimiter.unwrap_or(b',')),
            parser: Parser::new(options.delimiter.unwrap_or(b',')),
            follower: Follower::default(),
            one_line_until: 0,
            cautious_until: 0,
            width: None,
            windows_1252: None,
        }
    }

    /// The delimiter, given or found; `None` before the first record.
    #[must_use]
    pub fn delimiter(&self) -> Option<u8> {
        self.delimiter
    }

    /// The encoding of the input; `None` before the first record.
    #[must_use]
    pub fn encoding(&self) -> Option<Encoding> {
        self.text.source.encoding()
    }

    /// What had to be guessed so far.
    #[must_use]
    pub fn notices(&self) -> Vec<Notice> {
        let mut notices = Vec::new();
        if self.text.source.guessed() {
            let big_endian = self.encoding() == Some(Encoding::Utf16Be);
            notices.push(Notice::Utf16Guessed { big_endian });
        }
        if self.text.source.damaged() {
            notices.push(Notice::Utf16Damaged);
        }
        if let Some((first_line, records)) = self.windows_1252 {
            notices.push(Notice::Windows1252Guessed { first_line, records });
        }
        notices
    }

    /// Says how many fields a record should have, where the input has no header; otherwise the first record tells.
    ///
    /// It only matters for records that span lines: a ragged record on one line is passed on as it is.
    pub fn expect_fields(&mut self, fields: usize) {
        self.width = Some(fields);
    }

    /// Reads one record, such as the header, into `batch`; `false` at the end of the input.
    ///
    /// # Errors
    ///
    /// What the input gives. Records before the failure have been handed on by then.
    pub fn read_one(&mut self, batch: &mut Batch) -> io::Result<bool> {
        self.fill(batch, 1)
    }

    /// Reads some records into `batch`, as many as one read of the input completes but at least one, at most
    /// [`ReadOptions::batch_rows`]; `false` at the end of the input.
    ///
    /// It never waits for more input while it has a record to hand on.
    ///
    /// # Errors
    ///
    /// What the input gives. Records before the failure have been handed on by then.
    pub fn read_batch(&mut self, batch: &mut Batch) -> io::Result<bool> {
        self.fill(batch, self.batch_rows)
    }

    fn fill(&mut self, batch: &mut Batch, rows: usize) -> io::Result<bool> {
        batch.open();
        self.parser.restart();
        while batch.len() < rows && !batch.is_full() {
            match self.step(batch) {
                Step::Record => {}
                Step::Hungry if batch.is_empty() => self.text.read_more()?,
                Step::Hungry | Step::End => break,
            }
        }
        if let Some(guessed) = batch.seal(self.text.byte) {
            let (first_line, records) = self.windows_1252.unwrap_or((guessed.first_line, 0));
            self.windows_1252 = Some((first_line, records + guessed.records));
        }
        Ok(!batch.is_empty())
    }

    fn step(&mut self, batch: &mut Batch) -> Step {
        if self.parser.seen == 0 {
            if !self.text.find_record() {
                return if self.text.ended { Step::End } else { Step::Hungry };
            }
            if self.delimiter.is_none() && !self.find_delimiter() {
                return Step::Hungry;
            }
        }
        if self.text.offset < self.cautious_until
            && let Some(len) = memchr2(b'\n', b'\r', self.text.rest())
        {
            return self.step_by_line(len, batch);
        }
        if self.parser.seen == 0 && self.take_plain(batch) {
            return Step::Record;
        }
        if self.parser.feed(self.text.rest()) {
            return self.complete(batch);
        }
        if self.text.ended || self.text.rest().len() > self.limit {
            self.follow_on(batch)
        } else {
            Step::Hungry
        }
    }

    /// Takes the next record if it can be split without the parser.
    fn take_plain(&mut self, batch: &mut Batch) -> bool {
        let window = first(self.text.rest(), self.limit + 1);
        let Some(len) = self.splitter.split(window, MOST_FIELDS, &mut batch.spans) else { return false };
        let fields = batch.push_plain(&window[..=len], self.text.place());
        self.width.get_or_insert(fields);
        self.text.advance(len);
        true
    }

    /// Feeds the first line, of `len` bytes, with its line end; goes on with care if that does not end the record.
    fn step_by_line(&mut self, len: usize, batch: &mut Batch) -> Step {
        if self.parser.feed(&self.text.rest()[..=len]) {
            return self.complete(batch);
        }
        if self.text.offset < self.one_line_until {
            return self.faulty_line(len, RecordFault::UnclosedQuote, batch);
        }
        self.follow_on(batch)
    }

    /// Follows the quotes of a record that spans lines or has not ended, no further than needed to judge it.
    fn follow_on(&mut self, batch: &mut Batch) -> Step {
        let window = first(self.text.rest(), self.limit + 1);
        match self.follower.follow(window, self.parser.delimiter) {
            Reached::Stray => self.unclosed(self.follower.last_line, batch),
            Reached::End => {
                self.parser.feed(&self.text.rest()[..self.follower.seen]);
                self.complete(batch)
            }
            _ if window.len() > self.limit => self.over_limit(batch),
            _ if !self.text.ended => Step::Hungry,
            Reached::Open => self.unclosed(self.follower.last_line, batch),
            Reached::Bare => {
                self.parser.feed(self.text.rest());
                self.parser.finish();
                self.complete(batch)
            }
        }
    }

    fn find_delimiter(&mut self) -> bool {
        let head = first(self.text.rest(), LOOKED_AT);
        self.delimiter = detect(head, self.text.ended || head.len() == LOOKED_AT);
        if let Some(delimiter) = self.delimiter {
            self.splitter = Splitter::new(delimiter);
            self.parser = Parser::new(delimiter);
        }
        self.delimiter.is_some()
    }

    /// Judges a record that the parser has completed.
    fn complete(&mut self, batch: &mut Batch) -> Step {
        let len = self.parser.seen - usize::from(!self.parser.finished);
        if len > self.limit {
            return self.over_limit(batch);
        }
        // Only a quoted field can hold a line end, and of quotes that quote the parser writes no text.
        let quoted = self.parser.bytes().len() + self.parser.fields != len + 1;
        if quoted {
            let record = &self.text.rest()[..len];
            if memchr2(b'\n', b'\r', record).is_some() {
                let reached = self.follower.follow(record, self.parser.delimiter);
                let ragged = self.width.is_some_and(|width| width != self.parser.fields);
                if reached == Reached::Stray || ragged {
                    return self.unclosed(self.follower.last_line, batch);
                }
            }
        }
        if self.parser.fields > MOST_FIELDS {
            return self.take(len, 0, Some(RecordFault::TooManyFields { limit: MOST_FIELDS }), batch);
        }
        self.width.get_or_insert(self.parser.fields);
        self.take(len, self.parser.fields, None, batch)
    }

    fn over_limit(&mut self, batch: &mut Batch) -> Step {
        let window = &self.text.rest()[..=self.limit];
        if memchr2(b'\n', b'\r', window).is_some() {
            self.follower.follow(window, self.parser.delimiter);
            return self.unclosed(self.follower.last_line, batch);
        }
        self.text.skip_line();
        self.faulty_line(self.limit, RecordFault::TooLong { limit: self.limit }, batch)
    }

    /// Gives the first line of a record as faulty; lines up to `last_line` are then read one by one.
    fn unclosed(&mut self, last_line: usize, batch: &mut Batch) -> Step {
        let text = self.text.rest();
        let len = memchr2(b'\n', b'\r', text).unwrap_or(text.len());
        self.one_line_until = self.text.offset + last_line as u64;
        let looked_at = self.parser.seen.max(self.follower.seen);
        self.cautious_until = self.cautious_until.max(self.text.offset + looked_at as u64);
        self.faulty_line(len, RecordFault::UnclosedQuote, batch)
    }

    /// Gives `len` bytes as a faulty record, with the fields that end in them.
    fn faulty_line(&mut self, len: usize, fault: RecordFault, batch: &mut Batch) -> Step {
        self.parser.restart();
        self.parser.feed(&self.text.rest()[..len]);
        self.take(len, self.parser.fields.min(MOST_FIELDS), Some(fault), batch)
    }

    /// Takes the first `fields` fields that the parser has ended as the record of the next `len` bytes.
    fn take(&mut self, len: usize, fields: usize, fault: Option<RecordFault>, batch: &mut Batch) -> Step {
        let raw = &self.text.rest()[..len];
        batch.push(raw, self.parser.bytes(), self.parser.spans().take(fields), self.text.place(), fault);
        self.text.line += lines_ended(raw);
        self.parser.restart();
        self.follower = Follower::default();
        self.text.advance(len);
        Step::Record
    }
}

fn first(text: &[u8], most: usize) -> &[u8] {
    &text[..text.len().min(most)]
}
