//! The page as a whole.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::kept::Shown;
use super::row::COLUMNS;
use super::{About, EACH_END, Entry, MOST_FULL, Report, histogram, method, safe, summary, suppliers};
use crate::report::Run;

/// The style of the page.
pub const STYLE: &str = include_str!("style.css");

/// What makes the table sort and filter; the page is whole without it.
pub const SCRIPT: &str = include_str!("script.js");

/// SHA-256 of [`STYLE`], in base 64, as a content security policy names it.
pub const STYLE_HASH: &str = "nRFyGc0IPDmpwF/JGyDcxxqWEYIQzzMOO5N2EJhRagI=";

/// SHA-256 of [`SCRIPT`], in base 64.
pub const SCRIPT_HASH: &str = "7QHoagJc2baUDh/2kbO/Akxk+V8Liycm4h5kLN0zmMo=";

/// Nothing may be loaded, sent or run but these two, so that markup that slipped through could do nothing.
fn policy() -> String {
    format!(
        "default-src 'none'; style-src 'sha256-{STYLE_HASH}'; script-src 'sha256-{SCRIPT_HASH}'; base-uri 'none'; \
         form-action 'none'"
    )
}

/// The most bytes of the whole file; details that would not fit are left out, and the page says how many. Only listings with
/// more text than any page needs get there.
const MOST_BYTES: usize = 299_000;

pub(super) fn page(report: Report, run: Run<'_>, about: &About) -> String {
    let total = report.counts.total();
    let several = total != 1;
    let before = html! {
        div.front {
            (summary::summary(&report))
            @if several { (shares(&report)) }
        }
        @if several {
            (suppliers::suppliers(&report.suppliers))
        }
    };
    let method = method::method(run, &report.used, about);
    let shown = report.kept.shown(total);
    let listings = listings(&shown, total, about);
    let used = STYLE.len() + SCRIPT.len() + before.0.len() + method.0.len() + listings.0.len() + 2_500;
    let details = details(&shown, total, MOST_BYTES.saturating_sub(used));
    let source = about.source.as_deref().map(safe);
    html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta http-equiv="Content-Security-Policy" content=(policy());
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                meta name="generator" content="plainwatt";
                title { "Claimed and drawn watts" @if let Some(source) = &source { ": " (source) } }
                style { (PreEscaped(STYLE)) }
            }
            body {
                main {
                    header {
                        h1 { "Claimed watts and drawn watts" }
                        p {
                            "LED grow lights: the power they are sold by, against the power they can draw."
                            @if let Some(source) = &source { " Graded from " span.file { (source) } "." }
                        }
                    }
                    (before)
                    (listings)
                    (details)
                    (method)
                }
                script { (PreEscaped(SCRIPT)) }
            }
        }
    }
    .0
}

fn shares(report: &Report) -> Markup {
    html! {
        section id="shares" aria-labelledby="shares-head" {
            h2 id="shares-head" { "What the lights draw of what they claim" }
            figure {
                (histogram::histogram(&report.shares))
                figcaption {
                    "Listings by share, the draw over the claim: upwards those whose claim is not called too high \
                     (filled: it stands; hollow: unsettled), downwards those whose claim is too high."
                    @if report.shares.without() > 0 {
                        " " (report.shares.without()) " without a claim or a draw are not in the picture."
                    }
                    @if report.counts.unreadable() > 0 {
                        " Nor is what could not be read (" (report.counts.unreadable()) ")."
                    }
                }
            }
        }
    }
}

fn listings(shown: &Shown<Entry>, total: u64, about: &About) -> Markup {
    html! {
        section id="listings-section" aria-labelledby="listings-head" {
            h2 id="listings-head" { @if total == 1 { "The listing" } @else { "The listings" } }
            @if shown.cut {
                p {
                    "Of " (total) " rows " (shown.rows.len()) " are shown: up to " (EACH_END) " at each end of the list, by \
                     verdict and share unless it was sorted otherwise, and the first of those that could not be read. What is \
                     said above is counted over all rows."
                    @if let Some(command) = &about.command {
                        " All rows as CSV: "
                        @if let Some(beside) = &about.beside { a href=(beside) { "the file beside this page" } ", or " }
                        (super::command(command))
                    }
                }
            }
            p {
                @if total == 1 { "The axis of the picture goes from nothing to twice the claim:" }
                @else { "Every picture has one axis, from nothing to twice the claim, so that all claims stand in line:" }
            }
            (super::axis::key())
            @if total > 1 {
                p.tools hidden {
                    label for="filter-verdict" { "Show " }
                    select id="filter-verdict" {
                        option value="all" { "all" }
                        @for word in summary::words() { option value=(word) { (word) } }
                    }
                    " " output for="filter-verdict" {}
                }
            }
            table.cards id="listings" role="table" {
                thead role="rowgroup" { tr role="row" {
                    @for (class, head) in COLUMNS {
                        th class=(class) scope="col" role="columnheader" {
                            (head) @if class == "picture" { (suppliers::scale()) }
                        }
                    }
                } }
                tbody role="rowgroup" { @for (_, entry) in &shown.rows { (entry.row) } }
            }
        }
    }
}

fn details(shown: &Shown<Entry>, total: u64, mut room: usize) -> Markup {
    let mut left = 0_usize;
    let articles: Vec<Markup> = shown
        .rows
        .iter()
        .filter_map(|(place, entry)| {
            let detail = &entry.detail;
            let article = html! {
                article id=(format!("d{place}")) {
                    h3 { (detail.heading) }
                    (detail.full.as_ref().filter(|_| total <= MOST_FULL).unwrap_or(&detail.short))
                }
            };
            let fits = article.0.len() <= room;
            room = if fits { room - article.0.len() } else { 0 };
            left += usize::from(!fits);
            fits.then_some(article)
        })
        .collect();
    html! {
        section id="details" aria-labelledby="details-head" {
            h2 id="details-head" { @if total == 1 { "In detail" } @else { "Each listing" } }
            @if left > 0 { p { (left) " of the listings shown have no details here, to keep the file small." } }
            div.all { @for article in &articles { (article) } }
        }
    }
}
