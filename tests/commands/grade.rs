//! `grade`: many lights, in every form.

use std::fs;

use serde_json::Value;

use crate::program::{expected, fixture, program, run, run_with_input, same_as_file};

const SUMMARY: &str = "20 listings: 1 borne-out, 1 within-reach, 1 understated, 3 unsettled, 4 overstated, \
                       1 out-of-reach, 9 unreadable\n";

#[test]
fn the_table_fits_eighty_columns_in_a_pipe() {
    let ran = run(&["grade", "lights.csv"]);
    ran.printed("grade.txt", SUMMARY);
    for line in ran.out.lines() {
        assert!(line.chars().count() <= 80, "{line}");
    }
}

#[test]
fn csv_is_lean_unless_it_is_asked_to_be_wide() {
    run(&["grade", "lights.csv", "--format", "csv"]).printed("grade.csv", SUMMARY);
    run(&["grade", "lights.csv", "--format", "csv", "--wide"]).printed("grade_wide.csv", SUMMARY);
}

#[test]
fn markdown_is_a_table_for_a_page() {
    run(&["grade", "lights.csv", "--format", "markdown"]).printed("grade.md", SUMMARY);
}

/// Full precision is compared to nine digits: the last bits of a logarithm are the platform's own.
#[track_caller]
fn same_numbers_as_file(text: &str, file: &str) {
    fn same(a: &Value, b: &Value) -> bool {
        match (a, b) {
            (Value::Number(a), Value::Number(b)) => {
                let (a, b) = (a.as_f64().unwrap(), b.as_f64().unwrap());
                (a - b).abs() <= 1e-9 * a.abs().max(b.abs())
            }
            (Value::Array(a), Value::Array(b)) => {
                a.len() == b.len() && a.iter().zip(b).all(|(a, b)| same(a, b))
            }
            (Value::Object(a), Value::Object(b)) => {
                a.keys().eq(b.keys()) && a.values().zip(b.values()).all(|(a, b)| same(a, b))
            }
            (a, b) => a == b,
        }
    }
    let rows =
        |text: &str| text.lines().map(|line| serde_json::from_str(line).unwrap()).collect::<Vec<Value>>();
    let (printed, expected) = (rows(text), rows(&expected(text, file)));
    assert_eq!(printed.len(), expected.len());
    for (printed, expected) in printed.iter().zip(&expected) {
        assert!(
            same(printed, expected),
            "not as in {file}\n--- expected\n{expected}\n--- printed\n{printed}"
        );
    }
}

#[test]
fn json_is_one_object_a_line_with_the_same_fields_in_every_row() {
    let ran = run(&["grade", "lights.csv", "--format", "json"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, SUMMARY));
    same_numbers_as_file(&ran.out, "grade.jsonl");
    let rows: Vec<Value> = ran.out.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    let fields = |row: &Value| row.as_object().unwrap().keys().cloned().collect::<Vec<_>>();
    for row in &rows {
        assert_eq!(fields(row), fields(&rows[0]));
        assert_eq!(row["verdict"] == "unreadable", !row["fault"].is_null(), "{row}");
    }
    assert_eq!(rows[9]["fault"]["line"], 11);
    assert_eq!(rows[9]["fault"]["column"], "claim_w");
    assert_eq!(rows[9]["fault"]["found"], "-300");
    assert_eq!(rows[9]["fault"]["accepted"], "watts above 0, such as 300 or 28.5");
}

#[test]
fn as_many_rows_come_out_as_went_in_and_in_the_same_order() {
    let input = fs::read_to_string(fixture("lights.csv")).unwrap();
    let names = |text: &str| -> Vec<String> {
        csv::ReaderBuilder::new()
            .flexible(true)
            .from_reader(text.as_bytes())
            .records()
            .map(|record| record.unwrap()[0].to_owned())
            .collect()
    };
    for threads in ["1", "4"] {
        let ran = run(&["grade", "lights.csv", "--format", "csv", "--raw", "--threads", threads]);
        assert_eq!(names(&ran.out), names(&input));
    }
}

#[test]
fn sorting_by_share_puts_the_worst_first_and_the_unreadable_last() {
    run(&["grade", "lights.csv", "--sort", "share"]).printed("grade_by_share.txt", SUMMARY);
    let ran = run(&["grade", "lights.csv", "--sort", "share", "--format", "json"]);
    let rows: Vec<Value> = ran.out.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    assert_eq!(rows.len(), 20);
    let shares: Vec<f64> = rows.iter().map_while(|row| row["share"].as_f64()).collect();
    assert_eq!(shares.len(), 9);
    assert!(shares.is_sorted(), "{shares:?}");
    assert!(rows[..11].iter().all(|row| row["verdict"] != "unreadable"));
    assert!(rows[11..].iter().all(|row| row["verdict"] == "unreadable"));
}

#[test]
fn standard_input_gives_what_the_file_gives() {
    let input = fs::read(fixture("lights.csv")).unwrap();
    let ran = run_with_input(&["grade", "-", "--format", "csv"], &input);
    ran.printed("grade.csv", SUMMARY);
}

