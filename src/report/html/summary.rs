//! What was found, in a sentence and in a table of the verdicts that adds up to the rows of the input.

use maud::{Markup, html};

use super::Report;
use crate::comparison::{Counts, Verdict, meaning};
use crate::report::UNREADABLE;

/// The verdicts as the page lists them, the worst first, then what could not be read.
pub(super) fn words() -> impl Iterator<Item = &'static str> {
    Verdict::ALL.iter().rev().map(|verdict| verdict.word()).chain([UNREADABLE])
}

fn of(counts: &Counts, word: &str) -> u64 {
    let verdict = Verdict::ALL.into_iter().find(|verdict| verdict.word() == word);
    verdict.map_or(counts.unreadable(), |verdict| counts.of(verdict))
}

/// The section.
pub(super) fn summary(report: &Report) -> Markup {
    let counts = &report.counts;
    let several = counts.total() != 1;
    html! {
        section id="summary" aria-labelledby="summary-head" {
            h2 id="summary-head" { "What was found" }
            p.finding {
                @if let Some(first) = report.first.as_deref().filter(|_| !several) { (first) } @else { (sentence(counts)) }
            }
            p {
                "A verdict holds the watts that a light is sold by against what it can be seen to draw. It says whether the \
                 stated facts fit together, not why they do not, and nothing of how well plants grow under the light."
            }
            @if several { (verdicts(counts)) }
        }
    }
}

/// How many rows of each verdict; it explains the marks too.
fn verdicts(counts: &Counts) -> Markup {
    html! {
        table id="verdicts" {
            caption { "Every row of the input is in one of these lines." }
            thead { tr { th scope="col" { "verdict" } th scope="col" { "rows" } th scope="col" { "meaning" } } }
            tbody {
                @for word in words() {
                    tr data-verdict=(word) {
                        th.verdict scope="row" { (word) }
                        td.count { (of(counts, word)) }
                        td { (meaning::find(word).map_or("", |meaning| meaning.gist)) }
                    }
                }
            }
            tfoot { tr { th scope="row" { "all" } td.count { (counts.total()) } td { "rows in the input" } } }
        }
    }
}

/// One sentence about all listings; what did not occur is left out.
fn sentence(counts: &Counts) -> String {
    let total = counts.total();
    if total == 0 {
        return "The input holds no listing.".to_owned();
    }
    let too_high = counts.at_least(Verdict::Overstated);
    let plural = |n: u64, one: &str, many: &str| format!("{n} {}", if n == 1 { one } else { many });
    let fine = counts.of(Verdict::BorneOut) + counts.of(Verdict::WithinReach);
    let mut parts = Vec::new();
    for (n, one, many) in [
        (fine, "claim is borne out or within reach", "claims are borne out or within reach"),
        (
            counts.of(Verdict::Understated),
            "light draws more than it claims",
            "lights draw more than they claim",
        ),
        (
            counts.of(Verdict::Unsettled),
            "cannot be settled from what is known",
            "cannot be settled from what is known",
        ),
        (counts.unreadable(), "row could not be read", "rows could not be read"),
    ] {
        if n > 0 {
            parts.push(plural(n, one, many));
        }
    }
    let rest = match parts.split_last() {
        None => String::new(),
        Some((last, [])) => format!(" {last}."),
        Some((last, others)) => format!(" {}, and {last}.", others.join(", ")),
    };
    let first = format!("Of {}, ", plural(total, "listing", "listings"));
    let high = if too_high == 0 {
        "none claims more watts than it can be seen to draw.".to_owned()
    } else {
        format!(
            "{} more watts than can be seen to be drawn: by a meter, by the diodes at the current of their class, or \
             by the listing's own numbers.",
            plural(too_high, "claims", "claim")
        )
    };
    format!("{first}{high}{rest}")
}
