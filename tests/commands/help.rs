//! `--help` of every command: one screen, and an example that works where the project lies.

use std::ffi::OsString;
use std::fs;
use std::path::Path;
use std::process::Command;

use unicode_width::UnicodeWidthStr as _;

use super::program::{finish, program, run};

/// A terminal of the old size, with a line left for the next prompt.
const COLUMNS: usize = 80;
const LINES: usize = 23;

/// The commands that the program's own help lists.
pub fn commands() -> Vec<String> {
    let help = run(&["--help"]).out;
    // They stand in a block of their own, each after two spaces.
    let names: Vec<String> = help
        .lines()
        .skip_while(|line| !line.starts_with("  "))
        .take_while(|line| line.starts_with("  "))
        .filter_map(|line| line.split_whitespace().next())
        .map(str::to_owned)
        .collect();
    assert!(names.len() >= 8, "{help}");
    names.into_iter().filter(|name| name != "help").collect()
}

fn help(arguments: &[&str]) -> String {
    let ran = finish(program().args(arguments).env("COLUMNS", COLUMNS.to_string()));
    assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{arguments:?}");
    ran.out
}

#[test]
fn every_help_fits_one_screen() {
    for name in commands().iter().map(String::as_str).chain([""]) {
        let arguments = [name, "--help"].into_iter().filter(|a| !a.is_empty()).collect::<Vec<_>>();
        let text = help(&arguments);
        assert!(text.lines().count() <= LINES, "{name}: {} lines\n{text}", text.lines().count());
        for line in text.lines() {
            assert!(line.width() <= COLUMNS, "{name}: {} columns\n{line}", line.width());
        }
        let short =
            help(&arguments.iter().map(|a| if *a == "--help" { "-h" } else { a }).collect::<Vec<_>>());
        assert_eq!(text, short, "{name}: -h and --help differ");
    }
}

#[test]
fn every_option_a_screen_names_is_in_the_long_help() {
    for name in commands() {
        let (short, long) = (help(&[&name, "--help"]), help(&["help", &name]));
        let flags = |text: &str| -> Vec<String> {
            let words = text.split(|c: char| !(c.is_ascii_alphanumeric() || c == '-'));
            words.filter(|w| w.starts_with("--") && w.len() > 2).map(str::to_owned).collect()
        };
        let all = flags(&long);
        for flag in flags(&short) {
            assert!(all.contains(&flag), "{name}: {flag} is not in 'plainwatt help {name}'");
        }
    }
}

/// A directory as the reader of a help page has it: the project's, where a run may leave files.
fn copy_of_the_project() -> tempfile::TempDir {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let copy = tempfile::tempdir().expect("a directory");
    for part in ["demo-data", "fixtures/sweeps"] {
        let to = copy.path().join(part);
        fs::create_dir_all(&to).expect("made");
        for entry in fs::read_dir(root.join(part)).expect("there").map(|entry| entry.expect("read")) {
            fs::copy(entry.path(), to.join(entry.file_name())).expect("copied");
        }
    }
    copy
}

#[test]
fn every_example_works_on_the_demo_data() {
    let copy = copy_of_the_project();
    let built = Path::new(env!("CARGO_BIN_EXE_plainwatt")).parent().expect("a directory");
    let path = std::env::var_os("PATH").unwrap_or_default();
    let path = std::env::join_paths([built.to_owned()].into_iter().chain(std::env::split_paths(&path)));
    let path: OsString = path.expect("a path");
    for name in commands().iter().map(String::as_str).chain([""]) {
        let text = help(&[name, "--help"].into_iter().filter(|a| !a.is_empty()).collect::<Vec<_>>());
        let example = text.lines().skip_while(|line| *line != "Example:").nth(1).map(str::trim);
        let example = example.unwrap_or_else(|| panic!("{name} has no example\n{text}"));
        assert!(example.contains(&format!("plainwatt {name}")), "{name}: {example}");
        let mut shell = Command::new("bash");
        shell.args(["-c", example]).current_dir(copy.path()).env("PATH", &path);
        // Where there is no bash, nobody types its examples.
        let Ok(ran) = shell.output() else { return };
        // The gate of the audit is there to be missed: the demo data has lights that are overstated.
        let expected = i32::from(name == "audit");
        assert_eq!(ran.status.code(), Some(expected), "{example}: {}", String::from_utf8_lossy(&ran.stderr));
    }
}
