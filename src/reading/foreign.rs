//! Watts that are not the light's: a width, a denied figure, another device's, a limit of load, a joke, a saving.

use super::beside::Beside;
use super::compared::{EQUAL, OUR, with_own};
use super::cues::Cues;
use super::figures::What;
use super::fold::Mark;
use super::item::Letters;
use super::levels::named_share;
use super::listed::Listed;
use super::page::Page;
use super::pairs::SIDES;
use super::phrase::{DRAW, REACH};
use super::rated::{chain_limit, feeds, socket_limit};
use super::roles::{Role, Unit};
use super::subject::lacks;
use super::watts::{BEAD, LAMP, THING};
use crate::facts::LeftWhy;

/// `18 W x 9 D`: a width.
pub(super) fn dimension(page: &Page, beside: &Beside) -> bool {
    let at = beside.at;
    beside.followed_by(Mark::Times)
        && match page.figure(at + 2).map(|f| f.unit) {
            Some(Unit::Bare | Unit::Length) => SIDES.iter().any(|&side| page.is(at + 3, side)),
            // `30 L x 22 W x 4 H`: elsewhere the letters are litres and hours.
            Some(Unit::Other) => matches!(page.last_letter(at + 2), Some('h' | 'H' | 'l' | 'L')),
            _ => false,
        }
}

/// "do NOT buy 1000W": a denial up to three words before, but not "no" and its own noun ("no fan, 300W").
#[inline(never)]
pub(super) fn denied_before(page: &Page, at: usize) -> bool {
    // "without fan 100W"
    if at > 0 && lacks(page, at - 1) {
        return false;
    }
    let left = page.left(at);
    let not = || {
        (1..=3).any(|d| {
            at >= d && page.role(at - d) == Role::Deny && !page.is(at - d, const { Letters::of("no") })
        })
    };
    left.near.any(Role::Deny.cue()) || left.cues.any(Role::Deny.cue()) && not()
}

/// "A 600W HPS uses 660W": a verb of drawing whose subject is another lamp.
#[cold]
pub(super) fn draws_elsewhere(page: &Page, at: usize) -> bool {
    (1..=3).any(|d| {
        at > d && page.role(at - d) == Role::DrawVerb && matches!(page.role(at - d - 1), Role::Lamp(_))
    })
}

/// What a page has that speaks of lights in a chain.
const CHAINED: Cues = Cues::of(&[Role::Load, Role::UpTo]);

/// Words for a limit, in the row of what feeds a light.
const LIMIT: Cues = Cues::of(&[Role::Rating, Role::UpTo]);

/// "Driver: Corvo HD, rated 320W", "Netzteil: HDL-320, 320W max": a rating after a comma, in the row of what feeds the light.
#[inline(never)]
fn in_row_of_feeder(page: &Page, beside: &Beside) -> bool {
    if !beside.before.cue.and(beside.next.cue).any(LIMIT) {
        return false;
    }
    let mut i = beside.at;
    while i > 0 && page.cue(i - 1).any(LIMIT) {
        i -= 1;
    }
    if page.mark_before(i) != Some(Mark::Comma) {
        return false;
    }
    let mut row = (i.saturating_sub(REACH)..i - 1).rev();
    let colon = row.find(|&k| page.breaks(k) || page.mark(k) == Some(Mark::Colon) || page.is_watts(k));
    colon.is_some_and(|k| k > 0 && page.mark(k) == Some(Mark::Colon) && feeds(page, k - 1))
}

/// "driver capable of 320W", "the ballast can deliver 320W", "Treiber kann 480 W": what a feeder is or could do.
#[inline(never)]
fn feeder_can(page: &Page, at: usize) -> bool {
    const CAN: Listed<8> = Listed::of(["is", "can", "could", "capable", "kann", "konnte", "peut", "puede"]);
    let word = |&i: &usize| matches!(page.what(i), Some(What::Word(_)));
    let mut before = (at.saturating_sub(5)..at).rev().take_while(word);
    let feeder = before.by_ref().find(|&i| page.role(i) == Role::Device || page.cue(i).any(THING.and(DRAW)));
    feeder.is_some_and(|k| {
        page.role(k) == Role::Device && feeds(page, k) && (k + 1..at).any(|i| page.is_one(i, &CAN))
    })
}

