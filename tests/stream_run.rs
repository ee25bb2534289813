//! The run as a whole: order, errors, stops, and what reaches the other end of a pipe when.

use plainwatt::stream::{Merge, Progress, ReadOptions, RecordReader, Run, Sinks, StreamError, run};
use std::io::{self, Cursor, Read, Write};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;
use std::time::Duration;

#[derive(Debug, Default)]
struct Rows(u64);

impl Merge for Rows {
    fn merge(&mut self, other: Self) {
        self.0 += other.0;
    }
}

fn numbers(rows: usize) -> Vec<u8> {
    (0..rows).flat_map(|row| format!("{row},some title of a lamp\n").into_bytes()).collect()
}

fn echo(rows: &mut Rows, record: &plainwatt::stream::Record<'_>, out: &mut plainwatt::stream::Output) {
    rows.0 += 1;
    out.rows.extend_from_slice(record.raw());
    out.rows.push(b'\n');
    if record.line() % 1000 == 0 {
        let _ = writeln!(out.rejects, "{}", record.line());
    }
}

fn reader(input: Vec<u8>) -> RecordReader<Cursor<Vec<u8>>> {
    RecordReader::new(Cursor::new(input), ReadOptions::default())
}

#[test]
fn rows_and_rejects_keep_the_order_of_the_input() {
    let input = numbers(50_000);
    for threads in [0, 1, 2, 4] {
        let (mut rows, mut rejects, mut last) = (Vec::new(), Vec::new(), Progress::default());
        let mut progress = |now: Progress| {
            assert!(now.rows > last.rows && now.bytes > last.bytes);
            last = now;
        };
        let how = Run { threads, progress: Some(&mut progress), ..Run::default() };
        let outcome = run(
            reader(input.clone()),
            how,
            |count, record, out| {
                // Later batches are ready before earlier ones.
                if record.line() == 1 {
                    thread::sleep(Duration::from_millis(30));
                }
                echo(count, record, out);
            },
            Sinks { rows: &mut rows, rejects: Some(&mut rejects) },
        )
        .unwrap();
        assert!(rows == input, "with {threads} threads");
        let thousands: Vec<_> = (1..=50).map(|thousand| (thousand * 1000).to_string()).collect();
        assert_eq!(String::from_utf8(rejects).unwrap().lines().collect::<Vec<_>>(), thousands);
        assert_eq!((outcome.summary.0, outcome.done.rows, outcome.stopped), (50_000, 50_000, false));
        assert_eq!(last.rows, 50_000);
        assert_eq!(last.bytes, input.len() as u64);
    }
}

/// Fails after so many bytes.
struct Failing(usize, io::ErrorKind);

impl Write for Failing {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0 = self.0.checked_sub(bytes.len()).ok_or_else(|| io::Error::from(self.1))?;
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

#[test]
fn a_sink_that_fails_ends_the_run_with_its_error() {
    for threads in [1, 3] {
        let mut closed = Failing(1_000_000, io::ErrorKind::BrokenPipe);
        let how = Run { threads, ..Run::default() };
        let sinks = Sinks { rows: &mut closed, rejects: None };
        let error = run(reader(numbers(200_000)), how, echo, sinks).unwrap_err();
        assert!(error.is_broken_pipe(), "{error:?}");

        let (mut rows, mut full) = (Vec::new(), Failing(0, io::ErrorKind::StorageFull));
        let how = Run { threads, ..Run::default() };
        let sinks = Sinks { rows: &mut rows, rejects: Some(&mut full) };
        let error = run(reader(numbers(200_000)), how, echo, sinks).unwrap_err();
        assert!(
            matches!(&error, StreamError::WriteRejects(error) if error.kind() == io::ErrorKind::StorageFull)
        );
        assert!(!error.is_broken_pipe());
    }
}

/// Gives its bytes, then an error.
struct TornOff(Cursor<Vec<u8>>);

impl Read for TornOff {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        match self.0.read(into)? {
            0 => Err(io::Error::from(io::ErrorKind::ConnectionReset)),
            got => Ok(got),
        }
    }
}

