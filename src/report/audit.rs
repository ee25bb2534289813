//! A catalogue by supplier, and the pages to correct: a table for a person, CSV for whoever edits the pages, JSON.

use std::fmt::Write as _;

use comfy_table::{Cell, CellAlignment, ContentArrangement, Table};
use serde_json::{Map, Value, json};

use super::sanitise::{spreadsheet, terminal};
use super::style::{RULED, Style};
use super::{Light, Run, UNREADABLE};
use crate::audit::{Audit, EXACT, Group, HALF_STEP, Page};
use crate::comparison::{Reason, Verdict, honest_label, sentence};
use crate::units::Rounded;

/// The most groups of a table, which has to be held whole to be laid out.
const MOST_LINES: usize = 1_000;

/// The most characters of a name that are kept.
const MOST_NAME: usize = 120;

/// A name as an audit keeps it: cut after 120 characters, so that memory is bounded.
#[must_use]
pub fn kept(name: &str) -> &str {
    name.char_indices().nth(MOST_NAME).map_or(name, |(end, _)| &name[..end])
}

/// What a page is to say instead, with what it says now.
#[must_use]
pub fn page(run: Run<'_>, light: Light<'_>, group: &str) -> Page {
    Page {
        listing: kept(name(light)).to_owned(),
        group: group.to_owned(),
        claim: light.listing.claim,
        share: light.assessment.share,
        verdict: light.assessment.verdict,
        label: label(run, light),
    }
}

fn name(light: Light<'_>) -> &str {
    light.listing.name.as_deref().or(light.listing.title.as_deref()).unwrap_or("")
}

fn label(run: Run<'_>, light: Light<'_>) -> Option<String> {
    let lower_bound = light.listing.tally.as_ref().is_some_and(|t| t.lower_bound);
    honest_label(light.assessment, run.model, lower_bound)
}

/// How rows of CSV are written.
#[derive(Debug, Clone, Copy)]
pub struct Csv {
    /// Without the guard against spreadsheet formulas.
    pub raw: bool,
}

impl Csv {
    /// The header row; `by` heads the column of the group.
    #[must_use]
    pub fn header(self, by: &str) -> Vec<u8> {
        let mut out = Vec::new();
        self.row(
            &mut out,
            ["listing", by, "claim_w", "honest_label", "verdict", "evidence", "reasons", "why"],
        );
        out
    }

    /// Appends the row of a page to correct.
    pub fn page(self, out: &mut Vec<u8>, run: Run<'_>, light: Light<'_>, group: &str) {
        let mut claim = Vec::new();
        if let Some(watts) = light.listing.claim {
            super::number::six_digits(&mut claim, watts.0);
        }
        let codes: Vec<_> = light.assessment.reasons.iter().map(Reason::code).collect();
        let label = label(run, light).unwrap_or_default();
        let verdict = light.assessment.verdict.word();
        let evidence = light.assessment.evidence.word();
        let claim = String::from_utf8_lossy(&claim);
        let why = sentence(light.listing, light.assessment);
        self.row(out, [name(light), group, &claim, &label, verdict, evidence, &codes.join(" "), &why]);
    }

    fn row(self, out: &mut Vec<u8>, cells: [&str; 8]) {
        let mut writer = ::csv::Writer::from_writer(out);
        let cells = cells.map(|cell| if self.raw { cell.into() } else { spreadsheet(cell) });
        // Into memory: this cannot fail.
        let _ = writer.write_record(cells.iter().map(|cell| cell.as_bytes()));
        let _ = writer.flush();
    }
}

/// Appends the JSON object of a page to correct, on one line; `newly` is absent where no earlier run is compared with.
pub fn json_page(
    out: &mut Vec<u8>,
    run: Run<'_>,
    light: Light<'_>,
    by: &str,
    group: &str,
    newly: Option<bool>,
) {
    let reasons: Vec<_> = light.assessment.reasons.iter().map(Reason::code).collect();
    let object = json!({
        "kind": "page",
        "listing": name(light),
        "by": by,
        "group": stated(group),
        "claim_w": light.listing.claim.map(|w| w.0),
        "verdict": light.assessment.verdict.word(),
        "evidence": light.assessment.evidence.word(),
        "share": light.assessment.share,
        "honest_label": label(run, light),
        "reasons": reasons,
        "why": sentence(light.listing, light.assessment),
        "newly": newly,
    });
    out.extend_from_slice(object.to_string().as_bytes());
    out.push(b'\n');
}

