//! What is generated from the definition of the command line: completions and the manual.

use std::process::Command;

use super::help::commands;
use super::program::run;

#[test]
fn every_shell_completes_every_command() {
    for shell in ["bash", "zsh", "fish"] {
        let ran = run(&["completions", shell]);
        assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{shell}");
        for name in commands() {
            assert!(ran.out.contains(&name), "{shell} does not complete {name}");
        }
        assert!(ran.out.contains("rejects"), "{shell} does not complete an option of grade");
    }
}

#[test]
fn bash_can_read_its_script() {
    let script = run(&["completions", "bash"]).out;
    // Where there is no bash, nobody reads the script.
    let Ok(checked) = Command::new("bash").args(["-n", "-c", &script]).output() else { return };
    assert!(checked.status.success(), "{}", String::from_utf8_lossy(&checked.stderr));
}

#[test]
fn another_shell_is_refused() {
    let ran = run(&["completions", "cmd"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("bash, zsh, fish"), "{}", ran.err);
}

#[test]
fn the_manual_has_a_section_for_every_command() {
    let ran = run(&["manual"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    assert!(ran.out.lines().any(|line| line.starts_with(".TH plainwatt 1")), "{}", ran.out);
    for name in commands() {
        let heading = format!(".SH \"PLAINWATT {}\"", name.to_uppercase());
        assert!(ran.out.lines().any(|line| line == heading), "{heading} is not in the manual");
    }
    assert!(ran.out.contains("Exit codes:"), "{}", ran.out);
}
