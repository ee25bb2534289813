//! One listing as a row of the table.
//!
//! The roles are written out: on a narrow screen the rows are shown as cards, and a browser may then no longer take the
//! table for one.

use maud::{Markup, html};

use super::axis::{Draws, small};
use super::{cut, percent};
use crate::comparison::Basis;
use crate::report::number::six_digits;
use crate::report::table::fault_text;
use crate::report::worth::{Measure, amount};
use crate::report::{Light, UNREADABLE, Unreadable};
use crate::units::Rounded;

/// The columns: class, heading. The script makes a button of each heading but the last.
pub(super) const COLUMNS: [(&str, &str); 7] = [
    ("name", "listing"),
    ("claim", "claim"),
    ("draws", "draws"),
    ("share", "share"),
    ("verdict", "verdict"),
    ("rests", "rests on"),
    ("picture", "draw against the claim"),
];

fn heading(place: u64, name: &str, supplier: &str) -> Markup {
    let name = super::name(name);
    html! {
        th role="rowheader" {
            a href=(format!("#d{place}")) { @if name.is_empty() { "row " (place) } @else { (name) } }
            @if !supplier.is_empty() { small { (super::name(supplier)) } }
        }
    }
}

/// The row of a light; `cost` is what the list is sorted by, where that is a cost.
pub(super) fn light(place: u64, light: Light<'_>, draws: &Draws, cost: Option<(Measure, f64)>) -> Markup {
    let (listing, assessment) = (light.listing, light.assessment);
    let known = listing.name.as_deref().or(listing.title.as_deref()).unwrap_or("");
    let number = |value: Option<f64>| {
        let mut digits = Vec::new();
        if let Some(value) = value {
            six_digits(&mut digits, value);
        }
        String::from_utf8_lossy(&digits).into_owned()
    };
    let wall = assessment.counted.draw.as_ref().map(|draw| draw.full.wall_interval());
    let basis = assessment.basis.map(Basis::word).filter(|basis| *basis != Basis::Unexplained.word());
    html! {
        tr.listing role="row" data-verdict=(assessment.verdict.word()) {
            (heading(place, known, listing.supplier.as_deref().unwrap_or("")))
            td.claim role="cell" data-sort=(number(listing.claim.map(|w| w.0))) {
                @if let Some(claim) = listing.claim { (claim) }
            }
            td role="cell" {
                @if let Some(measured) = assessment.measured { (measured.value) }
                @else if let Some((low, high)) = wall { (Rounded(low.0)) " to " (high) }
                @if let Some((measure, cost)) = cost { small { (measure.head()) " " (amount(cost)) } }
            }
            td.share role="cell" data-sort=(number(assessment.share)) {
                @if let Some(share) = assessment.share { (percent(share)) }
            }
            td.verdict role="cell" { (assessment.verdict.word()) }
            td role="cell" {
                (assessment.evidence.word())
                @if let Some(basis) = basis { ", " (basis) }
            }
            td role="cell" { (small(draws)) }
        }
    }
}

/// The row of a listing that could not be read: why stands where the picture would.
pub(super) fn unreadable(place: u64, row: Unreadable<'_>) -> Markup {
    html! {
        tr.listing role="row" data-verdict=(UNREADABLE) {
            (heading(place, row.name.unwrap_or(""), row.supplier.unwrap_or("")))
            td.claim role="cell" data-sort="" {}
            td role="cell" {}
            td.share role="cell" data-sort="" {}
            td.verdict role="cell" { (UNREADABLE) }
            td role="cell" {}
            td role="cell" { (shortened_fault(row)) }
        }
    }
}

/// Why a row could not be read, cut to what a cell can hold.
pub(super) fn shortened_fault(row: Unreadable<'_>) -> String {
    cut(&fault_text(row.fault), 400)
}
