//! Numbers that belong together: thousands with plain spaces, ratios, sizes, ranges, stock numbers.

use super::builder::Builder;
use super::class::package_number;
use super::fold::{Fold, Mark, fold};
use super::item::{Letters, What};
use super::number::Printed;
use super::roles::{Role, Unit};
use super::units::same_kind;

/// What a number of papers follows.
const CERTIFICATES: [Letters; 3] = Letters::all(["cert", "file", "report"]);

impl Builder<'_> {
    /// `1 200 W`: a plain space between thousands, where a unit follows and nothing else explains the first number.
    pub(super) fn spaced_thousands(&self, i: usize, first: Printed) -> Option<Printed> {
        let joined = self.thousands(i)?;
        let second = self.number(i + 1)?;
        if i > 0
            && matches!(
                self.tokens[i - 1].what,
                What::Figure(_) | What::Mark(Mark::Times | Mark::Slash | Mark::Dash)
            )
            && !(self.tokens[i].spaced
                && self.tokens[i - 1].spaced
                && matches!(self.mark(i - 1), Some(Mark::Dash | Mark::Slash)))
        {
            return None;
        }
        let unit = self.unit(i + 2).0;
        let apart = self.tokens.get(i + 2).is_some_and(|t| t.spaced);
        let foreign = second.value > 0.0 && first.digits == 1 && self.beyond_english();
        let fits = match unit {
            Unit::Watt => second.value == 0.0 || apart || foreign,
            Unit::PhotonFlux => true,
            Unit::Bare => {
                let thousand = second.value == 0.0 || self.beyond_english();
                matches!(self.role(i + 2), Role::Diode | Role::Led) && thousand
            }
            _ => false,
        };
        fits.then_some(joined)
    }

    /// The numbers at token `i` and after it as one, if they may be thousands and three digits more.
    fn thousands(&self, i: usize) -> Option<Printed> {
        let (first, second) = (self.number(i)?, self.number(i + 1)?);
        let plain = |n: Printed| !n.decimal && !n.doubtful;
        (plain(first) && plain(second) && second.digits == 3 && first.digits <= 3 && first.value > 0.0)
            .then_some(Printed {
                value: first.value * 1000.0 + second.value,
                digits: first.digits + 3,
                ..second
            })
    }

    /// Whether the text has letters that English has not; digits and signs of other widths do not count.
    fn beyond_english(&self) -> bool {
        self.text.chars().any(|c| !c.is_ascii() && matches!(fold(c), Fold::Letter(_) | Fold::Ideograph(_)))
    }

    /// `8:1:1`, glued.
    pub(super) fn ratio(&self, i: usize) -> Option<usize> {
        let mut j = i + 1;
        while self.mark(j) == Some(Mark::Colon)
            && self.glued(j)
            && self.glued(j + 1)
            && self.number(j + 1).is_some()
        {
            j += 2;
        }
        (j > i + 1).then_some(j)
    }

    /// `400*215*60mm`, `3x3ft`, `12"x12"`, `20 x 25`: numbers joined by crosses, none of them with watts or a colour.
    pub(super) fn size(&self, i: usize) -> Option<usize> {
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

    /// The bit of the sign at token `i`, 0 if it is none; see [`Page::sign`](super::page::Page::sign).
    fn sign(&self, i: usize) -> u32 {
        self.tokens.get(i).map_or(0, |token| token.sign)
    }

    /// The upper number of a range whose lower one ends before token `j`, and the token after it.
    pub(super) fn range(
        &self,
        j: usize,
        low: Printed,
        unit: Unit,
        after_unit: usize,
    ) -> Option<(Printed, usize)> {
        /// The signs that lead from one number of a range to the other.
        const SIGNS: u32 = Mark::bits(&[Mark::Stop, Mark::Other, Mark::Tilde, Mark::Dash]);
        let mut link = if unit == Unit::Bare { j } else { after_unit };
        // Most numbers that something goes on from are no range: one test tells it.
        if (self.sign(link) & SIGNS == 0) & !matches!(self.role(link), Role::To | Role::UpTo) {
            return None;
        }
        let (tight, wave) = match (self.mark(link), self.role(link)) {
            // `100..240V`, `277…480 V`
            (Some(Mark::Stop | Mark::Other), _) if unit == Unit::Bare && self.dots(link) > 0 => {
                link += self.dots(link) - 1;
                let volts = self.number(link + 1).is_some() && same_kind(self.unit(link + 2).0, Unit::Volt);
                (volts, volts)
            }
            (Some(Mark::Tilde), _) | (_, Role::To | Role::UpTo) => (true, true),
            // "100-to-277 volts"
            (Some(Mark::Dash), _)
                if self.role(link + 1) == Role::To && self.mark(link + 2) == Some(Mark::Dash) =>
            {
                link += 2;
                (true, true)
            }
            (Some(Mark::Dash), _) => (self.glued(link) && self.glued(link + 1), false),
            _ => return None,
        };
        // "pack of 4 - 5W each"
        if !tight && j >= 2 && matches!(self.role(j - 2), Role::Of | Role::Pack) {
            return None;
        }
        let mut k = link + 1;
        if matches!(self.role(k), Role::Ac | Role::Dc) {
            k += 1;
        }
        let high = self.number(k)?;
        let (second, end) = self.unit(k + 1);
        // "2.3-1.6 A": over a range of volts the current falls.
        if high.value < low.value && second != Unit::Amp {
            return None;
        }
        if self.mark(end) == Some(Mark::Times)
            || (second == Unit::Bare && self.mark(k + 1) == Some(Mark::Times))
        {
            return None;
        }
        let alike = second != Unit::Watt || (unit == Unit::Bare && high.value <= low.value * 3.0);
        let loose = second != Unit::Bare && (unit == Unit::Bare || same_kind(unit, second)) && alike;
        let fits = tight || wave || loose;
        fits.then_some((high, k + 1))
    }

    /// "1 250-1 300 µmol/s": a range of two numbers with a space before the thousands; its upper one, the unit, and the token
    /// after that.
    pub(super) fn spaced_range(&self, i: usize) -> Option<(Printed, Unit, usize)> {
        let low = self.thousands(i)?;
        let to = matches!(self.mark(i + 2), Some(Mark::Dash | Mark::Tilde)) || self.role(i + 2) == Role::To;
        let high = self.thousands(i + 3).filter(|high| to && high.value > low.value)?;
        let (unit, next) = self.unit(i + 5);
        matches!(unit, Unit::PhotonFlux | Unit::Watt).then_some((high, unit, next))
    }

    /// How many tokens from `i` on make the dots of an ellipsis.
    fn dots(&self, i: usize) -> usize {
        if self.tokens.get(i).is_some_and(|t| self.text[t.start as usize..].starts_with('…')) {
            return 1;
        }
        let stops = (i..i + 4).take_while(|&k| self.mark(k) == Some(Mark::Stop)).count();
        if stops == 2 || stops == 3 { stops } else { 0 }
    }

    /// "qty*watt: 96*3", "LED (pcs x W): 100 x 10": whether a label before the count at token `i` says that the number across
    /// the cross is watts.
    pub(super) fn count_times_watts(&self, i: usize) -> bool {
        const SIGNS: u32 = Mark::bits(&[Mark::Colon, Mark::Equal, Mark::Close]);
        // Crosses are common, labels are not.
        let before = i.wrapping_sub(1);
        let labelled = (self.sign(before) & SIGNS != 0) | (self.role(before) == Role::Unit(Unit::Watt));
        if !(labelled & (self.sign(i + 1) == Mark::Times.bit()))
            || self.number(i + 2).is_none()
            || self.unit(i + 3).0 != Unit::Bare
            || self.mark(i + 3) == Some(Mark::Times)
        {
            return false;
        }
        let signs = [Mark::Colon, Mark::Equal, Mark::Close];
        let label = (0..i).rev().find(|&k| !self.mark(k).is_some_and(|m| signs.contains(&m))).unwrap_or(0);
        let counts =
            |role| matches!(role, Role::Quantity | Role::Pieces | Role::Diode | Role::Chip | Role::Led);
        label >= 2
            && self.role(label) == Role::Unit(Unit::Watt)
            && self.mark(label - 1) == Some(Mark::Times)
            && counts(self.role(label - 2))
    }

    /// The token after a leader, "Power ....... 220 W", if four dots stand here at least. Three are an ellipsis.
    pub(super) fn leader(&self, i: usize) -> Option<usize> {
        // Most full stops stand alone.
        if self.mark(i + 1) != Some(Mark::Stop) {
            return None;
        }
        let dots = (i..self.tokens.len()).take_while(|&k| self.mark(k) == Some(Mark::Stop)).count();
        (dots >= 4).then_some(i + dots)
    }

    /// Whether the number at token `i` is part of a stock number or of a paper's: `SKU 100W-GRN-3`, `item 100W2835-B`.
    pub(super) fn stock_number(&self, i: usize) -> bool {
        if !self.glued(i + 1) {
            return false;
        }
        let sign = i.checked_sub(1).filter(|&k| k > 0).and_then(|k| self.mark(k));
        let sign = sign.filter(|m| matches!(m, Mark::Colon | Mark::Hash | Mark::Stop));
        let Some(label) = i.checked_sub(1 + usize::from(sign.is_some())) else { return false };
        let stock = self.role(label) == Role::Stock;
        // "FCC ID 2AX9-C1500W", "FCC ID: 2AX300WQ": letters and digits of a maker, with or without a hyphen.
        let maker = label > 0
            && self.is(label, const { Letters::of("id") })
            && self.role(label - 1) == Role::Stock
            && sign != Some(Mark::Stop);
        // "cert no 600W12A"
        let paper = label > 0
            && matches!(self.role(label), Role::Deny | Role::Quantity)
            && CERTIFICATES.iter().any(|&w| self.is(label - 1, w));
        // "order no. 600W-17"
        let order = self.role(label) == Role::Deny && sign == Some(Mark::Stop);
        // "100W2835-B": digits joined on both sides of a unit.
        let joined = self.glued(i + 2) && self.number(i + 2).is_some();
        let hyphen =
            self.mark(i + 1) == Some(Mark::Dash) || self.mark(i + 2) == Some(Mark::Dash) && self.glued(i + 2);
        maker || joined && (stock || paper) || hyphen && (stock || order)
    }

    /// Takes everything up to white space as one code.
    pub(super) fn code(&mut self, i: usize) -> usize {
        let mut end = i + 1;
        let ends = |m| matches!(m, Some(Mark::Line | Mark::Comma | Mark::Pipe | Mark::Close));
        while self.tokens.get(end).is_some_and(|t| !t.spaced && !ends(t.mark)) {
            end += 1;
        }
        self.code_until(i, end)
    }
}
