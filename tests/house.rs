//! The house rule, kept by a test: inner rooms know nothing of outer ones, and neither print, read files nor exit.
//!
//! Reads the source of every room, finds the rooms that it names (`crate::`, `plainwatt::` or enough `super::` to reach the
//! top), and compares them with what the room may see. A room that this table does not know fails too: whoever builds one
//! says here what it may see.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// Each room and the rooms it may see: those below it, never those above or beside it.
const ROOMS: [(&str, &[&str]); 19] = [
    ("units", &[]),
    ("uncertain", &["units"]),
    ("facts", &["uncertain", "units"]),
    ("reference", &["facts", "uncertain", "units"]),
    ("counting", &["reference", "facts", "uncertain", "units"]),
    ("draw", &["reference", "facts", "uncertain", "units"]),
    ("sweep", &["draw", "reference", "facts", "uncertain", "units"]),
    ("cost", &["units"]),
    ("circuit", &["units"]),
    ("photons", &["draw", "reference", "facts", "uncertain", "units"]),
    ("comparison", &["circuit", "photons", "draw", "reference", "facts", "uncertain", "units"]),
    ("audit", &["comparison", "circuit", "photons", "draw", "reference", "facts", "uncertain", "units"]),
    ("reading", &["counting", "reference", "facts", "uncertain", "units"]),
    ("intake", &["counting", "reference", "facts", "uncertain", "units"]),
    // Rows in, rows out: it knows nothing of lights.
    ("stream", &[]),
    // Sheets to rows of text: it knows nothing of lights either.
    ("workbook", &[]),
    (
        "report",
        &[
            "audit",
            "circuit",
            "comparison",
            "cost",
            "photons",
            "sweep",
            "draw",
            "reference",
            "facts",
            "uncertain",
            "units",
        ],
    ),
    (
        "cli",
        &["circuit", "comparison", "photons", "draw", "counting", "reference", "facts", "uncertain", "units"],
    ),
    (
        "commands",
        &[
            "cli",
            "intake",
            "stream",
            "workbook",
            "report",
            "reading",
            "sweep",
            "circuit",
            "audit",
            "comparison",
            "cost",
            "photons",
            "draw",
            "counting",
            "reference",
            "facts",
            "uncertain",
            "units",
        ],
    ),
];

/// Rooms that only compute.
const SILENT: [&str; 14] = [
    "units",
    "uncertain",
    "facts",
    "reference",
    "counting",
    "draw",
    "photons",
    "circuit",
    "cost",
    "sweep",
    "comparison",
    "audit",
    "reading",
    "workbook",
];

/// What such rooms never mention.
const FORBIDDEN: [&str; 18] = [
    "clap",
    "anyhow",
    "std::fs",
    "std::env",
    "std::io::stdin",
    "std::io::stdout",
    "std::io::stderr",
    "std::process",
    "std::net",
    "use std::{fs",
    "use std::{env",
    "print!",
    "println!",
    "eprint!",
    "eprintln!",
    "dbg!",
    "process::exit",
    "comfy_table",
];

fn is_word(c: char) -> bool {
    c.is_alphanumeric() || c == '_'
}

/// The source without comments and without what stands inside string literals. Each line begins as code: a literal over
/// several lines is then read as code from its second line on, which errs on the strict side.
fn code(source: &str) -> String {
    let mut out = String::new();
    for line in source.lines() {
        let mut chars = line.chars().peekable();
        let mut in_string = false;
        while let Some(c) = chars.next() {
            match c {
                '/' if !in_string && chars.peek() == Some(&'/') => break,
                '\\' if in_string => {
                    chars.next();
                }
                // A quote as a character literal opens no string.
                '\'' if !in_string && chars.peek() == Some(&'"') => {
                    chars.next();
                }
                '"' => in_string = !in_string,
                _ if in_string => {}
                c => out.push(c),
            }
        }
        out.push('\n');
    }
    out
}

/// Every place where `path` begins a path in `code`, as the text that follows it.
fn after<'a>(code: &'a str, path: &str) -> Vec<&'a str> {
    let starts =
        code.match_indices(path).filter(|(at, _)| !code[..*at].ends_with(|c| is_word(c) || c == ':'));
    starts.map(|(at, _)| &code[at + path.len()..]).collect()
}

/// The first segments of what follows `crate::`: one name, or those of a braced list.
fn first_segments(rest: &str) -> Vec<String> {
    let name = |text: &str| text.trim_start().chars().take_while(|c| is_word(*c)).collect::<String>();
    let Some(list) = rest.trim_start().strip_prefix('{') else { return vec![name(rest)] };
    let (mut depth, mut start, mut names) = (0, 0, Vec::new());
    for (at, c) in list.char_indices() {
        match c {
            '{' => depth += 1,
            '}' if depth == 0 => {
                names.push(name(&list[start..at]));
                break;
            }
            '}' => depth -= 1,
            ',' if depth == 0 => {
                names.push(name(&list[start..at]));
                start = at + 1;
            }
            _ => {}
        }
    }
    names.retain(|n| !n.is_empty());
    names
}

