//! Arbitrary bytes and near-misses through `grade`: no panic, no lost row, sound CSV out.
//!
//! `PLAINWATT_FUZZ_CASES=10000 cargo test --release --test fuzz_grade` runs longer.

mod grade_help;

use grade_help::{Ran, cells, grade};
use plainwatt::stream::{Batch, ReadOptions, RecordReader};
use proptest::prelude::*;
use std::fmt::Write as _;

/// Cases of each property: enough to try each kind of piece, few enough for every build.
const CASES: u32 = 96;

fn config() -> ProptestConfig {
    let cases = std::env::var("PLAINWATT_FUZZ_CASES").ok().and_then(|text| text.parse().ok());
    ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(cases.unwrap_or(CASES)) }
}

/// Records in the input, the header included, as the reader that has its own tests counts them.
fn records(input: &[u8], fields: Option<usize>) -> usize {
    let mut reader =
        RecordReader::new(input, ReadOptions { delimiter: fields.map(|_| b','), ..ReadOptions::default() });
    if let Some(fields) = fields {
        reader.expect_fields(fields);
    }
    let (mut batch, mut count) = (Batch::default(), 0);
    while reader.read_batch(&mut batch).unwrap() {
        count += batch.len();
    }
    count
}

/// Lines that are not empty: a count that owes nothing to the reader, for input without quotes.
fn filled_lines(input: &[u8]) -> usize {
    input.split(|byte| b"\r\n".contains(byte)).filter(|line| !line.is_empty()).count()
}

const LEAN: usize = 15;
const WIDE: usize = 58;

/// The rows, each as wide as it should be, with a verdict and guarded cells.
fn sound(ran: &Ran, width: usize) -> Vec<Vec<String>> {
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    assert!(std::str::from_utf8(&ran.out).is_ok());
    let rows = cells(&ran.out);
    // The names of the columns, where they are written, are rows for the count but not for what cells hold.
    for row in rows.iter().filter(|row| row[3] != "verdict") {
        assert_eq!(row.len(), width, "{row:?}");
        assert!(!row[3].is_empty(), "{row:?}");
        for text in &row[..2] {
            assert!(!text.starts_with(['=', '+', '-', '@', '\t', '\r']), "{row:?}");
        }
        for figure in row[6..14].iter().filter(|cell| !cell.is_empty()) {
            assert!(figure.parse::<f64>().is_ok_and(f64::is_finite), "{row:?}");
        }
    }
    // What is said of a run never acts on a terminal.
    assert!(!ran.err.chars().any(|c| c != '\n' && c.is_control()), "{:?}", ran.err);
    rows
}

const HEADER: &str = "listing,supplier,title,claim_w,class,tally,deep_red,white,diode_count,drive_ma,measured_w,\
                      measured_v,measured_a,measured_pf,admits_low_w,admits_high_w,supply_v,supply_a,ppf,ppe,\
                      replaces_w,units_in_pack,price,description";

/// A cell that is nearly what its column takes.
fn cell() -> impl Strategy<Value = String> {
    prop_oneof![
        6 => Just(String::new()),
        4 => (0_u32..2000).prop_map(|n| n.to_string()),
        2 => (1_u32..100, prop_oneof!["W", " w", "mA", "V", "A", "%", "x3W", "nm"])
            .prop_map(|(n, unit)| format!("{n}{unit}")),
        2 => prop_oneof!["1W", "3W", "5W", "10W", "0\\.5W", "smd-1W", "cob-50W", "3W 2835", "61W", "3\\.0000001W"],
        2 => any::<f64>().prop_map(|x| x.to_string()),
        2 => prop_oneof![
            "60 deep-red \\+ 20 royal-blue", "4 x \\(12 red \\+ 3 blue\\)", "60±2 red", "12 x 660nm",
            "1000000 white", "4294967296", "0", "-0", "1e400", "NaN", "inf", "1,5", "\"", "\"\"", "\"\"\"",
            "=1\\+1", "'", "\t", "\u{feff}", "\u{202e}", "24\\\" panel", "300W \\(100x3W\\) Full Spectrum",
            "2 x 300W equivalent, actual power 65W ± 5%", "110-120W", "100 x 3 W 植物"
        ],
        1 => ".{0,12}",
        1 => "[0-9wWxX*×+()., \"'-]{0,24}",
    ]
}

