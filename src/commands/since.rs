//! `audit --since`: reads what an earlier `grade --format csv` wrote.

use std::path::Path;

use anyhow::{Context as _, Result, anyhow, bail};

use crate::audit::Earlier;
use crate::comparison::Verdict;
use crate::report::{UNREADABLE, sanitise};

pub(super) fn read(path: &Path) -> Result<Earlier> {
    let cannot = || format!("--since: cannot read {}", path.display());
    let mut reader = ::csv::Reader::from_path(path).with_context(cannot)?;
    let header = reader.headers().with_context(cannot)?.clone();
    let place = |name: &str| {
        header.iter().position(|h| h == name).ok_or_else(|| {
            anyhow!(
                "--since: {} has no column '{name}'; accepted is what 'plainwatt grade --format csv' wrote",
                path.display()
            )
        })
    };
    let (listing, supplier, verdict) = (place("listing")?, place("supplier")?, place("verdict")?);
    let mut earlier = Earlier::default();
    let mut record = ::csv::StringRecord::new();
    while reader.read_record(&mut record).with_context(cannot)? {
        // The guard against spreadsheet formulas is one leading apostrophe.
        let text = |place: usize| {
            let cell = record.get(place).unwrap_or("");
            cell.strip_prefix('\'').unwrap_or(cell).to_owned()
        };
        let word = record.get(verdict).unwrap_or("");
        let found = Verdict::ALL.into_iter().find(|v| v.word() == word);
        if found.is_none() && word != UNREADABLE {
            bail!(
                "--since: {}: line {}: found '{}', accepted: the word of a verdict, or {UNREADABLE}",
                path.display(),
                record.position().map_or(0, ::csv::Position::line),
                sanitise::terminal(word)
            );
        }
        earlier.insert((text(listing), text(supplier)), found);
    }
    Ok(earlier)
}
