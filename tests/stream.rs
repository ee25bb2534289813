//! Hostile files in, the exact records out: what a row becomes whatever the file holds.

mod stream_help;

use plainwatt::stream::{Batch, Encoding, Notice, ReadOptions, RecordReader};
use std::io::Read;
use stream_help::{Seen, read, read_with, seen};

const UNCLOSED: &str = "a quote that opens and does not close";

fn options(limit: usize) -> ReadOptions {
    ReadOptions { record_limit: limit, ..ReadOptions::default() }
}

/// The fields of every record, a faulty one marked by `!`.
fn rows(input: impl AsRef<[u8]>) -> Vec<String> {
    read(input.as_ref()).records.iter().map(Seen::row).collect()
}

#[test]
fn plain_rows_have_line_byte_and_raw_row() {
    assert_eq!(
        read(b"id,claim\nA,300\n\nB,\"1,000\"").records,
        [
            seen(1, 0, &["id", "claim"], "id,claim"),
            seen(2, 9, &["A", "300"], "A,300"),
            seen(4, 16, &["B", "1,000"], "B,\"1,000\""),
        ]
    );
}

#[test]
fn lf_cr_and_crlf_each_end_a_line() {
    let expected = |step: u64| {
        [
            seen(1, 0, &["a", "b"], "a,b"),
            seen(2, 3 + step, &["1", "2"], "1,2"),
            seen(3, 6 + 2 * step, &["3"], "3"),
        ]
    };
    assert_eq!(read(b"a,b\n1,2\n3\n").records, expected(1));
    assert_eq!(read(b"a,b\r1,2\r3\r").records, expected(1));
    assert_eq!(read(b"a,b\r\n1,2\r\n3\r\n").records, expected(2));
}

#[test]
fn empty_lines_are_skipped_and_counted() {
    let lines = read(b"\n\r\n\ra\n\n\r\r\n1\n").records;
    assert_eq!(lines, [seen(4, 4, &["a"], "a"), seen(8, 10, &["1"], "1")]);
}

#[test]
fn a_bare_quote_in_a_field_is_an_inch_mark() {
    assert_eq!(
        rows("id,title\nA,24\" panel\nB,8' x 12\"\n\"C\",d\n"),
        ["id|title", "A|24\" panel", "B|8' x 12\"", "C|d"]
    );
}

#[test]
fn text_behind_a_closing_quote_stays_in_its_field() {
    assert_eq!(
        rows("id,title,w\nA,\"24\" panel,5\nB,\"a\"\"b\",6\n"),
        ["id|title|w", "A|24 panel|5", "B|a\"b|6"]
    );
}

#[test]
fn a_sound_quoted_field_may_run_over_lines() {
    let input = b"id,title\nA,\"two\nlines\"\nB,\"three\r\n\r\nlines\"\r\nC,x\n";
    assert_eq!(
        read(input).records,
        [
            seen(1, 0, &["id", "title"], "id,title"),
            seen(2, 9, &["A", "two\nlines"], "A,\"two\nlines\""),
            seen(4, 23, &["B", "three\r\n\r\nlines"], "B,\"three\r\n\r\nlines\""),
            seen(7, 43, &["C", "x"], "C,x"),
        ]
    );
}

#[test]
fn a_quote_that_never_closes_costs_its_own_row_only() {
    let first = read(b"\"id,title\nA,x\nB,y\n");
    assert_eq!(first.records[0], seen(1, 0, &[], "\"id,title").faulty(UNCLOSED));
    assert_eq!(rows(b"\"id,title\nA,x\nB,y\n"), ["!", "A|x", "B|y"]);
    assert_eq!(rows(b"id,title\nA,x\nB,\"y\nC,z\nD,u\n"), ["id|title", "A|x", "!B", "C|z", "D|u"]);
    assert_eq!(rows(b"id,title\nA,x\nB,\"y\n"), ["id|title", "A|x", "!B"]);
    assert_eq!(rows(b"id,title\nA,x\nB,\"y"), ["id|title", "A|x", "!B"]);
    assert_eq!(rows(b"id,title\nA,\"x\nB,\"y"), ["id|title", "!A", "!B"]);
}

#[test]
fn an_unclosed_quote_does_not_swallow_rows_up_to_the_next_quoted_field() {
    let input = "id,title,w\nA,\"24 in,5\nB,x,6\nC,\"y, z\",7\nD,\"u\nv\",8\n";
    assert_eq!(rows(input), ["id|title|w", "!A", "B|x|6", "C|y, z|7", "D|u\nv|8"]);
    let inch_mark = "id,title,w\nA,\"24 in,5\nB,12\" x,6\nC,y,7\n";
    assert_eq!(rows(inch_mark), ["id|title|w", "!A", "B|12\" x|6", "C|y|7"]);
}

