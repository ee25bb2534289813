//! The vocabulary: one file a language, one row a role.
//!
//! To add a language: add a file with a `ROWS` like its neighbours, and its name to `LANGUAGES`; words that another language
//! uses otherwise go into an `ALSO`, see there. Words are written as the language writes them, in lower case, separated by
//! spaces; accents are folded away on both sides. Words of scripts without spaces are found inside a run of characters, the
//! longest first.

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
mod spelling;
mod sv;
mod table;
mod tr;
mod zh;

use super::roles::Role;
pub(super) use spelling::{Spelling, before_first, eight, letters};
pub(super) use table::{Known, look_up, look_up_short};

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

/// What some words may be beside their role, in another language or in some company: "in" is inches, and joins a level to a
/// figure. Rules that can tell ask for it with [`Page::may_be`](super::page::Page::may_be); to all others such a word is
/// what `LANGUAGES` says, or no known word.
const ALSO: [&[Row]; 11] = [
    en::ALSO,
    de::ALSO,
    fr::ALSO,
    es::ALSO,
    it::ALSO,
    nl::ALSO,
    pl::ALSO,
    pt::ALSO,
    sv::ALSO,
    tr::ALSO,
    ru::ALSO,
];

/// The longest word of a script without spaces, in characters.
pub(super) const LONGEST_IDEOGRAPHS: usize = 8;

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
