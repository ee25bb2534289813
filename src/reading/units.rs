//! The unit after a number: written out, joined with a hyphen, or built of parts as photon units are; and the tolerance after
//! that.

use super::builder::Builder;
use super::fold::Mark;
use super::item::{Letters, What};
use super::roles::{Role, Unit};
use crate::facts::Tolerance;
use crate::units::Watts;

impl Builder<'_> {
    /// The unit at token `j`, and the token after it.
    pub(super) fn unit(&self, j: usize) -> (Unit, usize) {
        if let Role::Unit(unit) = self.role(j) {
            return self.worded_unit(unit, j);
        }
        // "100 true watts"
        if self.role(j) == Role::DrawAdjective && self.role(j + 1) == Role::Unit(Unit::Watt) {
            return (Unit::Watt, j);
        }
        match self.mark(j) {
            Some(Mark::Percent) => (Unit::Percent, j + 1),
            // Turkish "2'li paket"
            Some(Mark::Foot) if self.glued(j + 1) && self.role(j + 1) == Role::Pack => (Unit::Bare, j),
            Some(Mark::Inch | Mark::Foot) if self.glued(j) => (Unit::Length, j + 1),
            Some(Mark::Degree) => (Unit::Other, j + 1),
            Some(Mark::Dash) if self.glued(j) && self.glued(j + 1) => match self.role(j + 1) {
                Role::Unit(unit @ (Unit::Watt | Unit::Kilowatt | Unit::Volt | Unit::Length)) => (unit, j + 2),
                _ => (Unit::Bare, j),
            },
            _ => (Unit::Bare, j),
        }
    }

    pub(super) fn worded_unit(&self, unit: Unit, j: usize) -> (Unit, usize) {
        let t = &self.tokens[j];
        let capital = || self.text.as_bytes()[t.start as usize].is_ascii_uppercase();
        match unit {
            Unit::Watt => (Unit::Watt, j + 1),
            Unit::Micromole => self.photons(j, false),
            Unit::Millimole => self.photons(j, true),
            // "90 in total"
            Unit::Length if matches!(self.role(j + 1), Role::Total | Role::All | Role::Quantity) => {
                (Unit::Bare, j)
            }
            // "R:42 G:21", "R 42 G 21": green, not grams.
            Unit::Other if self.green(j) => (Unit::Bare, j),
            Unit::Amp if t.spaced && t.end - t.start == 1 && !capital() => (Unit::Bare, j),
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

    /// Whether the letter g at token `j` stands before its own number in a list of colour letters.
    fn green(&self, j: usize) -> bool {
        let colon = usize::from(matches!(self.mark(j + 1), Some(Mark::Colon | Mark::Equal)));
        let before = j.checked_sub(2 + colon);
        self.is(j, const { Letters::of("g") })
            && self.number(j + 1 + colon).is_some()
            && before.is_some_and(|k| matches!(self.role(k), Role::Letter(_) | Role::Unit(Unit::Watt)))
    }

    /// A photon unit from the word for micromoles on: per second, per joule or per square metre as well.
    pub(super) fn photons(&self, j: usize, milli: bool) -> (Unit, usize) {
        let (mut second, mut joule, mut area) = (false, false, false);
        let (mut k, mut end) = (j + 1, j + 1);
        while k < self.tokens.len().min(j + 12) {
            match self.tokens[k].what {
                What::Mark(
                    Mark::Slash | Mark::Dot | Mark::Times | Mark::Inverse | Mark::Squared | Mark::Stop,
                ) => {}
                What::Mark(Mark::Dash) if self.glued(k) => {}
                What::Word(Role::Per) => {}
                // "850 umol total output per second"
                What::Word(Role::Total | Role::Rating | Role::Ppf)
                    if !second
                        && !joule
                        && matches!(self.role(k + 1), Role::Rating | Role::Ppf | Role::Per) => {}
                // "2.7 umol per watt-second"
                What::Word(Role::Unit(Unit::Watt))
                    if !second
                        && self.role(k - 1) == Role::Per
                        && self.role(k + 1 + usize::from(self.mark(k + 1) == Some(Mark::Dash)))
                            == Role::Unit(Unit::Second) =>
                {
                    joule = true;
                }
                What::Figure(_) if self.glued(k) && self.number(k).is_some_and(|n| n.value <= 2.0) => {}
                What::Word(Role::Unit(Unit::Second)) if !second => second = true,
                What::Word(Role::Unit(Unit::Joule)) if !joule => joule = true,
                What::Word(Role::Unit(Unit::SquareMetre)) => area = true,
                What::Word(Role::Unit(Unit::Metre)) => area = true,
                // umol/s/W is umol/J by another name.
                What::Word(Role::Unit(Unit::Watt)) if second && self.mark(k - 1) == Some(Mark::Slash) => {
                    joule = true;
                }
                _ => break,
            }
            if matches!(
                self.tokens[k].what,
                What::Word(Role::Unit(_)) | What::Mark(Mark::Squared | Mark::Inverse)
            ) || (self.number(k).is_some() && self.mark(k - 1) == Some(Mark::Dash))
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
    pub(super) fn per_length(&self, next: usize) -> bool {
        // "58W / in place of" and "3W / measured" have a stroke between two statements.
        let (stroke, joined) =
            (self.mark(next) == Some(Mark::Slash), self.glued(next) && self.glued(next + 1));
        if !(stroke || self.role(next) == Role::Per) {
            return false;
        }
        match self.role(next + 1) {
            Role::Unit(Unit::Metre | Unit::SquareMetre) => true,
            Role::Unit(Unit::Length) | Role::Part => !stroke || joined,
            Role::Measured => self.is(next + 1, const { Letters::of("meter") }),
            _ => false,
        }
    }

    /// `±5 %`, `(±5%)`, `+/-2W` after the unit.
    pub(super) fn tolerance(&self, next: usize, unit: Unit) -> (Option<Tolerance>, usize) {
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
pub(super) fn same_kind(a: Unit, b: Unit) -> bool {
    let volts = |u| matches!(u, Unit::Volt | Unit::VoltAc | Unit::VoltDc);
    a == b || (volts(a) && volts(b))
}
