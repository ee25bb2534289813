//! What holds of reading and running whatever the bytes are, checked on random ones.
//!
//! `PROPTEST_CASES` in the environment makes longer runs.

mod stream_help;

use plainwatt::stream::{Merge, ReadOptions, RecordReader, Run, Sinks, run};
use proptest::prelude::*;
use std::io::{Cursor, Write as _};
use stream_help::{Chunked, Everything, read_with};

/// Bytes that hold many quotes, delimiters and line ends.
fn hostile() -> impl Strategy<Value = Vec<u8>> {
    let start = prop_oneof![
        6 => Just(&b""[..]),
        1 => Just(&b"\xEF\xBB\xBF"[..]),
        1 => Just(&b"\xFF\xFE"[..]),
        1 => Just(&b"\xFE\xFF"[..]),
        1 => Just(&b"a\0,\0"[..]),
    ];
    (start, hostile_bytes()).prop_map(|(start, bytes)| [start, &bytes].concat())
}

fn hostile_bytes() -> impl Strategy<Value = Vec<u8>> {
    let piece = prop_oneof![
        4 => Just(b"\"".to_vec()),
        2 => Just(b"\"\"".to_vec()),
        4 => Just(b",".to_vec()),
        1 => Just(b"\",\"".to_vec()),
        3 => Just(b"\n".to_vec()),
        1 => Just(b"\r".to_vec()),
        1 => Just(b"\r\n".to_vec()),
        1 => Just(b";\t".to_vec()),
        1 => Just(vec![0]),
        1 => Just("é×💡\u{FEFF}".into()),
        4 => Just(b"ab".to_vec()),
        1 => prop::collection::vec(any::<u8>(), 1..4),
    ];
    prop::collection::vec(piece, 0..80).prop_map(|pieces| pieces.concat())
}

fn options(record_limit: usize, batch_rows: usize) -> ReadOptions {
    ReadOptions { record_limit, batch_rows, ..ReadOptions::default() }
}

fn is_wide(all: &Everything) -> bool {
    !matches!(all.encoding, Some(plainwatt::stream::Encoding::Utf8))
}

#[derive(Default)]
struct Count(u64);

impl Merge for Count {
    fn merge(&mut self, other: Self) {
        self.0 += other.0;
    }
}

/// Every record written out, by so many threads in batches of so many rows.
fn written(input: &[u8], threads: usize, chunk: usize, options: ReadOptions) -> (Vec<u8>, Vec<u8>, u64) {
    let reader = RecordReader::new(Chunked(Cursor::new(input.to_vec()), chunk), options);
    let (mut rows, mut rejects) = (Vec::new(), Vec::new());
    let outcome = run(
        reader,
        Run { threads, ..Run::default() },
        |count: &mut Count, record, out| {
            count.0 += 1;
            let _ = writeln!(out.rows, "{}: {:?}", record.line(), record.iter().collect::<Vec<_>>());
            if let Some(fault) = record.fault() {
                let _ = writeln!(out.rejects, "{}: {fault:?} {:?}", record.byte(), record.raw());
            }
        },
        Sinks { rows: &mut rows, rejects: Some(&mut rejects) },
    )
    .expect("neither side fails");
    assert_eq!(outcome.summary.0, outcome.done.rows);
    (rows, rejects, outcome.done.rows)
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn chunks_and_batches_change_nothing(
        input in prop_oneof![hostile(), prop::collection::vec(any::<u8>(), 0..200)],
        chunk in 1_usize..20,
        limit in prop_oneof![1_usize..60, Just(1 << 20)],
        batch_rows in 1_usize..5,
    ) {
        let whole = read_with(&input, options(limit, 4096), usize::MAX);
        prop_assert_eq!(&read_with(&input, options(limit, batch_rows), chunk), &whole);
        prop_assert_eq!(&read_with(&input, options(limit, 4096), 1), &whole);
    }

    /// Of input that is not UTF-16, where the raw row is not what stands in the input.
    #[test]
    fn every_byte_is_in_one_record_or_a_line_end_or_behind_the_limit(
        input in hostile_bytes(), limit in prop_oneof![1_usize..60, Just(1 << 20)],
    ) {
        let all = read_with(&input, options(limit, 4096), usize::MAX);
        prop_assume!(!is_wide(&all));
        let mut at = if input.starts_with(b"\xEF\xBB\xBF") { 3 } else { 0 };
        let mut line = 1;
        let mut skipping = false;
        for record in &all.records {
            let start = usize::try_from(record.byte).unwrap();
            prop_assert!(start >= at);
            for (index, byte) in input[at..start].iter().enumerate() {
                skipping &= !b"\r\n".contains(byte);
                prop_assert!(skipping || b"\r\n".contains(byte));
                let crlf = *byte == b'\n' && at + index > 0 && input[at + index - 1] == b'\r';
                line += u64::from(b"\r\n".contains(byte) && !crlf);
            }
            prop_assert_eq!(record.line, line);
            prop_assert_eq!(&input[start..start + record.raw.len()], &record.raw[..]);
            prop_assert!(!record.raw.is_empty() && record.raw.len() <= limit);
            prop_assert!(!b"\r\n".contains(&record.raw[0]));
            let text = record.raw.iter().enumerate();
            let ends = text.filter(|(i, b)| **b == b'\r' || (**b == b'\n' && (*i == 0 || record.raw[i - 1] != b'\r')));
            line += ends.count() as u64;
            at = start + record.raw.len();
            skipping = record.fault.as_deref().is_some_and(|fault| fault.starts_with("a line of more"));
        }
        for byte in &input[at..] {
            skipping &= !b"\r\n".contains(byte);
            prop_assert!(skipping || b"\r\n".contains(byte));
        }
    }

    #[test]
    fn a_row_out_for_every_row_in_and_the_same_bytes_from_any_number_of_threads(
        input in hostile(), limit in prop_oneof![1_usize..60, Just(1 << 20)], batch_rows in 1_usize..5,
    ) {
        let alone = written(&input, 1, usize::MAX, options(limit, 4096));
        let records = read_with(&input, options(limit, 4096), usize::MAX).records;
        prop_assert_eq!(alone.2, records.len() as u64);
        prop_assert_eq!(&written(&input, 4, 9, options(limit, batch_rows)), &alone);
    }

    /// The reference is the csv crate: its writer and its reader.
    #[test]
    fn well_formed_csv_gives_the_fields_that_the_csv_crate_reads(
        rows in prop::collection::vec(prop::collection::vec("[a-z,;\"\r\n \u{e9}\u{1F4A1}]{0,8}", 3), 1..20),
        delimiter in prop::sample::select(vec![b',', b';', b'\t']),
        crlf in any::<bool>(),
        chunk in 1_usize..50,
    ) {
        let terminator = if crlf { csv::Terminator::CRLF } else { csv::Terminator::Any(b'\n') };
        let mut writer = csv::WriterBuilder::new().delimiter(delimiter).terminator(terminator).from_writer(Vec::new());
        for row in &rows {
            writer.write_record(row).unwrap();
        }
        let bytes = writer.into_inner().unwrap();
        let mut reader = csv::ReaderBuilder::new().delimiter(delimiter).has_headers(false).from_reader(&bytes[..]);
        let expected: Vec<Vec<String>> =
            reader.records().map(|record| record.unwrap().iter().map(Into::into).collect()).collect();
        let given = ReadOptions { delimiter: Some(delimiter), ..ReadOptions::default() };
        let all = read_with(&bytes, given, chunk);
        let fields: Vec<Vec<String>> = all.records.into_iter().map(|record| record.fields).collect();
        prop_assert_eq!(fields, expected);
    }
}
