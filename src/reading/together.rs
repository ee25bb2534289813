//! Lights sold together without a word for a pack: "Two (2) panels, 100W the pair, each draws 49W", "3 stuks ... per lamp",
//! "kit 2 lâmpadas", "qty 12, case". One light of several parts is told alike, so most need a word for each of the lights.

use super::cues::Cues;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::roles::{Role, Unit};
use super::sold::{MOST_PIECES, taken};
use super::watts::BEAD;
use crate::facts::Taken;

/// Most lights of a trade case.
const MOST_OF_A_CASE: f64 = 100.0;

/// The pack, where its lights are numbered or called a pair.
pub(super) fn units(page: &Page) -> Option<Taken<u32>> {
    const SHARED: Cues = Cues::of(&[Role::Each, Role::Per, Role::Pack, Role::Bundle]);
    if page.cues.any(SHARED)
        && page.cues.any(Cues::of(&[Role::Light, Role::Part, Role::Pack]))
        && let Some(found) = shared(page)
    {
        return Some(found);
    }
    if page.is(0, const { Letters::of("buy") }) {
        return page.bare().find_map(|(_, n)| bought(page, n));
    }
    None
}

/// The pack that each of its lights is told of.
#[inline(never)]
fn shared(page: &Page) -> Option<Taken<u32>> {
    pair(page).or_else(|| page.bare().find_map(|(_, n)| numbered(page, n)))
}

/// Whether a word or a unit speaks of lights at all: "grow pots, 10 pack" does not.
pub(super) fn lights(page: &Page) -> bool {
    const LIGHTS: Cues = Cues::of(&[
        Role::Light,
        Role::Led,
        Role::Part,
        Role::Diode,
        Role::Chip,
        Role::Cob,
        Role::Tube,
        Role::Power,
    ]);
    page.cues.any(LIGHTS)
        || page.has_unit(&[Unit::Watt, Unit::Volt, Unit::VoltAc, Unit::VoltDc, Unit::Kelvin])
}

/// "100W the pair", "600 W as a pair", "sold as a pair".
fn pair(page: &Page) -> Option<Taken<u32>> {
    if !page.cues.any(Role::Pair.cue()) {
        return None;
    }
    let pair = |i: usize| page.role(i) == Role::Pair && page.role(i + 1) != Role::Of;
    (1..page.items.len()).filter(|&i| pair(i)).find_map(|i| {
        let small = |k: &usize| {
            matches!(
                page.role(*k),
                Role::None | Role::At | Role::For | Role::DoubleEnded | Role::Unit(Unit::Amp)
            ) && matches!(page.what(*k), Some(What::Word(_)))
        };
        let words = (i.saturating_sub(3)..i).rev().take_while(small).count();
        let sold = words > 0 && (i - words..i).any(|k| page.is(k, const { Letters::of("sold") }));
        (sold || words > 0 && i > words && page.is_watts(i - words - 1))
            .then(|| taken(2.0, page.items[i].start, page.items[i].end))
            .flatten()
    })
}

/// "Two (2) 50W panels ... each", "3 stuks groeilampen ... per lamp", "Kit 2 lâmpadas", "qty 12, case".
fn numbered(page: &Page, n: &Figure) -> Option<Taken<u32>> {
    if n.range | n.list | n.decimal || n.high > MOST_OF_A_CASE {
        return None;
    }
    let i = usize::from(n.item);
    if page.role_before(i) == Role::Quantity && of_a_case(page, i) {
        return taken(n.high, n.start, n.end);
    }
    if n.high > 12.0 {
        return None;
    }
    if i == 1 && page.role(0) == Role::Bundle && page.role(2) == Role::Lights {
        return taken(n.high, n.start, page.items[2].end);
    }
    // "half-dozen"
    let dash = usize::from(page.mark_before(i) == Some(Mark::Dash));
    let half = n.worded && n.high >= 12.0 && i > dash && page.is(i - 1 - dash, const { Letters::of("half") });
    let (start, high) = if half { (i - 1 - dash, n.high / 2.0) } else { (i, n.high) };
    if !page.cues.any(Cues::of(&[Role::Each, Role::Per])) || high > MOST_PIECES || !leads(page, start) {
        return None;
    }
    let again = page.mark(i + 1) == Some(Mark::Open)
        && page.figure(i + 2).is_some_and(|m| (m.high - high).abs() < 0.5)
        && page.mark(i + 3) == Some(Mark::Close);
    let pieces = page.role(i + 1) == Role::Pieces;
    let first = i + 1 + 3 * usize::from(again) + usize::from(pieces);
    let last = named(page, first, n.worded || pieces, start == 0)?;
    apiece(page, last).then(|| taken(high, page.items[start].start, page.items[last].end)).flatten()
}

