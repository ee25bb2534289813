//! One thin file a command: the only rooms that see intake, reading, stream and report together.

mod apart;
mod assessing;
mod audit;
mod diodes;
mod flags;
mod grade;
mod grading;
mod input;
mod manual;
mod meaning;
mod output;
mod paging;
mod rejects;
mod setting_up;
mod sheet;
mod since;
mod sweep;
mod terminal;
mod vet;

use std::ffi::OsString;
use std::io::{self, Write as _};
use std::process::ExitCode;

use clap::Parser as _;
use clap::error::ErrorKind;

use crate::cli::{Cli, Command};

/// How a run ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ended {
    /// It ran.
    Ran,
    /// A gate that was asked for was not met.
    GateNotMet,
}

/// Runs the command line and says how it ended: 0 ran, 1 a gate was not met, 2 wrong usage or could not run.
///
/// A pipe that the reader closes is a normal end.
pub fn run(arguments: impl IntoIterator<Item = OsString>) -> ExitCode {
    let arguments: Vec<OsString> = arguments.into_iter().collect();
    let cli = match Cli::try_parse_from(&arguments) {
        Ok(cli) => cli,
        Err(error) => {
            // Help and version are asked for, everything else is a mistake; clap knows the stream and the code of each.
            let code = u8::try_from(error.exit_code()).unwrap_or(2);
            let _ = error.print();
            if matches!(error.kind(), ErrorKind::UnknownArgument)
                && arguments.get(1).is_some_and(|command| command == "vet")
                && arguments.get(2).is_some_and(|first| !first.to_string_lossy().starts_with('-'))
            {
                output::say("\nput the title in quotes: plainwatt vet \"300W LED Grow Light 100x3W\"");
            }
            return ExitCode::from(code);
        }
    };
    let ended = match cli.command {
        Command::Vet(vet) => vet::run(&vet, cli.color),
        Command::Grade(grade) => grade::run(&grade, cli.color),
        Command::Audit(audit) => audit::run(&audit, cli.color),
        Command::Diodes(diodes) => diodes::run(&diodes),
        Command::Sweep(sweep) => sweep::run(&sweep),

        Command::Meaning(meaning) => meaning::run(&meaning, cli.color),
        Command::Completions(asked) => manual::completions(&asked),
        Command::Manual => manual::run(),
    };
    match ended {
        Ok(Ended::Ran) => ExitCode::SUCCESS,
        Ok(Ended::GateNotMet) => ExitCode::from(1),
        Err(error) if broken_pipe(&error) => ExitCode::SUCCESS,
        Err(error) => {
            output::say(&format!("plainwatt: {error:#}"));
            ExitCode::from(2)
        }
    }
}

fn broken_pipe(error: &anyhow::Error) -> bool {
    error
        .chain()
        .filter_map(|cause| cause.downcast_ref::<io::Error>())
        .any(|cause| cause.kind() == io::ErrorKind::BrokenPipe)
}

/// Writes text to standard output.
fn print(text: &str) -> anyhow::Result<()> {
    let mut out = io::stdout().lock();
    out.write_all(text.as_bytes())?;
    out.flush()?;
    Ok(())
}
