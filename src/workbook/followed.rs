//! How far a file has been read.

use std::io::{self, Read, Seek, SeekFrom};
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};

/// A file that tells how far it has been read.
#[derive(Debug)]
pub(super) struct Followed<RS> {
    file: RS,
    position: Arc<AtomicU64>,
}

impl<RS> Followed<RS> {
    pub(super) fn new(file: RS, position: Arc<AtomicU64>) -> Self {
        Self { file, position }
    }
}

impl<RS: Read> Read for Followed<RS> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        let read = self.file.read(buffer)?;
        self.position.fetch_add(read as u64, Ordering::Relaxed);
        Ok(read)
    }
}

impl<RS: Seek> Seek for Followed<RS> {
    fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
        let at = self.file.seek(to)?;
        self.position.store(at, Ordering::Relaxed);
        Ok(at)
    }
}
