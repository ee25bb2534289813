//! Whose volts and amperes a figure gives: those of the light and of what feeds it, or of a fan, a fuse, a plug or one of
//! several drivers.

use super::beside::Beside;
use super::cues::Cues;
use super::figures::{Figure, What};
use super::fold::Mark;
use super::item::Letters;
use super::listed::Listed;
use super::page::Page;
use super::pairs::is_count;
use super::partial::per_part;
use super::phrase::DRAW;
use super::roles::{Role, Unit};
use super::watts::THING;

/// Volts from here on are mains, unless the text says DC.
pub(super) const MAINS: f64 = 80.0;

/// Not a dimming signal, fuse, load limit or another device's.
#[inline(never)]
pub(super) fn of_the_light(page: &Page, f: &Figure) -> bool {
    let at = usize::from(f.item);
    let dimming = f.range && signal(f);
    let other = Cues::of(&[Role::Breaker, Role::Load]);
    let limited = || {
        page.left(at).cues.any(other)
            || matches!(page.role(at + 1), Role::Breaker | Role::Load)
            || matches!(page.role(at + 2), Role::Breaker) && !page.breaks(at + 1)
    };
    if dimming || page.cues.any(other) && limited() {
        return false;
    }
    // "fans 12V", "fans (12V)"
    let before = at - usize::from(page.mark_before(at) == Some(Mark::Open));
    // "fan 12V 0.2A"
    let electrical = |i: usize| {
        page.plays(i).any(Role::Dc.cue())
            || page.figure(i).is_some_and(|f| {
                matches!(f.unit, Unit::Volt | Unit::VoltAc | Unit::VoltDc | Unit::Amp | Unit::Milliamp)
            })
    };
    let mut before = before;
    // "cable rated 10A 250V"
    while before > 0 && (electrical(before - 1) || page.role(before - 1) == Role::Rating) {
        before -= 1;
    }
    // "2 fans (12V 0.2A)"
    let first = if before < at && page.mark(before) != Some(Mark::Open) { before } else { at };
    // "timer outlet 15A"
    before -=
        usize::from(page.role_before(before) == Role::Wall && page.role_before(before - 1) == Role::Device);
    let devices = page.cues.any(Role::Device.cue());
    let device = f.unit == Unit::Amp && plug(page, before, f)
        || page.is(before.wrapping_sub(1), const { Letters::of("knob") });
    let dim = page.plays(at + 1).any(Cues::of(&[Role::Dim, Role::Switchable])) && f.high <= 10.0;
    if device || dim {
        return false;
    }
    let mut after = at;
    while electrical(after + 1) {
        after += 1;
    }
    let other = |i: usize| page.role(i) == Role::Device && !feeds(page, i) && page.role(i + 1) != Role::Has;
    let of_a_device = || {
        // "Timer: 15A"; the row of a cable gives the light's.
        let named = before - usize::from(page.mark_before(before) == Some(Mark::Colon));
        let row = named < before && page.begins(named.wrapping_sub(1), &CABLES);
        page.role_before(named) == Role::Device && !feeds(page, named - 1) && !row
            || f.high < MAINS && (in_brackets(page, first) || of_each_device(page, at))
            || other(at + 1)
            // "5V 2A USB timer"; the cable of a light carries the light's.
            || other(after + 1) && !page.begins(after + 1, &CABLES)
    };
    if devices && of_a_device() {
        return false;
    }
    // "24V 1A per strip", "24V 2A (each of 8 bars)"; the mains are the same for every part.
    let mains = f.unit != Unit::Amp && f.unit != Unit::VoltDc && f.high >= MAINS;
    let part = !mains && (per_part(page, after) || each_part(page, after) || several(page, before, after));
    !part
}

/// "0-10V": a range for dimming.
#[cold]
#[inline(never)]
fn signal(range: &Figure) -> bool {
    range.high <= 10.0 && range.unit != Unit::Amp && range.low <= 1.0
}

/// "each of 8 bars", "each bar", straight after item `at`.
#[inline(never)]
fn each_part(page: &Page, at: usize) -> bool {
    let start = at + 1 + usize::from(page.mark(at + 1) == Some(Mark::Open));
    page.role(start) == Role::Each
        && (start + 1..start + 5)
            .take_while(|&i| page.mark(i).is_none())
            .any(|i| matches!(page.role(i), Role::Part | Role::Board))
}

/// How words for the light's own cable begin.
const CABLES: Listed<3> = Listed::of(["cabl", "kabel", "plug"]);

/// How words for what feeds a light begin.
const FEEDERS: Listed<15> = Listed::of([
    "adapt", "driver", "treiber", "ballast", "supply", "psu", "netzteil", "transfor", "batter", "socket",
    "outlet", "alim", "fuente", "fonte", "cord",
]);

/// Whether the device at item `i` feeds the light: its volts are the light's supply.
pub(super) fn feeds(page: &Page, i: usize) -> bool {
    page.begins(i, &FEEDERS)
}

/// How words for what a lamp is plugged or screwed into begin.
const PLUGS: Listed<3> = Listed::of(["plug", "socket", "outlet"]);

