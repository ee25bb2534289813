//! Where a catalogue comes from.

use std::fs::File;
use std::io::{self, Cursor, Read, Seek as _};
use std::path::Path;

use anyhow::{Context as _, Result, anyhow, bail};

use super::output::say;
use super::sheet::{self, Source};
use crate::cli::Catalogue;
use crate::intake::{Columns, HeaderError};
use crate::report::sanitise;
use crate::stream::{Batch, ReadOptions, RecordReader};
use crate::workbook::{Kind, MAGIC_LEN};

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
            bail!(
                "{} is a directory; accepted is a CSV or .xlsx file, or - for standard input",
                path.display()
            );
        }
        let watched = match file.try_clone() {
            Ok(handle) if about.is_file() => Some((handle, about.len())),
            _ => None,
        };
        Ok(Self { bytes: Box::new(file), watched })
    }

    /// What the input is by its first bytes; `None` for text. They are still there afterwards.
    pub(super) fn kind(&mut self) -> io::Result<Option<Kind>> {
        let mut head = Vec::with_capacity(MAGIC_LEN);
        // No more than tells: who types rows should not have to wait.
        while Kind::needs_more(&head) && self.bytes.by_ref().take(1).read_to_end(&mut head)? > 0 {}
        let kind = Kind::of(&head);
        if let Some((file, _)) = &mut self.watched {
            // The handles share one place in the file.
            file.rewind()?;
        } else {
            let rest = std::mem::replace(&mut self.bytes, Box::new(io::empty()));
            self.bytes = Box::new(Cursor::new(head).chain(rest));
        }
        Ok(kind)
    }

    /// The whole of it as a file.
    fn file(&mut self) -> Result<File> {
        match &self.watched {
            Some((file, _)) => Ok(file.try_clone()?),
            None => sheet::spool(&mut self.bytes),
        }
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
    pub(super) reader: Source,
    pub(super) columns: Columns,
    /// The sheet's name, if it is one.
    pub(super) sheet: Option<String>,
    pub(super) watched: Watched,
}

/// Opens a catalogue, reads its header, and says which columns are nearly ones that are used.
pub(super) fn catalogue(asked: &Catalogue) -> Result<Opened> {
    let file = shown(&asked.file);
    let mut input = Input::open(&asked.file)?;
    let kind = input.kind().with_context(|| format!("cannot read {file}"))?;
    let (mut reader, watched) = if let Some(kind) = kind {
        let rows = input.file().and_then(|file| sheet::open(file, kind, asked)).context(file)?;
        (Source::Sheet(rows), input.split().1)
    } else {
        if asked.sheet.is_some() {
            bail!(
                "--sheet: {file} is text, which has no sheets; accepted beside --sheet is an .xlsx; leave it out"
            );
        }
        let (bytes, watched) = input.split();
        (Source::Text(Box::new(RecordReader::new(bytes, options(asked)?))), watched)
    };
    let columns = columns(asked, &mut reader)?;
    for (header, field) in columns.nearly() {
        say(&format!(
            "column '{}' is not used; if it is {field}, say --column {field}=\"{}\"",
            sanitise::terminal(header),
            sanitise::terminal(header)
        ));
    }
    let sheet = match &reader {
        Source::Sheet(rows) => Some(rows.name().to_owned()),
        Source::Text(_) => None,
    };
    Ok(Opened { reader, columns, sheet, watched })
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

fn columns(asked: &Catalogue, reader: &mut Source) -> Result<Columns> {
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
        match reader {
            Source::Text(reader) => reader.expect_fields(names.len()),
            Source::Sheet(rows) => rows.expect_fields(names.len()),
        }
        names
    } else {
        let header = match reader {
            Source::Text(reader) => header(reader, asked),
            Source::Sheet(rows) => {
                rows.header().with_context(|| format!("cannot read {}", shown(&asked.file)))
            }
        };
        header?.ok_or_else(|| {
            anyhow!(
                "{} is empty; accepted is a header row with fields such as listing, claim_w, class, tally",
                shown(&asked.file)
            )
        })?
    };
    Columns::resolve(headers, &mapped).map_err(|error| match error {
        HeaderError::NoSuchField { .. } | HeaderError::NoSuchHeader { .. } => {
            anyhow!("--column: {}", sanitise::terminal(&error.to_string()))
        }
        error => anyhow!("{}: {}", shown(&asked.file), sanitise::terminal(&error.to_string())),
    })
}

/// The first record of a text, as a header.
fn header(reader: &mut RecordReader<Box<dyn Read + Send>>, asked: &Catalogue) -> Result<Option<Vec<String>>> {
    let file = shown(&asked.file);
    let mut header = Batch::default();
    let read = reader.read_one(&mut header).with_context(|| format!("cannot read {file}"))?;
    let record = if read { header.get(0) } else { None };
    if let Some((record, fault)) = record.and_then(|record| Some((record, record.fault()?))) {
        bail!(
            "{file}: line {}: found {} in the header, accepted: {}",
            record.line(),
            fault.found(),
            fault.accepted()
        );
    }
    Ok(record.map(|record| record.iter().map(str::to_owned).collect()))
}
