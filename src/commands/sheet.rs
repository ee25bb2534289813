//! A catalogue that is a sheet of a workbook.

use std::fs::File;
use std::io::{self, Read, Seek as _};

use anyhow::{Context as _, Result, bail};

use super::output::say;
use crate::cli::Catalogue;
use crate::stream::{Batch, Notice, RecordFault, RecordReader, Supply};
use crate::workbook::{Kind, LONGEST_ROW, Rows, Workbook};

/// Rows of text, or of a sheet.
pub(super) enum Source {
    Text(Box<RecordReader<Box<dyn Read + Send>>>),
    Sheet(SheetRows),
}

impl Supply for Source {
    fn read_batch(&mut self, batch: &mut Batch) -> io::Result<bool> {
        match self {
            Self::Text(reader) => reader.read_batch(batch),
            Self::Sheet(rows) => rows.read_batch(batch),
        }
    }

    fn notices(&self) -> Vec<Notice> {
        match self {
            Self::Text(reader) => reader.notices(),
            Self::Sheet(_) => Vec::new(),
        }
    }
}

/// The rows of a sheet.
pub(super) struct SheetRows {
    rows: Rows,
    name: String,
    /// How many columns the header names. A row has as many cells: those that are missing are empty, and what stands to the
    /// right of the table is not part of it.
    width: usize,
}

impl SheetRows {
    /// The sheet's name.
    pub(super) fn name(&self) -> &str {
        &self.name
    }

    /// How many columns a row has.
    pub(super) fn expect_fields(&mut self, width: usize) {
        self.width = width;
    }

    /// Takes the first row that is not blank as the header, with its number; `None` if there is no row.
    pub(super) fn header(&mut self) -> Result<Option<Vec<String>>> {
        let Some(row) = self.rows.next_row()? else { return Ok(None) };
        if row.is_too_long() {
            bail!(
                "row {}: found a header of more than {LONGEST_ROW} bytes, accepted: at most that",
                row.number()
            );
        }
        let mut header = Vec::new();
        for (place, text) in row.cells() {
            header.resize(place, String::new());
            header.push(text.to_owned());
        }
        self.width = header.len();
        Ok(Some(header))
    }
}

impl Supply for SheetRows {
    fn read_batch(&mut self, batch: &mut Batch) -> io::Result<bool> {
        batch.begin();
        while batch.is_empty() || self.rows.has_more() {
            let Some(row) = self.rows.next_row().map_err(io::Error::other)? else { break };
            let mut cells = row.cells().peekable();
            let fields = (0..self.width)
                .map(|place| cells.next_if(|(at, _)| *at == place).map_or("", |(_, text)| text));
            let fault = row.is_too_long().then_some(RecordFault::TooLong { limit: LONGEST_ROW });
            batch.add(row.number(), fields, fault);
        }
        batch.end(self.rows.position());
        Ok(!batch.is_empty())
    }

    fn notices(&self) -> Vec<Notice> {
        Vec::new()
    }
}

/// Opens the sheet that is asked for, and names the sheets that are left out where none was.
pub(super) fn open(file: File, kind: Kind, asked: &Catalogue) -> Result<SheetRows> {
    if kind == Kind::Compound {
        bail!(
            "found an old Excel workbook (.xls), or one with a password; accepted: an .xlsx without a password, or a CSV; save \
             it as one of them"
        );
    }
    if let Some(delimiter) = &asked.delimiter {
        bail!("--delimiter: found '{delimiter}' for a workbook, which has none; leave it out");
    }
    let book = Workbook::open(file)?;
    let sheet = book.choose(asked.sheet.as_deref())?;
    let others = book.sheets().iter().filter(|other| other.cells && other.name != sheet.name);
    let left: Vec<_> =
        others.map(|s| format!("'{}'{}", s.name, if s.visible { "" } else { " (hidden)" })).collect();
    if asked.sheet.is_none() && !left.is_empty() {
        say(&format!(
            "sheet '{}' is read; left out: {}; --sheet NAME reads another",
            sheet.name,
            left.join(", ")
        ));
    }
    Ok(SheetRows { rows: book.rows(&sheet)?, name: sheet.name, width: 0 })
}

/// Keeps a workbook that comes through a pipe in a temporary file without a name: its table of contents stands at its end.
pub(super) fn spool(mut bytes: impl Read) -> Result<File> {
    let mut file = tempfile::tempfile().context("cannot make a temporary file for the workbook")?;
    io::copy(&mut bytes, &mut file).context("cannot keep the workbook in a temporary file")?;
    file.rewind()?;
    Ok(file)
}
