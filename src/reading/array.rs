//! Count times class: `100x3W`, `3Wx100`, `100 pcs of 3W LEDs`, `90 LEDs (5W each)`, and what looks the same but counts
//! bars, heads, lamps of a pack or the half-chips of one bead.

use smallvec::SmallVec;

use super::cues::Cues;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::pairs::{cobs_of_a_total, counts_cobs, crossed_after, crossed_before, is_count, listed};
use super::rival::rivals_multiply;
use super::roles::{Role, Unit};

/// The largest class in watts that a bead has; above it only a COB.
pub(super) const LARGEST_BEAD: f64 = 20.0;

/// Fewer may be heads, bars or lights.
pub(super) const FEWEST_DIODES: f64 = 17.0;

/// What is counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Of {
    Diodes,
    Cobs,
    /// Bars, heads, panels, half-chips: parts of one light.
    Parts,
    /// Complete lights of a pack.
    Lights,
    /// The lamps that are replaced.
    Replaced,
    /// Fans and other devices.
    Device,
    /// What other sellers are said to multiply.
    Rivals,
}

/// A number of things and the watts of each; both are indices of figures.
#[derive(Debug, Clone, Copy)]
pub(super) struct Array {
    pub count: usize,
    pub watts: usize,
    pub of: Of,
    /// A diode word stands with it.
    pub worded: bool,
}

pub(super) type Arrays = [Array];

pub(super) const DIODE: Cues = Cues::of(&[Role::Diode, Role::Chip, Role::Led]);

/// Finds the arrays. `pack` is the number of lights sold together.
pub(super) fn find(page: &Page, pack: Option<u32>) -> SmallVec<[Array; 2]> {
    let mut found = SmallVec::new();
    if !page.has_unit(&[Unit::Bare]) {
        return found;
    }
    let multiplies = page.has_mark(Mark::Times);
    // A count stands straight beside its watts; only the number of COBs may be anywhere.
    let figures =
        if page.cues.any(Role::Cob.cue()) { page.watts() } else { page.watts_beside_numbers(multiplies) };
    for (index, f) in figures {
        if f.range | f.list | f.per {
            continue;
        }
        let at = usize::from(f.item);
        let crossed =
            if multiplies { crossed_before(page, at).or_else(|| crossed_after(page, at)) } else { None };
        let pair = crossed.map(|count| (count, true)).or_else(|| {
            listed(page, index).or_else(|| cobs_of_a_total(page, at)).map(|count| (count, false))
        });
        if let Some((count, crossed)) = pair
            && let Some(array) = judge(page, count, index, crossed, pack)
        {
            found.push(array);
        }
    }
    if !found.is_empty() {
        drop_unlikely(page, &mut found);
    }
    found
}

/// What kind of array it is, or none.
fn judge(page: &Page, count: usize, watts: usize, crossed: bool, pack: Option<u32>) -> Option<Array> {
    let (n, w) = (&page.figures[count], &page.figures[watts]);
    let (a, z) = (usize::from(n.item.min(w.item)), usize::from(n.item.max(w.item)));
    let between = page.items[a + 1..z].iter().fold(Cues::default(), |all, item| all.and(item.cue));
    let after = page.first_right(z, DIODE.and(AFTER), 5);
    let near = page.role(z + 1).cue();
    let before = page.role_before(a).cue();
    let worded = between.any(DIODE)
        || after.any(DIODE)
        || before.any(DIODE)
        || page.mark_before(a) == Some(Mark::Colon);
    // "COB x 5 (300W each)"
    let behind = counts_cobs(page.mark_before(a)) && page.role(a.wrapping_sub(2)) == Role::Cob;
    let cob = behind || between.and(after).and(before).any(Role::Cob.cue());
    let of = if cob || (page.cues.any(Role::Cob.cue()) && w.high > LARGEST_BEAD && crossed) {
        Of::Cobs
    } else if page.role_before(a - usize::from(page.mark_before(a) == Some(Mark::Colon))) == Role::Device {
        Of::Device
    } else if page.cues.any(Role::Rival.cue()) && rivals_multiply(page, a) {
        Of::Rivals
    } else if replaced(page, a, z) {
        Of::Replaced
    } else if pack.is_some_and(|p| (f64::from(p) - n.high).abs() < 0.5)
        && (w.high > LARGEST_BEAD || led_lights(page, z) || !between.any(DIODE) && !after.any(DIODE))
    {
        Of::Lights
    } else if between.any(Role::Part.cue())
        || (near.any(Role::Part.cue()) && n.high <= 16.0)
        || (after.any(Cues::of(&[Role::Lights])) && n.high <= 16.0)
        || half_chip(page, n, w)
        || (w.high > LARGEST_BEAD)
    {
        // "240W LEDs*768" states the light's watts and a count.
        let apart = n.high >= FEWEST_DIODES && between.any(Role::Diode.cue());
        if w.high > LARGEST_BEAD && (!crossed || apart) {
            return None;
        }
        Of::Parts
    } else {
        Of::Diodes
    };
    Some(Array { count, watts, of, worded })
}

