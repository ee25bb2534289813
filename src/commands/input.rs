//! Where a catalogue comes from.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use anyhow::{Context as _, Result, anyhow, bail};

use super::output::say;
use crate::cli::Catalogue;
use crate::intake::{Columns, HeaderError};
use crate::report::sanitise;
use crate::stream::{Batch, ReadOptions, RecordReader};

/// A file or standard input, opened.
pub(super) struct Input {
    /// What is read.
    pub(super) bytes: Box<dyn Read + Send>,
    /// A second handle on a regular file, and its length when it was opened, in bytes.
    watched: Option<(File, u64)>,
}

impl Input {
    /// Opens `path`, or standard input for `-`.
    pub(super) fn open(path: &Path) -> Result<Self> {
        if is_dash(path) {
            return Ok(Self { bytes: Box::new(io::stdin()), watched: None });
        }
        let file = File::open(path).with_context(|| format!("cannot open {}", path.display()))?;
        let about = file.metadata().with_context(|| format!("cannot open {}", path.display()))?;
        if about.is_dir() {
            bail!("{} is a directory; accepted is a CSV file, or - for standard input", path.display());
        }
        let watched = match file.try_clone() {
            Ok(handle) if about.is_file() => Some((handle, about.len())),
            _ => None,
        };
        Ok(Self { bytes: Box::new(file), watched })
    }

    /// What tells afterwards whether all of it could be read.
    pub(super) fn split(self) -> (Box<dyn Read + Send>, Watched) {
        (self.bytes, Watched(self.watched))
    }
}

/// A file that somebody else may change while it is read.
pub(super) struct Watched(Option<(File, u64)>);

impl Watched {
    /// Whether a read may wait for somebody: for a pipe or a terminal, not for a file.
    pub(super) fn waits(&self) -> bool {
        self.0.is_none()
    }

    /// Refuses what was read of a file that is shorter now: rows of it are missing, and nothing else would show it. One that
    /// has grown was read to its new end, one that was deleted to its end.
    pub(super) fn check(&self, path: &Path) -> Result<()> {
        let Some((file, before)) = &self.0 else { return Ok(()) };
        match file.metadata() {
            Ok(now) if now.len() < *before => bail!(
                "{} became shorter while it was read: found {} bytes, accepted: the {before} bytes it began with; let what \
                 writes it finish, then run again",
                path.display(),
                now.len()
            ),
            _ => Ok(()),
        }
    }
}

/// The path as a person knows it.
pub(super) fn shown(path: &Path) -> String {
    if is_dash(path) { "standard input".to_owned() } else { path.display().to_string() }
}

/// Whether a standard stream is meant.
pub(super) fn is_dash(path: &Path) -> bool {
    path.as_os_str() == "-"
}

/// A catalogue whose header has been read.
pub(super) struct Opened {
    pub(super) reader: RecordReader<Box<dyn Read + Send>>,
    pub(super) columns: Columns,
    pub(super) watched: Watched,
}

/// Opens a catalogue, reads its header, and says which columns are nearly ones that are used.
pub(super) fn catalogue(asked: &Catalogue) -> Result<Opened> {
    let (bytes, watched) = Input::open(&asked.file)?.split();
    let mut reader = RecordReader::new(bytes, options(asked)?);
    let columns = columns(asked, &mut reader)?;
    for (header, field) in columns.nearly() {
        say(&format!(
            "column '{}' is not used; if it is {field}, say --column {field}=\"{}\"",
            sanitise::terminal(header),
            sanitise::terminal(header)
        ));
    }
    Ok(Opened { reader, columns, watched })
}

/// How many threads to work with.
pub(super) fn threads(asked: &Catalogue) -> usize {
    asked.threads.unwrap_or_else(|| std::thread::available_parallelism().map_or(1, usize::from)).clamp(1, 256)
}

fn options(asked: &Catalogue) -> Result<ReadOptions> {
    let delimiter = match asked.delimiter.as_deref() {
        // From the names: each of many shards must be read alike, whatever its first row looks like.
        None => asked.header.as_ref().map(|_| b','),
        Some("tab" | "\\t" | "\t") => Some(b'\t'),
        Some(text) => match text.as_bytes() {
            [byte] if byte.is_ascii() && !byte.is_ascii_alphanumeric() && !b"\"\r\n\0".contains(byte) => {
                Some(*byte)
            }
            _ => bail!(
                "--delimiter: found '{}', accepted: one character such as ; or the word tab",
                sanitise::terminal(text)
            ),
        },
    };
    Ok(ReadOptions { delimiter, ..ReadOptions::default() })
}

fn columns(asked: &Catalogue, reader: &mut RecordReader<Box<dyn Read + Send>>) -> Result<Columns> {
    let mapped = asked
        .columns
        .iter()
        .map(|text| {
            let (field, header) = text.split_once('=').ok_or_else(|| {
                anyhow!(
                    "--column: found '{}', accepted: FIELD=HEADER, such as claim_w=\"Power (W)\"",
                    sanitise::terminal(text)
                )
            })?;
            Ok((field.trim().to_owned(), header.to_owned()))
        })
        .collect::<Result<Vec<_>>>()?;
    let headers: Vec<String> = if let Some(names) = &asked.header {
        let names: Vec<String> = names.split(',').map(|n| n.trim().to_owned()).collect();
        reader.expect_fields(names.len());
        names
    } else {
        let mut header = Batch::default();
        let read =
            reader.read_one(&mut header).with_context(|| format!("cannot read {}", shown(&asked.file)))?;
        let record = if read { header.get(0) } else { None };
        let record = record.ok_or_else(|| {
            anyhow!(
                "{} is empty; accepted is a header row with fields such as listing, claim_w, class, tally",
                shown(&asked.file)
            )
        })?;
        if let Some(fault) = record.fault() {
            bail!(
                "{}: line {}: found {} in the header, accepted: {}",
                shown(&asked.file),
                record.line(),
                fault.found(),
                fault.accepted()
            );
        }
        record.iter().map(str::to_owned).collect()
    };
    Columns::resolve(headers, &mapped).map_err(|error| match error {
        HeaderError::NoSuchField { .. } | HeaderError::NoSuchHeader { .. } => {
            anyhow!("--column: {}", sanitise::terminal(&error.to_string()))
        }
        error => anyhow!("{}: {}", shown(&asked.file), sanitise::terminal(&error.to_string())),
    })
}
