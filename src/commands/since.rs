//! `audit --since`: reads what an earlier `grade --format csv` wrote.

use std::path::Path;

use anyhow::{Context as _, Result, anyhow, bail};

use super::input::Input;
use crate::audit::{Earlier, Said};
use crate::comparison::Verdict;
use crate::report::{UNREADABLE, sanitise};
use crate::stream::{Batch, ReadOptions, Record, RecordReader};
use crate::units::Watts;

/// What is accepted.
const OURS: &str =
    "what 'plainwatt grade --format csv' wrote, also if a spreadsheet has saved it as CSV since";

/// Reads it as a catalogue is read: a spreadsheet may have put in a byte order mark, or semicolons for commas.
pub(super) fn read(path: &Path) -> Result<Earlier> {
    let cannot = || format!("--since: cannot read {}", path.display());
    let mut input = Input::open(path).context("--since")?;
    if input.kind().with_context(cannot)?.is_some() {
        bail!("--since: found a workbook, {}; accepted: {OURS}", path.display());
    }
    let mut reader = RecordReader::new(input.split().0, ReadOptions::default());
    let mut batch = Batch::default();
    reader.read_one(&mut batch).with_context(cannot)?;
    let header: Vec<String> =
        batch.get(0).map(|record| record.iter().map(str::to_owned).collect()).unwrap_or_default();
    let place = |name: &str| {
        header
            .iter()
            .position(|h| h == name)
            .ok_or_else(|| anyhow!("--since: {} has no column '{name}'; accepted: {OURS}", path.display()))
    };
    let (listing, supplier, verdict) = (place("listing")?, place("supplier")?, place("verdict")?);
    let claim = place("claim_w")?;
    let mut earlier = Earlier::default();
    while reader.read_one(&mut batch).with_context(cannot)? {
        let Some(record) = batch.get(0) else { continue };
        let wrong = |found: &str, accepted: &str| {
            let (found, line) = (sanitise::terminal(found), record.line());
            anyhow!("--since: {}: line {line}: found {found}, accepted: {accepted}", path.display())
        };
        if let Some(fault) = record.fault() {
            return Err(wrong(&fault.found(), &fault.accepted()));
        }
        let word = record.get(verdict).unwrap_or("");
        let found = Verdict::ALL.into_iter().find(|v| v.word() == word);
        if found.is_none() && word != UNREADABLE {
            let accepted = format!("the word of a verdict, or {UNREADABLE}");
            return Err(wrong(&format!("'{word}'"), &accepted));
        }
        let said = found.map(|verdict| Said { verdict, claim: watts(record.get(claim).unwrap_or("")) });
        earlier.insert((text(&record, listing), text(&record, supplier)), said);
    }
    Ok(earlier)
}

/// A claim as it was written, or with the comma for a point that a spreadsheet may have put there.
fn watts(cell: &str) -> Option<Watts> {
    cell.trim().replace(',', ".").parse().ok().filter(|watts| *watts > 0.0).map(Watts)
}

/// A cell of text without its guard against spreadsheet formulas, which is one leading apostrophe.
fn text(record: &Record<'_>, place: usize) -> String {
    let cell = record.get(place).unwrap_or("");
    cell.strip_prefix('\'').unwrap_or(cell).to_owned()
}
