//! What the terminal is like.

use std::ffi::OsStr;
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

/// Whether standard output takes escape sequences.
pub(super) fn style(when: When) -> Style {
    let variable = |name| std::env::var_os(name);
    let coloured =
        coloured(when, stdout().is_terminal(), variable("NO_COLOR").as_deref(), variable("TERM").as_deref());
    Style { coloured }
}

/// As asked, else on a terminal that is not dumb, unless `NO_COLOR` is set to anything.
fn coloured(when: When, terminal: bool, no_color: Option<&OsStr>, term: Option<&OsStr>) -> bool {
    match when {
        When::Always => true,
        When::Never => false,
        When::Auto => {
            terminal && no_color.is_none_or(OsStr::is_empty) && term.is_none_or(|term| term != "dumb")
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn colour_is_for_terminals_that_want_it_and_for_whoever_asks() {
        let set = |text: &'static str| Some(OsStr::new(text));
        for (when, terminal, no_color, term, expected) in [
            (When::Auto, true, None, set("xterm"), true),
            (When::Auto, true, None, None, true),
            (When::Auto, true, set(""), set("xterm"), true),
            (When::Auto, true, set("1"), set("xterm"), false),
            (When::Auto, true, set("0"), set("xterm"), false),
            (When::Auto, true, None, set("dumb"), false),
            (When::Auto, false, None, set("xterm"), false),
            (When::Always, false, set("1"), set("dumb"), true),
            (When::Never, true, None, set("xterm"), false),
        ] {
            assert_eq!(
                coloured(when, terminal, no_color, term),
                expected,
                "{when:?} {terminal} {no_color:?}"
            );
        }
    }
}
