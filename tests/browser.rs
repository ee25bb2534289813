//! The HTML report in a real browser: runs the checks of `tests/browser/` under Node.js and headless Chromium.
//!
//! Where something that they need is not installed, they are skipped, and what is missing is said on standard error. With
//! `PLAINWATT_BROWSER=required` that is a failure instead.
#![cfg(unix)]

use std::env;
use std::ffi::OsString;
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};
use std::process::Command;

/// At least so many checks have to pass: a run that found none would be green as well.
const LEAST: usize = 50;

/// Where the checks and their packages are.
fn checks() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/browser")
}

/// The first file of such a name among the directories of `path`.
fn on_path(name: &str, path: &OsString) -> Option<PathBuf> {
    env::split_paths(path).map(|place| place.join(name)).find(|file| file.is_file())
}

/// What the checks are run with.
#[derive(Debug)]
struct Tools {
    node: PathBuf,
    chromium: PathBuf,
}

/// The tools, or what is missing and how to get it.
fn tools(path: &OsString, chromium: Option<PathBuf>, checks: &Path) -> Result<Tools, String> {
    let node = on_path("node", path).ok_or("no command 'node': install Node.js 20 or newer")?;
    let chromium = chromium
        .or_else(|| on_path("chromium", path))
        .ok_or("no command 'chromium': install it (Debian: apt-get install chromium), or name it in PLAINWATT_CHROMIUM")?;
    for package in ["playwright-core", "axe-core"] {
        if !checks.join("node_modules").join(package).is_dir() {
            return Err(format!("no package '{package}': run 'npm ci --prefix tests/browser'"));
        }
    }
    Ok(Tools { node, chromium })
}

/// The number before or after a word of the runner's summary: `pass 57`.
fn counted(report: &str, word: &str) -> Option<usize> {
    report.lines().rev().find_map(|line| line.split_once(&format!(" {word} "))?.1.trim().parse().ok())
}

#[test]
fn the_report_holds_in_a_real_browser() {
    let path = env::var_os("PATH").unwrap_or_default();
    let chromium = env::var_os("PLAINWATT_CHROMIUM").map(PathBuf::from);
    let tools = match tools(&path, chromium, &checks()) {
        Ok(tools) => tools,
        Err(missing) => {
            let required = env::var_os("PLAINWATT_BROWSER").is_some_and(|value| value == "required");
            assert!(!required, "PLAINWATT_BROWSER=required, but {missing}");
            // Not by a macro: the test harness would keep it to itself.
            writeln!(io::stderr(), "skipped: the browser tests: {missing}").expect("standard error is open");
            return;
        }
    };
    let program = env::var_os("PLAINWATT_BIN").unwrap_or_else(|| env!("CARGO_BIN_EXE_plainwatt").into());
    let ran = Command::new(&tools.node)
        .args(["--test-reporter=spec", "all.mjs"])
        .current_dir(checks())
        .env("PLAINWATT_BIN", program)
        .env("PLAINWATT_CHROMIUM", &tools.chromium)
        .env("NO_COLOR", "1")
        .output()
        .expect("node runs");
    let report = String::from_utf8_lossy(&ran.stdout);
    assert!(ran.status.success(), "{}\n{report}{}", ran.status, String::from_utf8_lossy(&ran.stderr));
    let passed = counted(&report, "pass").unwrap_or(0);
    assert!(passed >= LEAST, "only {passed} checks passed\n{report}");
    assert_eq!((counted(&report, "fail"), counted(&report, "skipped")), (Some(0), Some(0)), "{report}");
}

#[test]
fn what_is_missing_is_named_with_its_remedy() {
    let place = tempfile::tempdir().expect("a directory");
    let add = |name: &str| std::fs::write(place.path().join(name), "").expect("a file");
    let path = OsString::from(place.path());
    let missing = || tools(&path, None, place.path()).map(|_| ()).unwrap_err();
    assert!(missing().contains("install Node.js"), "{}", missing());
    add("node");
    assert!(missing().contains("apt-get install chromium"), "{}", missing());
    add("chromium");
    assert!(missing().contains("npm ci --prefix tests/browser"), "{}", missing());
    for package in ["playwright-core", "axe-core"] {
        std::fs::create_dir_all(place.path().join("node_modules").join(package)).expect("a directory");
    }
    assert!(tools(&path, None, place.path()).is_ok());
    let named = tools(&path, Some("/opt/browser".into()), place.path()).expect("all is there");
    assert_eq!(named.chromium, Path::new("/opt/browser"));
}
