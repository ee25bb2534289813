//! Workbooks from anybody: other files, damaged files, and files made to harm. None may end the program, take its memory,
//! or be read as something that it does not say. All listings here are invented.

mod grade_help;
mod workbooks;

use grade_help::{Ran, cells, command, directory, run};
use plainwatt::workbook::{LONGEST_PIECE, Workbook, WorkbookError};
use proptest::prelude::*;
use std::fs;
use std::io::Cursor;
use workbooks::{archive, edited, in_part, of_text, repacked, workbook};

fn graded(bytes: &[u8]) -> Ran {
    let place = directory();
    fs::write(place.path().join("x.xlsx"), bytes).unwrap();
    run(command().current_dir(place.path()).args(["x.xlsx", "--format", "csv"]), |_| {})
}

fn small() -> Vec<u8> {
    of_text(&[
        &["listing", "claim_w", "class"],
        &["A", "300", "3W"],
        &["B", "45", "3W"],
        &["C", "1000", "10W"],
    ])
}

/// The rows of the first sheet, as a caller gets them.
fn rows(bytes: &[u8]) -> Result<Vec<(u64, Vec<String>)>, WorkbookError> {
    let book = Workbook::open(Cursor::new(bytes.to_vec()))?;
    let sheet = book.choose(None)?;
    let mut rows = book.rows(&sheet).expect("a thread");
    let mut all = Vec::new();
    while let Some(row) = rows.next_row()? {
        all.push((row.number(), row.cells().map(|(place, text)| format!("{place}:{text}")).collect()));
    }
    Ok(all)
}

#[test]
fn another_kind_of_file_is_named_with_what_is_accepted() {
    let save = "accepted: an Excel workbook (.xlsx, .xlsm) or a CSV; save it as one of them\n";
    let ods = archive(&[
        ("mimetype", b"application/vnd.oasis"),
        ("content.xml", b"<a/>"),
        ("META-INF/manifest.xml", b"<a/>"),
    ]);
    let compound = [&b"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"[..], &[0; 600]].concat();
    for (bytes, said) in [
        (ods, format!("found an OpenDocument file (.ods); {save}")),
        (archive(&[("xl/workbook.bin", b"\0")]), format!("found a binary workbook (.xlsb); {save}")),
        (archive(&[("readme.txt", b"hello")]), format!("found a zip archive without a workbook; {save}")),
        (archive(&[]), format!("found a zip archive without a workbook; {save}")),
        (compound, "found an old Excel workbook (.xls), or one with a password; accepted: an .xlsx without a password, or a \
                    CSV; save it as one of them\n".to_owned()),
    ] {
        let ran = graded(&bytes);
        assert_eq!((ran.err, ran.code), (format!("plainwatt: x.xlsx: {said}"), Some(2)));
    }
}

#[test]
fn the_content_tells_a_workbook_from_a_csv_not_the_name() {
    assert_eq!(cells(&graded(b"listing,claim_w\nA,300\n").out)[1][0], "A");
    let place = directory();
    fs::write(place.path().join("x.csv"), small()).unwrap();
    let ran = run(command().current_dir(place.path()).args(["x.csv", "--format", "csv"]), |_| {});
    assert_eq!(cells(&ran.out)[3][0], "C");
}

#[test]
fn a_text_that_begins_like_an_archive_is_still_text() {
    let text = "PK,listing\n1,A\n";
    for bytes in [text.as_bytes(), b"P", b"PK"] {
        let (file, pipe) = (graded(bytes), grade_help::grade(&["-", "--format", "csv"], bytes));
        assert_eq!((file.code, &file.out), (pipe.code, &pipe.out));
        assert_eq!(file.code, Some(if bytes.len() > 2 { 0 } else { 2 }), "{}", file.err);
    }
}

#[test]
fn a_sheet_that_claims_every_cell_there_is_takes_no_room_for_them() {
    let book = edited(&small(), "ref=\"A1:C4\"", "ref=\"A1:XFD1048576\"");
    assert_eq!(graded(&book).out, graded(&small()).out);
    let far = workbook(|sheet| {
        sheet
            .write(0, 0, "listing")
            .unwrap()
            .write(1, 0, "A")
            .unwrap()
            .write(1_048_575, 16_383, "far")
            .unwrap();
    });
    let last = rows(&far).unwrap().pop().unwrap();
    assert_eq!(last, (1_048_576, vec!["16383:far".to_owned()]));
    assert_eq!(cells(&graded(&far).out).len(), 3);
}

#[test]
fn a_table_of_texts_that_declares_too_many_is_refused() {
    for (from, to) in
        [("uniqueCount=\"11\"", "uniqueCount=\"999999999999\""), ("<sst ", "<sst uniqueCount='99999999' ")]
    {
        let ran = graded(&in_part(&small(), "xl/sharedStrings.xml", from, to));
        assert!(ran.err.contains("its table of texts declares 99999999"), "{}", ran.err);
        assert_eq!(ran.code, Some(2));
    }
}

