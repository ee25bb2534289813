//! Cells gathered into rows, on the thread that reads them.

use std::io::{BufReader, Read, Seek};
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::mpsc::SyncSender;

use calamine::{DataRef, Xlsx, XlsxError};

use super::followed::Followed;
use super::rows::{CellEnd, Chunk, LONGEST_ROW, RowEnd};
use super::text::{self, NEVER_CALCULATED};
use super::{WorkbookError, cell_name};

/// The most rows that a sheet has, and the most columns (common practice, no source).
const MOST_ROWS: u32 = 1_048_576;
const MOST_COLUMNS: u32 = 16_384;

/// Where the rows go: `None` after the last.
pub(super) type Sender = SyncSender<Result<Option<Chunk>, WorkbookError>>;

/// Reads the cells of a sheet and hands them on as rows.
pub(super) fn read<RS: Read + Seek>(
    mut book: Xlsx<BufReader<Followed<RS>>>,
    sheet: &str,
    position: &AtomicU64,
    sender: &Sender,
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
    fn hand_on(&mut self, position: &AtomicU64, sender: &Sender) -> bool {
        let mut chunk = std::mem::take(&mut self.chunk);
        chunk.position = position.load(Ordering::Relaxed);
        chunk.rows.is_empty() || sender.send(Ok(Some(chunk))).is_ok()
    }
}