/// Rows of cells put together by delimiters, quotes and line ends that may be wrong.
fn table() -> impl Strategy<Value = Vec<u8>> {
    let row = (
        prop::collection::vec((cell(), 0..8_u8), 20..27),
        prop_oneof![5 => Just("\n"), 1 => Just("\r\n"), 1 => Just("\r"), 1 => Just("\n\n")],
    );
    prop::collection::vec(row, 0..12).prop_map(|rows| {
        let mut text = format!("{HEADER}\n");
        for (mut cells, end) in rows {
            // Most rows have the right width.
            if cells.len() % 3 != 0 {
                cells.resize(24, (String::new(), 1));
            }
            for (place, (cell, quoting)) in cells.iter().enumerate() {
                let comma = if place > 0 { "," } else { "" };
                let _ = match quoting {
                    0 => write!(text, "{comma}\"{}\"", cell.replace('"', "\"\"")),
                    7 => write!(text, "{comma}\"{cell}"),
                    _ => write!(text, "{comma}{cell}"),
                };
            }
            text.push_str(end);
        }
        text.into_bytes()
    })
}

/// Bytes of which many mean something to a reader of CSV.
fn bytes() -> impl Strategy<Value = Vec<u8>> {
    let byte =
        prop_oneof![4 => any::<u8>(), 1 => prop::sample::select(&b",;\t\"\r\n\0\xFF\xFE\xEF\xBB\xBF=3W"[..])];
    prop::collection::vec(byte, 0..2000)
}

/// The first byte must begin no byte order mark and no UTF-16, whose lines are no lines of bytes.
fn body(bytes: &[u8]) -> Vec<u8> {
    [b"A,b\n", bytes].concat()
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn arbitrary_bytes_give_a_row_a_record(bytes in bytes(), threads in 1..4_u8) {
        let input = body(&bytes);
        let flags = ["-", "--format", "csv", "--no-header", "--header", "listing,title,claim_w"];
        let ran = grade(&[&flags[..], &["--threads", &threads.to_string()]].concat(), &input);
        let rows = sound(&ran, LEAN);
        prop_assert_eq!(rows.len(), records(&input, Some(3)));
        let unquoted: Vec<u8> = input.into_iter().filter(|byte| *byte != b'"').collect();
        let ran = grade(&flags, &unquoted);
        prop_assert_eq!(sound(&ran, LEAN).len(), filled_lines(&unquoted));
    }

    #[test]
    fn arbitrary_files_are_graded_or_refused_in_words(
        header in prop_oneof![Just(""), Just("listing\n"), Just("\u{feff}listing;title;price\r\n"), Just("x\ttitle\r")],
        rest in bytes()
    ) {
        let input = [header.as_bytes(), &rest].concat();
        let ran = grade(&["-", "--format", "csv"], &input);
        if ran.code == Some(0) {
            prop_assert_eq!(sound(&ran, LEAN).len(), records(&input, None));
        } else {
            prop_assert_eq!((ran.code, ran.text()), (Some(2), ""));
            prop_assert!(ran.err.starts_with("plainwatt: standard input"), "{}", ran.err);
            prop_assert!(!ran.err.chars().any(|c| c != '\n' && c.is_control()), "{:?}", ran.err);
        }
    }

    #[test]
    fn near_misses_give_a_row_a_record(input in table()) {
        let lean = grade(&["-", "--format", "csv"], &input);
        let rows = sound(&lean, LEAN);
        prop_assert_eq!(rows.len(), records(&input, None));
        let wide = grade(&["-", "--format", "csv", "--wide", "--threads", "2"], &input);
        let wide = sound(&wide, WIDE);
        prop_assert!(wide.iter().map(|row| &row[..LEAN]).eq(rows.iter().map(Vec::as_slice)));
    }

    #[test]
    fn near_misses_are_sound_json_and_never_act_on_a_terminal(input in table()) {
        let json = grade(&["-", "--format", "json"], &input);
        prop_assert_eq!(json.code, Some(0));
        let mut count = 0;
        for line in json.text().lines() {
            let light: serde_json::Value = serde_json::from_str(line).expect("a line of JSON");
            prop_assert!(light["verdict"].is_string());
            count += 1;
        }
        prop_assert_eq!(count + 1, records(&input, None));
        let shown = grade(&["-", "--color", "never"], &input);
        prop_assert_eq!(shown.code, Some(0));
        let acting = |c: char| c != '\n' && (c.is_control() || "\u{202e}\u{feff}".contains(c));
        prop_assert!(!shown.text().contains(acting), "{}", shown.text());
    }
}
