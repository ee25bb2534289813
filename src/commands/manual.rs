//! `manual` and `completions`: what is generated from the definition of the command line.

use std::fmt::Write as _;
use std::io;

use anyhow::Result;
use clap::CommandFactory as _;
use clap_complete::aot::{Bash, Fish, Zsh, generate};
use clap_mangen::Man;

use super::{Ended, print};
use crate::cli::{Cli, Completions, Shell};

/// Writes the completion script of a shell.
pub(super) fn completions(asked: &Completions) -> Result<Ended> {
    let mut command = Cli::command();
    let mut script = Vec::new();
    match asked.shell {
        Shell::Bash => generate(Bash, &mut command, "plainwatt", &mut script),
        Shell::Zsh => generate(Zsh, &mut command, "plainwatt", &mut script),
        Shell::Fish => generate(Fish, &mut command, "plainwatt", &mut script),
    }
    print(&String::from_utf8_lossy(&script))?;
    Ok(Ended::Ran)
}

/// Writes the manual: one page with a section for every command.
pub(super) fn run() -> Result<Ended> {
    print(&page()?)?;
    Ok(Ended::Ran)
}

fn page() -> Result<String> {
    let mut command = Cli::command();
    command.build();
    let man = Man::new(command.clone());
    let mut text = written(|out| {
        man.render_title(out)?;
        man.render_name_section(out)?;
        man.render_synopsis_section(out)?;
        man.render_description_section(out)?;
        man.render_options_section(out)
    })?;
    for part in command.get_subcommands().filter(|part| part.get_name() != "help") {
        let _ = writeln!(text, ".SH \"PLAINWATT {}\"", part.get_name().to_uppercase());
        let man = Man::new(part.clone());
        let sections = written(|out| {
            man.render_description_section(out)?;
            man.render_synopsis_section(out)?;
            man.render_options_section(out)?;
            // The example of each command stands after its options.
            if part.get_after_help().is_some() { man.render_extra_section(out) } else { Ok(()) }
        })?;
        // A section of the command's own page is a part of its section here; its description needs no heading, and the
        // apostrophe that every section defines is defined once already.
        let again = |line: &str| line.starts_with(".ie ") || line.starts_with(".el ");
        for line in sections.lines().filter(|line| *line != ".SH DESCRIPTION" && !again(line)) {
            let _ = match line.strip_prefix(".SH ") {
                Some(heading) => writeln!(text, ".SS {heading}"),
                None => writeln!(text, "{line}"),
            };
        }
    }
    text.push_str(&written(|out| man.render_extra_section(out))?);
    Ok(text)
}

fn written(render: impl FnOnce(&mut Vec<u8>) -> io::Result<()>) -> Result<String> {
    let mut bytes = Vec::new();
    render(&mut bytes)?;
    // What a command says after its options has no heading of its own there.
    Ok(String::from_utf8(bytes)?.replace(".SH EXTRA\n", ".SH NOTES\n"))
}
