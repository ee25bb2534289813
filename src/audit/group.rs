//! The listings of one supplier, counted.

use super::{Median, Page, Shares};
use crate::comparison::Verdict;

/// The counts of one group, in constant memory.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Group {
    verdicts: [u64; Verdict::ALL.len()],
    unreadable: u64,
    shares: Shares,
    worst: Option<Page>,
}

impl Group {
    /// Counts a listing, with the page if it claims too much.
    pub(super) fn count(&mut self, verdict: Verdict, share: Option<f64>, page: Option<&Page>) {
        self.verdicts[verdict as usize] += 1;
        if let Some(share) = share {
            self.shares.push(share);
        }
        if let Some(page) = page {
            self.take_if_worse(page);
        }
    }

    pub(super) fn count_unreadable(&mut self) {
        self.unreadable += 1;
    }

    pub(super) fn add(&mut self, other: Self) {
        for (own, others) in self.verdicts.iter_mut().zip(other.verdicts) {
            *own += others;
        }
        self.unreadable += other.unreadable;
        self.shares.add(other.shares);
        if let Some(page) = &other.worst {
            self.take_if_worse(page);
        }
    }

    fn take_if_worse(&mut self, page: &Page) {
        if self.worst.as_ref().is_none_or(|worst| page.worst_first(worst).is_lt()) {
            self.worst = Some(page.clone());
        }
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

    /// How many rows in all, unreadable ones included.
    #[must_use]
    pub fn lights(&self) -> u64 {
        self.verdicts.iter().sum::<u64>() + self.unreadable
    }

    /// How many of that verdict or a worse one.
    #[must_use]
    pub fn at_least(&self, verdict: Verdict) -> u64 {
        self.verdicts[verdict as usize..].iter().sum()
    }

    /// The median of draw over claim, of the listings that have one; absent where none has.
    #[must_use]
    pub fn median(&self) -> Option<Median> {
        self.shares.median()
    }

    /// The worst of the pages that claim too much; absent where none does.
    #[must_use]
    pub fn worst(&self) -> Option<&Page> {
        self.worst.as_ref()
    }
}
