//! The short way for a record that needs no state machine: nearly every one of a catalogue.

use super::record::Span;
use memchr::memchr3;

/// After so many bytes of a field a search by blocks is faster than one by bytes.
const SHORT: usize = 16;

/// Splits a record on one line whose quotes, if any, hold whole fields and no other quote.
///
/// Such a record has its fields in it as they stand, so that nothing has to be copied. Any other is left to the
/// [`Parser`](super::parser::Parser), to which this is equal by a property test.
#[derive(Debug)]
pub(super) struct Splitter {
    delimiter: u8,
    /// By byte: whether it ends a field that is not in quotes.
    ends_field: [bool; 256],
    /// Whether the delimiter leaves a character of UTF-8 whole and is neither a quote nor a line end.
    usable: bool,
}

impl Splitter {
    pub(super) fn new(delimiter: u8) -> Self {
        let mut ends_field = [false; 256];
        for byte in [delimiter, b'\n', b'\r'] {
            ends_field[usize::from(byte)] = true;
        }
        Self { delimiter, ends_field, usable: delimiter.is_ascii() && !b"\"\r\n".contains(&delimiter) }
    }

    /// Appends the fields of the record that starts at the start of `text` to `spans`, at most `most` of them, and gives its
    /// length without the line end. `None`, and nothing appended, if it is not so simple or its line end is not in `text`.
    ///
    /// It never looks beyond the first line end.
    pub(super) fn split(&self, text: &[u8], most: usize, spans: &mut Vec<Span>) -> Option<usize> {
        let before = spans.len();
        let split = if self.usable { self.fields(text, spans) } else { None };
        let split = split.filter(|_| spans.len() - before <= most);
        if split.is_none() {
            spans.truncate(before);
        }
        split
    }

    fn fields(&self, text: &[u8], spans: &mut Vec<Span>) -> Option<usize> {
        let mut start = 0;
        loop {
            let end = if text.get(start) == Some(&b'"') {
                let close = start + 1 + memchr3(b'"', b'\n', b'\r', &text[start + 1..])?;
                spans.push(Span { start: start + 1, end: close });
                // Not a quote if the line ends first; the byte after a closing quote ends the field.
                (text[close] == b'"').then_some(close + 1)?
            } else {
                let end = self.bare_end(text, start)?;
                spans.push(Span { start, end });
                end
            };
            match *text.get(end)? {
                byte if byte == self.delimiter => start = end + 1,
                b'\n' | b'\r' => return Some(end),
                _ => return None,
            }
        }
    }

    /// Where the field without quotes that starts at `start` ends.
    #[inline]
    fn bare_end(&self, text: &[u8], start: usize) -> Option<usize> {
        let field = text.get(start..)?;
        for (at, byte) in field.iter().enumerate().take(SHORT) {
            if self.ends_field[usize::from(*byte)] {
                return Some(start + at);
            }
        }
        let rest = field.get(SHORT..)?;
        Some(start + SHORT + memchr3(self.delimiter, b'\n', b'\r', rest)?)
    }
}

#[cfg(test)]
mod tests {
    use super::super::parser::Parser;
    use super::*;
    use proptest::prelude::*;

    fn split(record: &[u8], delimiter: u8) -> Option<(usize, Vec<Vec<u8>>)> {
        let mut spans = Vec::new();
        let len = Splitter::new(delimiter).split(record, usize::MAX, &mut spans)?;
        Some((len, spans.iter().map(|span| record[span.start..span.end].to_vec()).collect()))
    }

    fn parsed(record: &[u8], delimiter: u8) -> Option<(usize, Vec<Vec<u8>>)> {
        let mut parser = Parser::new(delimiter);
        if !parser.feed(record) {
            return None;
        }
        let fields = parser.spans().map(|span| parser.bytes()[span.start..span.end].to_vec()).collect();
        Some((parser.seen - 1, fields))
    }

    #[test]
    fn inch_marks_and_quoted_fields_are_split_and_doubled_quotes_are_not() {
        let fields = |texts: &[&str]| texts.iter().map(|text| text.as_bytes().to_vec()).collect::<Vec<_>>();
        let long = "a title that is longer than what is looked at by bytes";
        for (record, expected) in [
            ("A,24\" panel,\"x, y\",\n", fields(&["A", "24\" panel", "x, y", ""])),
            ("\"\",b\r\n", fields(&["", "b"])),
            (&format!("{long},3\r"), fields(&[long, "3"])),
            (&format!("\"{long}\"\n"), fields(&[long])),
        ] {
            assert_eq!(
                split(record.as_bytes(), b','),
                Some((record.trim_end().len(), expected)),
                "{record:?}"
            );
        }
        for record in
            ["\"24\"\" panel\",3\n", "\"24\" panel,3\n", "\"a\nb\",3\n", "\"a\n", "a,b", "\"a\"", ""]
        {
            assert_eq!(split(record.as_bytes(), b','), None, "{record:?}");
        }
    }

    #[test]
    fn a_record_with_too_many_fields_is_left_to_others() {
        let mut spans = Vec::new();
        assert_eq!(Splitter::new(b',').split(b"a,b,c\n", 3, &mut spans), Some(5));
        assert_eq!(Splitter::new(b',').split(b"a,b,c\n", 2, &mut spans), None);
        assert_eq!(spans.len(), 3);
    }

    const PIECES: &[&[u8]] = &[
        b",",
        b",",
        b",",
        b",",
        b"ab",
        b"ab",
        b"ab",
        b"\"",
        b"\"",
        b",\"",
        b",\"",
        b"\",",
        b"\",",
        b"\"\"",
        b";",
        "é\u{FEFF}".as_bytes(),
        b"\xff\0",
        b"0123456789abcdefghi",
        b"\n",
        b"\r\n",
    ];

    proptest! {
        #[test]
        fn what_is_split_is_what_the_parser_gives(
            pieces in prop::collection::vec(prop::sample::select(PIECES), 0..24),
            delimiter in prop::sample::select(b",;\t\"\xe9".to_vec()),
        ) {
            let mut record = pieces.concat();
            // Where a record starts, line ends have been skipped.
            let skipped = record.iter().take_while(|byte| b"\r\n".contains(byte)).count();
            record.drain(..skipped);
            prop_assume!(!record.is_empty());
            record.push(b'\n');
            if let Some(found) = split(&record, delimiter) {
                prop_assert_eq!(Some(found), parsed(&record, delimiter));
            } else if delimiter == b',' && !record.contains(&b'"') {
                prop_assert!(false, "a record without quotes is split");
            }
        }
    }
}
