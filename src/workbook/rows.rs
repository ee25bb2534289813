//! The rows of a sheet, read by a thread of their own.
//!
//! The parser borrows the workbook, so the thread owns both. It hands on some thousand rows at a time and waits while
//! enough of them are under way; it ends when nobody takes them any more.

use std::io::{self, BufReader, Read, Seek, SeekFrom};
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
use std::thread;

use calamine::{DataRef, Xlsx, XlsxError};

use super::text::{self, NEVER_CALCULATED};
use super::{WorkbookError, cell_name};

/// The longest row that is believed: bytes of its cells' text.
pub const LONGEST_ROW: usize = 1 << 20;

/// The most rows that a sheet has, and the most columns (common practice, no source).
const MOST_ROWS: u32 = 1_048_576;
const MOST_COLUMNS: u32 = 16_384;

/// When rows are handed on.
const CHUNK_ROWS: usize = 4096;
const CHUNK_BYTES: usize = 128 * 1024;

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

/// Where a cell stands, and where its text ends in that of its chunk.
#[derive(Debug, Clone, Copy)]
struct CellEnd {
    place: usize,
    end: usize,
}

#[derive(Debug)]
struct RowEnd {
    number: u64,
    cells_end: usize,
    too_long: bool,
}

/// Some rows under way.
#[derive(Debug, Default)]
struct Chunk {
    text: String,
    cells: Vec<CellEnd>,
    rows: Vec<RowEnd>,
    position: u64,
}

impl Chunk {
    fn is_full(&self) -> bool {
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

/// Reads the cells of a sheet and hands them on as rows.
fn read<RS: Read + Seek>(
    mut book: Xlsx<BufReader<Followed<RS>>>,
    sheet: &str,
    position: &AtomicU64,
    sender: &SyncSender<Result<Option<Chunk>, WorkbookError>>,
) -> Result<(), WorkbookError> {
    let mut cells = book.worksheet_cells_reader(sheet)?;
    let mut gathering = Gathering { sheet, chunk: Chunk::default(), row: None, row_begin: 0, last: None };
    let end = loop {
        match cells.next_cell_with_formula_metadata() {
            Ok(Some(cell)) => {
                let (row, place) = cell.pos;
                let value = match cell.value {
                    DataRef::Empty if cell.formula.is_some() => DataRef::SharedString(NEVER_CALCULATED),
                    value => value,
                };
                if gathering.row != Some(row) {
                    gathering.end_row();
                    if gathering.chunk.is_full() && !gathering.hand_on(position, sender) {
                        return Ok(());
                    }
                }
                if let Err(error) = gathering.take(row, place, &value) {
                    break Err(error);
                }
            }
            Ok(None) => break Ok(()),
            Err(XlsxError::CellError(value)) => {
                let after = gathering.last.map(|(row, place)| gathering.name(row, place));
                break Err(WorkbookError::UnknownErrorValue { value, after });
            }
            Err(error) => break Err(error.into()),
        }
    };
    // The rows before a failure are good.
    gathering.end_row();
    gathering.hand_on(position, sender);
    end
}

/// Cells on their way into rows.
struct Gathering<'a> {
    sheet: &'a str,
    chunk: Chunk,
    /// The row that is being filled, from 0.
    row: Option<u32>,
    /// Where its text begins.
    row_begin: usize,
    /// The last cell: row and column from 0.
    last: Option<(u32, u32)>,
}

impl Gathering<'_> {
    fn name(&self, row: u32, place: u32) -> String {
        cell_name(self.sheet, place as usize, u64::from(row) + 1)
    }

    fn take(&mut self, row: u32, place: u32, value: &DataRef<'_>) -> Result<(), WorkbookError> {
        if row >= MOST_ROWS || place >= MOST_COLUMNS {
            return Err(WorkbookError::Damaged(format!("{} is beyond any sheet", self.name(row, place))));
        }
        if self.last.is_some_and(|last| last >= (row, place)) {
            return Err(WorkbookError::RowsOutOfOrder { cell: self.name(row, place) });
        }
        self.last = Some((row, place));
        if self.row != Some(row) {
            self.row = Some(row);
            self.row_begin = self.chunk.text.len();
            self.chunk.rows.push(RowEnd { number: u64::from(row) + 1, cells_end: 0, too_long: false });
        }
        let Some(current) = self.chunk.rows.last_mut() else { return Ok(()) };
        if current.too_long {
            return Ok(());
        }
        let begin = self.chunk.text.len();
        text::write(value, &mut self.chunk.text);
        if self.chunk.text.len() - self.row_begin > LONGEST_ROW {
            current.too_long = true;
            self.chunk.text.truncate(begin);
        } else if self.chunk.text.len() > begin {
            self.chunk.cells.push(CellEnd { place: place as usize, end: self.chunk.text.len() });
        }
        Ok(())
    }

    /// Ends the row that is being filled; a blank one is dropped.
    fn end_row(&mut self) {
        if self.row.take().is_none() {
            return;
        }
        let Chunk { text, cells, rows, .. } = &mut self.chunk;
        let cells_begin = rows.len().checked_sub(2).map_or(0, |before| rows[before].cells_end);
        let Some(row) = rows.last_mut() else { return };
        if !row.too_long && text[self.row_begin..].trim().is_empty() {
            text.truncate(self.row_begin);
            cells.truncate(cells_begin);
            rows.pop();
        } else {
            row.cells_end = cells.len();
        }
    }

    /// Whether somebody takes the rows.
    fn hand_on(
        &mut self,
        position: &AtomicU64,
        sender: &SyncSender<Result<Option<Chunk>, WorkbookError>>,
    ) -> bool {
        let mut chunk = std::mem::take(&mut self.chunk);
        chunk.position = position.load(Ordering::Relaxed);
        chunk.rows.is_empty() || sender.send(Ok(Some(chunk))).is_ok()
    }
}
