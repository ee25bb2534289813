//! Whether watts are the class of the diodes, without a count joined to them: "Chip: 10W", "3W LEDs", "0.2W 2835".

use super::array::{FEWEST_DIODES, LARGEST_BEAD, heads};
use super::beside::Beside;
use super::counted::{Rank, counted};
use super::cues::Cues;
use super::figures::Figure;
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::phrase::{DRAW, Phrase};
use super::roles::{Role, Unit};
use super::watts::{BEAD, THING};
use crate::facts::Package;

/// Whether the watts are the class of the diodes, without a count beside them.
pub(super) fn class(
    page: &Page,
    f: &Figure,
    beside: &Beside,
    pack: Option<u32>,
    left: &Phrase,
    right: &Phrase,
) -> bool {
    let stroke = beside.followed_by(Mark::Slash) && !beside.next.spaced && !beside.second.spaced;
    if (stroke || beside.next_is(Role::Per))
        && matches!(beside.second.role, Role::Cob | Role::Chip | Role::Led)
    {
        return true;
    }
    // "each COB 50W", "4 COBs, 50W each"
    let apiece = right.near.any(Role::Each.cue()) || a_piece(beside);
    let each = left.cues.any(Role::Each.cue()) || apiece;
    if each && pack.is_none() && left.cues.any(Role::Cob.cue()) {
        return true;
    }
    f.high <= LARGEST_BEAD && !f.range && !f.list && of_a_bead(page, f, beside, pack, (left, right), apiece)
}

/// The same of watts no higher than a diode may have; `apiece` where words for "each" follow.
#[inline(never)]
fn of_a_bead(
    page: &Page,
    f: &Figure,
    beside: &Beside,
    pack: Option<u32>,
    (left, right): (&Phrase, &Phrase),
    apiece: bool,
) -> bool {
    let at = beside.at;
    let others = page.watts().any(|(_, w)| (w.high - f.high).abs() > f64::EPSILON);
    let words = Cues::of(&[Role::Pieces, Role::Quantity, Role::Diode]);
    let count = || page.items.iter().enumerate().any(|(i, item)| item.cue.any(words) && i != at + 1);
    if !(others || page.cues.any(words) && count()) {
        return false;
    }
    let ends = BEAD.and(THING).and(DRAW).and(Cues::of(&[Role::Part, Role::Device]));
    let beads = || page.first_right(at, ends, 4).any(BEAD) || lamp_beads(page, at);
    let bulb = page.cues.any(Role::Cob.cue()) && !others;
    if page.cues.any(BEAD) && !bulb && beads() && !headline_again(page, f) {
        return true;
    }
    if beside.next_is(Role::Led) && leads_to_beads(page, at + 2) {
        return true;
    }
    let labelled = left.near.any(BEAD.and(Role::Kind.cue())) && !counted_noun(page, at)
        || (left.near.any(Cues::of(&[Role::Led, Role::Power]))
            && left.cues.any(Cues::of(&[Role::Kind, Role::Chip])))
        || (left.near.any(Role::Each.cue()) && left.cues.any(BEAD));
    if labelled || of_a_diode(page, f) {
        return true;
    }
    if beside_package(page, at) && f.high <= 5.0 {
        return true;
    }
    // "60 dual dies at 10W, 600W"
    let double = Role::Double.cue();
    let doubled = page.cues.any(double)
        && (left.cues.and(right.cues).any(double) || page.role(at + 1) == Role::Led && page.breaks(at + 2))
        && double_chips(page);
    if doubled && page.watts().any(|(_, w)| w.high >= 10.0 * f.high) {
        return true;
    }
    if pack.is_none() && divides_a_total(page, f) {
        return true;
    }
    // "120 total, 5W each": each of the diodes, unless lights are sold together.
    let each = beside.next_is(Role::Each) || left.near.any(Role::Each.cue()) || apiece;
    let parts = left.cues.any(Role::Part.cue()) && !left.cues.any(BEAD);
    // "4 bars, 10W each, 40W total"
    let of_parts =
        || heads(page).is_some_and(|n| page.watts().any(|(_, w)| (n * f.high - w.high).abs() < 0.01));
    each && !parts
        && pack.is_none()
        && others
        && page.cues.any(BEAD.and(Cues::of(&[Role::Led, Role::Pieces])))
        && !of_parts()
}