#[test]
fn an_input_that_fails_does_so_after_its_rows_are_written() {
    for threads in [1, 3] {
        let input = numbers(20_000);
        let mut rows = Vec::new();
        let how = Run { threads, ..Run::default() };
        let torn_off = RecordReader::new(TornOff(Cursor::new(input.clone())), ReadOptions::default());
        let error = run(torn_off, how, echo, Sinks { rows: &mut rows, rejects: None }).unwrap_err();
        assert!(matches!(&error, StreamError::Read(error) if error.kind() == io::ErrorKind::ConnectionReset));
        assert!(rows == input, "with {threads} threads");
    }
}

/// A pipe: gives what is sent to it, and waits for more.
struct Pipe(Receiver<Vec<u8>>);

impl Read for Pipe {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let Ok(bytes) = self.0.recv() else { return Ok(0) };
        into[..bytes.len()].copy_from_slice(&bytes);
        Ok(bytes.len())
    }
}

/// Passes on at each flush what was written.
struct ToChannel(Sender<Vec<u8>>, Vec<u8>);

impl Write for ToChannel {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.1.write(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        let flushed = std::mem::take(&mut self.1);
        if !flushed.is_empty() {
            self.0.send(flushed).map_err(|_| io::Error::from(io::ErrorKind::BrokenPipe))?;
        }
        Ok(())
    }
}

#[test]
fn one_who_waits_for_each_answer_before_writing_on_gets_it() {
    for threads in [1, 2] {
        // A Cursor first, for the source looks at the first bytes apart.
        let (send, receive) = channel();
        let (answer, answers) = channel();
        let running = thread::spawn(move || {
            let first = Cursor::new(b"1,a\n".to_vec());
            let reader = RecordReader::new(first.chain(Pipe(receive)), ReadOptions::default());
            let how = Run { threads, flush: true, ..Run::default() };
            run(reader, how, echo, Sinks { rows: &mut ToChannel(answer, Vec::new()), rejects: None })
                .map(|done| done.done.rows)
        });
        let wait = Duration::from_secs(20);
        assert_eq!(answers.recv_timeout(wait).unwrap(), b"1,a\n");
        for row in ["2,b\n", "3,\"c\n\"\n", "4,d\r"] {
            send.send(row.as_bytes().to_vec()).unwrap();
            assert_eq!(answers.recv_timeout(wait).unwrap(), row.replace('\r', "\n").as_bytes());
        }
        drop(send);
        assert_eq!(running.join().unwrap().unwrap(), 4);
    }
}

#[test]
fn a_stop_ends_the_run_though_the_input_is_waited_for() {
    let (send, receive) = channel::<Vec<u8>>();
    let stop = AtomicBool::new(false);
    let mut rows = Vec::new();
    let first = Cursor::new(numbers(10));
    let reader = RecordReader::new(first.chain(Pipe(receive)), ReadOptions::default());
    let mut seen = 0;
    let mut progress = |now: Progress| {
        seen = now.rows;
        if seen == 10 {
            stop.store(true, Ordering::Relaxed);
        }
    };
    let how = Run { threads: 2, stop: Some(&stop), progress: Some(&mut progress), ..Run::default() };
    let outcome = run(reader, how, echo, Sinks { rows: &mut rows, rejects: None }).unwrap();
    assert!(outcome.stopped);
    assert_eq!((outcome.done.rows, rows), (10, numbers(10)));
    assert_eq!(seen, 10);
    drop(send);
}

#[test]
fn a_stop_asked_before_the_start_reads_nothing() {
    let stop = AtomicBool::new(true);
    for threads in [1, 2] {
        let mut rows = Vec::new();
        let how = Run { threads, stop: Some(&stop), ..Run::default() };
        let outcome = run(reader(numbers(10)), how, echo, Sinks { rows: &mut rows, rejects: None }).unwrap();
        assert_eq!((outcome.stopped, outcome.done.rows, rows.len()), (true, 0, 0));
    }
}

#[test]
fn a_map_that_panics_ends_the_run_instead_of_hanging() {
    let panicked = thread::spawn(|| {
        let how = Run { threads: 2, ..Run::default() };
        let map =
            |_: &mut Rows, record: &plainwatt::stream::Record<'_>, _: &mut plainwatt::stream::Output| {
                assert_ne!(record.line(), 5000, "the row of doom");
            };
        run(reader(numbers(100_000)), how, map, Sinks { rows: &mut io::sink(), rejects: None }).is_ok()
    });
    assert!(panicked.join().is_err());
}
