//! Tokens to items: a number, its unit, range and tolerance become one figure; everything else stays a word or a sign.

use super::fold::Mark;
use super::number::Printed;
use super::roles::{Cues, Role, Unit};
use super::scan::{Kind, Token};
use super::watts::package_number;
use crate::facts::Tolerance;
use crate::units::Watts;

/// One thing on the page.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum What {
    Word(Role),
    /// The figure with that index.
    Figure(u16),
    Mark(Mark),
    Code,
}

/// One thing on the page, with its place in the text.
#[derive(Debug, Clone, Copy)]
pub(super) struct Item {
    pub what: What,
    pub start: u32,
    pub end: u32,
    pub spaced: bool,
    /// The role as a set; empty for anything but a word.
    pub cue: Cues,
}

/// A number with all that belongs to it.
#[derive(Debug, Clone, Copy)]
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

/// Most figures and items that are looked at; a listing has a few dozen.
pub(super) const MOST_ITEMS: usize = 60_000;

struct Builder<'a> {
    tokens: &'a [Token],
    text: &'a str,
    items: &'a mut Vec<Item>,
    figures: &'a mut Vec<Figure>,
}

/// Builds the items and figures of a page.
pub(super) fn build(text: &str, tokens: &[Token], items: &mut Vec<Item>, figures: &mut Vec<Figure>) {
    items.clear();
    figures.clear();
    let tokens = &tokens[..tokens.len().min(MOST_ITEMS)];
    let mut b = Builder { tokens, text, items, figures };
    let mut i = 0;
    while i < tokens.len() {
        let t = tokens[i];
        i = match t.kind {
            Kind::Number(_) if b.stock_number(i) => b.code(i),
            Kind::Number(n) => b.figure(i, n),
            Kind::Word(Role::Number(n)) => b.worded(i, n),
            // A power supply is a device, a supply is the mains.
            Kind::Word(Role::Supply) if i > 0 && b.role(i - 1) == Role::Power => b.push(What::Word(Role::Device), i),
            Kind::Word(Role::Supply) => b.push(What::Word(Role::Voltage), i),
            Kind::Word(role) => b.push(What::Word(role), i),
            Kind::Code => b.push(What::Code, i),
            Kind::Mark(Mark::Stop) if !b.ends_sentence(i) => i + 1,
            Kind::Mark(mark) => b.push(What::Mark(mark), i),
        };
    }
}

