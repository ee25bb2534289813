//! Mistakes: exit code 2, no data, and a message that says what was found, where, and what is accepted.

use crate::program::{finish, fixture, program, run, run_with_input};

#[test]
fn watts_are_above_zero_and_are_numbers() {
    for wrong in ["-300", "0", "NaN", "inf", "1e400", "much"] {
        run(&["vet", "--claim", wrong]).refused(&format!(
            "plainwatt: --claim: found '{wrong}', accepted: watts above 0, such as 300 or 28.5W\n"
        ));
    }
}

#[test]
fn a_power_factor_is_at_most_one() {
    for wrong in ["120V 1A pf 1.2", "-5W", "0W", "NaN", "120V"] {
        run(&["vet", "--measured", wrong]).refused(&format!(
            "plainwatt: --measured: found '{wrong}', accepted: watts such as 135W, or \"120.4V 1.18A pf 0.97\" with a \
             power factor above 0 and at most 1\n"
        ));
    }
}

#[test]
fn a_range_has_its_lower_end_first() {
    run(&["vet", "--admits", "120-110W"]).refused(
        "plainwatt: --admits: found '120-110W', accepted: watts above 0, such as 185W, a range such as 110-120W with \
         the lower first, or 185W±5%\n",
    );
}

#[test]
fn a_class_that_is_none_is_marked_under_the_text() {
    run(&["vet", "--class", "quick"]).refused(
        "plainwatt: --class: found 'quick' at column 1, accepted: a class such as 3W, 0.5W, smd-3W, '2835 0.5W' or \
         cob-100W\n\n  quick\n  ^^^^^\n",
    );
}

