//! What can be typed after `audit`.

use std::path::PathBuf;

use clap::builder::{PossibleValuesParser, TypedValueParser};
use clap::{Args, ValueEnum};

use super::{Catalogue, SCREEN, Strictness};
use crate::comparison::Verdict;

/// `audit`.
#[derive(Debug, Args)]
#[command(help_template = SCREEN, after_help = SHORT, after_long_help = LONG)]
pub struct Audit {
    #[command(flatten)]
    /// The catalogue
    pub catalogue: Catalogue,
    /// The column to count by
    #[arg(long, value_name = "HEADER", default_value = "supplier")]
    pub by: String,
    /// Exit with 1 at this verdict or worse: overstated
    ///
    /// Unreadable rows do not count.
    #[arg(long, value_name = "VERDICT", value_parser = verdict(), hide_possible_values = true)]
    pub stop_at: Option<Verdict>,
    /// What changed since an earlier 'grade' CSV
    ///
    /// That is what 'grade --format csv' wrote. Pages newly wrong, corrected and gone.
    #[arg(long, value_name = "OLD.csv")]
    pub since: Option<PathBuf>,
    /// table, csv or json [default: table]
    #[arg(long, value_enum, default_value = "table", hide_default_value = true, hide_possible_values = true)]
    pub format: AuditFormat,
    /// Write to a file, replaced when all is written
    #[arg(short, long, value_name = "FILE")]
    pub output: Option<PathBuf>,
    /// Write the rows that could not be read, and why
    #[arg(long, value_name = "FILE")]
    pub rejects: Option<PathBuf>,
    /// Write CSV without the guard against formulas
    #[arg(long)]
    pub raw: bool,
    #[command(flatten)]
    /// How strict to be
    pub strictness: Strictness,
}

const SHORT: &str = "\
Pages to correct are those that are overstated or out-of-reach.
The fields are those of 'plainwatt help grade'.
Also --tolerance, --confidence, --meter, --reference: 'plainwatt help audit'.
Example:
  plainwatt audit demo-data/listings.csv --stop-at overstated";

const LONG: &str = "\
Pages to correct are those that are overstated or out-of-reach. The fields are those of 'plainwatt help grade'.

Example:
  plainwatt audit demo-data/listings.csv --stop-at overstated";

/// Takes the word of a verdict.
fn verdict() -> impl TypedValueParser<Value = Verdict> {
    PossibleValuesParser::new(Verdict::ALL.map(Verdict::word)).map(|word| {
        // Only such words come here.
        Verdict::ALL.into_iter().find(|v| v.word() == word).unwrap_or(Verdict::OutOfReach)
    })
}

/// Forms of an audit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum AuditFormat {
    /// For a terminal: the groups, and the worst pages
    Table,
    /// The pages to correct, all of them
    Csv,
    /// One object a page to correct, then one a group, then one for each of the first 100 unreadable rows
    Json,
}
