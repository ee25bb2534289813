//! `audit`: a catalogue by supplier, the pages to correct, and the gate.

use serde_json::Value;

use crate::program::{run, run_with_input};

const DEMO: &str = "../../demo-data/listings.csv";
const SUMMARY: &str = "unreadable L41: line 42, tally: found 20 rde + 10 royal-blue; accepted: in place of 'rde' at column 4, \
                       a colour such as deep-red or royal-blue, a wavelength such as 660nm, a colour temperature such \
                       as 3000K; did you mean 'red'?\n41 listings: 7 borne-out, 5 within-reach, 2 understated, 8 unsettled, 15 overstated, \
                       3 out-of-reach, 1 unreadable\n";

#[test]
fn the_table_counts_by_supplier_and_lists_the_pages() {
    let ran = run(&["audit", DEMO]);
    ran.printed("audit.txt", SUMMARY);
    for line in ran.out.lines() {
        assert!(line.chars().count() <= 80, "{line}");
    }
}

#[test]
fn csv_has_every_page_to_correct() {
    let ran = run(&["audit", DEMO, "--format", "csv"]);
    ran.printed("audit.csv", SUMMARY);
    assert_eq!(ran.out.lines().count(), 1 + 15 + 3);
}

#[test]
fn json_has_the_pages_and_then_the_groups() {
    let ran = run(&["audit", DEMO, "--format", "json"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, SUMMARY));
    let objects: Vec<Value> = ran.out.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    let of_kind = |kind: &str| objects.iter().filter(|o| o["kind"] == kind).cloned().collect::<Vec<_>>();
    assert_eq!(of_kind("page").len(), 18);
    let lights: u64 = of_kind("group").iter().map(|g| g["lights"].as_u64().unwrap()).sum();
    assert_eq!(lights, 41);
    let tilth = of_kind("group").into_iter().find(|g| g["group"] == "Tilth Lamps").unwrap();
    assert_eq!((&tilth["verdicts"]["overstated"], &tilth["worst"]), (&1.into(), &"L22".into()));
    // Five shares: 0.751, 1.001, 1.127, 1.153 and 1.413.
    assert!((tilth["median_share"].as_f64().unwrap() - 1.1268).abs() < 1e-4, "{tilth}");
}

#[test]
fn the_gate_ends_with_one_and_says_how_many() {
    for (verdict, n) in [("out-of-reach", 3), ("overstated", 18), ("unsettled", 26), ("borne-out", 40)] {
        let ran = run(&["audit", DEMO, "--stop-at", verdict]);
        let gate = format!("gate not met: {n} of 41 listings are {verdict} or worse\n");
        assert_eq!((ran.code, ran.err), (1, format!("{SUMMARY}{gate}")));
        assert!(!ran.out.is_empty());
    }
}

#[test]
fn the_gate_is_met_where_nothing_is_so_bad() {
    // Invented: one light that is borne out, and a row that cannot be read, which is apart.
    let rows = "listing,claim_w,measured_w,supplier\nA,100,99,x\nB,100,many,x\n";
    let ran = run_with_input(&["audit", "-", "--stop-at", "overstated"], rows.as_bytes());
    let told = "unreadable B: line 3, measured_w: found many; accepted: watts above 0, such as 300 or 28.5\n\
                2 listings: 1 borne-out, 1 unreadable\n";
    assert_eq!((ran.code, ran.err.as_str()), (0, told));
    assert!(ran.out.ends_with("no page to correct\n"), "{}", ran.out);
}

#[test]
fn a_gate_over_nothing_that_could_be_graded_is_an_error() {
    for (rows, found) in [
        ("", "standard input has no rows"),
        ("A,many,x\n", "the only row is unreadable"),
        ("A,many,x\nB,some,x\n", "all 2 rows are unreadable"),
    ] {
        // Invented.
        let input = format!("listing,claim_w,supplier\n{rows}");
        let ran = run_with_input(&["audit", "-", "--stop-at", "overstated"], input.as_bytes());
        let last = format!(
            "plainwatt: nothing could be graded: {found}; accepted by --stop-at: at least one row that can be read\n"
        );
        assert!(ran.code == 2 && ran.out.is_empty() && ran.err.ends_with(&last), "{}", ran.err);
        let ran = run_with_input(&["audit", "-"], input.as_bytes());
        assert!(ran.code == 0, "{}", ran.err);
        assert!(ran.err.ends_with(&format!("nothing could be graded: {found}\n")), "{}", ran.err);
    }
}

