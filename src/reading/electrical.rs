//! Mains (or adapter) volts and amperes, and the current that each diode is driven at.
//!
//! The mains side counts where it is given, else the DC side. A dimming signal, a fuse, a fan's volts and an adapter's output
//! beside mains volts do not.

use smallvec::SmallVec;

use super::figures::{Figure, What};
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::power::span;
use super::rated::{MAINS, feeds, of_the_light};
use super::roles::{Role, Unit};
use super::watts::BEAD;
use crate::facts::{Read, Stated, Supply, Taken};
use crate::units::Amps;

/// The largest current in A that is taken for one diode's drive current.
const LARGEST_DRIVE: f64 = 4.0;

/// The largest forward voltage of one diode in V (common practice, no source).
const LARGEST_FORWARD: f64 = 4.0;

/// Units, a bit each.
const VOLTS: u32 = 1 << Unit::Volt as u32 | 1 << Unit::VoltAc as u32 | 1 << Unit::VoltDc as u32;
const CURRENTS: u32 = 1 << Unit::Amp as u32 | 1 << Unit::Milliamp as u32;
const BARE: u32 = 1 << Unit::Bare as u32;

/// The volts of one side: the first figure of them, the lowest and the highest.
#[derive(Clone, Copy)]
struct Volts<'a> {
    first: &'a Figure,
    low: &'a Figure,
    high: &'a Figure,
}

impl<'a> Volts<'a> {
    /// The same with another figure.
    fn with(side: Option<Self>, f: &'a Figure) -> Self {
        let Self { first, low, high } = side.unwrap_or(Self { first: f, low: f, high: f });
        Self {
            first,
            low: if f.low < low.low { f } else { low },
            high: if f.high > high.high { f } else { high },
        }
    }
}

/// Fills `volts`, `amps`, `supply` and `drive`.
pub(super) fn choose(page: &Page, read: &mut Read) {
    // All the words that label a number with volts or amperes.
    let labels = page.cues.any(Role::Voltage.cue());
    let wanted = VOLTS | CURRENTS | if labels { BARE } else { 0 };
    if !page.has_any(wanted) {
        return;
    }
    let (mut mains, mut dc): (Option<Volts>, Option<Volts>) = (None, None);
    let mut amps: SmallVec<[usize; 4]> = SmallVec::new();
    for (k, f) in page.others(labels) {
        let unit = 1 << f.unit as u32;
        if wanted & unit == 0 {
            continue;
        }
        if unit & BARE != 0 {
            if !after_a_label(page, usize::from(f.item)) {
                continue;
            }
            match labelled(page, f).filter(|_| f.high > 0.0) {
                Some(Unit::Volt) if f.range || f.list || f.high >= 1.0 => {
                    let side = if f.high >= MAINS { &mut mains } else { &mut dc };
                    *side = Some(Volts::with(*side, f));
                }
                Some(Unit::Amp) => amps.push(k),
                _ => {}
            }
            continue;
        }
        if !of_the_light(page, f) {
            continue;
        }
        if unit & VOLTS != 0 {
            let side = if is_mains(page, f) { &mut mains } else { &mut dc };
            *side = Some(Volts::with(*side, f));
        } else if f.unit == Unit::Amp {
            let driven = || page.left(usize::from(f.item)).cues.any(Role::Drive.cue());
            if page.cues.any(Role::Drive.cue()) && (driven() || drive_word(page, f)) {
                drive(f, f.high, read);
            } else {
                amps.push(k);
            }
        } else {
            match milliamps(page, f) {
                Side::Supply => amps.push(k),
                Side::Diode => drive(f, f.high / 1000.0, read),
                Side::Driver => {}
            }
        }
    }
    let Some(side) = mains.or(dc) else {
        read.amps = amps.first().map(|&k| taken(&page.figures[k], page.figures[k].high));
        return;
    };
    let Volts { first, low, high } = side;
    let volts = |v: f64, f: &Figure| Stated { value: v, half_digit: f.half };
    read.volts = Some(Taken { value: (volts(low.low, low), volts(high.high, high)), span: span(first) });
    current(page, &amps, mains.is_some(), volts(high.high, high), read);
}

fn taken(f: &Figure, value: f64) -> Taken<Stated> {
    let scale = if f.unit == Unit::Milliamp { 1000.0 } else { 1.0 };
    Taken { value: Stated { value: value / scale, half_digit: f.half / scale }, span: span(f) }
}

fn drive(f: &Figure, amps: f64, read: &mut Read) {
    if read.drive.is_none() && amps > 0.0 && amps <= LARGEST_DRIVE {
        read.drive = Some(Taken { value: Amps(amps), span: span(f) });
    }
}

/// What a current in mA flows through.
enum Side {
    Supply,
    Diode,
    /// All the strings of a driver together, so nobody knows how much of it flows through one diode.
    Driver,
}

/// "USB 5V 2000mA", "adapter 12V 1500mA" feed a light; "700mA driver" feeds its strings; "350mA" drives a diode.
#[inline(never)]
fn milliamps(page: &Page, f: &Figure) -> Side {
    let at = usize::from(f.item);
    let left = page.left(at);
    if left.cues.any(Role::Input.cue()) {
        return Side::Supply;
    }
    if left.cues.any(Role::Drive.cue().and(BEAD).and(Role::Cob.cue())) || drive_word(page, f) {
        return Side::Diode;
    }
    let feeder = (at.saturating_sub(3)..at + 4).any(|i| feeds(page, i));
    // A few volts are what one diode takes, and a range of volts is what a COB takes: "9-12V 900mA".
    let supply = |v: &Figure| v.high > LARGEST_FORWARD && (!v.range || feeder);
    if paired(page, f).is_some_and(supply) || page.role_before(at) == Role::Dc {
        return Side::Supply;
    }
    if feeder { Side::Driver } else { Side::Diode }
}

