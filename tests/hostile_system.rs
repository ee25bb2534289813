//! What the system may do to a run: files that vanish or grow, full disks, closed pipes, and a terminal that obeys.
#![cfg(unix)]
#![allow(clippy::print_stderr, reason = "a test that is skipped says so")]

mod grade_help;

use grade_help::{body, catalogue, cells, command, directory, fixtures, grade, lines, run};
use std::fs::{self, OpenOptions};
use std::io::{Read as _, Write as _};
use std::os::unix::fs::symlink;
use std::path::Path;
use std::process::Command;

const ROWS: usize = 20_000;

/// Starts on a file, waits until some rows have come while the pipe holds the rest back, does something to the file, and
/// takes the rest.
fn disturbed(disturb: impl FnOnce(&Path)) -> (Option<i32>, Vec<Vec<String>>, String) {
    let place = directory();
    let file = place.path().join("catalogue.csv");
    fs::write(&file, catalogue(ROWS)).unwrap();
    let mut child =
        command().arg(&file).args(["--format", "csv", "--no-titles", "--threads", "1"]).spawn().unwrap();
    let mut out = child.stdout.take().unwrap();
    let mut text = lines(&mut out, 2);
    disturb(&file);
    out.read_to_string(&mut text).unwrap();
    drop(out);
    let done = child.wait_with_output().unwrap();
    (done.status.code(), cells(text.as_bytes()), String::from_utf8(done.stderr).unwrap())
}

#[test]
fn a_file_that_vanishes_while_it_is_read_is_read_to_its_end() {
    let (code, rows, _) = disturbed(|file| fs::remove_file(file).unwrap());
    assert_eq!((code, rows.len()), (Some(0), ROWS + 1));
}

#[test]
fn a_file_that_grows_while_it_is_read_is_read_to_its_new_end() {
    let (code, rows, _) = disturbed(|file| {
        let mut file = OpenOptions::new().append(true).open(file).unwrap();
        file.write_all(body(ROWS, ROWS + 500).as_bytes()).unwrap();
    });
    assert_eq!((code, rows.len()), (Some(0), ROWS + 501));
    assert_eq!(rows[ROWS + 500][0], format!("L{}", ROWS + 499));
}

#[test]
fn a_file_that_is_cut_while_it_is_read_is_named() {
    let (code, rows, said) = disturbed(|file| {
        OpenOptions::new().write(true).open(file).unwrap().set_len(100).unwrap();
    });
    assert_eq!(code, Some(2), "{said}");
    assert!(rows.len() < ROWS);
    assert!(said.contains("catalogue.csv became shorter while it was read"), "{said}");
}

#[test]
fn a_full_disk_is_said_with_what_could_not_be_written() {
    if !Path::new("/dev/full").exists() {
        return;
    }
    let place = directory();
    // A link, so that a broken guard could not harm the device.
    let full = place.path().join("full");
    symlink("/dev/full", &full).unwrap();
    let full = full.to_str().unwrap();
    let input = catalogue(1000);
    let none_left = "No space left on device (os error 28)\n";
    let rows = grade(&["-", "--format", "csv", "-o", full], input.as_bytes());
    assert_eq!((rows.code, rows.text()), (Some(2), ""));
    assert_eq!(rows.err, format!("plainwatt: the output could not be written: {full}: {none_left}"));
    let rejects = grade(&["-", "--format", "csv", "--rejects", full], input.as_bytes());
    assert_eq!(rejects.code, Some(2));
    assert_eq!(rejects.err, format!("plainwatt: the rejects could not be written: {full}: {none_left}"));
    for form in ["csv", "json", "markdown", "table"] {
        let mut standard = command();
        standard.args(["-", "--format", form]).stdout(OpenOptions::new().write(true).open(full).unwrap());
        let input = input.clone();
        let ran = run(&mut standard, move |pipe| drop(pipe.write_all(input.as_bytes())));
        assert_eq!(ran.code, Some(2), "{form}");
        assert_eq!(ran.err, format!("plainwatt: the output could not be written: {none_left}"), "{form}");
    }
}

#[test]
fn a_full_disk_leaves_the_rows_of_the_run_before() {
    if !Path::new("/dev/full").exists() {
        return;
    }
    let place = directory();
    let output = place.path().join("out.csv");
    fs::write(&output, "old").unwrap();
    let rejects = ["--format", "csv", "--rejects", "/dev/full", "-o", output.to_str().unwrap()];
    let ran = grade(&[&["-"], &rejects[..]].concat(), catalogue(1000).as_bytes());
    assert_eq!(ran.code, Some(2));
    assert_eq!(fs::read_to_string(&output).unwrap(), "old");
    assert_eq!(fs::read_dir(place.path()).unwrap().count(), 1);
}

