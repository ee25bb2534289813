//! How many listings got each verdict.

use super::verdict::Verdict;

/// Listings by verdict, those that could not be read apart.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Counts {
    verdicts: [u64; Verdict::ALL.len()],
    unreadable: u64,
}

impl Counts {
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

    /// How many of that verdict or a worse one.
    #[must_use]
    pub fn at_least(&self, verdict: Verdict) -> u64 {
        self.verdicts[verdict as usize..].iter().sum()
    }
}
