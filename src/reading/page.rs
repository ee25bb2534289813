//! The items of one text, and how rules look at them.

use super::builder::Seen;
use super::figures::{Figure, Item, What};
use super::fold::Mark;
use super::item::Letters;
use super::roles::{Cues, Role, Unit};

/// The page.
#[derive(Clone, Copy)]
pub(super) struct Page<'a> {
    pub text: &'a str,
    pub items: &'a [Item],
    pub figures: &'a [Figure],
    /// All roles on the page.
    pub cues: Cues,
    seen: Seen,
}

/// The figures that have one unit. Which of the first 64 have it was noted as they were built, so that rules for some of the
/// figures need not ask each of them.
#[derive(Clone)]
pub(super) struct Alike<'a> {
    figures: &'a [Figure],
    unit: Unit,
    bits: u64,
    beyond: usize,
}

impl Iterator for Alike<'_> {
    type Item = usize;

    #[inline]
    fn next(&mut self) -> Option<usize> {
        if self.bits != 0 {
            let first = self.bits.trailing_zeros() as usize;
            self.bits &= self.bits - 1;
            return Some(first);
        }
        while let Some(f) = self.figures.get(self.beyond) {
            self.beyond += 1;
            if f.unit == self.unit {
                return Some(self.beyond - 1);
            }
        }
        None
    }
}

impl<'a> Page<'a> {
    pub(super) fn new(text: &'a str, items: &'a [Item], figures: &'a [Figure], seen: Seen) -> Self {
        Self { text, items, figures, cues: seen.cues, seen }
    }

    /// Whether a figure on the page has one of the units.
    pub(super) fn has_unit(&self, units: &[Unit]) -> bool {
        units.iter().any(|&u| self.seen.units >> u as u32 & 1 == 1)
    }

    /// Whether a figure on the page has one of the units, a bit each.
    pub(super) fn has_any(&self, units: u32) -> bool {
        self.seen.units & units != 0
    }

    /// Whether the sign is on the page.
    pub(super) fn has_mark(&self, mark: Mark) -> bool {
        self.seen.marks >> mark as u64 & 1 == 1
    }

