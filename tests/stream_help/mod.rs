//! Reads an input whole, for tests to look at.
#![allow(dead_code, reason = "each test file uses its own part of it")]

use plainwatt::stream::{Batch, Encoding, Notice, ReadOptions, RecordFault, RecordReader};
use std::io::{self, Read};

/// A record, owned.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Seen {
    pub line: u64,
    pub byte: u64,
    pub fields: Vec<String>,
    pub raw: Vec<u8>,
    pub fault: Option<String>,
}

impl Seen {
    /// The fields between bars, behind an exclamation mark if the record is faulty.
    pub fn row(&self) -> String {
        let mark = if self.fault.is_some() { "!" } else { "" };
        format!("{mark}{}", self.fields.join("|"))
    }

    pub fn faulty(mut self, found: &str) -> Self {
        self.fault = Some(found.into());
        self
    }
}

pub fn seen(line: u64, byte: u64, fields: &[&str], raw: &str) -> Seen {
    let fields = fields.iter().map(ToString::to_string).collect();
    Seen { line, byte, fields, raw: raw.into(), fault: None }
}

/// All that a reader gave.
#[derive(Debug, PartialEq, Eq)]
pub struct Everything {
    pub records: Vec<Seen>,
    pub notices: Vec<Notice>,
    pub encoding: Option<Encoding>,
    pub delimiter: Option<u8>,
}

/// Gives at most `chunk` bytes a read.
pub struct Chunked<R>(pub R, pub usize);

impl<R: Read> Read for Chunked<R> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let len = into.len().min(self.1);
        self.0.read(&mut into[..len])
    }
}

/// Reads in chunks of 1, of 7 and of any number of bytes, demands the same of each, and returns it.
pub fn read(input: &[u8]) -> Everything {
    let whole = read_with(input, ReadOptions::default(), usize::MAX);
    for chunk in [1, 7] {
        assert_eq!(read_with(input, ReadOptions::default(), chunk), whole, "in chunks of {chunk}");
    }
    whole
}

pub fn read_with(input: &[u8], options: ReadOptions, chunk: usize) -> Everything {
    read_from(Chunked(input, chunk), options)
}

pub fn read_from(input: impl Read, options: ReadOptions) -> Everything {
    let mut reader = RecordReader::new(input, options);
    let mut batch = Batch::default();
    let mut records = Vec::new();
    while reader.read_batch(&mut batch).expect("the input does not fail") {
        records.extend(batch.iter().map(|record| Seen {
            line: record.line(),
            byte: record.byte(),
            fields: record.iter().map(Into::into).collect(),
            raw: record.raw().into(),
            fault: record.fault().map(RecordFault::found),
        }));
    }
    let (notices, encoding, delimiter) = (reader.notices(), reader.encoding(), reader.delimiter());
    Everything { records, notices, encoding, delimiter }
}
