//! `meaning`: what a word of a result means and rests on.

use anyhow::{Result, anyhow};

use super::{Ended, print, terminal};
use crate::cli::{Meaning, When};
use crate::comparison::meaning::{GROUPS, find, nearest};
use crate::report::{meaning, sanitise};

pub(super) fn run(asked: &Meaning, colour: When) -> Result<Ended> {
    let (width, style) = (terminal::width().into(), terminal::style(colour));
    let text = match &asked.word {
        None => meaning::list(&GROUPS, width, style),
        Some(word) => meaning::entry(find(word).ok_or_else(|| unknown(word))?, width, style),
    };
    print(&text)?;
    Ok(Ended::Ran)
}

fn unknown(word: &str) -> anyhow::Error {
    let nearest = nearest(word).map(|n| format!("; did you mean '{n}'?")).unwrap_or_default();
    anyhow!(
        "found '{}', accepted: a verdict, basis, evidence or reason, such as overstated{nearest}; 'plainwatt meaning' \
         lists them all",
        sanitise::terminal(word)
    )
}
