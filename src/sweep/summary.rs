//! What the fits came to, as text of at most 80 columns.

use std::fmt::Write;

use super::fit::{Fit, Origin};
use super::row::BIN_HALF_WIDTH;
use crate::reference::Die;

/// Widest line, columns.
const WIDTH: usize = 80;

/// Most decimals that a bench reading can fill with meaning.
const MOST_DECIMALS: usize = 4;

const HEADER: [&str; 6] = ["die", "used", "V0, V", "n", "Rs, ohm", "rms, mV"];

/// A table of the fits, each followed by what was done and its warnings, and at the end what the rows are good for.
///
/// `-` is not known. A parameter without `±` has no uncertainty that the readings show.
#[must_use]
pub fn summary(fits: &[Fit]) -> String {
    let mut text = line(&HEADER.map(str::to_owned));
    for fit in fits {
        let used = if fit.left_out.is_empty() {
            fit.used.len().to_string()
        } else {
            format!("{} of {}", fit.used.len(), fit.curve.points.len())
        };
        text += &line(&[
            die(fit),
            used,
            parameter(fit.v0.value.0, fit.v0.u.map(|u| u.0), fit.v0.origin),
            parameter(fit.ideality.value, fit.ideality.u, fit.ideality.origin),
            parameter(fit.rs.value.0, fit.rs.u.map(|u| u.0), fit.rs.origin),
            fit.rms.map_or_else(|| "-".to_owned(), |rms| format!("{:.1}", rms.0 * 1000.0)),
        ]);
        wrap(&mut text, "  ", "    ", &done(fit));
        for warning in &fit.warnings {
            wrap(&mut text, "  warning: ", "    ", &warning.to_string());
        }
    }
    let scope = format!(
        "V0 is at 25 \u{b0}C and the test current of the row. The spread takes in a bin of \u{b1}{} V, which one sample cannot \
         show. The rows stand for diodes of the batch that you swept; grade the lights of other makers with the built-in \
         table.",
        BIN_HALF_WIDTH.0
    );
    text.push('\n');
    wrap(&mut text, "", "", &scope);
    text
}

/// Colour, with the kind of die where it is not the usual one.
fn die(fit: &Fit) -> String {
    match fit.curve.die {
        Die::Power => fit.curve.colour.name().to_owned(),
        other => format!("{} {}", other.name(), fit.curve.colour.name()),
    }
}

fn line(cells: &[String; 6]) -> String {
    let [die, used, v0, n, rs, rms] = cells;
    let text = format!("{die:<16} {used:<7} {v0:<16} {n:<14} {rs:<15} {rms:>7}");
    let text = text.trim_end();
    if text.chars().count() <= WIDTH {
        return text.to_owned() + "\n";
    }
    // A fit that hardly anything holds has uncertainties too wide for their columns.
    let mut wrapped = String::new();
    wrap(&mut wrapped, "", "    ", &cells.join("  "));
    wrapped
}

/// `2.031 ± 0.012`, the uncertainty with two significant digits (GUM 7.2.6); `1.72 table`; `1 bound`.
fn parameter(value: f64, u: Option<f64>, origin: Origin) -> String {
    match (origin, u) {
        (Origin::Table, _) => format!("{value:.3} table"),
        (Origin::Bound, _) => format!("{value} bound"),
        (Origin::Fitted, None) => format!("{value:.3}"),
        (Origin::Fitted, Some(u)) => {
            let decimals = (0..MOST_DECIMALS).find(|&d| u * power_of_ten(d) >= 9.5).unwrap_or(MOST_DECIMALS);
            let shown = format!("{u:.decimals$}");
            // Rounded away is not zero.
            if shown.chars().any(|c| ('1'..='9').contains(&c)) {
                format!("{value:.decimals$} \u{b1} {shown}")
            } else {
                format!("{value:.decimals$} \u{b1} <{:.decimals$}", 1.0 / power_of_ten(decimals))
            }
        }
    }
}

fn power_of_ten(exponent: usize) -> f64 {
    10.0_f64.powi(i32::try_from(exponent).unwrap_or(i32::MAX))
}

fn done(fit: &Fit) -> String {
    let bound = |name, parameter: Origin| if parameter == Origin::Bound { name } else { "" };
    let what = match (fit.ideality.origin, fit.rs.origin) {
        (Origin::Table, _) => {
            let of = if fit.used.len() == 1 { "the reading" } else { "the mean of the readings" };
            format!("V0 moved to {of}, n and Rs kept")
        }
        (n, rs) => {
            let at: Vec<&str> = [bound("n held at 1", n), bound("Rs held at 0", rs)]
                .into_iter()
                .filter(|text| !text.is_empty())
                .collect();
            let free: Vec<&str> = [("V0", fit.v0.origin), ("n", n), ("Rs", rs)]
                .into_iter()
                .filter(|(_, origin)| *origin == Origin::Fitted)
                .map(|(name, _)| name)
                .collect();
            let tail = if at.is_empty() { String::new() } else { format!(", {}", at.join(", ")) };
            format!("{} fitted by least squares{tail}", listed(&free))
        }
    };
    format!("{what}; spread of the row {:.3} V", fit.row.u_vf.0)
}

/// `V0, n and Rs`.
fn listed(names: &[&str]) -> String {
    match names {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// Appends `text` behind `first`, broken at spaces so that no line is wider than [`WIDTH`]; later lines start with `next`.
fn wrap(out: &mut String, first: &str, next: &str, text: &str) {
    let mut current = first.to_owned();
    let mut bare = true;
    for word in text.split_whitespace() {
        if !bare && current.chars().count() + 1 + word.chars().count() > WIDTH {
            let _ = writeln!(out, "{current}");
            next.clone_into(&mut current);
            bare = true;
        }
        if !bare {
            current.push(' ');
        }
        current.push_str(word);
        bare = false;
    }
    let _ = writeln!(out, "{current}");
}
