//! How long a process takes, and how much memory at most.

use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::{Duration, Instant};

/// A command to time.
pub struct Task {
    name: String,
    command: Command,
    piped: Option<PathBuf>,
}

impl Task {
    pub fn new(name: &str, command: Command) -> Self {
        Self { name: name.to_owned(), command, piped: None }
    }

    /// One that gets a file through a pipe.
    pub fn piped(name: &str, command: Command, file: &Path) -> Self {
        Self { name: name.to_owned(), command, piped: Some(file.to_path_buf()) }
    }
}

/// What a task took.
pub struct Measured {
    pub name: String,
    /// From the start of the process to its end: of the fastest run.
    pub seconds: f64,
    /// The most resident memory of any run, in KiB, where the system tells.
    pub peak_kib: Option<u64>,
}

/// Runs the tasks in turns; the fastest run of each counts, and the largest memory.
pub fn fastest(tasks: &mut [Task], rounds: usize) -> Vec<Measured> {
    let mut all: Vec<Measured> = tasks
        .iter()
        .map(|task| Measured { name: task.name.clone(), seconds: f64::INFINITY, peak_kib: None })
        .collect();
    for _ in 0..rounds {
        for (task, measured) in tasks.iter_mut().zip(&mut all) {
            let (seconds, peak) = once(task);
            measured.seconds = measured.seconds.min(seconds);
            measured.peak_kib = measured.peak_kib.max(peak);
        }
    }
    all
}

fn once(task: &mut Task) -> (f64, Option<u64>) {
    let stdin = if task.piped.is_some() { Stdio::piped() } else { Stdio::null() };
    task.command.stdin(stdin).stdout(Stdio::null()).stderr(Stdio::null());
    let begun = Instant::now();
    let mut child = task.command.spawn().expect("the program starts");
    let (status, pipe) = (format!("/proc/{}/status", child.id()), child.stdin.take());
    let ended = AtomicBool::new(false);
    thread::scope(|scope| {
        let watching = scope.spawn(|| {
            let mut peak = None;
            while !ended.load(Ordering::Relaxed) {
                peak = peak.max(high_water(&status));
                thread::sleep(Duration::from_millis(2));
            }
            peak
        });
        if let (Some(mut pipe), Some(file)) = (pipe, &task.piped) {
            let mut file = File::open(file).expect("the catalogue");
            std::io::copy(&mut file, &mut pipe).expect("the program reads it all");
        }
        let done = child.wait().expect("the program ends");
        let seconds = begun.elapsed().as_secs_f64();
        ended.store(true, Ordering::Relaxed);
        assert!(done.success(), "{}: {done}", task.name);
        (seconds, watching.join().expect("the watch ends"))
    })
}

/// The peak of resident memory so far, in KiB: `VmHWM` of proc(5), where there is one.
fn high_water(status: &str) -> Option<u64> {
    let text = fs::read_to_string(status).ok()?;
    text.lines().find_map(|line| line.strip_prefix("VmHWM:"))?.trim().trim_end_matches(" kB").parse().ok()
}