#[test]
fn rows_that_cannot_be_read_are_named_with_their_reason() {
    // Invented: twelve such rows, and one that can be read.
    let wrong: Vec<_> = (1..=12).map(|n| format!("B{n},-{n},x\n")).collect();
    let rows = format!("listing,claim_w,supplier\nA,100,x\n{}", wrong.concat());
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("rejects.csv");
    for threads in ["1", "3"] {
        let asked =
            ["audit", "-", "--format", "json", "--threads", threads, "--rejects", path.to_str().unwrap()];
        let ran = run_with_input(&asked, rows.as_bytes());
        assert_eq!(ran.code, 0);
        let told: Vec<_> = ran.err.lines().collect();
        assert_eq!(told.len(), 10 + 2, "{}", ran.err);
        assert_eq!(
            told[9],
            "unreadable B10: line 12, claim_w: found -10; accepted: watts above 0, such as 300 or 28.5"
        );
        assert_eq!(told[10], "2 more are unreadable; --rejects FILE writes them all");
        let objects = ran.out.lines().map(|line| serde_json::from_str::<Value>(line).unwrap());
        let unreadable: Vec<_> = objects.filter(|o| o["kind"] == "unreadable").collect();
        assert_eq!(unreadable.len(), 12);
        assert_eq!(
            (&unreadable[11]["listing"], &unreadable[11]["fault"]["line"]),
            (&"B12".into(), &14.into())
        );
        let rejects = std::fs::read_to_string(&path).unwrap();
        assert_eq!(rejects.lines().count(), 1 + 12);
        assert!(
            rejects.ends_with("\n14,125,claim_w,'-12,\"watts above 0, such as 300 or 28.5\",\"B12,-12,x\"\n"),
            "{rejects}"
        );
    }
}

#[test]
fn any_column_can_be_counted_by() {
    // Invented rows, with names that a spreadsheet would run.
    let rows = "listing,claim_w,measured_w,brand\n=1+1,100,50,-Sorrel\nB,100,99,-Sorrel\nC,100,50,\n";
    let ran = run_with_input(&["audit", "-", "--by", "brand", "--format", "csv"], rows.as_bytes());
    assert_eq!(
        ran.out,
        "listing,brand,claim_w,honest_label,verdict,evidence,reasons,why\n\
         '=1+1,'-Sorrel,100,draws 50 W at the wall (measured),overstated,measured,full-brightness,\
         \"Overstated: a meter read 50 W, not 100 W.\"\n\
         C,,100,draws 50 W at the wall (measured),overstated,measured,full-brightness,\
         \"Overstated: a meter read 50 W, not 100 W.\"\n"
    );
    let raw = run_with_input(&["audit", "-", "--by", "brand", "--format", "csv", "--raw"], rows.as_bytes());
    assert!(raw.out.contains("\n=1+1,-Sorrel,100,"), "{}", raw.out);
    let table = run_with_input(&["audit", "-", "--by", "brand"], rows.as_bytes());
    assert!(table.out.contains("\n (not stated) "), "{}", table.out);
    run_with_input(&["audit", "-", "--by", "maker"], rows.as_bytes()).refused(
        "plainwatt: --by: no column holds 'maker'; the headers are: listing, claim_w, measured_w, brand; say --by with \
         one of them\n",
    );
}

#[test]
fn the_order_of_the_rows_changes_nothing_of_the_table() {
    let text = std::fs::read_to_string(crate::program::fixture(DEMO)).unwrap();
    let (header, rows) = text.split_once('\n').unwrap();
    let mut lines: Vec<&str> = rows.lines().collect();
    lines.reverse();
    let turned = format!("{header}\n{}\n", lines.join("\n"));
    assert_eq!(run_with_input(&["audit", "-"], turned.as_bytes()).out, run(&["audit", DEMO]).out);
}

/// Invented: A stays wrong, B is new and wrong, C was corrected, D cannot be read now, E is gone, F has become wrong, H still
/// claims what it did without what convicted it, I claims less without it.
const OLD: &str = "listing,supplier,claim_w,verdict\nA,x,100,overstated\nC,x,100,out-of-reach\nD,x,100,overstated\n\
                   '=E,x,100,overstated\nF,x,50,borne-out\nG,x,50,borne-out\n\
                   H,x,100,overstated\nI,x,100,overstated\n";