/// The JSON objects of the groups, one a line; the last has kind `rest` where there were too many groups.
#[must_use]
pub fn json_groups(audit: &Audit, by: &str) -> String {
    let mut text = String::new();
    for (name, group) in audit.groups() {
        let _ = writeln!(text, "{}", json_group("group", by, stated(name), group));
    }
    if audit.rest().counts().total() > 0 {
        let _ = writeln!(text, "{}", json_group("rest", by, None, audit.rest()));
    }
    text
}

fn json_group(kind: &str, by: &str, name: Option<&str>, group: &Group) -> Value {
    let mut counts: Map<String, Value> =
        Verdict::ALL.iter().map(|v| (v.word().to_owned(), group.counts().of(*v).into())).collect();
    counts.insert(UNREADABLE.to_owned(), group.counts().unreadable().into());
    let median = group.median();
    json!({
        "kind": kind,
        "by": by,
        "group": name,
        "lights": group.counts().total(),
        "verdicts": counts,
        "median_share": median.map(|m| m.value),
        "median_error": median.map(|m| m.error),
        "median_or_more": median.map(|m| m.or_more),
        "worst": group.worst().map(|page| page.listing.as_str()),
    })
}

pub(super) fn stated(group: &str) -> Option<&str> {
    Some(group).filter(|group| !group.is_empty())
}

fn shown(group: &str) -> String {
    stated(group).map_or_else(|| "(not stated)".to_owned(), |group| terminal(group).into_owned())
}

fn ruled(width: u16, header: &[&str], right: &[usize]) -> Table {
    let mut table = Table::new();
    table.load_style(RULED).set_content_arrangement(ContentArrangement::Dynamic).set_width(width);
    table.set_header(header);
    for index in right {
        if let Some(column) = table.column_mut(*index) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    table
}

fn percent(share: f64) -> String {
    format!("{:.0} %", share * 100.0)
}

fn line(name: String, group: &Group) -> [String; 5] {
    let counts = Verdict::ALL
        .iter()
        .map(|v| (v.word(), group.counts().of(*v)))
        .chain([(UNREADABLE, group.counts().unreadable())]);
    let verdicts: Vec<_> = counts.filter(|(_, n)| *n > 0).map(|(word, n)| format!("{n} {word}")).collect();
    let median =
        group.median().map(|m| format!("{}{}", percent(m.value), if m.or_more { " or more" } else { "" }));
    let worst = group.worst().map(|page| terminal(&page.listing).into_owned());
    [
        name,
        group.counts().total().to_string(),
        median.unwrap_or_default(),
        worst.unwrap_or_default(),
        verdicts.join(", "),
    ]
}

/// The groups, and below them the worst pages, `width` columns wide at most.
#[must_use]
pub fn table(audit: &mut Audit, by: &str, width: u16, style: Style) -> String {
    let by = terminal(by).into_owned();
    let mut table = ruled(width, &[&by, "lights", "median share", "worst", "verdicts"], &[1, 2]);
    let groups = audit.groups();
    for (name, group) in groups.iter().take(MOST_LINES) {
        table.add_row(line(shown(name), group));
    }
    if audit.rest().counts().total() > 0 {
        table.add_row(line("(all others)".to_owned(), audit.rest()));
    }
    let mut text = format!("{}\n", table.trim_fmt());
    if groups.len() > MOST_LINES {
        let _ = writeln!(
            text,
            "{} more of {by} are not shown; --format json has them",
            groups.len() - MOST_LINES
        );
    }
    if groups.iter().any(|(_, group)| group.median().is_some_and(|m| m.error > 0.0)) {
        let _ =
            writeln!(text, "the median of more than {EXACT} shares may be off by {} %", HALF_STEP * 100.0);
    }
    let all = audit.at_least(Verdict::Overstated);
    if all == 0 {
        text.push_str("\nno page to correct\n");
        return text;
    }
    let pages = audit.pages();
    let _ = writeln!(text, "\n{}", style.strong(&format!("pages to correct: {all}")));
    let mut table = ruled(width, &["listing", &by, "says", "verdict", "could say"], &[2]);
    for page in pages {
        table.add_row([
            Cell::new(terminal(&page.listing)),
            Cell::new(shown(&page.group)),
            Cell::new(page.claim.map(|w| format!("{} W", Rounded(w.0))).unwrap_or_default()),
            Cell::new(page.verdict.word()),
            Cell::new(page.label.as_deref().unwrap_or("(too little is known)")),
        ]);
    }
    let _ = writeln!(text, "{}", table.trim_fmt());
    let left = all.saturating_sub(pages.len() as u64);
    if left > 0 {
        let _ = writeln!(text, "{left} more pages are not shown; --format csv has all");
    }
    text
}
