//! The listings of one supplier, counted.

use super::{Median, Page, Shares};
use crate::comparison::{Counts, Verdict};

/// The counts of one group, in constant memory.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Group {
    counts: Counts,
    shares: Shares,
    worst: Option<Page>,
}

impl Group {
    /// Counts a listing, with the page if it claims too much.
    pub(super) fn count(&mut self, verdict: Verdict, share: Option<f64>, page: Option<&Page>) {
        self.counts.count(verdict);
        if let Some(share) = share {
            self.shares.push(share);
        }
        if let Some(page) = page {
            self.take_if_worse(page);
        }
    }

    pub(super) fn count_unreadable(&mut self) {
        self.counts.count_unreadable();
    }

    pub(super) fn add(&mut self, other: Self) {
        self.counts.add(&other.counts);
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

    /// How many of each verdict.
    #[must_use]
    pub fn counts(&self) -> &Counts {
        &self.counts
    }

    /// The median of draw over claim, of the listings that have one; absent where none has.
    #[must_use]
    pub fn median(&self) -> Option<Median> {
        self.shares.median()
    }

    /// Draw over claim, of the listings that have one.
    #[must_use]
    pub fn shares(&self) -> &Shares {
        &self.shares
    }

    /// The worst of the pages that claim too much; absent where none does.
    #[must_use]
    pub fn worst(&self) -> Option<&Page> {
        self.worst.as_ref()
    }
}
