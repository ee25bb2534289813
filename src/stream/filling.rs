//! Batches filled with fields that are text already, as a [`Supply`](super::Supply) of its own does.

use super::batch::Place;
use super::record::Span;
use super::{Batch, RecordFault};

impl Batch {
    /// Empties it, to be filled with [`add`](Self::add) up to [`end`](Self::end).
    pub fn begin(&mut self) {
        self.open();
    }

    /// Adds a record; its raw row is its fields as CSV.
    pub fn add<'a>(
        &mut self,
        line: u64,
        fields: impl IntoIterator<Item = &'a str>,
        fault: Option<RecordFault>,
    ) {
        let (mut text, mut spans, mut raw) = (String::new(), Vec::new(), Vec::new());
        for field in fields {
            if !spans.is_empty() {
                raw.push(b',');
            }
            quote(&mut raw, field);
            let start = text.len();
            text.push_str(field);
            spans.push(Span { start, end: text.len() });
        }
        self.push(&raw, text.as_bytes(), spans.into_iter(), Place { line, byte: 0 }, fault);
    }

    /// Ends the filling; `end_byte` is how far the input has been read.
    pub fn end(&mut self, end_byte: u64) {
        // The fields are text, of which nothing has to be guessed.
        self.seal(end_byte);
    }
}

/// Appends a field as CSV (RFC 4180).
fn quote(raw: &mut Vec<u8>, field: &str) {
    if !field.contains([',', '"', '\n', '\r']) {
        raw.extend_from_slice(field.as_bytes());
        return;
    }
    raw.push(b'"');
    raw.extend_from_slice(field.replace('"', "\"\"").as_bytes());
    raw.push(b'"');
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fields_come_back_as_they_were_put_in() {
        let rows: [&[&str]; 3] = [&["a", "", "24\" panel, \u{fc}"], &[], &["two\nlines"]];
        let mut batch = Batch::default();
        for _ in 0..2 {
            batch.begin();
            for (line, row) in (7..).zip(rows) {
                batch.add(line, row.iter().copied(), None);
            }
            batch.end(99);
            assert_eq!(batch.len(), 3);
            for (record, row) in batch.iter().zip(rows) {
                assert_eq!(record.iter().collect::<Vec<_>>(), row);
            }
        }
        let first = batch.get(0).unwrap();
        assert_eq!(first.raw(), "a,,\"24\"\" panel, \u{fc}\"".as_bytes());
        assert_eq!((first.line(), batch.end_byte()), (7, 99));
    }

    #[test]
    fn a_batch_grows_with_what_is_put_in() {
        let long = "x".repeat(3_000_000);
        let mut batch = Batch::default();
        batch.begin();
        batch.add(1, [long.as_str(), "y"], Some(RecordFault::TooLong { limit: 1 }));
        batch.add(2, std::iter::repeat_n("z", 10_000), None);
        batch.end(0);
        assert_eq!(batch.get(0).unwrap().get(0).map(str::len), Some(3_000_000));
        assert_eq!(batch.get(1).unwrap().get(9_999), Some("z"));
    }
}
