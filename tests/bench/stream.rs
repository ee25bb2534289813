//! `cargo bench --bench stream [-- ROWS]`: rows a second of reading alone and of an identity map, and the peak memory.
//!
//! The catalogue is invented, and made on the fly, so that it takes no memory of its own.
#![allow(clippy::print_stdout, reason = "a benchmark prints its figures")]

use plainwatt::stream::{Batch, Merge, ReadOptions, RecordReader, Run, Sinks, StreamError, run};
use std::io::{self, Read, Write};
use std::time::Instant;

const MADE_ROWS: usize = 5000;

/// The same rows over and over, ROWS in all, as a file would give them.
struct Catalogue {
    rows: Vec<u8>,
    at: usize,
    left: u64,
}

impl Catalogue {
    /// One line over and over.
    fn of(line: &str, rows: u64) -> Self {
        let made = line.repeat((1_000_000 / line.len()).max(1)).into_bytes();
        let left = rows * line.len() as u64;
        Self { rows: made, at: 0, left }
    }

    fn new(rows: u64) -> Self {
        let mut made = Vec::new();
        for row in 0..MADE_ROWS {
            let watts = row % 900 + 30;
            let inches = if row % 1000 == 0 { "24\"\" x 12\"\" " } else { "" };
            let quote = if row % 10 == 0 { "\"" } else { "" };
            let comma = if row % 10 == 0 { "," } else { "" };
            let _ = writeln!(
                made,
                "L{row:08},supplier {},{quote}{watts}W LED Grow Light ({}x3W) {inches}Full Spectrum Panel for Indoor \
                 Plants{comma} Veg and Bloom{quote},{watts},3W,,{},{},{},{},{},{}",
                row % 400,
                watts / 3,
                row % 59,
                row % 58,
                row % 57,
                row % 53,
                row % 51,
                row % 49
            );
        }
        let left = rows / MADE_ROWS as u64 * made.len() as u64;
        Self { rows: made, at: 0, left }
    }
}

impl Read for Catalogue {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let left = usize::try_from(self.left).unwrap_or(usize::MAX);
        let len = into.len().min(self.rows.len() - self.at).min(left);
        into[..len].copy_from_slice(&self.rows[self.at..self.at + len]);
        self.at = (self.at + len) % self.rows.len();
        self.left -= len as u64;
        Ok(len)
    }
}

#[derive(Default)]
struct Nothing;

impl Merge for Nothing {
    fn merge(&mut self, _: Self) {}
}

fn report(what: &str, rows: u64, bytes: u64, begun: Instant) {
    let seconds = begun.elapsed().as_secs_f64();
    #[expect(clippy::cast_precision_loss, reason = "figures for people")]
    let (rows_each_second, megabytes_each_second) = (rows as f64 / seconds, bytes as f64 / seconds / 1e6);
    println!(
        "{what:<28} {rows:>10} rows {seconds:>7.2} s {rows_each_second:>11.0} rows/s {:>6.1} ns/row {megabytes_each_second:>6.0} MB/s",
        1e9 / rows_each_second
    );
}

fn read_alone(what: &str, input: Catalogue, bytes: u64) -> io::Result<()> {
    let begun = Instant::now();
    let mut reader = RecordReader::new(input, ReadOptions::default());
    let mut batch = Batch::default();
    let mut seen = 0;
    while reader.read_batch(&mut batch)? {
        seen += batch.len() as u64;
    }
    report(what, seen, bytes, begun);
    Ok(())
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let rows = std::env::args().skip(1).find_map(|argument| argument.parse().ok()).unwrap_or(2_000_000);

    let begun = Instant::now();
    let mut catalogue = Catalogue::new(rows);
    let mut block = vec![0; 128 * 1024];
    let mut bytes = 0;
    while let got @ 1.. = catalogue.read(&mut block)? {
        bytes += std::hint::black_box(&block[..got]).len() as u64;
    }
    report("making the rows", rows, bytes, begun);

    let begun = Instant::now();
    let mut reader = csv::ReaderBuilder::new().from_reader(Catalogue::new(rows));
    let mut record = csv::ByteRecord::new();
    let mut seen = 0;
    while reader.read_byte_record(&mut record)? {
        seen += 1;
    }
    report("csv crate, byte records", seen, bytes, begun);

    read_alone("reading alone", Catalogue::new(rows), bytes)?;
    // Time has to stay in proportion to the length where every line opens a quote, closed by the next one or not.
    for (what, line) in [
        ("quotes that never close", "x\",\"y\n"),
        ("quotes closed in text", "y\"z,\"w\n"),
        ("one-byte lines", "x\n"),
        ("commas alone", &format!("{}\n", ",".repeat(200))),
    ] {
        for rows in [rows / 10, rows] {
            read_alone(what, Catalogue::of(line, rows), rows * line.len() as u64)?;
        }
    }

    for threads in [1, 2, 4] {
        identity(&format!("identity, {threads} threads"), Catalogue::new(rows), bytes, threads)?;
    }
    println!("peak memory so far: {}", peak_memory());
    let giant = format!("a,\"{}\"\n", "x".repeat(1_000_000));
    identity("megabyte rows, 2 threads", Catalogue::of(&giant, 500), 500 * giant.len() as u64, 2)?;
    println!("peak memory with rows of a megabyte: {}", peak_memory());
    Ok(())
}

fn identity(what: &str, input: Catalogue, bytes: u64, threads: usize) -> Result<(), StreamError> {
    let begun = Instant::now();
    let reader = RecordReader::new(input, ReadOptions::default());
    let outcome = run(
        reader,
        Run { threads, ..Run::default() },
        |_: &mut Nothing, record, out| {
            for field in record.iter() {
                out.rows.extend_from_slice(field.as_bytes());
                out.rows.push(b',');
            }
            out.rows.push(b'\n');
        },
        Sinks { rows: &mut io::sink(), rejects: None },
    )?;
    report(what, outcome.done.rows, bytes, begun);
    Ok(())
}

/// What the system has counted, where it counts.
fn peak_memory() -> String {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let peak = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    peak.map_or_else(|| "not known here".into(), |peak| peak.trim().into())
}
