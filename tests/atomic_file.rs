//! An output file is the old one or the whole new one, at any moment.

use plainwatt::stream::AtomicFile;
use std::io::Write;

#[test]
fn an_output_file_appears_whole_or_not_at_all() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("out.csv");
    let here = || std::fs::read_dir(directory.path()).unwrap().count();

    let mut first = AtomicFile::create(&path).unwrap();
    first.write_all(b"old").unwrap();
    assert!(!path.exists());
    first.commit().unwrap();
    assert_eq!((std::fs::read(&path).unwrap(), here()), (b"old".to_vec(), 1));

    let mut second = AtomicFile::create(&path).unwrap();
    second.write_all(&vec![b'x'; 1_000_000]).unwrap();
    second.flush().unwrap();
    assert_eq!(std::fs::read(&path).unwrap(), b"old");
    drop(second);
    assert_eq!((std::fs::read(&path).unwrap(), here()), (b"old".to_vec(), 1));
}

#[cfg(unix)]
mod unix {
    use super::*;
    use std::fs;
    use std::io;
    use std::os::unix::fs::{PermissionsExt, symlink};

    #[test]
    fn an_output_file_keeps_its_permissions_and_its_link() {
        let directory = tempfile::tempdir().unwrap();
        let (file, link) = (directory.path().join("out.csv"), directory.path().join("link.csv"));
        fs::write(&file, "old").unwrap();
        fs::set_permissions(&file, fs::Permissions::from_mode(0o640)).unwrap();
        symlink(&file, &link).unwrap();
        let mut output = AtomicFile::create(&link).unwrap();
        output.write_all(b"new").unwrap();
        output.commit().unwrap();
        assert_eq!(fs::read(&file).unwrap(), b"new");
        assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
        assert_eq!(fs::metadata(&file).unwrap().permissions().mode() & 0o777, 0o640);
    }

    #[test]
    fn a_new_output_file_has_the_permissions_of_any_new_file() {
        let directory = tempfile::tempdir().unwrap();
        let (plain, ours) = (directory.path().join("plain"), directory.path().join("ours"));
        fs::write(&plain, "").unwrap();
        AtomicFile::create(&ours).unwrap().commit().unwrap();
        let mode = |path| fs::metadata(path).unwrap().permissions().mode();
        assert_eq!(mode(&ours), mode(&plain));
    }

    #[test]
    fn what_is_no_file_is_written_to_directly_and_errors_name_it() {
        let mut null = AtomicFile::create("/dev/null").unwrap();
        null.write_all(b"gone").unwrap();
        null.commit().unwrap();

        let directory = tempfile::tempdir().unwrap();
        let error = AtomicFile::create(directory.path()).err().unwrap();
        assert!(error.to_string().starts_with(&directory.path().display().to_string()), "{error}");
        let missing = directory.path().join("no/such/out.csv");
        let error = AtomicFile::create(&missing).err().unwrap();
        assert_eq!(error.kind(), io::ErrorKind::NotFound);
        assert!(error.to_string().starts_with(&missing.display().to_string()), "{error}");
    }

    #[cfg(target_os = "linux")]
    #[test]
    fn a_full_disk_is_named() {
        let mut full = AtomicFile::create("/dev/full").unwrap();
        full.write_all(b"row\n").unwrap();
        let error = full.commit().unwrap_err();
        assert_eq!(error.kind(), io::ErrorKind::StorageFull);
        assert!(error.to_string().starts_with("/dev/full: "), "{error}");
    }
}