#[test]
fn a_quote_that_closes_in_a_row_of_another_width_is_not_believed() {
    let input = "id,title,w\nA,\"24 in,5\nB,12\",,6\nC,y,7\n";
    assert_eq!(rows(input), ["id|title|w", "!A", "B|12\"||6", "C|y|7"]);
}

#[test]
fn beyond_the_record_limit_the_rest_is_recovered() {
    // Each line closes the quote of the line before and opens another: only the limit ends this.
    let mut input = String::from("a,b\n");
    for _ in 0..10 {
        input.push_str("x\",\"y\n");
    }
    let records = read_with(input.as_bytes(), options(20), usize::MAX).records;
    let rows: Vec<_> = records.iter().map(Seen::row).collect();
    assert_eq!(rows, [&["a|b"][..], &["!x\""; 10]].concat());

    let multi_line = format!("a,b\n1,\"{}\"\n2,c\n", "line\n".repeat(5));
    let whole = read_with(multi_line.as_bytes(), options(29), usize::MAX).records;
    assert_eq!(whole.len(), 3);
    let cut = read_with(multi_line.as_bytes(), options(28), usize::MAX).records;
    let rows: Vec<_> = cut.iter().map(Seen::row).collect();
    // The closing quote, alone on its line, opens a field there.
    assert_eq!(rows, ["a|b", "!1", "line", "line", "line", "line", "!", "2|c"]);
}

#[test]
fn a_line_at_the_limit_is_read_and_one_over_it_is_a_fault() {
    let records = read_with(b"a,b\nx,12345678\nx,123456789\ny,1\n", options(10), usize::MAX).records;
    assert_eq!(
        records,
        [
            seen(1, 0, &["a", "b"], "a,b"),
            seen(2, 4, &["x", "12345678"], "x,12345678"),
            seen(3, 15, &["x"], "x,12345678").faulty("a line of more than 10 bytes"),
            seen(4, 27, &["y", "1"], "y,1"),
        ]
    );
}

#[test]
fn a_hundred_megabyte_field_costs_one_row_and_little_memory() {
    for quote in [&b"\""[..], b""] {
        let giant = std::io::repeat(b'x').take(100_000_000);
        let start = [b"id,title\nA,", quote].concat();
        let end = [quote, b",9\nB,y\n"].concat();
        let input = std::io::Cursor::new(start).chain(giant).chain(std::io::Cursor::new(end));
        let read = stream_help::read_from(input, ReadOptions::default());
        let rows: Vec<_> = read.records.iter().map(|record| (record.row(), record.raw.len())).collect();
        assert_eq!(rows, [("id|title".into(), 8), ("!A".into(), 1024 * 1024), ("B|y".into(), 3)]);
        assert_eq!(read.records[2].byte, 11 + 100_000_000 + 2 * quote.len() as u64 + 3);
    }
    // Where the system counts it: the peak of this process, all its tests included.
    if let Ok(status) = std::fs::read_to_string("/proc/self/status") {
        let peak = status.lines().find_map(|line| line.strip_prefix("VmHWM:")).unwrap();
        let kibibytes: u64 = peak.trim().trim_end_matches(" kB").parse().unwrap();
        assert!(kibibytes < 64 * 1024, "{peak}");
    }
}

#[test]
fn without_a_header_the_number_of_fields_can_be_told() {
    let input = b"A,\"24 in,5\nB,12\",,6\n";
    let fields = |width: Option<usize>| {
        let mut reader = RecordReader::new(&input[..], ReadOptions::default());
        if let Some(width) = width {
            reader.expect_fields(width);
        }
        let mut batch = Batch::default();
        assert!(reader.read_batch(&mut batch).unwrap());
        batch.iter().map(|record| record.len()).collect::<Vec<_>>()
    };
    assert_eq!(fields(None), [4]);
    assert_eq!(fields(Some(3)), [1, 4]);
}

#[test]
fn more_fields_than_any_table_are_a_fault() {
    let input = format!("a,b\n{}\n1,2\n", ",".repeat(20_000));
    let records = read(input.as_bytes()).records;
    assert_eq!(records[1].fault.as_deref(), Some("a row of more than 16384 fields"));
    assert_eq!((records[1].raw.len(), records[2].row()), (20_000, "1|2".into()));
}

