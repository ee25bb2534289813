//! Photon flux (umol/s) and efficacy (umol/J) of the whole light. A density per square metre, or a figure at a distance, is
//! neither.

use super::cues::Cues;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::power::span;
use super::roles::{Role, Unit};
use crate::facts::{Left, LeftWhy, Read, Stated, Taken};

/// The efficacies in umol/J that a light may have; a bare number outside is something else. (Common practice, no source.)
const PLAUSIBLE: std::ops::RangeInclusive<f64> = 0.3..=6.0;

/// Fills `ppf`, `ppe` and `ppe_is_bound`.
pub(super) fn choose(page: &Page, variants: bool, read: &mut Read) {
    const PHOTONS: u32 =
        1 << Unit::FluxDensity as u32 | 1 << Unit::PhotonFlux as u32 | 1 << Unit::PhotonEfficacy as u32;
    const WORDS: Cues = Cues::of(&[Role::Ppf, Role::Ppe, Role::Density, Role::Unit(Unit::Micromole)]);
    let words = page.cues.any(WORDS);
    // A number without a unit is one of photons only by a word.
    let wanted = PHOTONS | if words { 1 << Unit::Bare as u32 } else { 0 };
    if !(words | page.has_any(PHOTONS)) {
        return;
    }
    figures(page, wanted, variants, read);
}

/// The same from the figures of the wanted units, a bit each.
#[inline(never)]
fn figures(page: &Page, wanted: u32, variants: bool, read: &mut Read) {
    for (_, f) in page.others(wanted & 1 << Unit::Bare as u32 != 0) {
        if wanted >> f.unit as u32 & 1 == 0 {
            continue;
        }
        let at = usize::from(f.item);
        match f.unit {
            Unit::FluxDensity => leave(read, f, LeftWhy::FluxDensity),
            Unit::PhotonFlux if table_cell(page, at) || variants && differs(page, f) => {
                leave(read, f, LeftWhy::Variant);
            }
            Unit::PhotonFlux => flux(page, f, at, read),
            Unit::PhotonEfficacy if variants && differs(page, f) => leave(read, f, LeftWhy::Variant),
            Unit::PhotonEfficacy => efficacy(page, f, at, read),
            Unit::Bare => bare(page, f, at, read),
            _ => {}
        }
    }
}

fn leave(read: &mut Read, f: &Figure, why: LeftWhy) {
    read.left.push(Left { span: span(f), why });
}

fn stated(f: &Figure) -> Stated {
    Stated { value: f.high, half_digit: f.half }
}

/// "PPF | 248 | 388": two models.
fn table_cell(page: &Page, at: usize) -> bool {
    page.mark_before(at) == Some(Mark::Pipe)
        && at >= 2
        && page.figure(at - 2).is_some_and(|f| f.unit == Unit::Bare)
}

/// Whether another flux or efficacy of the page is a different one, as those of two models are.
fn differs(page: &Page, f: &Figure) -> bool {
    page.figures.iter().any(|g| g.unit == f.unit && (g.high - f.high).abs() > f64::EPSILON)
}

fn flux(page: &Page, f: &Figure, at: usize, read: &mut Read) {
    let label = label(page, at);
    if label == Some(Role::Density) || (label.is_none() && at_distance(page, at)) {
        leave(read, f, LeftWhy::FluxDensity);
    } else if read.ppf.is_none() {
        read.ppf = Some(Taken { value: stated(f), span: span(f) });
    }
}

fn efficacy(page: &Page, f: &Figure, at: usize, read: &mut Read) {
    if read.ppe.is_none() {
        read.ppe = Some(Taken { value: stated(f), span: span(f) });
        read.ppe_is_bound = is_bound(page, at);
    }
}

/// "up to 3.1", "diode efficacy": not the whole light's.
fn is_bound(page: &Page, at: usize) -> bool {
    let left = page.left(at);
    let diodes = Cues::of(&[Role::Diode, Role::Chip, Role::Led, Role::UpTo]);
    left.cues.any(diodes)
        || matches!(page.mark_before(at), Some(Mark::Compare))
        || page.first_right(at, Cues::of(&[Role::Diode, Role::Chip]), 2).any(diodes)
}

