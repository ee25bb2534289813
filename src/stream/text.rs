//! The text that has been read and not yet been taken, and where in the input it stands.

use super::batch::{BLOCK, Place};
use super::source::Source;
use memchr::memchr2;
use std::io::{self, Read};

/// A window on the decoded input.
pub(super) struct Text<R> {
    pub(super) source: Source<R>,
    /// What counts of it is `start..end`.
    bytes: Vec<u8>,
    start: usize,
    end: usize,
    /// The source has come to its end.
    pub(super) ended: bool,
    /// Line of the window's start, from 1.
    pub(super) line: u64,
    /// Offset of the window's start in the encoded input, in bytes.
    pub(super) byte: u64,
    /// Offset of the window's start in the decoded text, in bytes.
    pub(super) offset: u64,
    /// The byte before the window was a CR, so that a LF there ends no line.
    after_cr: bool,
    /// The rest of the line is to be skipped.
    skipping: bool,
}

impl<R: Read> Text<R> {
    pub(super) fn new(input: R) -> Self {
        Self {
            source: Source::new(input),
            bytes: Vec::new(),
            start: 0,
            end: 0,
            ended: false,
            line: 1,
            byte: 0,
            offset: 0,
            after_cr: false,
            skipping: false,
        }
    }

    /// The window.
    #[inline]
    pub(super) fn rest(&self) -> &[u8] {
        &self.bytes[self.start..self.end]
    }

    /// Where the window's start stands in the input.
    pub(super) fn place(&self) -> Place {
        Place { line: self.line, byte: self.byte }
    }

    /// Widens the window by one read of the input; an empty one is its end.
    pub(super) fn read_more(&mut self) -> io::Result<()> {
        if self.start > 0 {
            self.bytes.copy_within(self.start..self.end, 0);
            self.end -= self.start;
            self.start = 0;
        }
        let needed = self.end + BLOCK;
        if self.bytes.len() < needed {
            self.bytes.resize(needed, 0);
        }
        let first = self.source.encoding().is_none();
        let got = self.source.read(&mut self.bytes[self.end..])?;
        if first {
            self.byte = self.source.mark();
        }
        self.ended = got == 0;
        self.end += got;
        Ok(())
    }

    /// Moves the window's start on; line ends in between are for the caller to count.
    #[inline]
    pub(super) fn advance(&mut self, len: usize) {
        self.byte += self.source.encoded_len(&self.bytes[self.start..self.start + len]);
        self.offset += len as u64;
        self.start += len;
    }

    /// Has the next [`find_record`](Self::find_record) go to the next line first.
    pub(super) fn skip_line(&mut self) {
        self.skipping = true;
    }

    /// Goes to the next byte that is part of a record; says whether there is one in the window.
    pub(super) fn find_record(&mut self) -> bool {
        if self.skipping {
            let found = memchr2(b'\n', b'\r', self.rest());
            self.skipping = found.is_none();
            self.advance(found.unwrap_or(self.rest().len()));
        }
        while self.start < self.end {
            let byte = self.bytes[self.start];
            match byte {
                b'\n' if self.after_cr => {}
                b'\n' | b'\r' => self.line += 1,
                _ => {
                    self.after_cr = false;
                    return true;
                }
            }
            self.after_cr = byte == b'\r';
            self.advance(1);
        }
        false
    }
}

/// How many line ends there are in a record, which cannot start with the LF of a CRLF.
pub(super) fn lines_ended(raw: &[u8]) -> u64 {
    let ends = memchr::memchr2_iter(b'\n', b'\r', raw);
    ends.filter(|at| raw[*at] == b'\r' || *at == 0 || raw[at - 1] != b'\r').map(|_| 1).sum()
}
