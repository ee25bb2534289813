//! What can be typed.
//!
//! The first paragraph of each comment is the line of `--help`, which fits one screen of 80 by 24; what needs more words
//! has them in a second paragraph, for `plainwatt help COMMAND` and the manual.

#![expect(clippy::doc_markdown, reason = "these comments are the help text, which has no Markdown")]

mod audit;
mod grade;
mod money;
mod vet;

use std::path::PathBuf;

use clap::{ArgAction, Args, Parser, Subcommand, ValueEnum};

pub use audit::{Audit, AuditFormat};
pub use grade::{Catalogue, Grade};
pub use money::{Money, Sort};
pub use vet::Vet;

/// Checks the wattage claimed for an LED grow light
///
/// It compares the claim with what the diodes of the light can draw.
#[derive(Debug, Parser)]
#[command(name = "plainwatt", version, disable_help_flag = true, help_template = FRONT, after_help = EXIT_CODES)]
pub struct Cli {
    /// What to do
    #[command(subcommand)]
    pub command: Command,
    /// When to colour the output: auto, always or never [default: auto]
    ///
    /// 'auto' colours on a terminal, unless NO_COLOR is set.
    #[arg(
        long,
        global = true,
        value_name = "WHEN",
        default_value = "auto",
        hide_default_value = true,
        hide_possible_values = true,
        hide_short_help = true,
        display_order = LAST
    )]
    pub color: When,
    /// Print this; 'plainwatt help COMMAND' has all options and more words
    #[arg(short, long, global = true, action = ArgAction::HelpShort, hide_short_help = true, display_order = LAST)]
    help: Option<bool>,
}

const EXIT_CODES: &str = "\
'plainwatt COMMAND --help' is one screen, 'plainwatt help COMMAND' has it all.
Every command takes --color auto, always or never.
Exit codes: 0 ran; 1 the gate asked for was not met; 2 the call was wrong or it
could not run.

Example:
  plainwatt vet \"1000W LED Grow Light 100x10W, actual power 185W\"";

/// What the program's own `--help` has.
const FRONT: &str = "{about}\n\n{usage-heading} {usage}\n\n{subcommands}{after-help}";
/// What a command's `--help` has: it leaves out the headings that a screen has no room for.
const SCREEN: &str = "{about}: {usage}\n{positionals}\n{options}{after-help}";
/// The same for a command without options of its own.
const ARGUMENT_SCREEN: &str = "{about}: {usage}\n{positionals}{after-help}";
/// The same for a command without arguments either.
const BARE_SCREEN: &str = "{about}: {usage}{after-help}";

/// Where the options stand that every command has.
const LAST: usize = 900;

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
    /// Count a catalogue, list the pages to correct
    Audit(Box<Audit>),
    /// Show the reference table with its sources
    Diodes(Diodes),
    /// Make a reference table from bench readings
    Sweep(Sweep),
    /// Explain a word of a result
    Meaning(Meaning),
    /// Write a completion script for a shell
    Completions(Completions),
    /// Write the manual as a page for man
    #[command(help_template = BARE_SCREEN, after_help = MANUAL_EXAMPLE)]
    Manual,
}

const MANUAL_EXAMPLE: &str = "Example:\n  plainwatt manual > plainwatt.1";

/// How strict to be.
#[derive(Debug, Args)]
pub struct Strictness {
    /// How far the draw may fall short of the claim, as a percentage of it
    #[arg(
        long,
        value_name = "PERCENT",
        default_value = "10",
        allow_hyphen_values = true,
        hide_short_help = true
    )]
    pub tolerance: String,
    /// How sure a verdict has to be, in per cent: above 50, below 100
    #[arg(
        long,
        value_name = "PERCENT",
        default_value = "95",
        allow_hyphen_values = true,
        hide_short_help = true
    )]
    pub confidence: String,
    /// The accuracy of the meter behind a reading [default: "2% + 0.5W", from memory]
    #[arg(long, value_name = "ACCURACY", allow_hyphen_values = true, hide_short_help = true)]
    pub meter: Option<String>,
    /// A reference table of your own, as 'plainwatt sweep' writes it; rows it lacks come from the built-in one
    #[arg(long, value_name = "FILE", hide_short_help = true)]
    pub reference: Option<PathBuf>,
}

/// `diodes`.
#[derive(Debug, Args)]
#[command(help_template = SCREEN, after_help = DIODES_EXAMPLE)]
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
#[command(help_template = SCREEN, after_help = SWEEP_EXAMPLE)]
pub struct Sweep {
    /// A CSV of readings: colour, volts, amps [temperature_c, die]
    pub file: PathBuf,
    /// Write the table that --reference takes
    #[arg(short, long, value_name = "FILE")]
    pub output: Option<PathBuf>,
    /// Draw each curve with its points into a directory
    #[arg(long, value_name = "DIR")]
    pub svg: Option<PathBuf>,
}

const SWEEP_EXAMPLE: &str = "\
Take readings one die at a time, in a short run, with a bench supply in constant
current; keep your eyes off lit dice.

Example:
  plainwatt sweep fixtures/sweeps/red.csv -o own.csv";

/// `meaning`.
#[derive(Debug, Args)]
#[command(help_template = ARGUMENT_SCREEN, after_help = MEANING_EXAMPLE)]
pub struct Meaning {
    /// A verdict, basis, evidence or reason; without one, all are listed
    pub word: Option<String>,
}

const MEANING_EXAMPLE: &str = "Example:\n  plainwatt meaning overstated";

/// `completions`.
#[derive(Debug, Args)]
#[command(help_template = ARGUMENT_SCREEN, after_help = COMPLETIONS_EXAMPLE)]
pub struct Completions {
    /// The shell: bash, zsh or fish
    #[arg(value_enum, hide_possible_values = true)]
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
