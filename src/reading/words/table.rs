//! Finds a word in the vocabulary with one look: a perfect hash over the words of all languages, made when the crate is
//! compiled. The word itself is compared too, so that a stranger never passes for a known word.
//!
//! Words fall into buckets by their hash. For each bucket a step is sought with which all its words land on free slots, the
//! fullest buckets first ("hash, displace and compress", Belazzougui, Botelho and Dietzfelbinger 2009).

use super::spelling::{CHUNKS, LONGEST, Spelling, mix};
use super::{ALSO, LANGUAGES, Row, decode};
use crate::reading::cues::Cues;
use crate::reading::fold::{Fold, fold};
use crate::reading::roles::Role;

const SLOTS: usize = 4096;
const BUCKETS: usize = 1024;
/// The most words in one bucket.
const FULLEST: usize = 16;

/// A word with its role. Most words have at most eight letters, so the rest is kept apart and most lookups touch one line of
/// memory.
#[derive(Clone, Copy)]
struct Entry {
    first: u64,
    /// The role as a set.
    cue: Cues,
    /// What else the word may be, as a set.
    also: Cues,
    role: Role,
    open: bool,
    length: u8,
}

/// No word.
const NOBODY: Entry = Entry::of(&Spelling::EMPTY, Role::None);

impl Entry {
    #[expect(clippy::cast_possible_truncation, reason = "words of at most 32 bytes")]
    const fn of(word: &Spelling, role: Role) -> Self {
        let (cue, open) = (role.cue(), role.open());
        Self { first: word.first(), cue, also: Cues(0), role, open, length: word.length as u8 }
    }
}

struct Table {
    /// The step of each bucket.
    steps: [u16; BUCKETS],
    /// Which entry is in each slot; 0 for none.
    slots: [u16; SLOTS],
    entries: [Entry; WORDS + 1],
    /// The letters after the first eight.
    rests: [[u64; CHUNKS - 1]; WORDS + 1],
}

static TABLE: Table = build();

/// What the vocabulary says of a word.
#[derive(Debug, Clone, Copy)]
pub(in crate::reading) struct Known {
    pub role: Role,
    /// The role as a set.
    pub cue: Cues,
    /// What else it may be, as a set.
    pub also: Cues,
    /// See [`Role::open`].
    pub open: bool,
}

impl Known {
    /// A word in that role.
    pub(in crate::reading) const fn of(role: Role) -> Self {
        Self { role, cue: role.cue(), also: Cues(0), open: role.open() }
    }
}

/// What the vocabulary says of a folded word.
pub(in crate::reading) fn look_up(word: &Spelling) -> Known {
    let at = place(word.hash());
    let [first, rest @ ..] = word.chunks;
    let mut differs = TABLE.entries[at].first ^ first;
    differs |= u64::from(TABLE.entries[at].length) ^ word.length as u64;
    if word.length > 8 {
        differs |= u64::from(TABLE.rests[at] != rest);
    }
    known(at, differs)
}

/// The same of a word of at most eight letters, as most are.
#[inline]
pub(in crate::reading) fn look_up_short(first: u64, length: usize) -> Known {
    let at = place(mix(first));
    let entry = &TABLE.entries[at];
    known(at, entry.first ^ first | u64::from(entry.length) ^ length as u64)
}

/// The entry of the only word of the vocabulary that may have this hash.
#[inline]
fn place(hash: u64) -> usize {
    usize::from(TABLE.slots[slot(hash, TABLE.steps[bucket(hash)])])
}

/// What entry `at` says, unless its word differs. Whether a word is known is anybody's guess, so it is worked out without a
/// branch.
#[inline]
fn known(at: usize, differs: u64) -> Known {
    let Entry { role, cue, also, open, .. } = TABLE.entries[if differs == 0 { at } else { 0 }];
    Known { role, cue, also, open }
}

const fn bucket(hash: u64) -> usize {
    (hash >> 54) as usize % BUCKETS
}

#[expect(clippy::cast_possible_truncation, reason = "the remainder is what is wanted")]
const fn slot(hash: u64, step: u16) -> usize {
    ((hash >> 42) + (hash >> 30 | 1) % SLOTS as u64 * step as u64) as usize % SLOTS
}

/// Goes through the words of rows, language by language.
struct Words {
    languages: &'static [&'static [Row]],
    language: usize,
    row: usize,
    at: usize,
}

