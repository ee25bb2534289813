//! How long the pieces of an XML part are: its texts and tags, which the parser holds whole.

use memchr::{memchr, memchr3};

/// How much of a part's first tag is kept, in bytes.
const FIRST_TAG: usize = 8 * 1024;

/// Where the scanner stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum At {
    Text,
    /// After `<`, with so many bytes of `!--` seen.
    Opening(u8),
    Tag,
    /// In an attribute's value, which this quote ends.
    Value(u8),
    /// In a comment, an instruction or the like, which this ends.
    Until(&'static [u8]),
}

/// Follows the bytes of a part.
#[derive(Debug)]
pub(super) struct Pieces {
    at: At,
    /// Bytes of the piece so far.
    length: usize,
    most: usize,
    /// The last two bytes before the next ones, where an end of three is sought.
    recent: [u8; 2],
    first_tag: Vec<u8>,
    first_tag_ended: bool,
}

/// A piece is longer than allowed.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct TooLong;

impl Pieces {
    pub(super) fn new(most: usize) -> Self {
        Self { at: At::Text, length: 0, most, recent: [0; 2], first_tag: Vec::new(), first_tag_ended: false }
    }

    /// The first start tag without its angle brackets, if it has ended.
    pub(super) fn first_tag(&self) -> Option<&[u8]> {
        self.first_tag_ended.then_some(&self.first_tag)
    }

    pub(super) fn feed(&mut self, mut bytes: &[u8]) -> Result<(), TooLong> {
        while let Some(&byte) = bytes.first() {
            let taken = match self.at {
                At::Text => {
                    let found = memchr(b'<', bytes);
                    self.through(found, At::Opening(0), bytes)
                }
                At::Opening(seen) => self.open(seen, byte),
                At::Tag => {
                    let found = memchr3(b'>', b'"', b'\'', bytes);
                    let next = found.map_or(At::Tag, |at| {
                        if bytes[at] == b'>' { At::Text } else { At::Value(bytes[at]) }
                    });
                    self.keep(&bytes[..found.map_or(bytes.len(), |at| at + 1)]);
                    self.first_tag_ended |= next == At::Text;
                    self.through(found, next, bytes)
                }
                At::Value(quote) => {
                    let found = memchr(quote, bytes);
                    self.keep(&bytes[..found.map_or(bytes.len(), |at| at + 1)]);
                    self.through(found, At::Tag, bytes)
                }
                At::Until(end) => self.seek(end, bytes),
            };
            // A tag that is entered or left begins a new piece; a value is part of its tag.
            bytes = &bytes[taken..];
            if self.length > self.most {
                return Err(TooLong);
            }
        }
        Ok(())
    }

    /// Takes the bytes to the one that was found and goes on at `next`, or all of them.
    fn through(&mut self, found: Option<usize>, next: At, bytes: &[u8]) -> usize {
        let taken = found.map_or(bytes.len(), |at| at + 1);
        self.length += taken;
        if found.is_some() {
            if self.length <= self.most && matches!(next, At::Text | At::Opening(_)) {
                self.length = 0;
            }
            self.at = next;
        }
        taken
    }

    /// What follows a `<`.
    fn open(&mut self, seen: u8, byte: u8) -> usize {
        self.recent = [0; 2];
        (self.at, self.length) = match (seen, byte) {
            (0, b'?') => (At::Until(b"?>"), 2),
            (0, b'!') => (At::Opening(1), 2),
            (1, b'-') => (At::Opening(2), 3),
            (1, b'[') => (At::Until(b"]]>"), 3),
            (2, b'-') => (At::Until(b"-->"), 4),
            (0, _) => {
                self.at = At::Tag;
                return 0;
            }
            _ => {
                self.at = At::Until(b">");
                return 0;
            }
        };
        1
    }

    fn seek(&mut self, end: &'static [u8], bytes: &[u8]) -> usize {
        let found = memchr(b'>', bytes);
        let taken = found.map_or(bytes.len(), |at| at + 1);
        self.length += taken;
        let before = &bytes[..found.unwrap_or(bytes.len())];
        for &byte in &before[before.len().saturating_sub(2)..] {
            self.recent = [self.recent[1], byte];
        }
        if found.is_some() {
            if self.recent.ends_with(&end[..end.len() - 1]) {
                if self.length <= self.most {
                    self.length = 0;
                }
                self.at = At::Text;
            } else {
                self.recent = [self.recent[1], b'>'];
            }
        }
        taken
    }

    fn keep(&mut self, bytes: &[u8]) {
        if !self.first_tag_ended {
            let room = FIRST_TAG.saturating_sub(self.first_tag.len());
            self.first_tag.extend_from_slice(&bytes[..bytes.len().min(room)]);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Fed whole, and byte by byte.
    fn fed(text: &str, most: usize) -> Result<(), TooLong> {
        let mut whole = Pieces::new(most);
        let result = whole.feed(text.as_bytes());
        let mut single = Pieces::new(most);
        let one_by_one = text.as_bytes().chunks(1).try_for_each(|byte| single.feed(byte));
        assert_eq!(result, one_by_one, "{text}");
        result
    }

    #[test]
    fn short_pieces_pass_however_many_they_are() {
        let row = "<row r=\"1\"><c r=\"A1\" t='s'><v>12</v></c></row>";
        assert_eq!(fed(&row.repeat(50), 16), Ok(()));
        assert_eq!(fed("<?xml version='1.0'?><!-- it's > --><![CDATA[ ]> ]]><a>b</a>", 24), Ok(()));
    }

    #[test]
    fn a_long_piece_is_found_wherever_it_hides() {
        let long = "x".repeat(40);
        let signs = "<a>'\"".repeat(8);
        for text in [
            format!("<t>{long}</t>"),
            format!("<t {long}>"),
            format!("<t a=\"{}\">", "<a>'".repeat(10)),
            format!("<!--{signs}-->"),
            format!("<![CDATA[{signs}]]>"),
            format!("<?x {signs}?>"),
            format!("<!DOCTYPE {long}>"),
            format!("<t a='{}'>", "\">".repeat(20)),
        ] {
            assert_eq!(fed(&text, 24), Err(TooLong), "{text}");
        }
    }

    #[test]
    fn the_first_tag_is_kept() {
        let mut pieces = Pieces::new(1000);
        pieces.feed(b"<?xml version=\"1.0\"?>\n<x:sst a='>' uniqueCount=\"3\"><si/>").unwrap();
        assert_eq!(pieces.first_tag(), Some(&b"x:sst a='>' uniqueCount=\"3\">"[..]));
    }
}
