//! Tokens to items: a number, its unit, range and tolerance become one figure; everything else stays a word or a sign.

use super::cues::Cues;
use super::figures::Figure;
use super::fold::Mark;
use super::item::{Item, What};
use super::number::Printed;
use super::roles::{Role, Unit};
use super::scan::Tokens;

/// What is on a page at all, so that rules for other things need not look.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Seen {
    /// All roles of its words.
    pub cues: Cues,
    /// What else its words may be; see [`Page::may_be`](super::page::Page::may_be).
    pub also: Cues,
    /// A bit for each sign.
    pub marks: u32,
    /// A bit for each unit of its figures.
    pub units: u32,
    /// Which of its first 64 figures are watts, a bit each.
    pub watts: u64,
    /// Which of its first 64 figures have no unit.
    pub bare: u64,
    /// Has a model, item or type number.
    pub codes: bool,
    /// Has a figure of several values with strokes between them.
    pub lists: bool,
}

/// Most items that are looked at; a listing has a few dozen, a long one a few hundred.
const MOST_ITEMS: usize = 16_384;
/// Most figures that are looked at. Rules compare figures with one another, so this bounds the time that a text can take.
const MOST_FIGURES: usize = 512;

/// Builds items and figures from the tokens.
pub(super) struct Builder<'a> {
    pub tokens: &'a [Item],
    numbers: &'a [Printed],
    pub text: &'a str,
    pub items: &'a mut Vec<Item>,
    figures: &'a mut Vec<Figure>,
    /// A word has come by that a stock number or a paper's may follow.
    labels_stock: bool,
    seen: Seen,
}

/// Builds the items and figures of a page; returns what is on it, and where it stopped if there are too many.
pub(super) fn build(
    text: &str,
    tokens: &Tokens,
    items: &mut Vec<Item>,
    figures: &mut Vec<Figure>,
) -> (Seen, Option<u32>) {
    items.clear();
    figures.clear();
    let Tokens { all: tokens, numbers } = tokens;
    items.reserve(tokens.len());
    let mut b = Builder { tokens, numbers, text, items, figures, labels_stock: false, seen: Seen::default() };
    // What plain tokens show is gathered apart: most tokens are plain, and so it stays out of memory.
    let (mut i, mut seen) = (0, Seen::default());
    // An item takes a token or more.
    let many = tokens.len() >= MOST_ITEMS;
    while let Some(token) = tokens.get(i) {
        if many && b.items.len() >= MOST_ITEMS {
            return (b.seen.and(seen), Some(token.start));
        }
        if token.open {
            if b.figures.len() >= MOST_FIGURES {
                return (b.seen.and(seen), Some(token.start));
            }
            // Most open tokens are numbers.
            i = match b.numbers.get(usize::from(token.figure)) {
                Some(&number) => b.number_at(i, number),
                None => b.settle(i),
            };
            continue;
        }
        debug_assert!(
            b.settled(token.role, i).is_none(),
            "settled.rs changes a role that Role::open does not name"
        );
        seen.token(token);
        // As a slice, since `push` would copy it twice.
        b.items.extend_from_slice(std::slice::from_ref(token));
        i += 1;
    }
    (b.seen.and(seen), None)
}

impl Seen {
    /// Adds a token that stays as it is.
    fn token(&mut self, token: &Item) {
        self.cues = self.cues.and(token.cue);
        self.also = self.also.and(token.also);
        self.marks |= token.sign;
        self.codes |= token.what == What::Code;
    }

    /// Both together.
    fn and(self, other: Self) -> Self {
        Self {
            cues: self.cues.and(other.cues),
            also: self.also.and(other.also),
            marks: self.marks | other.marks,
            units: self.units | other.units,
            watts: self.watts | other.watts,
            bare: self.bare | other.bare,
            codes: self.codes | other.codes,
            lists: self.lists | other.lists,
        }
    }
}

