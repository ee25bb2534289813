//! The rows that could not be read: all are counted, and the first are kept with why.

use std::collections::BTreeMap;

use crate::facts::Fault;

/// The most that are kept.
const MOST: usize = 100;

/// A row that could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The listing's name; absent where it has none that could be read.
    pub listing: Option<String>,
    /// Who sells it.
    pub supplier: Option<String>,
    /// Where it is, what was found there and what is accepted.
    pub fault: Fault,
}

/// The first of them by line, whichever thread saw them.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Unreadables {
    count: u64,
    first: BTreeMap<u64, Row>,
}

impl Unreadables {
    /// Takes in a row, which is made only if it is kept. `line` is that on which it starts, from 1.
    pub fn push(&mut self, line: u64, row: impl FnOnce() -> Row) {
        self.count += 1;
        if self.first.len() < MOST || self.first.last_key_value().is_some_and(|(last, _)| line < *last) {
            self.first.insert(line, row());
            self.cut();
        }
    }

    /// Adds what another worker has seen.
    pub fn add(&mut self, other: Self) {
        self.count += other.count;
        self.first.extend(other.first);
        self.cut();
    }

    fn cut(&mut self) {
        while self.first.len() > MOST {
            self.first.pop_last();
        }
    }

    /// How many there are.
    #[must_use]
    pub fn count(&self) -> u64 {
        self.count
    }

    /// The first 100 by line, or all if there are fewer.
    pub fn first(&self) -> impl Iterator<Item = &Row> {
        self.first.values()
    }
}