/// Another device's watts, a limit of load, a joke or a saving.
pub(super) fn foreign(
    page: &Page,
    beside: &Beside,
    (left, near): (Cues, Cues),
    (right, next): (Cues, Cues),
) -> Option<LeftWhy> {
    let at = beside.at;
    if page.cues.any(Role::Device.cue())
        && near_a_device(page, beside, left.and(near))
        && of_a_device(page, beside, near)
    {
        return Some(LeftWhy::OtherDevice);
    }
    let load = Role::Load.cue();
    let limit = Cues::of(&[Role::UpTo, Role::Rating, Role::Total]);
    // Most figures have nobody else's word beside them.
    let here = left.and(near).and(right).and(next);
    // "36W linkable grow strip" is the light's.
    let kind = || {
        const KIND: Listed<2> = Listed::of(["linkable", "chainabl"]);
        KIND.has(beside.next) && page.first_right(at, THING.and(Role::Part.cue()), 5) != Cues::default()
    };
    let loaded = || {
        near.any(load)
            || next.any(load) && !kind()
            || (left.any(load) && left.and(right).any(limit))
            || (right.any(load) && left.any(limit))
    };
    if here.any(load) && loaded()
        || socket_limit(page, beside)
        || page.cues.any(CHAINED) && chain_limit(page, beside)
    {
        return Some(LeftWhy::LoadLimit);
    }
    let like = || {
        // "Why is our 320W light dearer"
        left.any(Role::Like.cue()) && !OUR.has(beside.before)
            || left.any(Role::Save.cue()) && near.any(Cues::of(&[Role::Save, Role::UpTo]))
    };
    if left.any(Cues::of(&[Role::Like, Role::Save])) && like() || with_own(page, beside) {
        return Some(LeftWhy::Rhetoric);
    }
    // "200W standby consumption: 0.5W": the words before a colon are about what follows it.
    let dim = Role::Dim.cue();
    let full = || named_share(page, at).and_then(|i| page.figure(i)).is_some_and(|share| share.high > 99.5);
    if near.and(left).any(dim) && !full() || next.any(dim) && right.any(dim) {
        return Some(LeftWhy::NotFullPower);
    }
    None
}

/// Whether a device is named in the phrase before the watts or straight after them, or they may stand in a row of one: most
/// texts that name a device name it elsewhere.
fn near_a_device(page: &Page, beside: &Beside, left: Cues) -> bool {
    let limits = beside.before.cue.and(beside.next.cue).any(LIMIT);
    let near = (1..=4).fold(left, |near, d| near.and(page.plays(beside.at + d)));
    near.any(Role::Device.cue()) | limits
}

/// Whether the watts are those of a device that is no light; `near` is the role of the nearest word before them.
#[inline(never)]
fn of_a_device(page: &Page, beside: &Beside, near: Cues) -> bool {
    let at = beside.at;
    let device = Role::Device.cue();
    let ends = THING.and(BEAD).and(LAMP).and(DRAW).and(EQUAL).and(Role::With.cue());
    let first = page.first_right(at, device.and(ends), 4);
    let labelled = near.any(DRAW.and(Role::Power.cue()));
    // "light 30W DC 12V 1A adapter": the adapter's are the volts and amperes, the watts are the light's.
    let rated = near.any(THING)
        && (at + 1..at + 4)
            .any(|i| page.figure(i).is_some_and(|f| matches!(f.unit, Unit::Volt | Unit::VoltDc | Unit::Amp)));
    first.any(device) && !labelled && !rated && !for_a_tent(page, at) && !lacks_next(page, at)
        || near.any(device) && !first.any(THING) && !lacks(page, at - 1)
        || page.has_mark(Mark::Colon) && in_row_of_feeder(page, beside)
        || beside.before.letters != 0 && feeder_can(page, at)
        || beside.next.starts(PANEL) && solar_panel(page, beside)
}

/// "200W 无风扇": the first device after item `at` is one that the light does without.
#[inline(never)]
fn lacks_next(page: &Page, at: usize) -> bool {
    (at + 1..at + 5).find(|&i| page.role(i) == Role::Device).is_some_and(|i| lacks(page, i))
}

const PANEL: Letters = Letters::of("panel");

/// "solar grow light 5W panel, 3W LED": the panel that feeds a light whose own watts stand elsewhere.
#[inline(never)]
fn solar_panel(page: &Page, beside: &Beside) -> bool {
    const SOLAR: Letters = Letters::of("solar");
    let own = |i: usize| i != beside.at && page.is_watts(i) && page.cue(i + 1).any(THING);
    page.items.iter().any(|item| item.starts(SOLAR)) && (0..page.items.len()).any(own)
}

/// "600W for 4x4 grow tents": what the light stands in, and the watts are the light's.
fn for_a_tent(page: &Page, at: usize) -> bool {
    const TENTS: Listed<7> =
        Listed::of(["tent", "zelt", "growzelt", "zuchtzel", "kweekten", "talt", "odlingst"]);
    page.role(at + 1) == Role::For && (at + 2..at + 6).any(|i| page.begins(i, &TENTS))
}

/// "cut every 10 cm (1.2 W)", "1.2 W every 10 cm": the watts of a length that a strip can be cut to.
pub(super) fn every_length(page: &Page, at: usize) -> bool {
    const EVERY: Listed<7> = Listed::of(["every", "alle", "tous", "toutes", "cada", "ogni", "elke"]);
    let every = |i: usize| page.is_one(i, &EVERY);
    let length = |i: usize| page.figure(i).is_some_and(|f| matches!(f.unit, Unit::Length | Unit::Metre));
    length(at + 2) && every(at + 1)
        || at >= 3 && page.mark(at - 1) == Some(Mark::Open) && length(at - 2) && every(at - 3)
}
