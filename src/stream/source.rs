//! Bytes of whatever encoding in, bytes that may be taken for UTF-8 out.

use encoding_rs::{Decoder, UTF_16BE, UTF_16LE};
use std::io::{self, Read};

/// How many encoded bytes are read at once where they have to be decoded.
const WIDE_BLOCK: usize = 32 * 1024;

/// How the input is encoded, as far as the whole of it goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Encoding {
    /// UTF-8, or an extension of ASCII: a row that is not UTF-8 is read as Windows-1252.
    Utf8,
    /// UTF-16, low byte first.
    Utf16Le,
    /// UTF-16, high byte first.
    Utf16Be,
}

/// What the first bytes tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Found {
    encoding: Encoding,
    /// Length of the byte order mark in bytes.
    mark: usize,
    guessed: bool,
}

/// The input behind its byte order mark.
pub(super) struct Source<R> {
    inner: R,
    /// The first bytes, until they have been passed on.
    head: Vec<u8>,
    found: Option<Found>,
    wide: Option<Wide>,
}

struct Wide {
    decoder: Decoder,
    bytes: Vec<u8>,
    start: usize,
    end: usize,
    ended: bool,
    damaged: bool,
}

impl<R: Read> Source<R> {
    pub(super) fn new(inner: R) -> Self {
        Self { inner, head: Vec::new(), found: None, wide: None }
    }

    pub(super) fn encoding(&self) -> Option<Encoding> {
        self.found.map(|found| found.encoding)
    }

    /// Length of the byte order mark in bytes.
    pub(super) fn mark(&self) -> u64 {
        self.found.map_or(0, |found| found.mark as u64)
    }

    pub(super) fn guessed(&self) -> bool {
        self.found.is_some_and(|found| found.guessed)
    }

    pub(super) fn damaged(&self) -> bool {
        self.wide.as_ref().is_some_and(|wide| wide.damaged)
    }

    /// How many bytes of the input `text` was.
    pub(super) fn encoded_len(&self, text: &[u8]) -> u64 {
        if self.wide.is_none() {
            return text.len() as u64;
        }
        // A character is one unit of two bytes, or two units where UTF-8 takes four bytes.
        let units = |byte: &u8| u64::from(byte & 0xC0 != 0x80) + u64::from(*byte >= 0xF0);
        2 * text.iter().map(units).sum::<u64>()
    }

    /// Reads what one read of the input gives, 0 only at its end. `into` must be a few bytes long at least.
    pub(super) fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        if self.found.is_none() {
            self.look()?;
        }
        if let Some(wide) = &mut self.wide {
            return wide.read(&mut self.inner, into);
        }
        if self.head.is_empty() {
            return read_some(&mut self.inner, into);
        }
        let passed = self.head.len().min(into.len());
        into[..passed].copy_from_slice(&self.head[..passed]);
        self.head.drain(..passed);
        Ok(passed)
    }

    /// Reads no more than what the decision needs, for the one who writes may be waiting for an answer.
    fn look(&mut self) -> io::Result<()> {
        let found = loop {
            let mut more = [0; 4];
            let got = read_some(&mut self.inner, &mut more[..4 - self.head.len().min(3)])?;
            self.head.extend_from_slice(&more[..got]);
            if let Some(found) = find(&self.head, got == 0) {
                break found;
            }
        };
        self.head.drain(..found.mark);
        let utf16 = match found.encoding {
            Encoding::Utf8 => None,
            Encoding::Utf16Le => Some(UTF_16LE),
            Encoding::Utf16Be => Some(UTF_16BE),
        };
        self.wide = utf16.map(|encoding| {
            let end = self.head.len();
            let mut bytes = std::mem::take(&mut self.head);
            bytes.resize(WIDE_BLOCK, 0);
            let decoder = encoding.new_decoder_without_bom_handling();
            Wide { decoder, bytes, start: 0, end, ended: false, damaged: false }
        });
        self.found = Some(found);
        Ok(())
    }
}

impl Wide {
    fn read(&mut self, inner: &mut impl Read, into: &mut [u8]) -> io::Result<usize> {
        while !self.ended {
            if self.start == self.end {
                self.start = 0;
                self.end = 0;
                self.end = read_some(inner, &mut self.bytes)?;
            }
            let last = self.end == 0;
            let bytes = &self.bytes[self.start..self.end];
            let (result, read, written, damaged) = self.decoder.decode_to_utf8(bytes, into, last);
            self.damaged |= damaged;
            self.start += read;
            self.ended = last && result == encoding_rs::CoderResult::InputEmpty;
            if written > 0 {
                return Ok(written);
            }
        }
        Ok(0)
    }
}