#[test]
fn a_class_without_a_row_is_not_guessed_from_its_neighbours() {
    let ran = run(&["vet", "--claim", "300", "--class", "61W", "--tally", "100"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    assert!(ran.out.starts_with("verdict: unsettled (evidence none"), "{}", ran.out);
    assert!(ran.out.contains("- class-unknown: the class 61W has no row in the reference table"));
}

#[test]
fn a_light_has_at_most_a_million_diodes() {
    run(&["vet", "--tally", "1000000000000 red"]).refused(
        "plainwatt: --tally: found '1000000000000' at column 1, accepted: at most 1 000 000 diodes in one light\n\n  \
         1000000000000 red\n  ^^^^^^^^^^^^^\n",
    );
}

#[test]
fn a_misspelt_colour_is_marked_and_the_nearest_suggested() {
    run(&["vet", "--tally", "20 rde + 3 blue"]).refused(
        "plainwatt: --tally: found 'rde' at column 4, accepted: a colour such as deep-red or royal-blue, a wavelength \
         such as 660nm, a colour temperature such as 3000K; did you mean 'red'?\n\n  20 rde + 3 blue\n     ^^^\n",
    );
}

#[test]
fn strictness_has_its_ranges() {
    for wrong in ["-5", "100", "NaN"] {
        run(&["vet", "--tolerance", wrong]).refused(&format!(
            "plainwatt: --tolerance: found '{wrong}', accepted: a percentage from 0 to under 100, such as 10\n"
        ));
    }
    for wrong in ["50", "100", "-1"] {
        run(&["vet", "--confidence", wrong]).refused(&format!(
            "plainwatt: --confidence: found '{wrong}', accepted: a percentage above 50 and below 100, such as 95\n"
        ));
    }
    run(&["vet", "--meter", "0%"]).refused(
        "plainwatt: --meter: found '0%', accepted: a share and a fixed part, such as \"1% + 0.2W\", \"1%\" or \"0.5W\", \
         not both 0\n",
    );
}

#[test]
fn a_file_has_to_be_there_and_be_a_file() {
    let ran = run(&["grade", "missing.csv"]);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert!(ran.err.starts_with("plainwatt: cannot open missing.csv: "), "{}", ran.err);
    let here = fixture("");
    let here = here.to_str().unwrap();
    run(&["grade", here]).refused(&format!(
        "plainwatt: {here} is a directory; accepted is a CSV or .xlsx file, or - for standard input\n"
    ));
}

#[test]
fn an_empty_file_is_told_what_it_should_hold() {
    run_with_input(&["grade", "-"], b"").refused(
        "plainwatt: standard input is empty; accepted is a header row with fields such as listing, claim_w, class, \
         tally\n",
    );
}

#[test]
fn headers_that_are_all_unknown_stop_the_run() {
    run_with_input(&["grade", "-"], b"a,b\n1,2\n").refused(
        "plainwatt: standard input: none of the headers is known: a, b; accepted are listing, title, claim_w, class, \
         tally and others ('plainwatt help grade'), or map your own with --column claim_w=\"Power (W)\"\n",
    );
}

#[test]
fn a_mapping_names_a_field_and_a_header_that_exist() {
    run(&["grade", "lights.csv", "--column", "clam_w=claim_w"])
        .refused("plainwatt: --column: no field is called 'clam_w'; did you mean 'claim_w'?\n");
    run(&["grade", "headers.csv", "--column", "claim_w=Watts"]).refused(
        "plainwatt: --column: no column is headed 'Watts'; the headers are: Item, Claim W, clas, Diodes\n",
    );
    run(&["grade", "lights.csv", "--column", "claim_w"]).refused(
        "plainwatt: --column: found 'claim_w', accepted: FIELD=HEADER, such as claim_w=\"Power (W)\"\n",
    );
}

#[test]
fn an_unknown_option_or_command_is_two_and_suggests() {
    let ran = run(&["vet", "--clam", "300"]);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert!(ran.err.contains("--claim"), "{}", ran.err);
    let ran = run(&["vett"]);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert!(ran.err.contains("vet"), "{}", ran.err);
    let ran = run(&[]);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
}

#[test]
fn a_title_without_quotes_is_asked_to_be_put_in_quotes() {
    let ran = run(&["vet", "300", "W", "LED"]);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert!(ran.err.contains("put the title in quotes"), "{}", ran.err);
    let ran = run(&["vet", "--clam", "300"]);
    assert!(!ran.err.contains("quotes"), "{}", ran.err);
}

#[test]
fn a_decimal_comma_in_an_amount_is_named_and_a_bare_point_is_read() {
    run(&["vet", "--claim", "300", "--price", "64,99"]).refused(
        "plainwatt: --price: found '64,99', accepted: a price above 0 without a currency, such as 89.99, with a point and \
         not a comma before the decimals\n",
    );
    assert_eq!(run(&["vet", "--claim", "300", "--tariff", ".3"]).code, 0);
}

#[test]
fn an_output_never_takes_the_place_of_what_is_read() {
    let folder = tempfile::tempdir().unwrap();
    // Invented.
    let text = "listing,supplier,claim_w,verdict\nA,x,100,unsettled\n";
    for name in ["mine.csv", "old.csv", "table.csv"] {
        std::fs::write(folder.path().join(name), text).unwrap();
    }
    let mut links = vec!["mine.csv", "./mine.csv"];
    if cfg!(unix) {
        #[cfg(unix)]
        std::os::unix::fs::symlink("mine.csv", folder.path().join("link.csv")).unwrap();
        links.push("link.csv");
    }
    let refused = |arguments: &[&str], flag: &str, what: &str, path: &str| {
        finish(program().current_dir(folder.path()).args(arguments)).refused(&format!(
            "plainwatt: {flag}: found the file of {what}, {path}, which would be overwritten; accepted: another file\n"
        ));
        assert_eq!(std::fs::read_to_string(folder.path().join("mine.csv")).unwrap(), text);
    };
    for path in links {
        refused(&["grade", "mine.csv", "-o", path], "--output", "the input", path);
        refused(&["audit", "mine.csv", "--format", "csv", "-o", path], "--output", "the input", path);
        refused(&["grade", "mine.csv", "--rejects", path], "--rejects", "the input", path);
        refused(&["sweep", "mine.csv", "-o", path], "--output", "the readings", path);
    }
    refused(&["audit", "mine.csv", "--since", "old.csv", "-o", "old.csv"], "--output", "--since", "old.csv");
    refused(
        &["grade", "mine.csv", "--reference", "table.csv", "-o", "table.csv"],
        "--output",
        "--reference",
        "table.csv",
    );
}
