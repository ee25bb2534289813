//! One thing on the page: a word, a figure, a sign or a code, with its place in the text.

use super::cues::Cues;
use super::fold::Mark;
use super::roles::Role;
use super::words::Known;

/// What it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum What {
    /// A word.
    Word(Role),
    /// The figure with that index; as long as figures are not built, the number with that index.
    Figure(u16),
    /// A sign.
    Mark(Mark),
    /// Letters and digits joined: a model, item or type number.
    Code,
}

/// One thing on the page, with its place in the text.
#[derive(Debug, Clone, Copy)]
pub(super) struct Item {
    pub what: What,
    /// The role; [`Role::None`] for anything but a known word. This and the two below are in `what` too; rules ask for them
    /// all the time, and here no branch is in the way.
    pub role: Role,
    pub start: u32,
    pub end: u32,
    /// The role as a set, or the unit of a figure (see [`Cues::WATTS`]); empty for anything else.
    pub cue: Cues,
    /// The figure's index, [`Item::NO_FIGURE`] for anything else.
    pub figure: u16,
    /// The sign, if it is one.
    pub mark: Option<Mark>,
    /// The bit of the sign, 0 if it is none: to compare with several at once.
    pub sign: u32,
    /// White space stands before it.
    pub spaced: bool,
    /// It may not become an item as it is: a number, a full stop, a cross, a word that depends on its neighbours.
    pub open: bool,
    /// The first eight letters of a word, folded; see [`Letters`].
    pub letters: u64,
    /// What else a word may be, in another language or beside some words; see [`Page::may_be`](super::page::Page::may_be).
    pub also: Cues,
}

/// A short word, or the letters that words start with, to compare items with at once.
#[derive(Debug, Clone, Copy)]
pub(super) struct Letters {
    bytes: u64,
    mask: u64,
}

impl Letters {
    /// Several words.
    pub(super) const fn all<const N: usize>(words: [&str; N]) -> [Self; N] {
        let mut all = [Self { bytes: 0, mask: 0 }; N];
        let mut i = 0;
        while i < N {
            all[i] = Self::of(words[i]);
            i += 1;
        }
        all
    }

    /// Up to eight ASCII letters in lower case.
    pub(super) const fn of(letters: &str) -> Self {
        let letters = letters.as_bytes();
        assert!(letters.len() <= 8 && !letters.is_empty(), "one to eight letters are compared");
        let (mut bytes, mut i) = (0, 0);
        while i < letters.len() {
            assert!(letters[i].is_ascii_lowercase(), "words are folded to lower case");
            bytes |= (letters[i] as u64) << (8 * i);
            i += 1;
        }
        Self { bytes, mask: u64::MAX >> (64 - 8 * letters.len()) }
    }
}

impl Item {
    /// More than any index of a figure.
    const NO_FIGURE: u16 = u16::MAX;

    /// Nothing, where the text has ended.
    pub(super) const BLANK: Self = Self {
        what: What::Word(Role::None),
        role: Role::None,
        start: 0,
        end: 0,
        cue: Cues(0),
        figure: Self::NO_FIGURE,
        mark: None,
        sign: 0,
        spaced: true,
        open: false,
        letters: 0,
        also: Cues(0),
    };

    /// Whether it is the word. (Of eight letters: or starts with it.)
    pub(super) const fn is(&self, word: Letters) -> bool {
        self.letters == word.bytes
    }

    /// Whether it is a word that starts with the letters.
    pub(super) const fn starts(&self, letters: Letters) -> bool {
        self.letters & letters.mask == letters.bytes
    }

    /// Whether it plays one of the roles, or may play it in another language or beside some words.
    pub(super) const fn may_be(&self, roles: Cues) -> bool {
        self.cue.and(self.also).any(roles)
    }

    pub(super) const fn is_figure(&self) -> bool {
        self.figure != Self::NO_FIGURE
    }

    /// A word from byte `start` to `end` that starts with `letters`.
    #[inline]
    pub(super) const fn word(known: Known, letters: u64, (start, end): (u32, u32), spaced: bool) -> Self {
        let Known { role, cue, also, open } = known;
        let figure = Self::NO_FIGURE;
        Self {
            what: What::Word(role),
            role,
            start,
            end,
            cue,
            figure,
            mark: None,
            sign: 0,
            spaced,
            open,
            letters,
            also,
        }
    }

    /// The same word in another role.
    pub(super) const fn in_role(mut self, role: Role) -> Self {
        (self.what, self.role, self.cue) = (What::Word(role), role, role.cue());
        self
    }

    /// A figure, a sign or a code from byte `start` to `end`.
    #[inline]
    pub(super) const fn other(what: What, (start, end): (u32, u32), spaced: bool) -> Self {
        let figure = if let What::Figure(index) = what { index } else { Self::NO_FIGURE };
        let (mark, sign) = if let What::Mark(mark) = what { (Some(mark), mark.bit()) } else { (None, 0) };
        let open = matches!(what, What::Figure(_) | What::Mark(Mark::Stop | Mark::Times));
        let nothing = Cues(0);
        Self {
            what,
            role: Role::None,
            start,
            end,
            cue: nothing,
            figure,
            mark,
            sign,
            spaced,
            open,
            letters: 0,
            also: nothing,
        }
    }
}
