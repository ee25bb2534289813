//! What has changed since an earlier run, of the pages that claim too much.

use std::collections::{BTreeSet, HashMap};

use crate::comparison::Verdict;

/// The most names of newly wrong pages that are kept; all of them are counted.
const MOST: usize = 100;

/// A listing's name and its supplier, which may be empty.
pub type Named = (String, String);

/// The verdicts of an earlier run, by listing; absent for a row that could not be read. A listing that is there twice has the
/// worse one.
#[derive(Debug, Clone, Default)]
pub struct Earlier(HashMap<Named, Option<Verdict>>);

impl Earlier {
    /// Takes in a listing of the earlier run. One without a name cannot be found again and is left out.
    pub fn insert(&mut self, listing: Named, verdict: Option<Verdict>) {
        if !listing.0.is_empty() {
            let known = self.0.entry(listing).or_default();
            *known = verdict.max(*known);
        }
    }
}

/// The changes that one worker has seen.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Changes {
    newly: u64,
    newly_named: BTreeSet<Named>,
    /// The worst verdict now of each listing that claimed too much then.
    now: HashMap<Named, Option<Verdict>>,
}

impl Changes {
    /// Compares a listing with the earlier run; says whether its page is newly wrong: it claims too much now, and did not
    /// then or was not there.
    pub fn see(&mut self, earlier: &Earlier, listing: Named, verdict: Option<Verdict>) -> bool {
        let convicts = |verdict: Option<Verdict>| verdict.is_some_and(Verdict::convicts);
        if listing.0.is_empty() {
            return false;
        }
        if convicts(earlier.0.get(&listing).copied().flatten()) {
            let now = self.now.entry(listing).or_default();
            *now = verdict.max(*now);
            return false;
        }
        if !convicts(verdict) {
            return false;
        }
        self.newly += 1;
        self.newly_named.insert(listing);
        self.cut();
        true
    }

    fn cut(&mut self) {
        while self.newly_named.len() > MOST {
            self.newly_named.pop_last();
        }
    }

    /// Adds what another worker has seen.
    pub fn add(&mut self, other: Self) {
        self.newly += other.newly;
        self.newly_named.extend(other.newly_named);
        self.cut();
        for (listing, verdict) in other.now {
            let now = self.now.entry(listing).or_default();
            *now = verdict.max(*now);
        }
    }

    /// How many pages are newly wrong.
    #[must_use]
    pub fn newly(&self) -> u64 {
        self.newly
    }

    /// The first of them by name.
    pub fn newly_named(&self) -> impl Iterator<Item = &Named> {
        self.newly_named.iter()
    }

    /// The listings that claimed too much then and do not now, by name. One that cannot be read now is not among them.
    #[must_use]
    pub fn corrected(&self) -> Vec<&Named> {
        let fine = |now: &Option<Verdict>| now.is_some_and(|verdict| !verdict.convicts());
        let mut found: Vec<_> = self.now.iter().filter(|(_, now)| fine(now)).map(|(name, _)| name).collect();
        found.sort();
        found
    }

    /// The listings that claimed too much then and are no longer there, by name.
    #[must_use]
    pub fn gone<'a>(&self, earlier: &'a Earlier) -> Vec<&'a Named> {
        let convicted = earlier.0.iter().filter(|(_, verdict)| verdict.is_some_and(Verdict::convicts));
        let mut found: Vec<_> =
            convicted.map(|(name, _)| name).filter(|name| !self.now.contains_key(*name)).collect();
        found.sort();
        found
    }
}
