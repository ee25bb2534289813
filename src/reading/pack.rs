//! How many complete lights the listing sells together. Bars, heads and panels of one light do not count.

use super::array::{LARGEST_BEAD, fold_of};
use super::cues::Cues;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::roles::{Role, Unit};
use super::sold::{MOST, MOST_PIECES, in_the_box, of_a_carton, of_a_colour, taken};
use super::together;
use super::watts::BEAD;
use crate::facts::Taken;

/// Most lights that a row such as "number of items" stands for.
const MOST_ITEMS: f64 = 100.0;
/// Words for a kind of light, before "lights".
const KINDS: [Letters; 3] = Letters::all(["grow", "plant", "led"]);

/// The pack, where the text states one.
pub(super) fn units(page: &Page) -> Option<Taken<u32>> {
    const SIGNS: Cues = Cues::of(&[
        Role::Pack,
        Role::Pair,
        Role::Pieces,
        Role::Light,
        Role::Lights,
        Role::Bundle,
        Role::Part,
        Role::Quantity,
    ]);
    if !page.cues.any(SIGNS) {
        return None;
    }
    let words = page.cues.any(Cues::of(&[Role::Pack, Role::Bundle]));
    let word = if words { worded(page) } else { None };
    word.or_else(|| page.bare().find_map(|(_, n)| counted(page, n))).or_else(|| together::units(page))
}

/// "2-Pack", "set of 3", "2er Set", "twin pack", "pair of".
#[inline(never)]
fn worded(page: &Page) -> Option<Taken<u32>> {
    let words = Cues::of(&[Role::Pack, Role::Bundle]);
    if !together::lights(page) {
        return None;
    }
    for (i, item) in page.items.iter().enumerate() {
        if !item.cue.any(words) {
            continue;
        }
        if let What::Word(Role::PackOf(n)) = item.what {
            return taken(f64::from(n), item.start, item.end);
        }
        let What::Word(role @ (Role::Pack | Role::Pair | Role::Bundle)) = item.what else { continue };
        // "kit com 2"
        let ends = page.figure(i + 2).is_some()
            && (i + 3 == page.items.len()
                || page.breaks(i + 3)
                || matches!(page.role(i + 3), Role::Light | Role::Lights));
        if role == Role::Bundle && page.role(i + 1) != Role::Of && !(page.role(i + 1) == Role::With && ends) {
            if let Some(found) = inside(page, i) {
                return Some(found);
            }
            continue;
        }
        if of_devices(page, i) || together::pictured(page, i) {
            continue;
        }
        if let Some(found) = inside(page, i) {
            return Some(found);
        }
        let dash = usize::from(matches!(page.mark_before(i), Some(Mark::Dash | Mark::Foot | Mark::Times)));
        if let Some(n) = page.figure_before(i - dash)
            && n.unit == Unit::Bare
            && !n.range
            && let Some(found) = taken(n.high, n.start, item.end)
        {
            return Some(found);
        }
        let alone = page.mark_before(i) == Some(Mark::Open) && page.mark(i + 1) == Some(Mark::Close);
        if role == Role::Pair && (alone || matches!(page.role(i + 1), Role::Of | Role::DoubleEnded)) {
            return taken(2.0, item.start, item.end);
        }
        if page.role_before(i - dash) == Role::Double {
            return taken(fold_of(page, i - dash - 1), page.items[i - dash - 1].start, item.end);
        }
        let mut k = i + 1;
        while matches!(page.role(k), Role::Of | Role::DoubleEnded | Role::With | Role::Pack)
            || matches!(page.mark(k), Some(Mark::Open | Mark::Colon | Mark::Equal))
        {
            k += 1;
        }
        if let Some(n) = page.figure(k)
            && n.unit == Unit::Bare
            && !n.range
            && let Some(found) = taken(n.high, item.start, n.end)
            && (k > i + 1 || matches!(page.role(k + 1), Role::Pieces | Role::Light | Role::Lights))
        {
            return Some(found);
        }
    }
    None
}