impl Builder<'_> {
    /// Takes token `i` as it is.
    fn plain(&mut self, i: usize) -> usize {
        self.seen.token(&self.tokens[i]);
        self.items.push(self.tokens[i]);
        i + 1
    }

    /// Takes the number at token `i`, and what belongs to it; returns the token after that.
    fn number_at(&mut self, i: usize, number: Printed) -> usize {
        if self.labels_stock && self.stock_number(i) { self.code(i) } else { self.figure(i, number) }
    }

    /// Takes the open token `i`, which is no number, and what belongs to it; returns the token after that.
    fn settle(&mut self, i: usize) -> usize {
        match self.tokens[i].what {
            What::Mark(Mark::Stop) => self.stop(i),
            // "one" alone is an article more often than a number.
            What::Word(Role::Number(1)) if !self.counts_one(i) => self.word_as(Role::None, i),
            What::Word(Role::Number(n)) => self.worded(i, n),
            // "50 by 3W"
            What::Word(Role::By) if i > 0 && self.number(i - 1).is_some() && self.number(i + 1).is_some() => {
                self.sign_as(Mark::Times, i)
            }
            What::Word(Role::Stock | Role::Deny | Role::Quantity) => {
                self.labels_stock = true;
                self.plain(i)
            }
            What::Word(Role::Board) => self.board(i),
            What::Word(role) => self.word_as(self.settled(role, i).unwrap_or(role), i),
            // "* 576 diodes": a bullet.
            What::Mark(Mark::Times)
                if (i == 0 || self.mark(i - 1) == Some(Mark::Line)) && !self.glued(i + 1) =>
            {
                self.sign_as(Mark::Pipe, i)
            }
            What::Mark(_) | What::Code | What::Figure(_) => self.plain(i),
        }
    }

    /// Takes the word for a board at token `i`; "chip-on-board" is one word.
    fn board(&mut self, i: usize) -> usize {
        let Some(chip) = self.chip_on(i) else { return self.plain(i) };
        // Each of its tokens has become an item.
        self.items.truncate(self.items.len() - (i - chip));
        let first = &self.tokens[chip];
        let cob = self.tokens[i].in_role(Role::Cob);
        self.seen.cues = self.seen.cues.and(cob.cue);
        self.items.push(Item { start: first.start, spaced: first.spaced, ..cob });
        i + 1
    }

    /// Takes the full stop at token `i`: the end of a sentence, part of an abbreviation, or the first of a leader.
    fn stop(&mut self, i: usize) -> usize {
        if let Some(after) = self.leader(i) {
            self.sign_as(Mark::Colon, i);
            return after;
        }
        if self.ends_sentence(i) { self.plain(i) } else { i + 1 }
    }

    /// Takes the tokens from `i` to `end` as one code.
    pub(super) fn code_until(&mut self, i: usize, end: usize) -> usize {
        let t = &self.tokens[i];
        self.seen.codes = true;
        self.items.push(Item::other(What::Code, (t.start, self.tokens[end - 1].end), t.spaced));
        end
    }

    /// Adds a figure.
    #[inline(always)]
    #[expect(
        clippy::inline_always,
        reason = "a figure is large, and handing it on costs more than adding it"
    )]
    #[expect(clippy::cast_possible_truncation, reason = "at most MOST_ITEMS items")]
    pub(super) fn add(&mut self, figure: Figure, spaced: bool) {
        let (place, index) = (self.items.len() as u16, self.figures.len() as u16);
        self.seen.units |= 1 << figure.unit as u32;
        let bit = 1_u64.checked_shl(u32::from(index)).unwrap_or(0);
        self.seen.watts |= if figure.unit == Unit::Watt { bit } else { 0 };
        self.seen.bare |= if figure.unit == Unit::Bare { bit } else { 0 };
        self.seen.lists |= figure.list;
        let item = Item::other(What::Figure(index), (figure.start, figure.end), spaced);
        self.items.push(Item { cue: figure.cue(), ..item });
        self.figures.push(Figure { item: place, ..figure });
    }

    /// Takes the word at token `i` in another role.
    fn word_as(&mut self, role: Role, i: usize) -> usize {
        self.seen.cues = self.seen.cues.and(role.cue());
        self.seen.also = self.seen.also.and(self.tokens[i].also);
        self.items.push(self.tokens[i].in_role(role));
        i + 1
    }

    /// Takes token `i` for a sign.
    pub(super) fn sign_as(&mut self, mark: Mark, i: usize) -> usize {
        let t = &self.tokens[i];
        self.seen.marks |= mark.bit();
        self.items.push(Item::other(What::Mark(mark), (t.start, t.end), t.spaced));
        i + 1
    }

    pub(super) fn mark(&self, i: usize) -> Option<Mark> {
        self.tokens.get(i).and_then(|t| t.mark)
    }

    pub(super) fn role(&self, i: usize) -> Role {
        self.tokens.get(i).map_or(Role::None, |t| t.role)
    }

    pub(super) fn number(&self, i: usize) -> Option<Printed> {
        self.numbers.get(usize::from(self.tokens.get(i)?.figure)).copied()
    }

    pub(super) fn glued(&self, i: usize) -> bool {
        self.tokens.get(i).is_some_and(|t| !t.spaced)
    }

    /// A full stop ends a sentence before white space, unless an abbreviation stands before it.
    fn ends_sentence(&self, i: usize) -> bool {
        let full_width = self.tokens[i].end - self.tokens[i].start > 1;
        if self.glued(i + 1) && !full_width {
            return false;
        }
        let Some(last) = i.checked_sub(1) else { return false };
        !matches!(
            self.role(last),
            Role::Short
                | Role::Approx
                | Role::Versus
                | Role::Rating
                | Role::Equivalent
                | Role::Ppe
                | Role::Current
        )
    }
}