    /// The indices of the figures of watts, in their order.
    pub(super) fn watts(&self) -> Alike<'a> {
        Alike { figures: self.figures, unit: Unit::Watt, bits: self.seen.watts, beyond: 64 }
    }

    /// The figures of watts straight after a bare number, and with `before` those straight before one too; there may be no
    /// number beside those beyond the first 63.
    pub(super) fn watts_beside_numbers(&self, before: bool) -> Alike<'a> {
        let after = self.seen.bare << 1;
        let beside = if before { after | self.seen.bare >> 1 } else { after };
        Alike { bits: self.seen.watts & (beside | 1 << 63), ..self.watts() }
    }

    /// The indices of the bare numbers, in their order.
    pub(super) fn bare(&self) -> Alike<'a> {
        Alike { figures: self.figures, unit: Unit::Bare, bits: self.seen.bare, beyond: 64 }
    }

    /// Whether a figure on the page is a list of values.
    pub(super) fn has_lists(&self) -> bool {
        self.seen.lists
    }

    /// Whether a code is on the page.
    pub(super) fn has_codes(&self) -> bool {
        self.seen.codes
    }

    pub(super) fn what(&self, i: usize) -> Option<What> {
        self.items.get(i).map(|i| i.what)
    }

    /// The role at item `i`; `None` for anything but a known word.
    pub(super) fn role(&self, i: usize) -> Role {
        self.items.get(i).map_or(Role::None, |item| item.role)
    }

    /// The role of the item before item `i`.
    pub(super) fn role_before(&self, i: usize) -> Role {
        i.checked_sub(1).map_or(Role::None, |i| self.role(i))
    }

    pub(super) fn mark(&self, i: usize) -> Option<Mark> {
        self.items.get(i).and_then(|item| item.mark)
    }

    pub(super) fn mark_before(&self, i: usize) -> Option<Mark> {
        i.checked_sub(1).and_then(|i| self.mark(i))
    }

    /// The bit of the sign at item `i`, 0 if it is none: to compare with several at once.
    pub(super) fn sign(&self, i: usize) -> u64 {
        self.mark(i).map_or(0, Mark::bit)
    }

    pub(super) fn sign_before(&self, i: usize) -> u64 {
        i.checked_sub(1).map_or(0, |i| self.sign(i))
    }

    /// The role of item `i`, or the unit of the figure there, as a set; see [`Cues::WATTS`].
    pub(super) fn plays(&self, i: usize) -> Cues {
        self.items.get(i).map_or(Cues::default(), |item| item.cue)
    }

    pub(super) fn figure(&self, i: usize) -> Option<&'a Figure> {
        self.figures.get(usize::from(self.items.get(i)?.figure))
    }

    pub(super) fn figure_before(&self, i: usize) -> Option<&'a Figure> {
        i.checked_sub(1).and_then(|i| self.figure(i))
    }

    pub(super) fn spaced(&self, i: usize) -> bool {
        self.items.get(i).is_none_or(|i| i.spaced)
    }

    /// The words of item `i`.
    pub(super) fn words(&self, i: usize) -> &'a str {
        self.items.get(i).map_or("", |i| &self.text[i.start as usize..i.end as usize])
    }

    /// Whether item `i` is the word.
    pub(super) fn is(&self, i: usize, word: Letters) -> bool {
        self.items.get(i).is_some_and(|item| item.is(word))
    }

    /// Whether item `i` is a word that starts with the letters.
    pub(super) fn starts(&self, i: usize, letters: Letters) -> bool {
        self.items.get(i).is_some_and(|item| item.starts(letters))
    }

    /// Whether item `i` plays one of the roles, or may play it in another language or beside some words.
    pub(super) fn may_be(&self, i: usize, roles: Cues) -> bool {
        self.items.get(i).is_some_and(|item| item.cue.and(item.also).any(roles))
    }

    /// The last letter or digit of item `i`; signs and zero-width characters after it do not count.
    pub(super) fn last_letter(&self, i: usize) -> Option<char> {
        self.words(i).chars().rfind(|c| c.is_alphanumeric())
    }

    /// How many letters item `i` has.
    pub(super) fn letters(&self, i: usize) -> usize {
        self.words(i).chars().filter(|c| c.is_alphabetic()).count()
    }

    /// Whether item `i` is written in capitals.
    pub(super) fn capitals(&self, i: usize) -> bool {
        !self.words(i).chars().any(char::is_lowercase)
    }

    /// Whether the sign at item `i` ends a phrase. A hyphen does with white space on both sides.
    pub(super) fn breaks(&self, i: usize) -> bool {
        match self.mark(i) {
            // "consumption: ~ 395 W"
            Some(Mark::Tilde)
                if self.is_watts(i + 1) && matches!(self.mark_before(i), Some(Mark::Colon | Mark::Equal)) =>
            {
                false
            }
            Some(Mark::Dash | Mark::Dot | Mark::Tilde) => self.spaced(i) && self.spaced(i + 1),
            Some(
                Mark::Comma
                | Mark::Stop
                | Mark::Line
                | Mark::Pipe
                | Mark::Question
                | Mark::Bang
                | Mark::Arrow
                | Mark::Slash
                | Mark::Plus
                | Mark::And
                | Mark::Other,
            ) => true,
            _ => false,
        }
    }

    /// "| W 100 |": whether the unit at item `i` fills a cell with the number after it.
    pub(super) fn cell(&self, i: usize) -> bool {
        let ends = |m: Option<Mark>| matches!(m, Some(Mark::Pipe | Mark::Line));
        let starts = i == 0 || ends(self.mark(i - 1));
        starts && (i + 2 >= self.items.len() || ends(self.mark(i + 2)))
    }

    /// Whether item `i` is a figure of watts.
    pub(super) fn is_watts(&self, i: usize) -> bool {
        self.items.get(i).is_some_and(|item| item.cue.any(Cues::WATTS))
    }

    /// Whether a word for things that are counted follows the number at item `i`.
    pub(super) fn counts_something(&self, i: usize) -> bool {
        matches!(
            self.role(i + 1),
            Role::Diode
                | Role::Led
                | Role::Chip
                | Role::Pieces
                | Role::Cob
                | Role::Part
                | Role::Board
                | Role::Colour(_)
                | Role::Light
                | Role::Lights
                | Role::Package(_)
                | Role::Pack
                | Role::Device
                | Role::Letter(_)
        ) || self.mark(i + 1) == Some(Mark::Times)
    }
}
