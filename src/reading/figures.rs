//! Tokens to items: a number, its unit, range and tolerance become one figure; everything else stays a word or a sign.

use super::fold::Mark;
pub(super) use super::item::{Item, What};
use super::number::Printed;
use super::roles::{Cues, Role, Unit};
use super::scan::Tokens;
use super::units::same_kind;
use crate::facts::Tolerance;

/// What is on a page at all, so that rules for other things need not look.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Seen {
    /// All roles of its words.
    pub cues: Cues,
    /// A bit for each sign.
    pub marks: u64,
    /// A bit for each unit of its figures.
    pub units: u32,
    /// Has a model, item or type number.
    pub codes: bool,
    /// Has a figure of several values with strokes between them.
    pub lists: bool,
}

/// A number with all that belongs to it.
#[derive(Debug, Clone, Copy)]
#[expect(clippy::struct_excessive_bools, reason = "marks of print that are independent of one another")]
pub(super) struct Figure {
    pub unit: Unit,
    pub low: f64,
    pub high: f64,
    /// Half a unit of the last digit printed.
    pub half: f64,
    pub range: bool,
    /// Several values with strokes between them: `30/40/50W`.
    pub list: bool,
    /// Per metre or per area.
    pub per: bool,
    pub tolerance: Option<Tolerance>,
    /// The number was a word.
    pub worded: bool,
    pub decimal: bool,
    /// Its item.
    pub item: u16,
    pub start: u32,
    pub end: u32,
}

impl Figure {
    /// One value with nothing beside it.
    const fn plain(unit: Unit, value: f64, half: f64, start: u32, end: u32) -> Self {
        Self {
            unit,
            low: value,
            high: value,
            half,
            range: false,
            list: false,
            per: false,
            tolerance: None,
            worded: false,
            decimal: false,
            item: 0,
            start,
            end,
        }
    }
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
    let Tokens { all: tokens, numbers, open } = tokens;
    let mut b = Builder { tokens, numbers, text, items, figures, seen: Seen::default() };
    let mut i = 0;
    for &at in open {
        let at = at as usize;
        // One that an earlier figure has taken.
        if at < i {
            continue;
        }
        let stop = b.plain(i, at);
        if stop.is_some() || b.items.len() >= MOST_ITEMS {
            return (b.seen, stop.or(Some(tokens[at].start)));
        }
        i = b.settle(at);
        if b.figures.len() >= MOST_FIGURES {
            return (b.seen, tokens.get(i).map(|t| t.start));
        }
    }
    let stop = b.plain(i, tokens.len());
    (b.seen, stop)
}

