//! `--rejects`: the rows that could not be read, and why.

use std::borrow::Cow;
use std::io::Write as _;
use std::path::Path;

use anyhow::{Context as _, Result};
use encoding_rs::WINDOWS_1252;

use super::output::Sink;
use crate::facts::Fault;
use crate::report::sanitise::spreadsheet;

/// Opens the file, if one is wanted, and writes its header.
pub(super) fn open(path: Option<&Path>, sheet: Option<&str>) -> Result<Option<Sink>> {
    let Some(path) = path else { return Ok(None) };
    let mut rejects = Sink::open(Some(path))?;
    rejects.write_all(header(sheet).as_bytes()).context("cannot write the rejects")?;
    Ok(Some(rejects))
}

/// The header of the rejects file: a place in a text is a byte, in a sheet a cell.
fn header(sheet: Option<&str>) -> &'static str {
    if sheet.is_some() {
        "line,cell,column,found,accepted,row\n"
    } else {
        "line,byte,column,found,accepted,row\n"
    }
}

/// Appends why a row could not be read, and the row as it stood: as UTF-8 text, guarded as every cell is unless `unguarded`.
pub(super) fn write(out: &mut Vec<u8>, fault: &Fault, row: &[u8], unguarded: bool) {
    let number = |n: Option<u64>| n.map(|n| n.to_string()).unwrap_or_default();
    let row = text(row);
    let cell = |text| if unguarded { Cow::Borrowed(text) } else { spreadsheet(text) };
    let place = fault.cell.as_deref().map_or_else(|| Cow::Owned(number(fault.byte)), cell);
    let mut writer = ::csv::Writer::from_writer(out);
    // Into memory: this cannot fail.
    let _ = writer.write_record([
        number(fault.line).as_str(),
        &place,
        &cell(fault.column.as_deref().unwrap_or("")),
        &cell(&fault.found),
        &cell(&fault.accepted),
        &cell(&row),
    ]);
    let _ = writer.flush();
}

/// A raw row as text, read as its fields were.
fn text(raw: &[u8]) -> Cow<'_, str> {
    std::str::from_utf8(raw).map_or_else(|_| WINDOWS_1252.decode_without_bom_handling(raw).0, Cow::Borrowed)
}
