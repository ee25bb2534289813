//! What can be typed after `grade`.

use std::path::PathBuf;

use clap::Args;

use super::{Format, Money, SCREEN, Sort, Strictness};

/// A table of listings, and how to read it.
#[derive(Debug, Args)]
pub struct Catalogue {
    /// A CSV or .xlsx file, or - for standard input
    pub file: PathBuf,
    /// Take a field elsewhere: claim_w="Power (W)"
    #[arg(long = "column", value_name = "FIELD=HEADER")]
    pub columns: Vec<String>,
    /// The input's columns, where it has no header row
    #[arg(long, value_name = "NAMES")]
    pub header: Option<String>,
    /// Do not read titles and descriptions
    #[arg(long)]
    pub no_titles: bool,
    /// What separates the fields: a character, or 'tab'
    ///
    /// Found out where not given; a comma with --header.
    #[arg(long, value_name = "CHAR")]
    pub delimiter: Option<String>,
    /// The sheet of a workbook [default: the first]
    ///
    /// Sheets that are hidden are read only where they are named.
    #[arg(long, value_name = "NAME")]
    pub sheet: Option<String>,
    /// Threads [default: one a core]
    #[arg(long, value_name = "N")]
    pub threads: Option<usize>,
}

/// `grade`.
#[derive(Debug, Args)]
#[command(help_template = SCREEN, after_help = SHORT, after_long_help = LONG)]
pub struct Grade {
    #[command(flatten)]
    /// The catalogue
    pub catalogue: Catalogue,
    /// Write no header row, nor expect one with --header
    #[arg(long)]
    pub no_header: bool,
    /// table, json, csv or markdown [default: table]
    #[arg(long, value_enum, default_value = "table", hide_default_value = true, hide_possible_values = true)]
    pub format: Format,
    /// Write to a file, replaced when all is written
    #[arg(short, long, value_name = "FILE")]
    pub output: Option<PathBuf>,
    /// Write the rows that could not be read, and why
    #[arg(long, value_name = "FILE")]
    pub rejects: Option<PathBuf>,
    /// share, price-per-watt, price-per-flux, year-cost
    ///
    /// The lowest first. Also day-cost and month-cost; the three running costs need --tariff.
    #[arg(long, value_enum, value_name = "BY", hide_possible_values = true)]
    pub sort: Option<Sort>,
    #[command(flatten)]
    /// What they cost to run
    pub money: Money,
    /// Write every CSV column
    #[arg(long)]
    pub wide: bool,
    /// Write CSV without the guard against formulas
    ///
    /// Cells that a spreadsheet would take for a formula are written as they are, in the rejects too.
    #[arg(long)]
    pub raw: bool,
    #[command(flatten)]
    /// How strict to be
    pub strictness: Strictness,
}

const SHORT: &str = "\
Fields: listing, supplier, title, description, claim_w, class, tally, price, ...
Also --tolerance, --confidence, --meter, --reference: 'plainwatt help grade'.
Example:
  plainwatt grade demo-data/listings.csv --sort share";

const LONG: &str = "\
Fields: listing, supplier, title, description, claim_w, class, tally, diode_count, one a colour (deep_red, \
royal_blue, ...), drive_ma, measured_w, measured_v, measured_a, measured_pf, admits_low_w, admits_high_w, supply_v, \
supply_a, ppf, ppe, replaces_w, units_in_pack, price.

Example:
  plainwatt grade demo-data/listings.csv --sort share";