impl Builder<'_> {
    fn push(&mut self, what: What, i: usize) -> usize {
        let t = &self.tokens[i];
        let cue = if let What::Word(role) = what { role.cue() } else { Cues::default() };
        self.items.push(Item { what, start: t.start, end: t.end, spaced: t.spaced, cue });
        i + 1
    }

    fn kind(&self, i: usize) -> Option<Kind> {
        self.tokens.get(i).map(|t| t.kind)
    }

    /// `SKU 100W-GRN-3`: after a word for a stock number, with a hyphen and letters.
    fn stock_number(&self, i: usize) -> bool {
        let sign = usize::from(i >= 2 && matches!(self.mark(i - 1), Some(Mark::Colon | Mark::Hash | Mark::Stop)));
        i > sign
            && self.role(i - 1 - sign) == Role::Stock
            && (self.mark(i + 1) == Some(Mark::Dash) && self.glued(i + 1)
                || self.mark(i + 2) == Some(Mark::Dash) && self.glued(i + 1) && self.glued(i + 2))
    }

    /// Takes everything up to white space as one code.
    fn code(&mut self, i: usize) -> usize {
        let mut end = i + 1;
        while self.tokens.get(end).is_some_and(|t| !t.spaced) {
            end += 1;
        }
        let t = self.tokens[i];
        self.items.push(Item { what: What::Code, start: t.start, end: self.tokens[end - 1].end, spaced: t.spaced, cue: Cues::default() });
        end
    }

    fn mark(&self, i: usize) -> Option<Mark> {
        match self.kind(i) {
            Some(Kind::Mark(m)) => Some(m),
            _ => None,
        }
    }

    fn role(&self, i: usize) -> Role {
        match self.kind(i) {
            Some(Kind::Word(r)) => r,
            _ => Role::None,
        }
    }

    fn number(&self, i: usize) -> Option<Printed> {
        match self.kind(i) {
            Some(Kind::Number(n)) => Some(n),
            _ => None,
        }
    }

    fn glued(&self, i: usize) -> bool {
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
            Role::Short | Role::Approx | Role::Versus | Role::Rating | Role::Equivalent | Role::Ppe | Role::Current
        )
    }

    fn worded(&mut self, i: usize, n: u16) -> usize {
        let t = self.tokens[i];
        let value = f64::from(n);
        self.add(Figure {
            unit: Unit::Bare,
            low: value,
            high: value,
            half: 0.5,
            range: false,
            list: false,
            per: false,
            tolerance: None,
            worded: true,
            decimal: false,
            item: 0,
            start: t.start,
            end: t.end,
        }, t.spaced);
        i + 1
    }

    #[expect(clippy::cast_possible_truncation, reason = "at most MOST_ITEMS items")]
    fn add(&mut self, figure: Figure, spaced: bool) {
        let (item, index) = (self.items.len() as u16, self.figures.len() as u16);
        self.items.push(Item { what: What::Figure(index), start: figure.start, end: figure.end, spaced, cue: Cues::default() });
        self.figures.push(Figure { item, ..figure });
    }

    /// Reads the figure whose first number is token `i`; returns the token after it.
    fn figure(&mut self, i: usize, first: Printed) -> usize {
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
            let mut k = j;
            while self.mark(k) == Some(Mark::Slash) && self.number(k + 1).is_some() {
                let n = self.number(k + 1).unwrap_or(low);
                if n.value < low.value {
                    low = n;
                }
                if n.value > high.value {
                    high = n;
                }
                list = true;
                k += 2;
            }
            if list {
                (unit, next) = self.unit(k);
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
        let (scale, fine) = match unit {
            Unit::Kilowatt | Unit::PhotonFluxMilli => (1000.0, true),
            Unit::Amp | Unit::PhotonEfficacy | Unit::Joule | Unit::Metre => (1.0, true),
            _ => (1.0, false),
        };
        if fine {
            (low, high) = (low.as_decimal(), high.as_decimal());
        }
        let unit = match unit {
            Unit::Kilowatt => Unit::Watt,
            Unit::PhotonFluxMilli => Unit::PhotonFlux,
            other => other,
        };
        let per = unit == Unit::Watt && self.per_length(next);
        let (tolerance, after) = self.tolerance(next, unit);
        let end = self.tokens[after - 1].end;
        self.add(
            Figure {
                unit,
                low: low.value * scale,
                high: high.value * scale,
                half: high.half * scale,
                range,
                list,
                per,
                tolerance,
                worded: false,
                decimal: low.decimal,
                item: 0,
                start: t.start,
                end,
            },
            t.spaced,
        );
        after
    }

    fn simple(&mut self, t: Token, next: usize, unit: Unit, n: Printed) {
        let end = self.tokens[next - 1].end;
        self.add(
            Figure {
                unit,
                low: n.value,
                high: n.value,
                half: n.half,
                range: false,
                list: false,
                per: false,
                tolerance: None,
                worded: false,
                decimal: n.decimal,
                item: 0,
                start: t.start,
                end,
            },
            t.spaced,
        );
    }

    /// `1 200 W`: a plain space between thousands, where a unit follows and nothing else explains the first number.
    fn spaced_thousands(&self, i: usize, first: Printed) -> Option<Printed> {
        let second = self.number(i + 1)?;
        let plain = |n: Printed| !n.decimal && !n.doubtful;
        if !(plain(first) && plain(second) && second.digits == 3 && first.digits <= 3 && first.value > 0.0) {
            return None;
        }
        if i > 0 && matches!(self.kind(i - 1), Some(Kind::Number(_) | Kind::Mark(Mark::Times | Mark::Slash | Mark::Dash))) {
            return None;
        }
        let unit = self.unit(i + 2).0;
        let apart = self.tokens.get(i + 2).is_some_and(|t| t.spaced);
        let foreign = !self.text.is_ascii() && second.value > 0.0 && first.digits == 1;
        let fits = match unit {
            Unit::Watt => second.value == 0.0 || apart || foreign,
            Unit::PhotonFlux => true,
            Unit::Bare => matches!(self.role(i + 2), Role::Diode) && second.value == 0.0,
            _ => false,
        };
        fits.then_some(Printed {
            value: first.value * 1000.0 + second.value,
            digits: first.digits + 3,
            end: second.end,
            ..second
        })
    }

    /// `8:1:1`, glued.
    fn ratio(&self, i: usize) -> Option<usize> {
        let mut j = i + 1;
        while self.mark(j) == Some(Mark::Colon) && self.glued(j) && self.glued(j + 1) && self.number(j + 1).is_some() {
            j += 2;
        }
        (j > i + 1).then_some(j)
    }

    /// `400*215*60mm`, `3x3ft`, `12"x12"`, `20 x 25`: numbers joined by crosses, none of them with watts or a colour.
    fn size(&self, i: usize) -> Option<usize> {
        if self.number(i).is_some_and(|n| package_number(n.value).is_some()) {
            return None;
        }
        let (mut j, mut parts, mut length) = (i, 0, false);
        let mut end = i;
        loop {
            self.number(j)?;
            let (unit, next) = self.unit(j + 1);
            match unit {
                Unit::Bare => {}
                Unit::Length | Unit::Metre => length = true,
                _ => return None,
            }
            parts += 1;
            end = next.max(end);
            if self.mark(next) == Some(Mark::Times) && self.number(next + 1).is_some() {
                j = next + 1;
            } else {
                break;
            }
        }
        let counts = matches!(self.role(end), Role::Colour(_) | Role::Diode | Role::Cob | Role::Pieces);
        (parts >= 2 && (length || !counts)).then_some(end)
    }

    /// The upper number of a range whose lower one ends before token `j`, and the token after it.
    fn range(&self, j: usize, low: Printed, unit: Unit, after_unit: usize) -> Option<(Printed, usize)> {
        let link = if unit == Unit::Bare { j } else { after_unit };
        let (tight, wave) = match self.kind(link)? {
            Kind::Mark(Mark::Tilde) => (true, true),
            Kind::Mark(Mark::Dash) => (self.glued(link) && self.glued(link + 1), false),
            Kind::Word(Role::To | Role::UpTo) => (true, true),
            _ => return None,
        };
        let mut k = link + 1;
        if matches!(self.role(k), Role::Ac | Role::Dc) {
            k += 1;
        }
        let high = self.number(k)?;
        if high.value < low.value {
            return None;
        }
        let (second, end) = self.unit(k + 1);
        if self.mark(end) == Some(Mark::Times) || (second == Unit::Bare && self.mark(k + 1) == Some(Mark::Times)) {
            return None;
        }
        let alike = second != Unit::Watt || (unit == Unit::Bare && high.value <= low.value * 3.0);
        let loose = second != Unit::Bare && (unit == Unit::Bare || same_kind(unit, second)) && alike;
        let fits = tight || wave || loose;
        fits.then_some((high, k + 1))
    }

    /// The unit at token `j`, and the token after it.
    fn unit(&self, j: usize) -> (Unit, usize) {
        match self.kind(j) {
            Some(Kind::Mark(Mark::Percent)) => (Unit::Percent, j + 1),
            Some(Kind::Mark(Mark::Inch | Mark::Foot)) if self.glued(j) => (Unit::Length, j + 1),
            Some(Kind::Mark(Mark::Degree)) => (Unit::Other, j + 1),
            Some(Kind::Mark(Mark::Dash)) if self.glued(j) && self.glued(j + 1) => match self.role(j + 1) {
                Role::Unit(unit @ (Unit::Watt | Unit::Kilowatt | Unit::Volt | Unit::Length)) => (unit, j + 2),
                _ => (Unit::Bare, j),
            },
            Some(Kind::Word(Role::Unit(unit))) => self.worded_unit(unit, j),
            _ => (Unit::Bare, j),
        }
    }

    fn worded_unit(&self, unit: Unit, j: usize) -> (Unit, usize) {
        let t = self.tokens[j];
        let capital = self.text.as_bytes()[t.start as usize].is_ascii_uppercase();
        match unit {
            Unit::Micromole => self.photons(j, false),
            Unit::Millimole => self.photons(j, true),
            // "90 in total"
            Unit::Length if self.role(j + 1) == Role::Total => (Unit::Bare, j),
            Unit::Amp if t.spaced && t.end - t.start == 1 && !capital => (Unit::Bare, j),
            Unit::Volt => {
                let mut k = j + 1;
                if matches!(self.mark(k), Some(Mark::Tilde | Mark::Current)) && self.number(k + 1).is_none() {
                    k += 1;
                }
                match self.role(k) {
                    Role::Dc if self.number(k + 1).is_none() => (Unit::VoltDc, k + 1),
                    Role::Ac if self.number(k + 1).is_none() => (Unit::VoltAc, k + 1),
                    _ => (Unit::Volt, k),
                }
            }
            other => (other, j + 1),
        }
    }

    /// A photon unit from the word for micromoles on: per second, per joule or per square metre as well.
    fn photons(&self, j: usize, milli: bool) -> (Unit, usize) {
        let (mut second, mut joule, mut area) = (false, false, false);
        let (mut k, mut end) = (j + 1, j + 1);
        while k < self.tokens.len().min(j + 12) {
            match self.tokens[k].kind {
                Kind::Mark(Mark::Slash | Mark::Dot | Mark::Times | Mark::Inverse | Mark::Squared | Mark::Stop) => {}
                Kind::Mark(Mark::Dash) if self.glued(k) => {}
                Kind::Word(Role::Per) => {}
                Kind::Number(n) if self.glued(k) && n.value <= 2.0 => {}
                Kind::Word(Role::Unit(Unit::Second)) if !second => second = true,
                Kind::Word(Role::Unit(Unit::Joule)) if !joule => joule = true,
                Kind::Word(Role::Unit(Unit::SquareMetre)) => area = true,
                Kind::Word(Role::Unit(Unit::Metre)) => area = true,
                // umol/s/W is umol/J by another name.
                Kind::Word(Role::Unit(Unit::Watt)) if second && self.mark(k - 1) == Some(Mark::Slash) => joule = true,
                _ => break,
            }
            if matches!(self.tokens[k].kind, Kind::Word(Role::Unit(_)) | Kind::Mark(Mark::Squared | Mark::Inverse))
                || (self.number(k).is_some() && self.mark(k - 1) == Some(Mark::Dash))
            {
                end = k + 1;
            }
            k += 1;
        }
        let unit = match (area, joule, second) {
            (true, _, _) => Unit::FluxDensity,
            (_, true, _) => Unit::PhotonEfficacy,
            (_, _, true) if milli => Unit::PhotonFluxMilli,
            (_, _, true) => Unit::PhotonFlux,
            _ => Unit::Other,
        };
        (unit, end)
    }

    /// `/m`, `/m²`, `per foot` after watts.
    fn per_length(&self, next: usize) -> bool {
        let per = self.mark(next) == Some(Mark::Slash) || self.role(next) == Role::Per;
        per && matches!(
            self.role(next + 1),
            Role::Unit(Unit::Metre | Unit::Length | Unit::SquareMetre) | Role::Part | Role::Measured
        )
    }

    /// `±5 %`, `(±5%)`, `+/-2W` after the unit.
    fn tolerance(&self, next: usize, unit: Unit) -> (Option<Tolerance>, usize) {
        let mut k = next;
        let open = self.mark(k) == Some(Mark::Open);
        if open {
            k += 1;
        }
        match self.mark(k) {
            Some(Mark::PlusMinus) => k += 1,
            Some(Mark::Plus) => {
                k += 1;
                if self.mark(k) == Some(Mark::Slash) {
                    k += 1;
                }
                if self.mark(k) != Some(Mark::Dash) {
                    return (None, next);
                }
                k += 1;
            }
            _ => return (None, next),
        }
        let Some(n) = self.number(k) else { return (None, next) };
        let (tolerance, mut after) = match self.unit(k + 1) {
            (Unit::Percent, after) => (Tolerance::Share(n.value / 100.0), after),
            (Unit::Watt, after) if unit == Unit::Watt => (Tolerance::Watts(Watts(n.value)), after),
            _ => return (None, next),
        };
        if open && self.mark(after) == Some(Mark::Close) {
            after += 1;
        }
        (Some(tolerance), after)
    }
}

/// Volts of any kind go with volts.
fn same_kind(a: Unit, b: Unit) -> bool {
    let volts = |u| matches!(u, Unit::Volt | Unit::VoltAc | Unit::VoltDc);
    a == b || (volts(a) && volts(b))
}
