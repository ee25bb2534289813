//! `cargo bench --bench catalogue [-- ROWS]`: `plainwatt grade` on a catalogue of ROWS (2 million) listings, against what an
//! analyst would write, and how time grows with the rows.
//!
//! The peers are `peer_polars.py` and `peer_duckdb.py` beside this file, run by `python3` (or what `PYTHON` names); one that
//! cannot run is left out, with a message. Each figure is the fastest of three runs, and the runs of all take turns, so that
//! a busy machine slows all alike. `PLAINWATT_BENCH_MOST=10000000` lets the growth go up to that many rows. A measure, not a
//! test: no time is asserted.
#![allow(clippy::print_stdout, reason = "a benchmark prints its figures")]

#[path = "catalogue_help/chance.rs"]
mod chance;
#[path = "catalogue_help/invented.rs"]
mod invented;
#[path = "catalogue_help/measure.rs"]
mod measure;

use invented::Kind;
use measure::{Measured, Task};
use std::path::Path;
use std::process::Command;

const ROUNDS: usize = 3;

fn main() {
    let rows = std::env::args().skip(1).find_map(|word| word.parse().ok()).unwrap_or(2_000_000);
    let most = std::env::var("PLAINWATT_BENCH_MOST").ok().and_then(|n| n.parse().ok()).unwrap_or(1_000_000);
    let place = tempfile::tempdir().expect("a directory for the catalogues");
    let structured = place.path().join("structured.csv");
    let titles = place.path().join("titles.csv");
    invented::write(&structured, rows, Kind::Structured).expect("a catalogue");
    invented::write(&titles, rows, Kind::TitlesOnly).expect("a catalogue");
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    println!("{rows} listings on {cores} cores, the fastest of {ROUNDS} runs\n");
    against_peers(place.path(), &structured, &titles, rows);
    growth(place.path(), most);
}

fn against_peers(place: &Path, structured: &Path, titles: &Path, rows: u64) {
    let out = place.join("out.csv");
    let python = std::env::var("PYTHON").unwrap_or_else(|_| "python3".to_owned());
    let mut tasks = Vec::new();
    for (name, module) in [("Polars", "polars"), ("DuckDB", "duckdb")] {
        let imported = Command::new(&python)
            .args(["-c", &format!("import {module}")])
            .output()
            .is_ok_and(|o| o.status.success());
        if !imported {
            println!(
                "left out: {name}, since '{python} -c \"import {module}\"' does not run (pip install {module})"
            );
            continue;
        }
        let script =
            Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/bench").join(format!("peer_{module}.py"));
        let mut peer = Command::new(&python);
        peer.arg(script).arg(structured).arg(&out);
        tasks.push(Task::new(name, peer));
        let mut idle = Command::new(&python);
        idle.args(["-c", &format!("import {module}")]);
        tasks.push(Task::new(&format!("{name}, start and import alone"), idle));
    }
    for threads in ["1", "2"] {
        for (name, file, flags) in [
            ("structured, --no-titles", structured, &["--no-titles"][..]),
            ("structured, titles read", structured, &[]),
            ("titles only", titles, &[]),
        ] {
            let mut grade = grade(file, &out, threads);
            grade.args(flags);
            tasks.push(Task::new(&format!("plainwatt, {threads} thread(s), {name}"), grade));
        }
    }
    let mut piped = grade(Path::new("-"), &out, "2");
    piped.arg("--no-titles");
    tasks.push(Task::piped("plainwatt, 2 thread(s), from a pipe, --no-titles", piped, structured));

    let measured = measure::fastest(&mut tasks, ROUNDS);
    let seconds_of = |name: &str| measured.iter().find(|m| m.name == name).map(|m| m.seconds);
    let (polars, duckdb) = (seconds_of("Polars"), seconds_of("DuckDB"));
    println!(
        "{:50} {:>8} {:>10} {:>9} {:>9} {:>9}",
        "", "seconds", "rows/s", "x Polars", "x DuckDB", "peak MiB"
    );
    for Measured { name, seconds, peak_kib } in &measured {
        let idle = name.ends_with("alone");
        println!(
            "{name:50} {seconds:8.2} {:>10} {:>9} {:>9} {:>9}",
            if idle { String::new() } else { format!("{:.0}", count(rows) / seconds) },
            ratio(polars.filter(|_| !idle), *seconds),
            ratio(duckdb.filter(|_| !idle), *seconds),
            peak_kib.map_or_else(|| "unknown".to_owned(), |kib| format!("{:.1}", count(kib) / 1024.0)),
        );
    }
    println!(
        "x Polars, x DuckDB: rows per second over the peer's, start and import included; above 1 is faster\n"
    );
}

/// The time for 10, 100, ... times as many rows: it should grow no faster than they do.
fn growth(place: &Path, most: u64) {
    println!("{:>10} {:>9} {:>14} {:>9}", "rows", "seconds", "ns for a row", "peak MiB");
    let (file, out) = (place.join("growing.csv"), place.join("out.csv"));
    for rows in std::iter::successors(Some(10_000), |rows| Some(rows * 10)).take_while(|rows| *rows <= most) {
        invented::write(&file, rows, Kind::Structured).expect("a catalogue");
        let mut tasks = [Task::new("grade", grade(&file, &out, "2"))];
        for Measured { seconds, peak_kib, .. } in measure::fastest(&mut tasks, ROUNDS) {
            println!(
                "{rows:>10} {seconds:9.3} {:14.0} {:>9}",
                seconds * 1e9 / count(rows),
                peak_kib.map_or_else(|| "unknown".to_owned(), |kib| format!("{:.1}", count(kib) / 1024.0)),
            );
        }
    }
}

fn grade(file: &Path, out: &Path, threads: &str) -> Command {
    let mut grade = Command::new(env!("CARGO_BIN_EXE_plainwatt"));
    grade.arg("grade").arg(file).args(["--format", "csv", "--threads", threads, "-o"]).arg(out);
    grade
}

fn ratio(peer: Option<f64>, seconds: f64) -> String {
    peer.map_or_else(String::new, |peer| format!("{:.2}", peer / seconds))
}

#[expect(clippy::cast_precision_loss, reason = "counts of a measurement")]
fn count(number: u64) -> f64 {
    number as f64
}