/// Chinese "双头20W ... 全光20W 灯珠72颗": the headline again, and a count of beads after it.
#[cold]
fn headline_again(page: &Page, f: &Figure) -> bool {
    let bead = usize::from(f.item) + 1;
    matches!(page.role(bead), Role::Chip | Role::Diode)
        && page.figure(bead + 1).is_some_and(|n| n.unit == Unit::Bare && n.high >= FEWEST_DIODES)
        && page.watts().next().is_some_and(|(_, w)| w.item != f.item && (w.high - f.high).abs() < 0.01)
}

/// "10W lamp beads"
pub(super) fn lamp_beads(page: &Page, at: usize) -> bool {
    page.role(at + 1) == Role::Light && matches!(page.role(at + 2), Role::Chip | Role::Diode)
}

/// "75W a piece"
fn a_piece(beside: &Beside) -> bool {
    beside.next.is(const { Letters::of("a") }) && beside.second.role == Role::Pieces
}

/// "225 LEDs. LED power: 0.2W", "340 LED, 0.5W" beside many more watts: less than a watt no light draws; a few watts may be
/// those of a small one, so only a label for the power of a diode, far below the rest, speaks of them.
#[inline(never)]
fn of_a_diode(page: &Page, f: &Figure) -> bool {
    /// The largest class that a label for the power of a diode names.
    const MOST: f64 = 5.0;
    let at = usize::from(f.item);
    let sign = page.mark_before(at).filter(|m| matches!(m, Mark::Colon | Mark::Equal | Mark::Comma));
    let Some(word) = at.checked_sub(1 + usize::from(sign.is_some())).filter(|&i| i > 0) else { return false };
    let diode = |i: usize| matches!(page.role(i), Role::Led | Role::Chip | Role::Diode);
    let labelled = page.role(word) == Role::Power && diode(word - 1);
    let counted = diode(word) && page.figure(word - 1).is_some_and(|n| n.unit == Unit::Bare);
    let beside = |times: f64| page.watts().any(|(_, w)| w.high >= times * f.high);
    f.high < 1.0 && (labelled || counted) && beside(10.0)
        || f.high <= MOST && labelled && sign != Some(Mark::Comma) && beside(20.0)
}

/// "DOUBLE CHIPS!! 10W LED!!"
#[inline(never)]
fn double_chips(page: &Page) -> bool {
    (1..page.items.len())
        .any(|i| matches!(page.role(i), Role::Chip | Role::Diode) && page.role(i - 1) == Role::Double)
}

/// "double-die 10W series, quantity of LEDs 200, claimed 2000W": times a count of diodes it is another figure of the text.
#[inline(never)]
fn divides_a_total(page: &Page, f: &Figure) -> bool {
    page.bare().any(|(_, n)| {
        n.high >= FEWEST_DIODES
            && page.watts().any(|(_, w)| (n.high * f.high - w.high).abs() < 0.01)
            && counted(page, n, false).is_some_and(|(rank, cob)| rank >= Rank::Named && !cob)
    })
}

/// "120 LEDs 10W": the diode word before the watts belongs to the count before it.
#[cold]
fn counted_noun(page: &Page, at: usize) -> bool {
    at >= 2
        && page.role(at - 1) == Role::Diode
        && page.figure(at - 2).is_some_and(|n| n.unit == Unit::Bare && package_number(n.high).is_none())
}

/// `10W LED 60 pcs`: LED in the singular with a count after it.
#[cold]
fn leads_to_beads(page: &Page, i: usize) -> bool {
    page.figure(i).is_some_and(|n| n.unit == Unit::Bare) && page.role(i + 1) == Role::Pieces
}

/// A package word or number straight beside the watts.
#[inline(never)]
fn beside_package(page: &Page, at: usize) -> bool {
    is_package(page, at + 1) || at.checked_sub(1).is_some_and(|i| is_package(page, i))
}

/// A package word or number at item `i`.
pub(super) fn is_package(page: &Page, i: usize) -> bool {
    matches!(page.role(i), Role::Package(_))
        || page.figure(i).is_some_and(|f| f.unit == Unit::Bare && package_number(f.high).is_some())
}

/// The package that a bare number names.
pub(super) fn package_number(value: f64) -> Option<Package> {
    if !(2835.0..=5730.0).contains(&value) {
        return None;
    }
    Some(match value {
        2835.0 => Package::P2835,
        3014.0 => Package::P3014,
        3030.0 => Package::P3030,
        3528.0 => Package::P3528,
        5050.0 => Package::P5050,
        5630.0 => Package::P5630,
        5730.0 => Package::P5730,
        _ => return None,
    })
}
