//! The way of a row: reader, map, ordered writer.

use super::workers::run_with_threads;
use super::{Batch, Notice, Record, StreamError, Supply};
use std::io::Write;
use std::sync::atomic::{AtomicBool, Ordering};

/// How much of an output buffer is kept for the next batch, in bytes.
const KEPT: usize = 4 * 1024 * 1024;

/// What workers count, each for itself, added up at the end. It may hold a worker's scratch buffers as well.
pub trait Merge {
    /// Adds what another worker counted.
    fn merge(&mut self, other: Self);
}

/// Where a row's output goes; both are emptied into their sinks batch by batch, in the order of the input.
#[derive(Debug, Default)]
pub struct Output {
    /// Bytes for the rows.
    pub rows: Vec<u8>,
    /// Bytes for the rejects; dropped if there is no sink for them.
    pub rejects: Vec<u8>,
}

/// How far a run has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Progress {
    /// Bytes of the input whose rows have been written.
    pub bytes: u64,
    /// Rows that have been written.
    pub rows: u64,
}

/// How to run.
pub struct Run<'a> {
    /// Worker threads. With 1 (or 0) everything happens on the calling thread, unless the input `waits`; else a thread reads
    /// and the calling thread writes.
    pub threads: usize,
    /// The input may be waited for (a pipe, a terminal): a thread of its own reads even for one worker, so that a stop need
    /// not wait for it.
    pub waits: bool,
    /// Flush the sinks after each batch, for one who waits at the other end of a pipe.
    pub flush: bool,
    /// Set by another thread or a signal handler, it ends the run after the batch that is being written. With several
    /// threads, or where the input `waits`, that is within 50 ms even while the input is waited for; with one, the read has
    /// to return first.
    pub stop: Option<&'a AtomicBool>,
    /// Called on the calling thread after each batch.
    pub progress: Option<&'a mut dyn FnMut(Progress)>,
}

impl Default for Run<'_> {
    fn default() -> Self {
        Self { threads: 1, waits: false, flush: false, stop: None, progress: None }
    }
}

/// Where the output of a run goes.
pub struct Sinks<'a> {
    /// For [`Output::rows`].
    pub rows: &'a mut dyn Write,
    /// For [`Output::rejects`].
    pub rejects: Option<&'a mut dyn Write>,
}

/// What came of a run that was not ended by an error.
#[derive(Debug)]
pub struct Outcome<S> {
    /// The sum of what the workers counted. After a stop it may count rows that were not written.
    pub summary: S,
    /// What was read and written.
    pub done: Progress,
    /// What had to be guessed about the input; empty if the run was stopped.
    pub notices: Vec<Notice>,
    /// The run was stopped before the end of the input.
    pub stopped: bool,
}

/// Maps every record of `reader` to bytes and writes them in the order of the input.
///
/// `map` gets the worker's own `S`, the record, and the buffers to write to; it is called once a record, faulty ones
/// included. The output does not depend on the number of threads. Memory is bounded by the record limit, the number of
/// threads and the length of a batch's output.
///
/// If the run ends early (an error, a stop), a thread that waits for the input is left behind until its read returns.
///
/// # Errors
///
/// [`StreamError`] names the side that failed; everything before a failure of the input has been written by then.
///
/// # Panics
///
/// If `map` does.
pub fn run<R, S, F>(reader: R, how: Run<'_>, map: F, sinks: Sinks<'_>) -> Result<Outcome<S>, StreamError>
where
    R: Supply + Send + 'static,
    S: Merge + Default + Send,
    F: Fn(&mut S, &Record<'_>, &mut Output) + Sync,
{
    let (threads, waits) = (how.threads, how.waits);
    let writer = Writer { sinks, how, done: Progress::default() };
    if threads <= 1 && !waits {
        run_alone(reader, &map, writer)
    } else {
        run_with_threads(reader, threads.max(1), &map, writer)
    }
}

fn run_alone<R, S, F>(mut reader: R, map: &F, mut writer: Writer<'_, '_>) -> Result<Outcome<S>, StreamError>
where
    R: Supply,
    S: Default,
    F: Fn(&mut S, &Record<'_>, &mut Output),
{
    let mut summary = S::default();
    let mut job = Job::default();
    let mut stopped = writer.stop_asked();
    while !stopped && reader.read_batch(&mut job.batch).map_err(StreamError::Read)? {
        job.work(&mut summary, map);
        writer.write(&mut job)?;
        stopped = writer.stop_asked();
    }
    writer.finish()?;
    Ok(Outcome { summary, done: writer.done, notices: reader.notices(), stopped })
}

/// A batch on its way, with what became of it.
#[derive(Debug, Default)]
pub(super) struct Job {
    pub(super) sequence: u64,
    pub(super) batch: Batch,
    output: Output,
}

impl Job {
    pub(super) fn work<S>(&mut self, summary: &mut S, map: &impl Fn(&mut S, &Record<'_>, &mut Output)) {
        for record in self.batch.iter() {
            map(summary, &record, &mut self.output);
        }
    }
}

/// The end of the way.
pub(super) struct Writer<'h, 's> {
    sinks: Sinks<'s>,
    how: Run<'h>,
    pub(super) done: Progress,
}

impl Writer<'_, '_> {
    pub(super) fn stop_asked(&self) -> bool {
        self.how.stop.is_some_and(|stop| stop.load(Ordering::Relaxed))
    }

    /// Writes what became of a batch, and empties its buffers.
    pub(super) fn write(&mut self, job: &mut Job) -> Result<(), StreamError> {
        let Output { rows, rejects } = &mut job.output;
        self.sinks.rows.write_all(rows).map_err(StreamError::Write)?;
        if let Some(sink) = &mut self.sinks.rejects
            && !rejects.is_empty()
        {
            sink.write_all(rejects).map_err(StreamError::WriteRejects)?;
        }
        for buffer in [rows, rejects] {
            buffer.clear();
            buffer.shrink_to(KEPT);
        }
        if self.how.flush {
            self.finish()?;
        }
        self.done.rows += job.batch.len() as u64;
        self.done.bytes = job.batch.end_byte();
        if let Some(progress) = &mut self.how.progress {
            progress(self.done);
        }
        Ok(())
    }

    /// Flushes both sinks.
    pub(super) fn finish(&mut self) -> Result<(), StreamError> {
        self.sinks.rows.flush().map_err(StreamError::Write)?;
        match &mut self.sinks.rejects {
            Some(sink) => sink.flush().map_err(StreamError::WriteRejects),
            None => Ok(()),
        }
    }
}
