//! Runs the built program.

use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// How a run ended.
pub struct Ran {
    pub code: i32,
    pub out: String,
    pub err: String,
}

/// The program, ready to be given more.
pub fn program() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_plainwatt"));
    command.current_dir(fixture("")).env_remove("NO_COLOR").stdin(Stdio::null());
    command
}

/// A path under `fixtures/commands`.
pub fn fixture(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures/commands").join(name)
}

/// Runs the program in `fixtures/commands`.
pub fn run(arguments: &[&str]) -> Ran {
    finish(program().args(arguments))
}

/// Runs it with that on its standard input.
pub fn run_with_input(arguments: &[&str], input: &[u8]) -> Ran {
    let mut child = program()
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("it starts");
    let mut stdin = child.stdin.take().expect("a pipe");
    // A program that has seen enough may close its end.
    let _ = stdin.write_all(input);
    drop(stdin);
    ran(child.wait_with_output().expect("it ends"))
}

pub fn finish(command: &mut Command) -> Ran {
    ran(command.output().expect("it runs"))
}

fn ran(output: std::process::Output) -> Ran {
    Ran {
        code: output.status.code().expect("no signal ended it"),
        out: String::from_utf8(output.stdout).expect("UTF-8 on standard output"),
        err: String::from_utf8(output.stderr).expect("UTF-8 on standard error"),
    }
}

impl Ran {
    /// It ran, said `err` on standard error and printed what is in the file.
    #[track_caller]
    pub fn printed(&self, file: &str, err: &str) {
        same_as_file(&self.out, file);
        assert_eq!((self.code, self.err.as_str()), (0, err));
    }

    /// It refused with exactly that message, and printed no data.
    #[track_caller]
    pub fn refused(&self, err: &str) {
        assert_eq!((self.code, self.out.as_str(), self.err.as_str()), (2, "", err));
    }
}

/// What an expected file holds; `PLAINWATT_EXPECTED=write` writes `text` there first, to be read before it is committed.
#[track_caller]
pub fn expected(text: &str, file: &str) -> String {
    let path = fixture(file);
    if std::env::var_os("PLAINWATT_EXPECTED").is_some_and(|v| v == "write") {
        fs::write(&path, text).expect("the expected file can be written");
    }
    fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// Compares with an expected file, byte for byte.
#[track_caller]
pub fn same_as_file(text: &str, file: &str) {
    let expected = expected(text, file);
    assert!(text == expected, "not as in {file}\n--- expected\n{expected}\n--- printed\n{text}");
}