/// The photon word that labels the figure at item `at`.
fn label(page: &Page, at: usize) -> Option<Role> {
    let mut i = at;
    let (mut signed, mut joule, mut area) = (false, false, false);
    for _ in 0..9 {
        i = i.checked_sub(1)?;
        signed |= i + 1 == at && matches!(page.mark(i), Some(Mark::Colon | Mark::Equal));
        match page.items[i].what {
            What::Word(role @ (Role::Ppf | Role::Ppe | Role::Density)) => return Some(role),
            What::Word(Role::Unit(Unit::Joule)) => joule = true,
            What::Word(Role::Unit(Unit::SquareMetre | Unit::Metre)) => area = true,
            // "umol/J=2.5": the unit alone is the label, unless a word stands before it.
            What::Word(Role::Unit(Unit::Micromole))
                if (signed || starts_cell(page, i, at))
                    && !area
                    && !matches!(
                        page.what(i.wrapping_sub(1)),
                        Some(What::Word(_) | What::Mark(Mark::Open))
                    ) =>
            {
                return Some(if joule { Role::Ppe } else { Role::Ppf });
            }
            What::Word(_)
            | What::Mark(
                Mark::Colon | Mark::Equal | Mark::Open | Mark::Close | Mark::Compare | Mark::Tilde,
            ) => {}
            What::Mark(Mark::Slash | Mark::Dot | Mark::Inverse | Mark::Squared | Mark::At) => {}
            What::Figure(_) if page.figure(i).is_some_and(|f| f.unit == Unit::Length) => {}
            _ => return None,
        }
    }
    None
}

/// "| µmol/s 270 |": whether the unit at item `i` and the number at item `at` fill a cell.
fn starts_cell(page: &Page, i: usize, at: usize) -> bool {
    let ends = |m: Option<Mark>| matches!(m, Some(Mark::Pipe | Mark::Line));
    i > 0 && ends(page.mark(i - 1)) && (at + 1 == page.items.len() || ends(page.mark(at + 1)))
}

/// A distance or "center" close after the figure.
fn at_distance(page: &Page, at: usize) -> bool {
    let mut beyond = false;
    for i in at + 1..at + 5 {
        if page.role(i) == Role::Density {
            // After a comma "PPFD" labels a figure of its own.
            return !beyond
                || page.starts(i, const { Letters::of("cent") })
                || page.is(i, const { Letters::of("distance") });
        }
        if (page.role(i) == Role::At || page.mark(i) == Some(Mark::At))
            && page.figure(i + 1).is_some_and(|f| matches!(f.unit, Unit::Length | Unit::Metre))
        {
            return true;
        }
        let other = page.figure(i).is_some_and(|f| !matches!(f.unit, Unit::Length | Unit::Metre));
        if other || matches!(page.mark(i), Some(Mark::Line | Mark::Stop)) {
            return false;
        }
        beyond |= page.breaks(i);
    }
    false
}

/// A number without a unit under a photon word: "PPF 226", "eff.=3.08", "405 PPF", "PPF (umol/s): 650".
fn bare(page: &Page, f: &Figure, at: usize, read: &mut Read) {
    if f.list || f.worded || page.mark(at + 1) == Some(Mark::Times) || page.counts_something(at) {
        return;
    }
    let after = page.role(at + 1);
    let label = label(page, at).or(match after {
        Role::Ppf | Role::Density | Role::Ppe
            if page.what(at + 2).is_none_or(|w| matches!(w, What::Mark(m) if m != Mark::Colon)) =>
        {
            Some(after)
        }
        _ => None,
    });
    let cell = page.mark_before(at) == Some(Mark::Pipe)
        && page.mark(at + 1) == Some(Mark::Pipe)
        && page.figure(at + 2).is_some();
    match label {
        Some(Role::Density) if f.high >= 20.0 => leave(read, f, LeftWhy::FluxDensity),
        Some(Role::Ppf) if read.ppf.is_none() && f.high >= 5.0 && !cell => {
            read.ppf = Some(Taken { value: stated(f), span: span(f) });
        }
        Some(Role::Ppe) if read.ppe.is_none() && PLAUSIBLE.contains(&f.high) => efficacy(page, f, at, read),
        _ => {}
    }
}
