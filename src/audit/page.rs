//! Pages that claim too much.

use std::cmp::Ordering;

use crate::comparison::Verdict;
use crate::units::Watts;

/// The most pages kept to be shown to a person, who reads no more; the CSV has all of them.
const MOST: usize = 100;

/// A page to correct.
#[derive(Debug, Clone, PartialEq)]
pub struct Page {
    /// The listing's name, or its title.
    pub listing: String,
    /// Its supplier, or whatever else the audit is grouped by; empty where that is not stated.
    pub group: String,
    /// What it says now.
    pub claim: Option<Watts>,
    /// Draw over claim.
    pub share: Option<f64>,
    /// How bad it is.
    pub verdict: Verdict,
    /// What it could say; absent where too little is known for that.
    pub label: Option<String>,
}

impl Page {
    /// The worse verdict first, then the lower share; what is equal in both goes by name. Pages that are equal in this order
    /// are equal.
    #[must_use]
    pub fn worst_first(&self, other: &Self) -> Ordering {
        let share = |page: &Self| page.share.unwrap_or(f64::INFINITY);
        let claim = |page: &Self| page.claim.map_or(f64::INFINITY, |w| w.0);
        (other.verdict.cmp(&self.verdict))
            .then(share(self).total_cmp(&share(other)))
            .then_with(|| self.listing.cmp(&other.listing))
            .then_with(|| self.group.cmp(&other.group))
            .then(claim(self).total_cmp(&claim(other)))
            .then_with(|| self.label.cmp(&other.label))
    }
}

/// The worst pages of a catalogue.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Pages(Vec<Page>);

impl Pages {
    /// Keeps a page, for a moment up to twice as many as are wanted: sorting now and then is cheaper than on every page.
    pub(super) fn push(&mut self, page: Page) {
        self.0.push(page);
        if self.0.len() >= 2 * MOST {
            self.worst_first();
        }
    }

    pub(super) fn add(&mut self, other: Self) {
        self.0.extend(other.0);
        self.worst_first();
    }

    /// Those that are kept, worst first.
    pub(super) fn worst_first(&mut self) -> &[Page] {
        self.0.sort_by(Page::worst_first);
        self.0.truncate(MOST);
        &self.0
    }
}