/// "Number of items: 2", "Item count: 2", "Package quantity: 2", "Pack size: 2": the label before the number at item `i`.
#[inline(never)]
fn items_row(page: &Page, i: usize) -> bool {
    let signed = i >= 2
        && page.cues.any(Cues::of(&[Role::Quantity, Role::Selected]))
        && matches!(page.mark(i - 1), Some(Mark::Colon | Mark::Equal));
    if !signed || !(i + 1 == page.items.len() || page.breaks(i + 1) || page.role(i + 1) == Role::Pieces) {
        return false;
    }
    let (mut quantity, mut item, mut pack) = (false, false, false);
    for k in (i.saturating_sub(5)..i - 1).rev() {
        match page.what(k) {
            Some(What::Word(Role::Quantity | Role::Selected)) => quantity = true,
            Some(What::Word(Role::Pack)) => pack = true,
            Some(What::Word(Role::Of | Role::Light | Role::Lights)) => {}
            Some(What::Word(_)) if page.starts(k, const { Letters::of("item") }) => item = true,
            Some(What::Word(_)) if page.starts(k, const { Letters::of("package") }) => pack = true,
            Some(What::Mark(_)) if page.breaks(k) => break,
            _ => return false,
        }
    }
    // "Item size: 60" is a length.
    quantity && (pack || item && !page.cues.any(Role::Selected.cue()))
}

/// Watts beyond a bead's after the count at item `i` that the text starts with, and no word for COBs.
fn large_lead(page: &Page, i: usize) -> bool {
    i == 0 && !page.cues.any(Role::Cob.cue()) && page.figure(i + 2).is_some_and(|w| w.high > LARGEST_BEAD)
}

/// "7pcs 1 Watt chips", "3 pc 5W crystal per bead": the watts at item `i` are those of a diode or of a part of one.
fn of_beads(page: &Page, i: usize) -> bool {
    page.figure(i).is_some_and(|w| w.unit == Unit::Watt && w.high <= LARGEST_BEAD)
        && page.first_right(i, BEAD.and(Cues::of(&[Role::Light, Role::Lights, Role::Part])), 3).any(BEAD)
}

/// "set of 2 hangers": the words after the one for a pack at item `i` are about something else than lights.
fn of_devices(page: &Page, i: usize) -> bool {
    for k in i + 1..i + 6 {
        match page.what(k) {
            Some(What::Word(Role::Device)) => return true,
            Some(What::Word(Role::Light | Role::Lights | Role::Led | Role::Part | Role::With)) => {
                return false;
            }
            Some(What::Word(_) | What::Figure(_)) => {}
            _ => return false,
        }
    }
    false
}

/// "four in a box", "2 bulbs per pack", "two-light bundle": the number before the word for a pack at item `i`.
fn inside(page: &Page, i: usize) -> Option<Taken<u32>> {
    let mut k = i;
    match page.role_before(k) {
        Role::Per => k -= 1,
        Role::Unit(Unit::Amp) if k >= 2 && page.role(k - 2) == Role::Unit(Unit::Length) => k -= 2,
        // "three lamps in one box"
        Role::None
            if k >= 2
                && page.is(k - 1, const { Letters::of("one") })
                && page.role(k - 2) == Role::Unit(Unit::Length) =>
        {
            k -= 2;
        }
        Role::Light | Role::Lights | Role::Pieces => {}
        _ => return in_the_box(page, i),
    }
    while matches!(page.role_before(k), Role::Light | Role::Lights | Role::Pieces)
        || page.mark_before(k) == Some(Mark::Dash)
    {
        k -= 1;
    }
    let n = page.figure_before(k).filter(|n| n.unit == Unit::Bare && !n.range && !n.list)?;
    taken(n.high, n.start, page.items[i].end)
}

/// `2x 300W lights`, `2 x LED grow light`, `two 300W lights`: the word for lights that the number at item `i` counts.
#[inline(never)]
fn lights_after(page: &Page, n: &Figure, i: usize) -> Option<Taken<u32>> {
    let first = if n.worded { i + 1 } else { i + 2 };
    for k in first..first + 6 {
        match page.what(k) {
            Some(What::Word(Role::Part)) if i == 0 && k > first => {
                return taken(n.high, n.start, page.items[k].end);
            }
            Some(What::Word(Role::Lights)) => return taken(n.high, n.start, page.items[k].end),
            // "2x 600W grow light" leads a text about two of them; elsewhere it may be one light of two parts.
            Some(What::Word(Role::Light)) if !page.is_watts(i + 2) || large_lead(page, i) => {
                return taken(n.high, n.start, page.items[k].end);
            }
            Some(What::Word(Role::None | Role::Led | Role::Cob | Role::Tube | Role::Unit(_))) => {}
            // "2x 1000W double chip grow lights"
            Some(What::Word(Role::Double | Role::Chip | Role::Diode))
                if page.figure(first).is_some_and(|w| w.unit == Unit::Watt && w.high > LARGEST_BEAD) => {}
            Some(What::Figure(_)) if page.is_watts(k) && (k <= i + 2 || together::named_lead(page, i, k)) => {
            }
            _ => break,
        }
    }
    None
}

