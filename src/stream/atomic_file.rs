//! An output file that is either the old one or the whole new one.

use std::fs::{self, File, OpenOptions};
use std::io::{self, BufWriter, IsTerminal as _, Write};
use std::path::{Path, PathBuf};

use super::settling::Settling;
use tempfile::{Builder, NamedTempFile};

/// How much is gathered before it is written, in bytes: less than a batch gives, so that most is written as it comes, without
/// a copy.
const BUFFER: usize = 64 * 1024;

/// A file that is written beside its path and takes its place in [`commit`](Self::commit).
///
/// Until then, and if the process is killed at any moment, the old file is whole (a kill leaves the unfinished one behind,
/// `.NAME.XXXXXX.part`; dropping does not). The new file has the permissions of the old one, or those that the umask leaves.
/// A symbolic link stays, and what it points to is replaced. A path that is no regular file (a terminal, a FIFO,
/// `/dev/full`) is written to directly.
///
/// Errors name the path and keep their [`io::ErrorKind`].
pub struct AtomicFile {
    path: PathBuf,
    target: Target,
}

enum Target {
    Beside(BufWriter<Settled>, PathBuf),
    Direct(BufWriter<File>),
}

/// The unfinished file.
struct Settled {
    file: NamedTempFile,
    settling: Settling,
}

impl Write for Settled {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let written = self.file.write(bytes)?;
        self.settling.wrote(self.file.as_file(), written);
        Ok(written)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.file.flush()
    }
}

impl AtomicFile {
    /// Begins a file that is to stand at `path`.
    ///
    /// # Errors
    ///
    /// If `path` is a directory or may not be written to, or if no file can be made beside it.
    pub fn create(path: impl Into<PathBuf>) -> io::Result<Self> {
        let path = path.into();
        match Target::open(&path) {
            Ok(target) => Ok(Self { path, target }),
            Err(error) => Err(naming(&path, &error)),
        }
    }

    /// The path that it will stand at.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Whether the path is a terminal, where what is written is acted on.
    #[must_use]
    pub fn is_terminal(&self) -> bool {
        match &self.target {
            Target::Beside(..) => false,
            Target::Direct(file) => file.get_ref().is_terminal(),
        }
    }

    /// Writes the file through to the disk and puts it in its place.
    ///
    /// # Errors
    ///
    /// If that fails: then the old file is as it was.
    pub fn commit(self) -> io::Result<()> {
        let Self { path, target } = self;
        target.commit().map_err(|error| naming(&path, &error))
    }
}

impl Write for AtomicFile {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let written = match &mut self.target {
            Target::Beside(file, _) => file.write(bytes),
            Target::Direct(file) => file.write(bytes),
        };
        written.map_err(|error| naming(&self.path, &error))
    }

    fn flush(&mut self) -> io::Result<()> {
        let flushed = match &mut self.target {
            Target::Beside(file, _) => file.flush(),
            Target::Direct(file) => file.flush(),
        };
        flushed.map_err(|error| naming(&self.path, &error))
    }
}

impl Target {
    fn open(path: &Path) -> io::Result<Self> {
        let old = match fs::metadata(path) {
            Ok(old) => Some(old),
            Err(error) if error.kind() == io::ErrorKind::NotFound => None,
            Err(error) => return Err(error),
        };
        if let Some(old) = &old {
            // Fails for a directory, and for a file that the user has protected, which a rename would replace all the same.
            let direct = OpenOptions::new().write(true).open(path)?;
            if !old.is_file() {
                return Ok(Self::Direct(BufWriter::with_capacity(BUFFER, direct)));
            }
        }
        let place = if old.is_some() { fs::canonicalize(path)? } else { path.to_path_buf() };
        let Some(name) = place.file_name() else {
            return Err(io::Error::new(io::ErrorKind::InvalidInput, "not the name of a file"));
        };
        let mut prefix = std::ffi::OsString::from(".");
        prefix.push(name);
        prefix.push(".");
        let mut builder = Builder::new();
        builder.prefix(&prefix).suffix(".part");
        #[cfg(unix)]
        builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
        let file = builder.tempfile_in(directory(&place))?;
        if let Some(old) = old {
            file.as_file().set_permissions(old.permissions())?;
        }
        let settled = Settled { file, settling: Settling::default() };
        Ok(Self::Beside(BufWriter::with_capacity(BUFFER, settled), place))
    }

    fn commit(self) -> io::Result<()> {
        match self {
            Self::Direct(mut file) => file.flush(),
            Self::Beside(file, place) => {
                let Settled { file, settling } = file.into_inner().map_err(io::IntoInnerError::into_error)?;
                settling.end()?;
                file.as_file().sync_all()?;
                file.persist(&place).map_err(|error| error.error)?;
                // So that the new name outlives a power cut too; not every file system can.
                #[cfg(unix)]
                if let Ok(directory) = File::open(directory(&place)) {
                    let _ = directory.sync_all();
                }
                Ok(())
            }
        }
    }
}

fn directory(path: &Path) -> &Path {
    path.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

fn naming(path: &Path, error: &io::Error) -> io::Error {
    io::Error::new(error.kind(), format!("{}: {error}", path.display()))
}
