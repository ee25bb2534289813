//! `sweep`: your own bench readings become a reference table.

use std::fmt::Write as _;
use std::fs;
use std::io::Write as _;
use std::path::Path;

use anyhow::{Context as _, Result, bail};

use super::apart::Files;
use super::output::Sink;
use super::{Ended, print};
use crate::cli::Sweep;
use crate::facts::Fault;
use crate::reference::{Table, diodes_as_csv};
use crate::report::sanitise::terminal;
use crate::sweep::{self, Fit};

/// The most bytes of a file of readings: somebody types them.
const MOST: u64 = 4 * 1024 * 1024;

pub(super) fn run(asked: &Sweep) -> Result<Ended> {
    let path = &asked.file;
    let written = asked.output.as_deref().map(|output| ("--output", output));
    Files { read: vec![("the readings", path)], written: written.into_iter().collect() }.apart()?;
    let text = read(path)?;
    let place = |fault: &Fault| {
        let line = fault.line.map(|line| format!(", line {line}")).unwrap_or_default();
        let column = fault.column.as_deref().map(|column| format!(", {column}")).unwrap_or_default();
        let words =
            format!("{}{line}{column}: found {}, accepted: {}", path.display(), fault.found, fault.accepted);
        anyhow::anyhow!("{}", terminal(&words))
    };
    let curves = sweep::read(&text).map_err(|fault| place(&fault))?;
    let table = Table::built_in();
    let name = path.file_name().map_or_else(String::new, |name| name.to_string_lossy().into_owned());
    let fits = curves
        .iter()
        .map(|curve| sweep::fit(curve, &table, &name))
        .collect::<Result<Vec<Fit>, Fault>>()
        .map_err(|fault| place(&fault))?;
    let mut said = sweep::summary(&fits);
    if let Some(directory) = &asked.svg {
        pictures(directory, &fits)?;
        let _ = write!(said, "\npictures are in {}\n", directory.display());
    }
    match &asked.output {
        Some(output) => {
            let mut out = Sink::open(Some(output))?;
            out.write_all(diodes_as_csv(&sweep::rows(&fits))?.as_bytes())
                .with_context(|| format!("cannot write {}", output.display()))?;
            out.commit()?;
            if output.as_os_str() == "-" {
                return Ok(Ended::Ran);
            }
            let _ = write!(said, "\nwrote {0}; use it with --reference {0}\n", output.display());
        }
        None => said.push_str("\nno table was written; -o FILE writes one for --reference\n"),
    }
    print(&terminal_lines(&said))?;
    Ok(Ended::Ran)
}

/// File names may hold anything; a line stays a line.
fn terminal_lines(text: &str) -> String {
    text.lines().fold(String::with_capacity(text.len()), |mut all, line| {
        all.push_str(&terminal(line));
        all.push('\n');
        all
    })
}

fn read(path: &Path) -> Result<String> {
    let size = fs::metadata(path).with_context(|| format!("cannot open {}", path.display()))?;
    if size.is_dir() {
        bail!("{} is a directory; accepted is a CSV file of colour, volts, amps", path.display());
    }
    if size.len() > MOST {
        bail!(
            "{} has {} bytes; accepted are at most {MOST}, since somebody takes these readings",
            path.display(),
            size.len()
        );
    }
    fs::read_to_string(path).with_context(|| format!("cannot read {}", path.display()))
}

fn pictures(directory: &Path, fits: &[Fit]) -> Result<()> {
    fs::create_dir_all(directory).with_context(|| format!("cannot make {}", directory.display()))?;
    for fit in fits {
        let name = format!("{}-{}.svg", fit.curve.colour.name(), fit.curve.die.name());
        let path = directory.join(name);
        let mut out = Sink::open(Some(&path))?;
        out.write_all(sweep::svg(fit).as_bytes())
            .with_context(|| format!("cannot write {}", path.display()))?;
        out.commit()?;
    }
    Ok(())
}
