//! A catalogue in a workbook means what it means in a CSV; a fault names the cell. All listings here are invented.

mod grade_help;
mod workbooks;

use grade_help::{Ran, cells, command, directory, run};
use rust_xlsxwriter::{ExcelDateTime, Format, Formula, Workbook};
use std::fs;
use std::process::{Command, Stdio};
use workbooks::{of_csv, of_text, workbook};

fn demo() -> String {
    fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/demo-data/listings.csv")).expect("the demo data")
}

/// Runs a command over a catalogue that is called `name`.
fn over(name: &str, catalogue: &[u8], arguments: &[&str]) -> Ran {
    let place = directory();
    fs::write(place.path().join(name), catalogue).unwrap();
    let mut command = Command::new(env!("CARGO_BIN_EXE_plainwatt"));
    command.stdout(Stdio::piped()).stderr(Stdio::piped());
    run(command.current_dir(place.path()).args(arguments), |_| {})
}

/// What `grade` makes of a workbook as CSV, and its rejects without their header.
fn graded(workbook: &[u8], flags: &[&str]) -> (Ran, Vec<Vec<String>>) {
    let place = directory();
    let (input, rejects) = (place.path().join("lights.xlsx"), place.path().join("rejects.csv"));
    fs::write(&input, workbook).unwrap();
    let ran =
        run(command().arg(&input).args(["--format", "csv", "--rejects"]).arg(&rejects).args(flags), |_| {});
    let mut rejected = cells(&fs::read(&rejects).unwrap_or_default());
    if !rejected.is_empty() {
        assert_eq!(rejected.remove(0).join(","), "line,cell,column,found,accepted,row");
    }
    (ran, rejected)
}

