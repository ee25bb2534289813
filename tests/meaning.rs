//! `meaning`: every word is explained, and each example really gives its word.

use std::process::{Command, Output};

use plainwatt::comparison::meaning::{Meaning, all, find};
use plainwatt::comparison::{Basis, Evidence, Verdict};
use plainwatt::report::UNREADABLE;

fn plainwatt(arguments: &[String]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_plainwatt"))
        .args(arguments)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .env_remove("NO_COLOR")
        .output()
        .expect("the built program runs")
}

/// The words of a command as a shell would part them: blanks part, double quotes hold together.
fn words(command: &str) -> Vec<String> {
    let mut words = Vec::new();
    let (mut word, mut quoted) = (String::new(), false);
    for c in command.chars() {
        match c {
            '"' => quoted = !quoted,
            ' ' if !quoted => words.push(std::mem::take(&mut word)),
            c => word.push(c),
        }
    }
    assert!(!quoted, "a quote is left open: {command}");
    words.push(word);
    words
}

/// How outputs show a word: a verdict, evidence or basis in the line of the verdict, a reason by its code, that of a claim
/// beside watts after its verdict.
fn shows(word: &str, output: &str) -> bool {
    let marks = if word == UNREADABLE {
        vec![format!("{word}: ")]
    } else if Verdict::ALL.iter().any(|v| v.word() == word) {
        vec![format!("verdict: {word} (")]
    } else if Evidence::ALL.iter().any(|e| e.word() == word) {
        vec![format!("(evidence {word},"), format!("(evidence {word})")]
    } else if Basis::ALL.iter().any(|b| b.word() == word) {
        vec![format!(", basis {word})")]
    } else {
        vec![
            format!("- {word}: "),
            format!(" ({word}):"),
            format!("\"code\": \"{word}\""),
            format!("\"code\":\"{word}\""),
        ]
    };
    marks.iter().any(|mark| output.contains(mark.as_str()))
}

fn run(meaning: &Meaning) -> (Output, String) {
    let words = words(meaning.example);
    assert_eq!(words[0], "plainwatt", "{}", meaning.example);
    let output = plainwatt(&words[1..]);
    let text = String::from_utf8(output.stdout.clone()).expect("output is UTF-8");
    (output, text)
}

#[test]
fn every_example_runs_and_gives_its_word() {
    for meaning in all() {
        let (output, text) = run(meaning);
        assert_eq!(
            output.status.code(),
            Some(0),
            "{}: {}",
            meaning.example,
            String::from_utf8_lossy(&output.stderr)
        );
        assert!(shows(meaning.word, &text), "{}: {}\n{text}", meaning.word, meaning.example);
    }
}

/// Those that are skipped are typed right, and are skipped no longer than they have to be.
#[test]
fn a_row_that_cannot_be_read_is_explained_by_the_word_that_reports_print() {
    assert!(find(UNREADABLE).is_some());
}

#[test]
fn without_a_word_all_are_listed() {
    let output = plainwatt(&words("meaning"));
    let text = String::from_utf8(output.stdout).expect("output is UTF-8");
    assert_eq!(output.status.code(), Some(0));
    for meaning in all() {
        let starts = format!("  {} ", meaning.word);
        assert_eq!(text.lines().filter(|line| line.starts_with(&starts)).count(), 1, "{}", meaning.word);
    }
}

#[test]
fn a_word_is_shown_under_its_headings() {
    let output = plainwatt(&words("meaning \"Own words\""));
    assert_eq!(output.status.code(), Some(0));
    assert_eq!(
        String::from_utf8(output.stdout).expect("output is UTF-8"),
        include_str!("meaning_own_words.txt")
    );
}

#[test]
fn an_unknown_word_is_refused_with_the_nearest_and_the_way_to_the_list() {
    let stderr = |typed: &str| {
        let output = plainwatt(&["meaning".to_owned(), typed.to_owned()]);
        assert_eq!((output.status.code(), output.stdout.as_slice()), (Some(2), &[][..]), "{typed}");
        String::from_utf8(output.stderr).expect("errors are UTF-8")
    };
    assert_eq!(
        stderr("overstatd"),
        "plainwatt: found 'overstatd', accepted: a verdict, basis, evidence or reason, such as overstated; did you mean \
         'overstated'?; 'plainwatt meaning' lists them all\n"
    );
    assert_eq!(
        stderr("\u{1b}[31mbanana"),
        "plainwatt: found '\\u{1b}[31mbanana', accepted: a verdict, basis, evidence or reason, such as overstated; \
         'plainwatt meaning' lists them all\n"
    );
}