fn drive_word(page: &Page, f: &Figure) -> bool {
    let at = usize::from(f.item);
    (at.saturating_sub(4)..at).any(|i| page.role(i) == Role::Drive) && !page.breaks(at.wrapping_sub(1))
}

/// Chooses the current at the lowest voltage, and pairs it.
#[inline(never)]
fn current(page: &Page, amps: &[usize], mains: bool, highest: Stated, read: &mut Read) {
    let mut best: Option<(usize, Option<f64>)> = None;
    for &k in amps {
        let paired = paired(page, &page.figures[k]);
        // An adapter's output beside the mains side.
        if mains && paired.is_some_and(|v| v.high < MAINS) {
            continue;
        }
        let volts = paired.map(|v| v.low);
        best = match (best, volts) {
            (None, v) => Some((k, v)),
            (Some((_, Some(old))), Some(new)) if new < old => Some((k, volts)),
            (old, _) => old,
        };
    }
    let Some((k, _)) = best else { return };
    let f = &page.figures[k];
    let amps = taken(f, f.high);
    let volts = paired(page, f).map_or(highest, |v| Stated { value: v.high, half_digit: v.half });
    read.amps = Some(amps);
    read.supply = Some(Taken { value: Supply { volts, amps: amps.value }, span: amps.span });
}

/// The voltage that the current stands with: "5.4A @120V", "1.6A (110V)", "120V: 2.67A", "5V/2A".
fn paired<'a>(page: &Page<'a>, f: &Figure) -> Option<&'a Figure> {
    let at = usize::from(f.item);
    let joins = |i: usize| match page.what(i) {
        Some(What::Mark(
            Mark::At
            | Mark::Slash
            | Mark::Open
            | Mark::Colon
            | Mark::Equal
            | Mark::Current
            | Mark::Times
            | Mark::Tilde
            | Mark::Close,
        )) => true,
        Some(What::Word(role)) => matches!(
            role,
            Role::At | Role::Ac | Role::Dc | Role::Current | Role::For | Role::UpTo | Role::Rating
        ),
        _ => false,
    };
    let volts =
        |i: usize| page.figure(i).filter(|v| matches!(v.unit, Unit::Volt | Unit::VoltAc | Unit::VoltDc));
    for i in at + 1..at + 5 {
        if let Some(v) = volts(i) {
            // `24V 1.5A 230V`: without a sign the one before is nearer.
            if i > at + 1 || volts(at.wrapping_sub(1)).is_none() {
                return Some(v);
            }
        }
        if !joins(i) {
            break;
        }
    }
    for i in (at.saturating_sub(4)..at).rev() {
        if let Some(v) = volts(i) {
            return Some(v);
        }
        if !joins(i) {
            break;
        }
    }
    None
}

fn is_mains(page: &Page, f: &Figure) -> bool {
    let at = usize::from(f.item);
    let dc = f.unit == Unit::VoltDc || page.role_before(at) == Role::Dc;
    let output = || {
        page.is(at.wrapping_sub(1), const { Letters::of("output") })
            && page.left(at).cues.any(Role::Rating.cue())
    };
    f.unit == Unit::VoltAc && f.high > 24.0 || (f.high >= MAINS && !dc && !output())
}

/// The signs between a label and its number.
const SIGNS: u32 = Mark::LABEL | Mark::Open.bit() | Mark::Close.bit();

/// Whether a label may end before the bare number at item `at`: most often something else stands there.
fn after_a_label(page: &Page, at: usize) -> bool {
    let sign = page.sign_before(at) & (SIGNS | Mark::Question.bit()) != 0;
    at > 0 && sign | page.plays(at - 1).any(Role::Voltage.cue())
}

/// "V: 85-265", "Input (V): 100-277", "Amps: 1.6": the unit, volts or amperes, that a label gives the bare number.
#[inline(never)]
fn labelled(page: &Page, f: &Figure) -> Option<Unit> {
    let at = usize::from(f.item);
    let mut i = at;
    // After "Amp(120V)=" nothing else than amperes.
    let (mut signed, mut volts) = (false, true);
    while let Some(k) = i.checked_sub(1) {
        i = k;
        let sign = page.sign(k);
        // "Volts? 120-277"
        let asked = k + 1 == at && sign & Mark::Question.bit() != 0;
        if sign & SIGNS != 0 || asked {
            signed |= asked || sign & Mark::LABEL != 0;
            continue;
        }
        if page.items[k].is_figure() {
            // "Amp(120V)=4.1"
            if signed && page.mark(k + 1) == Some(Mark::Close) && page.mark_before(k) == Some(Mark::Open) {
                volts = false;
                continue;
            }
            return None;
        }
        let found = match page.role(k) {
            Role::Ac => {
                let mains = f.range && f.low >= MAINS;
                let fits = mains || signed && page.role(k.wrapping_sub(1)) == Role::Voltage;
                fits.then_some(Unit::Volt)
            }
            // "Amps 5.0" by the word, "| A 5.0 |" by the letter.
            Role::Unit(unit @ (Unit::Volt | Unit::Amp)) => {
                let written = || k + 1 == at && (page.cell(k) || page.letters(k) >= 4);
                (signed || written()).then_some(unit)
            }
            Role::Voltage => (signed && f.high >= 3.0).then_some(Unit::Volt),
            Role::Current => (signed && page.role(k.wrapping_sub(1)) != Role::Drive).then_some(Unit::Amp),
            _ => None,
        };
        return found.filter(|&unit| volts || unit == Unit::Amp);
    }
    None
}
