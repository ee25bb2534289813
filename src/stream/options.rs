//! What is asked of the reader.

/// What a [`RecordReader`](super::RecordReader) may be told.
#[derive(Debug, Clone, Copy)]
pub struct ReadOptions {
    /// The byte between fields; `None` finds it from the first line (tab, semicolon or comma).
    pub delimiter: Option<u8>,
    /// The longest record that is believed, in bytes without its line end; 1 MiB by default.
    pub record_limit: usize,
    /// The most records in a batch; 4096 by default.
    pub batch_rows: usize,
}

impl Default for ReadOptions {
    fn default() -> Self {
        Self { delimiter: None, record_limit: 1024 * 1024, batch_rows: 4096 }
    }
}
