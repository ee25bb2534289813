//! The vocabulary: one file a language, one row a role.
//!
//! To add a language: add a file with a `ROWS` like its neighbours, and its name to `LANGUAGES`. Words are written as the
//! language writes them, in lower case, separated by spaces; accents are folded away on both sides. Words of scripts
//! without spaces are found inside a run of characters, the longest first.

mod de;
mod en;
mod es;
mod fr;
mod it;
mod ja;
mod nl;
mod pl;
mod pt;
mod ru;
mod sv;
mod tr;
mod zh;

use super::fold::{Fold, fold};
use super::roles::Role;

/// A role and the words that play it.
pub(super) type Row = (Role, &'static str);

/// English first: where two languages use a word differently, the first one listed has it.
const LANGUAGES: [&[Row]; 13] = [
    en::ROWS,
    de::ROWS,
    fr::ROWS,
    es::ROWS,
    it::ROWS,
    nl::ROWS,
    pl::ROWS,
    pt::ROWS,
    sv::ROWS,
    tr::ROWS,
    ru::ROWS,
    ja::ROWS,
    zh::ROWS,
];

/// The longest word of a script without spaces, in characters.
pub(super) const LONGEST_IDEOGRAPHS: usize = 8;

/// The hash of the empty word.
pub(super) const SEED: u64 = 0xcbf2_9ce4_8422_2325;

/// The hash of a word one letter longer.
#[inline]
pub(super) const fn step(hash: u64, letter: u32) -> u64 {
    (hash ^ letter as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15).rotate_left(23)
}

const SLOTS: usize = 8192;

#[derive(Clone, Copy)]
struct Slot {
    tag: u32,
    role: Role,
}

static TABLE: [Slot; SLOTS] = build();

/// The role of the word with that hash.
#[inline]
pub(super) fn role(hash: u64) -> Role {
    let tag = tag(hash);
    let mut at = slot(hash);
    loop {
        let entry = &TABLE[at];
        if entry.tag == tag {
            return entry.role;
        }
        if entry.tag == 0 {
            return Role::None;
        }
        at = (at + 1) % SLOTS;
    }
}

const fn tag(hash: u64) -> u32 {
    (hash >> 32) as u32 | 1
}

#[expect(clippy::cast_possible_truncation, reason = "the remainder is what is wanted")]
const fn slot(hash: u64) -> usize {
    (hash ^ (hash >> 13)) as usize % SLOTS
}

#[expect(clippy::large_stack_arrays, reason = "built when the crate is compiled, not when it runs")]
const fn build() -> [Slot; SLOTS] {
    let mut table = [Slot { tag: 0, role: Role::None }; SLOTS];
    let mut language = 0;
    while language < LANGUAGES.len() {
        let mut row = 0;
        while row < LANGUAGES[language].len() {
            let (role, words) = LANGUAGES[language][row];
            table = add(table, role, words.as_bytes());
            row += 1;
        }
        language += 1;
    }
    table
}

const fn add(mut table: [Slot; SLOTS], role: Role, words: &[u8]) -> [Slot; SLOTS] {
    let mut at = 0;
    while at < words.len() {
        let mut hash = SEED;
        while at < words.len() && words[at] != b' ' {
            let (c, length) = decode(words, at);
            at += length;
            match fold(c) {
                Fold::Letter(u) | Fold::Ideograph(u) => hash = step(hash, u),
                Fold::Digit(d) => hash = step(hash, d as u32 + 0x30),
                _ => panic!("a word of the vocabulary has a sign in it"),
            }
        }
        at += 1;
        let mut place = slot(hash);
        while table[place].tag != 0 && table[place].tag != tag(hash) {
            place = (place + 1) % SLOTS;
        }
        if table[place].tag == 0 {
            table[place] = Slot { tag: tag(hash), role };
        }
    }
    table
}

/// The character at `at`; the rows are valid UTF-8.
const fn decode(bytes: &[u8], at: usize) -> (char, usize) {
    let b = bytes[at] as u32;
    let (mut code, length) = match b {
        0..=0x7f => (b, 1),
        0x80..=0xdf => (b & 0x1f, 2),
        0xe0..=0xef => (b & 0x0f, 3),
        _ => (b & 0x07, 4),
    };
    let mut i = 1;
    while i < length {
        code = code << 6 | bytes[at + i] as u32 & 0x3f;
        i += 1;
    }
    match char::from_u32(code) {
        Some(c) => (c, length),
        None => ('?', length),
    }
}
