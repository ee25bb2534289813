//! The count that stands with a figure of watts: across a cross, in a phrase before it, or found by the total they make.

use super::array::{DIODE, FEWEST_DIODES};
use super::class::{is_package, lamp_beads};
use super::cues::Cues;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::roles::{Role, Unit};
use crate::facts::Package;

const LAMP_ROLE: Role = Role::Lamp(crate::facts::LampKind::Hps);

/// The sides of a size: deep, high, long.
pub(super) const SIDES: [Letters; 3] = Letters::all(["d", "h", "l"]);

pub(super) fn is_count(f: &Figure) -> bool {
    let (bare, some) = (f.unit == Unit::Bare, f.high >= 1.0);
    !(f.range | f.list | f.decimal) & bare & some
}

/// `100 pcs × 3W`: the figure before the cross.
pub(super) fn crossed_before(page: &Page, at: usize) -> Option<usize> {
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
pub(super) fn crossed_after(page: &Page, at: usize) -> Option<usize> {
    /// What may stand between the watts and the cross.
    const KINDS: Cues = DIODE.and(Cues::of(&[Role::Cob, Role::Double, Role::Package(Package::Smd)]));
    let mut i = at + 1;
    let kind = |i: usize| {
        page.items.get(i).is_some_and(|item| {
            item.cue.any(KINDS)
                || item.cue.any(Cues::BARE) && is_package(page, i)
                || item.mark == Some(Mark::Dash) && !page.breaks(i)
        })
    };
    while i < at + 6 && kind(i) {
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

/// `100 LEDs of 10W`, `60 pcs 10W LEDs`, `90 LEDs (5W each)`: a count straight before the watts with that index.
pub(super) fn listed(page: &Page, index: usize) -> Option<usize> {
    /// Words that may stand between the count and the watts, and have a cue.
    const BETWEEN: Cues =
        DIODE.and(JOINS).and(Cues::of(&[Role::Pieces, Role::Cob, Role::Double, Role::Kind, Role::Each]));
    const JOINS: Cues = Cues::of(&[Role::With, Role::At]);
    /// The most items from the count to the watts.
    const FAR: usize = 6;
    let f = &page.figures[index];
    let at = usize::from(f.item);
    let n = index.checked_sub(1)?;
    let count = &page.figures[n];
    let first = usize::from(count.item);
    if (first + FAR < at) | !is_count(count) || page.mark_before(first) == Some(Mark::Times) {
        return None;
    }
    let (mut all, mut joined, mut units, mut others) = (Cues::default(), false, false, 0);
    for i in first + 1..at {
        let item = &page.items[i];
        if item.cue.any(BETWEEN) {
            all = all.and(item.cue);
            continue;
        }
        match item.what {
            // "100 units of 3W LED"
            What::Word(Role::Lights) if item.is(const { Letters::of("units") }) => units = true,
            What::Word(Role::Of | Role::DoubleEnded | Role::Unit(Unit::Amp)) => joined = true,
            What::Word(Role::None) if others < 2 => others += 1,
            What::Mark(Mark::Open | Mark::At) => {}
            // "200pcs/3W"
            What::Mark(Mark::Slash) if i + 1 == at && !page.spaced(i) && !page.spaced(at) => joined = true,
            _ => return None,
        }
    }
    // A few pieces or units are lights or heads more often than diodes.
    let many = count.high >= FEWEST_DIODES;
    let worded = all.any(DIODE.and(Role::Cob.cue()));
    let thing = worded || all.any(Role::Pieces.cue()) || units && many;
    let joined = joined || all.any(JOINS);
    let product = || {
        (count.high * f.high - f.high).abs() > 0.1
            && page.watts().any(|(_, w)| (w.high - count.high * f.high).abs() < 0.01 * w.high)
    };
    let each = || {
        (worded || many) && (page.role_before(at) == Role::Each || page.right(at).near.any(Role::Each.cue()))
    };
    let alone = || worded && many && alone_beside_more(page, at, f);
    let beads = || {
        let set = DIODE.and(Cues::of(&[Role::Light, Role::Lights, Role::Part]));
        let after = page.first_right(at, set, 4);
        lamp_beads(page, at)
            || after.any(Cues::of(&[Role::Diode, Role::Chip]))
            || (after.any(Role::Led.cue()) && thing)
    };
    let cob =
        || page.cues.any(Role::Cob.cue()) && page.first_right(at, Role::Cob.cue(), 3).any(Role::Cob.cue());
    let sure = thing && (joined || product() || each() || alone()) || beads() || cob();
    sure.then_some(n)
}

/// "4x COB 600W (150W each)": COBs that the total is the watts times.
pub(super) fn cobs_of_a_total(page: &Page, at: usize) -> Option<usize> {
    if !page.cues.any(Role::Cob.cue()) {
        return None;
    }
    let each = page.role(at + 1) == Role::Each || page.role_before(at) == Role::Each;
    let f = page.figure(at).filter(|_| each)?;
    page.figures.iter().position(|n| {
        let cob = usize::from(n.item) + 1;
        let joined = matches!(page.mark(cob), Some(Mark::Times | Mark::Dash));
        let behind = cob >= 3 && page.role(cob - 3) == Role::Cob && counts_cobs(page.mark(cob - 2));
        is_count(n)
            && (behind || page.role(cob + usize::from(joined)) == Role::Cob)
            && page.watts().any(|(_, w)| (w.high - n.high * f.high).abs() < 0.01)
    })
}

/// "COB x 4", "COB: 4 pcs": a sign between the word and its number.
pub(super) fn counts_cobs(sign: Option<Mark>) -> bool {
    matches!(sign, Some(Mark::Times | Mark::Colon | Mark::Equal))
}

/// "110 W draw, 100 LEDs 10W": watts that nothing follows, beside a figure so much higher that they cannot be the light's, and
/// no other lamp that could have that figure.
fn alone_beside_more(page: &Page, at: usize, f: &Figure) -> bool {
    let lamps = Cues::of(&[Role::Equivalent, Role::Replaces, Role::Replacement, Role::Versus, LAMP_ROLE]);
    (at + 1 == page.items.len() || page.breaks(at + 1))
        && f.high <= 15.0
        && !page.cues.any(lamps)
        && page.watts().any(|(_, w)| w.high >= 3.0 * f.high)
}