/// "socket rated 660W max": the most that a socket can carry, before the watts at item `at`.
pub(super) fn socket_limit(page: &Page, beside: &Beside) -> bool {
    let (limit, at) = (|role: Role| matches!(role, Role::Rating | Role::UpTo), beside.at);
    if !limit(beside.before.role) {
        return false;
    }
    let mut i = at - 1;
    while i > 0 && limit(page.role(i - 1)) {
        i -= 1;
    }
    i > 0 && page.begins(i - 1, &PLUGS) && !page.left(at).cues.any(DRAW.without(Role::Wall.cue()))
}

/// "link up to 8 (290W per run max)", "up to 10 lights, 3300 W": what as many lights as may be chained take together.
#[inline(never)]
pub(super) fn chain_limit(page: &Page, beside: &Beside) -> bool {
    const CHAIN: Cues = Role::Load.cue();
    const LIMIT: Cues = Cues::of(&[Role::Rating, Role::UpTo, Role::Total]);
    const RUNS: Listed<5> = Listed::of(["run", "line", "series", "outlet", "strang"]);
    let at = beside.at;
    let Some(f) = page.figure(at).filter(|_| !beside.next.cue.any(THING)) else { return false };
    let lower = |w: &Figure| w.high * 1.5 < f.high;
    // "250W max per run"
    let per = at + 1 + usize::from(beside.next.cue.any(LIMIT));
    if page.role(per) == Role::Per && (page.cue(per + 1).any(CHAIN) || page.is_one(per + 1, &RUNS)) {
        let limit = || page.plays(per - 1).and(page.plays(at.wrapping_sub(1))).any(LIMIT);
        return page.watts().any(|(_, w)| lower(w)) || page.cues.any(CHAIN) && limit();
    }
    let (mut i, mut passed, mut opened, mut lights) = (at, beside.next.cue, false, false);
    let count = loop {
        if i == 0 || i + 9 < at {
            return false;
        }
        i -= 1;
        let cue = page.cue(i);
        match page.what(i) {
            Some(What::Word(role)) => {
                let thing = matches!(role, Role::Light | Role::Lights | Role::Part);
                lights |= thing;
                passed = passed.and(cue);
                let small = matches!(role, Role::Per | Role::Approx | Role::At | Role::None);
                if !(thing || small || cue.any(CHAIN.and(LIMIT))) {
                    return false;
                }
            }
            Some(What::Mark(Mark::Open)) => opened = true,
            // "max. 290W"
            Some(What::Mark(Mark::Stop)) if page.cue(i.wrapping_sub(1)).any(LIMIT) => {}
            Some(What::Mark(Mark::Comma | Mark::Colon | Mark::Equal | Mark::Dash)) => {}
            Some(What::Figure(_)) => match page.figure(i) {
                Some(n) if is_count(n) && n.high >= 2.0 => break n.high,
                _ => return false,
            },
            _ => return false,
        }
    };
    let before = page.left(i);
    // "replaces up to 4 bulbs", "for up to 8 plants"
    if before.cues.any(Cues::of(&[Role::Replaces, Role::Versus, Role::Equivalent])) {
        return false;
    }
    let up_to = page.role_before(i) == Role::UpTo || i >= 2 && page.role(i - 2) == Role::UpTo;
    let chained = before.cues.and(passed).any(CHAIN);
    let said = opened || passed.any(LIMIT);
    (up_to && lights || chained && (up_to || lights))
        && page.watts().any(|(_, w)| lower(w) && (said || (w.high * count - f.high).abs() <= 0.1 * f.high))
}

/// "plug 13A", "sockets rated 10A": what a plug can carry, where the text says no draw at it.
#[inline(never)]
fn plug(page: &Page, before: usize, f: &Figure) -> bool {
    /// The smallest current in A that plugs and sockets are rated for (common practice, no source).
    const RATED: f64 = 5.0;
    let said = DRAW.and(Cues::of(&[Role::At, Role::Measured]));
    f.high >= RATED
        && before > 0
        && page.begins(before - 1, &PLUGS)
        && !page.left(usize::from(f.item)).cues.any(said)
}

/// "3 fans, 12V each": each of the devices before the comma.
fn of_each_device(page: &Page, at: usize) -> bool {
    at >= 2
        && page.role(at + 1) == Role::Each
        && page.mark(at - 1) == Some(Mark::Comma)
        && page.role(at - 2) == Role::Device
        && !feeds(page, at - 2)
}

/// "one fan is a bit loud (12V, easy swap)": in brackets after a phrase about another device.
#[cold]
fn in_brackets(page: &Page, at: usize) -> bool {
    page.mark_before(at) == Some(Mark::Open)
        && (at.saturating_sub(7)..at - 1)
            .rev()
            .take_while(|&i| !page.breaks(i) && !page.may_be(i, THING))
            .any(|i| page.role(i) == Role::Device && !feeds(page, i))
}

/// "2 drivers 240W 54V 4.4A each": of one of several.
#[inline(never)]
fn several(page: &Page, mut before: usize, after: usize) -> bool {
    while before > 0 && page.is_watts(before - 1) {
        before -= 1;
    }
    let Some(feeder) = before.checked_sub(1).filter(|&i| feeds(page, i)) else { return false };
    let times = usize::from(page.mark_before(feeder) == Some(Mark::Times));
    page.role(after + 1) == Role::Each
        || page
            .figure_before(feeder - times.min(feeder))
            .is_some_and(|n| n.unit == Unit::Bare && n.high >= 2.0)
}
