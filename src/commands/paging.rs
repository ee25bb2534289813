//! What a page says of its own making: what was graded, and how to get every row.

use std::fmt::Write as _;
use std::fs::File;
use std::io::Read as _;
use std::path::{Path, PathBuf};

use anyhow::{Result, bail};

use super::input::is_dash;
use super::output::Sink;
use crate::cli::{Format, Grade};
use crate::report::csv;
use crate::report::html::About;

/// Refuses to write a page where nobody could read it.
pub(super) fn refuse_terminal(format: Format, out: &Sink) -> Result<()> {
    if format == Format::Html && out.is_terminal() {
        bail!(
            "--format html: found a terminal to write the page to; accepted: a file, such as -o report.html, or a pipe"
        );
    }
    Ok(())
}

/// The name of the input, the command that writes every row, and the file that it wrote, if it lies beside the page.
///
/// Files are named without their folders: a page that is published need not tell where on a disk it was made.
pub(super) fn about(grade: &Grade) -> About {
    let page = grade.output.as_deref().filter(|path| !is_dash(path));
    let input = &grade.catalogue.file;
    let rows = rows_beside(page, input);
    About {
        source: (!is_dash(input)).then(|| name(input)),
        command: Some(command(grade, &name(&rows))),
        beside: page.filter(|_| is_ours(&rows)).map(|_| address(&name(&rows))),
    }
}

/// The file of every row: of the page's name, but never of the input's, which the command would overwrite.
fn rows_beside(page: Option<&Path>, input: &Path) -> PathBuf {
    let page = page.unwrap_or(Path::new("report.html"));
    let rows = page.with_extension("csv");
    if name(&rows).to_lowercase() != name(input).to_lowercase() {
        return rows;
    }
    let stem = page.file_stem().map_or_else(String::new, |stem| stem.to_string_lossy().into_owned());
    page.with_file_name(format!("{stem}-graded.csv"))
}

fn name(path: &Path) -> String {
    path.file_name().map_or_else(String::new, |name| name.to_string_lossy().into_owned())
}

/// The same run with every row as CSV: whatever changes a result or how the input is read is repeated.
fn command(grade: &Grade, rows: &str) -> String {
    let (catalogue, strictness) = (&grade.catalogue, &grade.strictness);
    let mut words = vec!["plainwatt".to_owned(), "grade".to_owned()];
    words.push(if is_dash(&catalogue.file) { "-".to_owned() } else { name(&catalogue.file) });
    for column in &catalogue.columns {
        words.extend(["--column".to_owned(), column.clone()]);
    }
    let reference = strictness.reference.as_deref().map(name);
    let given = |text: &str, default: &str| (text != default).then(|| text.to_owned());
    for (flag, value) in [
        ("--header", catalogue.header.clone()),
        ("--sheet", catalogue.sheet.clone()),
        ("--delimiter", catalogue.delimiter.clone()),
        ("--tolerance", given(&strictness.tolerance, "10")),
        ("--confidence", given(&strictness.confidence, "95")),
        ("--meter", strictness.meter.clone()),
        ("--reference", reference),
    ] {
        words.extend(value.into_iter().flat_map(|value| [flag.to_owned(), value]));
    }
    for (flag, set) in [("--no-titles", catalogue.no_titles), ("--no-header", grade.no_header)] {
        words.extend(set.then(|| flag.to_owned()));
    }
    words.extend(["--format", "csv", "-o"].map(str::to_owned));
    words.push(rows.to_owned());
    words.iter().map(|word| quoted(word)).collect::<Vec<_>>().join(" ")
}

/// A word as a shell takes it for one.
fn quoted(word: &str) -> String {
    let plain = |c: char| c.is_ascii_alphanumeric() || "-_./=,:%+".contains(c);
    if !word.is_empty() && word.chars().all(plain) {
        word.to_owned()
    } else {
        format!("'{}'", word.replace('\'', "'\\''"))
    }
}

/// Whether the file begins as `--format csv` begins, so that no other CSV is linked to.
fn is_ours(path: &Path) -> bool {
    let header = csv::Format::default().header();
    let header = header.trim_end().as_bytes();
    let mut start = vec![0; header.len()];
    File::open(path).and_then(|mut file| file.read_exact(&mut start)).is_ok_and(|()| start == header)
}

/// The address of a file in the page's own folder.
fn address(name: &str) -> String {
    let mut address = String::from("./");
    for byte in name.bytes() {
        if byte.is_ascii_alphanumeric() || b"-._~".contains(&byte) {
            address.push(char::from(byte));
        } else {
            let _ = write!(address, "%{byte:02X}");
        }
    }
    address
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_survives_the_shell() {
        assert_eq!(quoted("lights.csv"), "lights.csv");
        assert_eq!(quoted("claim_w=Power (W)"), "'claim_w=Power (W)'");
        assert_eq!(quoted("it's"), "'it'\\''s'");
        assert_eq!(quoted(""), "''");
    }

    #[test]
    fn the_command_never_overwrites_its_input() {
        let rows =
            |page: Option<&str>, input: &str| name(&rows_beside(page.map(Path::new), Path::new(input)));
        assert_eq!(rows(Some("out/report.html"), "in/lights.csv"), "report.csv");
        assert_eq!(rows(None, "lights.csv"), "report.csv");
        assert_eq!(rows(None, "report.csv"), "report-graded.csv");
        // The command is run in some one folder, whichever the files were in.
        assert_eq!(rows(Some("out/Lights.html"), "in/lights.csv"), "Lights-graded.csv");
    }

    #[test]
    fn an_address_stays_in_the_folder() {
        assert_eq!(address("graded rows.csv"), "./graded%20rows.csv");
        assert_eq!(address("javascript:x"), "./javascript%3Ax");
    }
}
