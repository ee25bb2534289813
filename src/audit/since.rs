//! What has changed since an earlier run, of the pages that claim too much.

use std::collections::{BTreeSet, HashMap};

use crate::comparison::Verdict;
use crate::units::Watts;

/// The most names of newly wrong pages that are kept; all of them are counted.
const MOST: usize = 100;

/// Claims of an earlier run are known to six digits: one that is lower by less than that is the same.
const SAME_CLAIM: f64 = 1e-5;

/// A listing's name and its supplier, which may be empty.
pub type Named = (String, String);

/// A listing that was graded: what it claims, and the verdict on that.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Said {
    /// The verdict.
    pub verdict: Verdict,
    /// The claim; absent where there is none, or where an earlier run's cannot be read.
    pub claim: Option<Watts>,
}

impl Said {
    fn convicts(said: Option<Self>) -> Option<Self> {
        said.filter(|said| said.verdict.convicts())
    }
}

/// The listings of an earlier run that claimed too much. One that is there twice has the worse verdict, and of equal ones the
/// lower claim.
#[derive(Debug, Clone, Default)]
pub struct Earlier(HashMap<Named, Said>);

impl Earlier {
    /// Takes in a listing of the earlier run, absent for a row that could not be read. One without a name cannot be found
    /// again and is left out.
    pub fn insert(&mut self, listing: Named, said: Option<Said>) {
        let Some(said) = Said::convicts(said).filter(|_| !listing.0.is_empty()) else { return };
        let known = self.0.entry(listing).or_insert(said);
        let claim = |said: &Said| said.claim.map_or(0.0, |watts| watts.0);
        if said.verdict > known.verdict || said.verdict == known.verdict && claim(&said) < claim(known) {
            *known = said;
        }
    }
}

/// What has become of a page that claimed too much; of two rows of one listing the later in this order counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fate {
    /// It claims less, or nothing, or its claim stands now.
    Corrected,
    /// It claims what it did, and what convicted it is missing.
    Undecided,
    /// Its row cannot be read now.
    Unreadable,
    /// It claims too much still.
    TooHigh,
}

impl Fate {
    fn of(then: Said, now: Option<Said>) -> Self {
        let Some(now) = now else { return Self::Unreadable };
        let lower = match (then.claim, now.claim) {
            (_, None) => true,
            (Some(then), Some(now)) => now.0 < then.0 * (1.0 - SAME_CLAIM),
            (None, Some(_)) => false,
        };
        match now.verdict {
            verdict if verdict.convicts() => Self::TooHigh,
            Verdict::Unsettled if !lower => Self::Undecided,
            _ => Self::Corrected,
        }
    }
}

/// The changes that one worker has seen.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Changes {
    newly: u64,
    newly_named: BTreeSet<Named>,
    /// What has become of each listing that claimed too much then.
    fates: HashMap<Named, Fate>,
}

impl Changes {
    /// Compares a listing, absent where its row could not be read, with the earlier run; says whether its page is newly
    /// wrong: it claims too much now, and did not then or was not there.
    pub fn see(&mut self, earlier: &Earlier, listing: Named, now: Option<Said>) -> bool {
        if listing.0.is_empty() {
            return false;
        }
        if let Some(then) = earlier.0.get(&listing) {
            self.befell(listing, Fate::of(*then, now));
            return false;
        }
        if Said::convicts(now).is_none() {
            return false;
        }
        self.newly += 1;
        self.newly_named.insert(listing);
        self.cut();
        true
    }

    fn befell(&mut self, listing: Named, fate: Fate) {
        let known = self.fates.entry(listing).or_insert(fate);
        *known = fate.max(*known);
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
        for (listing, fate) in other.fates {
            self.befell(listing, fate);
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

    /// The listings that claimed too much then and have come to that now, by name.
    #[must_use]
    pub fn become_of(&self, fate: Fate) -> Vec<&Named> {
        let mut found: Vec<_> =
            self.fates.iter().filter(|(_, now)| **now == fate).map(|(name, _)| name).collect();
        found.sort();
        found
    }

    /// The listings that claimed too much then and are no longer there, by name.
    #[must_use]
    pub fn gone<'a>(&self, earlier: &'a Earlier) -> Vec<&'a Named> {
        let mut found: Vec<_> = earlier.0.keys().filter(|name| !self.fates.contains_key(*name)).collect();
        found.sort();
        found
    }
}
