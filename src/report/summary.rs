//! How many of each verdict: what a run says of itself on standard error.

use std::fmt::Write as _;

use super::UNREADABLE;
use crate::comparison::Verdict;

/// Counts of one run.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Summary {
    verdicts: [u64; Verdict::ALL.len()],
    unreadable: u64,
}

impl Summary {
    /// Counts a graded listing.
    pub fn count(&mut self, verdict: Verdict) {
        self.verdicts[verdict as usize] += 1;
    }

    /// Counts a row that could not be read.
    pub fn count_unreadable(&mut self) {
        self.unreadable += 1;
    }

    /// Adds the counts of another part of the run.
    pub fn add(&mut self, other: &Self) {
        for (own, others) in self.verdicts.iter_mut().zip(other.verdicts) {
            *own += others;
        }
        self.unreadable += other.unreadable;
    }

    /// How many of that verdict.
    #[must_use]
    pub fn of(&self, verdict: Verdict) -> u64 {
        self.verdicts[verdict as usize]
    }

    /// How many rows could not be read.
    #[must_use]
    pub fn unreadable(&self) -> u64 {
        self.unreadable
    }

    /// How many rows in all.
    #[must_use]
    pub fn total(&self) -> u64 {
        self.verdicts.iter().sum::<u64>() + self.unreadable
    }

    /// One line: `40 listings: 7 within-reach, 21 overstated ...`; verdicts that did not occur are left out.
    #[must_use]
    pub fn line(&self) -> String {
        let total = self.total();
        let mut line = format!("{total} listing{}", if total == 1 { "" } else { "s" });
        let counts =
            Verdict::ALL.iter().map(|v| (v.word(), self.of(*v))).chain([(UNREADABLE, self.unreadable)]);
        for (place, (word, n)) in counts.filter(|(_, n)| *n > 0).enumerate() {
            let _ = write!(line, "{} {n} {word}", if place == 0 { ":" } else { "," });
        }
        line
    }
}
