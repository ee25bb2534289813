//! Runs the built program as a person or a pipeline would, for tests to look at.
#![allow(dead_code, reason = "each test file uses its own part of it")]

use std::fmt::Write as _;
use std::io::{Read, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::thread;

/// What a run left behind.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ran {
    /// The exit code; `None` if a signal ended it.
    pub code: Option<i32>,
    pub out: Vec<u8>,
    pub err: String,
}

impl Ran {
    pub fn text(&self) -> &str {
        std::str::from_utf8(&self.out).expect("output is UTF-8")
    }
}

/// `plainwatt grade`, with nothing on standard input.
pub fn command() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_plainwatt"));
    command.arg("grade").stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped());
    command
}

/// Runs `grade` with these arguments and this standard input.
pub fn grade(arguments: &[&str], input: &[u8]) -> Ran {
    let input = input.to_vec();
    run(command().args(arguments), move |pipe| {
        // A run that refuses its arguments closes the pipe.
        let _ = pipe.write_all(&input);
    })
}

/// Runs a command, its standard input written by `feed` on a thread of its own.
pub fn run(command: &mut Command, feed: impl FnOnce(&mut dyn Write) + Send + 'static) -> Ran {
    let mut child = command.stdin(Stdio::piped()).spawn().expect("it starts");
    let mut pipe = child.stdin.take().expect("a pipe");
    let feeding = thread::spawn(move || feed(&mut pipe));
    let done = child.wait_with_output().expect("it ends");
    feeding.join().expect("it is fed");
    Ran {
        code: done.status.code(),
        out: done.stdout,
        err: String::from_utf8(done.stderr).expect("messages are UTF-8"),
    }
}

/// The cells of CSV, its header first; every row as wide as the header.
pub fn cells(csv: &[u8]) -> Vec<Vec<String>> {
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(csv);
    let rows =
        reader.records().map(|row| row.expect("rows of one width").iter().map(str::to_owned).collect());
    rows.collect()
}

/// Invented listings with a header, `rows` of them, every tenth unreadable.
pub fn catalogue(rows: usize) -> String {
    format!("{HEADER}\n{}", body(0, rows))
}

pub const HEADER: &str = "listing,supplier,title,claim_w,class,deep_red,white";

/// Invented listings without a header.
pub fn body(from: usize, to: usize) -> String {
    let mut text = String::new();
    for row in from..to {
        let title = match row % 7 {
            0 => "24\" x 12\" board".to_owned(),
            1 => format!("\"{row} W, for \"\"bloom\"\"\""),
            2 => "a; b; c; d; e; f; g; h; i".to_owned(),
            3 => "Pflanzenlampe für Zimmerpflanzen".to_owned(),
            _ => format!("{}W LED Grow Light ({}x3W)", row * 3 % 1000 + 3, row % 300 + 1),
        };
        let claim = if row % 10 == 9 { "a lot".to_owned() } else { (row % 900 + 30).to_string() };
        let _ = writeln!(text, "L{row},=s{},{title},{claim},3W,{},{}", row % 40, row % 59, row % 53);
    }
    text
}

/// A path in a directory of its own for this test, which is gone when the value is.
pub fn directory() -> tempfile::TempDir {
    tempfile::tempdir().expect("a directory")
}

pub fn fixtures() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures").join("hostile")
}

/// Reads until so many line ends have come.
pub fn lines(from: &mut impl Read, count: usize) -> String {
    let (mut text, mut byte, mut seen) = (Vec::new(), [0], 0);
    while seen < count && from.read(&mut byte).expect("it can be read") > 0 {
        text.push(byte[0]);
        seen += usize::from(byte == [b'\n']);
    }
    String::from_utf8(text).expect("output is UTF-8")
}
