//! Hostile files in, exact output out: rows, rejects, messages, exit code; and no row lost.
//!
//! `fixtures/hostile/NAME/` holds `input.csv` and what comes of it: `output.csv` and `rejects.csv` where the file can be
//! graded, `stderr.txt` in any case.

mod grade_help;

use grade_help::{Ran, cells, command, directory, fixtures, grade, run};
use std::fs;

/// A fixture, the rows that stand in it (counted by hand; `None` where the file is refused), and the flags it needs.
const CASES: [(&str, Option<usize>, &[&str]); 33] = [
    ("bare-quotes", Some(4), &[]),
    ("unbalanced-quotes", Some(5), &[]),
    ("unclosed-quote", Some(5), &[]),
    ("unclosed-quote-at-end", Some(2), &[]),
    ("unclosed-quote-in-header", None, &[]),
    ("line-breaks-in-quotes", Some(3), &[]),
    ("ragged", Some(7), &[]),
    ("bom", Some(1), &[]),
    ("crlf", Some(3), &[]),
    ("lone-cr", Some(3), &[]),
    ("mixed-line-ends", Some(4), &[]),
    ("utf-16-le", Some(3), &[]),
    ("utf-16-be", Some(3), &[]),
    ("utf-16-without-mark", Some(3), &[]),
    ("windows-1252", Some(4), &[]),
    ("nul", Some(4), &[]),
    ("header-again", Some(4), &[]),
    ("duplicate-columns", None, &[]),
    ("duplicate-unused-columns", Some(1), &[]),
    ("missing-columns", Some(2), &[]),
    ("no-known-column", None, &[]),
    ("near-columns", Some(1), &[]),
    ("empty", None, &[]),
    ("blank-lines-alone", None, &[]),
    ("header-alone", Some(0), &[]),
    ("header-alone-without-line-end", Some(0), &[]),
    ("semicolons", Some(3), &[]),
    ("semicolons-given", Some(2), &["--delimiter", ";"]),
    ("tabs", Some(2), &[]),
    ("bars", Some(2), &["--delimiter", "|"]),
    ("formulas", Some(6), &[]),
    ("formulas-raw", Some(6), &["--raw"]),
    ("escapes", Some(2), &[]),
];

#[test]
fn every_fixture_gives_its_exact_output_rejects_and_messages() {
    for (name, rows, flags) in CASES {
        let expected = |file: &str| fs::read_to_string(fixtures().join(name).join(file));
        for threads in ["1", "3"] {
            let place = directory();
            let (output, rejects) = (place.path().join("out.csv"), place.path().join("rejects.csv"));
            fs::write(&output, "old").unwrap();
            let ran = run(
                command()
                    .current_dir(fixtures().join(name))
                    .args(["input.csv", "--format", "csv", "--threads", threads])
                    .args(flags)
                    .arg("-o")
                    .arg(&output)
                    .arg("--rejects")
                    .arg(&rejects),
                |_| {},
            );
            assert_eq!(ran.err, expected("stderr.txt").unwrap(), "{name}");
            assert_eq!(ran.out, b"", "{name}");
            if let Some(rows) = rows {
                let written = fs::read(&output).unwrap();
                assert_eq!(ran.code, Some(0), "{name}");
                assert_eq!(
                    String::from_utf8(written.clone()).unwrap(),
                    expected("output.csv").unwrap(),
                    "{name}"
                );
                assert_eq!(fs::read_to_string(&rejects).unwrap(), expected("rejects.csv").unwrap(), "{name}");
                assert_eq!(cells(&written).len(), rows + 1, "{name}");
            } else {
                assert_eq!(ran.code, Some(2), "{name}");
                assert_eq!(fs::read(&output).unwrap(), b"old", "{name}");
                assert!(!rejects.exists(), "{name}");
            }
        }
    }
}

#[test]
fn every_fixture_gives_the_same_rows_through_a_pipe() {
    for (name, rows, flags) in CASES {
        let input = fs::read(fixtures().join(name).join("input.csv")).unwrap();
        let ran = grade(&[&["-", "--format", "csv"], flags].concat(), &input);
        if rows.is_some() {
            assert_eq!(
                ran.text(),
                fs::read_to_string(fixtures().join(name).join("output.csv")).unwrap(),
                "{name}"
            );
        } else {
            assert_eq!((ran.code, ran.text()), (Some(2), ""), "{name}");
        }
    }
}

#[test]
fn each_reject_stands_where_its_line_and_byte_say() {
    for (name, rows, _) in CASES {
        // UTF-16 is given as UTF-8, so that its bytes stand elsewhere; Windows-1252 has fewer.
        if rows.is_none() || name.starts_with("utf-16") || name == "windows-1252" || name == "formulas" {
            continue;
        }
        let input = fs::read(fixtures().join(name).join("input.csv")).unwrap();
        let rejects = fs::read(fixtures().join(name).join("rejects.csv")).unwrap();
        for reject in &cells(&rejects)[1..] {
            let (line, byte): (usize, usize) = (reject[0].parse().unwrap(), reject[1].parse().unwrap());
            assert!(input[byte..].starts_with(reject[5].as_bytes()), "{name} {reject:?}");
            let before = String::from_utf8_lossy(&input[..byte]).replace("\r\n", "\n").replace('\r', "\n");
            assert_eq!(before.matches('\n').count() + 1, line, "{name} {reject:?}");
        }
    }
}

