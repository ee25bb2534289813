//! What can be typed.

#![expect(clippy::doc_markdown, reason = "these comments are the help text, which has no Markdown")]

mod audit;

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};

pub use audit::{Audit, AuditFormat};

/// Checks the wattage claimed for an LED grow light against what its diodes can draw.
#[derive(Debug, Parser)]
#[command(name = "plainwatt", version, after_help = EXIT_CODES)]
pub struct Cli {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
    /// When to colour the output.
    #[arg(long, global = true, value_name = "WHEN", default_value = "auto", hide_possible_values = true)]
    pub color: When,
}

const EXIT_CODES: &str =
    "Exit codes: 0 ran; 1 the gate asked for was not met; 2 the call was wrong or it could not run.";

/// When to do something that depends on the terminal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum When {
    /// On a terminal, unless NO_COLOR is set.
    Auto,
    /// In any case.
    Always,
    /// In no case.
    Never,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Vet one light
    Vet(Box<Vet>),
    /// Grade a table of many listings
    Grade(Box<Grade>),
    /// Count a catalogue by supplier, and list the pages to correct
    Audit(Box<Audit>),
    /// Show the reference table with its sources
    Diodes(Diodes),
    /// Make a reference table from your own bench readings
    Sweep(Sweep),

    /// Explain a word of a result
    Meaning(Meaning),
    /// Write a script that completes commands in a shell
    Completions(Completions),
    /// Write the manual, as a page for man
    Manual,
}

/// How strict to be.
#[derive(Debug, Args)]
pub struct Strictness {
    /// How far the draw may fall short of the claim, as a percentage of it
    #[arg(long, value_name = "PERCENT", default_value = "10", allow_hyphen_values = true)]
    pub tolerance: String,
    /// How sure a verdict has to be, in per cent: above 50, below 100
    #[arg(long, value_name = "PERCENT", default_value = "95", allow_hyphen_values = true)]
    pub confidence: String,
    /// The accuracy of the meter behind a reading [default: "2% + 0.5W", from memory]
    #[arg(long, value_name = "ACCURACY", allow_hyphen_values = true)]
    pub meter: Option<String>,
    /// A reference table of your own, as 'plainwatt sweep' writes it; rows it lacks come from the built-in one
    #[arg(long, value_name = "FILE")]
    pub reference: Option<PathBuf>,
}

/// `vet`.
#[derive(Debug, Args)]
#[command(after_help = VET_EXAMPLE)]
pub struct Vet {
    /// The listing's title, pasted; flags outrank what is read from it
    pub title: Option<String>,
    /// The wattage under test
    #[arg(long, value_name = "WATTS", allow_hyphen_values = true)]
    pub claim: Option<String>,
    /// The drive class of the diodes: 3W, 0.5W, smd-1W, cob-50W
    #[arg(long)]
    pub class: Option<String>,
    /// The diodes by colour: "60 deep-red + 20 royal-blue", "4 x (12 red + 3 blue)", "60±2 red"
    #[arg(long, value_name = "DIODES", allow_hyphen_values = true)]
    pub tally: Option<String>,
    /// A stated drive current through each diode
    #[arg(long, value_name = "MA", allow_hyphen_values = true)]
    pub drive_ma: Option<String>,
    /// A meter reading at full brightness: 135W, or "120.4V 1.18A pf 0.97"
    #[arg(long, value_name = "READING", allow_hyphen_values = true)]
    pub measured: Option<String>,
    /// A draw that the listing admits: 185W, 110-120W, 185W±5%
    #[arg(long, value_name = "WATTS", allow_hyphen_values = true)]
    pub admits: Option<String>,
    /// The volts and amperes it states: "120V 0.6A"
    #[arg(long, value_name = "SUPPLY", allow_hyphen_values = true)]
    pub supply: Option<String>,
    /// The photon flux it states, umol/s
    #[arg(long, value_name = "FLUX", allow_hyphen_values = true)]
    pub ppf: Option<String>,
    /// The photon efficacy it states, umol/J
    #[arg(long, value_name = "EFFICACY", allow_hyphen_values = true)]
    pub ppe: Option<String>,
    /// The lamp it is said to replace: "600W HPS"
    #[arg(long, value_name = "LAMP", allow_hyphen_values = true)]
    pub replaces: Option<String>,
    /// A circuit, for how many such lights it carries: "120V 15A"
    #[arg(long, value_name = "CIRCUIT", allow_hyphen_values = true)]
    pub circuit: Option<String>,
    /// A power supply of so many watts DC, for how many such diodes it carries: 100W
    #[arg(long, value_name = "WATTS", allow_hyphen_values = true)]
    pub fit_supply: Option<String>,
    #[command(flatten)]
    /// What it costs
    pub money: Money,
    /// Only the answers, on one screen, without the working
    #[arg(long, conflicts_with = "working")]
    pub brief: bool,
    /// Show the uncertainty budget too
    #[arg(long)]
    pub working: bool,
    /// Form of the output
    #[arg(long, value_enum, default_value = "table")]
    pub format: Format,
    #[command(flatten)]
    /// How strict to be
    pub strictness: Strictness,
}

/// What a light costs.
#[derive(Debug, Args)]
pub struct Money {
    /// The price, for the cost of a watt really drawn
    #[arg(long, value_name = "AMOUNT", allow_hyphen_values = true)]
    pub price: Option<String>,
    /// The currency of price and tariff: EUR
    #[arg(long, value_name = "NAME")]
    pub currency: Option<String>,
    /// The price of a kWh, for what it costs to run
    #[arg(long, value_name = "AMOUNT", allow_hyphen_values = true)]
    pub tariff: Option<String>,
    /// Hours a day that it runs
    #[arg(long, value_name = "HOURS", default_value = "12", allow_hyphen_values = true)]
    pub hours: String,
}