/// "2x 300W lights", "light x2", "Grow Light 2PCS", "(two units)".
fn counted(page: &Page, n: &Figure) -> Option<Taken<u32>> {
    const LABELS: Cues = Cues::of(&[Role::Quantity, Role::Selected]);
    let i = usize::from(n.item);
    // What stands straight beside most numbers shows at once that they count no lights.
    let (sign, next) = (page.sign(i + 1), page.plays(i + 1));
    let crossed = (sign == Mark::Times.bit()) | n.worded & next.any(Cues::WATTS);
    let before = page.sign_before(i);
    let labelled = (before & Mark::LABEL != 0) & page.cues.any(LABELS);
    let times = (before == Mark::Times.bit())
        & page.plays(i.wrapping_sub(2)).any(Cues::of(&[Role::Light, Role::Part]));
    let pieces = next.any(Role::Pieces.cue()) && n.high <= MOST_PIECES;
    let leads = i == 0 && KINDS.iter().any(|&w| page.is(1, w));
    let things = (page.role(i + 1) == Role::Lights) | leads;
    let (many, beside) = (n.high > MOST, crossed | labelled | times | pieces | things);
    if !beside | n.range | n.list | many {
        return None;
    }
    lights(page, n, i, crossed)
}

/// The lights that the number at item `i` may count, by what stands beside it; `crossed` if a cross follows or watts do.
#[inline(never)]
fn lights(page: &Page, n: &Figure, i: usize, crossed: bool) -> Option<Taken<u32>> {
    let after = page.role(i + 1);
    let before = page.role_before(i);
    let replaced = || page.left(i).cues.any(Cues::of(&[Role::Replaces, Role::Versus, Role::Equivalent]));
    if crossed
        && let Some(found) = lights_after(page, n, i)
        && !replaced()
    {
        return Some(found);
    }
    if n.high <= MOST_ITEMS && items_row(page, i) {
        return taken(n.high, n.start, n.end);
    }
    if page.mark_before(i) == Some(Mark::Times)
        && i >= 2
        && (matches!(page.role(i - 2), Role::Light | Role::Lights) || together::tube(page, i - 2))
        && (!page.spaced(i) || n.high <= MOST_PIECES && page.breaks(i + 1))
        && !matches!(after, Role::Diode | Role::Led | Role::Cob)
    {
        return taken(n.high, page.items[i - 1].start, n.end);
    }
    if after == Role::Pieces && n.high <= MOST_PIECES && !replaced() && !of_a_carton(page, i) {
        let next = page.role(i + 2);
        if matches!(next, Role::Lights | Role::Light | Role::Tube)
            || next == Role::Part && page.starts(i + 2, const { Letters::of("tub") })
            || (next == Role::Led && matches!(page.role(i + 3), Role::Lights | Role::Light | Role::None))
                && page.what(i + 3).is_some_and(|w| matches!(w, What::Word(_)))
        {
            return taken(n.high, n.start, page.items[i + 1].end);
        }
        let ends = page.what(i + 2).is_none_or(|w| !matches!(w, What::Word(_)) || page.is_watts(i + 2))
            || page.is_watts(i + 2);
        let label = matches!(
            before,
            Role::Colour(_)
                | Role::Diode
                | Role::Chip
                | Role::Cob
                | Role::Led
                | Role::Device
                | Role::Quantity
                | Role::To
                | Role::UpTo
        ) || matches!(page.mark_before(i), Some(Mark::Colon | Mark::Equal))
            && !together::selected(page, i)
            || page.figure(i + 2).is_some_and(|f| matches!(f.unit, Unit::Nanometre | Unit::Kelvin))
            || page.mark_before(i) == Some(Mark::Times) && of_a_colour(page, i - 1);
        if ends && !label && page.mark(i + 2) != Some(Mark::Times) && !of_beads(page, i + 2) {
            return taken(n.high, n.start, page.items[i + 1].end);
        }
    }
    // "2 grow lights 1000W each"
    let mut k = i + 1;
    while i == 0 && k < 4 && KINDS.iter().any(|&w| page.is(k, w)) {
        k += 1;
    }
    if k > i + 1 && page.role(k) == Role::Lights && n.high <= MOST_PIECES {
        return taken(n.high, n.start, page.items[k].end);
    }
    let bracketed = page.mark_before(i) == Some(Mark::Open) && page.mark(i + 2) == Some(Mark::Close);
    if after == Role::Lights && (bracketed || i == 0) {
        return taken(n.high, n.start, page.items[i + 1].end);
    }
    None
}