#[test]
fn the_guard_against_formulas_can_be_taken_off() {
    let read = |name: &str, file: &str| cells(&fs::read(fixtures().join(name).join(file)).unwrap());
    for file in ["output.csv", "rejects.csv"] {
        let (guarded, raw) = (read("formulas", file), read("formulas-raw", file));
        assert_eq!(guarded.len(), raw.len());
        for (guarded, raw) in guarded.iter().flatten().zip(raw.iter().flatten()) {
            assert_eq!(guarded.strip_prefix('\'').unwrap_or(guarded), raw);
            assert!(!guarded.starts_with(['=', '+', '-', '@', '\t', '\r']), "{guarded}");
        }
    }
    assert_eq!(read("formulas-raw", "output.csv")[1][0], "=HYPERLINK(\"http://example.org\",\"x\")");
}

#[test]
fn a_field_of_a_hundred_megabytes_costs_its_row_only() {
    let place = directory();
    let rejects = place.path().join("rejects.csv");
    let ran = run(command().args(["-", "--format", "csv", "--rejects"]).arg(&rejects), |pipe| {
        pipe.write_all(b"listing,title,claim_w,measured_w\nA,\"").unwrap();
        let megabyte = vec![b'x'; 1_000_000];
        for _ in 0..100 {
            pipe.write_all(&megabyte).unwrap();
        }
        pipe.write_all(b"\",100,98\nB,plain,100,98\n").unwrap();
    });
    let rows = cells(&ran.out);
    assert_eq!((ran.code, rows.len()), (Some(0), 3));
    assert_eq!(
        (&rows[1][0], &rows[1][3], &rows[1][14]),
        (&"A".into(), &"unreadable".into(), &"fault:row".into())
    );
    assert_eq!((&rows[2][0], &rows[2][3]), (&"B".into(), &"borne-out".into()));
    let rejects = cells(&fs::read(rejects).unwrap());
    assert_eq!(
        rejects[1][..5],
        ["2", "33", "", "a line of more than 1048576 bytes", "a line of at most 1048576 bytes"]
    );
    assert_eq!(rejects[1][5].len(), 1_048_576);
}

fn refused(ran: &Ran, message: &str) {
    assert_eq!((ran.code, ran.text(), ran.err.as_str()), (Some(2), "", message));
}

#[test]
fn what_is_no_file_is_refused_by_name() {
    let place = directory();
    let ran = run(command().arg(".").current_dir(place.path()), |_| {});
    refused(&ran, "plainwatt: . is a directory; accepted is a CSV or .xlsx file, or - for standard input\n");
    let ran = run(command().arg("gone.csv").current_dir(place.path()), |_| {});
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.starts_with("plainwatt: cannot open gone.csv: "), "{}", ran.err);
}

#[test]
fn a_dash_twice_is_refused() {
    let ran = grade(&["-", "-"], b"listing\nA\n");
    assert_eq!((ran.code, ran.text()), (Some(2), ""));
    assert!(ran.err.starts_with("error: unexpected argument '-' found\n"), "{}", ran.err);
    let both = "plainwatt: --rejects: found - for standard output, where the rows go; accepted: a file, or - beside \
                --output FILE\n";
    refused(&grade(&["-", "--rejects", "-"], b"listing\nA\n"), both);
    refused(&grade(&["-", "-o", "-", "--rejects", "-"], b"listing\nA\n"), both);
}

#[test]
fn rows_and_rejects_in_one_file_are_refused() {
    let place = directory();
    let ran =
        run(command().args(["-", "-o", "x.csv", "--rejects", "x.csv"]).current_dir(place.path()), |_| {});
    refused(&ran, "plainwatt: --rejects: found the file of --output, x.csv; accepted: another file\n");
    assert_eq!(fs::read_dir(place.path()).unwrap().count(), 0);
}

#[test]
fn a_delimiter_is_one_character_and_neither_letter_nor_quote() {
    for wrong in ["", "ab", "x", "\"", "é", "7"] {
        let ran = grade(&["-", &format!("--delimiter={wrong}")], b"listing\nA\n");
        refused(
            &ran,
            &format!(
                "plainwatt: --delimiter: found '{wrong}', accepted: one character such as ; or the word tab\n"
            ),
        );
    }
    for tab in ["tab", "\t"] {
        let ran = grade(&["-", "--format", "csv", "--delimiter", tab], b"listing\ttitle\nA,B\tx\n");
        assert_eq!(cells(&ran.out)[1][0], "A,B");
    }
}