const VET_EXAMPLE: &str =
    "Example:\n  plainwatt vet --claim 300 --class 3W --tally \"60 deep-red + 20 royal-blue + 20 white\"";

/// A table of listings, and how to read it.
#[derive(Debug, Args)]
pub struct Catalogue {
    /// A CSV or an Excel workbook (.xlsx), or - for standard input
    pub file: PathBuf,
    /// Take a field from another column: claim_w="Power (W)"
    #[arg(long = "column", value_name = "FIELD=HEADER")]
    pub columns: Vec<String>,
    /// The input's columns, for input without a header row
    #[arg(long, value_name = "NAMES")]
    pub header: Option<String>,
    /// Do not read titles and descriptions
    #[arg(long)]
    pub no_titles: bool,
    /// What separates the fields: a character, or 'tab' [default: found out; a comma with --header]
    #[arg(long, value_name = "CHAR")]
    pub delimiter: Option<String>,
    /// The sheet of a workbook [default: the first that is not hidden]
    #[arg(long, value_name = "NAME")]
    pub sheet: Option<String>,
    /// Threads [default: one a core]
    #[arg(long, value_name = "N")]
    pub threads: Option<usize>,
}

/// `grade`.
#[derive(Debug, Args)]
#[command(after_help = GRADE_EXAMPLE)]
pub struct Grade {
    #[command(flatten)]
    /// The catalogue
    pub catalogue: Catalogue,
    /// Write no header row, and expect none where --header names the columns
    #[arg(long)]
    pub no_header: bool,
    /// Form of the output
    #[arg(long, value_enum, default_value = "table")]
    pub format: Format,
    /// Write to a file, which is replaced only when all is written
    #[arg(short, long, value_name = "FILE")]
    pub output: Option<PathBuf>,
    /// Write the rows that could not be read to a file, with the reason
    #[arg(long, value_name = "FILE")]
    pub rejects: Option<PathBuf>,
    /// Sort the table
    #[arg(long, value_enum)]
    pub sort: Option<Sort>,
    /// Write every CSV column
    #[arg(long)]
    pub wide: bool,
    /// Write CSV cells, rejects included, without the guard against spreadsheet formulas
    #[arg(long)]
    pub raw: bool,
    #[command(flatten)]
    /// How strict to be
    pub strictness: Strictness,
}

const GRADE_EXAMPLE: &str = "\
Fields: listing, supplier, title, description, claim_w, class, tally, diode_count, one a colour (deep_red, \
royal_blue, ...), drive_ma, measured_w, measured_v, measured_a, measured_pf, admits_low_w, admits_high_w, supply_v, \
supply_a, ppf, ppe, replaces_w, units_in_pack, price.

Example:
  plainwatt grade demo-data/listings.csv --sort share";

/// `diodes`.
#[derive(Debug, Args)]
#[command(after_help = DIODES_EXAMPLE)]
pub struct Diodes {
    /// One colour: deep-red, 660nm, white
    pub colour: Option<String>,
    /// One class, and only the dice in it
    #[arg(long)]
    pub class: Option<String>,
    /// Show volts and watts at this current through a package
    #[arg(long, value_name = "MA", allow_hyphen_values = true)]
    pub ma: Option<String>,
    /// A reference table of your own
    #[arg(long, value_name = "FILE")]
    pub reference: Option<PathBuf>,
}

const DIODES_EXAMPLE: &str = "Example:\n  plainwatt diodes deep-red --class 3W --ma 700";

/// `sweep`.
#[derive(Debug, Args)]
#[command(after_help = SWEEP_EXAMPLE)]
pub struct Sweep {
    /// A CSV of readings: colour, volts, amps and, if you like, temperature_c and die
    pub file: PathBuf,
    /// Write the table that --reference takes
    #[arg(short, long, value_name = "FILE")]
    pub output: Option<PathBuf>,
    /// Draw each curve with its points into a directory
    #[arg(long, value_name = "DIR")]
    pub svg: Option<PathBuf>,
}

const SWEEP_EXAMPLE: &str = "\
Take readings one die at a time, in a short run, with a bench supply in constant current; keep your eyes off lit dice.

Example:
  plainwatt sweep fixtures/sweeps/red.csv -o own.csv";

/// `meaning`.
#[derive(Debug, Args)]
#[command(after_help = MEANING_EXAMPLE)]
pub struct Meaning {
    /// A verdict, basis, evidence or reason; without one, all are listed
    pub word: Option<String>,
}

const MEANING_EXAMPLE: &str = "Example:\n  plainwatt meaning overstated";

/// `completions`.
#[derive(Debug, Args)]
#[command(after_help = COMPLETIONS_EXAMPLE)]
pub struct Completions {
    /// The shell
    #[arg(value_enum)]
    pub shell: Shell,
}

const COMPLETIONS_EXAMPLE: &str = "Example:\n  source <(plainwatt completions bash)";

/// Shells that a script can be written for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Shell {
    /// Bash
    Bash,
    /// Z shell
    Zsh,
    /// Fish
    Fish,
}

/// Forms of output.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// For a terminal
    Table,
    /// One object a listing
    Json,
    /// One row a listing
    Csv,
    /// For a page
    Markdown,
}

/// What to sort by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Sort {
    /// Draw over claim, the lowest first
    Share,
    /// Price over draw, the cheapest first
    PricePerWatt,
}
