//! Killed at any moment, a run leaves the old output or the whole new one; interrupted, it says how far it came.
#![cfg(unix)]

mod grade_help;

use grade_help::{body, catalogue, command, directory, lines};
use std::fs;
use std::io::{Read as _, Write as _};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::thread;
use std::time::{Duration, Instant};

const ROWS: usize = 2000;

/// Moments that look random and are the same on every run: a linear congruential generator (Numerical Recipes' constants,
/// from memory), as a share of 1.
struct Moments(u32);

impl Moments {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        f64::from(self.0) / f64::from(u32::MAX)
    }
}

fn graded(input: &Path, output: &Path, rejects: &Path) -> Command {
    let mut grade = command();
    grade
        .arg(input)
        .args(["--format", "csv", "--threads", "2", "-o"])
        .arg(output)
        .arg("--rejects")
        .arg(rejects);
    grade
}

#[test]
fn a_kill_at_any_of_fifty_moments_leaves_the_old_output_or_the_whole_new_one() {
    let place = directory();
    let at = |name: &str| place.path().join(name);
    let (input, output, rejects) = (at("in.csv"), at("out.csv"), at("rejects.csv"));
    fs::write(&input, catalogue(ROWS)).unwrap();

    // The fastest of three: on a busy machine a slow one would put the kills after the end.
    let runs = (0..3).map(|_| {
        let begun = Instant::now();
        assert!(graded(&input, &output, &rejects).output().unwrap().status.success());
        begun.elapsed()
    });
    let takes = runs.min().unwrap();
    let (new, new_rejects) = (fs::read(&output).unwrap(), fs::read(&rejects).unwrap());
    assert_eq!(String::from_utf8_lossy(&new).lines().count(), ROWS + 1);

    let (mut killed, mut unfinished, mut moments) = (0, 0, Moments(5));
    for _ in 0..50 {
        fs::write(&output, "old\n").unwrap();
        fs::write(&rejects, "old rejects\n").unwrap();
        let mut child = graded(&input, &output, &rejects).spawn().unwrap();
        thread::sleep(takes.mul_f64(moments.next() * 1.1));
        child.kill().unwrap();
        let ended = child.wait().unwrap();
        killed += u32::from(ended.code().is_none());

        let left = fs::read(&output).unwrap();
        unfinished += u32::from(left == b"old\n");
        assert!(left == b"old\n" || left == new, "{} bytes, neither old nor new", left.len());
        let left = fs::read(&rejects).unwrap();
        assert!(left == b"old rejects\n" || left == new_rejects, "{} bytes of rejects", left.len());
        if ended.success() {
            assert!(fs::read(&output).unwrap() == new);
        }
    }
    // Else the moments were wrong, and this shows nothing.
    assert!(killed >= 10 && unfinished >= 5, "{killed} killed, {unfinished} before the end");

    // What the kills left behind is in nobody's way.
    assert!(graded(&input, &output, &rejects).status().unwrap().success());
    assert!(fs::read(&output).unwrap() == new);
}

fn interrupt(child: &Child) {
    let sent = Command::new("kill").args(["-INT", &child.id().to_string()]).status().unwrap();
    assert!(sent.success());
}

/// Waits for the end, but not for ever: a run that ignores an interrupt would hang the test.
fn end_of(mut child: Child) -> (Option<i32>, String) {
    let begun = Instant::now();
    while child.try_wait().unwrap().is_none() {
        if begun.elapsed() > Duration::from_secs(30) {
            child.kill().unwrap();
            panic!("it did not stop when it was interrupted");
        }
        thread::sleep(Duration::from_millis(5));
    }
    let mut said = String::new();
    child.stderr.take().unwrap().read_to_string(&mut said).unwrap();
    (child.wait().unwrap().code(), said)
}

/// How many listings an interrupted run says it did; the rest of the message must be this.
fn listings(said: &str, rest: &str) -> usize {
    let said = said.strip_prefix("plainwatt: stopped after ").unwrap_or_else(|| panic!("{said}"));
    let (count, said) = said.split_once(' ').unwrap();
    assert_eq!(said, format!("listings{rest}\n"));
    count.parse().unwrap()
}

#[test]
fn an_interrupt_leaves_the_old_output_says_how_far_it_came_and_ends_with_two() {
    for threads in ["1", "2"] {
        let place = directory();
        let output = place.path().join("out.csv");
        fs::write(&output, "old").unwrap();
        let mut child = command()
            .args(["-", "--format", "csv", "--threads", threads, "-o"])
            .arg(&output)
            .stdin(Stdio::piped())
            .spawn()
            .unwrap();
        // The pipe stays open, so that the run cannot end by itself.
        let mut input = child.stdin.take().unwrap();
        input.write_all(catalogue(100).as_bytes()).unwrap();
        input.flush().unwrap();
        let begun = Instant::now();
        while fs::read_dir(place.path()).unwrap().count() < 2 && begun.elapsed() < Duration::from_secs(30) {
            thread::sleep(Duration::from_millis(5));
        }
        // The file beside it is there; the handler is set right after that.
        thread::sleep(Duration::from_millis(300));
        interrupt(&child);
        let (code, said) = end_of(child);
        assert_eq!(code, Some(2), "{said}");
        assert_eq!(listings(&said, &format!("; {} is unchanged", output.display())), 100);
        assert_eq!(fs::read_to_string(&output).unwrap(), "old");
        assert_eq!(fs::read_dir(place.path()).unwrap().count(), 1, "nothing is left beside it");
        drop(input);
    }
}

#[test]
fn an_interrupt_on_the_way_to_a_pipe_leaves_whole_rows() {
    let mut child =
        command().args(["-", "--format", "csv", "--threads", "2"]).stdin(Stdio::piped()).spawn().unwrap();
    let (mut input, mut out) = (child.stdin.take().unwrap(), child.stdout.take().unwrap());
    input.write_all(catalogue(0).as_bytes()).unwrap();
    input.write_all(body(0, 50).as_bytes()).unwrap();
    input.flush().unwrap();
    let mut rows = lines(&mut out, 51);
    interrupt(&child);
    let (code, said) = end_of(child);
    out.read_to_string(&mut rows).unwrap();
    assert_eq!((code, rows.ends_with('\n')), (Some(2), true));
    assert_eq!(listings(&said, ""), rows.lines().count() - 1);
    drop(input);
}

#[test]
fn an_interrupt_ends_a_table_that_waits_for_a_person_to_type() {
    let mut child = command().arg("-").stdin(Stdio::piped()).spawn().unwrap();
    let mut input = child.stdin.take().unwrap();
    input.write_all(catalogue(3).as_bytes()).unwrap();
    input.flush().unwrap();
    thread::sleep(Duration::from_millis(500));
    interrupt(&child);
    let (code, said) = end_of(child);
    assert_eq!((code, listings(&said, "")), (Some(2), 3));
    drop(input);
}
