//! What can be typed after `audit`.

use std::path::PathBuf;

use clap::builder::{PossibleValuesParser, TypedValueParser};
use clap::{Args, ValueEnum};

use super::{Catalogue, Strictness};
use crate::comparison::Verdict;

/// `audit`.
#[derive(Debug, Args)]
#[command(after_help = AUDIT_EXAMPLE)]
pub struct Audit {
    #[command(flatten)]
    /// The catalogue
    pub catalogue: Catalogue,
    /// The column to count by
    #[arg(long, value_name = "HEADER", default_value = "supplier")]
    pub by: String,
    /// Exit with 1 when a listing has this verdict or a worse one; unreadable rows do not count
    #[arg(long, value_name = "VERDICT", value_parser = verdict())]
    pub stop_at: Option<Verdict>,
    /// Say what has changed since an earlier 'grade --format csv': pages newly wrong, corrected, gone
    #[arg(long, value_name = "OLD.csv")]
    pub since: Option<PathBuf>,
    /// Form of the output
    #[arg(long, value_enum, default_value = "table")]
    pub format: AuditFormat,
    /// Write to a file, which is replaced only when all is written
    #[arg(short, long, value_name = "FILE")]
    pub output: Option<PathBuf>,
    /// Write CSV cells without the guard against spreadsheet formulas
    #[arg(long)]
    pub raw: bool,
    #[command(flatten)]
    /// How strict to be
    pub strictness: Strictness,
}

const AUDIT_EXAMPLE: &str = "\
Pages to correct are those that are overstated or out-of-reach. The fields are those of 'plainwatt grade --help'.

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
    /// One object a page to correct, then one a group
    Json,
}
