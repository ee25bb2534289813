//! Which stream carries what, colour, and pipes that close early.

use std::fmt::Write as _;
use std::io::{BufRead as _, BufReader, Read as _};
use std::process::Stdio;

use crate::program::{finish, program, run, same_as_file};

const ESCAPE: char = '\u{1b}';

/// The text without its colour.
fn plain(text: &str) -> String {
    let mut pieces = text.split(ESCAPE);
    let mut plain = pieces.next().unwrap_or("").to_owned();
    for piece in pieces {
        plain.push_str(piece.split_once('m').expect("a colour sequence ends in m").1);
    }
    plain
}

#[test]
fn help_and_version_are_asked_for_and_go_to_standard_output() {
    for arguments in [&["--help"][..], &["vet", "--help"], &["grade", "--help"], &["--version"]] {
        let ran = run(arguments);
        assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{arguments:?}");
        assert!(!ran.out.is_empty());
    }
    assert!(run(&["--help"]).out.contains("Exit codes: 0 ran;"));
}

#[test]
fn a_pipe_gets_no_colour() {
    for arguments in [&["grade", "lights.csv"][..], &["vet", "--claim", "300"]] {
        assert!(!run(arguments).out.contains(ESCAPE));
    }
}

#[test]
fn colour_always_paints_and_changes_nothing_else() {
    let ran = run(&["grade", "lights.csv", "--color", "always"]);
    assert!(ran.out.contains("\u{1b}[1;33moverstated\u{1b}[0m"), "{}", ran.out);
    same_as_file(&plain(&ran.out), "grade.txt");
    let light = ["vet", "--claim", "300", "--class", "3W", "--tally", "100"];
    let coloured = run(&[&light[..], &["--color", "always"]].concat()).out;
    assert!(coloured.contains(ESCAPE));
    assert_eq!(plain(&coloured), run(&light).out);
}

#[test]
fn no_color_and_never_keep_output_plain_and_always_outranks_no_color() {
    let with = |arguments: &[&str]| finish(program().args(arguments).env("NO_COLOR", "1")).out;
    assert!(!with(&["grade", "lights.csv"]).contains(ESCAPE));
    assert!(!with(&["grade", "lights.csv", "--color", "never"]).contains(ESCAPE));
    assert!(with(&["grade", "lights.csv", "--color", "always"]).contains(ESCAPE));
}

#[test]
fn text_of_a_listing_cannot_act_on_a_terminal() {
    let table = run(&["grade", "lights.csv"]);
    assert!(table.out.contains("\\u{1b"), "{}", table.out);
}

#[test]
fn a_reader_that_stops_early_is_a_normal_end() {
    let mut input = "listing,claim_w,class,tally\n".to_owned();
    for row in 0..20_000 {
        let _ = writeln!(input, "light {row},300,3W,60 deep-red + 40 white");
    }
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("many.csv");
    std::fs::write(&path, input).unwrap();
    let mut child = program()
        .args(["grade", path.to_str().unwrap(), "--format", "csv"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut line = String::new();
    let mut out = BufReader::with_capacity(64, child.stdout.take().unwrap());
    out.read_line(&mut line).unwrap();
    drop(out);
    let mut err = String::new();
    child.stderr.take().unwrap().read_to_string(&mut err).unwrap();
    assert!(line.starts_with("listing,supplier,"), "{line}");
    assert_eq!((child.wait().unwrap().code(), err.as_str()), (Some(0), ""));
}