const NEW: &str = "listing,supplier,claim_w,measured_w\nA,x,100,50\nB,x,100,50\nC,x,50,50\nD,x,100,many\nF,x,100,50\nH,x,100,\n\
                   I,x,90,\n";

#[test]
fn what_changed_since_an_earlier_run_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let old = folder.path().join("old.csv");
    std::fs::write(&old, OLD).unwrap();
    let old = old.to_str().unwrap();
    let counts = "since the earlier run: 2 newly too high; of those too high then 2 corrected, 1 no longer decided, \
                  1 unreadable now, 1 gone\n";
    for threads in ["1", "3"] {
        let ran = run_with_input(&["audit", "-", "--since", old, "--threads", threads], NEW.as_bytes());
        let told = "\nsince the earlier run\nnewly too high 2: B (x), F (x)\nof those too high then\ncorrected 2: C (x), \
                    I (x)\nno longer decided 1: H (x)\nunreadable now 1: D (x)\ngone 1: =E (x)\n";
        assert!(ran.out.ends_with(told), "{}", ran.out);
        assert!(ran.code == 0 && ran.err.ends_with(counts), "{}", ran.err);
    }
    let json = run_with_input(&["audit", "-", "--since", old, "--format", "json"], NEW.as_bytes()).out;
    let objects: Vec<Value> = json.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    let newly: Vec<_> = objects.iter().filter(|o| o["newly"] == true).map(|o| o["listing"].clone()).collect();
    assert_eq!(newly, ["B", "F"]);
    assert!(objects.iter().any(|o| o["kind"] == "gone" && o["listing"] == "=E"), "{json}");
    assert!(objects.iter().any(|o| o["kind"] == "no-longer-decided" && o["listing"] == "H"), "{json}");
    assert!(objects.iter().any(|o| o["kind"] == "unreadable-now" && o["listing"] == "D"), "{json}");
}

#[test]
fn an_earlier_run_that_is_none_is_refused() {
    let ran = run(&["audit", DEMO, "--since", DEMO]);
    ran.refused(&format!(
        "plainwatt: --since: {DEMO} has no column 'verdict'; accepted: what 'plainwatt grade --format csv' wrote, also if a \
         spreadsheet has saved it as CSV since\n"
    ));
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("old.xlsx");
    // The first bytes of a package are all that tells.
    std::fs::write(&book, b"PK\x03\x04\xff\xff\xff\xff").unwrap();
    let book = book.to_str().unwrap();
    run(&["audit", DEMO, "--since", book]).refused(&format!(
        "plainwatt: --since: found a workbook, {book}; accepted: what 'plainwatt grade --format csv' wrote, also if a \
         spreadsheet has saved it as CSV since\n"
    ));
}

#[test]
fn an_earlier_run_that_a_spreadsheet_saved_is_read_all_the_same() {
    let folder = tempfile::tempdir().unwrap();
    let old = folder.path().join("old.csv");
    std::fs::write(&old, format!("\u{feff}{}", OLD.replace(',', ";").replace('\n', "\r\n"))).unwrap();
    let ran = run_with_input(&["audit", "-", "--since", old.to_str().unwrap()], NEW.as_bytes());
    assert!(ran.err.contains("since the earlier run: 2 newly too high"), "{}", ran.err);
    assert!(ran.out.contains("\ncorrected 2: C (x), I (x)\n"), "{}", ran.out);
}

#[test]
fn what_grade_wrote_of_the_same_catalogue_shows_no_change() {
    let folder = tempfile::tempdir().unwrap();
    let old = folder.path().join("old.csv");
    std::fs::write(&old, run(&["grade", DEMO, "--format", "csv"]).out).unwrap();
    let ran = run(&["audit", DEMO, "--since", old.to_str().unwrap(), "--format", "csv"]);
    assert!(
        ran.err.ends_with(
            "since the earlier run: 0 newly too high; of those too high then 0 corrected, 0 no longer decided, 0 \
             unreadable now, 0 gone\n"
        ),
        "{}",
        ran.err
    );
}