#[test]
fn the_demo_as_a_workbook_gives_what_it_gives_as_csv_byte_for_byte() {
    let (csv, xlsx) = (demo(), of_csv(&demo()));
    for arguments in [
        &["grade", "FILE", "--format", "csv"][..],
        &["grade", "FILE", "--format", "csv", "--wide", "--threads", "3"],
        &["grade", "FILE", "--format", "markdown"],
        &["grade", "FILE", "--format", "csv", "--sort", "share"],
        &["grade", "FILE", "--format", "json", "--threads", "1"],
        &["audit", "FILE", "--format", "csv"],
        &["audit", "FILE", "--format", "json"],
        &["audit", "FILE", "--stop-at", "overstated"],
    ] {
        let with = |file: &str, bytes: &[u8]| {
            let arguments: Vec<_> = arguments.iter().map(|a| if *a == "FILE" { file } else { a }).collect();
            over(file, bytes, &arguments)
        };
        let (text, mut sheet) = (with("lights.csv", csv.as_bytes()), with("lights.xlsx", &xlsx));
        // Beside the line, which is the row, the fault of a sheet names the cell.
        sheet.out = sheet.text().replacen(r#""cell":"Lights!F42","#, "", 1).into_bytes();
        sheet.err =
            sheet.err.replacen("unreadable L41: Lights!F42, tally:", "unreadable L41: line 42, tally:", 1);
        assert_eq!(sheet, text, "{arguments:?}");
    }
}

#[test]
fn a_workbook_may_come_through_a_pipe() {
    let xlsx = of_csv(&demo());
    let piped = grade_help::grade(&["-", "--format", "csv"], &xlsx);
    assert_eq!(piped.out, grade_help::grade(&["-", "--format", "csv"], demo().as_bytes()).out);
}

#[test]
fn what_a_cell_holds_is_read_as_it_would_stand_in_a_csv_and_a_fault_names_the_cell() {
    let day = Format::new().set_num_format("yyyy-mm-dd");
    let per_cent = Format::new().set_num_format("0 %");
    let money = Format::new().set_num_format("[$€-407] #,##0.00");
    let book = workbook(|sheet| {
        sheet
            .write_row(
                0,
                0,
                ["listing", "claim_w", "measured_v", "measured_a", "measured_pf", "price", "title"],
            )
            .unwrap();
        for (row, name) in
            (1..).zip(["sum", "date", "error", "truth", "below", "words", "never", "sort", "title", "half"])
        {
            sheet.write(row, 0, name).unwrap();
            sheet.write(row, 1, 300).unwrap();
        }
        sheet.write(1, 1, Formula::new("=0.1+0.2").set_result("0.30000000000000004")).unwrap();
        sheet.write(1, 2, 230).unwrap().write(1, 3, 0.5).unwrap();
        sheet.write_with_format(1, 4, 0.97, &per_cent).unwrap();
        sheet.write_with_format(1, 5, 1234.5, &money).unwrap();
        sheet.write_with_format(2, 1, ExcelDateTime::from_ymd(2026, 3, 5).unwrap(), &day).unwrap();
        sheet.write(3, 1, Formula::new("=NA()").set_result("#N/A")).unwrap();
        sheet.write(4, 1, true).unwrap();
        sheet.write(5, 1, -5).unwrap();
        sheet.write(6, 1, "a lot").unwrap();
        sheet.write(7, 1, Formula::new("=100*3")).unwrap();
        sheet.write(8, 5, "12,5").unwrap();
        sheet.write(9, 6, Formula::new("=VLOOKUP(1,A1:A1,1)").set_result("#REF!")).unwrap();
        sheet.write(10, 3, 0.5).unwrap();
    });
    // The writer gives every formula a value; a program that works nothing out leaves it without one.
    let book = workbooks::edited(&book, "<f>100*3</f><v>0</v>", "<f>100*3</f>");
    let (ran, rejects) = graded(&book, &["--wide"]);
    let rows = cells(&ran.out);
    let of = |name: &str| {
        let place =
            rows[0].iter().position(|h| h == name).unwrap_or_else(|| panic!("{name} in {:?}", rows[0]));
        rows[1][place].as_str()
    };
    assert_eq!((of("listing"), of("claim_w"), of("verdict")), ("sum", "0.3", "understated"), "{}", ran.err);
    assert_eq!((rows.len(), ran.code), (11, Some(0)));
    let found: Vec<_> = rejects.iter().map(|r| [&*r[0], &*r[1], &*r[2], &*r[3]]).collect();
    let expected = [
        ["3", "Lights!B3", "claim_w", "2026-03-05"],
        ["4", "Lights!B4", "claim_w", "#N/A"],
        ["5", "Lights!B5", "claim_w", "TRUE"],
        ["6", "Lights!B6", "claim_w", "'-5"],
        ["7", "Lights!B7", "claim_w", "a lot"],
        ["8", "Lights!B8", "claim_w", plainwatt::workbook::NEVER_CALCULATED],
        ["9", "Lights!F9", "price", "12,5"],
        ["10", "Lights!G10", "title", "#REF!"],
        ["11", "Lights!C11", "measured_v", "0.5 A without volts"],
    ];
    assert_eq!(found, expected);
    assert_eq!(rejects[6][5], "sort,300,,,,\"12,5\",", "the row as CSV");
}

#[test]
fn the_table_and_the_json_name_the_cell_too() {
    let mut book = Workbook::new();
    let sheet = book.add_worksheet().set_name("Bob's lights").unwrap();
    sheet.write_row(0, 0, ["Power (W)", "listing"]).unwrap();
    sheet.write_row(4, 0, ["much", "A"]).unwrap();
    let book = book.save_to_buffer().unwrap();
    let flags = ["grade", "x.xlsx", "--column", "claim_w=Power (W)", "--format"];
    let table = over("x.xlsx", &book, &[&flags[..], &["table"]].concat());
    assert!(table.text().contains("'Bob''s lights'!A5, Power (W): found much"), "{}", table.text());
    let json = over("x.xlsx", &book, &[&flags[..], &["json"]].concat());
    assert!(json.text().contains(r#""fault":{"line":5,"column":"Power (W)","cell":"'Bob''s lights'!A5","#));
}

#[test]
fn a_table_need_not_begin_at_the_corner_nor_be_without_gaps() {
    let tidy = "listing,claim_w,class,diode_count\nA,300,3W,100\nB,\"1,200\",3W,\nC,50,3W,10\n";
    let bold = Format::new().set_bold();
    let book = workbook(|sheet| {
        sheet.write_row(2, 1, ["listing", "claim_w", "class", "diode_count"]).unwrap();
        sheet
            .write(4, 1, "A")
            .unwrap()
            .write(4, 2, 300)
            .unwrap()
            .write(4, 3, "3W")
            .unwrap()
            .write(4, 4, 100)
            .unwrap();
        sheet.write(5, 2, "  ").unwrap();
        sheet.write(6, 1, "B").unwrap().write(6, 2, "1,200").unwrap().write(6, 3, "3W").unwrap();
        sheet.write(6, 25, "a note to the right of the table").unwrap();
        sheet
            .write(7, 1, "C")
            .unwrap()
            .write(7, 2, 50)
            .unwrap()
            .write(7, 3, "3W")
            .unwrap()
            .write(7, 4, 10)
            .unwrap();
        sheet.set_row_hidden(7).unwrap();
        for row in 8..200 {
            sheet.write_blank(row, 3, &bold).unwrap();
        }
    });
    let (ran, rejects) = graded(&book, &[]);
    assert_eq!(ran.out, grade_help::grade(&["-", "--format", "csv"], tidy.as_bytes()).out);
    assert!(rejects.is_empty());
}

#[test]
fn text_comes_through_whatever_it_holds_and_stays_guarded() {
    let name = "24\" panel, \"new\"\nsecond line;\t& <b>\u{fc}\u{1f4a1}";
    let book = of_text(&[&["listing", "supplier"], &[name, "=cmd|' /C calc'!A0"], &["007", "1e3"]]);
    let (ran, _) = graded(&book, &[]);
    let rows = cells(&ran.out);
    assert_eq!((&*rows[1][0], &*rows[1][1]), (name, "'=cmd|' /C calc'!A0"));
    assert_eq!((&*rows[2][0], &*rows[2][1]), ("007", "1e3"), "text is not made a number");
}

#[test]
fn merged_cells_hold_their_text_at_the_upper_left() {
    let book = workbook(|sheet| {
        sheet.write_row(0, 0, ["listing", "supplier", "claim_w"]).unwrap();
        sheet.write(1, 0, "A").unwrap().write(2, 0, "B").unwrap();
        sheet.merge_range(1, 1, 2, 1, "Acme", &Format::new()).unwrap();
    });
    let rows = cells(&graded(&book, &[]).0.out);
    assert_eq!((&*rows[1][1], &*rows[2][1]), ("Acme", ""));
}

/// A workbook with a chart, a hidden sheet, `Lights`, `Notes` and an empty one.
fn many_sheets() -> Vec<u8> {
    let mut book = Workbook::new();
    for (name, listing) in
        [("Old", Some("old")), ("Lights", Some("new")), ("Notes", Some("note")), ("Blank", None)]
    {
        let sheet = book.add_worksheet().set_name(name).unwrap();
        if let Some(listing) = listing {
            sheet.write(0, 0, "listing").unwrap().write(1, 0, listing).unwrap();
        }
        sheet.set_hidden(name == "Old");
        if name == "Lights" {
            sheet.set_active(true).set_first_tab(true);
        }
    }
    let mut chart = rust_xlsxwriter::Chart::new(rust_xlsxwriter::ChartType::Pie);
    chart.add_series().set_values("Lights!$A$1:$A$2");
    book.add_chartsheet().set_name("Chart").unwrap().insert_chart(0, 0, &chart).unwrap();
    book.save_to_buffer().unwrap()
}

#[test]
fn the_first_sheet_that_is_shown_is_read_unless_another_is_named() {
    let book = many_sheets();
    let (ran, _) = graded(&book, &[]);
    assert_eq!(cells(&ran.out)[1][0], "new");
    let notice =
        "sheet 'Lights' is read; left out: 'Old' (hidden), 'Notes', 'Blank'; --sheet NAME reads another\n";
    assert!(ran.err.starts_with(notice), "{}", ran.err);
    for (name, listing) in [("Notes", "note"), ("notes", "note"), ("Old", "old")] {
        let (ran, _) = graded(&book, &["--sheet", name]);
        assert_eq!(cells(&ran.out)[1][0], listing);
        assert!(!ran.err.contains("left out"), "{}", ran.err);
    }
}

#[test]
fn a_mistake_is_answered_with_what_is_accepted() {
    let sheets = "the worksheets are: 'Old', 'Lights', 'Notes', 'Blank'";
    let book = many_sheets();
    let no_header = of_text(&[&["Catalogue 2026"], &["listing", "claim_w"]]);
    for (bytes, flags, said) in [
        (&book, &["--sheet", "Lamps"][..], format!("x.xlsx: no sheet is called 'Lamps'; {sheets}")),
        (&book, &["--sheet", "Chart"], format!("x.xlsx: sheet 'Chart' is a chart or dialog; {sheets}")),
        (&book, &["--sheet", "Blank"], "x.xlsx is empty; accepted is a header row".to_owned()),
        (
            &book,
            &["--delimiter", ";"],
            "x.xlsx: --delimiter: found ';' for a workbook, which has none".to_owned(),
        ),
        (&no_header, &[], "x.xlsx: none of the headers is known: Catalogue 2026".to_owned()),
        (&demo().into_bytes(), &["--sheet", "A"], "--sheet: x.xlsx is text, which has no sheets".to_owned()),
    ] {
        let ran = over("x.xlsx", bytes, &[&["grade", "x.xlsx"], flags].concat());
        assert!(ran.err.starts_with(&format!("plainwatt: {said}")), "{}", ran.err);
        assert_eq!((ran.code, ran.out.len()), (Some(2), 0));
    }
}

#[test]
fn columns_can_be_named_for_a_sheet_without_a_header_and_a_header_may_stand_alone() {
    let book = of_text(&[&["A", "300"], &["B", "x", "more"]]);
    let (ran, rejects) = graded(&book, &["--header", "listing,claim_w"]);
    assert_eq!(cells(&ran.out)[1][..3], ["A", "", "300"]);
    assert_eq!(rejects[0][1], "Lights!B2");
    let (ran, _) = graded(&of_text(&[&["listing", "claim_w"]]), &[]);
    assert_eq!((cells(&ran.out).len(), ran.code), (1, Some(0)));
}
