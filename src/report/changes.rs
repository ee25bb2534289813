//! What an audit says of the changes since an earlier run.

use std::fmt::Write as _;

use serde_json::json;

use super::audit::stated;
use super::sanitise::terminal;
use crate::audit::{Changes, Earlier, Fate, Named};

/// The most names of one kind that a person is shown.
const MOST: usize = 100;

/// What became of the pages that claimed too much then: the word for people, the word in JSON, and their names.
fn fates<'a>(
    changes: &'a Changes,
    earlier: &'a Earlier,
) -> [(&'static str, &'static str, Vec<&'a Named>); 4] {
    [
        ("corrected", "corrected", changes.become_of(Fate::Corrected)),
        ("no longer decided", "no-longer-decided", changes.become_of(Fate::Undecided)),
        ("unreadable now", "unreadable-now", changes.become_of(Fate::Unreadable)),
        ("gone", "gone", changes.gone(earlier)),
    ]
}

/// How many pages changed, on one line.
#[must_use]
pub fn changes_line(changes: &Changes, earlier: &Earlier) -> String {
    let fates = fates(changes, earlier).map(|(what, _, names)| format!("{} {what}", names.len()));
    format!(
        "since the earlier run: {} newly too high; of those too high then {}",
        changes.newly(),
        fates.join(", ")
    )
}

/// The pages that changed, by name, `width` columns wide at most.
#[must_use]
pub fn changes_text(changes: &Changes, earlier: &Earlier, width: u16) -> String {
    let mut text = String::from("\nsince the earlier run\n");
    let newly: Vec<_> = changes.newly_named().collect();
    line(&mut text, "newly too high", &newly, changes.newly(), width);
    text.push_str("of those too high then\n");
    for (what, _, names) in fates(changes, earlier) {
        line(&mut text, what, &names, names.len() as u64, width);
    }
    text
}

fn line(text: &mut String, what: &str, names: &[&Named], all: u64, width: u16) {
    let one = |(listing, supplier): &Named| {
        let (listing, supplier) = (terminal(listing), terminal(supplier));
        if supplier.is_empty() { listing.into_owned() } else { format!("{listing} ({supplier})") }
    };
    let shown: Vec<_> = names.iter().take(MOST).map(|name| one(name)).collect();
    let left = all.saturating_sub(shown.len() as u64);
    let more = if left > 0 { format!(", and {left} more") } else { String::new() };
    let colon = if all > 0 { ": " } else { "" };
    let line = format!("{what} {all}{colon}{}{more}", shown.join(", "));
    text.push_str(&textwrap::fill(&line, textwrap::Options::new(width.into()).subsequent_indent("  ")));
    text.push('\n');
}

/// The JSON objects of the pages that claimed too much then and of which something else became, one a line.
#[must_use]
pub fn json_changes(changes: &Changes, earlier: &Earlier) -> String {
    let mut text = String::new();
    for (_, kind, names) in fates(changes, earlier) {
        for (listing, supplier) in names {
            let object = json!({"kind": kind, "listing": listing, "supplier": stated(supplier)});
            let _ = writeln!(text, "{object}");
        }
    }
    text
}
