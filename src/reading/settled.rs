//! Words whose role the word beside them settles, and numbers spelled out over several words.

use super::builder::Builder;
use super::fold::Mark;
use super::item::Letters;
use super::roles::{Role, Unit};

/// Parts of a light that are a device after "power".
const POWER_PARTS: [Letters; 3] = Letters::all(["strip", "strips", "bar"]);

impl Builder<'_> {
    /// The role that the word at token `i` plays beside its neighbours, if they change it. A role that comes to stand here
    /// is [`Role::open`].
    pub(super) fn settled(&self, role: Role, i: usize) -> Option<Role> {
        let before = i.checked_sub(1).map_or(Role::None, |i| self.role(i));
        Some(match role {
            // A power supply is a device, a supply is the mains.
            Role::Supply if before == Role::Power => Role::Device,
            Role::Supply => Role::Voltage,
            // "at the socket", "wall socket"
            Role::Socket if matches!(before, Role::At | Role::Wall) => Role::Wall,
            Role::Socket => Role::Device,
            // "power used", "wattage in use"
            // "100 LEDs (3W) use 140W"
            Role::Used
                if self.number(i + 1).is_some()
                    && (matches!(
                        before,
                        Role::Led | Role::Diode | Role::Light | Role::Lights | Role::Part
                    ) || i > 0 && self.mark(i - 1) == Some(Mark::Close)) =>
            {
                Role::DrawVerb
            }
            // "73W used at 100 %"
            Role::Used
                if before == Role::Unit(Unit::Watt)
                    && self.is(i + 1, const { Letters::of("at") })
                    && self.number(i + 2).is_some() =>
            {
                Role::DrawNoun
            }
            Role::Used => {
                let back = if before == Role::Unit(Unit::Length) { 2 } else { 1 };
                match i.checked_sub(back) {
                    Some(k)
                        if self.role(k) == Role::Power || self.is(k, const { Letters::of("electric") }) =>
                    {
                        Role::DrawNoun
                    }
                    _ => Role::None,
                }
            }
            // "410 W off the grid"
            Role::Off if self.role(i + 1) == Role::At => Role::At,
            // "off grid", "off-grid": far from the mains
            Role::Off
                if self.role(i + 1) == Role::Wall
                    || self.mark(i + 1) == Some(Mark::Dash) && self.role(i + 2) == Role::Wall =>
            {
                Role::None
            }
            Role::Off => Role::Dim,
            Role::Place if matches!(self.role(i + 1), Role::Of | Role::DoubleEnded | Role::For) => {
                Role::Replaces
            }
            Role::Place | Role::By => Role::None,
            // "630W CMH substitute: 500W": after the lamp the same word is a noun.
            Role::Replaces if matches!(before, Role::Lamp(_)) => Role::Replacement,
            // "power strip", "power bar"
            Role::Part if before == Role::Power && POWER_PARTS.iter().any(|&w| self.is(i, w)) => Role::Device,
            _ => return None,
        })
    }

    /// The first token of "chip-on-board", "chip on board" before the word for a board at token `i`; not where COB, which says the
    /// same, stands beside it.
    pub(super) fn chip_on(&self, i: usize) -> Option<usize> {
        let dash = |i: usize| usize::from(self.mark(i) == Some(Mark::Dash));
        let on = i.checked_sub(1)?;
        let on = on.checked_sub(dash(on))?;
        let chip = on.checked_sub(1)?;
        let chip = chip.checked_sub(dash(chip))?;
        let said = self.is(on, const { Letters::of("on") }) && self.role(chip) == Role::Chip;
        let twice = || {
            chip > 0 && self.mark(chip - 1) == Some(Mark::Open)
                || self.mark(i + 1) == Some(Mark::Open)
                || self.role(i + 1) == Role::Cob
        };
        (said && !twice()).then_some(chip)
    }

    pub(super) fn is(&self, i: usize, word: Letters) -> bool {
        self.tokens.get(i).is_some_and(|t| t.is(word))
    }

    /// "one-watt", "one hundred".
    pub(super) fn counts_one(&self, i: usize) -> bool {
        self.role(i + 1) == Role::Number(100) || self.unit(i + 1).0 == Unit::Watt
    }

    /// The value of the number words from token `i` on, of which the first is `n`, and the token after them.
    pub(super) fn spelled(&self, i: usize, n: u16) -> (f64, usize) {
        let (mut value, mut next) = (n, i + 1);
        loop {
            let hyphen = self.mark(next) == Some(Mark::Dash) && self.glued(next) && self.glued(next + 1);
            let and = self.role(next) == Role::And && value >= 100;
            let joined = if hyphen || and { next + 1 } else { next };
            let Role::Number(more) = self.role(joined) else { return (f64::from(value), next) };
            value = match (value, more) {
                (1..=9, 100) => value * 100,
                // French "quatre-vingt", "soixante-dix"
                (4, 20) if hyphen => 80,
                (60 | 80, 10..=19) if hyphen => value + more,
                (20..=90, 1..=9) if value % 10 == 0 => value + more,
                (100.., 2..=99) if value % 100 == 0 => value + more,
                _ => return (f64::from(value), next),
            };
            next = joined + 1;
        }
    }
}