/// What the first bytes tell, or `None` if more of them are needed: a mark, or without one ASCII characters in UTF-16,
/// whose zero bytes alternate.
fn find(head: &[u8], whole: bool) -> Option<Found> {
    let found = |encoding, mark, guessed| Some(Found { encoding, mark, guessed });
    match *head {
        [0xEF, 0xBB, 0xBF, ..] => found(Encoding::Utf8, 3, false),
        [0xFF, 0xFE, ..] => found(Encoding::Utf16Le, 2, false),
        [0xFE, 0xFF, ..] => found(Encoding::Utf16Be, 2, false),
        [1..=0xFF, 0, 1..=0xFF, 0, ..] => found(Encoding::Utf16Le, 0, true),
        [0, 1..=0xFF, 0, 1..=0xFF, ..] => found(Encoding::Utf16Be, 0, true),
        []
        | [_]
        | [0xEF, 0xBB]
        | [1..=0xFF, 0]
        | [1..=0xFF, 0, 1..=0xFF]
        | [0, 1..=0xFF]
        | [0, 1..=0xFF, 0]
            if !whole =>
        {
            None
        }
        _ => found(Encoding::Utf8, 0, false),
    }
}

fn read_some(inner: &mut impl Read, into: &mut [u8]) -> io::Result<usize> {
    loop {
        match inner.read(into) {
            Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
            result => return result,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn all(bytes: &[u8]) -> (Encoding, u64, bool, Vec<u8>) {
        let mut source = Source::new(bytes);
        let (mut text, mut block) = (Vec::new(), [0; 64]);
        loop {
            let got = source.read(&mut block).unwrap();
            if got == 0 {
                return (source.encoding().unwrap(), source.mark(), source.guessed(), text);
            }
            text.extend_from_slice(&block[..got]);
        }
    }

    #[test]
    fn marks_are_known_and_left_out() {
        assert_eq!(all(b"\xEF\xBB\xBFab"), (Encoding::Utf8, 3, false, b"ab".to_vec()));
        assert_eq!(all(b"\xFF\xFEa\0\xE9\0"), (Encoding::Utf16Le, 2, false, "a\u{e9}".into()));
        assert_eq!(all(b"\xFE\xFF\0a\0\xE9"), (Encoding::Utf16Be, 2, false, "a\u{e9}".into()));
    }

    #[test]
    fn alternating_zero_bytes_are_utf16() {
        assert_eq!(all(b"a\0b\0"), (Encoding::Utf16Le, 0, true, b"ab".to_vec()));
        assert_eq!(all(b"\0a\0b"), (Encoding::Utf16Be, 0, true, b"ab".to_vec()));
    }

    #[test]
    fn short_and_odd_beginnings_are_passed_on() {
        for bytes in [
            &b""[..],
            b"a",
            b"\xEF",
            b"\xEF\xBB",
            b"\xEF\xBBx",
            b"a\0",
            b"a\0b",
            b"\0\0\0\0",
            b"a\0\0b",
            b"\xFF",
        ] {
            assert_eq!(all(bytes), (Encoding::Utf8, 0, false, bytes.to_vec()), "{bytes:?}");
        }
    }

    #[test]
    fn half_a_character_is_replaced_and_named() {
        let mut source = Source::new(&b"\xFF\xFEa\0b"[..]);
        let mut block = [0; 64];
        let mut text = Vec::new();
        while let got @ 1.. = source.read(&mut block).unwrap() {
            text.extend_from_slice(&block[..got]);
        }
        assert_eq!(text, "a\u{FFFD}".as_bytes());
        assert!(source.damaged());
    }

    #[test]
    fn encoded_length_counts_surrogate_pairs() {
        let mut source = Source::new(&b"\xFF\xFEa\0"[..]);
        source.read(&mut [0; 64]).unwrap();
        assert_eq!(source.encoded_len("a\u{e9}\u{20ac}\u{1F4A1}".as_bytes()), 2 + 2 + 2 + 4);
    }
}
