//! A catalogue as its retailer sees it: the listings of each supplier counted, and the pages that claim too much.
//!
//! Nothing here depends on the order in which listings come, nor on how they are shared out among threads: every sum, every
//! list and every cut is a function of the set of listings alone.

mod group;
mod histogram;
mod page;
mod shares;
mod since;
mod unreadable;

use std::collections::BTreeMap;

pub use group::Group;
pub use histogram::{Histogram, STEPS, Side};
pub use page::{Page, Pages};
pub use shares::{EXACT, HALF_STEP, Median, Shares, TOP};
pub use since::{Changes, Earlier, Fate, Named, Said};
pub use unreadable::{Row, Unreadables};

use crate::comparison::Verdict;

/// The most groups counted each for itself: the first so many by name, some 4 kB each. All others are counted together.
pub const MOST_GROUPS: usize = 10_000;

/// The counts of a catalogue, by supplier or by whatever else it is grouped by.
#[derive(Debug, Clone, PartialEq)]
pub struct Audit {
    most: usize,
    groups: BTreeMap<String, Group>,
    rest: Group,
    pages: Pages,
}

impl Default for Audit {
    fn default() -> Self {
        Self::with_at_most(MOST_GROUPS)
    }
}

impl Audit {
    /// An audit that counts at most so many groups each for itself.
    #[must_use]
    pub fn with_at_most(most: usize) -> Self {
        Self { most, groups: BTreeMap::new(), rest: Group::default(), pages: Pages::default() }
    }

    /// Counts a listing of `group`; where it claims too much, `page` is called for what is to be corrected.
    pub fn count(&mut self, group: &str, verdict: Verdict, share: Option<f64>, page: impl FnOnce() -> Page) {
        let page = verdict.convicts().then(page);
        self.group(group).count(verdict, share, page.as_ref());
        if let Some(page) = page {
            self.pages.push(page);
        }
    }

    /// Counts a row of `group` that could not be read.
    pub fn count_unreadable(&mut self, group: &str) {
        self.group(group).count_unreadable();
    }

    /// The group of that name, or the rest. The first names by order stay, whenever they come: a name that had to go was
    /// after all that stayed, and those only become earlier.
    fn group(&mut self, name: &str) -> &mut Group {
        if !self.groups.contains_key(name) {
            let full = self.groups.len() >= self.most;
            if full && self.groups.last_key_value().is_none_or(|(last, _)| name > last.as_str()) {
                return &mut self.rest;
            }
            self.groups.insert(name.to_owned(), Group::default());
            self.cut();
        }
        self.groups.get_mut(name).unwrap_or(&mut self.rest)
    }

    fn cut(&mut self) {
        while self.groups.len() > self.most {
            if let Some((_, group)) = self.groups.pop_last() {
                self.rest.add(group);
            }
        }
    }

    /// Adds what was counted of another part of the catalogue.
    pub fn add(&mut self, other: Self) {
        for (name, group) in other.groups {
            self.group(&name).add(group);
        }
        self.rest.add(other.rest);
        self.pages.add(other.pages);
    }

    /// The groups with their names, those with most pages to correct first, then by name.
    #[must_use]
    pub fn groups(&self) -> Vec<(&str, &Group)> {
        let mut groups: Vec<_> = self.groups.iter().map(|(name, group)| (name.as_str(), group)).collect();
        groups.sort_by_key(|(_, group)| std::cmp::Reverse(group.counts().at_least(Verdict::Overstated)));
        groups
    }

    /// The listings of groups that were too many to be counted each for itself.
    #[must_use]
    pub fn rest(&self) -> &Group {
        &self.rest
    }

    /// The worst pages, worst first.
    pub fn pages(&mut self) -> &[Page] {
        self.pages.worst_first()
    }

    /// How many listings have that verdict or a worse one. Rows that could not be read are not among them.
    #[must_use]
    pub fn at_least(&self, verdict: Verdict) -> u64 {
        self.groups.values().chain([&self.rest]).map(|group| group.counts().at_least(verdict)).sum()
    }
}
