//! Every command that the documents show is run, and where its output is shown it is compared exactly.
//!
//! In a `console` block a line that begins with `$ ` is a command and what follows it is what it prints: standard output
//! first, then standard error. In an `sh` block every line is a command. `cargo run --release --` stands for the program;
//! other uses of cargo are what runs this test, and are only checked to be known.
#![cfg(unix)]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// A command, and what the document says that it prints, if it says so.
#[derive(Debug, PartialEq, Eq)]
struct Shown {
    command: String,
    output: Option<String>,
}

fn at_home(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(name)
}

fn commands(document: &str) -> Vec<Shown> {
    let mut shown = Vec::new();
    let mut block = None;
    for line in document.lines() {
        match (block, line.strip_prefix("```")) {
            (None, Some(kind)) => block = Some(kind),
            (Some(_), Some(_)) => block = None,
            (Some("sh"), None) => shown.push(Shown { command: line.to_owned(), output: None }),
            (Some("console"), None) => match (line.strip_prefix("$ "), shown.last_mut()) {
                (Some(command), _) => {
                    shown.push(Shown { command: command.to_owned(), output: Some(String::new()) });
                }
                (None, Some(Shown { output: Some(output), .. })) => {
                    output.push_str(line);
                    output.push('\n');
                }
                (None, _) => panic!("output without a command: {line}"),
            },
            _ => {}
        }
    }
    shown
}

/// What a command prints, or nothing for what is not the program's.
fn printed(command: &str) -> Option<String> {
    let command = command.replace("cargo run --release --", "plainwatt");
    if !command.starts_with("plainwatt ") {
        assert!(["cargo test"].contains(&command.as_str()), "not known how to try this: {command}");
        return None;
    }
    let program = Path::new(env!("CARGO_BIN_EXE_plainwatt"));
    let path = std::env::var_os("PATH").unwrap_or_default();
    let places = [program.parent().unwrap().to_path_buf()].into_iter().chain(std::env::split_paths(&path));
    let output = Command::new("sh")
        .args(["-c", &command])
        .env("PATH", std::env::join_paths(places).unwrap())
        .current_dir(at_home(""))
        .stdin(Stdio::null())
        .output()
        .unwrap();
    let text = String::from_utf8(output.stdout).unwrap() + &String::from_utf8(output.stderr).unwrap();
    assert!(output.status.success(), "{command}: {}\n{text}", output.status);
    Some(text)
}

fn write_anew(name: &str, document: &str) -> String {
    let mut anew = String::new();
    let mut output = false;
    for line in document.lines() {
        if line.starts_with("```") {
            output = false;
        }
        if !output {
            anew.push_str(line);
            anew.push('\n');
        }
        if let Some(command) = line.strip_prefix("$ ") {
            anew.push_str(&printed(command).expect("a command of the program"));
            output = true;
        }
    }
    fs::write(at_home(name), &anew).unwrap();
    anew
}

#[track_caller]
fn holds(name: &str, least: usize) {
    // Some examples write there; with another target directory it may not be there yet.
    fs::create_dir_all(at_home("target")).unwrap();
    let mut document = fs::read_to_string(at_home(name)).unwrap();
    if std::env::var_os("PLAINWATT_EXPECTED").is_some_and(|v| v == "write") {
        document = write_anew(name, &document);
    }
    let shown = commands(&document);
    assert!(shown.len() >= least, "{name} shows only {shown:?}");
    for Shown { command, output } in shown {
        let printed = printed(&command);
        if let Some(expected) = output {
            let printed = printed.expect("output is shown only for the program");
            assert!(
                printed == expected,
                "{name}: {command}\n--- the document\n{expected}\n--- the program\n{printed}"
            );
        }
    }
}

#[test]
fn the_readme_shows_what_the_program_prints() {
    holds("README.md", 6);
}

#[test]
fn the_demo_commands_run() {
    holds("demo-data/README.md", 4);
}

#[test]
fn commands_and_their_output_are_found_in_a_document() {
    let document = "text\n```sh\nplainwatt a\n```\n    $ not this\n```console\n$ plainwatt b\nx\ny\n$ plainwatt c\n```\n";
    let shown = |command: &str, output: Option<&str>| Shown {
        command: command.to_owned(),
        output: output.map(str::to_owned),
    };
    assert_eq!(
        commands(document),
        [shown("plainwatt a", None), shown("plainwatt b", Some("x\ny\n")), shown("plainwatt c", Some(""))]
    );
}