#[test]
fn near_headers_are_suggested_on_standard_error_and_not_used() {
    let ran = run(&["grade", "headers.csv", "--column", "listing=Item", "--format", "csv"]);
    assert_eq!(ran.code, 0);
    assert_eq!(
        ran.err,
        "column 'Claim W' is not used; if it is claim_w, say --column claim_w=\"Claim W\"\n\
         column 'clas' is not used; if it is class, say --column class=\"clas\"\n\
         2 listings: 2 unsettled\n"
    );
    assert!(ran.out.contains("C1,,,unsettled,none,"), "{}", ran.out);
}

#[test]
fn other_peoples_headers_are_mapped() {
    let ran = run(&[
        "grade",
        "headers.csv",
        "--format",
        "csv",
        "--column",
        "listing=Item",
        "--column",
        "claim_w=Claim W",
        "--column",
        "class=clas",
        "--column",
        "tally=Diodes",
    ]);
    ran.printed("grade_mapped.csv", "2 listings: 1 within-reach, 1 overstated\n");
}

#[test]
fn rejects_keep_the_row_its_place_and_the_reason() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("rejects.csv");
    let ran = run(&["grade", "lights.csv", "--format", "csv", "--rejects", path.to_str().unwrap()]);
    ran.printed("grade.csv", SUMMARY);
    same_as_file(&fs::read_to_string(&path).unwrap(), "rejects.csv");
}

#[test]
fn rejects_are_guarded_against_formulas_unless_asked_not_to_be() {
    let input = b"claim_w,listing\n=1+1,x\n";
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("rejects.csv");
    let rejects = |more: &[&str]| {
        let arguments = [&["grade", "-", "--rejects", path.to_str().unwrap()], more].concat();
        assert_eq!(run_with_input(&arguments, input).code, 0);
        let text = fs::read_to_string(&path).unwrap();
        text.lines().nth(1).unwrap().to_owned()
    };
    let accepted = "\"watts above 0, such as 300 or 28.5\"";
    assert_eq!(rejects(&[]), format!("2,16,claim_w,'=1+1,{accepted},\"'=1+1,x\""));
    assert_eq!(rejects(&["--raw"]), format!("2,16,claim_w,=1+1,{accepted},\"=1+1,x\""));
}

#[test]
fn the_spreadsheet_guard_is_one_apostrophe_and_can_be_switched_off() {
    let input = "listing,supplier,claim_w\n=1,+2,9\n-3,@4,9\n'5,plain,9\n";
    let names = |more: &[&str]| {
        let arguments = [&["grade", "-", "--format", "csv"], more].concat();
        let ran = run_with_input(&arguments, input.as_bytes());
        let rows = ran.out.lines().skip(1).map(|row| row.split(',').take(2).collect::<Vec<_>>().join(","));
        rows.collect::<Vec<_>>()
    };
    assert_eq!(names(&[]), ["'=1,'+2", "'-3,'@4", "''5,plain"]);
    assert_eq!(names(&["--raw"]), ["=1,+2", "-3,@4", "'5,plain"]);
}

#[test]
fn an_output_file_gets_the_data_and_standard_output_nothing() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("out.csv");
    let ran = run(&["grade", "lights.csv", "--format", "csv", "--output", path.to_str().unwrap()]);
    assert_eq!((ran.code, ran.out.as_str(), ran.err.as_str()), (0, "", SUMMARY));
    same_as_file(&fs::read_to_string(&path).unwrap(), "grade.csv");
}

#[test]
fn a_header_alone_is_a_table_without_rows() {
    let header = b"listing,claim_w\n";
    let csv = run_with_input(&["grade", "-", "--format", "csv"], header);
    assert_eq!((csv.code, csv.out.lines().count(), csv.err.as_str()), (0, 1, "0 listings\n"));
    let json = run_with_input(&["grade", "-", "--format", "json"], header);
    assert_eq!((json.code, json.out.as_str(), json.err.as_str()), (0, "", "0 listings\n"));
}

#[test]
fn input_without_a_header_is_named_by_hand() {
    let with =
        run_with_input(&["grade", "-", "--format", "csv"], b"listing,claim_w,class,tally\nx,300,3W,100\n");
    let arguments = ["grade", "-", "--format", "csv", "--header", "listing,claim_w,class,tally"];
    let without = run_with_input(&arguments, b"x,300,3W,100\n");
    assert_eq!((without.code, &without.out), (0, &with.out));
    let bare = run_with_input(&[&arguments[..], &["--no-header"]].concat(), b"x,300,3W,100\n");
    assert_eq!(bare.out, with.out.lines().nth(1).unwrap().to_owned() + "\n");
}

#[test]
fn the_demo_has_every_verdict() {
    let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/demo-data/listings.csv");
    let output = program().args(["grade", demo, "--format", "csv"]).output().unwrap();
    let text = String::from_utf8(output.stdout).unwrap();
    let verdicts: Vec<String> = csv::Reader::from_reader(text.as_bytes())
        .records()
        .map(|record| record.unwrap()[3].to_owned())
        .collect();
    assert_eq!(verdicts.len(), 41);
    for verdict in plainwatt::comparison::Verdict::ALL {
        assert!(verdicts.iter().any(|v| v == verdict.word()), "{}", verdict.word());
    }
    assert_eq!(verdicts.iter().filter(|v| *v == "unreadable").count(), 1);
}
