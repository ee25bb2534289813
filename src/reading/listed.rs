//! Short lists of words that the vocabulary has no role for: "our", "older", "could".

use super::item::{Item, Letters};
use super::page::Page;

/// The words of a list, or how they begin. Nearly every word is told from all of them by its first two letters together.
#[derive(Debug, Clone, Copy)]
pub(super) struct Listed<const N: usize> {
    words: [Letters; N],
    pub beginnings: Beginnings,
}

/// For each first letter a bit for each letter that comes second. One test: whether a word may be one of a list by its first
/// letter alone nobody can foretell.
#[derive(Debug, Clone, Copy)]
pub(super) struct Beginnings([u32; 32]);

impl Beginnings {
    /// The beginnings of both lists.
    pub(super) const fn and(mut self, other: Self) -> Self {
        let mut i = 0;
        while i < self.0.len() {
            self.0[i] |= other.0[i];
            i += 1;
        }
        self
    }

    /// Whether the item may be, or begin with, one of the words.
    pub(super) fn may_have(&self, item: &Item) -> bool {
        let [first, second, ..] = item.letters.to_le_bytes();
        self.0[usize::from(first & 31)] >> (second & 31) & 1 != 0
    }
}

impl<const N: usize> Listed<N> {
    /// Words of up to eight ASCII letters in lower case.
    pub(super) const fn of(words: [&str; N]) -> Self {
        let (mut second, mut i) = ([0; 32], 0);
        while i < N {
            let letters = words[i].as_bytes();
            assert!(letters.len() > 1, "the first two letters are looked at");
            second[(letters[0] & 31) as usize] |= 1 << (letters[1] & 31);
            i += 1;
        }
        Self { words: Letters::all(words), beginnings: Beginnings(second) }
    }

    /// Whether the item is one of the words.
    pub(super) fn has(&self, item: &Item) -> bool {
        self.beginnings.may_have(item) && self.words.iter().any(|&w| item.is(w))
    }

    /// Whether the item begins with one of the words.
    pub(super) fn begins(&self, item: &Item) -> bool {
        self.beginnings.may_have(item) && self.words.iter().any(|&w| item.starts(w))
    }
}

impl Page<'_> {
    /// Whether item `i` is one of the words.
    pub(super) fn is_one<const N: usize>(&self, i: usize, words: &Listed<N>) -> bool {
        self.items.get(i).is_some_and(|item| words.has(item))
    }

    /// Whether item `i` is a word that begins with one of the words.
    pub(super) fn begins<const N: usize>(&self, i: usize, words: &Listed<N>) -> bool {
        self.items.get(i).is_some_and(|item| words.begins(item))
    }
}