/// The rooms that code names; `depth` is how many `super::` lead from its module to the top of the crate.
fn rooms_named(code: &str, depth: usize) -> BTreeSet<String> {
    let up = "super::".repeat(depth);
    let tops = ["crate::".to_owned(), "plainwatt::".to_owned(), up];
    let rest = tops.iter().filter(|top| !top.is_empty()).flat_map(|top| after(code, top));
    rest.flat_map(first_segments).filter(|name| ROOMS.iter().any(|(room, _)| room == name)).collect()
}

/// What is wrong with a file of `room`, if anything.
fn violations(room: &str, source: &str, depth: usize) -> Vec<String> {
    let Some((_, may_see)) = ROOMS.iter().find(|(name, _)| *name == room) else {
        return vec![format!("'{room}' has no place in the house: add it to ROOMS with what it may see")];
    };
    let code = code(source);
    let mut found: Vec<String> = rooms_named(&code, depth)
        .into_iter()
        .filter(|seen| seen != room && !may_see.contains(&seen.as_str()))
        .map(|seen| format!("{room} sees {seen}"))
        .collect();
    if SILENT.contains(&room) {
        let words = FORBIDDEN.iter().filter(|word| !after(&code, word).is_empty());
        found.extend(words.map(|word| format!("{room} mentions {word}")));
    }
    found
}

/// Every file of the crate's rooms: its room, how deep its module lies, its path.
fn files() -> Vec<(String, usize, PathBuf)> {
    fn walk(folder: &Path, room: Option<&str>, depth: usize, files: &mut Vec<(String, usize, PathBuf)>) {
        for entry in fs::read_dir(folder).expect("a folder of the source") {
            let path = entry.expect("an entry").path();
            let stem = path.file_stem().and_then(|s| s.to_str()).expect("a plain name").to_owned();
            let room_here = room.unwrap_or(&stem).to_owned();
            if path.is_dir() {
                walk(&path, Some(&room_here), depth + 1, files);
            } else if path.extension().is_some_and(|e| e == "rs") && !["lib", "main"].contains(&&*room_here) {
                // mod.rs is the folder's own module; another file is one module further down.
                files.push((room_here, depth + usize::from(stem != "mod"), path));
            }
        }
    }
    let mut files = Vec::new();
    walk(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"), None, 0, &mut files);
    files
}

#[test]
fn no_inner_room_sees_an_outer_one() {
    let files = files();
    assert!(
        files.iter().filter(|(room, ..)| SILENT.contains(&room.as_str())).count() > 20,
        "the rooms were found"
    );
    let mut found = Vec::new();
    for (room, depth, path) in files {
        let source = fs::read_to_string(&path).expect("readable source");
        found.extend(
            violations(&room, &source, depth).into_iter().map(|v| format!("{}: {v}", path.display())),
        );
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn the_direction_has_no_way_back() {
    for (room, may_see) in ROOMS {
        for seen in may_see {
            let (_, back) = ROOMS.iter().find(|(name, _)| name == seen).expect("a room of the house");
            assert!(!back.contains(&room), "{room} and {seen} see one another");
            assert!(
                back.iter().all(|further| may_see.contains(further)),
                "{room} sees {seen} but not all below it"
            );
        }
    }
}

/// Made-up lines: this test would catch what it is there to catch.
#[test]
fn a_violation_is_caught_wherever_it_stands() {
    let bad = [
        ("facts", "use crate::draw::Model;"),
        ("facts", "use crate::{units::Watts, comparison::Verdict};"),
        ("facts", "use crate::{\n    units::{Watts, Volts},\n    reference::Table,\n};"),
        ("draw", "let verdict = crate::comparison::Verdict::Unsettled;"),
        ("draw", "use super::super::comparison::assess;"),
        ("reference", "pub(crate) use crate::draw;"),
        ("comparison", "use crate::report::json;"),
        ("comparison", "fn f() { println!(\"{}\", 1); }"),
        ("comparison", "use anyhow::Result;"),
        ("counting", "let text = std::fs::read_to_string(path)?;"),
        ("counting", "use std::{fs, path::Path};"),
        ("reading", "use crate::intake::Headers;"),
        ("intake", "use crate::stream::Row;"),
        ("stream", "use crate::facts::Listing;"),
        ("report", "use plainwatt::commands::vet;"),
        ("units", "#[derive(clap::ValueEnum)]"),
        ("draw", "let home = std::env::var(\"HOME\");"),
        ("attic", "use crate::units::Watts;"),
    ];
    for (room, line) in bad {
        assert!(!violations(room, line, 2).is_empty(), "{room} may not have: {line}");
    }
    let good = [
        ("draw", "use crate::reference::{ClassId, Table};"),
        ("draw", "use super::package::PackageDraw;"),
        ("draw", "// as crate::comparison does, and as println! would"),
        ("draw", "/// See [`crate::comparison::assess`]."),
        ("comparison", "format!(\"crate::report and println! in a text\")"),
        ("comparison", "use crate::draw::Draw; use crate::comparison::Verdict;"),
        ("facts", "use super::draw::Local;"),
        ("commands", "use crate::{cli, report}; use anyhow::Context; println!();"),
        ("units", "let imprint = reprint!(x);"),
    ];
    for (room, line) in good {
        assert_eq!(violations(room, line, 2), Vec::<String>::new(), "{room} may have: {line}");
    }
}
