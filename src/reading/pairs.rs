//! The count that stands with a figure of watts: across a cross, in a phrase before it, or found by the total they make.

use super::array::{DIODE, FEWEST_DIODES};
use super::class::{lamp_beads, package_number};
use super::figures::{Figure, What};
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::roles::{Cues, Role, Unit};

const LAMP_ROLE: Role = Role::Lamp(crate::facts::LampKind::Hps);

/// The sides of a size: deep, high, long.
pub(super) const SIDES: [Letters; 3] = Letters::all(["d", "h", "l"]);

pub(super) fn is_count(f: &Figure) -> bool {
    f.unit == Unit::Bare && !f.range && !f.list && !f.decimal && f.high >= 1.0
}

/// `100 pcs × 3W`: the figure before the cross.
pub(super) fn crossed_before(page: Page, at: usize) -> Option<usize> {
    if page.mark_before(at) != Some(Mark::Times) {
        return None;
    }
    let mut i = at - 1;
    for _ in 0..4 {
        i = i.checked_sub(1)?;
        match page.items[i].what {
            What::Figure(f) => return is_count(&page.figures[usize::from(f)]).then_some(usize::from(f)),
            What::Word(_) => {}
            What::Mark(Mark::Close | Mark::Dash) => {}
            _ => return None,
        }
    }
    None
}

/// `3W LED × 100`: the figure after the cross.
pub(super) fn crossed_after(page: Page, at: usize) -> Option<usize> {
    let mut i = at + 1;
    while i < at + 6
        && (matches!(
            page.role(i),
            Role::Led | Role::Diode | Role::Chip | Role::Cob | Role::Double | Role::Package(_)
        ) || page.figure(i).is_some_and(|f| f.unit == Unit::Bare && package_number(f.high).is_some())
            || page.mark(i) == Some(Mark::Dash) && !page.breaks(i))
    {
        i += 1;
    }
    if page.mark(i) != Some(Mark::Times) {
        return None;
    }
    match page.what(i + 1)? {
        What::Figure(f) => {
            let side = SIDES.iter().any(|&side| page.is(i + 2, side));
            let count =
                is_count(&page.figures[usize::from(f)]) && !side && page.mark(i + 2) != Some(Mark::Times);
            count.then_some(usize::from(f))
        }
        _ => None,
    }
}

/// `100 LEDs of 10W`, `60 pcs 10W LEDs`, `90 LEDs (5W each)`: a count straight before.
pub(super) fn listed(page: Page, at: usize) -> Option<usize> {
    let f = page.figure(at)?;
    let (mut i, mut thing, mut joined, mut units, mut pieces) = (at, false, false, false, false);
    let mut others = 0;
    for _ in 0..6 {
        i = i.checked_sub(1)?;
        match page.items[i].what {
            What::Word(Role::Pieces) => pieces = true,
            What::Word(Role::Diode | Role::Led | Role::Chip | Role::Cob) => thing = true,
            // "100 units of 3W LED"
            What::Word(Role::Lights) if page.is(i, const { Letters::of("units") }) => units = true,
            What::Word(Role::Of | Role::DoubleEnded | Role::At | Role::With | Role::Unit(Unit::Amp)) => {
                joined = true;
            }
            What::Word(Role::Double | Role::Kind | Role::Each) => {}
            What::Word(Role::None) if others < 2 => others += 1,
            What::Mark(Mark::Open | Mark::At) => {}
            // "200pcs/3W"
            What::Mark(Mark::Slash) if i + 1 == at && !page.spaced(i) && !page.spaced(at) => joined = true,
            What::Figure(n) => {
                let n = usize::from(n);
                let count = is_count(&page.figures[n]) && page.mark_before(i) != Some(Mark::Times);
                let right = page.right(at);
                // A few pieces or units are lights or heads more often than diodes.
                let worded = thing;
                thing |= pieces || units && page.figures[n].high >= FEWEST_DIODES;
                let after =
                    page.first_right(at, DIODE.and(Cues::of(&[Role::Light, Role::Lights, Role::Part])), 4);
                let product = (page.figures[n].high * f.high - f.high).abs() > 0.1
                    && page.figures.iter().any(|w| {
                        w.unit == Unit::Watt && (w.high - page.figures[n].high * f.high).abs() < 0.01 * w.high
                    });
                let each = (right.near.any(Role::Each.cue()) || page.role_before(at) == Role::Each)
                    && (worded || page.figures[n].high >= FEWEST_DIODES);
                let alone = worded && page.figures[n].high >= FEWEST_DIODES && alone_beside_more(page, at, f);
                let beads = lamp_beads(page, at)
                    || after.any(Cues::of(&[Role::Diode, Role::Chip]))
                    || (after.any(Role::Led.cue()) && thing);
                let cob = page.first_right(at, Role::Cob.cue(), 3).any(Role::Cob.cue());
                let sure = thing && (joined || each || product || alone) || beads || cob;
                return (count && sure).then_some(n);
            }
            _ => return None,
        }
    }
    None
}

/// "4x COB 600W (150W each)": COBs that the total is the watts times.
pub(super) fn cobs_of_a_total(page: Page, at: usize) -> Option<usize> {
    let each = page.role(at + 1) == Role::Each || page.role_before(at) == Role::Each;
    let f = page.figure(at).filter(|_| each && page.cues.any(Role::Cob.cue()))?;
    page.figures.iter().position(|n| {
        let cob = usize::from(n.item) + 1;
        let joined = matches!(page.mark(cob), Some(Mark::Times | Mark::Dash));
        let behind = cob >= 3 && page.role(cob - 3) == Role::Cob && counts_cobs(page.mark(cob - 2));
        is_count(n)
            && (behind || page.role(cob + usize::from(joined)) == Role::Cob)
            && page.figures.iter().any(|w| w.unit == Unit::Watt && (w.high - n.high * f.high).abs() < 0.01)
    })
}

/// "COB x 4", "COB: 4 pcs": a sign between the word and its number.
pub(super) fn counts_cobs(sign: Option<Mark>) -> bool {
    matches!(sign, Some(Mark::Times | Mark::Colon | Mark::Equal))
}

/// "110 W draw, 100 LEDs 10W": watts that nothing follows, beside a figure so much higher that they cannot be the light's, and
/// no other lamp that could have that figure.
fn alone_beside_more(page: Page, at: usize, f: &Figure) -> bool {
    let lamps = Cues::of(&[Role::Equivalent, Role::Replaces, Role::Replacement, Role::Versus, LAMP_ROLE]);
    (at + 1 == page.items.len() || page.breaks(at + 1))
        && f.high <= 15.0
        && !page.cues.any(lamps)
        && page.figures.iter().any(|w| w.unit == Unit::Watt && w.high >= 3.0 * f.high)
}
