//! One thing on the page: a word, a figure, a sign or a code, with its place in the text.

use super::fold::Mark;
use super::roles::{Cues, Role};

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
    /// The role as a set; empty for anything but a word.
    pub cue: Cues,
    /// The figure's index, [`Item::NO_FIGURE`] for anything else.
    pub figure: u16,
    /// The sign, if it is one.
    pub mark: Option<Mark>,
    /// White space stands before it.
    pub spaced: bool,
}

impl Item {
    /// More than any index of a figure.
    const NO_FIGURE: u16 = u16::MAX;

    pub(super) const fn is_figure(&self) -> bool {
        self.figure != Self::NO_FIGURE
    }

    /// A word from byte `start` to `end`.
    #[inline]
    pub(super) const fn word(role: Role, cue: Cues, (start, end): (u32, u32), spaced: bool) -> Self {
        let figure = Self::NO_FIGURE;
        Self { what: What::Word(role), role, start, end, cue, figure, mark: None, spaced }
    }

    /// A figure, a sign or a code from byte `start` to `end`.
    #[inline]
    pub(super) const fn other(what: What, (start, end): (u32, u32), spaced: bool) -> Self {
        let figure = if let What::Figure(index) = what { index } else { Self::NO_FIGURE };
        let mark = if let What::Mark(mark) = what { Some(mark) } else { None };
        Self { what, role: Role::None, start, end, cue: Cues(0), figure, mark, spaced }
    }
}