impl Builder<'_> {
    /// Takes the tokens from `from` to `to` as they are; returns where it stopped if they are too many.
    fn plain(&mut self, from: usize, to: usize) -> Option<u32> {
        let end = to.min(from + MOST_ITEMS - self.items.len());
        let tokens = &self.tokens[from..end];
        for t in tokens {
            self.seen.cues = self.seen.cues.and(t.cue);
            self.seen.marks |= t.mark.map_or(0, |mark| 1 << mark as u64);
            self.seen.codes |= t.what == What::Code;
            debug_assert!(!t.role.open(), "a word that settled.rs looks at");
        }
        self.items.extend_from_slice(tokens);
        (end < to).then(|| self.tokens[end].start)
    }

    /// Takes the open token `i`, and what belongs to it; returns the token after that.
    fn settle(&mut self, i: usize) -> usize {
        match self.tokens[i].what {
            What::Figure(_) if self.stock_number(i) => self.code(i),
            What::Figure(n) => self.figure(i, self.numbers[usize::from(n)]),
            What::Mark(Mark::Stop) if !self.ends_sentence(i) => i + 1,
            // "one" alone is an article more often than a number.
            What::Word(Role::Number(1)) if !self.counts_one(i) => self.word_as(Role::None, i),
            What::Word(Role::Number(n)) => self.worded(i, n),
            // "50 by 3W"
            What::Word(Role::By) if i > 0 && self.number(i - 1).is_some() && self.number(i + 1).is_some() => {
                self.sign_as(Mark::Times, i)
            }
            What::Word(role) => self.word_as(self.settled(role, i).unwrap_or(role), i),
            // "* 576 diodes": a bullet.
            What::Mark(Mark::Times)
                if (i == 0 || self.mark(i - 1) == Some(Mark::Line)) && !self.glued(i + 1) =>
            {
                self.sign_as(Mark::Pipe, i)
            }
            What::Mark(_) | What::Code => {
                self.plain(i, i + 1);
                i + 1
            }
        }
    }

    /// Takes the tokens from `i` to `end` as one code.
    pub(super) fn code_until(&mut self, i: usize, end: usize) -> usize {
        let t = &self.tokens[i];
        self.seen.codes = true;
        self.items.push(Item::other(What::Code, (t.start, self.tokens[end - 1].end), t.spaced));
        end
    }

    /// Takes the word at token `i` in another role.
    fn word_as(&mut self, role: Role, i: usize) -> usize {
        let t = &self.tokens[i];
        self.seen.cues = self.seen.cues.and(role.cue());
        self.items.push(Item::word(role, role.cue(), (t.start, t.end), t.spaced));
        i + 1
    }

    /// Takes token `i` for a sign.
    fn sign_as(&mut self, mark: Mark, i: usize) -> usize {
        let t = &self.tokens[i];
        self.seen.marks |= 1 << mark as u64;
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

    /// "four", "one hundred and twenty"; "five-watt" is a figure of watts.
    fn worded(&mut self, i: usize, n: u16) -> usize {
        let t = self.tokens[i];
        let (value, next) = self.spelled(i, n);
        let (unit, next) = match self.unit(next) {
            (Unit::Watt, after) => (Unit::Watt, after),
            _ => (Unit::Bare, next),
        };
        let end = self.tokens[next - 1].end;
        let figure = Figure { worded: true, ..Figure::plain(unit, value, 0.5, t.start, end) };
        self.add(figure, t.spaced);
        next
    }

    #[expect(clippy::cast_possible_truncation, reason = "at most MOST_ITEMS items")]
    fn add(&mut self, figure: Figure, spaced: bool) {
        let (item, index) = (self.items.len() as u16, self.figures.len() as u16);
        self.seen.units |= 1 << figure.unit as u32;
        self.seen.lists |= figure.list;
        self.items.push(Item::other(What::Figure(index), (figure.start, figure.end), spaced));
        self.figures.push(Figure { item, ..figure });
    }

    /// Reads the figure whose first number is token `i`; returns the token after it.
    fn figure(&mut self, i: usize, first: Printed) -> usize {
        let t = &self.tokens[i];
        let (unit, next) = self.unit(i + 1);
        if self.goes_on(next) || i > 0 && !t.spaced && self.mark(i - 1) == Some(Mark::Money) {
            return self.long_figure(i, first);
        }
        self.simple(*t, next, unit, first);
        next
    }

    /// Whether what stands at token `i` may belong to the figure before it.
    fn goes_on(&self, i: usize) -> bool {
        /// Ratios, lists, ranges, sizes, tolerances and currencies go on with one of these.
        const SIGNS: u64 = 1 << Mark::Colon as u64
            | 1 << Mark::Slash as u64
            | 1 << Mark::Dash as u64
            | 1 << Mark::Tilde as u64
            | 1 << Mark::Times as u64
            | 1 << Mark::Plus as u64
            | 1 << Mark::PlusMinus as u64
            | 1 << Mark::Open as u64
            | 1 << Mark::Money as u64
            | 1 << Mark::Stop as u64
            | 1 << Mark::Other as u64;
        self.tokens.get(i).is_some_and(|t| match t.mark {
            Some(mark) => SIGNS >> mark as u64 & 1 == 1,
            None => t.is_figure() || matches!(t.role, Role::To | Role::UpTo | Role::Per),
        })
    }

    /// Reads a figure of several numbers, or one with a tolerance or a currency.
    fn long_figure(&mut self, i: usize, first: Printed) -> usize {
        let t = self.tokens[i];
        let mut j = i + 1;
        let mut low = first;
        if let Some(joined) = self.spaced_thousands(i, first) {
            low = joined;
            j = i + 2;
        }
        if let Some(next) = self.ratio(i) {
            self.simple(t, next, Unit::Ratio, low);
            return next;
        }
        if let Some(next) = self.size(i) {
            self.simple(t, next, Unit::Size, low);
            return next;
        }
        let (mut unit, mut next) = self.unit(j);
        let (mut high, mut range, mut list) = (low, false, false);
        if unit == Unit::Bare && self.mark(j) == Some(Mark::Slash) && self.glued(j) {
            // `30/40/50W`, `110/220V`
            let mut part = j;
            while self.mark(part) == Some(Mark::Slash) && self.number(part + 1).is_some() {
                let n = self.number(part + 1).unwrap_or(low);
                if n.value < low.value {
                    low = n;
                }
                if n.value > high.value {
                    high = n;
                }
                list = true;
                part += 2;
            }
            if list {
                (unit, next) = self.unit(part);
            }
        } else if let Some((upper, after)) = self.range(j, low, unit, next) {
            let (second, end) = self.unit(after);
            if unit == Unit::Bare || second == unit || same_kind(unit, second) {
                high = upper;
                range = true;
                unit = if second == Unit::Bare { unit } else { second };
                next = end;
            }
        }
        if self.tokens[i].spaced || i == 0 || self.mark(i - 1) != Some(Mark::Money) {
            if self.mark(next) == Some(Mark::Money) && unit == Unit::Bare && self.number(next + 1).is_none() {
                unit = Unit::Money;
            }
        } else {
            unit = Unit::Money;
        }
        let (unit, scale, fine) = plain_unit(unit);
        if fine {
            (low, high) = (low.as_decimal(), high.as_decimal());
        }
        let per = unit == Unit::Watt && self.per_length(next);
        let (tolerance, after) = self.tolerance(next, unit);
        let end = self.tokens[after - 1].end;
        let figure = Figure {
            high: high.value * scale,
            range,
            list,
            per,
            tolerance,
            decimal: low.decimal,
            ..Figure::plain(unit, low.value * scale, high.half * scale, t.start, end)
        };
        self.add(figure, t.spaced);
        after
    }

    /// One number with its unit.
    fn simple(&mut self, t: Item, next: usize, unit: Unit, n: Printed) {
        let end = self.tokens[next - 1].end;
        let (unit, scale, fine) = plain_unit(unit);
        let n = if fine { n.as_decimal() } else { n };
        let figure = Figure::plain(unit, n.value * scale, n.half * scale, t.start, end);
        self.add(Figure { decimal: n.decimal, ..figure }, t.spaced);
    }
}

/// The unit without its prefix, what to multiply by for that, and whether numbers are small enough that a doubtful full stop
/// is a decimal sign.
fn plain_unit(unit: Unit) -> (Unit, f64, bool) {
    match unit {
        Unit::Kilowatt => (Unit::Watt, 1000.0, true),
        Unit::PhotonFluxMilli => (Unit::PhotonFlux, 1000.0, true),
        Unit::Amp | Unit::PhotonEfficacy | Unit::Joule | Unit::Metre => (unit, 1.0, true),
        _ => (unit, 1.0, false),
    }
}
