//! How many of each verdict: what a run says of itself on standard error.

use std::fmt::Write as _;

use super::UNREADABLE;
use crate::comparison::{Counts, Verdict};

/// One line: `40 listings: 7 within-reach, 21 overstated ...`; verdicts that did not occur are left out.
#[must_use]
pub fn line(counts: &Counts) -> String {
    let total = counts.total();
    let mut line = format!("{total} listing{}", if total == 1 { "" } else { "s" });
    let each =
        Verdict::ALL.iter().map(|v| (v.word(), counts.of(*v))).chain([(UNREADABLE, counts.unreadable())]);
    for (place, (word, n)) in each.filter(|(_, n)| *n > 0).enumerate() {
        let _ = write!(line, "{} {n} {word}", if place == 0 { ":" } else { "," });
    }
    line
}