#[test]
fn what_unpacks_to_more_than_is_held_is_refused() {
    let bomb = repacked(&small(), |name, bytes| {
        Some(match name {
            "xl/sharedStrings.xml" => {
                let text = format!("<si><t>{}</t></si>", " ".repeat(60_000));
                [b"<sst>", text.repeat(4500).as_bytes(), b"</sst>"].concat()
            }
            _ => bytes,
        })
    });
    assert!(bomb.len() < 2 << 20, "{} bytes", bomb.len());
    assert_eq!(rows(&bomb), Err(WorkbookError::TooLarge));
    let ran = graded(&bomb);
    assert!(
        ran.err.contains("whose texts and styles take more than 256 MiB; accepted: at most that"),
        "{}",
        ran.err
    );
}

#[test]
fn a_piece_that_no_spreadsheet_writes_is_refused_before_it_is_held() {
    let long = "x".repeat(LONGEST_PIECE + 1);
    for (from, to) in [
        ("<sheetData>", format!("<sheetData><!--{long}-->")),
        ("<sheetData>", format!("<sheetData a='{}'>", "<a>\"".repeat(LONGEST_PIECE / 4 + 1))),
        ("<v>0</v>", format!("<v>{long}</v>")),
    ] {
        let part = "xl/worksheets/sheet1.xml".to_owned();
        assert_eq!(rows(&edited(&small(), from, &to)), Err(WorkbookError::LongPiece { part }));
    }
}

#[test]
fn a_row_that_is_too_long_is_one_faulty_row() {
    let long = "x".repeat(32_000);
    let book = workbook(|sheet| {
        sheet.write(0, 0, "listing").unwrap();
        for (row, name) in [(1, "A"), (2, "B"), (3, "C")] {
            sheet.write(row, 0, name).unwrap();
        }
        for column in 1..40 {
            sheet.write(2, column, &*long).unwrap();
        }
    });
    let ran = graded(&book);
    let rows: Vec<_> = cells(&ran.out).into_iter().skip(1).map(|r| (r[0].clone(), r[3].clone())).collect();
    let expected = [("A", "unsettled"), ("B", "unreadable"), ("C", "unsettled")];
    assert_eq!(rows, expected.map(|(name, verdict)| (name.to_owned(), verdict.to_owned())));
}

#[test]
fn cells_that_make_no_sense_end_the_run_with_the_cell_and_no_output() {
    let book = small();
    for (from, to, said) in [
        ("r=\"A2\"", "r=\"A9\"", "B2 stands after a later row"),
        ("r=\"B2\"", "r=\"A2\"", "Lights!A2 stands after a later row"),
        ("r=\"A2\"", "r=\"XFE2\"", "Lights!XFE2 is beyond any sheet"),
        ("r=\"A2\"", "r=\"ZZZZZZZZZZZZ2\"", "found a damaged workbook ("),
        ("r=\"A2\"", "r=\"A99999999999\"", "found a damaged workbook ("),
        (
            "<c r=\"A2\" t=\"s\"><v>3</v></c>",
            "<c r=\"A2\" t=\"e\"><v>#SPILL!</v></c>",
            "the error value '#SPILL!' in a cell after Lights!C1",
        ),
        ("<v>3</v>", "<v>300</v>", "found a damaged workbook ("),
        ("</sheetData>", "", "found a damaged workbook ("),
    ] {
        let place = directory();
        let (input, output) = (place.path().join("x.xlsx"), place.path().join("out.csv"));
        fs::write(&input, edited(&book, from, to)).unwrap();
        fs::write(&output, "old").unwrap();
        let ran = run(command().arg(&input).args(["--format", "csv", "-o"]).arg(&output), |_| {});
        assert!(ran.err.contains(said), "{to}: {}", ran.err);
        assert_eq!((ran.code, fs::read_to_string(&output).unwrap()), (Some(2), "old".to_owned()), "{to}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    /// The sums of the parts show most damage; what they do not cover must not be read as something else.
    #[test]
    fn a_damaged_workbook_is_refused_or_read_as_it_was(cut in any::<prop::sample::Index>(), at in any::<prop::sample::Index>(), flip in 1_u8..) {
        let whole = small();
        let expected = rows(&whole).unwrap();
        let shortened = &whole[..cut.index(whole.len())];
        prop_assert!(rows(shortened).is_err());
        let mut flipped = whole.clone();
        flipped[at.index(whole.len())] ^= flip;
        if let Ok(read) = rows(&flipped) {
            prop_assert_eq!(read, expected);
        }
    }

    /// A part that was changed on purpose has a sum that fits.
    #[test]
    fn a_forged_part_never_panics_nor_hangs(which in 0..5_usize, at in any::<prop::sample::Index>(), bytes in prop::collection::vec(any::<u8>(), 0..6)) {
        let part = ["xl/worksheets/sheet1.xml", "xl/sharedStrings.xml", "xl/workbook.xml", "xl/styles.xml", "_rels/.rels"][which];
        let forged = repacked(&small(), |name, mut text| {
            if name == part {
                let from = at.index(text.len());
                let to = (from + bytes.len()).min(text.len());
                text.splice(from..to, bytes.iter().copied());
            }
            Some(text)
        });
        if let Ok(read) = rows(&forged) {
            prop_assert!(read.len() <= 4 && read.is_sorted_by(|a, b| a.0 < b.0));
        }
    }
}
