//! The run on several threads: one reads, some map, the calling thread writes.
//!
//! A fixed number of batches goes round: free, filled, mapped, written, free. That bounds the memory, and no queue can fill
//! up. The reading thread is not scoped, for it may wait for input that never comes when the run is to end.

use super::run::{Job, Outcome, Output, Writer};
use super::{Merge, Notice, Record, StreamError, Supply};
use std::collections::BTreeMap;
use std::io;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::sync::{Mutex, PoisonError};
use std::thread;
use std::time::Duration;

/// How often the writer looks whether it should stop while it waits.
const GLANCE: Duration = Duration::from_millis(50);

/// What a worker is to do next; nothing if it is to go home.
type Work = Option<Job>;

enum Event {
    Mapped(Job),
    ReadToEnd(ReadToEnd),
    /// A thread has panicked.
    Lost,
}

struct ReadToEnd {
    jobs: u64,
    notices: Vec<Notice>,
    result: io::Result<()>,
}

/// Tells the writer if its thread panics, which would else wait for a batch that never comes.
struct Alarm(Sender<Event>);

impl Drop for Alarm {
    fn drop(&mut self) {
        if thread::panicking() {
            let _ = self.0.send(Event::Lost);
        }
    }
}

pub(super) fn run_with_threads<R, S, F>(
    reader: R,
    threads: usize,
    map: &F,
    mut writer: Writer<'_, '_>,
) -> Result<Outcome<S>, StreamError>
where
    R: Supply + Send + 'static,
    S: Merge + Default + Send,
    F: Fn(&mut S, &Record<'_>, &mut Output) + Sync,
{
    let (free, free_jobs) = channel();
    let (work, to_work) = channel();
    let (event, events) = channel();
    // Two for each worker, one being filled, one being written.
    for _ in 0..2 * threads + 2 {
        let _ = free.send(Job::default());
    }
    let to_work = Mutex::new(to_work);
    let quit = AtomicBool::new(false);
    let (read_work, read_event) = (work.clone(), event.clone());
    thread::Builder::new()
        .name("read".into())
        .spawn(move || read(reader, &free_jobs, &read_work, Alarm(read_event)))
        .map_err(StreamError::Read)?;

    thread::scope(|scope| {
        let workers: Vec<_> = (0..threads)
            .map(|_| {
                let alarm = Alarm(event.clone());
                scope.spawn(|| work_on(&to_work, &quit, map, alarm))
            })
            .collect();
        drop(event);
        let written = write_in_order(&events, &free, &mut writer);
        quit.store(true, Ordering::Relaxed);
        for _ in &workers {
            let _ = work.send(None);
        }
        // The reader, if it waits for a free batch, finds that there will be none.
        drop(free);
        let mut summary = S::default();
        for worker in workers {
            match worker.join() {
                Ok(counted) => summary.merge(counted),
                Err(panic) => std::panic::resume_unwind(panic),
            }
        }
        let end = written?;
        writer.finish()?;
        let (notices, stopped) = match end {
            Some(end) => {
                end.result.map_err(StreamError::Read)?;
                (end.notices, false)
            }
            None => (Vec::new(), true),
        };
        Ok(Outcome { summary, done: writer.done, notices, stopped })
    })
}

#[expect(clippy::needless_pass_by_value, reason = "the alarm has to go off when this thread ends")]
fn read<R: Supply>(mut reader: R, free: &Receiver<Job>, work: &Sender<Work>, alarm: Alarm) {
    let mut jobs = 0;
    let result = loop {
        let Ok(mut job) = free.recv() else { return };
        match reader.read_batch(&mut job.batch) {
            Ok(true) => {}
            Ok(false) => break Ok(()),
            Err(error) => break Err(error),
        }
        job.sequence = jobs;
        jobs += 1;
        if work.send(Some(job)).is_err() {
            return;
        }
    };
    let _ = alarm.0.send(Event::ReadToEnd(ReadToEnd { jobs, notices: reader.notices(), result }));
}

#[expect(clippy::needless_pass_by_value, reason = "the alarm has to go off when this thread ends")]
fn work_on<S, F>(to_work: &Mutex<Receiver<Work>>, quit: &AtomicBool, map: &F, alarm: Alarm) -> S
where
    S: Default,
    F: Fn(&mut S, &Record<'_>, &mut Output),
{
    let mut summary = S::default();
    while !quit.load(Ordering::Relaxed) {
        let next = to_work.lock().unwrap_or_else(PoisonError::into_inner).recv();
        let Ok(Some(mut job)) = next else { break };
        job.work(&mut summary, map);
        if alarm.0.send(Event::Mapped(job)).is_err() {
            break;
        }
    }
    summary
}

/// Writes the batches by their sequence number; `None` if it was asked to stop.
fn write_in_order(
    events: &Receiver<Event>,
    free: &Sender<Job>,
    writer: &mut Writer<'_, '_>,
) -> Result<Option<ReadToEnd>, StreamError> {
    let mut early = BTreeMap::new();
    let mut end: Option<ReadToEnd> = None;
    let mut next = 0;
    loop {
        if let Some(whole) = end.take_if(|end| end.jobs == next) {
            return Ok(Some(whole));
        }
        if writer.stop_asked() {
            return Ok(None);
        }
        match events.recv_timeout(GLANCE) {
            Ok(Event::Mapped(job)) => {
                early.insert(job.sequence, job);
            }
            Ok(Event::ReadToEnd(read)) => end = Some(read),
            Err(RecvTimeoutError::Timeout) => {}
            // A worker's panic goes on after this; what is left is the reader's.
            Ok(Event::Lost) | Err(RecvTimeoutError::Disconnected) => {
                return Err(StreamError::Read(io::Error::other("the thread that reads it has failed")));
            }
        }
        while let Some(mut job) = early.remove(&next) {
            writer.write(&mut job)?;
            next += 1;
            // The reader may have gone home.
            let _ = free.send(job);
            if writer.stop_asked() {
                return Ok(None);
            }
        }
    }
}
