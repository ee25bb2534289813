//! What an audit says of the rows that it could not read.

use std::fmt::Write as _;

use serde_json::json;

use super::UNREADABLE;
use super::audit::kept;
use super::table::{fault_text, shortened};
use crate::audit::{Row, Unreadables};
use crate::facts::Fault;

/// The most that a person is shown.
const MOST: usize = 10;

/// A row as an audit keeps it, its texts cut so that memory is bounded.
#[must_use]
pub fn row(listing: Option<&str>, supplier: Option<&str>, fault: &Fault) -> Row {
    let text = |text: &str| kept(text).to_owned();
    Row {
        listing: listing.map(text),
        supplier: supplier.map(text),
        fault: Fault { found: text(&fault.found), ..fault.clone() },
    }
}

/// The first of them, one a line, each with its place, what was found and what is accepted; empty where there are none.
#[must_use]
pub fn faults_text(rows: &Unreadables) -> String {
    let mut text = String::new();
    let mut left = rows.count();
    for row in rows.first().take(MOST) {
        let name = row.listing.as_deref().filter(|name| !name.is_empty());
        let name = name.map(|name| format!(" {}", shortened(name))).unwrap_or_default();
        let _ = writeln!(text, "{UNREADABLE}{name}: {}", fault_text(&row.fault));
        left -= 1;
    }
    if left > 0 {
        let _ = writeln!(text, "{left} more are unreadable; --rejects FILE writes them all");
    }
    text
}

/// The JSON objects of the first of them, one a line.
#[must_use]
pub fn json_faults(rows: &Unreadables) -> String {
    rows.first().fold(String::new(), |mut text, row| {
        let Row { listing, supplier, fault } = row;
        let object = json!({"kind": UNREADABLE, "listing": listing, "supplier": supplier, "fault": fault});
        let _ = writeln!(text, "{object}");
        text
    })
}
