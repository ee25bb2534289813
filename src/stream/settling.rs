//! A file that is put through to the disk while more of it is written.

use std::fs::File;
use std::io;
use std::sync::mpsc::{SyncSender, sync_channel};
use std::thread::{self, JoinHandle};

/// How much is written between two times that the file is put through, in bytes.
const STRETCH: usize = 32 << 20;

/// Puts what was written of a file through to the disk in a thread of its own, stretch by stretch, so that at the end
/// little is left to wait for.
#[derive(Default)]
pub(super) struct Settling {
    /// Bytes since the last stretch.
    written: usize,
    settler: Option<Settler>,
}

struct Settler {
    ask: SyncSender<()>,
    thread: JoinHandle<io::Result<()>>,
}

impl Settling {
    /// Says that so many bytes more were written to `file`.
    pub(super) fn wrote(&mut self, file: &File, bytes: usize) {
        self.written += bytes;
        if self.written < STRETCH {
            return;
        }
        self.written = 0;
        if self.settler.is_none() {
            self.settler = Settler::of(file);
        }
        if let Some(settler) = &self.settler {
            // One that is busy comes to these bytes too, the next time or at the end.
            let _ = settler.ask.try_send(());
        }
    }

    /// Waits for what is under way.
    ///
    /// # Errors
    ///
    /// The first failure of the disk: the system tells it once, so that putting the file through again would not.
    pub(super) fn end(self) -> io::Result<()> {
        let Some(Settler { ask, thread }) = self.settler else { return Ok(()) };
        drop(ask);
        thread.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))
    }
}

impl Settler {
    /// None where the system has no thread or no handle to spare: then all waits for the end.
    fn of(file: &File) -> Option<Self> {
        let file = file.try_clone().ok()?;
        let (ask, asked) = sync_channel(1);
        let settle = move || asked.iter().try_for_each(|()| file.sync_data());
        let thread = thread::Builder::new().name("settle".into()).spawn(settle).ok()?;
        Some(Self { ask, thread })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_short_file_needs_no_thread() {
        let file = tempfile::tempfile().unwrap();
        let mut settling = Settling::default();
        settling.wrote(&file, STRETCH - 1);
        assert!(settling.settler.is_none());
        settling.wrote(&file, 1);
        assert!(settling.settler.is_some());
        settling.end().unwrap();
    }

    #[cfg(unix)]
    #[test]
    fn a_failure_that_the_system_tells_once_is_not_lost() {
        use std::os::fd::OwnedFd;
        // A pipe cannot be put through to a disk.
        let (_reader, writer) = io::pipe().unwrap();
        let file = File::from(OwnedFd::from(writer));
        let mut settling = Settling::default();
        for _ in 0..3 {
            settling.wrote(&file, STRETCH);
        }
        settling.end().unwrap_err();
    }
}