/// The word for lights from item `first` on, to which the number before it belongs; a maker's name and the watts of one may stand
/// between. Panels are lights only at the start of a text.
fn named(page: &Page, first: usize, names: bool, start: bool) -> Option<usize> {
    const KINDS: [Letters; 3] = Letters::all(["grow", "plant", "led"]);
    let mut others = 0;
    for k in first..first + 7 {
        match page.what(k)? {
            What::Word(Role::Lights) => return Some(k),
            What::Word(Role::Part) if start && page.starts(k, const { Letters::of("panel") }) => {
                return Some(k);
            }
            What::Word(Role::Led) | What::Code => {}
            What::Word(Role::None) if KINDS.iter().any(|&w| page.is(k, w)) => {}
            What::Word(Role::None) if names && others < 2 => others += 1,
            What::Figure(_) if page.is_watts(k) => {}
            What::Mark(Mark::Dash) if !page.breaks(k) => {}
            _ => return None,
        }
    }
    None
}

/// Whether a number at item `i` may be the number of things sold: no word before it that would make it another's, and no light.
fn leads(page: &Page, i: usize) -> bool {
    const THING: Cues = Cues::of(&[Role::Light, Role::Part, Role::Led]);
    let joined = match page.what(i.wrapping_sub(1)) {
        None | Some(What::Word(Role::None)) => true,
        Some(What::Mark(mark)) => matches!(mark, Mark::Colon | Mark::Line | Mark::Comma | Mark::Open),
        _ => false,
    };
    joined && !page.items[..i].iter().any(|item| item.cue.any(THING))
}

/// "each", "per lamp", "je 200 W" after item `last`: words for every one of the lights, not of their parts.
fn apiece(page: &Page, last: usize) -> bool {
    (last + 1..page.items.len()).any(|k| {
        let thing = match page.role(k) {
            Role::Each => k + 1,
            Role::Per => k + 1,
            _ => return false,
        };
        let part = page.role(thing) == Role::Part && !page.starts(thing, const { Letters::of("panel") });
        let light = matches!(page.role(thing), Role::Light | Role::Lights | Role::Pieces | Role::Part);
        !part && page.role(thing) != Role::Board && (light || page.role(k) == Role::Each)
    })
}

/// "plant lamp, qty 12, contractor case": a number of lights in a case; without a word for one it may be diodes.
fn of_a_case(page: &Page, i: usize) -> bool {
    let breaks = |k: usize| k == 0 || page.breaks(k - 1) || page.mark(k - 1) == Some(Mark::Open);
    page.cues.any(Role::Pack.cue())
        && !page.cues.any(BEAD.and(Cues::of(&[Role::Cob, Role::Led])))
        && breaks(i - 1)
        && (i + 1 == page.items.len() || page.breaks(i + 1) || page.mark(i + 1) == Some(Mark::Close))
}

/// "Buy 1 get 1: 20W clip light, 2 lights".
fn bought(page: &Page, n: &Figure) -> Option<Taken<u32>> {
    let i = usize::from(n.item);
    let ends = i + 2 == page.items.len() || page.breaks(i + 2) || page.mark(i + 2) == Some(Mark::Close);
    let apart = matches!(page.mark_before(i), Some(Mark::Comma | Mark::Open | Mark::Equal | Mark::Line));
    (!n.range && n.high <= MOST_PIECES && page.role(i + 1) == Role::Lights && ends && apart)
        .then(|| taken(n.high, n.start, page.items[i + 1].end))
        .flatten()
}

/// "(photo avec lot de 4)": the pack at item `i` is only in the picture.
pub(super) fn pictured(page: &Page, i: usize) -> bool {
    const PICTURE: [Letters; 7] =
        Letters::all(["photo", "pictur", "image", "bild", "foto", "abbild", "zdjec"]);
    (i.saturating_sub(4)..i)
        .rev()
        .take_while(|&k| matches!(page.what(k), Some(What::Word(_))))
        .any(|k| PICTURE.iter().any(|&w| page.starts(k, w)))
}

/// "2x Brand 300W grow lights, 295W per unit": whether the watts at item `k` follow a name after the number that the text starts
/// with, and each of the lights is spoken of.
pub(super) fn named_lead(page: &Page, i: usize, k: usize) -> bool {
    i == 0 && k == 3 && page.cues.any(Cues::of(&[Role::Each, Role::Per, Role::Pack])) && apiece(page, k)
}

/// "18W tube x 4, 96 diodes each": a tube at item `i` that is a light of its own.
pub(super) fn tube(page: &Page, i: usize) -> bool {
    page.role(i) == Role::Part
        && page.starts(i, const { Letters::of("tub") })
        && page.cues.any(Role::Each.cue())
}

/// "selected: 2 pcs": a choice before the number at item `i`.
pub(super) fn selected(page: &Page, i: usize) -> bool {
    i >= 2 && page.role(i - 2) == Role::Selected
}