#[test]
fn ragged_rows_are_passed_on_as_they_are() {
    assert_eq!(rows("a,b,c\n1\n1,2,3,4\n,\n\"\"\n"), ["a|b|c", "1", "1|2|3|4", "|", ""]);
}

#[test]
fn nothing_comes_of_an_empty_file_and_one_record_of_a_header_alone() {
    for empty in [&b""[..], b"\n", b"\r\n\r\n", b"\xEF\xBB\xBF", b"\xFF\xFE", b"\xFE\xFF"] {
        assert_eq!(rows(empty), [""; 0], "{empty:?}");
    }
    assert_eq!(rows("id,title"), ["id|title"]);
    assert_eq!(rows("id,title\r\n"), ["id|title"]);
}

#[test]
fn semicolons_and_tabs_are_detected_or_given() {
    assert_eq!(rows("id;title, long\nA;1,5\n"), ["id|title, long", "A|1,5"]);
    assert_eq!(rows("id\ttitle\nA\tx;y,z\n"), ["id|title", "A|x;y,z"]);
    let given = ReadOptions { delimiter: Some(b'|'), ..ReadOptions::default() };
    let records = read_with(b"a|b,c\n", given, usize::MAX).records;
    assert_eq!(records, [seen(1, 0, &["a", "b,c"], "a|b,c")]);
}

#[test]
fn a_byte_order_mark_is_dropped_once_and_counted() {
    let read = read(b"\xEF\xBB\xBFid,t\nA,\xC3\xA9\n");
    assert_eq!(read.records, [seen(1, 3, &["id", "t"], "id,t"), seen(2, 8, &["A", "é"], "A,é")]);
    assert_eq!(rows(b"\xEF\xBB\xBF\xEF\xBB\xBFid\n"), ["\u{FEFF}id"]);
    assert_eq!(rows(b"id\n\xEF\xBB\xBFA\n"), ["id", "\u{FEFF}A"]);
}

#[test]
fn utf16_is_read_with_and_without_its_mark() {
    let text = "id;título\r\nA;100 × 3 W 💡\r\nB;\"\"\n";
    for (mark, big_endian) in [(true, false), (true, true), (false, false), (false, true)] {
        let marked = if mark { format!("\u{FEFF}{text}") } else { text.to_string() };
        let units = marked.encode_utf16();
        let bytes: Vec<u8> =
            units.flat_map(|unit| if big_endian { unit.to_be_bytes() } else { unit.to_le_bytes() }).collect();
        let read = read(&bytes);
        let base = if mark { 2 } else { 0 };
        assert_eq!(
            read.records,
            [
                seen(1, base, &["id", "título"], "id;título"),
                seen(2, base + 22, &["A", "100 × 3 W 💡"], "A;100 × 3 W 💡"),
                seen(3, base + 22 + 32, &["B", ""], "B;\"\""),
            ]
        );
        let encoding = if big_endian { Encoding::Utf16Be } else { Encoding::Utf16Le };
        assert_eq!(read.encoding, Some(encoding));
        let guess = Notice::Utf16Guessed { big_endian };
        assert_eq!(read.notices, if mark { vec![] } else { vec![guess] });
    }
}

#[test]
fn rows_that_are_not_utf8_are_windows_1252_and_named() {
    let read = read(b"id,title\nA,\xC3\xA9t\xC3\xA9\nB,\x93caf\xE9\x94 \x80 5\nC,ok\nD,\"\xB11\"\n");
    let rows: Vec<_> = read.records.iter().map(Seen::row).collect();
    assert_eq!(rows, ["id|title", "A|été", "B|“café” € 5", "C|ok", "D|±1"]);
    assert_eq!(read.records[2].raw, b"B,\x93caf\xE9\x94 \x80 5");
    assert_eq!(read.notices, [Notice::Windows1252Guessed { first_line: 3, records: 2 }]);
    assert_eq!(
        read.notices[0].to_string(),
        "windows-1252-guessed: 2 rows that are not UTF-8, the first on line 3, read as Windows-1252; if that is wrong, save \
         the file as UTF-8"
    );
}

#[test]
fn halves_of_a_character_in_two_fields_are_not_joined() {
    assert_eq!(rows(b"a,b\n\xC3,\xA9\n\xC3\xA9,x\n"), ["a|b", "Ã|©", "é|x"]);
}

#[test]
fn zero_bytes_are_text() {
    assert_eq!(rows(b"id,title\nA\0B,\0\n\0,\n"), ["id|title", "A\0B|\0", "\0|"]);
}
