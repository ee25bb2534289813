//! `diodes`: the reference table with its sources.

use std::fmt::Write as _;

use anyhow::{Result, anyhow};

use super::{Ended, flags, print, setting_up, terminal};
use crate::cli::Diodes;
use crate::counting;
use crate::facts::Colour;
use crate::reference::{ClassRow, DiodeRow};
use crate::report::{diodes, sanitise};

pub(super) fn run(asked: &Diodes) -> Result<Ended> {
    let model = setting_up::model(asked.reference.as_deref())?;
    let table = model.table();
    let colour = asked.colour.as_deref().map(colour).transpose()?;
    let class = match &asked.class {
        None => None,
        Some(text) => {
            let stated = flags::class(text)?;
            let id = table.find(&stated).ok_or_else(|| {
                let names: Vec<&str> = table.classes().iter().map(|c| c.name.as_str()).collect();
                anyhow!("--class: no row for {stated}; the classes are: {}", names.join(", "))
            })?;
            Some(table.class(id))
        }
    };
    let rows: Vec<&DiodeRow> = table
        .diodes()
        .iter()
        .filter(|row| colour.is_none_or(|c| row.colour == c) && class.is_none_or(|c| row.die == c.die))
        .collect();
    let width = terminal::width();
    let mut text = format!("reference table: {}\n\n", sanitise::terminal(table.name()));
    if colour.is_none() || class.is_some() {
        let all: Vec<&ClassRow> = match class {
            Some(class) => vec![class],
            None => table.classes().iter().collect(),
        };
        text.push_str(&diodes::classes(&all, width));
        text.push('\n');
    }
    text.push_str(&diodes::rows(&rows, width.into()));
    let current = match (&asked.ma, class) {
        (Some(ma), _) => Some(flags::drive("ma", ma)?),
        (None, Some(class)) => Some(class.die_current * f64::from(class.parallel)),
        (None, None) => None,
    };
    if let Some(current) = current {
        // Without a class the high-power die is meant: it is what a current in milliamperes is usually asked of.
        let class = match class {
            Some(class) => class,
            None => table
                .classes()
                .iter()
                .find(|c| rows.iter().any(|r| r.die == c.die) && c.die_current >= current && c.dice() <= 1.0)
                .or_else(|| table.classes().iter().rfind(|c| c.dice() <= 1.0))
                .ok_or_else(|| anyhow!("the reference table has no class of one die"))?,
        };
        let _ = writeln!(
            text,
            "\none {} diode at {current}, on a bench (25 C) and in a running light (75 C):",
            class.name
        );
        text.push_str(&diodes::at_current(table, class, &rows, current, width));
    }
    print(&text)?;
    Ok(Ended::Ran)
}

fn colour(word: &str) -> Result<Colour> {
    counting::colour(word).ok_or_else(|| {
        let nearest = counting::nearest_colour(word).map(|n| format!("; did you mean '{n}'?")).unwrap_or_default();
        let names: Vec<&str> = Colour::ALL.iter().map(|c| c.name()).collect();
        anyhow!(
            "found '{}', accepted: a wavelength such as 660nm, a colour temperature such as 3000K, or one of {}{nearest}",
            sanitise::terminal(word),
            names.join(", ")
        )
    })
}
