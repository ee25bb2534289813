//! The verdict table of many listings, for a terminal.

use comfy_table::{Cell, CellAlignment, ColumnConstraint, ContentArrangement, Table, Width};

use super::sanitise::terminal;
use super::style::{RULED, Style};
use super::worth::{Measure, amount};
use super::{Light, UNREADABLE, Unreadable};
use crate::comparison::{Basis, Verdict};
use crate::units::Rounded;

/// One line of the table, with what it may be sorted by; owned, since a table has to hold all its lines to be laid out.
#[derive(Debug, Clone)]
pub struct Line {
    name: String,
    supplier: String,
    claim: String,
    draws: String,
    /// Draw over claim.
    pub share: Option<f64>,
    verdict: Option<Verdict>,
    rests_on: String,
    fault: Option<String>,
    /// What it is sorted by, where no other column has it: the head and the cell.
    by: Option<(String, String)>,
}

impl Line {
    /// The line of a light.
    #[must_use]
    pub fn light(light: Light<'_>) -> Self {
        let (listing, assessment) = (light.listing, light.assessment);
        let name = listing.name.as_deref().or(listing.title.as_deref()).unwrap_or("");
        let draws = match (assessment.measured, &assessment.counted.draw) {
            (Some(measured), _) => Rounded(measured.value.0).to_string(),
            (None, Some(draw)) => {
                let (low, high) = draw.full.wall_interval();
                format!("{} to {}", Rounded(low.0), Rounded(high.0))
            }
            (None, None) => String::new(),
        };
        let basis = assessment.basis.map(Basis::word).filter(|b| *b != "unexplained");
        let evidence = assessment.evidence.word();
        Self {
            name: shortened(name),
            supplier: shortened(listing.supplier.as_deref().unwrap_or("")),
            claim: listing.claim.map(|w| Rounded(w.0).to_string()).unwrap_or_default(),
            draws,
            share: assessment.share,
            verdict: Some(assessment.verdict),
            rests_on: basis.map_or_else(|| evidence.to_owned(), |basis| format!("{evidence}, {basis}")),
            fault: None,
            by: None,
        }
    }

    /// The same with a column of its own for what it is sorted by.
    #[must_use]
    pub fn with(mut self, measure: Measure, currency: &str, value: Option<f64>) -> Self {
        let currency = terminal(currency);
        let head = measure.head();
        let head = if currency.is_empty() { head.to_owned() } else { format!("{head}, {currency}") };
        self.by = Some((head, value.map(amount).unwrap_or_default()));
        self
    }

    /// The line of a row that could not be read.
    #[must_use]
    pub fn unreadable(row: Unreadable<'_>) -> Self {
        let fault = row.fault;
        let place = fault
            .cell
            .as_deref()
            .map(str::to_owned)
            .or_else(|| fault.line.map(|line| format!("line {line}")));
        let place = match (place, &fault.column) {
            (Some(place), Some(column)) => format!("{place}, {column}: "),
            (Some(place), None) => format!("{place}: "),
            (None, Some(column)) => format!("{column}: "),
            (None, None) => String::new(),
        };
        let found = format!("{place}found {}; accepted: {}", fault.found, fault.accepted);
        Self {
            name: shortened(row.name.unwrap_or("")),
            supplier: shortened(row.supplier.unwrap_or("")),
            claim: String::new(),
            draws: String::new(),
            share: None,
            verdict: None,
            rests_on: String::new(),
            fault: Some(terminal(&found).into_owned()),
            by: None,
        }
    }
}

/// A name as a cell can hold it: safe for a terminal and cut to what a person needs to recognise it.
fn shortened(text: &str) -> String {
    const MOST: usize = 60;
    let safe = terminal(text);
    if safe.chars().count() <= MOST {
        return safe.into_owned();
    }
    safe.chars().take(MOST - 3).chain("...".chars()).collect()
}

/// Stands for the first letter of a word that is painted later: while cells are laid out an escape sequence would be taken
/// for text, and the word be broken in the middle. One column wide, for private use.
const MARK: char = '\u{e000}';

fn marked(word: &str) -> String {
    word.chars().enumerate().map(|(place, c)| if place == 0 { MARK } else { c }).collect()
}

fn painted(text: String, style: Style) -> String {
    if !style.coloured {
        return text;
    }
    let text = text.replace(&marked(UNREADABLE), &style.strong(UNREADABLE));
    Verdict::ALL.iter().fold(text, |text, v| text.replace(&marked(v.word()), &style.verdict(*v)))
}

/// The table, `width` columns wide at most, and below it what each unreadable row suffers from.
#[must_use]
pub fn table(lines: &[Line], width: u16, style: Style) -> String {
    let mut table = Table::new();
    table.load_style(RULED).set_content_arrangement(ContentArrangement::Dynamic).set_width(width);
    // What is sorted by takes the place of what the verdict rests on: there is no room for both.
    let head = lines.iter().find_map(|line| line.by.as_ref()).map(|(head, _)| head.as_str());
    let last = head.unwrap_or("rests on");
    table.set_header(["listing", "supplier", "claim W", "draws W", "share", "verdict", last]);
    for index in [2, 3, 4] {
        if let Some(column) = table.column_mut(index) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    // A verdict broken over two lines is hard to scan.
    for (index, least) in [(4, 7), (5, 14)] {
        if let Some(column) = table.column_mut(index) {
            column.set_constraint(ColumnConstraint::LowerBoundary(Width::Fixed(least)));
        }
    }
    for line in lines {
        let word = line.verdict.map_or(UNREADABLE, Verdict::word);
        let verdict = if style.coloured { marked(word) } else { word.to_owned() };
        let share = line.share.map(|s| format!("{:.0} %", s * 100.0)).unwrap_or_default();
        let mut cells = vec![
            Cell::new(&line.name),
            Cell::new(&line.supplier),
            Cell::new(&line.claim),
            Cell::new(&line.draws),
            Cell::new(share),
            Cell::new(verdict),
        ];
        cells.push(match (&line.by, head) {
            (Some((_, value)), _) => Cell::new(value).set_alignment(CellAlignment::Right),
            (None, Some(_)) => Cell::new(""),
            (None, None) => Cell::new(&line.rests_on),
        });
        table.add_row(cells);
    }
    let mut text = painted(table.trim_fmt(), style);
    text.push('\n');
    for line in lines {
        if let Some(fault) = &line.fault {
            let what = format!("{UNREADABLE}: {}: {fault}", line.name);
            text.push_str(&textwrap::fill(
                &what,
                textwrap::Options::new(width.into()).subsequent_indent("  "),
            ));
            text.push('\n');
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(verdict: Option<Verdict>) -> Line {
        Line {
            name: "a listing with a long name of its own".to_owned(),
            supplier: "somebody".to_owned(),
            claim: "300".to_owned(),
            draws: "177 to 224".to_owned(),
            share: Some(0.67),
            by: None,
            verdict,
            rests_on: "counted, class-sum".to_owned(),
            fault: None,
        }
    }

    #[test]
    fn colour_changes_nothing_but_the_colour() {
        let mut lines: Vec<Line> = Verdict::ALL.into_iter().map(|v| line(Some(v))).collect();
        lines.push(line(None));
        for width in [40, 80, 160] {
            let plain = table(&lines, width, Style::PLAIN);
            let mut coloured = table(&lines, width, Style { coloured: true });
            assert_ne!(coloured, plain);
            while let Some(start) = coloured.find('\u{1b}') {
                let end = start + coloured[start..].find('m').unwrap();
                coloured.replace_range(start..=end, "");
            }
            assert_eq!(coloured, plain);
        }
    }
}