/// "6 pcs 5W LED bulbs": LED as a word for a kind of light after item `z`.
fn led_lights(page: &Page, z: usize) -> bool {
    page.role(z + 1) == Role::Led && matches!(page.role(z + 2), Role::Light | Role::Lights)
}

const AFTER: Cues = Cues::of(&[
    Role::Cob,
    Role::Light,
    Role::Part,
    Role::Equivalent,
    Role::Lamp(crate::facts::LampKind::Hps),
]);

/// `replaces 4 x 54W T5 lamps`.
fn replaced(page: &Page, a: usize, z: usize) -> bool {
    let claim = Cues::of(&[Role::Replaces, Role::Versus, Role::Equivalent]);
    let lamp = Cues::of(&[Role::Lamp(crate::facts::LampKind::Hps), Role::Replacement]);
    // A tube size is a lamp that is replaced only where something is.
    let tube = page.cues.any(claim.and(Role::Replacement.cue()));
    let lamp = if tube { lamp.and(Role::Tube.cue()) } else { lamp };
    page.cues.any(claim) && page.left(a).cues.any(claim)
        || page.cues.any(lamp) && page.first_right(z, lamp.and(DIODE), 3).any(lamp)
}

/// `10W double chip (2 x 5W)`: the two or three dice of one bead.
fn half_chip(page: &Page, n: &Figure, w: &Figure) -> bool {
    n.high <= 3.0
        && w.high <= LARGEST_BEAD
        && page.cues.any(Cues::of(&[Role::Double, Role::Each]))
        && page.watts().any(|(_, f)| (f.high - n.high * w.high).abs() < 0.01)
}

/// Denied arrays go; among arrays of a few things without a diode word, those that match the number of heads are parts.
fn drop_unlikely(page: &Page, arrays: &mut SmallVec<[Array; 2]>) {
    let denials = page.cues.any(Role::Deny.cue());
    arrays.retain(|a| {
        if !denials {
            return true;
        }
        let last = page.figures[a.count].item.max(page.figures[a.watts].item);
        !denied(page, usize::from(last))
            && !page
                .left(usize::from(page.figures[a.count].item.min(page.figures[a.watts].item)))
                .near
                .any(Role::Deny.cue())
    });
    for a in arrays.iter_mut() {
        let n = page.figures[a.count].high;
        // "4 x 5W = 20W": bars or heads, unless the class is one that bulbs are made of.
        let large = page.figures[a.watts].high > 3.0;
        if a.of == Of::Diodes && n <= 12.0 && !a.worded && (large || heads(page) == Some(n)) {
            a.of = Of::Parts;
        }
    }
}

/// "15 x 1W? No: 60 x 3W": a question that the text answers with no.
pub(super) fn denied(page: &Page, at: usize) -> bool {
    let mut i = at + 1;
    while page.has_mark(Mark::Question) && i < at + 4 && matches!(page.what(i), Some(What::Word(_))) {
        i += 1;
    }
    page.mark(i) == Some(Mark::Question) && page.role(i + 1) == Role::Deny
}

/// The number that "twin", "tri", "quad" stand for.
pub(super) fn fold_of(page: &Page, i: usize) -> f64 {
    if page.starts(i, const { Letters::of("tri") }) {
        3.0
    } else if page.starts(i, const { Letters::of("quad") }) {
        4.0
    } else {
        2.0
    }
}

/// The number of heads, bars or panels that the text gives.
pub(super) fn heads(page: &Page) -> Option<f64> {
    if !page.cues.any(Role::Part.cue()) {
        return None;
    }
    page.items.iter().enumerate().find_map(|(i, item)| {
        let What::Word(Role::Part) = item.what else { return None };
        let dash = usize::from(page.mark_before(i) == Some(Mark::Dash));
        match page.figure_before(i - dash) {
            Some(f) if is_count(f) => Some(f.high),
            _ if page.role_before(i - dash) == Role::Double => Some(fold_of(page, i - dash - 1)),
            _ => None,
        }
    })
}