#[test]
fn a_pipe_that_is_closed_early_is_a_normal_end() {
    for threads in ["1", "3"] {
        for form in ["csv", "json", "markdown"] {
            let place = directory();
            let file = place.path().join("catalogue.csv");
            fs::write(&file, catalogue(ROWS)).unwrap();
            let mut child =
                command().arg(&file).args(["--format", form, "--threads", threads]).spawn().unwrap();
            let mut out = child.stdout.take().unwrap();
            lines(&mut out, 3);
            drop(out);
            let done = child.wait_with_output().unwrap();
            assert_eq!((done.status.code(), done.stderr), (Some(0), vec![]), "{form}");
        }
    }
}

/// Runs `grade` on a pseudo-terminal, if there is a command to make one; gives what the terminal would have got.
fn on_a_terminal(arguments: &str) -> Option<Vec<u8>> {
    let place = directory();
    let program = env!("CARGO_BIN_EXE_plainwatt");
    let done = Command::new("script")
        .args(["-qec", &format!("'{program}' grade {arguments}"), "/dev/null"])
        .current_dir(place.path())
        .env("TERM", "xterm")
        .stdin(std::process::Stdio::null())
        .output();
    match done {
        Ok(done) if done.status.success() => Some(done.stdout),
        other => {
            eprintln!("skipped: no pseudo-terminal from the command 'script': {other:?}");
            None
        }
    }
}

/// Bytes that a terminal would act on; line ends and what colours a word of our own are none of them.
fn acts(shown: &[u8]) -> Vec<String> {
    let text = String::from_utf8_lossy(shown).replace("\r\n", "\n");
    let mut found = Vec::new();
    let mut rest = text.as_str();
    while let Some(at) = rest.find(|c: char| c != '\n' && (c.is_control() || "\u{202e}\u{feff}".contains(c)))
    {
        let code = &rest[at..];
        let end = code.find('m').filter(|end| {
            code.starts_with("\u{1b}[") && code[2..*end].chars().all(|c| c.is_ascii_digit() || c == ';')
        });
        match end {
            // The file asks for red text; the program never colours a whole cell of the input.
            Some(end) if !code[end..].starts_with("mred") => rest = &code[end + 1..],
            _ => {
                found.push(code.chars().take(8).collect());
                rest = &code[code.chars().next().map_or(0, char::len_utf8)..];
            }
        }
    }
    found
}

#[test]
fn no_escape_of_a_listing_reaches_a_terminal() {
    let file = fixtures().join("escapes").join("input.csv");
    let file = file.to_str().unwrap();
    let everywhere = [
        format!("'{file}' --color always"),
        format!("'{file}' --format csv"),
        format!("'{file}' --format csv --wide --raw"),
        format!("'{file}' --format csv --sort share"),
        format!("'{file}' --format json"),
        format!("'{file}' --format markdown"),
        format!("'{file}' --format csv -o /dev/tty"),
        format!("'{file}' --format csv -o x.csv --rejects -"),
        format!("'{file}' --format csv -o x.csv --rejects /dev/tty"),
    ];
    for arguments in everywhere {
        let Some(shown) = on_a_terminal(&arguments) else { return };
        // A progress bar is ours; it is drawn for the runs whose rows go elsewhere.
        let text = String::from_utf8_lossy(&shown).replace("\u{1b}[2K", "");
        let text = text.replace("\r\n", "\n").replace('\r', "\n");
        assert_eq!(acts(text.as_bytes()), [""; 0], "{arguments}\n{text}");
        assert!(text.contains("\\u{1b}") || text.contains("\\u001b"), "{arguments}\n{text}");
    }
}

#[test]
fn no_escape_of_a_header_or_a_flag_reaches_standard_error() {
    let headers = [
        "\u{1b}[31mx,y\n1,2\n",
        "listing,\u{1b}[2Jclass\u{1b}[31m\nA,3W\n",
        "claim_w,\"\u{9b}31mclaim_w\"\n1,2\n",
    ];
    for input in headers {
        let ran = grade(&["-", "--format", "csv"], input.as_bytes());
        assert_eq!(acts(ran.err.as_bytes()), [""; 0], "{}", ran.err);
    }
    for flags in [["--tolerance", "\u{1b}[2J"], ["--column", "\u{1b}[2J=x"], ["--meter", "\u{1b}[2J"]] {
        let ran = grade(&[&["-"], &flags[..]].concat(), b"listing\nA\n");
        assert_eq!(ran.code, Some(2));
        assert_eq!(acts(ran.err.as_bytes()), [""; 0], "{}", ran.err);
        assert!(ran.err.contains("\\u{1b}[2J"), "{}", ran.err);
    }
}
