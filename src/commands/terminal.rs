//! What the terminal is like.

use std::io::{IsTerminal as _, stdout};

use crate::cli::When;
use crate::report::style::Style;

/// Columns where the output is not a terminal.
const WIDTH: u16 = 80;

/// Fewer columns than this are not laid out for; more than the other are hard to read across.
const LEAST: u16 = 40;
const MOST: u16 = 160;

/// The width to lay out for.
pub(super) fn width() -> u16 {
    terminal_size::terminal_size().map_or(WIDTH, |(width, _)| width.0.clamp(LEAST, MOST))
}

/// Whether standard output takes escape sequences: as asked, else on a terminal unless `NO_COLOR` is set to anything.
pub(super) fn style(when: When) -> Style {
    let coloured = match when {
        When::Always => true,
        When::Never => false,
        When::Auto => {
            stdout().is_terminal()
                && std::env::var_os("NO_COLOR").is_none_or(|v| v.is_empty())
                && std::env::var_os("TERM").is_none_or(|t| t != "dumb")
        }
    };
    Style { coloured }
}
