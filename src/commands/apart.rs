//! Files that are read and files that are written are kept apart: what is replaced must not be what was asked about.

use std::path::{Path, PathBuf};

use anyhow::{Result, bail};

use super::input::is_dash;

/// The files of one run, each with what it is called.
#[derive(Debug, Default)]
pub(super) struct Files<'a> {
    /// What is read, such as `("the input", path)`.
    pub(super) read: Vec<(&'static str, &'a Path)>,
    /// What is written, by flag, `--rejects` last; `-` is standard output.
    pub(super) written: Vec<(&'static str, &'a Path)>,
}

impl Files<'_> {
    /// Refuses to write where something is read, and two outputs in one place, where each would break the other.
    pub(super) fn apart(&self) -> Result<()> {
        if self.written.iter().filter(|(_, path)| is_dash(path)).count() > 1 {
            bail!(
                "--rejects: found - for standard output, where the rows go; accepted: a file, or - beside --output FILE"
            );
        }
        for (place, (flag, path)) in self.written.iter().enumerate() {
            if let Some((what, _)) = self.read.iter().find(|(_, read)| same(read, path)) {
                bail!(
                    "{flag}: found the file of {what}, {}, which would be overwritten; accepted: another file",
                    path.display()
                );
            }
            if let Some((other, _)) = self.written[..place].iter().find(|(_, other)| same(other, path)) {
                bail!("{flag}: found the file of {other}, {}; accepted: another file", path.display());
            }
        }
        Ok(())
    }
}

/// Whether both are one regular file, or will be, whatever they are called. A device such as /dev/null takes all.
fn same(read: &Path, written: &Path) -> bool {
    if is_dash(written) || std::fs::metadata(written).is_ok_and(|about| !about.is_file()) {
        return false;
    }
    // Where standard input is a file, this is its name on the systems that have it; elsewhere it names nothing.
    let read = if is_dash(read) { Path::new("/dev/stdin") } else { read };
    read == written || canonical(read).is_some_and(|read| canonical(written) == Some(read))
}

/// The path without links; of a file that is yet to be made, its folder's and its name.
fn canonical(path: &Path) -> Option<PathBuf> {
    if let Ok(path) = path.canonicalize() {
        return Some(path);
    }
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    Some(folder.canonicalize().ok()?.join(path.file_name()?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_is_the_same_by_any_name_before_it_is_made_too() {
        let folder = tempfile::tempdir().unwrap();
        let (plain, round) = (folder.path().join("x.csv"), folder.path().join("./x.csv"));
        let other = folder.path().join("y.csv");
        for made in [false, true] {
            if made {
                std::fs::write(&plain, "listing\n").unwrap();
            }
            assert!(same(&plain, &round) && !same(&plain, &other), "{made}");
        }
        assert!(!same(Path::new("/dev/null"), Path::new("/dev/null")) && !same(&plain, Path::new("-")));
    }
}
