//! Where a catalogue comes from.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use anyhow::{Context as _, Result, bail};

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
