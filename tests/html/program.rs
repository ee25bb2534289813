//! Runs the program and parses its pages.

use std::collections::HashMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::process::Command;

use scraper::{ElementRef, Html, Selector};

pub const DEMO: &str = "demo-data/listings.csv";

/// Runs the program in the project's folder; standard output, if it ended well.
#[track_caller]
pub fn run(arguments: &[&str]) -> String {
    let output = program().args(arguments).output().unwrap();
    assert!(output.status.success(), "{arguments:?}: {}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).unwrap()
}

pub fn program() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_plainwatt"));
    command.current_dir(env!("CARGO_MANIFEST_DIR"));
    command
}

/// A file of that content, for as long as the folder is held.
pub fn file(name: &str, content: &str) -> (tempfile::TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join(name);
    std::fs::write(&path, content).unwrap();
    (folder, path)
}

/// So many listings, those of the demo again and again, each with a name of its own.
pub fn many(rows: usize) -> String {
    let demo = std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(DEMO)).unwrap();
    let mut lines = demo.lines();
    let mut text = format!("{}\n", lines.next().unwrap());
    for (place, line) in lines.cycle().take(rows).enumerate() {
        let _ = writeln!(text, "N{place}{}", line.trim_start_matches('L'));
    }
    text
}

/// The page of a catalogue.
#[track_caller]
pub fn page(path: &str, more: &[&str]) -> Html {
    Html::parse_document(&run(&[&["grade", path, "--format", "html"], more].concat()))
}

/// Rows of `--format csv --wide`, by column name.
#[track_caller]
pub fn rows(path: &str, more: &[&str]) -> Vec<HashMap<String, String>> {
    let text = run(&[&["grade", path, "--format", "csv", "--wide"], more].concat());
    csv::Reader::from_reader(text.as_bytes()).deserialize().map(Result::unwrap).collect()
}

pub fn all<'a>(page: &'a Html, selector: &str) -> Vec<ElementRef<'a>> {
    page.select(&Selector::parse(selector).unwrap()).collect()
}

pub fn within<'a>(element: &ElementRef<'a>, selector: &str) -> Vec<ElementRef<'a>> {
    element.select(&Selector::parse(selector).unwrap()).collect()
}

/// The text of an element, its blanks made single.
pub fn text(element: &ElementRef<'_>) -> String {
    element.text().collect::<Vec<_>>().join(" ").split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Every number in a text, in its order.
pub fn numbers(text: &str) -> Vec<f64> {
    text.split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
        .flat_map(|piece| {
            // In a path a minus begins a number.
            let mut parts: Vec<String> = Vec::new();
            for c in piece.chars() {
                if c == '-' || parts.is_empty() {
                    parts.push(String::new());
                }
                parts.last_mut().unwrap().push(c);
            }
            parts
        })
        .filter_map(|number| number.parse().ok())
        .collect()
}
