//! The draw that a listing admits: the labelled one before others, the range over two mains voltages, the highest level, or a
//! ratings row below the headline.

use super::array::Arrays;
use super::cues::Cues;
use super::figures::What;
use super::fold::Mark;
use super::item::Letters;
use super::page::Page;
use super::phrase::DRAW;
use super::power::{Chosen, SAME, highest, span};
use super::roles::{Role, Unit};
use super::says::{All, Says, Set};
use crate::facts::{Admitted, LampKind, LeftWhy, Read, Taken};
use crate::units::Watts;

/// A light on standby takes no more than this, in watts: 0.5 W by Regulation (EU) 2019/2020 (from memory), older ones a watt
/// or two (common practice, no source).
const STANDBY: f64 = 2.0;

/// Leaves draws that can only be those on standby, whatever the language: so small, beside a figure of ten times as much. Taken
/// for the light's, a duty to state them would convict.
fn leave_standby(page: &Page, says: &mut All, headline: Option<usize>) {
    let small = |k: usize| page.figures[k].high <= STANDBY;
    if !says.that(Set::DRAW).any(small) {
        return;
    }
    let high = |k: usize| page.figures[k].high;
    let most = says.that(Set::DRAW).chain(headline).map(high).fold(0.0, f64::max);
    let mut draws = says.places(Set::DRAW);
    while let Some(k) = draws.next(says) {
        if small(k) && most >= 10.0 * high(k) {
            says.set(k, Says::Left(LeftWhy::NotFullPower));
        }
    }
}

/// The rank of the best labelled draw, once those on standby are left.
#[inline(never)]
fn best_rank(page: &Page, says: &mut All, headline: Option<usize>) -> Option<u8> {
    leave_standby(page, says, headline);
    says.that(Set::DRAW).filter_map(|k| rank(says[k])).max()
}

/// The rank of a draw.
const fn rank(says: Says) -> Option<u8> {
    if let Says::Draw(rank) = says { Some(rank) } else { None }
}

/// Chooses the draw.
pub(super) fn admitted(
    page: &Page,
    says: &mut All,
    arrays: &Arrays,
    headline: Option<usize>,
    read: &mut Read,
    chosen: &mut Chosen,
) {
    let best = if says.may_have(1, Set::DRAW) { best_rank(page, says, headline) } else { None };
    let mut found: Option<(usize, f64, f64)> = None;
    let mut several = false;
    if let Some(best) = best {
        for k in says.that(Set::DRAW).filter(|&k| rank(says[k]) == Some(best)) {
            let f = &page.figures[k];
            found = Some(match found {
                None => (k, f.low, f.high),
                Some((first, low, high)) => {
                    several |= (f.high - high).abs() > SAME;
                    let at = |k: usize| usize::from(page.figures[k].item);
                    if under_voltage(page, at(first)) && under_voltage(page, at(k)) {
                        (first, low.min(f.low), high.max(f.high))
                    } else if at_level(page, at(k)) && f.high > high {
                        (k, f.low, f.high)
                    } else {
                        (first, low, high)
                    }
                }
            });
        }
    } else if let Some(h) = headline {
        let claim = page.figures[h].high;
        let level = highest(page, says).filter(|&k| k != h && page.figures[k].high < claim);
        let lower = says.that(Set::NAMEPLATE).find(|&k| {
            let f = &page.figures[k];
            k != h
                && f.high < claim - SAME
                && !is_product(page, arrays, f.high)
                && !is_class(page, f.high, claim)
        });
        found = level.or(lower).map(|k| (k, page.figures[k].low, page.figures[k].high));
        if let Some((k, low, high)) = found {
            let paired =
                |k: usize| says[k] == Says::Level && under_voltage(page, usize::from(page.figures[k].item));
            if paired(k) {
                let lowest = says
                    .that(Set::LEVEL)
                    .filter(|&k| paired(k))
                    .map(|k| page.figures[k].low)
                    .fold(low, f64::min);
                found = Some((k, lowest, high));
            }
        }
    }
    let Some((k, low, high)) = found else { return };
    let f = &page.figures[k];
    let list = f.list || (several && chosen.variants);
    if list && chosen.variants {
        says.leave(Set::DRAW, LeftWhy::Variant);
        return;
    }
    let low = if f.list { high } else { low };
    chosen.draw = Some(k);
    let value = Admitted { low: Watts(low), high: Watts(high), tolerance: f.tolerance };
    read.actual_w = Some(Taken { value, span: span(f) });
}

/// "LED number: 100, LED power: 10W" under 1000 W: a class, not a draw.
fn is_class(page: &Page, watts: f64, claim: f64) -> bool {
    page.bare().any(|(_, n)| n.high > 1.0 && (n.high * watts - claim).abs() < SAME)
}

/// Whether the figure is count times class.
pub(super) fn is_product(page: &Page, arrays: &Arrays, watts: f64) -> bool {
    arrays.iter().any(|a| (page.figures[a.count].high * page.figures[a.watts].high - watts).abs() < SAME)
}

/// Whether the draw at item `at` holds at one mains voltage: "(110V)", "@ 220V", "(220V): ".
pub(super) fn under_voltage(page: &Page, at: usize) -> bool {
    let volts = |i: usize| page.figure(i).is_some_and(|f| matches!(f.unit, Unit::Volt | Unit::VoltAc));
    (1..=3).any(|d| volts(at + d) && (at + 1..at + d).all(|i| glue(page, i)))
        || (1..=4).any(|d| at >= d && volts(at - d) && (at - d + 1..at).all(|i| glue(page, i)))
}

