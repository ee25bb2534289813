//! The rows of a sheet, read by a thread of their own.
//!
//! The parser borrows the workbook, so the thread owns both. It hands on some thousand rows at a time and waits while
//! enough of them are under way; it ends when nobody takes them any more.

use std::io::{self, BufReader, Read, Seek};
use std::sync::Arc;
use std::sync::atomic::AtomicU64;
use std::sync::mpsc::{Receiver, sync_channel};
use std::thread;

use calamine::Xlsx;

use super::WorkbookError;
use super::followed::Followed;
use super::gathering::read;

/// The longest row that is believed: bytes of its cells' text.
pub const LONGEST_ROW: usize = 1 << 20;

/// When rows are handed on.
const CHUNK_ROWS: usize = 4096;
const CHUNK_BYTES: usize = 128 * 1024;

/// Where a cell stands, and where its text ends in that of its chunk.
#[derive(Debug, Clone, Copy)]
pub(super) struct CellEnd {
    pub(super) place: usize,
    pub(super) end: usize,
}

#[derive(Debug)]
pub(super) struct RowEnd {
    pub(super) number: u64,
    pub(super) cells_end: usize,
    pub(super) too_long: bool,
}

/// Some rows under way.
#[derive(Debug, Default)]
pub(super) struct Chunk {
    pub(super) text: String,
    pub(super) cells: Vec<CellEnd>,
    pub(super) rows: Vec<RowEnd>,
    pub(super) position: u64,
}

impl Chunk {
    pub(super) fn is_full(&self) -> bool {
        // A formatted cell without a value takes room as well.
        self.rows.len() >= CHUNK_ROWS || self.text.len() + 8 * self.cells.len() >= CHUNK_BYTES
    }
}

/// A row that is not blank.
#[derive(Debug, Clone, Copy)]
pub struct Row<'a> {
    text: &'a str,
    begin: usize,
    cells: &'a [CellEnd],
    number: u64,
    too_long: bool,
}

impl<'a> Row<'a> {
    /// Its number, from 1; blank rows count.
    #[must_use]
    pub fn number(&self) -> u64 {
        self.number
    }

    /// Its cells that are not empty, each with its column from 0, from left to right.
    pub fn cells(&self) -> impl Iterator<Item = (usize, &'a str)> + use<'a> {
        let (text, mut begin) = (self.text, self.begin);
        self.cells.iter().map(move |cell| {
            let from = std::mem::replace(&mut begin, cell.end);
            (cell.place, &text[from..cell.end])
        })
    }

    /// Whether it is longer than [`LONGEST_ROW`]: then the cells from there on are missing.
    #[must_use]
    pub fn is_too_long(&self) -> bool {
        self.too_long
    }
}

/// The rows of a sheet from top to bottom, without the blank ones.
#[derive(Debug)]
pub struct Rows {
    chunks: Receiver<Result<Option<Chunk>, WorkbookError>>,
    chunk: Chunk,
    /// Rows of the chunk that have been given.
    given: usize,
    ended: bool,
}

impl Rows {
    pub(super) fn start<RS: Read + Seek + Send + 'static>(
        book: Xlsx<BufReader<Followed<RS>>>,
        sheet: String,
        position: Arc<AtomicU64>,
    ) -> io::Result<Self> {
        let (sender, chunks) = sync_channel(2);
        thread::Builder::new().name("sheet".into()).spawn(move || {
            let end = read(book, &sheet, &position, &sender);
            // Where nobody listens, nobody need know.
            let _ = sender.send(end.map(|()| None));
        })?;
        Ok(Self { chunks, chunk: Chunk::default(), given: 0, ended: false })
    }

    /// The next row, `None` after the last.
    ///
    /// # Errors
    /// If the sheet cannot be read on; the rows before have been given by then.
    pub fn next_row(&mut self) -> Result<Option<Row<'_>>, WorkbookError> {
        while !self.has_more() {
            if self.ended {
                return Ok(None);
            }
            match self.chunks.recv() {
                Ok(Ok(Some(chunk))) => (self.chunk, self.given) = (chunk, 0),
                Ok(Ok(None)) => self.ended = true,
                Ok(Err(error)) => {
                    self.ended = true;
                    return Err(error);
                }
                // The thread has gone without a word: it has panicked.
                Err(_) => {
                    self.ended = true;
                    return Err(WorkbookError::Damaged("its cells make no sense".to_owned()));
                }
            }
        }
        let before = self.given.checked_sub(1).map_or(0, |before| self.chunk.rows[before].cells_end);
        let row = &self.chunk.rows[self.given];
        self.given += 1;
        Ok(Some(Row {
            text: &self.chunk.text,
            begin: before.checked_sub(1).map_or(0, |cell| self.chunk.cells[cell].end),
            cells: &self.chunk.cells[before..row.cells_end],
            number: row.number,
            too_long: row.too_long,
        }))
    }

    /// Whether the next row is at hand, without waiting.
    #[must_use]
    pub fn has_more(&self) -> bool {
        self.given < self.chunk.rows.len()
    }

    /// How far into the file the rows given so far were read, in bytes.
    #[must_use]
    pub fn position(&self) -> u64 {
        self.chunk.position
    }
}