impl Words {
    const fn of(languages: &'static [&'static [Row]]) -> Self {
        Self { languages, language: 0, row: 0, at: 0 }
    }

    /// The next word, with its role.
    const fn next(&mut self) -> Option<(Spelling, Role)> {
        while self.language < self.languages.len() {
            let rows = self.languages[self.language];
            while self.row < rows.len() {
                let (role, words) = rows[self.row];
                if self.at < words.len() {
                    let (word, after) = spelled(words.as_bytes(), self.at);
                    self.at = after;
                    return Some((word, role));
                }
                self.row += 1;
                self.at = 0;
            }
            self.language += 1;
            self.row = 0;
        }
        None
    }
}

/// How many words the languages have together; some are in two of them.
const WORDS: usize = {
    let mut count = 0;
    let (mut words, mut also) = (Words::of(&LANGUAGES), Words::of(&ALSO));
    while words.next().is_some() {
        count += 1;
    }
    while also.next().is_some() {
        count += 1;
    }
    count
};

type Buckets = [[u16; FULLEST]; BUCKETS];

#[expect(clippy::large_stack_arrays, reason = "built when the crate is compiled, not when it runs")]
const fn build() -> Table {
    let mut table = Table {
        steps: [0; BUCKETS],
        slots: [0; SLOTS],
        entries: [NOBODY; WORDS + 1],
        rests: [[0; CHUNKS - 1]; WORDS + 1],
    };
    let mut buckets = [[0u16; FULLEST]; BUCKETS];
    let mut known = 1;
    let mut words = Words::of(&LANGUAGES);
    while let Some((word, role)) = words.next() {
        table.enter(&mut buckets, &mut known, &word, role);
    }
    let mut also = Words::of(&ALSO);
    while let Some((word, role)) = also.next() {
        let entry = table.enter(&mut buckets, &mut known, &word, Role::None);
        table.entries[entry].also = table.entries[entry].also.and(role.cue());
    }
    let mut size = FULLEST;
    while size > 0 {
        let mut b = 0;
        while b < BUCKETS {
            if buckets[b][size - 1] != 0 && (size == FULLEST || buckets[b][size] == 0) {
                table.steps[b] = table.settle(&buckets[b], size);
            }
            b += 1;
        }
        size -= 1;
    }
    table
}

impl Table {
    const fn word(&self, entry: u16) -> Spelling {
        let entry = entry as usize;
        let [b, c, d] = self.rests[entry];
        Spelling { chunks: [self.entries[entry].first, b, c, d], length: self.entries[entry].length as usize }
    }

    /// The entry of a word, made for that role if there is none yet.
    #[expect(clippy::cast_possible_truncation, reason = "a few thousand words")]
    const fn enter(
        &mut self,
        buckets: &mut Buckets,
        known: &mut usize,
        word: &Spelling,
        role: Role,
    ) -> usize {
        let bucket = &mut buckets[bucket(word.hash())];
        let mut k = 0;
        while bucket[k] != 0 && !self.is(bucket[k], word) {
            k += 1;
        }
        if bucket[k] == 0 {
            bucket[k] = *known as u16;
            let [_, rest @ ..] = word.chunks;
            self.entries[*known] = Entry::of(word, role);
            self.rests[*known] = rest;
            *known += 1;
        }
        bucket[k] as usize
    }

    const fn is(&self, entry: u16, word: &Spelling) -> bool {
        let known = self.word(entry).chunks;
        let mut k = 0;
        while k < CHUNKS && known[k] == word.chunks[k] {
            k += 1;
        }
        k == CHUNKS
    }

    /// Puts the words of a bucket into free slots; returns the step with which they were free.
    const fn settle(&mut self, bucket: &[u16; FULLEST], size: usize) -> u16 {
        let mut step = 0;
        loop {
            let mut placed = 0;
            while placed < size {
                let at = slot(self.word(bucket[placed]).hash(), step);
                if self.slots[at] != 0 {
                    break;
                }
                self.slots[at] = bucket[placed];
                placed += 1;
            }
            if placed == size {
                return step;
            }
            while placed > 0 {
                placed -= 1;
                self.slots[slot(self.word(bucket[placed]).hash(), step)] = 0;
            }
            assert!(step < u16::MAX, "no slot is free for a word of the vocabulary: raise SLOTS");
            step += 1;
        }
    }
}

/// The word of a row that starts at `at`, folded, and where the next one starts.
const fn spelled(words: &[u8], mut at: usize) -> (Spelling, usize) {
    let mut word = Spelling::EMPTY;
    while at < words.len() && words[at] != b' ' {
        let (c, length) = decode(words, at);
        at += length;
        match fold(c) {
            Fold::Letter(u) | Fold::Ideograph(u) => word.push(u),
            Fold::Digit(d) => word.push(d as u32 + 0x30),
            _ => panic!("a word of the vocabulary has a sign in it"),
        }
    }
    assert!(word.length <= LONGEST, "a word of the vocabulary takes more than 32 bytes");
    (word, at + 1)
}
