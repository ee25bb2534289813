//! The listings by supplier, each with the spread of its shares.

use maud::{Markup, html};

use super::percent;
use super::spread::{MOST_TICKS, spread};
use crate::audit::{Audit, EXACT, Group, HALF_STEP};
use crate::comparison::Verdict;
use crate::report::UNREADABLE;

/// The most suppliers shown: those with most claims that are too high.
const MOST: usize = 30;

/// The section; nothing where no supplier is stated.
pub(super) fn suppliers(audit: &Audit) -> Markup {
    let groups = audit.groups();
    if groups.iter().all(|(name, _)| name.is_empty()) {
        return html! {};
    }
    let left = groups.len().saturating_sub(MOST);
    let shown = &groups[..groups.len() - left];
    let rest = groups[groups.len() - left..].iter().map(|(_, group)| group.counts().total()).sum::<u64>()
        + audit.rest().counts().total();
    let sketched = shown.iter().any(|(_, group)| group.shares().each().is_none());
    let many =
        shown.iter().any(|(_, group)| group.shares().each().is_none_or(|each| each.len() > MOST_TICKS));
    html! {
        section id="suppliers" aria-labelledby="suppliers-head" {
            h2 id="suppliers-head" { "By supplier" }
            p {
                "Each short tick is a listing, placed by the share of its claim that it draws; the long line is the claim."
                @if many {
                    " Of more than " (MOST_TICKS) " listings a line runs from the least share to the most, a box holds the \
                     middle half, and the tick in it is the median."
                }
            }
            table.cards role="table" {
                thead role="rowgroup" { tr role="row" {
                    @for head in ["supplier", "listings", "median share", "verdicts"] {
                        th scope="col" role="columnheader" { (head) }
                    }
                    th.picture scope="col" role="columnheader" { "spread of shares" (scale()) }
                } }
                tbody role="rowgroup" {
                    @for (name, group) in shown { (row(name, group)) }
                }
            }
            @if rest > 0 {
                p {
                    "Not shown: " (rest) " listings of "
                    @if audit.rest().counts().total() == 0 { (left) " more suppliers." } @else { "more suppliers." }
                    " They are counted in the summary."
                }
            }
            @if sketched {
                p { "Of more than " (EXACT) " listings, medians and quartiles may be off by " (HALF_STEP * 100.0) " %." }
            }
        }
    }
}

fn row(name: &str, group: &Group) -> Markup {
    let counts = group.counts();
    let verdicts: Vec<String> = Verdict::ALL
        .iter()
        .rev()
        .map(|verdict| (counts.of(*verdict), verdict.word()))
        .chain([(counts.unreadable(), UNREADABLE)])
        .filter(|(n, _)| *n > 0)
        .map(|(n, word)| format!("{n} {word}"))
        .collect();
    html! {
        tr role="row" {
            th role="rowheader" { @if name.is_empty() { "(not stated)" } @else { (super::name(name)) } }
            td.lights role="cell" { (counts.total()) }
            td.median role="cell" {
                @if let Some(median) = group.median() { (percent(median.value)) @if median.or_more { " or more" } }
            }
            td role="cell" { (verdicts.join(", ")) }
            td role="cell" { (spread(group)) }
        }
    }
}

/// The words under the heading of a column of pictures.
pub(super) fn scale() -> Markup {
    html! { span.scale { span { "0" } span { "claim" } span { "twice" } } }
}
