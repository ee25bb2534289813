//! Where output goes, and what is told about it on the way.

use std::io::{self, BufWriter, IsTerminal as _, Write};
use std::path::Path;
use std::sync::atomic::{AtomicBool, Ordering};

use anyhow::{Context as _, Result};
use indicatif::{ProgressBar, ProgressStyle};

use crate::report::sanitise::terminal;
use crate::stream::{self, AtomicFile, StreamError};

/// Standard output, or a file that is replaced only when all is written.
pub(super) enum Sink {
    Standard(BufWriter<io::Stdout>),
    File(Box<AtomicFile>),
}

impl Sink {
    /// Opens `path`, or standard output for none and for `-`.
    pub(super) fn open(path: Option<&Path>) -> Result<Self> {
        match path.filter(|p| p.as_os_str() != "-") {
            None => Ok(Self::Standard(BufWriter::with_capacity(1 << 16, io::stdout()))),
            Some(path) => Ok(Self::File(Box::new(AtomicFile::create(path).context("cannot write")?))),
        }
    }

    /// Whether it is standard output, where somebody may wait for each row.
    pub(super) fn is_standard(&self) -> bool {
        matches!(self, Self::Standard(_))
    }

    /// Whether a terminal would act on what is written.
    pub(super) fn is_terminal(&self) -> bool {
        match self {
            Self::Standard(_) => io::stdout().is_terminal(),
            Self::File(file) => file.is_terminal(),
        }
    }

    /// Finishes: only now does a file take the place of the old one.
    pub(super) fn commit(self) -> Result<()> {
        match self {
            Self::Standard(mut out) => Ok(out.flush().map_err(StreamError::Write)?),
            Self::File(file) => file.commit().context("cannot write"),
        }
    }
}

impl Write for Sink {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        match self {
            Self::Standard(out) => out.write(bytes),
            Self::File(out) => out.write(bytes),
        }
    }

    fn flush(&mut self) -> io::Result<()> {
        match self {
            Self::Standard(out) => out.flush(),
            Self::File(out) => out.flush(),
        }
    }
}

/// Escapes what a terminal would act on, where rows of untrusted text go straight to one.
pub(super) struct TerminalGuard<'a> {
    out: &'a mut Sink,
    on: bool,
}

/// Tells a person on standard error; what a run says is never data, and no text in it may act on a terminal.
pub(super) fn say(text: &str) {
    let safe: Vec<_> = text.lines().map(terminal).collect();
    let _ = writeln!(io::stderr().lock(), "{}", safe.join("\n"));
}

impl<'a> TerminalGuard<'a> {
    pub(super) fn new(out: &'a mut Sink) -> Self {
        let on = out.is_terminal();
        Self { out, on }
    }
}

impl Write for TerminalGuard<'_> {
    /// Rows come in whole batches, so that no character is ever split between two writes.
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        if !self.on {
            return self.out.write(bytes);
        }
        for line in String::from_utf8_lossy(bytes).split_inclusive('\n') {
            let (text, end) = line.strip_suffix('\n').map_or((line, ""), |text| (text, "\n"));
            self.out.write_all(terminal(text).as_bytes())?;
            self.out.write_all(end.as_bytes())?;
        }
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        self.out.flush()
    }
}

static STOP: AtomicBool = AtomicBool::new(false);

/// A flag that an interrupt sets, so that a run can end between two batches and say how far it got.
pub(super) fn stop_on_interrupt() -> &'static AtomicBool {
    // A second handler in one process is refused; the first keeps working.
    let _ = ctrlc::set_handler(|| STOP.store(true, Ordering::Relaxed));
    &STOP
}

/// A progress bar on standard error: for files, only on a terminal, and only where no rows go to a terminal too.
pub(super) struct Progress {
    bar: Option<ProgressBar>,
}

impl Progress {
    pub(super) fn over(path: &Path, rows_to_terminal: bool) -> Self {
        let size = std::fs::metadata(path).ok().filter(std::fs::Metadata::is_file).map(|m| m.len());
        let bar = size.filter(|_| !rows_to_terminal && io::stderr().is_terminal()).map(|size| {
            let bar = ProgressBar::new(size);
            if let Ok(style) = ProgressStyle::with_template("{bar:30} {percent} % {msg} {elapsed}") {
                bar.set_style(style);
            }
            bar
        });
        Self { bar }
    }

    pub(super) fn show(&mut self, done: stream::Progress) {
        if let Some(bar) = &self.bar {
            bar.set_position(done.bytes);
            bar.set_message(format!("{} listings", done.rows));
        }
    }

    pub(super) fn finish(&mut self) {
        if let Some(bar) = &self.bar {
            bar.finish_and_clear();
        }
    }
}
