//! The items of one text, and how rules look at them.

use super::builder::Seen;
use super::cues::Cues;
use super::figures::{Figure, Item, What};
use super::fold::Mark;
use super::item::Letters;
use super::roles::{Role, Unit};

/// The page.
#[derive(Clone, Copy)]
pub(super) struct Page<'a> {
    pub text: &'a str,
    pub items: &'a [Item],
    pub figures: &'a [Figure],
    /// All roles on the page.
    pub cues: Cues,
    /// The same, and all roles that a word on the page may play.
    pub may: Cues,
    seen: Seen,
}

impl<'a> Page<'a> {
    pub(super) fn new(text: &'a str, items: &'a [Item], figures: &'a [Figure], seen: Seen) -> Self {
        Self { text, items, figures, cues: seen.cues, may: seen.cues.and(seen.also), seen }
    }

    /// Whether a figure on the page has one of the units.
    pub(super) fn has_unit(&self, units: &[Unit]) -> bool {
        units.iter().any(|&u| self.seen.units >> u as u32 & 1 == 1)
    }

    /// The figures of watts with their indices, in the order of the text.
    pub(super) fn watts(&self) -> OfUnit<'a> {
        OfUnit {
            first: self.seen.watts,
            next: u64::BITS as usize,
            units: bit(Unit::Watt),
            figures: self.figures,
        }
    }

    /// The figures of watts straight after a bare number, and with `before` those straight before one too; there may be no
    /// number beside those beyond the first 63.
    pub(super) fn watts_beside_numbers(&self, before: bool) -> OfUnit<'a> {
        let after = self.seen.bare << 1;
        let beside = if before { after | self.seen.bare >> 1 } else { after };
        OfUnit { first: self.seen.watts & (beside | 1 << 63), ..self.watts() }
    }

    /// The numbers without a unit with their indices, in the order of the text.
    pub(super) fn bare(&self) -> OfUnit<'a> {
        OfUnit {
            first: self.seen.bare,
            next: u64::BITS as usize,
            units: bit(Unit::Bare),
            figures: self.figures,
        }
    }

    /// The figures with other units than watts, and with `bare` those without a unit too: every other figure of a title is
    /// watts, and most others are bare numbers.
    #[expect(clippy::cast_possible_truncation, reason = "at most 64")]
    pub(super) fn others(&self, bare: bool) -> OfUnit<'a> {
        let beyond = u64::MAX.checked_shl(self.figures.len().min(64) as u32).unwrap_or(0);
        let (left, unit) = if bare { (0, 0) } else { (self.seen.bare, bit(Unit::Bare)) };
        OfUnit { first: !(beyond | self.seen.watts | left), units: !(bit(Unit::Watt) | unit), ..self.watts() }
    }

    /// Whether a figure on the page has one of the units, a bit each.
    pub(super) fn has_any(&self, units: u32) -> bool {
        self.seen.units & units != 0
    }

    /// Whether the sign is on the page.
    pub(super) fn has_mark(&self, mark: Mark) -> bool {
        self.seen.marks & mark.bit() != 0
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

    /// Item `i`, a blank one where the text has ended: to ask it without a branch.
    fn item(&self, i: usize) -> &'a Item {
        self.items.get(i).unwrap_or(&Item::BLANK)
    }

    /// The role at item `i`; `None` for anything but a known word.
    pub(super) fn role(&self, i: usize) -> Role {
        self.item(i).role
    }

    /// The role of the item before item `i`. Before the first item there is none, as there is none behind the last.
    pub(super) fn role_before(&self, i: usize) -> Role {
        self.role(i.wrapping_sub(1))
    }

    pub(super) fn mark(&self, i: usize) -> Option<Mark> {
        self.item(i).mark
    }

    pub(super) fn mark_before(&self, i: usize) -> Option<Mark> {
        self.mark(i.wrapping_sub(1))
    }

    /// The bit of the sign at item `i`, 0 if it is none: to compare with several at once.
    ///
    /// Without a branch: whether a sign stands beside a number nobody can foretell.
    pub(super) fn sign(&self, i: usize) -> u32 {
        self.item(i).sign
    }

    pub(super) fn sign_before(&self, i: usize) -> u32 {
        self.sign(i.wrapping_sub(1))
    }

    /// The role of item `i`, or the unit of the figure there, as a set; see [`Cues::WATTS`].
    pub(super) fn plays(&self, i: usize) -> Cues {
        self.item(i).cue
    }

    pub(super) fn figure(&self, i: usize) -> Option<&'a Figure> {
        self.figures.get(usize::from(self.items.get(i)?.figure))
    }

    pub(super) fn figure_before(&self, i: usize) -> Option<&'a Figure> {
        self.figure(i.wrapping_sub(1))
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
        self.items.get(i).is_some_and(|item| item.may_be(roles))
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
        let sign = self.sign(i);
        sign & BREAKS != 0 || sign & APART != 0 && self.apart(i)
    }

    /// Whether white space on both sides of the sign at item `i` makes it a break.
    #[inline(never)]
    fn apart(&self, i: usize) -> bool {
        // "consumption: ~ 395 W"
        let about = self.mark(i) == Some(Mark::Tilde)
            && self.is_watts(i + 1)
            && matches!(self.mark_before(i), Some(Mark::Colon | Mark::Equal));
        self.spaced(i) && self.spaced(i + 1) && !about
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

/// Signs that end a phrase, and those that do with white space on both sides.
const BREAKS: u32 = Mark::bits(&[
    Mark::Comma,
    Mark::Stop,
    Mark::Line,
    Mark::Pipe,
    Mark::Question,
    Mark::Bang,
    Mark::Arrow,
    Mark::Slash,
    Mark::Plus,
    Mark::And,
    Mark::Other,
]);
const APART: u32 = Mark::bits(&[Mark::Dash, Mark::Dot, Mark::Tilde]);

/// Signs that may end a phrase; see [`Page::breaks`].
pub(super) const MAY_BREAK: u32 = BREAKS | APART;

/// Figures of one unit, or of several.
pub(super) struct OfUnit<'a> {
    /// A bit for each that is left of the first 64. No other figure of a title is looked at.
    first: u64,
    /// Where to look on behind those.
    next: usize,
    /// Which units those have, a bit each.
    units: u32,
    figures: &'a [Figure],
}

/// The bit of a unit.
const fn bit(unit: Unit) -> u32 {
    1 << unit as u32
}

impl<'a> Iterator for OfUnit<'a> {
    type Item = (usize, &'a Figure);

    #[inline]
    fn next(&mut self) -> Option<Self::Item> {
        if self.first != 0 {
            let index = self.first.trailing_zeros() as usize;
            self.first &= self.first - 1;
            return Some((index, &self.figures[index]));
        }
        if self.next >= self.figures.len() {
            return None;
        }
        let index = beyond(self.figures, self.next, self.units)?;
        self.next = index + 1;
        Some((index, &self.figures[index]))
    }
}

/// The index of the first figure of the units from `next` on. Hardly a title has more than 64 figures, so this is kept out of
/// the way of the rules that look for a unit.
#[cold]
#[inline(never)]
fn beyond(figures: &[Figure], next: usize, units: u32) -> Option<usize> {
    let found = figures[next..].iter().position(|figure| units & bit(figure.unit) != 0);
    found.map(|further| next + further)
}

impl Page<'_> {
    /// A bit for each of the first 64 figures that is one of watts after another, all bits if there are more figures.
    pub(super) fn rows_of_watts(&self) -> u64 {
        let rows = self.seen.watts & self.seen.watts << 1;
        if self.figures.len() > u64::BITS as usize { u64::MAX } else { rows }
    }
}
