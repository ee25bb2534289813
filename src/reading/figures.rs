//! Figures: a number with its unit, range and tolerance, or several numbers that belong together.

use super::builder::Builder;
use super::cues::Cues;
use super::fold::Mark;
use super::item::Letters;
pub(super) use super::item::{Item, What};
use super::number::Printed;
use super::roles::{Role, Unit};
use super::units::same_kind;
use crate::facts::Tolerance;

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
    /// Its unit as a set, see [`Cues::WATTS`]. Looked up without a branch: which unit comes next nobody can foretell.
    pub(super) fn cue(&self) -> Cues {
        static CUES: [Cues; 32] = {
            let mut cues = [Cues(0); 32];
            cues[Unit::Watt as usize] = Cues::WATTS;
            cues[Unit::Bare as usize] = Cues::BARE;
            cues[Unit::Nanometre as usize] = Cues::SHADE;
            cues[Unit::Kelvin as usize] = Cues::SHADE;
            cues[Unit::Other as usize] = Cues::LETTERED;
            cues
        };
        CUES[self.unit as usize % CUES.len()]
    }

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

impl Builder<'_> {
    /// "four", "one hundred and twenty"; "five-watt" is a figure of watts.
    pub(super) fn worded(&mut self, i: usize, n: u16) -> usize {
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

    /// Reads the figure whose first number is token `i`; returns the token after it.
    pub(super) fn figure(&mut self, i: usize, first: Printed) -> usize {
        let t = &self.tokens[i];
        // Every other number is watts: they need no further look.
        let (unit, next) =
            if self.role(i + 1) == Role::Unit(Unit::Watt) { (Unit::Watt, i + 2) } else { self.unit(i + 1) };
        if self.goes_on(next) || i > 0 && !t.spaced && self.mark(i - 1) == Some(Mark::Money) {
            return self.long_figure(i, first, (unit, next));
        }
        self.simple(i, next, unit, first);
        next
    }

    /// Whether what stands at token `i` may belong to the figure before it.
    fn goes_on(&self, i: usize) -> bool {
        /// Ratios, lists, ranges, sizes, tolerances and currencies go on with one of these.
        const SIGNS: u32 = Mark::bits(&[
            Mark::Colon,
            Mark::Slash,
            Mark::Dash,
            Mark::Tilde,
            Mark::Times,
            Mark::Plus,
            Mark::PlusMinus,
            Mark::Open,
            Mark::Money,
            Mark::Stop,
            Mark::Other,
        ]);
        self.tokens.get(i).is_some_and(|t| match t.mark {
            Some(mark) => SIGNS & mark.bit() != 0,
            None => t.is_figure() || matches!(t.role, Role::To | Role::UpTo | Role::Per),
        })
    }

    /// Reads a figure of several numbers, or one with a tolerance or a currency; `unit` is that straight after the first number,
    /// and the token after it.
    fn long_figure(&mut self, i: usize, first: Printed, unit: (Unit, usize)) -> usize {
        let (start, spaced) = (self.tokens[i].start, self.tokens[i].spaced);
        let (mut unit, mut next) = unit;
        let (mut j, mut low) = (i + 1, first);
        if let Some(second) = self.number(i + 1) {
            if let Some(joined) = self.spaced_thousands(i, first) {
                low = joined;
                j = i + 2;
                (unit, next) = self.unit(j);
            }
            if let Some((upper, unit, next)) = self.spaced_range(i) {
                let end = self.tokens[next - 1].end;
                let low = first.value * 1000.0 + second.value;
                let figure = Figure::plain(unit, low, 0.5, start, end);
                self.add(Figure { high: upper.value, range: true, ..figure }, spaced);
                return next;
            }
        }
        if let Some(next) = self.ratio(i) {
            self.simple(i, next, Unit::Ratio, low);
            return next;
        }
        if let Some(next) = self.count_and_class(i, first) {
            return next;
        }
        if self.count_times_watts(i) {
            self.simple(i, j, Unit::Bare, low);
            self.sign_as(Mark::Times, j);
            if let Some(watts) = self.number(j + 1) {
                self.simple(j + 1, j + 2, Unit::Watt, watts);
            }
            return j + 2;
        }
        if self.mark(next) == Some(Mark::Times)
            && let Some(next) = self.size(i)
        {
            self.simple(i, next, Unit::Size, low);
            return next;
        }
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
                if high.value < low.value {
                    (low, high) = (high, low);
                }
                range = true;
                unit = if second == Unit::Bare { unit } else { second };
                next = end;
            }
        }
        if spaced || i == 0 || self.mark(i - 1) != Some(Mark::Money) {
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
            ..Figure::plain(unit, low.value * scale, high.half * scale, start, end)
        };
        self.add(figure, spaced);
        after
    }

    /// "LEDs (qty/type): 100/3W", "Dioden (Typ / Anzahl): 3W / 100": a count and a class, as the label before token `i` says, the
    /// first of them `first`. Adds both with a cross between them; returns the token after them.
    fn count_and_class(&mut self, i: usize, first: Printed) -> Option<usize> {
        let mut label =
            i.checked_sub(1).filter(|&k| matches!(self.mark(k), Some(Mark::Colon | Mark::Equal)))?;
        let (unit, stroke) = self.unit(i + 1);
        let second = self.number(stroke + 1).filter(|_| self.mark(stroke) == Some(Mark::Slash))?;
        let (last, next) = self.unit(stroke + 2);
        if !matches!((unit, last), (Unit::Bare, Unit::Watt) | (Unit::Watt, Unit::Bare)) {
            return None;
        }
        label = label.checked_sub(1 + usize::from(self.mark(label.checked_sub(1)?) == Some(Mark::Close)))?;
        let middle = label.checked_sub(1).filter(|&k| self.mark(k) == Some(Mark::Slash))?;
        let quantity = |k: usize| matches!(self.role(k), Role::Quantity | Role::Pieces);
        let class = |k: usize| {
            matches!(self.role(k), Role::Kind | Role::Power | Role::Unit(Unit::Watt))
                || [const { Letters::of("class") }, const { Letters::of("typ") }]
                    .iter()
                    .any(|&w| self.is(k, w))
        };
        let (one, other) = (middle.checked_sub(1)?, label);
        let named =
            if unit == Unit::Bare { quantity(one) && class(other) } else { class(one) && quantity(other) };
        if !named {
            return None;
        }
        self.simple(i, stroke, unit, first);
        self.sign_as(Mark::Times, stroke);
        self.simple(stroke + 1, next, last, second);
        Some(next)
    }

    /// The number at token `i` with its unit.
    fn simple(&mut self, i: usize, next: usize, unit: Unit, n: Printed) {
        let (start, spaced) = (self.tokens[i].start, self.tokens[i].spaced);
        let end = self.tokens[next - 1].end;
        let (unit, scale, fine) = plain_unit(unit);
        let n = if fine { n.as_decimal() } else { n };
        let figure = Figure::plain(unit, n.value * scale, n.half * scale, start, end);
        self.add(Figure { decimal: n.decimal, ..figure }, spaced);
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