fn glue(page: &Page, i: usize) -> bool {
    match page.what(i) {
        Some(What::Mark(Mark::Open | Mark::Close | Mark::At | Mark::Colon | Mark::Equal)) => true,
        // Spanish "a 110V"
        Some(What::Word(_)) if page.may_be(i, Role::At.cue()) => true,
        Some(What::Word(role)) => matches!(
            role,
            Role::At
                | Role::Ac
                | Role::For
                | Role::Of
                | Role::Power
                | Role::DrawVerb
                | Role::DrawNoun
                | Role::None
        ),
        _ => false,
    }
}

/// "power consumption of the 600W panel is 115W": figure `draw` is the draw, and the one before it names
/// the light.
pub(super) fn named_light(page: &Page, draw: usize) -> bool {
    let Some([name, draw]) = draw.checked_sub(1).and_then(|name| page.figures.get(name..=draw)) else {
        return false;
    };
    // A name and a verb or a colon stand between the two.
    name.unit == Unit::Watt
        && (3..8).contains(&(draw.item - name.item))
        && names_light(page, usize::from(name.item))
}

/// The same of the figure at item `at`, by the words around it.
#[inline(never)]
fn names_light(page: &Page, at: usize) -> bool {
    const THING: Cues = Cues::of(&[Role::Light, Role::Lights, Role::Part, Role::Board, Role::Led]);
    const SAYS: [Letters; 8] = Letters::all(["is", "ist", "est", "es", "e", "equals", "liegt", "betragt"]);
    let noun = |i: usize| page.role(i) == Role::DrawNoun;
    let of = (at.saturating_sub(4)..at).rev().take_while(|&i| matches!(page.what(i), Some(What::Word(_))));
    let mut of = of;
    let Some(of) = of.find(|&i| page.role(i) == Role::Of || page.is(i, const { Letters::of("der") })) else {
        return false;
    };
    if !(of.saturating_sub(2)..of).any(noun) || (of..at).any(|i| page.role(i) == Role::Each) {
        return false;
    }
    let (mut thing, mut says) = (false, false);
    for i in at + 1..at + 8 {
        match page.what(i) {
            Some(What::Word(_)) if page.cue(i).any(THING) => thing = true,
            Some(What::Word(_)) if SAYS.iter().any(|&w| page.is(i, w)) => says = thing,
            Some(What::Word(_)) => {}
            Some(What::Mark(Mark::Colon | Mark::Equal)) => says = thing,
            Some(What::Mark(Mark::Tilde)) => {}
            Some(What::Figure(_)) => return says && page.is_watts(i),
            _ => return false,
        }
    }
    false
}

/// Whether the figure is a draw by an energy label's words or as the answer to a question.
#[inline]
pub(super) fn asked_or_on(page: &Page, at: usize) -> bool {
    page.cues.any(Role::Level.cue()) & page.cues.any(Role::Power.cue()) && on_mode(page, at)
        || page.has_mark(Mark::Question) && answers(page, at)
}

/// "Q: And from the outlet? A: Around 150 watts": the answer to a question about the draw.
#[cold]
fn answers(page: &Page, at: usize) -> bool {
    const OTHER: Cues =
        Cues::of(&[Role::Lamp(LampKind::Hps), Role::Device, Role::Dim, Role::Each, Role::Deny, Role::Part]);
    let answer = (at.saturating_sub(5)..at).rev().find(|&i| page.mark(i) == Some(Mark::Question));
    let Some(question) = answer else { return false };
    let straight = (question + 1..at).all(|i| match page.what(i) {
        Some(What::Word(role)) => role == Role::Approx || i <= question + 2,
        Some(What::Mark(mark)) => matches!(mark, Mark::Colon | Mark::Line | Mark::Tilde),
        _ => false,
    });
    if !straight {
        return false;
    }
    let mut draw = false;
    for i in (question.saturating_sub(10)..question).rev() {
        match page.what(i) {
            Some(What::Word(_)) if page.cue(i).any(OTHER) => return false,
            Some(What::Word(_)) => draw |= page.cue(i).any(DRAW),
            Some(What::Figure(_)) => return false,
            _ => break,
        }
    }
    draw
}

/// "On-mode power 402 W", "power (on mode): 402 W": as energy labels call the draw at full brightness.
#[cold]
fn on_mode(page: &Page, at: usize) -> bool {
    // "402 W on-mode power", "402 W (on mode)"
    let start = at + 1 + usize::from(page.mark(at + 1) == Some(Mark::Open));
    let dash = usize::from(page.mark(start + 1) == Some(Mark::Dash));
    if page.is(start, const { Letters::of("on") }) && page.is(start + 1 + dash, const { Letters::of("mode") })
    {
        return page.role(start + 2 + dash) == Role::Power;
    }
    let (mut power, mut on) = (false, false);
    for i in (at.saturating_sub(7)..at).rev() {
        match page.what(i) {
            Some(What::Word(Role::Power)) => power = true,
            Some(What::Word(Role::Level)) if page.is(i, const { Letters::of("mode") }) => {
                let dash = usize::from(page.mark_before(i) == Some(Mark::Dash));
                on |= i > dash && page.is(i - 1 - dash, const { Letters::of("on") });
            }
            Some(What::Word(_)) => {}
            Some(What::Mark(Mark::Colon | Mark::Equal | Mark::Open | Mark::Close)) => {}
            Some(What::Mark(Mark::Dash)) if !page.breaks(i) => {}
            _ => break,
        }
    }
    power && on
}

/// Whether the figure at item `at` belongs to a level.
pub(super) fn at_level(page: &Page, at: usize) -> bool {
    (1..=2).any(|d| {
        at >= d
            && (page.role(at - d) == Role::Level
                || page.figure(at - d).is_some_and(|f| f.unit == Unit::Percent))
    })
}
